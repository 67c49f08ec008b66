package told

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/rules"
	"boxwright/pricing/money"
	"boxwright/pricing/quote/quotetest"
	"boxwright/web/page/pagetest"
	"boxwright/web/session"
)

// shown is what is drawn of changes, without its markup.
func shown(t *testing.T, told session.Told, why map[string]string) string {
	t.Helper()
	q := pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", false)
	told.Total, told.Safe = q.Q.Price.Total, q.Q.Plan.NineInTen
	f, _ := q.Q.Figure("weight.payload-left")
	told.Payload = f.Value
	return (&Page{Page: q, Told: &told, Why: why}).Draw().String()
}

func TestEachChangeHasItsReason(t *testing.T) {
	for _, c := range []struct {
		name, reason, at string
		change           session.ToldChange
		why              map[string]string
		says             []string
	}{
		{"standard that comes back", "price and weight stand beside it", "fb-push",
			session.ToldChange{ID: "wt-24", Added: true, Cause: rules.Standard}, nil,
			[]string{"<b>Added: </b>Conversion warranty: 24 months", "Standard, and it fits."}},
		{"what gave way", "it is taken off", "fb-push",
			session.ToldChange{ID: "cot-manual", Cause: rules.GivesWay}, nil,
			[]string{"<b>Removed: </b>Manual cot, 80 lb (−", "−80 lb)", "It does not go with the rest."}},
		{"an exchange", "it is one line", "fb-push",
			session.ToldChange{ID: "wt-12", Added: true, Instead: "wt-24", Cause: rules.Chosen}, nil,
			[]string{"<b>Exchanged: </b>Conversion warranty: 12 months or 15,000 mi instead of 24 months",
				"One of the group is needed"}},
		{"an open wall for a cabinet", "it is called what it is", UnitPress("0"),
			session.ToldChange{ID: "front-none", Added: true, Instead: "front-tall"}, nil,
			[]string{"<b>Removed: </b>Tall cabinet with inside and outside access (−",
				"Left out of the unit that was taken."}},
		{"the rules' own sentence", "it goes before the general one", "fb-push",
			session.ToldChange{ID: "cot-manual", Cause: rules.GivesWay},
			map[string]string{"cot-manual": "Two <cots> are one too many."},
			[]string{"Two &lt;cots&gt; are one too many."}},
		{"the customer's own", "what a proposal does not have of it is said so", UnitPress("cheapest"),
			session.ToldChange{ID: "cot-manual", Own: true}, nil,
			[]string{"Taking it changed 1 thing of the unit", "It was your own choice, and does not stand in Needs."}},
		{"given up", "a press without causes has its reasons too", "fb-push",
			session.ToldChange{ID: "cot-manual", Own: true}, nil, []string{"It does not go with what you pressed."}},
		{"another chassis", "also where an option brought it", "fb-push",
			session.ToldChange{ID: "cab-16500-169-diesel", Added: true, Instead: "cut-14500-158-gas"}, nil,
			[]string{"<b>Exchanged: </b>Cab-chassis 16,500 lb", "What you pressed needs it."}},
		{"for a goal", "the goal is the reason of all", "cheapest",
			session.ToldChange{ID: "wt-12", Added: true, Instead: "wt-24"}, nil,
			[]string{"This also changed 1 thing: your choices and musts stay"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			html := shown(t, session.Told{At: c.at, Changes: []session.ToldChange{c.change}}, c.why)
			for _, s := range c.says {
				assert.Contains(t, html, s, c.reason)
			}
			assert.Contains(t, html, `id="told-undo"`, "one press takes it back")
			assert.Contains(t, html, "the total stays as it was", "and what it comes to is said")
		})
	}
}

// What is asked for otherwise now is told too, even where the unit is the same.
func TestWhatIsAskedForOtherwiseIsTold(t *testing.T) {
	html := shown(t, session.Told{At: UnitPress("0"), Asked: []session.ToldNeed{
		{Label: "Budget", Was: "at most USD 330,000.00", Is: "at most USD 336,200.00"}, {Label: "Fuel",
			Was: "diesel"}, {Label: "Type", Was: "Type II"}}}, nil)
	assert.Contains(t, html, "What is asked for changed")
	assert.Contains(t, html, "Budget at most USD 330,000.00 → at most USD 336,200.00")
	assert.Contains(t, html, "Fuel diesel → not asked for")
	assert.Contains(t, html, "</b>Type II → not asked for")
}

// Of a long list the first stand open and the rest is a press away: nothing is left
// out.
func TestALongListIsFolded(t *testing.T) {
	ed := quotetest.Demo(t)
	for _, n := range []int{1, mostShown, mostShown + 1, 60} {
		t.Run(fmt.Sprint(n), func(t *testing.T) {
			var list []session.ToldChange
			for i := range n {
				list = append(list, session.ToldChange{ID: ed.Cat.Options[i].ID, Added: true})
			}
			html := shown(t, session.Told{At: "fb-push", Changes: list}, nil)
			open, rest, folded := strings.Cut(html, `id="told-rest"`)
			assert.Equal(t, min(n, mostShown), strings.Count(open, "<b>Added: </b>"))
			assert.Equal(t, n > mostShown, folded)
			assert.Equal(t, max(0, n-mostShown), strings.Count(rest, "<b>Added: </b>"))
		})
	}
}

// Where nothing was told nothing is shown.
func TestNothingTold(t *testing.T) {
	s := &session.Session{View: &session.View{Told: &session.Told{At: "x", Total: money.Dollars(1),
		Safe: config.Date{}}}}
	require.Nil(t, Load(s, nil, nil))
	assert.Nil(t, (*Page)(nil).Draw())
}
