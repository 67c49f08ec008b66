package space

import (
	"math"
	"testing"

	"boxwright/config"
	"boxwright/config/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func carry(in string, qty int, what string) config.Carried {
	return config.Carried{Equipment: what, Compartment: in, Qty: qty}
}

func TestStowageStates(t *testing.T) {
	for _, tt := range []struct {
		reason  string
		carried []config.Carried
		at      string
		state   State
		code    string
		sev     config.Severity
	}{
		{"nothing in it", nil, "left-front", Empty, "", ""},
		{"bags stand side by side", []config.Carried{carry("left-front", 3, "bag")}, "left-front", Fits, "", ""},
		{"80 in of ladder, 67.7 in across corners", []config.Carried{carry("left-front", 1, "ladder")}, "left-front", TooBig, "space.too-big", config.Stop},
		{"72 in of board in 40 x 20 x 60: 74.8 across corners, so a tilt is not ruled out, nor shown", []config.Carried{carry("left-rear", 1, "backboard")}, "left-rear", Unproven, "space.unproven", config.Warn},
		{"more volume than there is", []config.Carried{carry("right-front", 9, "bag")}, "right-front", TooBig, "space.too-big", config.Stop},
		{"three tool kits are 270 lb on a rated 200", []config.Carried{carry("left-rear", 3, "tools")}, "left-rear", Overloaded, "space.overloaded", config.Stop},
		{"two are within it", []config.Carried{carry("left-rear", 2, "tools")}, "left-rear", Fits, "", ""},
		{"an unknown place is not stowed", []config.Carried{carry("attic", 1, "bag")}, "left-front", Empty, "space.unstowed", config.Note},
		{"no place is not stowed", []config.Carried{carry("", 1, "bag")}, "left-front", Empty, "space.unstowed", config.Note},
	} {
		t.Run(tt.reason, func(t *testing.T) {
			u := unit()
			u.Carried = tt.carried
			s := Measure(fixture(t), u, nil)
			for _, c := range s.Compartments {
				if c.ID == tt.at {
					assert.Equal(t, tt.state, c.State, tt.reason)
				}
			}
			if tt.code == "" {
				assert.Empty(t, s.Findings, tt.reason)
				return
			}
			require.Len(t, s.Findings, 1, tt.reason)
			assert.Equal(t, tt.code, s.Findings[0].Code, tt.reason)
			assert.Equal(t, tt.sev, s.Findings[0].Severity, tt.reason)
		})
	}
}

func TestStowedShare(t *testing.T) {
	u := unit()
	u.Carried = []config.Carried{carry("left-front", 2, "bag"), carry("cabinet", 1, "bag")}
	f, _ := Measure(fixture(t), u, nil).Figure("space.stowed")
	all := 2*28800.0 + 48000 + 36000 + 36*16*30
	assert.InDelta(t, 100*3*20*14*12/all, f.Value, 1e-9)
}

// An arrangement must be one: inside, apart, every piece at its own size.
func TestArrangementIsReal(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		side := rapid.Float64Range(1, 40)
		outer := box{side.Draw(rt, "w") + 10, side.Draw(rt, "d") + 10, side.Draw(rt, "h") + 10}
		var pieces []piece
		for range rapid.IntRange(1, 12).Draw(rt, "n") {
			pieces = append(pieces, piece{"p", box{side.Draw(rt, "a"), side.Draw(rt, "b"), side.Draw(rt, "c")}})
		}
		placed, ok := arrange(outer, pieces)
		if !ok {
			return
		}
		require.Len(rt, placed, len(pieces))
		var want, got float64
		for i, x := range placed {
			want += pieces[i].volume()
			got += x.Size[0] * x.Size[1] * x.Size[2]
			for a := range 3 {
				assert.GreaterOrEqual(rt, x.At[a], 0.0)
				assert.LessOrEqual(rt, x.At[a]+x.Size[a], outer[a]+1e-6)
			}
			for _, y := range placed[:i] {
				apart := false
				for a := range 3 {
					apart = apart || x.At[a]+x.Size[a] <= y.At[a]+1e-6 || y.At[a]+y.Size[a] <= x.At[a]+1e-6
				}
				assert.True(rt, apart, "%v and %v overlap", x, y)
			}
		}
		assert.InEpsilon(rt, want, got, 1e-9)
	})
}

// Proofs that a thing cannot go in must never condemn one that does: cut a
// turned and tilted box out of a compartment by checking its corners.
func TestCannotHoldIsSound(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		side := rapid.Float64Range(0.5, 30)
		inner := box{side.Draw(rt, "a"), side.Draw(rt, "b"), side.Draw(rt, "c")}
		turn := rotation(rapid.Float64Range(0, 6.3).Draw(rt, "x"), rapid.Float64Range(0, 6.3).Draw(rt, "y"),
			rapid.Float64Range(0, 6.3).Draw(rt, "z"))
		var outer box // the smallest square-standing hollow round the tilted box
		for i := range 3 {
			for k := range 3 {
				outer[i] += math.Abs(turn[i][k]) * inner[k]
			}
			outer[i] += 1e-9
		}
		assert.Empty(rt, cannotHold(outer, inner))
	})
}

func rotation(x, y, z float64) [3][3]float64 {
	cx, sx, cy, sy, cz, sz := math.Cos(x), math.Sin(x), math.Cos(y), math.Sin(y), math.Cos(z), math.Sin(z)
	return [3][3]float64{{cy * cz, sx*sy*cz - cx*sz, cx*sy*cz + sx*sz}, {cy * sz, sx*sy*sz + cx*cz, cx*sy*sz - sx*cz},
		{-sy, sx * cy, cx * cy}}
}

