package needs

import (
	"testing"

	"boxwright/pricing/quote/quotetest"
	"boxwright/web/page/pagetest"
	"boxwright/web/session"
)

func TestListsThatAreCutShort(t *testing.T) {
	pagetest.List{Name: "options found by a word", Most: 12, Draw: func(n int) string {
		ed := quotetest.Demo(t) // what options are found by is kept with an edition
		p := &Page{Page: pagetest.Of(t, ed, "cut-14500-158-gas", false), View: &session.View{}}
		for i := range ed.Cat.Options {
			ed.Cat.Options[i].Spec = ""
		}
		found := 0
		for i := range ed.Cat.Options {
			if o := &ed.Cat.Options[i]; found < n && p.Shown(o) {
				o.Spec, o.Label = "Sought word", pagetest.Numbered(found)
				found++
			}
		}
		p.View.Find = "sought word"
		return wishes(p).String()
	}}.IsCutShort(t)
}
