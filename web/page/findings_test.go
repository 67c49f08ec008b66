package page_test

import (
	"boxwright/pricing/quote"
	"regexp"
	"strconv"
	"strings"
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

// At the head of an area a phone has one line: what must be fixed is said in it, the rest counted.
func TestFindingsInOneLine(t *testing.T) {
	p := pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", false)
	of := func(s config.Severity, where, text string) config.Finding {
		return config.Finding{Code: "weight.x", Severity: s, Where: where, Text: text}
	}
	front := of(config.Stop, "Front axle", "Front axle is 281 lb over 5,000 lb.")
	rear := of(config.Stop, "Rear axle", "Rear axle is 12 lb over 9,600 lb.")
	check, note := of(config.Warn, "Tires", "Little to spare."), of(config.Note, "Ticket", "None yet.")
	for _, c := range []struct {
		name, class, line string
		list              []config.Finding
	}{
		{"one fault, in its own words", "notice stop", "■ Must fix: Front axle is 281 lb over 5,000 lb.", []config.Finding{front}},
		{"several faults, by name", "notice stop", "■ Must fix: Front axle, Rear axle. 2 to check, 1 note",
			[]config.Finding{note, front, check, rear, check}},
		{"a place of two faults once", "notice stop", "■ Must fix: Front axle", []config.Finding{front, front}},
		{"nothing to fix", "notice warn", "▲ 1 to check, 2 notes", []config.Finding{check, note, note}},
		{"notes alone", "notice", "1 note", []config.Finding{note}},
	} {
		t.Run(c.name, func(t *testing.T) {
			summary, _, _ := strings.Cut(page.Found(p, c.list, "").String(), "</summary>")
			assert.Contains(t, summary, `class="`+c.class+`"`)
			said := regexp.MustCompile(`<[^>]*>`).ReplaceAllString(summary, "")
			assert.Equal(t, c.line, strings.ReplaceAll(said, "\u00a0", " "))
		})
	}
	assert.NotContains(t, page.Found(p, nil, "All kept.").String(), "<details", "nothing is not folded")
	named := []config.Finding{{Code: quote.StillToBeNamed, Severity: config.Note, Where: "Still to be named"}}
	assert.NotContains(t, page.Found(p, named, "").String(), `class="found"`, "what is a fold is not folded twice")
}
