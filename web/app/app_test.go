package app

import (
	"encoding/json"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/web/session"
)

// ask sends acts to an app the way the page does, with the state of the reply
// before.
type browser struct {
	t   *testing.T
	app *App
	req map[string]any
}

func open(t *testing.T) *browser {
	return &browser{t: t, app: New(),
		req: map[string]any{"v": 1, "today": "2026-11-25", "base": "https://quotes.example/", "kept": true}}
}

// openAt is open in an area.
func openAt(t *testing.T, area string) *browser {
	p := open(t)
	p.do(Act{Do: "go", ID: area})
	return p
}

type shown struct {
	Draft   json.RawMessage `json:"draft"`
	View    json.RawMessage `json:"view"`
	Pins    []string        `json:"pins"`
	Regions regions         `json:"regions"`
	Title   string          `json:"title"`
	Say     string          `json:"say"`
	Said    string          `json:"said"`
	Fault   string          `json:"fault"`
	Notice  string          `json:"notice"`
	Do      []Step          `json:"do"`
	Gist    Gist            `json:"gist"`
	Partial bool            `json:"partial"`

	Rehearsed bool `json:"rehearsed"`
}

// regions are the pieces of each region put together.
type regions map[string]string

func (r *regions) UnmarshalJSON(data []byte) error {
	var pieces map[string][]string
	if err := json.Unmarshal(data, &pieces); err != nil {
		return err
	}
	*r = regions{}
	for id, list := range pieces {
		(*r)[id] = strings.Join(list, "")
	}
	return nil
}

// Like the page it comes back for what takes long, until nothing is left out; what the
// first reply said and asked for is told.
func (p *browser) do(acts ...Act) shown {
	p.t.Helper()
	s := p.ask(acts...)
	if s.Partial {
		next := p.ask(Act{Do: "rest"})
		for range 1000 { // going through a catalogue takes several
			if !next.Partial {
				break
			}
			next = p.ask(Act{Do: "rest"})
		}
		require.False(p.t, next.Partial, "nothing is left out of the rest")
		s.Draft, s.View, s.Pins, s.Regions = next.Draft, next.View, next.Pins, next.Regions
	}
	return s
}

func (p *browser) ask(acts ...Act) shown {
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
	require.Contains(t, s.Regions["main"], "A quote begins in one of three ways.")
	require.Equal(t, "begun", s.Said, "the first of the earlier states has a name")
}

// What is gone through while nobody waits leaves no trace.
func TestRehearsal(t *testing.T) {
	p, plain := open(t), open(t)
	p.do(Act{Do: "new", ID: "cut-14500-158-gas"})
	plain.do(Act{Do: "new", ID: "cut-14500-158-gas"})
	for _, a := range tabs {
		s := p.ask(Act{Do: "rehearse", ID: a.ID})
		require.Empty(t, s.Fault)
		require.True(t, s.Rehearsed)
		require.Nil(t, s.Regions)
	}
	for _, a := range tabs {
		require.Equal(t, plain.do(Act{Do: "go", ID: a.ID}), p.do(Act{Do: "go", ID: a.ID}), a.ID)
	}
	s := p.do(Act{Do: "rehearse", ID: "unit"}, Act{Do: "units"})
	require.False(t, s.Rehearsed, "beside something else it is nothing")
	require.NotNil(t, s.Regions)
}

// The list of earlier states calls a field as the page does.
func TestStatesAreCalledAsOnThePage(t *testing.T) {
	p := open(t)
	p.do(Act{Do: "start"})
	for _, c := range []struct {
		reason string
		act    Act
		want   string
	}{
		{"a field with its label", Act{Do: "set", ID: "unit.needed_by", Value: "2028-01-01", Said: "Needed by: Jan 1, 2028"}, "Needed by: Jan 1, 2028"},
		{"one that the page does not name", set("unit.needed_by", "2028-02-01"), "unit, needed by: 2028-02-01"},
		{"equipment", Act{Do: "carry", ID: "stair-chair", Value: "1", Said: "How many: Stair chair: 1"}, "How many: Stair chair: 1"},
		{"an option by its own name, whatever the page says", Act{Do: "pick", ID: "fb-guard", On: true, Said: "Markup: <b>"}, "Bumper with grille guard is in"},
		{"a notice", Act{Do: "pin"}, "Added to compare. Now change the unit, and compare."},
		{"a button by its name", Act{Do: "add", ID: "lease", Button: "Add a lease"}, "Add a lease"},
		{"a hostile length", Act{Do: "set", ID: "title", Value: "x", Said: strings.Repeat("x", 9999)}, strings.Repeat("x", session.MaxSaid)},
	} {
		t.Run(c.reason, func(t *testing.T) {
			assert.Equal(t, c.want, p.do(c.act).Said, c.reason)
		})
	}
}

// Every area and every paper writes days as its readers do; only a date field
// holds the form of the files, for the browser.
func TestDaysAreWrittenForReaders(t *testing.T) {
	p := open(t)
	p.do(Act{Do: "start"}, set("unit.needed_by", "2028-01-01"), set("ticket.date", "3/3/2027"),
		set("ticket.total", "14000"), Act{Do: "add-ticket"}, Act{Do: "pin"}, Act{Do: "propose"})
	tag := regexp.MustCompile(`<[^>]*>`)
	seen := 0
	look := func(act Act) {
		for region, html := range p.do(act).Regions {
			text := tag.ReplaceAllString(html, " ")
			for _, wrong := range regexp.MustCompile(`\b(19|20|21)\d\d-\d\d-\d\d\b|\b\d{1,2} (Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)[a-z]* (19|20)\d\d`).FindAllString(text, -1) {
				t.Errorf("%s %s: %q is not how an American writes a day", act.ID, region, wrong)
			}
			seen += len(regexp.MustCompile(`\b(Mon|Tue|Wed|Thu|Fri|Sat|Sun), [A-Z][a-z]{2} \d{1,2}, 20\d\d`).FindAllString(text, -1))
		}
	}
	for _, a := range tabs {
		look(Act{Do: "go", ID: a.ID})
	}
	for _, id := range []string{"quote", "exceptions", "order", "test", "labels", "upkeep"} {
		look(Act{Do: "paper", ID: id})
	}
	assert.Greater(t, seen, 50)
}

func BenchmarkClick(b *testing.B) {
	p := &browser{t: &testing.T{}, app: New(), req: map[string]any{"v": 1, "today": "2026-11-25", "kept": true}}
	p.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"}, Act{Do: "go", ID: "unit"},
		Act{Do: "chapter", ID: "lighting"})
	on := true
	for b.Loop() {
		p.do(Act{Do: "pick", ID: "fb-push", On: on})
		on = !on
	}
}
