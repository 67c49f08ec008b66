package propose_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config/quantity"
	"boxwright/pricing/money"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
)

// The winch goes on the usual cutaway with a few exchanges, not with every second thing
// exchanged, and where it would leave nothing to spare the chassis that leave enough go first.
func TestAnOfferChangesAsLittleAsCanBe(t *testing.T) {
	ed := quotetest.Demo(t)
	for _, c := range []struct {
		name  string
		picks []string
	}{
		{"the bare cutaway", nil},
		{"with a powered cot and its loader", []string{"rest-four", "cot-power", "mount-power"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := quote.Begin(ed, "cut-14500-158-gas", "mod-146-72", quotetest.Today)
			for _, id := range c.picks {
				u, _, ok := propose.Take(ed, d, id)
				require.True(t, ok)
				d.Unit = u
			}
			q, err := quote.Compute(ed, d)
			require.NoError(t, err)
			offers := propose.WaysTo(q, "fb-winch").Offers
			require.Len(t, offers, 3)
			assert.Empty(t, offers[2].Chassis, "the present chassis leaves nothing to spare, and stands last")
			for i := range offers {
				o := &offers[i]
				assert.Less(t, len(o.Changes), 25)
				assert.True(t, o.Unit.Has("fb-winch"))
				for _, id := range c.picks {
					assert.True(t, o.Unit.Has(id), "a choice stays")
				}
				then := d.Clone()
				then.Unit = o.Unit
				is, err := quote.Compute(ed, then)
				require.NoError(t, err)
				assert.False(t, is.Stopped())
				said := propose.Effect(q, &o.Unit, o.Changes, nil, quantity.US).String()
				assert.Equal(t, len(o.Changes) > 8, strings.Contains(said, "This changes much of the unit: "), said)
				if o.Chassis == "" {
					left := d.Unit.Clone()
					for _, x := range o.Changes {
						assert.NotEqual(t, x.Added, left.Has(x.Option), x.Option)
						assert.Equal(t, x.Added, o.Unit.Has(x.Option), x.Option)
						left.Drop(x.Option)
					}
					for _, p := range left.Picks {
						assert.True(t, o.Unit.Has(p.Option) || p.Option == "fb-stock", "%s goes unsaid", p.Option)
					}
				}
			}
		})
	}
}

// A proposal that is declared to a standard and misses a number of it, be it from memory, says by
// how much and what would have to go.
func TestAProposalSaysWhatItsDeclarationMisses(t *testing.T) {
	ed := quotetest.Demo(t)
	d := quote.Begin(ed, "", "", quotetest.Today)
	d.Needs = quote.Needs{Type: "I", Drive: "4x4", Fuel: "diesel", ModuleIn: 153, ModuleMostIn: 153, Crew: 6,
		HeadroomIn: 72, Must: []string{"cot-power", "mount-power", "doc-declaration"}}
	s := propose.Propose(ed, d)
	require.Len(t, s.Proposals, 3)
	for _, p := range s.Proposals {
		assert.Empty(t, p.Quote.Misdeclared(), "those that keep the declaration go first: %s", p.Title)
	}
	require.NotNil(t, s.Aside)
	require.NotEmpty(t, s.Aside.Quote.Misdeclared(), "the lighter chassis is no additional duty type")
	said := strings.Join(s.Aside.Checks, " ")
	assert.Contains(t, said, "275.0 in, missed by 11.0 in (at most 264.0 in, from memory)")
	assert.Contains(t, said, "this would have to go: "+ed.Cat.LabelOf("doc-declaration"))

	d.Terms.Budget = money.Dollars(300_000)
	s = propose.Propose(ed, d)
	undue := 0
	for _, g := range propose.GiveUps(&s).List {
		on := d.Clone()
		on.Unit, on.Needs = g.Unit, g.Needs
		q, err := quote.Compute(ed, on)
		require.NoError(t, err)
		if q.Misdeclared() == "" {
			assert.Empty(t, g.Undue, g.Said(quantity.US))
			continue
		}
		undue++
		assert.Contains(t, g.Undue, "(at most 264.0 in, from memory)", "what would have to go says so as well")
		assert.Contains(t, g.Undue, "this would have to go: "+ed.Cat.LabelOf("doc-declaration"))
	}
	assert.Positive(t, undue)
}

// Where a duty needs one of several things, what it suits is fitted, and not whatever keeps
// the rule.
func TestADutyIsFittedWithWhatSuitsIt(t *testing.T) {
	ed := quotetest.Demo(t)
	for _, c := range []struct {
		name, reason string
		needs        quote.Needs
		has          []string
		not          []string
	}{
		{"advanced life support", "a drug locker, not a drawer that warms fluids", quote.Needs{Duty: "als", Type: "I",
			Crew: 5}, []string{"drug-lock", "mount-monitor-swivel"}, []string{"drug-warmer", "mount-monitor-tray"}},
		{"critical care", "the monitor swings to the patient", quote.Needs{Duty: "critical", Type: "I", Crew: 4},
			[]string{"mount-monitor-swivel"}, []string{"mount-monitor-tray"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := quote.Begin(ed, "", "", quotetest.Today)
			d.Needs = c.needs
			s := propose.Propose(ed, d)
			require.NotEmpty(t, s.Proposals)
			for _, p := range s.Proposals {
				for _, id := range c.has {
					assert.True(t, p.Unit.Has(id), "%s has %s: %s", p.Title, id, c.reason)
				}
				for _, id := range c.not {
					assert.False(t, p.Unit.Has(id), "%s has no %s: %s", p.Title, id, c.reason)
				}
			}
		})
	}
}

// Where a choice needs one of several, the one that the catalogue names first comes with it.
func TestOfSeveralTheFirstIsFilledIn(t *testing.T) {
	ed := quotetest.Demo(t)
	d := quote.Begin(ed, "cut-14500-158-gas", "mod-146-72", quotetest.Today)
	u, changes, ok := propose.Take(ed, d, "dp-als")
	require.True(t, ok)
	for _, id := range []string{"drug-lock", "mount-monitor-swivel"} {
		assert.True(t, u.Has(id), "%s: %+v", id, changes)
	}
	for _, id := range []string{"drug-warmer", "mount-monitor-tray"} {
		assert.False(t, u.Has(id), "%s: %+v", id, changes)
	}
}

// A rescue or hazmat body pays for no belts and lists no upholstery where it has no seats; its crew
// seats come with their own.
func TestABodyWithoutSeatsPaysForNoBelts(t *testing.T) {
	ed := quotetest.Demo(t)
	for _, duty := range []string{"rescue", "hazmat"} {
		t.Run(duty, func(t *testing.T) {
			d := quote.Begin(ed, "", "", quotetest.Today)
			d.Needs = quote.Needs{Duty: duty}
			s := propose.Propose(ed, d)
			require.NotEmpty(t, s.Proposals)
			for _, p := range s.Proposals {
				assert.False(t, p.Unit.Has("crew-two") || p.Unit.Has("crew-three"))
				for _, id := range []string{"rest-three", "rest-four", "uph-charcoal"} {
					assert.False(t, p.Unit.Has(id), id)
				}
			}
			d.Unit = s.Proposals[0].Unit
			seated, _, ok := propose.Take(ed, d, "crew-two")
			require.True(t, ok)
			assert.False(t, seated.Has("rest-three"))
			assert.Contains(t, ed.Cat.OptionByID("crew-two").Spec, "lap and shoulder belts")
		})
	}
}
