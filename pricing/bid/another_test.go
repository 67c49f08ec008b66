package bid_test

import (
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
