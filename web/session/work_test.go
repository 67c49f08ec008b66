package session

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing/quote"
	"boxwright/web/assets/catalogue"
)

// What was worked out of a draft is kept for that draft alone: acts on the
// draft do not reach it, and another draft is worked out anew.
func TestWorkIsKeptForItsDraft(t *testing.T) {
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	today := config.Date{Year: 2026, Month: 11, Day: 25}
	s := &Session{Memory: &Memory{Edition: ed}, Req: &Request{Today: today}, View: &View{}}
	s.Begin()
	first, err := s.Work()
	require.NoError(t, err)
	again, err := s.Work()
	require.NoError(t, err)
	assert.Same(t, first, again, "the same draft is worked out once")

	before, title := first.Quote.Total(), first.Quote.Draft.Title
	require.False(t, s.Draft.Unit.Has("fb-push"))
	s.Draft.Title = "Rescue 9"
	s.Draft.Unit.Set(config.Pick{Option: "fb-push", Qty: 1})
	assert.Equal(t, title, first.Quote.Draft.Title, "an act does not reach what was worked out before it")
	assert.False(t, first.Quote.Draft.Unit.Has("fb-push"))

	second, err := s.Work()
	require.NoError(t, err)
	assert.NotSame(t, first, second, "another draft is worked out anew")
	assert.NotEqual(t, before, second.Quote.Total())
	assert.Equal(t, "Rescue 9", second.Quote.Draft.Title)

	s.Draft.Title = title
	s.Draft.Unit.Drop("fb-push")
	back, err := s.Work()
	require.NoError(t, err)
	assert.Same(t, first, back, "undo finds what was kept")
	for i := range mostLatest + 2 {
		s.Draft.Number = string(rune('A' + i))
		_, err = s.Work()
		require.NoError(t, err)
	}
	assert.Len(t, s.Memory.worked.list, mostLatest, "no more are kept than are gone back to")
}
