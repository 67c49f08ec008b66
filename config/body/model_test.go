package body

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boxwright/config"
	"boxwright/config/quantity"
)

func truck() *config.Chassis {
	return &config.Chassis{ID: "c", Label: "Cutaway", WheelbaseIn: 158, FrontOverhangIn: 31, BodyStartIn: 59,
		FrameHeightIn: 27, FloorHeightIn: 32, CabHeightIn: 82, WidthIn: 80, TrackFrontIn: 69, TrackRearIn: 75.6,
		DualSpacingIn: 11.2, FrameEndIn: 46, FuelGal: 55, FuelXIn: 184,
		FrontTires: config.Tires{Size: "LT225/75R16", Count: 2}, RearTires: config.Tires{Size: "LT225/75R16", Count: 4}}
}

func module() *config.Body {
	return &config.Body{ID: "b", Label: "Module", Kind: "module", LengthIn: 153, WidthIn: 95, HeightIn: 76,
		Shell: &config.Shell{}}
}

// Worked by hand from the section: 76 - (2 + 0.125 + 0.75) - (2 + 0.09 + 0.25) = 70.785.
func TestHeadroomOfASection(t *testing.T) {
	assert.InDelta(t, 70.785, HeadroomIn(module()), 1e-9)
	b := module()
	b.Shell, b.HeadroomIn = nil, 71
	assert.EqualValues(t, 71, HeadroomIn(b), "as it was measured")
	p := PlanesOf(truck(), module())
	assert.InDelta(t, 32-2.875+76, p.Roof, 1e-9)
	assert.InDelta(t, 32+70.785, p.Ceiling, 1e-9)
	assert.InDelta(t, 47.5-2.375, p.Half-p.Wall, 1e-9)
}

// A tire of 29.3 in on an axle 99 in behind the front wall: its box runs from 82.4 to 115.6
// behind the wall, with 2 in of room, and 3 + 1 in above the tire.
func TestWheelBoxFollowsTheAxle(t *testing.T) {
	m := Bare(truck(), module())
	i := indexOf(m, "wheel-box/curb")
	b := m.Parts[i].Box
	assert.InDelta(t, 99-14.64-2, b.X0-59, 0.05)
	assert.InDelta(t, 99+14.64+2, b.X1-59, 0.05)
	assert.InDelta(t, 29.29+4, b.Z1, 0.05)
	assert.InDelta(t, 37.8-5.6-4.43-2, b.Y0, 0.05, "inside of the inner tire less 2 in")
	assert.Equal(t, b.Mirrored(), m.Parts[indexOf(m, "wheel-box/street")].Box)

	for _, c := range []struct {
		reason string
		x, w   quantity.Length
		hits   string
	}{
		{"into the wheel box by 5.6 in", 78, 20, "Wheel box, curb side"},
		{"clear of wheel and door", 70, 20, ""},
		{"into the side entry by 11 in", 50, 20, "Side entry"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			b := module()
			b.Compartments = []config.Compartment{{ID: "low", Label: "Low", Side: "curb", XIn: c.x, ZIn: -1,
				WidthIn: c.w,
				DepthIn: 20, HeightIn: 24}}
			var with []string
			for _, x := range Bare(truck(), b).Collisions() {
				with = append(with, x.A.Label+x.B.Label)
				assert.Positive(t, x.Least())
				assert.Contains(t, x.Text(), x.B.Label)
			}
			if c.hits == "" {
				assert.Empty(t, with)
			} else {
				assert.Contains(t, with, c.hits+"Low")
			}
		})
	}
}

