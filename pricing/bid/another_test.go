package bid_test

import (
	"encoding/json"
	"fmt"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config/quantity"
	"boxwright/pricing/bid"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
	"boxwright/web/assets/catalogue"
)

// otherWords are how the other plant calls what the demonstration's calls otherwise, in labels
// and sentences.
var otherWords = strings.NewReplacer("Squad bench", "Crew settee", "squad bench", "crew settee", "Attendant seat",
	"Medic chair", "attendant seat", "medic chair", "Powered cot", "Motor stretcher", "Manual cot", "Hand stretcher",
	"Roll-up", "Shutter", "roll-up", "shutter", "Rub rail", "Scuff strip", "rub rail", "scuff strip", "Siren",
	"Sounder", "siren", "sounder", "inverter", "DC to AC converter", "Countertop", "Work ledge", "Undercoat",
	"Underseal", "undercoat", "underseal")

var optionID = regexp.MustCompile(`(?m)^    \{"id": "([^"]+)", "group": "`)
var askedPart = regexp.MustCompile(`(?ms)^  "asked": \[.*?^  \],\n`)
var spoken = regexp.MustCompile(`"(label|spec)": "[^"]*"`)

// anotherCatalogue is one of another plant: no identifier of an option is that of the
// demonstration, some things have other names, and nobody has said what purchasers call them.
func anotherCatalogue(t testing.TB) *quote.Edition {
	text := askedPart.ReplaceAllString(string(catalogue.Demo), "")
	text = spoken.ReplaceAllStringFunc(text, otherWords.Replace)
	ids := optionID.FindAllStringSubmatch(text, -1)
	require.Greater(t, len(ids), 500)
	var pairs []string
	for i, m := range ids {
		pairs = append(pairs, `"`+m[1]+`"`, `"p`+string(rune('a'+i%26))+`-`+strings.Repeat("q", 1+i/26)+`"`)
	}
	ed, err := quote.OpenEdition([]byte(strings.NewReplacer(pairs...).Replace(text)))
	require.NoError(t, err)
	return ed
}

// Of a catalogue that says nothing of how its things are asked for little is recognized, and
// nothing falsely.
func TestAnotherCatalogue(t *testing.T) {
	ed := anotherCatalogue(t)
	d := quote.Begin(ed, "cut-14500-158-gas", "mod-146-72", quotetest.Today)
	var lines []told
	for _, name := range []string{"lines.tsv", "hands.tsv", "six.tsv", "aside.tsv", "hands-aside.tsv"} {
		lines = append(lines, toldLines(t, name)...)
	}
	for from := 0; from < len(lines); from += quote.MaxRequirements {
		part := lines[from:min(len(lines), from+quote.MaxRequirements)]
		d.Requirements = nil
		for _, l := range part {
			d.Requirements = append(d.Requirements, quote.Requirement{Text: l.line})
		}
		q, err := quote.Compute(ed, d)
		require.NoError(t, err)
		answered := 0
		for i, a := range bid.Answers(q, quantity.US) {
			got := letters[a.Outcome]
			if got == "h" || a.Term != "" {
				continue
			}
			answered++
			assert.Contains(t, part[i].want, got, "%s read as %q", part[i].line, a.Read)
		}
		assert.Greater(t, answered, len(part)/5)
		t.Logf("%d of %d lines answered", answered, len(part))
	}
}

// farCatalogue is one of which no option, label or sentence is that of the demonstration; the
// chassis, the body and the plant are, under other names.
func farCatalogue(t testing.TB) *quote.Edition {
	var all map[string]any
	require.NoError(t, json.Unmarshal(catalogue.Demo, &all))
	of := func(list, id, as, label string) any {
		for _, x := range all[list].([]any) {
			if x := x.(map[string]any); x["id"] == id {
				x["id"], x["label"] = as, label
				delete(x, "usual_body")
				return x
			}
		}
		return nil
	}
	prices := map[string]string{"x9": "50000.00", "y4": "70000.00"}
	var groups, options []any
	file, err := os.ReadFile("testdata/far.tsv")
	require.NoError(t, err)
	for _, l := range strings.Split(strings.TrimSpace(string(file)), "\n") {
		c := strings.Split(l, "\t")
		if strings.HasPrefix(l, "#") {
			continue
		}
		if n := len(groups); n == 0 || groups[n-1].(map[string]any)["label"] != c[0] {
			groups = append(groups, map[string]any{"id": fmt.Sprintf("k%d", n), "label": c[0], "chapter": "all",
				"choose": c[1]})
		}
		options = append(options, map[string]any{"id": c[2], "standard": c[3] != "", "label": c[4], "spec": c[5],
			"group": groups[len(groups)-1].(map[string]any)["id"], "mass": map[string]any{"lb": 10, "zone": "module-mid"}})
		prices[c[2]] = "100.00"
	}
	data, err := json.Marshal(map[string]any{"format": all["format"], "id": "far", "title": "Far works, invented",
		"edition": "7", "valid_from": "2026-01-01", "plant": all["plant"], "groups": groups, "options": options,
		"chapters": []any{map[string]any{"id": "all", "label": "All"}},
		"chassis":  []any{of("chassis", "cut-14500-158-gas", "x9", "Cutaway, 14,500 lb, gasoline")},
		"bodies":   []any{of("bodies", "mod-146-72", "y4", "Box, 146 in")},
		"price_book": map[string]any{"currency": "USD", "rounding": "half-up", "validity_days": 60,
			"notes": []string{"Invented."}, "prices": prices}})
	require.NoError(t, err)
	ed, err := quote.OpenEdition(data)
	require.NoError(t, err)
	return ed
}

// Reading depends on no identifier and no name of the demonstration's.
func TestFarCatalogue(t *testing.T) {
	ed := farCatalogue(t)
	d := quote.Begin(ed, "x9", "y4", quotetest.Today)
	lines := toldLines(t, "far-lines.tsv")
	for _, l := range lines {
		d.Requirements = append(d.Requirements, quote.Requirement{Text: l.line})
	}
	q, err := quote.Compute(ed, d)
	require.NoError(t, err)
	asked, answered := 0, 0
	var open []string
	for i, a := range bid.Answers(q, quantity.US) {
		got, want := letters[a.Outcome], lines[i].want
		if want != "h" {
			asked++
		}
		if got == "h" || a.Term != "" {
			if want != "h" {
				open = append(open, a.Text)
			}
			continue
		}
		answered++
		assert.Contains(t, want, got, "%s read as %q", a.Text, a.Read)
	}
	t.Logf("%d of %d answered", answered, asked)
	assert.GreaterOrEqual(t, 10*answered, 8*asked, "left open: %q", open)
}
