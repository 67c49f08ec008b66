package view

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/standards"
)

func TestChancesAreSaidAsPeopleSayThem(t *testing.T) {
	for _, c := range []struct {
		chance float64
		want   string
		reason string
	}{
		{0.032, "3 in 100 that it is missed", "the usual case"},
		{0.0014, "1 in 1,000 that it is missed", "small chances count by the thousand"},
		{0.0001, "", "next to nothing is not said"},
		{0.9999, "almost certainly missed", "no false doubt"},
		{0, "", "not known"},
	} {
		assert.Equal(t, c.want, chance(config.Figure{Sense: config.AtMost, Chance: c.chance}), c.reason)
	}
	assert.Empty(t, chance(config.Figure{Chance: 0.5}), "without a limit there is nothing to miss")
}

func TestVerdictsAreCountedAndGrouped(t *testing.T) {
	p := pageOf(t, demo(t), "cut-14500-158-gas", false)
	sheet := compliance(p).String()
	assert.Contains(t, sheet, "All together: "+tally(p.Q.Verdicts)+".")
	sets := map[string]bool{}
	for _, v := range p.Q.Verdicts {
		sets[v.Set] = true
	}
	assert.Equal(t, len(sets), strings.Count(sheet, "<table"), "a table for each set")
	assert.Equal(t, len(p.Q.Verdicts), strings.Count(sheet, `scope="row"`), "and every clause in one of them")
	assert.Equal(t, "1 not met, 2 met", tally([]standards.Verdict{{Outcome: standards.Met}, {Outcome: standards.NotMet}, {Outcome: standards.Met}}))
}

func TestPowerPageHoldsWhatIsPostedAndWired(t *testing.T) {
	p := pageOf(t, demo(t), "cut-14500-158-gas", false)
	page := powerArea(p).String()
	f, _ := p.Q.Figure("power.remaining")
	assert.Contains(t, page, `class="plate-figure">`+p.show(f.Value, f.Unit)+"<", "the tag's figure")
	for _, c := range p.Q.Power.Circuits {
		assert.Contains(t, page, "<b>"+c.Number+"</b> "+strings.ToUpper(c.Function), "every circuit with its marking")
	}
	bars := loadBars(p).String()
	for _, a := range []quantity.Current{p.Q.Power.Hot.IdleA, p.Q.Power.Hot.HighIdleA, p.Q.Power.Hot.ColdA} {
		assert.Contains(t, bars, p.amps(a), "every output of the alternator is drawn")
	}
}

// Every limit that rests on memory or common practice can be replaced on the
// page, and its basis stands beside it.
func TestSoftLimitsCanBeReplaced(t *testing.T) {
	p := pageOf(t, demo(t), "cut-14500-158-gas", false)
	page := ownLimits(p).String()
	soft := 0
	for code, l := range p.Q.Assume.Limits {
		if l.Basis == config.ReadInText {
			continue
		}
		if _, reported := p.Q.Figure(code); !reported {
			continue
		}
		soft++
		assert.Contains(t, page, `id="f-own.`+code+`"`, "field for "+code)
		assert.Contains(t, page, string(l.Basis))
	}
	assert.Positive(t, soft)
}
