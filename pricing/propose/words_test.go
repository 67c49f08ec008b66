package propose_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/quantity"
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

// A sum is called too much, or short, only where it is; where the rules need more than it
// shows, that is said.
func TestASumSaysWhetherItIsTooMuch(t *testing.T) {
	ed := quotetest.Demo(t)
	d := quote.Begin(ed, "cut-14500-158-gas", "mod-146-72", quotetest.Today)
	for _, id := range []string{"rest-four", "cot-power"} {
		u, _, ok := propose.Take(ed, d, id)
		require.True(t, ok)
		d.Unit = u
	}
	q, err := quote.Compute(ed, d)
	require.NoError(t, err)
	sums, rest := 0, 0
	for i := range ed.Cat.Chassis {
		for _, r := range propose.WaysTo(q, ed.Cat.Chassis[i].ID).Reasons {
			said := q.Words(r, quantity.US)
			assert.NotRegexp(t, `−[\d,.]+ \S+ (over|short|left)|[ :]0 \S+ (over|short|left)`, said)
			for _, a := range r.Limits {
				sums++
				if a.Over <= 0 {
					rest++
					assert.Contains(t, said, "and a full unit still needs more.")
				}
			}
		}
	}
	assert.Positive(t, sums)
	assert.Positive(t, rest, "there is one of each")
}
