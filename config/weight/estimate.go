package weight

import (
	"math"
	"slices"

	"boxwright/config"
	"boxwright/config/quantity"
)

// likely is how many standard deviations hold the middle 95 in 100 of a normal
// distribution: every tolerance is read as the half width of that range, and
// every likely range is given with the same odds.
const likely = 1.959963984540054

// estimate is how well masses and places are known, and together with what. Errors are
// independent, normal, each in units of its own standard deviation:
//
//   - one of each thing's mass, and one each of its place along, across and up;
//   - the build's: everything the plant builds is heavier together, and stands further
//     aft together, from unit to unit alike;
//   - the chassis': how its weight is split, how far its center is off the middle line
//     and how high, alike for all of one chassis;
//   - the specimen's: by how much this one unit and this one chassis differ from the
//     next, which nothing learnt from others takes away.
//
// Tickets add rows that take variance away.
type estimate struct {
	keys map[string]int // of things and specimens: the first of their errors
	dims int
	doubt
	// taken holds the rows of inverse(chol(S)) A of the least-squares
	// correction; the variance of c is |c|^2 - sum (row . c)^2.
	taken [][]float64
	errs  []float64 // by which tickets moved each error, in standard deviations
	room  []float64 // of one sum, for sigma
}

// doubt is the assumed factors as standard deviations: shares of a mass, and inches.
type doubt struct {
	build, unit, chassisUnit, scale    float64
	split, chassisSide, chassisHeight  float64
	buildStation, along, across, above float64
}

func doubtOf(a *config.Assumptions) doubt {
	share := func(code string) float64 { return a.Factor(code) / 100 / likely }
	inches := func(code string) float64 { return a.Factor(code) / likely }
	return doubt{
		build: share(config.MassBuild), unit: share(config.MassUnit), chassisUnit: share(config.ChassisUnit),
		scale: share(config.ScaleError), split: share(config.ChassisSplit), chassisSide: inches(config.ChassisSide),
		chassisHeight: inches(config.ChassisHeight), buildStation: inches(config.StationBuild),
		along: inches(config.StationThing), across: inches(config.SideThing), above: inches(config.HeightThing),
	}
}

// The errors that everything shares, and those of a thing and a specimen behind their
// key.
const (
	errBuild = iota
	errBuildStation
	errScale
	sharedErrs

	// of a thing: its mass and its place
	errMass   = 0
	errAlong  = 1
	errAcross = 2
	errAbove  = 3
	thingErrs = 4

	// of a specimen
	errUnit        = 0
	errChassisUnit = 1
	specimenErrs   = 2
)

// thisUnit is the specimen that is quoted.
const thisUnit = "this unit"

func newEstimate(a *config.Assumptions, items []Item) *estimate {
	e := &estimate{keys: make(map[string]int, len(items)+1), dims: sharedErrs, doubt: doubtOf(a)}
	e.key(thisUnit, specimenErrs)
	e.know(items)
	return e
}

// key is where the errors of that name begin.
func (e *estimate) key(name string, errs int) int {
	k, ok := e.keys[name]
	if !ok {
		k = e.dims
		e.keys[name] = k
		e.dims += errs
	}
	return k
}

// know gives each item the place of its thing among the errors.
func (e *estimate) know(items []Item) {
	for i := range items {
		items[i].key = e.key(thing(&items[i]), thingErrs)
	}
}

func thing(it *Item) string { return string(it.Kind) + "/" + it.ID }

// effects of one standard deviation of each error on an item: on its mass in pounds, on
// its place in inches.
type effects struct {
	mass, build, unit, chassisUnit float64
	along, buildStation            float64
	across, above                  float64
}

func (e *estimate) of(it *Item) effects {
	x, lb := effects{mass: it.err}, float64(it.Lb)
	switch {
	case it.Kind == KindChassis:
		x.chassisUnit = lb * e.chassisUnit
		x.along, x.across, x.above = e.split*it.wheelbase, e.chassisSide, e.chassisHeight
	case it.built:
		x.build, x.unit, x.buildStation = lb*e.build, lb*e.unit, e.buildStation
		x.along, x.across, x.above = e.along, e.across, e.above
	case it.Kind == KindModule || it.Kind == KindEquipment:
		x.along, x.across, x.above = e.along, e.across, e.above
	}
	return x
}

// spread is how a sum over items moves with one standard deviation of each error. perLb
// is the weight of a pound of an item in the sum, straight in each of its stations.
func (e *estimate) spread(items []Item, perLb func(*Item) float64, specimen int) []float64 {
	return e.spreadIn(make([]float64, e.dims), items, perLb, specimen)
}

// spreadIn is spread in a list of zeros that is there.
func (e *estimate) spreadIn(c []float64, items []Item, perLb func(*Item) float64, specimen int) []float64 {
	for i := range items {
		it := &items[i]
		x, m, k := e.of(it), perLb(it), it.key
		c[k+errMass] += m * x.mass
		if m != 0 {
			c[errBuild] += m * x.build
			c[specimen+errUnit] += m * x.unit
			c[specimen+errChassisUnit] += m * x.chassisUnit
		}
		lb := float64(it.Lb)
		// moved is what the sum gains with the item an inch further along, across or up.
		moved := func(at *quantity.Length) float64 {
			was := *at
			*at++
			by := perLb(it) - m
			*at = was
			return by * lb
		}
		if x.along != 0 || x.buildStation != 0 {
			d := moved(&it.XIn)
			c[k+errAlong] += d * x.along
			c[errBuildStation] += d * x.buildStation
		}
		if x.across != 0 {
			c[k+errAcross] += moved(&it.YIn) * x.across
		}
		if x.above != 0 {
			c[k+errAbove] += moved(&it.ZIn) * x.above
		}
	}
	return c
}

// sigma is the standard deviation of a sum with the given weight per pound.
func (e *estimate) sigma(items []Item, perLb func(*Item) float64) float64 {
	e.room = slices.Grow(e.room[:0], e.dims)[:e.dims]
	clear(e.room)
	c := e.spreadIn(e.room, items, perLb, e.keys[thisUnit])
	v := dot(c, c)
	for _, row := range e.taken {
		d := dot(row, c)
		v -= d * d
	}
	return math.Sqrt(math.Max(v, 0))
}

// chanceAbove is the probability that a normal quantity exceeds limit.
//
// Source: normal distribution function by the complementary error function.
func chanceAbove(mean, sd, limit float64) float64 {
	if !(sd > 0) {
		if mean > limit {
			return 1
		}
		return 0
	}
	return math.Erfc((limit-mean)/(sd*math.Sqrt2)) / 2
}

func dot(a, b []float64) float64 {
	s := 0.0
	for i := range min(len(a), len(b)) {
		s += a[i] * b[i]
	}
	return s
}
