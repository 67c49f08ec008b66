// Package pagetest makes pages for the tests of what is drawn.
package pagetest

import (
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/space"
	"boxwright/config/standards"
	"boxwright/config/weight"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
	"boxwright/web/page"
)

// Of is the page of a new unit on a chassis, with everything loose the catalogue
// knows aboard and stowed when loaded.
func Of(t testing.TB, ed *quote.Edition, chassis string, loaded bool) *page.Page {
	t.Helper()
	d := quote.Begin(ed, chassis, "", quotetest.Today)
	if loaded {
		for i := range ed.Cat.Equipment {
			d.Unit.Carried = append(d.Unit.Carried, config.Carried{Equipment: ed.Cat.Equipment[i].ID, Qty: 1})
		}
		assume := standards.Assume(d.Unit.RuleSet, ed.Cat, &d.Unit)
		d.Unit.Carried = space.Suggest(ed.Cat, &d.Unit, func(u *config.Unit) space.Trim {
			g := weight.Weigh(ed.Cat, u, &assume).Gross
			return space.Trim{FrontLb: g.FrontLb, RearLb: g.RearLb, LeftLb: g.LeftLb, RightLb: g.RightLb}
		})
	}
	q, err := quote.Compute(ed, d)
	require.NoError(t, err)
	return &page.Page{Q: q}
}