// scale weighs with plain statics: x from the front axle, y from the center. A unit that
// carries nothing counts an allowance instead, which a thing placed must not be taken for.
func scale(cat *config.Catalogue) func(*config.Unit) Trim {
	return func(u *config.Unit) Trim {
		t := Trim{FrontLb: 4000, RearLb: 6500, LeftLb: 5200, RightLb: 5300, FrontLimitLb: 5000, RearLimitLb: 9500}
		if len(u.Carried) == 0 {
			t = t.plus(Trim{FrontLb: 100, RearLb: 700, LeftLb: 700, RightLb: 100}, 1)
		}
		holds := map[string]config.Compartment{}
		for _, c := range cat.CompartmentsOf(u) {
			holds[c.ID] = c
		}
		for _, c := range u.Carried {
			e, h := cat.EquipmentByID(c.Equipment), holds[c.Compartment]
			if e == nil || h.ID == "" {
				continue
			}
			m := e.MassLb * quantity.Mass(c.Qty)
			rear := m * quantity.Mass((70+h.XIn)/158)
			right := m * quantity.Mass(0.5+h.YIn/77)
			t = t.plus(Trim{FrontLb: m - rear, RearLb: rear, LeftLb: m - right, RightLb: right}, 1)
		}
		return t
	}
}

func TestSuggestBalances(t *testing.T) {
	cat := fixture(t)
	u := unit()
	u.Carried = []config.Carried{carry("", 6, "bag"), carry("", 4, "tools")}
	u.Carried = Suggest(cat, u, scale(cat))
	s := Measure(cat, u, nil)
	assert.Empty(t, s.Unstowed)
	assert.Empty(t, s.Findings, "what is suggested is proven to fit")
	trim := scale(cat)(u)
	assert.Less(t, math.Abs(float64(trim.LeftLb-trim.RightLb)), 40.0, "480 lb of gear and 100 lb of list to start with")
}

func TestSuggestKeepsWhatIsStowedByHand(t *testing.T) {
	cat := fixture(t)
	u := unit()
	u.Carried = []config.Carried{carry("", 1, "bag"), carry("", 1, "ladder"), carry("right-rear", 2, "bag"),
		carry("right-rear", 1, "chair")}
	got := Suggest(cat, u, scale(cat))
	assert.Contains(t, got, carry("right-rear", 1, "chair"))
	assert.Contains(t, got, carry("", 1, "ladder"), "it fits nowhere, so it stays unstowed")
	byHand := 0
	for _, c := range got {
		if c.Equipment == "bag" && c.Compartment == "right-rear" {
			byHand = c.Qty
		}
	}
	assert.GreaterOrEqual(t, byHand, 2)
}

// Whatever is carried, nothing is lost, nothing is put where it is not proven
// to fit, and the same question has the same answer.
func TestSuggestProperties(t *testing.T) {
	cat := fixture(t)
	rapid.Check(t, func(rt *rapid.T) {
		u := unit()
		total := map[string]int{}
		for _, e := range cat.Equipment {
			if n := rapid.IntRange(0, 5).Draw(rt, e.ID); n > 0 {
				u.Carried = append(u.Carried, carry("", n, e.ID))
				total[e.ID] = n
			}
		}
		before := u.Clone()
		got := Suggest(cat, u, scale(cat))
		assert.Equal(rt, before, *u, "the unit given is not changed")
		assert.Equal(rt, got, Suggest(cat, u, scale(cat)))
		for _, c := range got {
			total[c.Equipment] -= c.Qty
		}
		for id, n := range total {
			assert.Zero(rt, n, id)
		}
		u.Carried = got
		for _, f := range Measure(cat, u, nil).Findings {
			assert.Equal(rt, "space.unstowed", f.Code)
		}
	})
}

// No single thing could be moved, and no two exchanged, for a real gain.
func TestSuggestLeavesNoEasyGain(t *testing.T) {
	cat := fixture(t)
	weigh := scale(cat)
	good := func(u *config.Unit) bool {
		for _, c := range Measure(cat, u, nil).Compartments {
			if c.State != Empty && c.State != Fits {
				return false
			}
		}
		return true
	}
	rapid.Check(t, func(rt *rapid.T) {
		u := unit()
		for _, id := range []string{"bag", "chair", "tools"} {
			if n := rapid.IntRange(0, 4).Draw(rt, id); n > 0 {
				u.Carried = append(u.Carried, carry("", n, id))
			}
		}
		u.Carried = Suggest(cat, u, weigh)
		reached := weigh(u).Uneven()
		var single []config.Carried
		for _, c := range u.Carried {
			for range c.Qty {
				single = append(single, carry(c.Compartment, 1, c.Equipment))
			}
		}
		try := func(what string) {
			v := &config.Unit{Chassis: u.Chassis, Body: u.Body, Carried: single}
			if weigh(v).Uneven() < reached-2*gain {
				assert.False(rt, good(v), "%s would gain", what)
			}
		}
		for i := range single {
			if single[i].Compartment == "" {
				continue
			}
			here := single[i].Compartment
			for _, c := range cat.CompartmentsOf(u) {
				single[i].Compartment = c.ID
				try("a move")
			}
			single[i].Compartment = here
			for j := range i {
				single[i].Compartment, single[j].Compartment = single[j].Compartment, single[i].Compartment
				try("an exchange")
				single[i].Compartment, single[j].Compartment = single[j].Compartment, single[i].Compartment
			}
		}
	})
}

func TestSuggestWithoutScale(t *testing.T) {
	u := unit()
	u.Carried = []config.Carried{carry("", 2, "bag")}
	got := Suggest(fixture(t), u, nil)
	assert.NotEmpty(t, got)
	for _, c := range got {
		assert.NotEmpty(t, c.Compartment, "without a scale things are still stowed")
	}
}
