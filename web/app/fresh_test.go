package app

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math/rand"
	"regexp"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config/seeds"
	"boxwright/pricing/quote"
	"boxwright/web/assets/catalogue"
	"boxwright/web/session"
)

// recorder keeps every request that a page makes.
type recorder struct {
	*browser
	acts     [][]Act
	requests [][]byte
	tried    map[string]int // presses by their act
}

// request is one with these acts, from the state the page is in.
func (r *recorder) request(acts ...Act) {
	r.req["acts"] = acts
	data, err := json.Marshal(r.req)
	require.NoError(r.t, err)
	r.acts, r.requests = append(r.acts, acts), append(r.requests, data)
}

// do makes requests as the page does, and tries what is to be pressed on each page.
func (r *recorder) do(acts ...Act) shown {
	r.t.Helper()
	r.request(acts...)
	s := r.ask(acts...)
	require.Empty(r.t, s.Fault, "%v", acts)
	for s.Partial {
		r.request(Act{Do: "rest"})
		s = r.ask(Act{Do: "rest"})
	}
	r.tryAll(s)
	return s
}

var pressable = regexp.MustCompile(`<[^>]* data-act="([a-z-]+)"[^>]*>`)

// tryAll makes a request of some presses of each kind that the page offers, which
// do not change what the next is asked of.
func (r *recorder) tryAll(s shown) {
	attr := func(tag, name string) string {
		if m := regexp.MustCompile(` data-` + name + `="([^"]*)"`).FindStringSubmatch(tag); m != nil {
			return m[1]
		}
		return ""
	}
	for _, region := range []string{"main", "masthead", "areas"} {
		for _, m := range pressable.FindAllStringSubmatch(s.Regions[region], -1) {
			if r.tried[m[1]]++; r.tried[m[1]] <= 4 {
				r.request(Act{Do: m[1], ID: attr(m[0], "id"), Value: attr(m[0], "value"), On: true})
			}
		}
	}
}

// walk goes through everything the page can be asked for.
func walk(t *testing.T) *recorder {
	r := &recorder{browser: open(t), tried: map[string]int{}}
	r.do(Act{Do: "start"})
	r.do(set("needs.duty", "contaminated"), set("needs.crew", "5"), Act{Do: "wish", ID: "cot-power", Value: "must"})
	r.do(Act{Do: "propose"})
	r.do(Act{Do: "take-proposal", ID: "lightest"})
	r.do(Act{Do: "go", ID: "compare"})
	r.do(set("needs.duty", ""), Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"},
		set("unit.needed_by", "2028-06-01"))
	r.do(Act{Do: "paste-list", Value: county(t)})
	for _, a := range Areas() {
		r.do(Act{Do: "go", ID: a})
	}
	r.do(Act{Do: "go", ID: "delivery"}, Act{Do: "too-late"})
	r.do(set("chance", "70"))
	r.do(Act{Do: "go", ID: "unit"}, Act{Do: "chapter", ID: "chassis"})
	for _, id := range []string{"van-9500-148-gas", "mod-164-72", "fb-winch", "df-hydraulic-power", "sw-van", "sw-15"} {
		r.do(Act{Do: "why", ID: id})
		r.request(Act{Do: "mend", ID: id, Value: "0"})
		r.request(Act{Do: "offer", ID: id, Value: "0"})
	}
	r.do(Act{Do: "search", Value: "light"})
	r.do(Act{Do: "search"})
	for i := range r.app.memory.Edition.Cat.Chapters {
		r.do(Act{Do: "chapter", ID: r.app.memory.Edition.Cat.Chapters[i].ID})
	}
	r.do(Act{Do: "chapter", ID: "exterior"})
	p := &presser{app: r.app, req: r.req, html: r.do().Regions["main"], seed: uint32(seeds.First() + 1)}
	for range 30 {
		_, a := p.next()
		p.html = r.do(a).Regions["main"]
	}
	for _, aim := range []string{"", "cheapest", "lightest", "soonest"} {
		r.do(Act{Do: "complete", ID: aim})
	}
	for n := len(draftOf(t, r.do()).More); n > 0; n-- { // beginning one anew leaves the others
		r.do(Act{Do: "drop", ID: "item.0"})
	}
	r.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"}) // a unit that the ticket fits
	r.do(set("ticket.what", "unit"), set("ticket.total", "11,096"), Act{Do: "add-ticket"}, Act{Do: "go", ID: "weight"})
	r.do(Act{Do: "units"})
	r.do(Act{Do: "remount", ID: "cab-16500-169-diesel"})
	r.do(Act{Do: "mountings"})
	r.do(Act{Do: "go", ID: "unit"}, Act{Do: "chapter", ID: "module"})
	signed := r.signed(t, demoKey(t, r.browser, "demo-key.json"))
	for _, paper := range []string{"quote", "exceptions", "order", "test", "labels", "upkeep"} {
		r.do(Act{Do: "paper", ID: paper})
	}
	r.do(Act{Do: "open-link", Value: signedDraft(t, signed).Issued})
	return r
}

