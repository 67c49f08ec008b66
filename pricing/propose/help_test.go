package propose_test

import (
	"regexp"
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

// What helps says first where it leaves nothing to spare or even odds, another chassis
// or module is only offered where nothing smaller helps, and margins are told from what
// they are to what they become.
func TestHelpSaysWhatItLeaves(t *testing.T) {
	ed := quotetest.Demo(t)
	spare := regexp.MustCompile(`([^.]*) to spare: (\S+) (?:lb|A|in|%) → (\S+) `)
	helped, thin, little, told := 0, 0, 0, 0
	for _, on := range []struct {
		chassis, body string
		picks         []string
	}{
		{"cut-14500-158-gas", "mod-146-72", []string{"rest-four", "cot-power", "mount-power"}},
		{"cab-14000-169-4x4-diesel", "mod-153-72", nil},
	} {
		d := quote.Begin(ed, on.chassis, on.body, quotetest.Today)
		for _, id := range on.picks {
			u, _, ok := propose.Take(ed, d, id)
			require.True(t, ok)
			d.Unit = u
		}
		q, err := quote.Compute(ed, d)
		require.NoError(t, err)
		chance := 0
		for _, o := range propose.WaysTo(q, "fb-winch").Offers {
			_, percent := propose.Risk(q, &o.Unit, quantity.US)
			assert.GreaterOrEqual(t, percent, chance, "what leaves more stands first")
			chance = percent
			then := d.Clone()
			then.Unit = o.Unit
			is, err := quote.Compute(ed, then)
			require.NoError(t, err)
			text := propose.Effect(q, &o.Unit, o.Changes, nil, quantity.US).String()
			assert.NotContains(t, text, "On scene at low idle", "to miss what is only noted is no risk")
			if risk, word := slim(q, is); risk != "" {
				thin++
				assert.True(t, strings.HasPrefix(text, word), "the winch: %s: %s", risk, text)
				assert.Contains(t, text, risk)
			}
		}
		asked := 0
		for _, o := range ed.Cat.Options {
			if q.State(o.ID) != rules.RuledOut || asked == 30 {
				continue
			}
			asked++
			ways := propose.WaysTo(q, o.ID)
			swaps, stays, chance := 0, 0, 0
			for i := range ways.Mends {
				m := &ways.Mends[i]
				_, percent := propose.Risk(q, &m.Unit, quantity.US)
				assert.GreaterOrEqual(t, percent, chance, "%s: what leaves more stands first", o.Label)
				chance = percent
				if m.Unit.Chassis != d.Unit.Chassis || m.Unit.Body != d.Unit.Body {
					swaps++
				} else {
					stays++
				}
				then := d.Clone()
				then.Unit = m.Unit
				is, err := quote.Compute(ed, then)
				require.NoError(t, err)
				text := propose.MendEffect(q, &ways, m, quantity.US).String()
				helped++
				assert.NotContains(t, strings.ReplaceAll(text, "Total −", ""), "−",
					"%s: of nothing is there less than nothing to spare", o.Label)
				if risk, word := slim(q, is); risk != "" {
					thin++
					if word == "Little to spare: " {
						little++
					}
					assert.True(t, strings.HasPrefix(text, word), "%s: %s: %s", o.Label, risk, text)
					assert.Contains(t, text, risk, o.Label)
				}
				for _, said := range spare.FindAllStringSubmatch(text, -1) {
					for _, f := range is.Weight.Figures {
						if name, _, _ := strings.Cut(f.Label, ","); strings.TrimSpace(said[1]) == name &&
							f.Sense != "" {
							was, _ := q.Figure(f.Code)
							assert.True(t, strings.HasPrefix(quantity.US.Show(was.Margin(), f.Unit), said[2]), text)
							told++
							break
						}
					}
				}
			}
			assert.False(t, swaps > 0 && stays > 0, "%s: no other chassis or module where less helps", o.Label)
		}
	}
	assert.Greater(t, helped, 20)
	assert.Positive(t, thin)
	assert.Positive(t, little)
	assert.Positive(t, told)
}

// slim names the figure of which a unit has least to spare by its likely range, where it had
// more, and what is said before it.
func slim(was, is *quote.Quote) (label, word string) {
	for _, r := range []*config.Report{&is.Weight.Report, &is.Power.Report} {
		for _, f := range r.Figures {
			before, known := was.Figure(f.Code)
			if f.Sense == "" || f.Noted || f.Basis == config.FromMemory || f.Basis == config.CommonPractice ||
				known && before.Margin() <= f.Margin() {
				continue
			}
			beyond := f.Sense == config.AtMost && f.High > f.Limit || f.Sense == config.AtLeast && f.Low < f.Limit
			switch {
			case f.Margin() < .5 || f.Chance >= .335:
				return f.Label, "Only just: "
			case (f.Chance > .05 || beyond) && word == "":
				label, word = f.Label, "Little to spare: "
			}
		}
	}
	return label, word
}
