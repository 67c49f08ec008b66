package session

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing/quote"
	"boxwright/web/assets/catalogue"
)

// What a press changed beyond itself is told whole: what came, what went, what was
// exchanged, and not the thing pressed nor what it replaces.
func TestChangesAreTold(t *testing.T) {
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	today := config.Date{Year: 2026, Month: 11, Day: 25}
	for _, c := range []struct {
		name, reason, at string
		do               func(u *config.Unit)
		want             []ToldChange
	}{
		{"only the thing pressed", "nothing is said of nothing", "fb-push", func(u *config.Unit) {
			u.Drop("fb-stock")
			u.Set(config.Pick{Option: "fb-push", Qty: 1})
		}, nil},
		{"one more", "also a single thing is told", "fb-push", func(u *config.Unit) {
			u.Drop("fb-stock")
			u.Set(config.Pick{Option: "fb-push", Qty: 1})
			u.Drop("roof-drip")
		}, []ToldChange{{ID: "roof-drip"}}},
		{"an exchange", "of one group it is one change", "fb-push", func(u *config.Unit) {
			u.Drop("rs-flip")
			u.Set(config.Pick{Option: "rs-fixed", Qty: 1, Filled: true})
		}, []ToldChange{{ID: "rs-fixed", Added: true, Instead: "rs-flip"}}},
		{"another chassis", "by something else pressed", "new", func(u *config.Unit) {
			u.Chassis = "med-19500-175-diesel"
		},
			[]ToldChange{{ID: "med-19500-175-diesel", Added: true, Instead: "cut-14500-158-gas"}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := &Session{Memory: &Memory{Edition: ed}, Req: &Request{Today: today}, View: &View{}}
			s.Draft = quote.Begin(ed, "cut-14500-158-gas", "mod-146-72", today)
			was := s.Draft.Clone()
			c.do(&s.Draft.Unit)
			s.TellFrom(was, c.at)
			if c.want == nil {
				assert.Nil(t, s.View.Told, c.reason)
				return
			}
			require.NotNil(t, s.View.Told, c.reason)
			assert.Equal(t, c.want, s.View.Told.Changes, c.reason)
			w, err := (&Session{Memory: s.Memory, Req: s.Req, View: s.View, Draft: was}).Work()
			require.NoError(t, err)
			assert.True(t, w.Quote.Price.Total.Equal(s.View.Told.Total), "and what the unit came to before")
		})
	}
}

// A file with many faults names the first three and counts the rest.
func TestFaultsAreWordedAsSentences(t *testing.T) {
	ps := config.Problems{{Where: "a", Text: "is wrong"}, {Where: "b", Text: "is wrong"},
		{Where: "c", Text: "is wrong"}, {Where: "d", Text: "is wrong"}, {Where: "e", Text: "is wrong"}}
	for _, c := range []struct {
		name, reason string
		err          error
		want         string
	}{
		{"plain", "another error is said as it is", errors.New("no"), "no"},
		{"one", "a single fault", ps[:1], "a: is wrong."},
		{"three", "three are all named", ps[:3], "a: is wrong. b: is wrong. c: is wrong."},
		{"five", "the rest is counted", ps, "a: is wrong. b: is wrong. c: is wrong. And 2 more."},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, Sentence(c.err), c.reason) })
	}
}