// freshCore is one that was asked nothing yet. Its catalogue is not checked again.
func freshCore(t *testing.T, hash string) *App {
	ed, err := quote.OpenBuilt(catalogue.Demo, hash)
	require.NoError(t, err)
	a := New()
	a.memory.Keep.BuiltIn = session.Held{Ed: ed, File: catalogue.Demo}
	a.memory.Use(a.memory.Keep.BuiltIn)
	return a
}

// A core that was just started gives the same reply to every request as one that
// has served many others, in any order: only its word of work under way may differ.
// (Editions that the page has handed it, and costs that were unlocked, are told to a
// new core first; how far it is with checking an edition is the keeper's own, and is
// left out.)
func TestFreshAndUsedCoreReplyAlike(t *testing.T) {
	w := walk(t)
	used, hash := w.app, w.app.memory.Edition.Cat.Hash()
	sliced := freshCore(t, hash)
	sliced.Slice = 500
	ended := 0
	every := int64(8) // with other seeds others are asked
	if testing.Short() {
		every = 16
	}
	for _, i := range rand.New(rand.NewSource(seeds.First())).Perm(len(w.requests)) {
		if int64(i)%every != seeds.First()%every {
			continue
		}
		for _, a := range []*App{used, sliced} {
			a.memory.Keep.Linting, a.memory.Keep.Linted = nil, nil
		}
		want := decided(freshCore(t, hash).Handle(w.requests[i]))
		what := fmt.Sprintf("request %d of %d, %v", i, len(w.requests), w.acts[i])
		alike(t, want, decided(used.Handle(w.requests[i])), what+", used")
		idle := []Act{{Do: "rest"}}
		if i%2 == 1 {
			idle = []Act{{Do: "rehearse", ID: Areas()[i%len(Areas())]}}
		}
		ended += interrupted(t, sliced, w.requests[i], idle, int(i%5))
		alike(t, want, decided(whole(t, sliced, w.requests[i])), what+", in slices")
	}
	require.NotZero(t, ended, "work that a press ended")
}

// interrupted has a core work for some slices on what nobody waits for, from the state
// that a request was made in; 1 where that left it unfinished.
func interrupted(t *testing.T, a *App, request []byte, idle []Act, slices int) int {
	var req map[string]any
	require.NoError(t, json.Unmarshal(request, &req))
	req["acts"] = idle
	rest, err := json.Marshal(req)
	require.NoError(t, err)
	for range slices {
		a.Handle(rest)
	}
	if a.idle == nil {
		return 0
	}
	return 1
}

// The rest of an answer, and making an area ready, come in several slices, so that a press
// waits for one of them alone.
func TestWhatNobodyWaitsForRestsInBetween(t *testing.T) {
	r := &recorder{browser: open(t), tried: map[string]int{}}
	r.ask(Act{Do: "start"})
	a := freshCore(t, r.app.memory.Edition.Cat.Hash())
	a.Slice = 20_000
	slices := func() int {
		n := 1
		for bytes.Contains(a.Handle(r.requests[len(r.requests)-1]), []byte(`"working":true`)) {
			n++
		}
		return n
	}
	for _, area := range Areas() {
		r.request(Act{Do: "rehearse", ID: area})
		require.GreaterOrEqual(t, slices(), 5, area)
		r.do(Act{Do: "go", ID: area})
		r.request(Act{Do: "rest"})
		require.GreaterOrEqual(t, slices(), 3, area)
	}
}

// whole is the reply of a core that works in slices.
func whole(t *testing.T, a *App, request []byte) []byte {
	for range 100_000 {
		if reply := a.Handle(request); !bytes.Contains(reply, []byte(`"working":true`)) {
			return reply
		}
	}
	require.Fail(t, "it never ends")
	return nil
}

func alike(t *testing.T, want, got []byte, what string) {
	if bytes.Equal(want, got) {
		return
	}
	at := 0
	for at < min(len(want), len(got)) && want[at] == got[at] {
		at++
	}
	part := func(b []byte) []byte { return b[min(max(at-200, 0), len(b)):min(at+400, len(b))] }
	t.Errorf("%s, byte %d:\nwant %s\ngot  %s", what, at, part(want), part(got))
}

// decided is a reply without its word of work under way.
func decided(reply []byte) []byte {
	return bytes.Replace(reply, []byte(`,"undecided":true`), nil, 1)
}
