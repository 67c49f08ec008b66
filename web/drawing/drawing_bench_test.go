package drawing

import (
	"testing"

	"boxwright/pricing/quote/quotetest"
	"boxwright/web/page/pagetest"
)

// BenchmarkPicture is what the picture beside the options costs the second part of an answer;
// BenchmarkSet what the drawing set costs when it is asked for.
func BenchmarkPicture(b *testing.B) {
	m := pagetest.Of(b, quotetest.Demo(b), "cut-14500-158-gas", true).Q.Space.Model
	for b.Loop() {
		_ = Picture(ViewOf(m, "street"), "", "", nil).String()
	}
}

func BenchmarkSet(b *testing.B) {
	p := pagetest.Of(b, quotetest.Demo(b), "cut-14500-158-gas", true)
	for b.Loop() {
		for _, x := range Set(p, nil) {
			_ = x.Drawing().String()
		}
	}
}
