package e2e

import (
	"encoding/json"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/pricing/link"
	"boxwright/pricing/quote"
	"boxwright/web/app"
	"boxwright/web/assets/catalogue"
)

// winchPicks is the unit of the firehouse walk: everything heavy at the front, so
// that the winch bumper is more than the front axle may carry.
var winchPicks = []string{"rest-four", "cot-power", "mount-power", "front-tall", "street-full", "build-ply", "bench-72",
	"o2-m1", "rbd-plate", "whl-steel"}

// winchLink is the link to that unit, worked out without a browser: a test that
// is about something else starts from it.
var winchLink = sync.OnceValues(func() (string, error) {
	return linkTo("cut-14500-158-gas", "mod-146-72", winchPicks...)
})

// openWinch opens the page with a copy of the winch unit to work on.
func (w *window) openWinch() {
	w.t.Helper()
	text, err := winchLink()
	w.must(err)
	w.must(w.Open(w.address + "#" + text))
	require.Empty(w.t, w.trouble())
	w.own()
}

// linkTo asks the core, as the page does, for a unit with these picks.
func linkTo(chassis, body string, picks ...string) (string, error) {
	acts := []app.Act{{Do: "new", ID: chassis, Value: body}}
	for _, id := range picks {
		acts = append(acts, app.Act{Do: "pick", ID: id, On: true})
	}
	request, err := json.Marshal(map[string]any{"v": app.Version, "today": "2026-11-25", "kept": true, "acts": acts})
	if err != nil {
		return "", err
	}
	var reply struct{ Draft json.RawMessage }
	if err := json.Unmarshal(app.New().Handle(request), &reply); err != nil {
		return "", err
	}
	ed, err := quote.OpenEdition(catalogue.Demo)
	if err != nil {
		return "", err
	}
	draft, err := quote.ReadDraft(reply.Draft)
	if err != nil {
		return "", err
	}
	q, err := quote.Compute(ed, draft)
	if err != nil {
		return "", err
	}
	return link.Encode(q)
}

// The shortcut must not part from what a person reaches by clicking.
func TestTheLinkIsTheClickedUnit(t *testing.T) {
	t.Parallel()
	text, err := winchLink()
	require.NoError(t, err)
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	draft, _, err := link.Decode(ed.Cat, text)
	require.NoError(t, err)
	for _, id := range winchPicks {
		require.True(t, draft.Unit.Has(id), "%s is in", id)
		require.False(t, draft.Unit.Find(id).Filled, "%s is a deliberate choice", id)
	}
}
