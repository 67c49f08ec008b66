package app

import (
	"encoding/json"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config/seeds"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
)

// mostReply is far more than any page has.
const mostReply = 24 << 20

// A hostile catalogue that is taken does not keep the page from being worked on: every
// area and every chapter is drawn, and what is offered there can be pressed.
func TestThePageWorksWithHostileCatalogues(t *testing.T) {
	n := int64(3)
	if testing.Short() {
		n = 1
	}
	for seed := range seeds.Each(1000) {
		file := quotetest.Hostile(rand.New(rand.NewPCG(uint64(seed), 1)), 1<<18, false)
		ed, err := quote.Accept(file)
		if err != nil {
			continue
		}
		p := hostilePage{browser: open(t), seed: seed}
		p.work(ed, file)
		if n--; n == 0 {
			return
		}
	}
}

type hostilePage struct {
	*browser
	seed int64
}

// press asks as the page does, and holds what comes back within its bounds.
func (p *hostilePage) press(acts ...Act) string {
	p.t.Helper()
	for range 400 {
		p.req["acts"] = acts
		data, err := json.Marshal(p.req)
		require.NoError(p.t, err)
		reply := p.app.Handle(data)
		require.Less(p.t, len(reply), mostReply, "seed %d, %v", p.seed, acts[0].Do)
		var s shown
		require.NoError(p.t, json.Unmarshal(reply, &s), "seed %d, %v", p.seed, acts[0].Do)
		if s.Regions == nil {
			return "" // refused in words
		}
		require.NotContains(p.t, s.Fault, "the program fails", "seed %d, %v", p.seed, acts[0].Do)
		p.req["draft"], p.req["view"], p.req["pins"] = s.Draft, s.View, s.Pins
		if !s.Partial {
			return s.Regions["main"]
		}
		acts = []Act{{Do: "rest"}}
	}
	p.t.Fatalf("seed %d: the page comes back without an end", p.seed)
	return ""
}

func (p *hostilePage) work(ed *quote.Edition, file []byte) {
	p.t.Helper()
	p.press(Act{Do: "start"})
	p.press(Act{Do: "load-catalogue", ID: "x.json", Value: string(file)}, Act{Do: "move-here"})
	p.press(Act{Do: "new", ID: ed.Cat.Chassis[0].ID})
	for _, area := range Areas() {
		require.NotEmpty(p.t, p.press(Act{Do: "go", ID: area}), "seed %d, %s", p.seed, area)
	}
	for i := range ed.Cat.Chapters[:min(3, len(ed.Cat.Chapters))] {
		p.press(Act{Do: "go", ID: "unit"}, Act{Do: "chapter", ID: ed.Cat.Chapters[i].ID})
	}
	for i := 0; i < len(ed.Cat.Options); i += max(len(ed.Cat.Options)/4, 1) {
		id := ed.Cat.Options[i].ID
		p.press(Act{Do: "why", ID: id})
		p.press(Act{Do: "pick", ID: id, Value: "1", On: true})
	}
	p.press(Act{Do: "go", ID: "needs"}, Act{Do: "propose"})
	p.press(Act{Do: "decide"})
	for _, paper := range []string{"quote", "order", "drawings"} {
		p.press(Act{Do: "go", ID: "quote"}, Act{Do: "paper", ID: paper})
	}
}

// A kept quote that cannot be used is told of and left; what only says where the reader
// was is done without.
func TestWhatIsKeptAndCannotBeUsed(t *testing.T) {
	sound, first := begun(t), open(t).do(Act{Do: "start"})
	draft, view := string(sound.req["draft"].(json.RawMessage)), string(sound.req["view"].(json.RawMessage))
	for reason, x := range seeds.InOrder(map[string]struct{ draft, view, says string }{
		"more than anything carries": {strings.Replace(draft, `"picks":`,
			`"carried":[{"equipment":"eq-stock","qty":1000000000}],"picks":`, 1), view, "1000000000"},
		"an option nobody has": {strings.Replace(draft, `"option":"`, `"option":"no-such-thing-`, 1), view,
			"no-such-thing-"},
		"a view of another version": {draft, `{"from_another_version":1}`, ""},
		"a view that is none":       {draft, `"x"`, ""},
		"pins":                      {draft, view, ""},
	}) {
		p := open(t)
		p.req["draft"], p.req["view"] = json.RawMessage(x.draft), json.RawMessage(x.view)
		if reason == "pins" {
			p.req["pins"] = []int{7}
		}
		s := p.do(Act{Do: "start"})
		if x.says == "" {
			assert.Empty(t, s.Fault, reason)
			assert.JSONEq(t, draft, string(s.Draft), reason)
		} else {
			assert.Contains(t, s.Fault, x.says, reason)
			assert.NotContains(t, string(s.Draft), x.says, reason)
		}
		if reason == "a view that is none" {
			assert.JSONEq(t, string(first.View), string(s.View), "the reader is where newcomers are")
		}
		s = p.do(Act{Do: "go", ID: "unit"})
		assert.Empty(t, s.Fault, reason)
	}
}
