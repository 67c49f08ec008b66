package app

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

var tags = regexp.MustCompile(`<[^>]*>`)

// readable is the text of a region.
func readable(html string) string {
	html = strings.NewReplacer("</tr>", "\n", "</p>", "\n", "</h1>", "\n", "</h2>", "\n", "</h3>", "\n", "</li>", "\n",
		"</td>", " | ", "</caption>", "\n", "</div>", "\n").Replace(html)
	return strings.NewReplacer("&amp;", "&", "&#39;", "'", "&quot;", `"`).Replace(tags.ReplaceAllString(html, ""))
}

// papersOf are all documents of the quote in work, as text.
func papersOf(p *browser) map[string]string {
	out := map[string]string{}
	for _, id := range []string{"quote", "order", "test", "labels", "upkeep"} {
		p.do(Act{Do: "paper", ID: id})
		s := p.do(Act{Do: "rest"})
		html := s.Regions["main"]
		if i := strings.Index(html, "<article"); i >= 0 {
			html = html[i:]
		}
		out[id] = readable(html)
	}
	return out
}

func TestDumpKinds(t *testing.T) {
	dir := os.Getenv("KINDS")
	if dir == "" {
		t.Skip()
	}
	for name, acts := range map[string][]Act{
		"van":      {set("needs.type", "II"), set("needs.duty", "bls"), set("needs.crew", "3")},
		"neonatal": {set("needs.duty", "neonatal"), set("needs.crew", "4")},
		"medium":   {set("needs.duty", "als"), set("needs.type", "I"), set("needs.crew", "4"), set("needs.module", "170")},
		"critical": {set("needs.duty", "critical"), set("needs.crew", "4")},
		"multi":    {set("needs.duty", "multi"), set("needs.patients", "2"), set("needs.crew", "3")},
		"rescue":   {set("needs.duty", "rescue"), set("needs.crew", "4")},
		"hazmat":   {set("needs.duty", "hazmat"), set("needs.crew", "4")},
		"contam":   {set("needs.duty", "contaminated"), set("needs.crew", "3")},
	} {
		p := open(t)
		s := p.do(acts...)
		s = p.do(Act{Do: "propose"})
		s = p.do(Act{Do: "rest"})
		text := readable(s.Regions["main"])
		s = p.do(Act{Do: "take-proposal", ID: "cheapest"})
		text += "\nFAULT " + s.Fault + "\n"
		for id, paper := range papersOf(p) {
			text += "\n=========== " + id + "\n" + paper
		}
		text = regexp.MustCompile(`\n\s*\n+`).ReplaceAllString(text, "\n")
		require.NoError(t, os.WriteFile(dir+"/"+name+".txt", []byte(text), 0o644))
	}
}
