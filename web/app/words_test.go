package app

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/web/page"
)

// A definition is short, says where it comes from, and stands somewhere.
func TestGlossary(t *testing.T) {
	seen := map[string]*page.Term{}
	for _, x := range glossary { // those of several areas come once for each
		if was := seen[x.Name]; was != nil {
			assert.Same(t, was, x, "%s is defined once", x.Name)
		}
		seen[x.Name] = x
		sentences := strings.Count(x.Text, ". ") + strings.Count(x.Text, "? ") + 1
		assert.LessOrEqual(t, sentences, 3, x.Name)
		assert.LessOrEqual(t, len(x.Text), 300, x.Name)
		assert.True(t, strings.HasSuffix(x.Text, "."), x.Name)
		assert.NotEmpty(t, x.Source, x.Name)
		assert.False(t, strings.HasSuffix(x.Source, "."), x.Name)
		assert.False(t, x.Aside && x.About == "", "%s stands nowhere", x.Name)
	}
}

// Every area says what its words mean, and what a definition is said to be about
// is there to be explained.
func TestHelpStandsWhereTheQuestionArises(t *testing.T) {
	p := open(t)
	all := ""
	for _, a := range tabs {
		r := p.do(Act{Do: "go", ID: a.ID}).Regions
		assert.Contains(t, r["main"], `id="words-`+a.ID+`"`)
		assert.Contains(t, r["standing"], `id="words-standing"`)
		for _, x := range glossary {
			for _, code := range strings.Fields(x.About) {
				assert.LessOrEqual(t, strings.Count(r["main"], `id="help-`+code+`"`), 1, "%s twice in %s", code, a.ID)
			}
		}
		all += r["main"]
	}
	for _, x := range glossary {
		for _, code := range strings.Fields(x.About) {
			if code == "lease.rate" || code == "rates.discount" { // shown once a lease or a comparison is asked for
				continue
			}
			assert.Contains(t, all, `id="help-`+code+`"`, "%s is explained beside %s", x.Name, code)
		}
	}
}
