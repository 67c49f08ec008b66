package catalogue_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/quote"
	"boxwright/web/assets/catalogue"
)

// Every duty can be built, and no unit of it lacks what makes it that duty or has what it
// never has.
func TestDuties(t *testing.T) {
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	cat := ed.Cat
	for i := range cat.Duties {
		d := &cat.Duties[i]
		if d.Option == "" {
			continue
		}
		t.Run(d.ID, func(t *testing.T) {
			built := 0
			for _, ch := range cat.Chassis {
				for _, b := range cat.Bodies {
					u := config.Unit{Catalogue: cat.ID, Edition: cat.Hash(), Chassis: ch.ID, Body: b.ID,
						Picks: []config.Pick{{Option: d.Option, Qty: 1}}}
					if !ed.Rules.Answer(&u, nil).Satisfiable {
						if slices.Contains(d.Bodies, b.ID) && testing.Verbose() {
							for _, r := range ed.Rules.Conflict(&u, nil) {
								t.Log(ch.ID, b.ID, (&quote.Quote{Edition: ed}).Words(r, quantity.US))
							}
						}
						continue
					}
					built++
					full, _ := ed.Rules.Start(&u, nil)
					assert.True(t, d.Bodies == nil || slices.Contains(d.Bodies, b.ID), b.ID)
					for _, list := range d.Must {
						assert.True(t, slices.ContainsFunc(list, full.Has), "%s: one of %v", b.ID, list)
					}
					for _, id := range d.Never {
						assert.False(t, full.Has(id), id)
					}
					for _, p := range full.Picks {
						o := cat.OptionByID(p.Option)
						assert.True(t, o.IsNone() || cat.Offers(d, o.Group), "%s of %s", o.ID, o.Group)
					}
				}
			}
			assert.Positive(t, built)
		})
	}
}
