package bid

import (
	"math"
	"slices"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/bid/claims"
)

// How the amounts of a line fit a thing.
const (
	misses = iota
	untold // which of its amounts is meant cannot be told
	exact
	exceeds
	falls
)

// ratings are the units in which more is better: who offers more than was asked for complies.
var ratings = map[string]bool{quantity.Amp: true, quantity.Watt: true, quantity.AmpHour: true, quantity.Pound: true,
	claims.Month: true,
	claims.Mile:  true, claims.BTU: true, quantity.CubicFoot: true, claims.Milli: true}

// extents are the units of what a thing is rather than copes with.
var extents = map[string]bool{"": true, quantity.Inch: true, quantity.Percent: true, quantity.Degree: true,
	claims.Money: true, claims.Days: true, claims.Month: true, claims.Mile: true}

// fits holds amounts against those of a thing. When just one falls short it is named.
func (p *profile) fits(list []claims.Number) (fit int, missing claims.Number) {
	fit = exact
	list = p.bounded(list)
	falling := false
	for i, n := range list {
		if n.Each && p.words[togetherWord] || n.Apiece && p.most < 2 && p.hasForAll(n.Unit) {
			return misses, n
		}
		if p.secondOf(list[:i], n) {
			return misses, n
		}
		switch p.has(n) {
		case exact:
		case exceeds:
			fit = max(fit, exceeds)
		case untold:
			return untold, n
		case falls:
			if falling {
				return misses, n
			}
			falling, missing = true, n
		default:
			return misses, n
		}
	}
	if falling {
		return falls, missing
	}
	return fit, missing
}

// secondOf reports whether an amount is asked of a thing beside another of its unit, of which the thing has but one:
// two amounts are not both of one measure.
func (p *profile) secondOf(list []claims.Number, n claims.Number) bool {
	return slices.ContainsFunc(list, func(x claims.Number) bool {
		return x.Unit == n.Unit && x.Value != n.Value && (x.Sense == "" || n.Sense == "" || x.Sense == n.Sense)
	}) && p.amounts(n.Unit) < 2
}

// hasForAll reports whether a thing has ratings of a unit, and none of them is that of one of several: a 200 W
// siren is not two of 100 W.
func (p *profile) hasForAll(unit string) bool {
	of := func(x claims.Number) bool { return x.Unit == unit }
	return (unit == quantity.Watt || unit == quantity.Amp) && slices.ContainsFunc(p.numbers, of) &&
		!slices.ContainsFunc(p.numbers, func(x claims.Number) bool { return of(x) && (x.Apiece || x.Each) })
}

// bounded gives the ends of a range their comparisons, unless the thing has a range of
// just these ends itself.
func (p *profile) bounded(list []claims.Number) []claims.Number {
	if !slices.ContainsFunc(list, func(n claims.Number) bool { return n.Range != claims.NoRange }) {
		return list
	}
	var out []claims.Number
	for _, n := range list {
		if n.Range != claims.NoRange && n.Sense == "" && !slices.ContainsFunc(p.numbers, func(x claims.Number) bool {
			return x.Range == n.Range && x.Value == n.Value
		}) {
			n.Sense = map[claims.Range]config.Sense{claims.Low: atLeast, claims.High: atMost}[n.Range]
			if slices.ContainsFunc(p.numbers, func(x claims.Number) bool {
				return x.Unit == n.Unit && x.Range != claims.NoRange
			}) {
				n.Sense = map[claims.Range]config.Sense{claims.Low: atMost, claims.High: atLeast}[n.Range] // "reads 0 to 70 L/min"
			}
		}
		out = append(out, n)
	}
	return out
}

