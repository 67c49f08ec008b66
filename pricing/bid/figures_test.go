package bid_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/bid"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
)

// asAnother are figures that are asked for as another one, of which they are a copy or
// another limit.
var asAnother = map[string]string{"weight.seats": "space.seats", "weight.patients": "space.patients",
	"weight.front-least": "weight.front-axle", "space.module-length": "module",
	"space.rear-door": "rear-door-height", "power.inlet": "power.shore",
	"time.even-odds": "delivery", "time.nine-in-ten": "delivery"}

// Every figure that the program computes of a unit can be asked for in a requirement
// list.
func TestEveryFigureCanBeAskedFor(t *testing.T) {
	gauges := map[string]bool{}
	for _, g := range bid.Gauges() {
		gauges[g.Code] = true
	}
	ed := demo(t)
	seen := map[string]bool{}
	for _, at := range [][2]string{{"cut-14500-158-gas", "mod-146-72"}, {"van-9500-148-gas", "van-72"},
		{"med-26000-189-diesel", "rescue-164"}, {"med-26000-189-diesel", "hazmat-164"}} {
		q, err := quote.Compute(ed, quote.Begin(ed, at[0], at[1], quotetest.Today))
		require.NoError(t, err, at)
		for _, r := range []*config.Report{&q.Weight.Report, &q.Power.Report, &q.Space.Report, &q.Plan.Report} {
			for _, f := range r.Figures {
				seen[f.Code] = true
				code := f.Code
				if other, is := asAnother[code]; is {
					code = other
				}
				assert.True(t, gauges[code], "%s, %q", f.Code, f.Label)
			}
		}
	}
	assert.Greater(t, len(seen), 55)
}

// A figure is asked for by each of its names.
func TestFiguresByTheirNames(t *testing.T) {
	q, _ := answersTo(t, "x")
	for _, g := range bid.Gauges() {
		if g.Code == "scene-load" { // it is asked for without an amount
			continue
		}
		for _, name := range g.Names {
			t.Run(g.Code+", "+name, func(t *testing.T) {
				line := name + " " + g.Amount
				d := q.Draft.Clone()
				d.Requirements = []quote.Requirement{{Text: line}}
				with := *q
				with.Draft = d
				a := bid.Answers(&with, quantity.US)[0]
				require.NotEmpty(t, a.Read, line)
				assert.Zero(t, a.Unread, "%s: %v", line, a.Read)
				assert.True(t, strings.HasPrefix(a.Read[0], g.Label), "%s: %v", line, a.Read)
			})
		}
	}
}
