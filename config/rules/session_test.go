package rules

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/power"
	"boxwright/config/standards"
	"boxwright/config/weight"
	"boxwright/web/assets/catalogue"
)

func demo(t testing.TB) *config.Catalogue {
	cat, err := config.Read(catalogue.Demo)
	require.NoError(t, err)
	return cat
}

// demoLimits are the weight and power limits of a unit, with every capacity
// scaled.
func demoLimits(cat *config.Catalogue, u *config.Unit, scale float64) *Limits {
	return &Limits{Key: "demo", For: func(chassis, body string) []config.Linear {
		n := u.Clone()
		n.Chassis, n.Body = chassis, body
		as := standards.Assume(standards.Default(), cat, &n)
		list := append(weight.Limits(cat, &n, &as), power.Limits(cat, &n, &as)...)
		for i := range list {
			if list[i].Limit > 0 {
				list[i].Limit *= scale
			}
		}
		return list
	}}
}

// clicker is a customer who picks at random among what is open, now and then
// takes something out, and changes the chassis or body once in a while.
type clicker struct {
	r *rand.Rand
	e *Engine
	u config.Unit
}

func (c *clicker) click(a *Answer) {
	e := c.e
	for range 1000 {
		v := c.r.Intn(e.n)
		if c.r.Intn(12) == 0 {
			v = c.r.Intn(e.firstOption())
		}
		id := e.ids[v]
		switch {
		case v < e.firstOption() && c.r.Intn(3) > 0, a.States[v] != Open && a.States[v] != Forced:
		case v < len(e.cat.Chassis):
			c.u.Chassis = id
			return
		case v < e.firstOption():
			c.u.Body = id
			return
		case c.u.Has(id):
			if c.r.Intn(4) == 0 {
				c.u.Drop(id)
				return
			}
		default:
			for x := e.firstOption(); x < e.n; x++ {
				if e.class[x] >= 0 && e.class[x] == e.class[v] {
					c.u.Drop(e.ids[x])
				}
			}
			c.u.Set(config.Pick{Option: id, Qty: 1})
			return
		}
	}
}
