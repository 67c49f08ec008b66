package page_test

import (
	"strconv"
	"testing"

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
