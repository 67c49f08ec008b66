package page_test

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/config"
	"boxwright/pricing/quote/quotetest"
	"boxwright/web/page"
	"boxwright/web/page/pagetest"
)

func TestListsThatAreCutShort(t *testing.T) {
	p := pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", false)
	pagetest.List{Name: "what is to settle", Most: 6, Draw: func(n int) string {
		p.Q.Findings = nil
		for _, text := range pagetest.Texts(n) {
			f := config.Finding{Code: "weight.x", Severity: config.Stop, Text: text + "."}
			p.Q.Findings = append(p.Q.Findings, f)
		}
		return page.StandingFindings(p).String()
	}, More: func(rest int) string {
		where := map[bool]string{true: " more, in its area", false: " more, in their areas"}[rest == 1]
		return "and " + strconv.Itoa(rest) + where
	}}.IsCutShort(t)
}

// A figure of a finding stays on one line with its unit, in its sentence and in its remedy;
// what is copied or exported has the sentence as it was written.
func TestFindingsKeepFiguresWithTheirUnits(t *testing.T) {
	p := pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", false)
	f := config.Finding{Code: "power.x", Severity: config.Warn, Where: "load", Text: "178.6 A of 160 A, 4 of 5.",
		Remedy: "Take off 19 A (or 3 %)."}
	list := []config.Finding{f}
	drawn := page.Findings(p, list, "").String()
	assert.Contains(t, drawn, "<b>Load: </b>", "whatever the letter it begins with in a sentence")
	assert.Contains(t, drawn, "178.6\u00a0A of 160\u00a0A, 4 of 5.")
	assert.Contains(t, drawn, "> Take off 19\u00a0A (or 3\u00a0%).", "a space, where both stand in one line")
	assert.Equal(t, "178.6 A of 160 A, 4 of 5.", list[0].Text)
}
