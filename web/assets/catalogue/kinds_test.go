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
		t.Run(d.ID, func(t *testing.T) {
			built := 0
			for _, ch := range cat.Chassis {
				for _, b := range cat.Bodies {
					u := config.Unit{Catalogue: cat.ID, Edition: cat.Hash(), Chassis: ch.ID, Body: b.ID,
						Picks: []config.Pick{{Option: d.Option, Qty: 1}}}
					if !ed.Rules.AnswerWithin(&u, nil, 0).Satisfiable {
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
					assert.True(t, len(d.Must) > 0)
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

// Where a patient lies on the bench nobody sits there: seats, patients, weight and what is
// asked for are counted for the arrangement.
func TestArrangementsTakeSeats(t *testing.T) {
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	for _, c := range []struct {
		arrangement     string
		seats, patients int // seats behind the cab beside the attendant's
	}{{"arr-cot-bench", 0, 2}, {"arr-cot-litter", 0, 2}, {"arr-three", 0, 3}, {"arr-two-cots", 0, 2}} {
		t.Run(c.arrangement, func(t *testing.T) {
			d := quote.New(ed, "med-19500-175-diesel", "mod-170-74", config.Date{Year: 2026, Month: 11, Day: 25})
			d.Unit.RuleSet = "own"
			d.Unit.Picks = []config.Pick{{Option: c.arrangement, Qty: 1}, {Option: "dp-multi", Qty: 1}}
			full, _ := ed.Rules.Start(&d.Unit, nil)
			d.Unit = full
			q, err := quote.Compute(ed, d)
			require.NoError(t, err)
			assert.Len(t, q.Space.Cots, c.patients)
			bench, cab := 0, len(q.Chassis.CabSeats)
			for _, s := range q.Space.Seats {
				if s.Kind == "bench" {
					bench++
				}
			}
			assert.Equal(t, c.seats, bench)
			assert.GreaterOrEqual(t, len(q.Space.Seats), cab+1)
			list := q.Arrangements
			require.NotEmpty(t, list)
			assert.True(t, list[0].Chosen)
			assert.Equal(t, []int{len(q.Space.Seats), c.patients}, []int{list[0].Seats, list[0].Patients})
			worst := 0
			for _, a := range list {
				assert.LessOrEqual(t, a.Gross.Value, 19500., a.Label)
				if a.Worst {
					worst++
				}
			}
			assert.Equal(t, 1, worst, "one of them is the worst")
			if c.seats == 0 && c.arrangement != "arr-two-cots" {
				last := list[len(list)-1]
				assert.Equal(t, "Everybody seated", last.Label)
				assert.Greater(t, last.Seats, list[0].Seats, "the bench is sat on")
				assert.Equal(t, 1, last.Patients)
			}
			if c.arrangement == "arr-three" {
				i := slices.IndexFunc(list, func(a quote.Arrangement) bool {
					return a.Label == "Two: cot and bench, the litter folded away"
				})
				if assert.GreaterOrEqual(t, i, 0, "a litter that is fitted but folded leaves the places under it") {
					assert.Equal(t, []int{len(q.Space.Seats), 2}, []int{list[i].Seats, list[i].Patients})
					assert.Less(t, list[i].Gross.Value, list[0].Gross.Value)
				}
			}
			if f, ok := q.Figure("space.litter"); assert.True(t, ok) {
				assert.True(t, f.Met(), "%s %.1f", f.Label, f.Value)
			}
			people := 0.0
			for _, it := range q.Weight.Items {
				if it.Kind == "person" {
					people += float64(it.Lb)
				}
			}
			assert.InDelta(t, float64(len(q.Space.Seats))*q.Assume.OccupantLb.Value, people, 1e-6, "weighed as counted")
			size := quote.SizeByID("crew")
			d.Needs = quote.Needs{Crew: len(q.Space.Seats)}
			assert.Empty(t, d.Needs.Missed(ed.Cat, &d.Unit))
			d.Needs.Crew++
			assert.Len(t, d.Needs.Missed(ed.Cat, &d.Unit), 1, size.Label)
		})
	}
}
