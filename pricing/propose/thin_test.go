package propose_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/money"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
)

// countyBrief is what a county asks for that no unit has on time and within its budget.
func countyBrief(ed *quote.Edition) *quote.Draft {
	d := quote.Begin(ed, "", "", quotetest.Today)
	d.Needs = quote.Needs{Type: "I", Drive: "4x4", Fuel: "diesel", ModuleIn: 153, HeadroomIn: 72, Crew: 6,
		Must: []string{"cot-power", "mount-power"}}
	d.Terms.Buyer = "county"
	d.Unit.NeededBy, d.Terms.Budget = config.Date{Year: 2027, Month: 4, Day: 28}, money.Dollars(330_000)
	return d
}

// A unit that costs less but has little to spare stands beside the proposals, and says
// first how little, and what would help.
func TestLittleToSpareIsSaid(t *testing.T) {
	ed := quotetest.Demo(t)
	s := propose.Propose(ed, countyBrief(ed))
	require.Len(t, s.Proposals, 3)
	for _, p := range s.Proposals {
		assert.Empty(t, p.Thin, "%s has enough to spare", p.Title)
		assert.Empty(t, s.Sounder(&p, quantity.US), "and needs no help")
	}
	require.NotNil(t, s.Aside, "one on a lighter chassis costs less")
	assert.Equal(t, "Lowest price and earliest delivery of all, little to spare", s.Aside.Title)
	for _, p := range s.Proposals {
		assert.Equal(t, p.Goal != propose.Lightest, p.Among == "with enough to spare", p.Title)
	}
	assert.Negative(t, s.Aside.Quote.Price.Total.Cmp(s.Proposals[0].Quote.Price.Total))
	payload, _ := s.Aside.Quote.Figure("weight.payload-left")
	require.NotEmpty(t, s.Aside.Thin)
	assert.Contains(t, propose.ThinWords(s.Aside.Thin, quantity.US), fmt.Sprintf("Gross weight, full load is only "+
		"%s under 14,000 lb, and the chance of being over it is %.0f %%. With ",
		quantity.US.Show(payload.Value, payload.Unit), 100*s.Aside.Thin[0].Chance))
	assert.Contains(t, propose.ThinWords(s.Aside.Thin, quantity.Metric), " kg under 6,350 kg")
	help := s.Sounder(s.Aside, quantity.US)
	assert.Contains(t, help, "What would help: Cab-chassis 17,500 lb 4x4")
	assert.Contains(t, help, " more, ")
	assert.Contains(t, help, " later.")
	for _, said := range s.Aside.Checks {
		assert.NotContains(t, said, "chance of missing", "what is said first is not said again")
	}
}

// Who takes one of the units offered has not changed what was asked for, though the unit
// leaves out what is standard for something better: the others stay beside it.
func TestTakingAUnitAsksForNothingElse(t *testing.T) {
	ed := quotetest.Demo(t)
	d := quote.Begin(ed, "", "", quotetest.Today)
	d.Needs = quote.Needs{Duty: "als", Drive: "4x4", Roads: "snow", Climate: "cold", Crew: 5, Must: []string{"cot-power"}}
	d.Unit.Factors = []config.Assumed{{Factor: "weight.equipment-allowance", Value: 1500}}
	asked, found, left := propose.Basis(d, ed.Cat), propose.Propose(ed, d), 0
	for _, p := range found.Offered() {
		took := d.Clone()
		took.Unit = p.Unit
		assert.Equal(t, asked, propose.Basis(took, ed.Cat), p.Title)
		left += len(p.Unit.LeftOut)
	}
	assert.Positive(t, left, "one of them leaves something out")
}

// Where what has to go is the same, the unit with little to spare does not hide the one
// with enough.
func TestGiveUpsWithEnoughToSpareAreOffered(t *testing.T) {
	ed := quotetest.Demo(t)
	s := propose.Propose(ed, countyBrief(ed))
	var thin, sound []string
	for _, g := range propose.GiveUps(&s).List {
		if !slices.Equal(g.IDs, []string{"budget", "date"}) {
			continue
		}
		if len(g.Thin) > 0 {
			thin = append(thin, g.Unit.Chassis)
		} else {
			sound = append(sound, g.Unit.Chassis)
			assert.Greater(t, float64(g.Payload), 1000.)
		}
	}
	assert.Equal(t, []string{"cab-14000-169-4x4-diesel"}, thin, "the milder one stands there")
	assert.Equal(t, []string{"cab-17500-169-4x4-diesel"}, sound, "and one that a chief would take")
}

// The press that takes less says how much less.
func TestPressesSayTheFigure(t *testing.T) {
	ed := quotetest.Demo(t)
	for _, c := range []struct {
		name, reason string
		needs        quote.Needs
		id, says     string
	}{
		{"module", "a length", quote.Needs{Type: "III", ModuleIn: 170}, "module",
			"164.0 in of module length instead of 170.0 in"},
		{"height", "a bay", quote.Needs{Type: "I", HeightIn: 100, Crew: 5}, "height",
			"102.4 in of overall height instead of 100.0 in"},
		{"turning", "in feet", quote.Needs{Type: "I", TurningFt: 40}, "turning", " ft of turning circle instead of 40.0 ft"},
		{"crew", "seats", quote.Needs{Crew: 20}, "crew", "Take 6 seats instead of 20"},
		{"patients", "cots", quote.Needs{Type: "II", Patients: 2}, "patients", "room for 1 patient instead of 2"},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := quote.Begin(ed, "", "", quotetest.Today)
			d.Needs = c.needs
			s := propose.Propose(ed, d)
			said := ""
			for _, g := range propose.GiveUps(&s).List {
				if slices.Contains(g.IDs, c.id) {
					said += g.Press(quantity.US) + "\n"
				}
			}
			assert.Contains(t, said, c.says, c.reason)
		})
	}
}

// A unit with little to spare is not what is usually offered where one with enough costs
// little more: it follows, and says so.
func TestLittleToSpareFollowsWhereEnoughCostsLittleMore(t *testing.T) {
	ed := quotetest.Demo(t)
	d := quote.Begin(ed, "", "", quotetest.Today)
	d.Needs = quote.Needs{Duty: "neonatal", Crew: 4}
	s := propose.Propose(ed, d)
	require.Len(t, s.Proposals, 3)
	for _, p := range s.Proposals {
		assert.Empty(t, p.Thin, p.Title)
	}
	if assert.NotNil(t, s.Aside) {
		assert.NotEmpty(t, s.Aside.Thin)
		assert.Contains(t, s.Aside.Title, "little to spare")
	}
}
