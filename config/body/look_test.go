package body_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/body"
	"boxwright/pricing/quote/quotetest"
)

// What the customer typed decides colors and lettering, the warning colors those of the lamps.
func TestWhatWasTypedShows(t *testing.T) {
	cat := quotetest.Demo(t).Cat
	u := &config.Unit{Chassis: "cut-14500-158-gas", Body: "mod-146-72"}
	for _, id := range []string{"paint-two-tone", "let-plain", "str-belt", "wc-red-blue", "wf-five", "cdoor-rollup"} {
		u.Picks = append(u.Picks, config.Pick{Option: id, Qty: 1})
	}
	m := body.Of(cat, u)
	require.NotNil(t, m)
	assert.Equal(t, []string{"white", "red"}, m.Look.Paint.Colors, "the catalogue's until something is typed")
	u.Tell("paint-two-tone", "Navy below? no: yellow over navy")
	u.Tell("let-plain", "Ashford County EMS, gold")
	u.Tell("str-belt", "lime")
	m = body.Of(cat, u)
	assert.Equal(t, []string{"navy", "yellow"}, m.Look.Paint.Colors, "in the order they are named")
	assert.Equal(t, "roll", m.Look.Doors)
	var letters string
	for _, p := range m.Parts {
		switch p.Option {
		case "let-plain":
			assert.Equal(t, "Ashford County EMS", p.Text)
			assert.Equal(t, "gold", p.Color)
		case "str-belt":
			assert.Equal(t, "lime", p.Color)
			assert.InDelta(t, map[bool]float64{true: m.Rear - m.Front, false: 0.1}[p.Face != config.FaceRear],
				p.X1-p.X0, 0.01,
				"it goes over the whole side")
		case "wf-five":
			letters += config.ColorNames[p.Color]
		}
	}
	assert.Equal(t, "RRCBB", letters)
}

// A row of warning lights has the middle of its pattern in its own middle, however many it has.
func TestARowOfWarningLightsIsEvenOnBothSides(t *testing.T) {
	cat := quotetest.Demo(t).Cat
	for _, c := range []struct{ colors, option, letters string }{
		{"wc-red-clear", "wf-five", "RRCRR"}, {"wc-red-clear", "wf-seven", "RRRCRRR"},
		{"wc-red-clear", "wf-nine", "RRRRCRRRR"}, {"wc-red-clear", "gr-two", "RR"},
		{"wc-red-clear", "wr-three", "RAR"}, {"wc-red-clear", "wr-five", "RRARR"}, {"wc-red-clear", "ws-two", "RRRR"},
		// red on the street side, blue on the curb side
		{"wc-red-blue", "wf-nine", "RRRRCBBBB"}, {"wc-red-blue", "gr-two", "RB"},
		{"wc-red-blue", "wr-three", "RAB"}, {"wc-red-blue", "wr-five", "RRABB"}, {"wc-red-blue", "ws-two", "RBRB"},
	} {
		u := &config.Unit{Chassis: "cut-14500-158-gas", Body: "mod-146-72",
			Picks: []config.Pick{{Option: c.colors, Qty: 1}, {Option: c.option, Qty: 1}}}
		m := body.Of(cat, u)
		require.NotNil(t, m)
		letters := ""
		for _, p := range m.Parts {
			if p.Option == c.option {
				letters += config.ColorNames[p.Color]
			}
		}
		assert.Equal(t, c.letters, letters, c.option)
	}
}

// Every option of the demonstration says what it looks like, or why it is not seen.
func TestEveryOptionSaysHowItLooks(t *testing.T) {
	cat := quotetest.Demo(t).Cat
	drawn := 0
	for i := range cat.Options {
		o := &cat.Options[i]
		if o.Drawn() {
			drawn++
		}
		assert.True(t, o.Drawn() || o.Unseen != "", "%s says neither", o.ID)
	}
	assert.Greater(t, drawn, 270)
}

// A row that is spread keeps to both ends of a shorter and a longer module.
func TestASpreadRowFollowsTheModule(t *testing.T) {
	cat := quotetest.Demo(t).Cat
	at := config.Place{Kind: "lamp", Face: config.FaceStreet, LengthIn: 6, WidthIn: 1, HeightIn: 1, Count: 3,
		Spread: true,
		EdgeIn: 10}
	for i := range cat.Bodies {
		p := body.PlanesOf(cat.ChassisByID("cut-14500-158-gas"), &cat.Bodies[i])
		boxes := p.Boxes(&at)
		require.Len(t, boxes, 3)
		assert.InDelta(t, p.Front+10, boxes[0].X0, 1e-9)
		assert.InDelta(t, p.Rear-10, boxes[2].X1, 1e-9)
		assert.InDelta(t, boxes[1].X0-boxes[0].X0, boxes[2].X0-boxes[1].X0, 1e-9)
	}
}
