package standards

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/quantity"
)

// How hard a clause that is not met bites, by where its number comes from and
// who lowered it.
func TestSeverityOfAClauseThatIsNotMet(t *testing.T) {
	figure := &config.Figure{Code: "weight.payload", Label: "Payload", Unit: quantity.Pound, Value: 1500,
		Sense: config.AtLeast, Limit: 1750, Source: "test"}
	missed := func(v Verdict) Verdict {
		v.Clause, v.Title, v.Figure, v.Outcome = "c", "Clause", figure, NotMet
		return v
	}
	lowered := Verdict{Clause: "own", Figure: figure, Basis: config.Purchaser, Outcome: Met}
	for _, c := range []struct {
		name, reason string
		verdicts     []Verdict
		want         config.Severity // empty: no finding
	}{
		{"read", "a text that was read stops", []Verdict{missed(Verdict{Basis: config.ReadInText})}, config.Stop},
		{"read but mild", "a mild clause asks for a decision",
			[]Verdict{missed(Verdict{Basis: config.ReadInText, Mild: true})}, config.Warn},
		{"read, lowered", "the purchaser has knowingly asked for less",
			[]Verdict{missed(Verdict{Basis: config.ReadInText}), lowered}, config.Warn},
		{"from memory", "what was not read stops nothing, and asks for no decision",
			[]Verdict{missed(Verdict{Basis: config.FromMemory})}, config.Note},
		{"purchaser", "an own limit asks for a decision",
			[]Verdict{missed(Verdict{Basis: config.Purchaser})}, config.Warn},
		{"met", "a clause that is met is no finding", []Verdict{{Clause: "c", Figure: figure,
			Basis: config.ReadInText, Outcome: Met}}, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			found := Findings(c.verdicts)
			if c.want == "" {
				assert.Empty(t, found, c.reason)
				return
			}
			require.Len(t, found, 1)
			assert.Equal(t, "standard.c", found[0].Code)
			assert.Equal(t, c.want, found[0].Severity, c.reason)
		})
	}
	reported := config.Report{Findings: []config.Finding{{Figure: figure}}}
	assert.Empty(t, Findings([]Verdict{missed(Verdict{Basis: config.ReadInText})}, nil, &reported),
		"a calculator has said it already")
}

// The mild clauses of the law miss without stopping: 49 CFR 567.4(g)(3) through
// an interpretation, and a letter on GVWR and axle ratings.
func TestMildFederalClauses(t *testing.T) {
	cat := fixture(t)
	cat.ChassisByID("t1").GVWRLb = 19000
	u := on("t1")
	verdicts := Judge(u.RuleSet, u, cat)
	v := verdict(t, verdicts, "nhtsa-gvwr-gawr")
	require.Equal(t, NotMet, v.Outcome)
	for _, f := range Findings(verdicts) {
		if f.Clause == v.Clause {
			assert.Equal(t, config.Warn, f.Severity)
			return
		}
	}
	assert.Fail(t, "the clause that is not met is no finding")
}
