package app

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What the service carries beyond the catalogue's list is added with its name, mass, size
// and place, counts, and travels with the quote.
func TestOwnItems(t *testing.T) {
	p := openAt(t, "equipment")
	counted := "Nothing is listed yet, so 700 lb is counted"
	assert.Contains(t, p.do(Act{Do: "go", ID: "equipment"}).Regions["main"], counted, "before anything is listed")
	s := p.do(set("own-item.name", "Ram set"), set("own-item.mass", "90"), set("own-item.length", "30"),
		set("own-item.width", "10"), Act{Do: "own-add"})
	assert.Contains(t, s.Regions["main"], "it needs length, width and height")
	require.Empty(t, draftOf(t, s).Unit.OwnItems)
	s = p.do(set("own-item.height", "10"), set("own-item.place", "outside"), Act{Do: "own-add"})
	d := draftOf(t, s)
	require.Len(t, d.Unit.OwnItems, 1)
	require.Len(t, d.Unit.Carried, 1)
	assert.NotContains(t, s.Regions["main"], "it needs length")
	assert.NotContains(t, s.Regions["main"], counted, "what is listed takes its place")
	s = p.do(Act{Do: "suggest"})
	assert.NotEmpty(t, draftOf(t, s).Unit.Carried[0].Compartment)
	quote := papersOf(p)["quote"]
	assert.Contains(t, quote, "1 × Ram set")
	assert.Contains(t, quote, "Loads by compartment, tray and mount")
	p.do(Act{Do: "go", ID: "equipment"})
	s = p.do(Act{Do: "carry-usual", ID: "bls"})
	carried := carriedOf(t, s)
	assert.Equal(t, 1, carried["own-1"], "the purchaser's own stay beside the usual list")
	for id, n := range carriedOf(t, p.do(Act{Do: "carry-usual", ID: "bls"})) {
		assert.Equal(t, carried[id], n, "%s: asked for again it is the same list", id)
	}
	s = p.do(Act{Do: "own-drop", ID: "own-1"})
	assert.NotContains(t, string(s.Draft), "own-1")
}

// The purchaser's own cot needs its weight before the unit counts as weighed.
func TestOwnCotIsWeighed(t *testing.T) {
	p := open(t)
	p.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"}, Act{Do: "pick", ID: "cot-none", On: true})
	assert.Contains(t, papersOf(p)["quote"], "Weight of the cot, with mattress and batteries is not known yet")
	s := p.do(set("weighed.cot-none", "142"))
	require.Empty(t, s.Fault)
	assert.Contains(t, string(s.Draft), `"lb":142`)
	assert.NotContains(t, papersOf(p)["quote"], "does not count as weighed")
}

// carriedOf counts what is aboard.
func carriedOf(t *testing.T, s shown) map[string]int {
	out := map[string]int{}
	for _, c := range draftOf(t, s).Unit.Carried {
		out[c.Equipment] += c.Qty
	}
	return out
}
