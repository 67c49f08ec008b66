package app

import (
	"encoding/json"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// sent is a reply with its pieces as they were sent.
type sent struct {
	Draft, View, Pins json.RawMessage
	Regions           map[string][]*string
	Shown             string
	Title, Say, Fault string
}

func send(t *testing.T, a *App, request []byte) sent {
	t.Helper()
	var s sent
	require.NoError(t, json.Unmarshal(a.Handle(request), &s))
	require.Empty(t, s.Fault)
	return s
}

// A page that says what it shows gets what changed, and puts together from it what
// a core that knows nothing of it draws.
func TestWhatChangedMakesTheWholePage(t *testing.T) {
	p := newPresser()
	delete(p.req, "shown")
	page, left := map[string][]string{}, 0
	for n := range 40 {
		_, act := p.next()
		p.req["acts"] = []Act{act}
		if n%8 == 7 { // the page was drawn by another core, or is behind
			p.req["shown"] = "another"
		}
		request, err := json.Marshal(p.req)
		require.NoError(t, err)
		got := send(t, p.app, request)
		delete(p.req, "shown")
		whole, err := json.Marshal(p.req)
		require.NoError(t, err)
		fresh := send(t, New(), whole)
		for id, pieces := range got.Regions {
			now := make([]string, len(pieces))
			for i, x := range pieces {
				if x != nil {
					now[i] = *x
				} else {
					now[i], left = page[id][i], left+1
				}
			}
			page[id] = now
		}
		require.JSONEq(t, string(fresh.Draft), string(got.Draft), "press %d, %v", n, act)
		require.Equal(t, fresh.Say, got.Say)
		for id, pieces := range fresh.Regions {
			want := make([]string, len(pieces))
			for i, x := range pieces {
				require.NotNil(t, x, "all of %s is sent to a page that shows nothing", id)
				want[i] = *x
			}
			require.Equal(t, want, page[id], "%s after press %d, %v", id, n, act)
		}
		p.req["draft"], p.req["view"], p.req["pins"], p.req["shown"] = got.Draft, got.View, got.Pins, got.Shown
		p.html = ""
		for _, x := range page["main"] {
			p.html += x
		}
	}
	require.Greater(t, left, 100, "much stays as it is")
}

// The name of what is shown tells apart pages that differ in one piece.
func TestPagesThatDifferAreNamedApart(t *testing.T) {
	a := new(App)
	base := map[string][]string{"main": {"<p>1</p>", "<p>2</p>"}, "areas": {"<ol></ol>"}}
	var names []string
	for _, x := range []struct {
		reason  string
		regions map[string][]string
		shown   string
	}{
		{"all of it", base, ""},
		{"another piece", map[string][]string{"main": {"<p>1</p>", "<p>3</p>"}, "areas": {"<ol></ol>"}}, ""},
		{"the same in another place", map[string][]string{"main": {"<p>2</p>", "<p>1</p>"}, "areas": {"<ol></ol>"}}, ""},
		{"a piece less", map[string][]string{"main": {"<p>1</p>"}, "areas": {"<ol></ol>"}}, ""},
		{"in another region", map[string][]string{"main": {"<ol></ol>"}, "areas": {"<p>1</p>", "<p>2</p>"}}, ""},
	} {
		t.Run(x.reason, func(t *testing.T) {
			_, name := a.changed(x.regions, x.shown)
			require.NotContains(t, names, name, x.reason)
			names = append(names, name)
		})
	}
	pieces, name := a.changed(base, names[len(names)-1])
	require.NotNil(t, pieces["main"][0], "another number of pieces: all are sent")
	pieces, next := a.changed(base, name)
	require.NotEqual(t, name, next)
	for _, list := range pieces {
		require.False(t, slices.ContainsFunc(list, func(x *string) bool { return x != nil }), "nothing changed")
	}
}