// A tank of 55 gal, 41.2 in long around 26 in behind the axle, ends 46.6 in behind it: a spare
// wheel of 30 in around 58 in begins at 43. One below the floor of a unit without a tank
// there, and a cylinder in a compartment, stand in nothing.
func TestWhatHangsBelowTheFrame(t *testing.T) {
	for _, c := range []struct {
		reason, face string
		x, fuel      quantity.Length
		hits         string
	}{
		{"into the fuel tank by 3.6 in", config.FaceUnder, 58, 184, "Fuel tank"},
		{"behind the fuel tank", config.FaceUnder, 62, 184, ""},
		{"the fuel tank is ahead of the axle", config.FaceUnder, 28, 70, ""},
		{"a cylinder in a cabinet", config.FaceStreetWall, -60, 184, ""},
	} {
		t.Run(c.reason, func(t *testing.T) {
			ch, b := truck(), module()
			ch.FuelXIn = c.fuel
			b.Compartments = []config.Compartment{{ID: "in", Label: "Cabinet", Side: "inside", XIn: 39, YIn: -35,
				ZIn: 20, WidthIn: 30, DepthIn: 20, HeightIn: 40}}
			m := Bare(ch, b)
			o := &config.Option{ID: "o", Places: []config.Place{{Kind: "tank", Label: "Round", Face: c.face,
				Along: config.AlongRearAxle, XIn: c.x, ZIn: 6, LengthIn: 30, WidthIn: 30, HeightIn: 9}}}
			found := m.Against(o, m.PartsOf(o))
			if c.hits == "" {
				assert.Empty(t, found)
				return
			}
			if assert.Len(t, found, 1) {
				assert.Equal(t, c.hits, found[0].B.Label)
				assert.InDelta(t, 3.6, found[0].X, 0.05)
			}
		})
	}
}

func indexOf(m *Model, id string) int {
	for i := range m.Parts {
		if m.Parts[i].ID == id {
			return i
		}
	}
	return -1
}

// Whatever the module's length and width, a place keeps to its wall, a row keeps its
// pitch, and pieces on both sides mirror each other.
func TestPlacesKeepToTheirFaces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := module()
		b.LengthIn = quantity.Length(rapid.IntRange(100, 200).Draw(t, "long"))
		b.WidthIn = quantity.Length(rapid.IntRange(80, 96).Draw(t, "wide"))
		p := PlanesOf(truck(), b)
		at := config.Place{Kind: "lamp", LengthIn: 9, WidthIn: 3, HeightIn: 4, OutIn: 1.5, Both: true,
			Face: config.FaceStreet, Along: config.AlongRearWall, Level: config.LevelRoof, XIn: -25, ZIn: -8,
			Count: rapid.IntRange(1, 4).Draw(t, "count"), PitchIn: 12}
		boxes := p.Boxes(&at)
		require.Len(t, boxes, 2*at.Count)
		mean := 0.0
		for i := 0; i < len(boxes); i += 2 {
			street := boxes[i]
			assert.InDelta(t, -p.Half-1.5, street.Y0, 1e-9, "stands out by as much as it says")
			assert.Equal(t, street.Mirrored(), boxes[i+1])
			assert.InDelta(t, 9*3*4, street.Volume(), 1e-9)
			x, _, z := street.Center()
			mean += x / float64(at.Count)
			assert.InDelta(t, p.Roof-8, z, 1e-9)
		}
		assert.InDelta(t, p.Rear-25, mean, 1e-9)
		for _, face := range []struct {
			name string
			at   func(Box) float64
			want float64
		}{
			{config.FaceCeiling, func(b Box) float64 { return b.Z1 }, p.Ceiling},
			{config.FaceFloor, func(b Box) float64 { return b.Z0 }, p.Floor},
			{config.FaceUnder, func(b Box) float64 { return b.Z1 }, p.Under},
			{config.FaceRoof, func(b Box) float64 { return b.Z1 }, p.Roof + 2},
			{config.FaceRear, func(b Box) float64 { return b.X1 }, p.Rear + 2},
			{config.FaceFront, func(b Box) float64 { return b.X0 }, p.Front - 2},
			{config.FaceCurbWall, func(b Box) float64 { return b.Y1 }, p.Half - p.Wall},
			{config.FaceStreetWall, func(b Box) float64 { return b.Y0 }, -p.Half + p.Wall},
			{config.FaceFrontWall, func(b Box) float64 { return b.X0 }, p.Front + p.Wall},
			{config.FaceRearWall, func(b Box) float64 { return b.X1 }, p.Rear - p.Wall},
		} {
			one := config.Place{Kind: "unit", Face: face.name, LengthIn: 10, WidthIn: 20, HeightIn: 6, OutIn: 2}
			assert.InDelta(t, face.want, face.at(p.Boxes(&one)[0]), 1e-9, face.name)
		}
	})
}

