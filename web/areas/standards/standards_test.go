package standards

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/config"
	"boxwright/config/standards"
	"boxwright/pricing/quote/quotetest"
	"boxwright/web/page"
	"boxwright/web/page/pagetest"
)

func TestVerdictsAreCountedAndGrouped(t *testing.T) {
	p := pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", false)
	sheet := compliance(&Page{p}).String()
	assert.Contains(t, sheet, "All together: "+page.VerdictTally(p.Q.Verdicts)+".")
	sets := map[string]bool{}
	for _, v := range p.Q.Verdicts {
		sets[v.Set] = true
	}
	missed := 0
	for _, v := range p.Q.Verdicts {
		if v.Outcome == standards.NotMet {
			missed++
		}
	}
	tables := len(sets)
	if missed > 0 {
		tables++
	}
	assert.Equal(t, tables, strings.Count(sheet, "<table"), "a table for each set, and one for what is not met")
	assert.Equal(t, len(p.Q.Verdicts)+missed, strings.Count(sheet, `scope="row"`), "every clause is in its set's")
	assert.Equal(t, "1 not met, 2 met",
		page.VerdictTally([]standards.Verdict{{Outcome: standards.Met}, {Outcome: standards.NotMet},
			{Outcome: standards.Met}}))
}

// Every limit that rests on memory or common practice can be replaced on the
// page, and its basis stands beside it.
func TestSoftLimitsCanBeReplaced(t *testing.T) {
	p := pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", false)
	sheet := ownLimits(&Page{p}).String()
	soft := 0
	for code, l := range p.Q.Assume.Limits {
		if l.Basis == config.ReadInText {
			continue
		}
		if _, reported := p.Q.Figure(code); !reported {
			continue
		}
		soft++
		assert.Contains(t, sheet, `id="f-own.`+code+`"`, "field for "+code)
		assert.Contains(t, sheet, string(l.Basis))
	}
	assert.Positive(t, soft)
}
