package app

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"
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
	Gist    Gist              `json:"gist"`
}

func (p *page) do(acts ...Act) shown {
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

func BenchmarkClick(b *testing.B) {
	p := &page{t: &testing.T{}, app: New(), req: map[string]any{"v": 1, "today": "2026-11-25", "kept": true}}
	p.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"}, Act{Do: "go", ID: "unit"}, Act{Do: "chapter", ID: "lighting"})
	on := true
	for b.Loop() {
		p.do(Act{Do: "pick", ID: "fb-push", On: on})
		on = !on
	}
}