func (p *profile) has(n claims.Number) int {
	if n.Unit == claims.Days && n.Sense == atMost { // by when is not how long
		return misses
	}
	apparent := n.Unit == claims.VA
	n = p.inOwnUnit(n)
	below, above, within, unclear, bare, volts := false, false, false, false, 0, 0
	known := false     // the line and the thing say of what dimension they speak
	unlike := true     // it is of none that it is said to be of, and unlike all of them
	atLeastSo := false // the thing has no less than it says
	several := n.Unit != "" && p.amounts(n.Unit) > 1
	sided := n.Unit == "" && slices.Contains(n.Near, perSide) && slices.ContainsFunc(p.numbers, onEachSide)
	for _, x := range p.numbers {
		if x.Unit == "" {
			bare++
		}
		if x.Unit == quantity.Volt {
			volts++
		}
		if n.Unit == "" && n.Value < 1 && x.Value == n.Value {
			return exact // ".090 aluminum", inches as everybody knows
		}
		if x.Unit != n.Unit {
			continue
		}
		if n.Single && x.Unit == "" && x.Noun() == n.Noun() && x.Value != 1 {
			return misses // "single-point" is not two points
		}
		if sided && !onEachSide(x) || n.PerOne && !x.PerOne {
			continue // "four on each side" is not four in all, nor "two on each fender" two
		}
		if n.Of == "height" && x.Of == "" && x.Value != n.Value {
			continue // "58 in high" is not asked of a clear width
		}
		if n.Unit == "" && (!counts(x, n.Counted()) || p.countsOther(x, n)) || n.Of != "" && x.Of != "" && n.Of != x.Of {
			continue
		}
		if n.Of == "width" && x.Of == "" && x.Unit == quantity.Inch && x.Value > n.Value && n.Sense == atLeast {
			unclear = true
			continue // "seat at least 18 in wide" is not told by a track of 24 in
		}
		if several && n.Of != "" && x.Of == "" {
			unclear = unclear || n.Sense == atLeast && x.Value >= n.Value || n.Sense == atMost && x.Value <= n.Value
			continue // which of its dimensions that is cannot be told
		}
		known = known || n.Of != "" && n.Of == x.Of
		unlike = unlike && n.Unit == quantity.Inch && (n.Of == "" || n.Of != x.Of) &&
			max(n.Value, x.Value) > mostUnlike*min(n.Value, x.Value)
		near := math.Abs(x.Value-n.Value) <= 0.005*n.Value || n.Nominal(x.Value) || n.Unit == quantity.Volt &&
			claims.SameVolts(x.Value, n.Value)
		switch {
		case near && n.Beyond:
			above, below = above || n.Sense == atMost, below || n.Sense == atLeast
		case near:
			return exact
		case n.Sense == atLeast && x.Value > n.Value, n.Sense == atMost && x.Value < n.Value:
			within = true
		case x.Value > n.Value:
			above = true
		default:
			below = true
			atLeastSo = atLeastSo || x.Sense == atLeast || x.Choice
			unclear = unclear || apparent && x.Value >= leastFactor*n.Value
		}
	}
	lengths := n.Unit == quantity.Inch && n.Of != "distance"
	if within && several && n.Of == "" && (above && n.Sense == atMost || below && n.Sense == atLeast) {
		return untold // it holds of one of its dimensions, and not of another
	}
	switch {
	case within && n.Loose && n.Sense == atMost && !extents[n.Unit]:
		return untold // whether the thing copes with so much, or may not come to more
	case within:
		return exact
	case slices.ContainsFunc(p.otherAmounts, func(x claims.Number) bool { return x.Unit == n.Unit && x.Value == n.Value }):
		return misses // it is of another kind: USB among "12 V and USB outlets"
	case n.Unit == quantity.Volt && (n.Value == 12 || n.Value >= leastCharging && n.Value <= 14 && !p.feeds()) &&
		volts == 0 && p.wired:
		return exact // the vehicle's own voltage
	case n.Single && n.Noun() != "" && !p.ofGroupNamed(n.Noun()):
		return misses // "all on a single switch" is not each row on one
	case n.Unit == "" && n.Value == 1 && !above && !below, n.Unit == "" && n.Value > 1 && int(n.Value) <= p.most &&
		n.Value == math.Trunc(n.Value):
		return exact
	case n.Unit == "" && !above && n.Sense != atMost && n.Value < mostCounted && (below || p.counted(n)) &&
		p.countsFewer(n, sided):
		return falls
	case n.Unit == "":
		return misses
	case above && n.Sense == "" && n.Unit == quantity.Pound && several && n.Of == "":
		return untold // a cot is not better for being heavier
	case above && n.Sense == "" && ratings[n.Unit]:
		return exceeds
	case unclear && !known || atLeastSo && n.Sense != atMost || above && n.Sense == "" && n.Of == "thickness":
		return untold
	case unlike:
		return misses
	case below && n.Sense != atMost && (ratings[n.Unit] || known || lengths && !above && !several),
		below && n.Sense == atLeast, above && n.Sense == atMost:
		return falls
	}
	return misses
}

// mostUnlike is by what factor two lengths differ at most that are of one dimension though that is not said:
// "a grab rail 60 in long" is not asked of its 1 1/4 in. Common practice, no source.
const mostUnlike = 3

// mostCounted is the bare number from which it is hardly a count: "72 bench".
const mostCounted = 25

// countsFewer reports whether a thing has a number of just what an amount counts, and all that a
// unit may hold of it are fewer.
func (p *profile) countsFewer(n claims.Number, sided bool) bool {
	most := p.mostOf(n, sided)
	return most > 0 && most < n.Value
}