// What an option reaches beyond the bare unit is what the unit with it measures more.
func TestReachIsWhatTheUnitGrows(t *testing.T) {
	cat := &config.Catalogue{Format: config.CatalogueFormat, ID: "x", Title: "x", Edition: "1",
		Chapters: []config.Chapter{{ID: "a", Label: "A"}}, Plant: config.Plant{HoursPerDay: 8},
		Groups: []config.Group{{ID: "g", Label: "G", Chapter: "a", Choose: config.ChooseAny}},
		Options: []config.Option{
			{ID: "winch", Group: "g", Label: "Winch", Places: []config.Place{{Kind: "bumper", Face: config.FaceFront,
				Along: config.AlongBumper, Level: config.LevelGround, ZIn: 25, LengthIn: 14, WidthIn: 78, HeightIn: 14,
				OutIn: 14}}},
			{ID: "step", Group: "g", Label: "Step", Places: []config.Place{{Kind: "step", Face: config.FaceRear,
				Along: config.AlongRearWall, ZIn: -14, LengthIn: 10, WidthIn: 60, HeightIn: 3, OutIn: 10}}},
			{ID: "mast", Group: "g", Label: "Mast",
				Places: []config.Place{{Kind: "mast", Face: config.FaceRoof, XIn: 26,
					LengthIn: 14, WidthIn: 14, HeightIn: 16, OutIn: 14}}},
			{ID: "whip", Group: "g", Label: "Whip",
				Places: []config.Place{{Kind: "antenna", Face: config.FaceRoof, XIn: 20,
					LengthIn: 1, WidthIn: 1, HeightIn: 40, OutIn: 40}}},
		}}
	cat.Chassis, cat.Bodies = []config.Chassis{*truck()}, []config.Body{*module()}
	cat.Chassis[0].BumperLowIn, cat.Chassis[0].TurningFt = bumperLowIn, 52 // stated
	_ = cat.Prepare()                                                      // the chassis is short of what only weights need
	bare := Of(cat, &config.Unit{Chassis: "c", Body: "b"})
	require.NotNil(t, bare)
	for _, c := range []struct {
		pick                  string
		longer, higher, front float64
	}{{"winch", 14, 0, 14}, {"step", 10, 0, 0}, {"mast", 0, 14, 0}, {"whip", 0, 0, 0}} {
		t.Run(c.pick, func(t *testing.T) {
			m := Of(cat, &config.Unit{Chassis: "c", Body: "b", Picks: []config.Pick{{Option: c.pick, Qty: 1}}})
			was, is := bare.Overall(), m.Overall()
			assert.InDelta(t, c.longer, float64(is.LengthIn-was.LengthIn), 1e-9)
			assert.InDelta(t, c.higher, float64(is.HeightIn-was.HeightIn), 1e-9, "an antenna does not count")
			r := m.Reach(cat.OptionByID(c.pick))
			assert.InDelta(t, c.longer, r.Ahead+r.Behind, 1e-9)
			assert.InDelta(t, c.front, r.Ahead, 1e-9)
			assert.Empty(t, is.AssumedLength+is.AssumedHeight+is.AssumedWidth, "every size is stated")
			cat.OptionByID(c.pick).Places[0].About = true
			about := Of(cat, &config.Unit{Chassis: "c", Body: "b", Picks: []config.Pick{{Option: c.pick, Qty: 1}}})
			said := func(decides bool) string {
				return map[bool]string{true: cat.OptionByID(c.pick).Label}[decides]
			}
			assert.Equal(t, said(c.longer > 0), about.Overall().AssumedLength, "a size that decides is said to be assumed")
			assert.Equal(t, said(c.higher > 0), about.Overall().AssumedHeight)
			_, wall := about.WallFt()
			assert.Equal(t, said(c.front > 0), wall, "only a bumper leads the corner that sweeps the wall")
			steep, _, _ := about.Angles()
			assert.Equal(t, said(c.front > 0), steep.Assumed)
			a0, _, _ := bare.Angles()
			a1, _, _ := m.Angles()
			if c.front > 0 {
				assert.Less(t, a1.Deg, a0.Deg, "what stands ahead takes from the approach angle")
			} else {
				assert.Equal(t, a0, a1)
			}
		})
	}
}

