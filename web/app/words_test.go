package app

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

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

// retired are words that a salesman would not say aloud, each with what is said instead.
var retired = []struct{ word, say string }{
	{`(?i)even odds`, "likely date (50 %)"},
	{`(?i)nine in ten`, "safe date (90 %)"},
	{`(?i)cannot be had`, "not available with this build"},
	{`(?i)stands? in the way`, "why not"},
	{`(?i)gives? way|giving way`, "removed, replaced, given up"},
	{`(?i)comes in:`, "added"},
	{`■ Stop|▲ Decide`, "must fix, check"},
	{`(?i)to settle`, "open items"},
	{`(?i)payload left`, "remaining payload"},
	{`(?i)set aside`, "add to compare"},
	{`(?i)empty takes|leave empty`, "blank ="},
	{`(?i)kept in this browser`, "saved on this device"},
	{`(?i)kept quotes`, "saved quotes"},
	{`(?i)stands until`, "price good through"},
	{`(?i)stands on the roster`, "is an authorized signer of this plant"},
	{`(?i)not a byte`, "unchanged since it was signed"},
	{`(?i)\bin work\b`, "showing now"},
	{`(?i)answer by hand`, "not answered yet"},
	{`(?i)recalled`, "from memory, check the standard"},
	{`(?i)\bnought\b`, "zero"},
	{`(?i)to be (had|seen)\b`, "available, visible"},
	{`(?i)came about`, "how it was worked out"},
	{`(?i)\bgo(es)? before\b`, "replaces"},
	{`(?i)knows better|would do\b`, "beats, is enough"},
	{`(?i)of the draws|at any chance`, "how often, how sure"},
	{`(?i)quote stands for`, "price good for"},
	{`(?i)roster`, "list of signers"},
	{`(?i)no such day`, "no date"},
	{`(?i)takes the place of`, "replaces"},
	{`(?i)texts beside it`, "state and county rules"},
	{`(?i)set beside it`, "compare it with"},
	{`(?i)put their name to`, "signed"},
	{`(?i)waits? to be stowed`, "left to stow"},
	{`(?i)as the catalogue has it`, "from the catalogue"},
	{`(?i)\bmass(es)?\b`, "weight"},
	{`(?i)held against|stricter look`, "checked against"},
	{`(?i)plain idle`, "low idle"},
	{`(?i)steady load`, "continuous load"},
	{`(?i)none serves|fuse serves`, "none fits"},
	{`(?i)at \d+ in 100`, "percent"},
	{`(?i)kept quote`, "saved quote"},
	{`(?i)put (it|the comparison) away`, "close"},
	{`(?i)taken? in edited|edition beside it|built-in one beside`, "open, compare"},
	{`(?i)in force from`, "valid from"},
	{`(?m)^Together`, "total"},
	{`(?i)thriftier|take (a larger|an alternator)`, "lighter, choose a larger"},
	{`(?i)nobody has stated|assumed, not stated, is`, "nothing is stated, assumed size"},
	{`(?i)some seconds`, "a few seconds"},
	{`(?i)\b(tyre|colour|centre|litre|kerb)s?\b`, "American spelling"},
}

// What is shown and printed of units of several kinds is said in the trade's words.
func TestRetiredWordsStayAway(t *testing.T) {
	units := map[string][]Act{
		"fresh":  {{Do: "new", ID: "cut-14500-158-gas"}},
		"van":    {{Do: "new", ID: "van-9500-148-gas"}, {Do: "why", ID: "cab-16500-169-diesel"}},
		"asked":  {set("needs.duty", "critical"), set("unit.needed_by", "2027-01-15"), set("terms.budget", "200000")},
		"loaded": {{Do: "carry", ID: "eq-struts", Value: "9"}, {Do: "carry", ID: "eq-cribbing", Value: "9"}},
		"rescue": {set("needs.duty", "rescue"), {Do: "propose"}},
	}
	for name, acts := range units {
		t.Run(name, func(t *testing.T) {
			p := open(t)
			for _, a := range acts {
				require.Empty(t, p.do(a).Fault)
			}
			texts := papersOf(p)
			for _, a := range tabs {
				r := p.do(Act{Do: "go", ID: a.ID}).Regions
				texts[a.ID], texts["standing"] = readable(r["main"]), readable(r["standing"])
			}
			for where, text := range texts {
				for _, w := range retired {
					at := regexp.MustCompile(w.word).FindStringIndex(text)
					if at != nil {
						t.Errorf("%s: say %q: %s", where, w.say, text[max(0, at[0]-80):min(len(text), at[1]+80)])
					}
				}
			}
		})
	}
}
