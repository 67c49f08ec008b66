package needs

import (
	"strings"
	"testing"

	"boxwright/pricing/bid"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
	"boxwright/web/page/pagetest"
	"boxwright/web/session"

	"github.com/stretchr/testify/assert"
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

// A unit that is best by several measures is one card, under all of them.
func TestAUnitIsProposedOnce(t *testing.T) {
	ed := quotetest.Demo(t)
	d := quote.Begin(ed, "", "", quotetest.Today)
	d.Needs = quote.Needs{Type: "I", Drive: "4x4", Fuel: "diesel", ModuleIn: 153, HeadroomIn: 72, Crew: 6,
		Must: []string{"cot-power", "mount-power"}}
	s := propose.Propose(ed, d)
	list := distinct(s.Proposals)
	for i := range list {
		for k := range list[:i] {
			assert.False(t, quote.SameLoad(&list[i].Unit, &list[k].Unit, false))
		}
	}
	titles := ""
	for _, x := range list {
		titles += x.Title + "; "
	}
	for _, x := range s.Proposals {
		assert.Contains(t, strings.ToLower(titles), strings.ToLower(x.Title))
	}
	assert.Less(t, len(list), len(s.Proposals), "of this brief some coincide")

	p := &Page{Page: pagetest.Of(t, ed, "cut-14500-158-gas", false), View: &session.View{}, Search: &s}
	html := proposed(p).String()
	assert.Equal(t, len(list)+map[bool]int{true: 1}[s.Aside != nil], strings.Count(html, `data-act="take-proposal"`))
	if assert.NotNil(t, s.Aside) {
		assert.Contains(t, html, `data-id="aside"`)
		assert.Contains(t, html, "Little to spare.")
		assert.Less(t, strings.Index(html, "Little to spare."), strings.Index(html, "To check"), "it is said first")
	}
}

// How the proposals were found is said in words that hold where there is none.
func TestHowProposalsWereFound(t *testing.T) {
	for _, c := range []struct {
		pairs, refused int
		says           string
	}{
		{7, 13, "7 pairs of chassis and module can meet the musts, 13 more of the kind asked for cannot; 2 units"},
		{0, 4, "No pair of chassis and module can meet the musts, none of the 4 of the kind asked for; 2 units"},
		{0, 0, "No pair of chassis and module can meet the musts; 2 units"},
	} {
		assert.Contains(t, found(&propose.Search{Pairs: c.pairs, Refused: c.refused, Finished: 2}, 2), c.says)
	}
}

// A list says whether it can go out: not while a line is open, a heading aside.
func TestAListSaysWhetherItGoesOut(t *testing.T) {
	open, done := bid.Answer{Outcome: quote.Unanswered}, bid.Answer{Outcome: quote.Meets}
	for _, c := range []struct {
		list []bid.Answer
		want string
	}{
		{[]bid.Answer{done, open}, "1 line is not answered yet. The list goes out, and is signed, when none is."},
		{[]bid.Answer{open, open}, "2 lines are not answered yet. "},
		{[]bid.Answer{done, {Requirement: quote.Requirement{Head: true}, Outcome: quote.Unanswered}},
			"Every line is answered. "},
	} {
		assert.Contains(t, goesOut(c.list).String(), c.want)
	}
}
