package quote_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/config"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
)

// What rides in two places is one line with both of them.
func TestLoadsAreListedOnce(t *testing.T) {
	ed := quotetest.Demo(t)
	u := config.Unit{Chassis: "cut-14500-158-gas", Body: "mod-146-72"}
	places := ed.Cat.CompartmentsOf(&u)
	a, b := places[0], places[1]
	x, y := ed.Cat.Equipment[0], ed.Cat.Equipment[1]
	u.Carried = []config.Carried{{Equipment: x.ID, Compartment: a.ID, Qty: 1}, {Equipment: y.ID, Compartment: "gone", Qty: 2},
		{Equipment: x.ID, Compartment: b.ID, Qty: 3}}
	assert.Equal(t, []quote.Load{
		{Equipment: x.ID, Label: x.Label, Qty: 4, Where: "1 in " + a.Label + "; 3 in " + b.Label},
		{Equipment: y.ID, Label: y.Label, Qty: 2, Where: "not stowed"},
	}, quote.LoadsOf(ed.Cat, &u))
	u.Carried = u.Carried[2:]
	assert.Equal(t, "in "+b.Label, quote.LoadsOf(ed.Cat, &u)[0].Where)
}