// mostOf is the most that a unit may hold of what an amount counts by having a thing; 0 where the thing has
// no number of that.
func (p *profile) mostOf(n claims.Number, sided bool) float64 {
	most := 0.0
	for _, x := range p.numbers {
		if x.Unit != "" || onEachSide(x) != sided {
			continue
		}
		if slices.ContainsFunc(n.Near[:n.Behind], func(w string) bool {
			return !single[w] && (!anyThing[w] && !qualities[w] && slices.Contains(x.Near[:x.Behind], w) ||
				x.First && !p.beside && p.words[w])
		}) && !p.countsOther(x, n) {
			most = max(most, x.Value*float64(max(p.most, 1)))
		}
	}
	if !sided && p.counted(n) {
		most = max(most, float64(p.most))
	}
	return most
}

// counted reports whether an amount counts just a thing of which a unit may hold several: "six flowmeters".
func (p *profile) counted(n claims.Number) bool {
	return p.most > 1 && p.ofGroupNamed(n.Noun()) && !slices.ContainsFunc(p.numbers, func(x claims.Number) bool {
		return x.Unit == "" && x.First && x.Noun() == n.Noun()
	})
}

// single are what a unit has one of: "two overhead" speaks of something else than its ceiling.
var single = wordSet("ceiling floor roof cab module")

// inOwnUnit is an amount in the unit in which a thing has its own, where it has none in that of
// the amount.
func (p *profile) inOwnUnit(n claims.Number) claims.Number {
	for _, c := range conversions {
		if n.Unit == c.from && p.amounts(c.from) == 0 && p.amounts(c.to) > 0 {
			n.Value, n.Unit = n.Value*c.factor, c.to
			break
		}
	}
	return n
}

// conversions are units of one kind between which a purchaser and a catalogue may differ.
// A BTU is 1055.056 J (ISO 31-4).
var conversions = []struct {
	from, to string
	factor   float64
}{{quantity.Liter, claims.Milli, 1000}, {claims.Milli, quantity.Liter, .001},
	{quantity.Watt, claims.BTU, 3600 / 1055.056}, {claims.VA, quantity.Watt, 1}}

// feeds reports whether a thing gives a voltage of its own, which is not that of the vehicle.
func (p *profile) feeds() bool {
	return slices.ContainsFunc(p.label, func(w string) bool { return sources[w] })
}

// leastCharging is the voltage from which one stands for that of a vehicle whose engine runs, common practice, no
// source.
const leastCharging = 13.5

// leastFactor is the least share of its volt-amperes that a source is taken to give in watts, common
// practice, no source: what has as many watts does, and what has a good deal fewer does not.
const leastFactor = .8

// perSide is the stem of "each side", and onEachSide says that a number counts what is there.
var perSide = stems("each side")[0]

func onEachSide(n claims.Number) bool { return n.Unit == "" && slices.Contains(n.Near, perSide) }

// amounts is how many different amounts of a unit are true of a thing.
func (p *profile) amounts(unit string) int {
	var list []float64
	for _, x := range p.numbers {
		if x.Unit == unit && !slices.Contains(list, x.Value) {
			list = append(list, x.Value)
		}
	}
	return len(list)
}

// countsOther reports whether an amount counts something of a thing that a number of it does not: three
// drawer banks are not three drawers.
func (p *profile) countsOther(x, n claims.Number) bool {
	counted, noun := n.Counted(), n.Noun()
	return slices.ContainsFunc(p.numbers, func(y claims.Number) bool {
		of := y.Noun()
		switch {
		case y.Unit != "" || of == "":
			return false
		case of == noun: // "three seated persons or one patient" are not three patients
			return x.Value == n.Value && y.Value < n.Value && !onEachSide(y) && x.Noun() != "" && x.Noun() != noun
		}
		return len(counted) > 1 && y.Value == x.Value && !y.First && of != everyWord && slices.Contains(counted, of)
	})
}

// counts reports whether a number of a thing may count what words name.
func counts(x claims.Number, words []string) bool {
	things := x.Near
	if x.Behind > 0 {
		things = things[:x.Behind]
	}
	return len(words) == 0 || slices.ContainsFunc(words, func(w string) bool { return slices.Contains(things, w) })
}

// reaches reports whether a thing has the amounts that others fall short of, so that it may be
// what a line means though not all words were understood.
func (v *vocabulary) reaches(p *profile, words []string, list []claims.Number) bool {
	if slices.ContainsFunc(words, func(w string) bool { return p.never[w] }) {
		return false
	}
	return !slices.ContainsFunc(list, func(n claims.Number) bool {
		n = p.inOwnUnit(n)
		said := n.Of != "" && slices.ContainsFunc(p.numbers, func(x claims.Number) bool {
			return x.Unit == n.Unit && x.Of == n.Of
		})
		return !slices.ContainsFunc(p.numbers, func(x claims.Number) bool {
			switch {
			case x.Unit != n.Unit, said && x.Of != n.Of:
				return false
			case n.Sense == atMost:
				return x.Value <= n.Value
			}
			return x.Value >= n.Value
		})
	})
}
