package propose_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/config"
	"boxwright/config/rules"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
)

// What completing a unit changed is named up to five things a side, and the
// rest is counted.
func TestChangeWords(t *testing.T) {
	ed := quotetest.Demo(t)
	var out, in []rules.Change
	for i, label := range strings.Fields("A B C D E F G H") {
		o := &ed.Cat.Options[i]
		o.Label = label
		out = append(out, rules.Change{Option: o.ID})
		in = append(in, rules.Change{Option: o.ID, Added: true})
	}
	q := &quote.Quote{Edition: ed}
	for _, c := range []struct {
		name, reason string
		changes      []rules.Change
		want         string
	}{
		{"nothing", "what did not change is not said", nil, ""},
		{"one out", "a single thing", out[:1], "Removed: A."},
		{"one in", "what is added comes in", in[:1], "Added: A."},
		{"both", "what goes is said first", append(in[:1:1], out[1]), "Removed: B. Added: A."},
		{"five", "five are all named", out[:5], "Removed: A; B; C; D; E."},
		{"six", "of six one is counted", out[:6], "Removed: A; B; C; D; E and 1 more."},
		{"eight", "each side is cut by itself", append(in[:8:8], out[0]), "Removed: A. Added: A; B; C; D; E and 3 more."},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, propose.ChangeWords(q, c.changes), c.reason) })
	}
}

// What takes the place of something standard counts as an exchange, and what only leaves it
// out does not.
func TestStandardItemsAreCounted(t *testing.T) {
	ed := quotetest.Demo(t)
	d := quote.Begin(ed, "", "", quotetest.Today)
	d.Unit.Drop("front-tall")
	d.Unit.Set(config.Pick{Option: "front-none", Qty: 1, Filled: true})
	d.Unit.Drop("build-seam")
	d.Unit.Set(config.Pick{Option: "build-stitch", Qty: 1, Filled: true})
	missing, other := propose.Lacks(ed, &d.Unit)
	assert.Contains(t, missing, "front-tall")
	assert.Equal(t, []propose.Exchange{{Standard: "build-seam", Instead: "build-stitch"}}, other)
}