// The mass of an option is where the option stands. Worked by hand: the front wall is 59 in
// behind the front axle, the floor 32 in above the ground.
func TestMassIsWhereTheOptionStands(t *testing.T) {
	p := PlanesOf(truck(), module())
	at := func(x, z, long, lb float64) config.Place {
		return config.Place{Kind: "unit", Face: config.FaceFree, XIn: quantity.Length(x), ZIn: quantity.Length(z),
			LengthIn: quantity.Length(long), WidthIn: 10, HeightIn: 10, Lb: quantity.Mass(lb)}
	}
	seat := config.Seat{Kind: "attendant", XIn: 20, YIn: 5, ZIn: 20}
	box := config.Compartment{Side: "inside", XIn: 40, YIn: -20, ZIn: 12, WidthIn: 10, DepthIn: 10, HeightIn: 10}
	for _, c := range []struct {
		reason  string
		o       config.Option
		x, y, z float64
	}{
		{"by volume: 10 in at 20 and 30 in at 60", config.Option{Places: []config.Place{at(20, 10, 10, 0),
			at(60, 30, 30, 0)}}, 59 + 50, 0, 32 + 25},
		{"by weight: 30 of 40 lb at 20, the rest at 60", config.Option{Mass: &config.Mass{Lb: 40},
			Places: []config.Place{at(20, 10, 10, 30), at(60, 30, 30, 0)}}, 59 + 30, 0, 32 + 15},
		{"the rest of 40 lb by volume: 10 and 10 lb", config.Option{Mass: &config.Mass{Lb: 40},
			Places: []config.Place{at(20, 10, 10, 20), at(60, 10, 10, 0), at(80, 10, 10, 0)}}, 59 + 45, 0, 32 + 10},
		{"a compartment", config.Option{Compartments: []config.Compartment{box}}, 59 + 40, -20, 32 + 12},
		{"a seat: 8 in below its station to 22 above", config.Option{Seats: []config.Seat{seat}}, 59 + 20, 5, 32 + 27},
		{"places before seats", config.Option{Places: []config.Place{at(60, 30, 30, 0)}, Seats: []config.Seat{seat}},
			59 + 60, 0, 32 + 30},
	} {
		t.Run(c.reason, func(t *testing.T) {
			m := config.Mass{Zone: config.ZonePlaces, XIn: 1, YIn: 2, ZIn: -3}
			x, y, z := p.Station(truck(), module(), &c.o, &m)
			assert.InDelta(t, c.x+1, float64(x), 1e-9)
			assert.InDelta(t, c.y+2, float64(y), 1e-9)
			assert.InDelta(t, c.z-3, float64(z), 1e-9)
		})
	}
	_, _, _, ok := p.Center(&config.Option{})
	assert.False(t, ok, "what stands nowhere has no center")
}

func TestUnknownPartsGiveNoModel(t *testing.T) {
	assert.Nil(t, Of(nil, nil))
	assert.Nil(t, Of(&config.Catalogue{}, &config.Unit{Chassis: "none"}))
	assert.NotPanics(t, func() { Bare(&config.Chassis{}, &config.Body{}).Angles() }, "zeros are no reason to fail")
}

// A slot that an option brings for what is carried may lie in the room below a bench or in
// a cabinet, and nowhere that anything else is: not in a wheel box, a seat or another's slot.
func TestSlotsStandInSomething(t *testing.T) {
	slot := config.Option{ID: "slot", Compartments: []config.Compartment{{ID: "s", Label: "Slot", Side: "inside",
		XIn: 60, YIn: 30, ZIn: 9, WidthIn: 30, DepthIn: 12, HeightIn: 12, Holds: []config.Aboard{{}}}}}
	cabinet := config.Option{ID: "cabinet", Compartments: []config.Compartment{slot.Compartments[0]}}
	cabinet.Compartments[0].Holds = nil
	other := config.Option{ID: "other", Compartments: []config.Compartment{slot.Compartments[0]}}
	other.Compartments[0].ID = "o"
	fitted, beside := slot, other
	fitted.Fitted, beside.Fitted = &config.Fitted{}, &config.Fitted{}
	bench := config.Option{ID: "bench", Places: []config.Place{{Kind: "bench", Face: config.FaceFree, XIn: 60, YIn: 30,
		ZIn: 9, LengthIn: 72, WidthIn: 22, HeightIn: 18}}}
	seat := config.Option{ID: "seat", Seats: []config.Seat{{ID: "x", Kind: "fixed", XIn: 60, YIn: 30, ZIn: 19}}}
	m := Bare(truck(), module())
	for _, c := range []struct {
		name string
		a, b *config.Option
		hits int
	}{
		{"a slot below a bench", &slot, &bench, 0},
		{"a cabinet below a bench", &cabinet, &bench, 1},
		{"a slot in a cabinet", &slot, &cabinet, 0},
		{"a slot where a seat is", &slot, &seat, 1},
		{"two slots", &slot, &other, 1},
		{"two fitted into one compartment, whose room is counted", &fitted, &beside, 0},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Len(t, Between(m.PartsOf(c.a), m.PartsOf(c.b)), c.hits) })
	}
	at := slot.Compartments[0]
	i := slices.IndexFunc(m.Parts, func(p Part) bool { return p.ID == "wheel-box/curb" })
	require.GreaterOrEqual(t, i, 0)
	x, y, z := m.Parts[i].Center()
	at.XIn, at.YIn, at.ZIn = quantity.Length(x-m.Front), quantity.Length(y), quantity.Length(z-m.Floor)
	slot.Compartments[0] = at
	assert.NotEmpty(t, m.Against(&slot, m.PartsOf(&slot)), "in a wheel box")
}

