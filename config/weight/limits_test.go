package weight

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boxwright/config"
	"boxwright/config/quantity"
)

// randomUnit draws picks, quantities and stowage of the fixture.
func randomUnit(t *rapid.T, cat *config.Catalogue) *config.Unit {
	u := &config.Unit{Chassis: "cutaway", Body: rapid.SampledFrom([]string{"module-168", "van"}).Draw(t, "body")}
	for _, o := range cat.Options {
		if rapid.Bool().Draw(t, o.ID) {
			u.Set(config.Pick{Option: o.ID, Qty: rapid.IntRange(1, max(o.MaxQty, 1)).Draw(t, o.ID+" qty")})
		}
	}
	for _, e := range cat.Equipment {
		where := rapid.SampledFrom([]string{"", "street-rear", "curb-rear"}).Draw(t, e.ID)
		u.Carried = append(u.Carried,
			config.Carried{Equipment: e.ID, Compartment: where, Qty: rapid.IntRange(1, 9).Draw(t, e.ID+" qty")})
	}
	return u
}

// everyLimit binds each figure, so that each linear form is tried.
func everyLimit() *config.Assumptions {
	as := people(175)
	bind := func(code string, v float64, sense config.Sense) {
		as.Limits[code] = config.Limit{Value: v, Sense: sense, Source: "test", Basis: config.Purchaser}
	}
	bind("weight.payload", 1750, config.AtLeast)
	bind("weight.payload-left", 200, config.AtLeast)
	bind("weight.curb", 11000, config.AtMost)
	bind("weight.front-share", 20, config.AtLeast)
	bind("weight.rear-share", 80, config.AtMost)
	bind("weight.side", 5, config.AtMost)
	bind("weight.cg-height", 50, config.AtMost)
	bind("weight.ssf", 0.7, config.AtLeast)
	bind("weight.seats", 8, config.AtMost)
	bind("weight.patients", 1, config.AtLeast)
	return as
}

func total(l config.Linear, u *config.Unit) float64 {
	sum := l.Base
	for _, p := range u.Picks {
		sum += l.Per[p.Option] * float64(p.Qty)
	}
	return sum
}

func TestLimitsSayWhatWeighSays(t *testing.T) {
	cat := prepared(t)
	cat.Chassis[0].FrontTires.LoadLb = 2400 // below half the GAWR, so that tires get a limit of their own
	as := everyLimit()
	rapid.Check(t, func(t *rapid.T) {
		u := randomUnit(t, cat)
		s := Weigh(cat, u, as)
		// The limits may be asked for from any unit of the same chassis and body.
		other := u.Clone()
		if rapid.Bool().Draw(t, "from the bare unit") {
			other.Picks = nil
		}
		seen := map[string]bool{}
		for _, l := range Limits(cat, &other, as) {
			f, ok := s.Figure(l.Code)
			require.True(t, ok, l.Code)
			by := total(l, u) - l.Limit // the amount by which it is missed
			gross := float64(s.Gross.TotalLb)
			want := -f.Margin()
			switch l.Code {
			case "weight.front-share", "weight.rear-share", "weight.cg-height":
				want *= gross
			case "weight.ssf":
				want *= gross * float64(s.Gross.ZIn)
			case "weight.side":
				signed := 100 * float64(s.Gross.RightLb-s.Gross.LeftLb)
				if seen[l.Code] {
					signed = -signed
				}
				want = signed - f.Limit*gross
			}
			assert.InDelta(t, want, by, 1e-6*gross*100, "%s: %s", l.Code, l.Label)
			if l.Unit == quantity.Pound {
				assert.InDelta(t, want, by, 2e-6, l.Code)
			}
			seen[l.Code] = true
		}
		for _, code := range []string{"weight.gross", "weight.front-axle", "weight.rear-axle", "weight.front-tires",
			"weight.payload", "weight.side", "weight.ssf", "weight.seats"} {
			assert.True(t, seen[code], code)
		}
		assert.False(t, seen["weight.rear-tires"], "the rear tires carry more than the axle's rating")
	})
}

func TestOnlyFirmLimitsRuleOut(t *testing.T) {
	cat := prepared(t)
	for _, c := range []struct {
		basis  config.Basis
		want   bool
		reason string
	}{
		{config.ReadInText, true, "a rule that was read binds"},
		{config.Purchaser, true, "the purchaser's own limit binds"},
		{config.FromMemory, false, "a number from memory warns, and forbids nothing"},
		{config.CommonPractice, false, "so does common practice"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			as := people(175)
			as.Limits["weight.payload"] = config.Limit{Value: 1750, Sense: config.AtLeast, Basis: c.basis}
			got := false
			for _, l := range Limits(cat, typical(), as) {
				got = got || l.Code == "weight.payload"
			}
			assert.Equal(t, c.want, got, c.reason)
		})
	}
}

func TestLimitsOfNothing(t *testing.T) {
	assert.Nil(t, Limits(nil, nil, nil))
	assert.Nil(t, Limits(prepared(t), &config.Unit{}, nil))
}

// What is left on the front axle decides whether a winch bumper can be had.
func ExampleLimits() {
	cat := fixture()
	cat.Prepare()
	u := &config.Unit{Chassis: "cutaway", Body: "module-168"}
	for _, l := range Limits(cat, u, &config.Assumptions{OccupantLb: config.Limit{Value: 175}}) {
		if l.Code == "weight.front-axle" {
			fmt.Printf("%.0f lb are left; the winch bumper puts %.0f lb on it\n", l.Limit-l.Base, l.Per["winch"])
		}
	}
	// Output: 794 lb are left; the winch bumper puts 236 lb on it
}

// Of two alike that each bring a place, loose equipment rides in one: each more of the option
// adds its own mass and does not carry the equipment over once more.
func TestEquipmentIsCountedOnceInOneOfSeveralPlaces(t *testing.T) {
	cat := prepared(t)
	cat.OptionByID("curb-box").MaxQty = 2
	u := typical()
	u.Set(config.Pick{Option: "curb-box", Qty: 2})
	u.Carried = []config.Carried{{Equipment: "tools", Compartment: "curb-rear", Qty: 9}}
	s := Weigh(cat, u, people(175))
	for _, l := range Limits(cat, u, people(175)) {
		if f := figure(t, s, l.Code); l.Unit == quantity.Pound {
			assert.InDelta(t, -f.Margin(), total(l, u)-l.Limit, 1e-3, l.Code)
		}
	}
}
