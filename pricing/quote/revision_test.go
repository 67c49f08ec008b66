package quote_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing/money"
	"boxwright/pricing/quote"
	"boxwright/web/assets/catalogue"
)

func TestChangesNameEverything(t *testing.T) {
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	from := quote.Begin(ed, "cut-14500-158-gas", "mod-146-72", config.Date{Year: 2026, Month: 11, Day: 25})
	compute := func(d *quote.Draft) *quote.Quote {
		q, err := quote.Compute(ed, d)
		require.NoError(t, err)
		return q
	}
	for _, x := range []struct {
		change func(*quote.Draft)
		want   []quote.Change
		reason string
	}{
		{func(*quote.Draft) {}, nil, "nothing changed"},
		{func(d *quote.Draft) {
			d.Unit.Picks[0].Filled = !d.Unit.Picks[0].Filled
		}, nil, "who chose it is no difference"},
		{func(d *quote.Draft) {
			d.Unit.Proposed = []string{d.Unit.Chassis, d.Unit.Body}
		}, nil, "nor with chassis and module"},
		{func(d *quote.Draft) {
			d.Needs.Begun = "cab-17500-169-4x4-diesel"
		}, nil, "nor what the needs began on, which follows the chassis"},
		{func(d *quote.Draft) {
			d.Unit.Set(config.Pick{Option: "fb-push", Qty: 1})
		}, []quote.Change{{Where: ed.Cat.GroupByID(ed.Cat.OptionByID("fb-push").Group).Label,
			To: ed.Cat.LabelOf("fb-push")}}, "an option added"},
		{func(d *quote.Draft) {
			d.Unit.Tell("let-plain", "Larkspur County EMS, gold")
		}, []quote.Change{{Where: "Lettering", From: "Name of the service, plain",
			To: "Name of the service, plain (Larkspur County EMS, gold)"}}, "what an option asked for"},
		{func(d *quote.Draft) {
			d.Unit.Tell("paint-colour", "signal red")
		}, nil, "said to an option that has given way"},
		{func(d *quote.Draft) {
			d.Buyer.Name = "Larkspur County"
		}, []quote.Change{{Where: "buyer, name", To: "Larkspur County"}}, "a party named"},
		{func(d *quote.Draft) {
			d.Terms.DiscountPercent, _ = money.ParsePercent("1.5")
		}, []quote.Change{{Where: "discount, percent", To: "1.5"}}, "a term"},
		{func(d *quote.Draft) { d.Rev = 1; d.Prev = "x" }, nil, "the chain itself is not listed"},
		{func(d *quote.Draft) {
			d.Unit.Picks = slices.DeleteFunc(d.Unit.Picks, func(p config.Pick) bool { return p.Option == "cot-manual" })
			d.Unit.Set(config.Pick{Option: "cot-power", Qty: 1})
		}, []quote.Change{{Where: "Cot", From: ed.Cat.LabelOf("cot-manual"), To: ed.Cat.LabelOf("cot-power")}},
			"one thing in the place of another is one change"},
		{func(d *quote.Draft) {
			d.Terms.TrainingDays, _ = money.ParseQuantity("3")
		}, []quote.Change{{Where: "training days", To: "3"}}, "a term without a name of its own"},
		{func(d *quote.Draft) {
			d.Unit.Carried = []config.Carried{{Equipment: ed.Cat.Equipment[0].ID, Qty: 2}}
		}, []quote.Change{{Where: "loose equipment", To: ed.Cat.Equipment[0].Label + ": 2, not stowed"}},
			"equipment"},
		{func(d *quote.Draft) {
			d.Duplicate()
			d.Title = "Second"
			d.WorkOn(0)
		}, []quote.Change{{Where: "Unit 2", To: "2. Second"}}, "another unit"},
	} {
		t.Run(x.reason, func(t *testing.T) {
			to := from.Clone()
			x.change(to)
			got := quote.Changes(compute(from), compute(to))
			for _, w := range x.want {
				assert.Contains(t, got, w, x.reason)
			}
			assert.Len(t, got, len(x.want), x.reason)
		})
	}
}