// Fitted gear stands in the compartment that it goes into: where it has a place of its own in
// it, there; else in the middle of the first that the body has, on that one's side.
func TestFittedGearStandsInItsCompartment(t *testing.T) {
	b := module()
	b.Compartments = []config.Compartment{{ID: "s4", Side: "street", Slot: "street-rear", Along: config.AlongRearWall, XIn: -16,
		ZIn: 24, WidthIn: 26, DepthIn: 20, HeightIn: 73}}
	boards := config.Option{ID: "boards", Fitted: &config.Fitted{Slots: []string{"curb-rear", "street-rear"}},
		Compartments: []config.Compartment{{ID: "b", Side: "curb", Along: config.AlongRearWall, XIn: -9.8, ZIn: 26, WidthIn: 8,
			DepthIn: 20, HeightIn: 72, Holds: []config.Aboard{{}}}}}
	at := func() [2]float64 {
		p := PlanesOf(truck(), b)
		c := p.CompartmentOf(&boards, boards.Compartments[0])
		return [2]float64{float64(c.XIn), float64(c.YIn)}
	}
	assert.Equal(t, [2]float64{153 - 16, -47.5 + 10}, at(), "the body has the street-side one alone")
	curb := b.Compartments[0]
	curb.ID, curb.Side, curb.Slot, curb.XIn, curb.WidthIn = "c2", "curb", "curb-rear", -11, 16
	b.Compartments = append(b.Compartments, curb)
	assert.Equal(t, [2]float64{153 - 9.8, 47.5 - 10}, at(), "in the curb-side one by its own place")
	boards.Fitted = nil
	b.Compartments = nil
	assert.Equal(t, [2]float64{153 - 9.8, 47.5 - 10}, at(), "what is not fitted stands where it says")
}

// A seat and a litter stand within the lining, however narrow and short the room is.
func TestSeatsStandWithinTheLining(t *testing.T) {
	p := Planes{Front: 100, Rear: 232, Half: 40, Wall: 2}
	bench := p.Seat(config.Seat{Kind: "bench", XIn: 60, YIn: 33})
	assert.EqualValues(t, 40-2-9.5, bench.YIn)
	assert.EqualValues(t, -28.5, p.Seat(config.Seat{Kind: "bench", YIn: -33}).YIn)
	assert.EqualValues(t, 60, bench.XIn)
	assert.EqualValues(t, 132-2-38, p.Seat(config.Seat{Kind: "cot", XIn: 95}).XIn, "nobody lies through the rear doors")
	assert.EqualValues(t, 20, p.Seat(config.Seat{Kind: "cot", XIn: 20}).XIn)
}

// What the bay must give is what decides there: a door that is open, or the unit itself.
func TestBayIsWhatTheOpenDoorsTake(t *testing.T) {
	m := Bare(truck(), module())
	bare, bay := m.Bare(), m.Bay()
	assert.InDelta(t, float64(bare.LengthIn)+m.RearDoorHalf, float64(bay.LengthIn), 1e-9, "a leaf opens straight back")
	assert.InDelta(t, float64(bare.WidthIn)+m.DoorTo-m.DoorFrom, float64(bay.WidthIn), 1e-9)
	assert.Equal(t, "Rear doors", bay.AssumedLength, "their size is not stated")
	assert.Equal(t, "Side entry", bay.AssumedWidth)
	_, thick := m.Headroom()
	assert.NotEmpty(t, thick, "floor board and lining are of a usual thickness")
	stated := module()
	stated.Doors = config.Doors{SideXIn: 20, SideWidthIn: 30, SideHeightIn: 60, RearWidthIn: 48, RearHeightIn: 60}
	stated.Shell = nil
	m = Bare(truck(), stated)
	_, thick = m.Headroom()
	assert.Empty(t, m.Bay().AssumedLength+m.Bay().AssumedWidth+thick, "all of it is stated")
}
