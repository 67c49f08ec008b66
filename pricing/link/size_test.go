package link_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing"
	"boxwright/pricing/link"
	"boxwright/pricing/money"
	"boxwright/pricing/quote"
	"boxwright/pricing/sign"
)

var today = config.Date{Year: 2026, Month: 11, Day: 25}

// small is a unit as the plant builds it, for nobody in particular.
func small() *quote.Draft { return quote.Begin(demo(), "", "", today) }

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// typical has the parties, two dozen deliberate picks and usual terms.
func typical() *quote.Draft {
	d := small()
	d.Number, d.Title = "2026-114", "Rescue 4"
	d.Seller = quote.Party{Name: "Prairie Emergency Vehicles", Person: "Dana Whitfield",
		Address: "410 Depot Street, Harlan Junction", Reach: "dana@prairie.example"}
	d.Buyer = quote.Party{Name: "Larkspur County Ambulance Service", Person: "Chief M. Okafor",
		Address: "12 Courthouse Square, Larkspur", Reach: "chief@larkspur.example"}
	for i := range d.Unit.Picks {
		d.Unit.Picks[i].Filled = i%4 != 0
	}
	d.Unit.NeededBy = config.Date{Year: 2027, Month: 6, Day: 30}
	d.Terms.FreightMiles = must(money.ParseQuantity("412"))
	d.Terms.TaxExempt, d.Terms.ExemptReason = true, "County service, certificate 88-1204"
	d.Terms.DiscountPercent = must(money.ParsePercent("1.5"))
	return d
}

// full has 120 picks, quantities, loose equipment and terms of many kinds.
func full() *quote.Draft {
	d := typical()
	cat := demo().Cat
	for i := range cat.Options {
		o := &cat.Options[i]
		if len(d.Unit.Picks) < 120 && !d.Unit.Has(o.ID) && cat.GroupByID(o.Group).Choose == config.ChooseAny {
			d.Unit.Set(config.Pick{Option: o.ID, Qty: max(o.MaxQty, 1)})
		}
	}
	for i := range 20 {
		d.Unit.Carried = append(d.Unit.Carried, config.Carried{Equipment: cat.Equipment[i].ID, Qty: 1 + i%3})
	}
	slices.SortFunc(d.Unit.Carried, func(a, b config.Carried) int { return strings.Compare(a.Equipment, b.Equipment) })
	d.Terms.TradeIn, d.Terms.TradeInText = must(money.ParseAmount("18500.00")), "2014 unit 7, 141,000 miles"
	d.Terms.DiscountReason = "Second order this year"
	d.Terms.Prepay, d.Terms.Bond, d.Terms.ValidityDays = "chassis-with-order", true, 60
	d.Terms.Extras = []pricing.Extra{{Label: "Radio of the county, fitted here",
		Price: must(money.ParseAmount("1850.00"))}}
	return d
}

// everything is full with every field typed: all needs, notes, details of options, a
// limit of the buyer's own, a budget, and all equipment in a compartment.
func everything() *quote.Draft {
	d := full()
	d.Needs = quote.Needs{
		Duty: "als", Roads: "snow", Climate: "cold", Fuel: "gasoline", Crew: 4, Patients: 1,
		Must: []string{"cot-power", "mount-power"}, Like: []string{"hvac-roof", "winch-front"},
		Type: "III", Drive: "4x4", HeightIn: 118, LengthIn: 290, HeadroomIn: 72, ModuleIn: 146, ModuleMostIn: 153,
		LoadingIn: 34, TurningFt: 54, Wants: []string{"climate", "fuel", "turning"},
	}
	for _, id := range []string{"grd-corner-plates", "roof-drip"} {
		d.Unit.Drop(id)
		d.Unit.LeaveOut(id, true)
	}
	d.Notes = "Delivery at our station 2. Old radios are handed over in May."
	d.Unit.Tell("let-plain", "LARKSPUR COUNTY AMBULANCE, navy with a gold edge")
	d.Unit.Tell("mrk-unit-number", "4")
	d.Unit.Tell("str-belt", "Red")
	d.Unit.Own = []config.OwnLimit{{Figure: "space.headroom", Value: 70}}
	places := demo().Cat.CompartmentsOf(&d.Unit)
	for i := range d.Unit.Carried {
		d.Unit.Carried[i].Compartment = places[i%len(places)].ID
	}
	d.Terms.Budget = must(money.ParseAmount("340000.00"))
	return d
}

func key(seed string) *sign.Key { return must(sign.New(strings.NewReader(fmt.Sprintf("%-32s", seed)))) }

// A link of 608 characters behind an address of 58 fits a QR code of version 20
// at level M, which holds 666 bytes (reference: capacity arrays identical in
// several public encoders).
func TestLinksAreShort(t *testing.T) {
	for _, x := range []struct {
		name             string
		draft            *quote.Draft
		most, mostSigned int // characters
	}{
		{"small", small(), 104, 264},
		{"typical", typical(), 314, 474},
		{"full, 120 picks with terms", full(), 430, 592},
		{"everything typed", everything(), 608, 768},
	} {
		t.Run(x.name, func(t *testing.T) {
			q, err := quote.Compute(demo(), x.draft)
			require.NoError(t, err)
			text, err := link.Encode(q)
			require.NoError(t, err)
			signed, err := link.Sign(text, demo().Cat, key("a"))
			require.NoError(t, err)
			t.Logf("%d picks, %d characters, signed %d", len(x.draft.Unit.Picks), len(text), len(signed))
			assert.LessOrEqual(t, len(text), x.most)
			assert.LessOrEqual(t, len(signed), x.mostSigned)
		})
	}
	assert.Len(t, everything().Unit.Picks, 118, "and two left out")
}

// What a link says by numbers comes back as it was, and every need has its number.
func TestNeedsAndWhatIsLeftOutTravel(t *testing.T) {
	assert.ElementsMatch(t, quote.AskIDs, link.NeedIDs)
	d := everything()
	d.Unit.LeftOut = nil
	for i := range demo().Cat.Options {
		if o := &demo().Cat.Options[i]; o.Standard && i%2 == 0 {
			d.Unit.Drop(o.ID)
			d.Unit.LeaveOut(o.ID, true)
		}
	}
	d.Duplicate()
	d.Unit.LeftOut = d.Unit.LeftOut[:3]
	q, err := quote.Compute(demo(), d)
	require.NoError(t, err)
	text, err := link.Encode(q)
	require.NoError(t, err)
	back, _, err := link.Decode(demo().Cat, text)
	require.NoError(t, err)
	assert.Equal(t, d.Needs, back.Needs)
	assert.Equal(t, d.Unit.LeftOut, back.Unit.LeftOut)
	assert.Equal(t, d.More[0].Unit.LeftOut, back.More[0].Unit.LeftOut)
}

func BenchmarkLink(b *testing.B) {
	for name, d := range map[string]*quote.Draft{"small": small(), "typical": typical(), "full": full()} {
		q := must(quote.Compute(demo(), d))
		text := must(link.Encode(q))
		b.Run("encode/"+name, func(b *testing.B) {
			for b.Loop() {
				must(link.Encode(q))
			}
			b.ReportMetric(float64(len(text)), "chars")
			b.ReportMetric(float64(len(must(link.Sign(text, demo().Cat, key("a"))))), "signed_chars")
		})
		b.Run("decode/"+name, func(b *testing.B) {
			for b.Loop() {
				if _, _, err := link.Decode(demo().Cat, text); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
