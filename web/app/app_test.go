package app

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/web/view"
)

// ask sends acts to an app the way the page does, with the state of the reply
// before.
type page struct {
	t   *testing.T
	app *App
	req map[string]any
}

func open(t *testing.T) *page {
	return &page{t: t, app: New(), req: map[string]any{"v": 1, "today": "2026-11-25", "base": "https://quotes.example/", "kept": true}}
}

type shown struct {
	Draft   json.RawMessage   `json:"draft"`
	View    json.RawMessage   `json:"view"`
	Pins    []string          `json:"pins"`
	Regions map[string]string `json:"regions"`
	Title   string            `json:"title"`
	Say     string            `json:"say"`
	Fault   string            `json:"fault"`
	Do      []Step            `json:"do"`
	Soon    bool              `json:"soon"`

	Rehearsed bool `json:"rehearsed"`
}

// Like the page it comes back once for what takes long; what the first reply
// said and asked for is told.
func (p *page) do(acts ...Act) shown {
	p.t.Helper()
	s := p.ask(acts...)
	if s.Soon {
		next := p.ask(Act{Do: "settle"})
		require.False(p.t, next.Soon, "what is left out once is there the next time")
		s.Draft, s.View, s.Pins, s.Regions = next.Draft, next.View, next.Pins, next.Regions
	}
	return s
}

func (p *page) ask(acts ...Act) shown {
	p.t.Helper()
	p.req["acts"] = acts
	data, err := json.Marshal(p.req)
	require.NoError(p.t, err)
	var s shown
	require.NoError(p.t, json.Unmarshal(p.app.Handle(data), &s))
	if s.Regions != nil {
		p.req["draft"], p.req["view"], p.req["pins"] = s.Draft, s.View, s.Pins
	}
	return s
}

func TestStart(t *testing.T) {
	s := open(t).do(Act{Do: "start"})
	require.Empty(t, s.Fault)
	require.Contains(t, s.Regions["main"], "Needs")
}

// What is gone through while nobody waits leaves no trace.
func TestRehearsal(t *testing.T) {
	p, plain := open(t), open(t)
	p.do(Act{Do: "new", ID: "cut-14500-158-gas"})
	plain.do(Act{Do: "new", ID: "cut-14500-158-gas"})
	for _, a := range view.Areas {
		s := p.ask(Act{Do: "rehearse", ID: a.ID})
		require.Empty(t, s.Fault)
		require.True(t, s.Rehearsed)
		require.Nil(t, s.Regions)
	}
	for _, a := range view.Areas {
		require.Equal(t, plain.do(Act{Do: "go", ID: a.ID}), p.do(Act{Do: "go", ID: a.ID}), a.ID)
	}
	s := p.do(Act{Do: "rehearse", ID: "unit"}, Act{Do: "units"})
	require.False(t, s.Rehearsed, "beside something else it is nothing")
	require.NotNil(t, s.Regions)
}

func BenchmarkClick(b *testing.B) {
	p := &page{t: &testing.T{}, app: New(), req: map[string]any{"v": 1, "today": "2026-11-25", "kept": true}}
	p.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"}, Act{Do: "go", ID: "unit"}, Act{Do: "chapter", ID: "lighting"})
	on := true
	for b.Loop() {
		p.do(Act{Do: "pick", ID: "fb-push", On: on})
		on = !on
	}
}
