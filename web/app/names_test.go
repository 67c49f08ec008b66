package app

import (
	"html"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

var (
	namedButton = regexp.MustCompile(`(?s)<(button|a|summary)( [^>]*?aria-label="([^"]*)"[^>]*)>(.*?)</`)
	wordy       = regexp.MustCompile(`\pL`)
)

// Who speaks to the page says what stands on a button: a name for the ear holds the words
// for the eye.
func TestNamesOfButtonsHoldTheirWords(t *testing.T) {
	p := open(t)
	checked := 0
	check := func(s shown) {
		t.Helper()
		require.Empty(t, s.Fault)
		for region, text := range s.Regions {
			for _, m := range namedButton.FindAllStringSubmatch(text, -1) {
				words := strings.ToLower(strings.TrimSpace(html.UnescapeString(tags.ReplaceAllString(m[4], ""))))
				if wordy.MatchString(words) {
					checked++
					require.Contains(t, strings.ToLower(html.UnescapeString(m[3])), words, region)
				}
			}
		}
	}
	check(p.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"}))
	p.do(Act{Do: "wish", ID: "cot-power", Value: "must"}, Act{Do: "wish", ID: "hvac-roof", Value: "like"})
	check(p.do(Act{Do: "propose"}))
	check(p.do(Act{Do: "paste-list", Value: county(t)}))
	p.do(Act{Do: "add", ID: "milestone"}, Act{Do: "add", ID: "extra"}, Act{Do: "add", ID: "unit"},
		Act{Do: "add-rival"}, Act{Do: "pin"}, Act{Do: "carry-usual"})
	for _, area := range Areas() {
		check(p.do(Act{Do: "go", ID: area}))
	}
	for i := range p.app.memory.Edition.Cat.Chapters {
		check(p.do(Act{Do: "go", ID: "unit"}, Act{Do: "chapter", ID: p.app.memory.Edition.Cat.Chapters[i].ID}))
	}
	p.do(set("ticket.what", "unit"), set("ticket.total", "11,096"), Act{Do: "add-ticket"})
	check(p.do(Act{Do: "go", ID: "weight"}))
	check(p.do(Act{Do: "units"}))
	require.Greater(t, checked, 10)
}
