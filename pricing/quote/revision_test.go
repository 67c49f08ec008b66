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

// A unit of a quote of several is the same one wherever it stands: what changed is told of it,
// and only a unit that went or came is.
func TestChangesFollowEachUnit(t *testing.T) {
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	day := config.Date{Year: 2026, Month: 11, Day: 25}
	unit := func(chassis, body, name string) quote.Item {
		d := quote.Begin(ed, chassis, body, day)
		return quote.Item{Label: name, Unit: d.Unit, Needs: &d.Needs}
	}
	truck := unit("cab-16500-169-diesel", "mod-153-72", "Medic 1")
	van := unit("van-9500-148-gas", "van-60", "Medic 2")
	cutaway := unit("cut-14500-158-gas", "mod-146-72", "Medic 3")
	other := unit("cut-14500-158-gas", "mod-146-72", "Medic 4")
	of := func(items ...quote.Item) *quote.Quote {
		d := quote.Begin(ed, "cut-14500-158-gas", "mod-146-72", day)
		d.Title, d.Unit, d.Needs = items[0].Label, items[0].Unit.Clone(), *items[0].Needs
		for _, it := range items[1:] {
			it.Unit = it.Unit.Clone()
			d.More = append(d.More, it)
		}
		q, err := quote.Compute(ed, d)
		require.NoError(t, err)
		return q
	}
	unnamed := func(it quote.Item) quote.Item {
		it.Label = ""
		return it
	}
	pushed := cutaway
	pushed.Unit = cutaway.Unit.Clone()
	pushed.Unit.Set(config.Pick{Option: "fb-push", Qty: 1})
	bumper := ed.Cat.GroupByID(ed.Cat.OptionByID("fb-push").Group).Label
	three := of(truck, van, cutaway)
	bare := of(unnamed(truck), unnamed(van), unnamed(cutaway))
	for name, x := range map[string]struct {
		from, to *quote.Quote
		pairs    []int
		want     []quote.Change
	}{
		"the first is removed": {three, of(van, cutaway), []int{1, 2}, []quote.Change{
			{Where: "Unit 1", From: three.NameOf(0)}}},
		"the second is removed, and the third has a bumper more": {three, of(truck, pushed), []int{0, 2},
			[]quote.Change{{Where: "Unit 2 (was 3), " + bumper, To: ed.Cat.LabelOf("fb-push")},
				{Where: "Unit 2", From: three.NameOf(1)}}},
		"without names": {bare, of(unnamed(truck), unnamed(cutaway)), []int{0, 2}, []quote.Change{
			{Where: "Unit 2", From: bare.NameOf(1)}}},
		"one is set before the others": {three, of(other, truck, van, cutaway), []int{-1, 0, 1, 2}, []quote.Change{
			{Where: "Unit 1", To: "1. Medic 4"}}},
		"one for another": {three, of(truck, van, other), []int{0, 1, 2}, []quote.Change{
			{Where: "Unit 3, what the unit is called", From: "Medic 3", To: "Medic 4"}}},
		"in another order": {three, of(van, truck, cutaway), []int{1, 0, 2}, []quote.Change{
			{Where: "order of the units", From: "1. Medic 1; 2. Medic 2; 3. Medic 3",
				To: "2. Medic 2; 1. Medic 1; 3. Medic 3"}}},
		"of two alike, the one without a name": {of(truck, van, unnamed(van)), of(truck, unnamed(van)), []int{0, 2},
			[]quote.Change{{Where: "Unit 2", From: "2. Medic 2"}}},
	} {
		t.Run(name, func(t *testing.T) {
			assert.Equal(t, x.pairs, quote.Pairs(x.from.Draft, x.to.Draft))
			assert.Equal(t, x.want, quote.Changes(x.from, x.to))
		})
	}
}
