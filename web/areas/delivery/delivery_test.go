package delivery

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/config/leadtime"
	"boxwright/pricing/quote/quotetest"
	"boxwright/web/page"
	"boxwright/web/page/pagetest"
	"boxwright/web/session"
)

func TestListsThatAreCutShort(t *testing.T) {
	ed := quotetest.Demo(t)
	p := &Page{Page: pagetest.Of(t, ed, "cut-14500-158-gas", false), View: &session.View{}, DelaysKnown: true}
	for _, l := range []pagetest.List{
		{Name: "what choices add to a step", Most: 4, Draw: func(n int) string {
			s := leadtime.Step{Label: "Weld"}
			for i := range n {
				s.Added = append(s.Added, leadtime.Added{Label: pagetest.Numbered(i), Hours: 2})
			}
			p.Q.Plan.Steps = []leadtime.Step{s}
			return steps(p).String()
		}, More: func(rest int) string { return " and " + strconv.Itoa(rest) + " more" }},
		{Name: "choices that delay", Most: 6, Draw: func(n int) string {
			p.Delays = nil
			for i := range n {
				ed.Cat.Options[i].Label = pagetest.Numbered(i)
				p.Delays = append(p.Delays, leadtime.Delay{Option: ed.Cat.Options[i].ID, Days: float64(90 - i)})
			}
			return delays(p).String()
		}},
	} {
		l.IsCutShort(t)
	}
}

// A date and the working days beside it say the same, so two dates never have the same days.
func TestWorkingDaysFitTheDate(t *testing.T) {
	p := pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", false)
	for _, days := range []float64{109.6, 110, 110.4} {
		p.Q.Plan.Simulated.EvenOddsDays = days
		assert.Contains(t, page.Dates(p, true).String(), "("+strconv.Itoa(int(math.Ceil(days)))+" working days)", days)
	}
}
