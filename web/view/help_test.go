package view

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing/quote"
	"boxwright/web/assets/catalogue"
)

func demoPage(t *testing.T) *Page {
	t.Helper()
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	d := quote.Begin(ed, "", "", config.Date{Year: 2026, Month: 11, Day: 25})
	q, err := quote.Compute(ed, d)
	require.NoError(t, err)
	return &Page{Q: q, State: &State{}}
}

// A definition is short, says where it comes from, and stands somewhere.
func TestGlossary(t *testing.T) {
	seen := map[string]bool{}
	for _, x := range glossary {
		assert.False(t, seen[x.name], "%s is defined once", x.name)
		seen[x.name] = true
		sentences := strings.Count(x.text, ". ") + strings.Count(x.text, "? ") + 1
		assert.LessOrEqual(t, sentences, 3, x.name)
		assert.LessOrEqual(t, len(x.text), 300, x.name)
		assert.True(t, strings.HasSuffix(x.text, "."), x.name)
		assert.NotEmpty(t, x.source, x.name)
		assert.False(t, strings.HasSuffix(x.source, "."), x.name)
		assert.NotEmpty(t, x.areas+x.about, "%s stands nowhere", x.name)
		for _, a := range strings.Fields(x.areas) {
			assert.True(t, a == "standing" || AreaByID(a).ID == a, "%s: there is no area %q", x.name, a)
		}
	}
}

// Every area says what its words mean, and what a definition is said to be about
// is there to be explained.
func TestHelpStandsWhereTheQuestionArises(t *testing.T) {
	p := demoPage(t)
	all := ""
	for _, a := range Areas {
		p.State.Area = a.ID
		r := map[string]string{}
		for id, pieces := range Regions(p) {
			r[id] = strings.Join(pieces, "")
		}
		assert.Contains(t, r["main"], `id="words-`+a.ID+`"`)
		assert.Contains(t, r["standing"], `id="words-standing"`)
		for _, x := range glossary {
			for _, code := range strings.Fields(x.about) {
				assert.LessOrEqual(t, strings.Count(r["main"], `id="help-`+code+`"`), 1, "%s twice in %s", code, a.ID)
			}
		}
		all += r["main"]
	}
	for _, x := range glossary {
		for _, code := range strings.Fields(x.about) {
			if code == "lease.rate" || code == "rates.discount" { // shown once a lease or a comparison is asked for
				continue
			}
			assert.Contains(t, all, `id="help-`+code+`"`, "%s is explained beside %s", x.name, code)
		}
	}
}
