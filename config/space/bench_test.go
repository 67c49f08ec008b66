package space

import (
	"testing"

	"boxwright/config"
)

func loaded() *config.Unit {
	u := unit("bench", "cabinet-tall", "cot")
	u.Carried = []config.Carried{{Equipment: "bag", Qty: 10}, {Equipment: "chair", Qty: 3},
		{Equipment: "tools", Qty: 6}}
	return u
}

func BenchmarkMeasure(b *testing.B) {
	cat, u := fixture(b), loaded()
	u.Carried = Suggest(cat, u, scale(cat))
	for b.Loop() {
		Measure(cat, u, nil)
	}
}

func BenchmarkSuggest(b *testing.B) {
	cat, u := fixture(b), loaded()
	for b.Loop() {
		Suggest(cat, u, scale(cat))
	}
}
