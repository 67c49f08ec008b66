package weight

import (
	"math"

	"boxwright/config"
	"boxwright/config/quantity"
)

// A measure is a figure written as a sum over the masses, or as one such sum
// over another. One description serves three uses: the value, its likely range
// (from the gradient), and the linear limit handed to the rules engine; so the
// three cannot disagree.
//
//	value = offset + scale * sum(top * lb) / sum(bottom * lb)
//
// Without bottom the divisor is one. A counting measure sums count instead.
type measure struct {
	code, label, unit string
	in                func(Kind) bool
	offset, scale     float64
	top, bottom       func(*Item) float64 // per pound of the item
	count             func(*Item) float64
	magnitude         bool // the figure shows the size of a signed value
	judged            bool // the limit judges the unit and rules out no option beforehand
	noted             bool // missing the limit is worth knowing and no fault

	// usual is the factor that is the limit, worth a note, where nobody has set one.
	usual string

	limit  float64
	sense  config.Sense
	source string
	basis  config.Basis
}

// measures of this chassis and body, with the ratings of its parts as limits.
// A figure that a wrong number of the chassis would spoil is left out.
func (l *loader) measures() []measure {
	c := l.ch
	one := func(*Item) float64 { return 1 }
	wb := float64(c.WheelbaseIn)
	rear := func(it *Item) float64 { return float64(it.XIn) / wb }
	front := func(it *Item) float64 { return 1 - float64(it.XIn)/wb }
	height := func(it *Item) float64 { return float64(it.ZIn) }
	rated := func(m measure, limit float64, source string) measure {
		if limit > 0 && limit < mostLb {
			m.limit, m.sense, m.source, m.basis = limit, config.AtMost, source, config.Rating
		}
		return m
	}
	gvwr, gawrF, gawrR := float64(c.GVWRLb), float64(c.GAWRFrontLb), float64(c.GAWRRearLb)
	tiresF, tiresR := TireCapacity(c.FrontTires), TireCapacity(c.RearTires)

	const maker = "allowed by the maker of the chassis"
	allowed := func(m measure, most quantity.Mass) measure {
		m = rated(m, float64(most), maker)
		m.judged = m.sense != ""
		return m
	}
	ms := []measure{
		allowed(measure{code: "weight.curb", label: "Curb weight", unit: quantity.Pound, in: inCurb, scale: 1, top: one},
			c.CurbMostLb),
		rated(measure{code: "weight.gross", label: "Gross weight, full load", unit: quantity.Pound, in: inGross,
			scale: 1, top: one}, gvwr, "GVWR of the chassis"),
		rated(measure{code: "weight.front-axle", label: "Front axle, full load", unit: quantity.Pound, in: inGross,
			scale: 1, top: front}, gawrF, "front GAWR of the chassis"),
		rated(measure{code: "weight.rear-axle", label: "Rear axle, full load", unit: quantity.Pound, in: inGross,
			scale: 1, top: rear}, gawrR, "rear GAWR of the chassis"),
		rated(measure{code: "weight.front-tires", label: "Front tires, full load", unit: quantity.Pound, in: inGross,
			scale: 1, top: front}, tiresF, "load of the front tires together"),
		rated(measure{code: "weight.rear-tires", label: "Rear tires, full load", unit: quantity.Pound, in: inGross,
			scale: 1, top: rear}, tiresR, "load of the rear tires together"),
		{code: "weight.front-share", label: "Front axle share of gross", unit: quantity.Percent, in: inGross, scale: 100, top: front, bottom: one},
		{code: "weight.rear-share", label: "Rear axle share of gross", unit: quantity.Percent, in: inGross, scale: 100, top: rear, bottom: one},
		allowed(measure{code: "weight.cg-height", label: "Height of the center of gravity, full load",
			unit: quantity.Inch, in: inGross, scale: 1, top: height, bottom: one}, quantity.Mass(c.CGMostIn)),
	}
	if c.CurbFrontMostLb > 0 {
		ms = append(ms, allowed(measure{code: "weight.curb-front", label: "Front axle, unloaded", unit: quantity.Pound,
			in: inCurb, scale: 1, top: front}, c.CurbFrontMostLb))
	}
	if c.CurbRearMostLb > 0 {
		ms = append(ms, allowed(measure{code: "weight.curb-rear", label: "Rear axle, unloaded", unit: quantity.Pound,
			in: inCurb, scale: 1, top: rear}, c.CurbRearMostLb))
	}
	if least := float64(c.FrontLeastLb); least > 0 && least < mostLb {
		ms = append(ms, measure{code: "weight.front-least", label: "Front axle, full load, against the least for steering",
			unit: quantity.Pound, in: inGross, scale: 1, top: front, limit: least, sense: config.AtLeast, source: maker,
			basis: config.Rating, judged: true})
	}
	if gvwr > 0 && gvwr < mostLb {
		ms = append(ms,
			measure{code: "weight.payload", label: "Payload, GVWR less curb weight", unit: quantity.Pound, in: inCurb,
				offset: gvwr, scale: -1, top: one},
			measure{code: "weight.payload-crewed", label: "Remaining payload with the crew aboard, GVWR less curb and crew",
				unit: quantity.Pound, in: inCrewed, offset: gvwr, scale: -1, top: one},
			measure{code: "weight.payload-left", label: "Remaining payload, GVWR less full load", unit: quantity.Pound,
				in: inGross, offset: gvwr, scale: -1, top: one})
	}
	if l.tracks {
		tf, tr := float64(c.TrackFrontIn), float64(c.TrackRearIn)
		rightLessLeft := func(it *Item) float64 {
			return 2 * float64(it.YIn) * (front(it)/tf + rear(it)/tr)
		}
		// Source: SSF = T/2h (NHTSA, rollover resistance rating; TRID 763766 for the fleet
		// means of model year 2003), T being the mean track. A rigid-body figure: the dynamic
		// threshold of heavy trucks was found about 25 percent lower (SAE 2003-01-3385).
		half := func(*Item) float64 { return (tf + tr) / 4 }
		ms = append(ms,
			measure{code: "weight.side", label: "Left-right difference, of gross", unit: quantity.Percent, in: inGross,
				scale: 100, top: rightLessLeft, bottom: one, magnitude: true,
				usual: config.SideUsual, source: "usual between sides"},
			measure{code: "weight.ssf", label: "Static stability factor, T/2h", unit: quantity.Ratio, in: inGross,
				scale: 1, top: half, bottom: height})
	}
	ms = append(ms,
		measure{code: "weight.seats", label: "Designated seating positions", unit: quantity.Count, in: inGross,
			scale: 1, count: func(it *Item) float64 { return counted(it, KindPerson) }},
		measure{code: "weight.patients", label: "Patients on cots", unit: quantity.Count, in: inGross, scale: 1,
			count: func(it *Item) float64 { return counted(it, KindPatient) }})
	for i := range ms {
		m := &ms[i]
		f := config.Figure{Code: m.code}
		if !m.judged {
			f.Sense = m.sense
		}
		l.assume.Bind(&f)
		if m.usual != "" && f.Sense == "" {
			l.assume.Assume(&f, m.usual, config.AtMost, m.source)
			m.noted = true
		}
		stricter := m.judged && f.Sense == config.AtMost && m.sense == config.AtMost && f.Limit < m.limit
		if (m.sense == "" || stricter) && f.Sense != "" && finite(f.Limit) {
			m.limit, m.sense, m.source, m.basis, m.judged = f.Limit, f.Sense, f.Source, f.Basis, false
		}
	}
	return ms
}

func counted(it *Item, kind Kind) float64 {
	if it.Kind != kind {
		return 0
	}
	return float64(it.Qty)
}

// sums are the two sums of the measure over the items, before scale and
// offset.
func (m *measure) sums(items []Item) (top, bottom float64) {
	for i := range items {
		it := &items[i]
		if !m.in(it.Kind) {
			continue
		}
		if m.count != nil {
			top += m.count(it)
			continue
		}
		top += m.top(it) * float64(it.Lb)
		if m.bottom != nil {
			bottom += m.bottom(it) * float64(it.Lb)
		}
	}
	if m.bottom == nil {
		bottom = 1
	}
	return top, bottom
}

// gradient is the change of the value for one pound more of an item.
func (m *measure) gradient(top, bottom float64) func(*Item) float64 {
	return func(it *Item) float64 {
		switch {
		case m.count != nil || !m.in(it.Kind):
			return 0
		case m.bottom == nil:
			return m.scale * m.top(it)
		}
		return m.scale * (m.top(it) - top/bottom*m.bottom(it)) / bottom
	}
}

// figure computes value, likely range and chance of missing the limit. False
// when there is no such number.
func (m *measure) figure(items []Item, est *estimate) (config.Figure, bool) {
	top, bottom := m.sums(items)
	if !(bottom > 0) {
		return config.Figure{}, false
	}
	v := m.offset + m.scale*top/bottom
	sd := est.sigma(items, m.gradient(top, bottom))
	if !finite(v, sd) {
		return config.Figure{}, false
	}
	f := config.Figure{
		Code: m.code, Label: m.label, Unit: m.unit,
		Value: round6(v), Low: round6(v - likely*sd), High: round6(v + likely*sd),
		Limit: m.limit, Sense: m.sense, Source: m.source, Basis: m.basis, Noted: m.noted,
	}
	// Dust would make chances of 1 and 0 out of figures that meet their limit.
	v = f.Value
	above := func(limit float64) float64 { return chanceAbove(v, sd, limit) }
	if m.magnitude {
		side := "level"
		switch {
		case v > 0.005:
			side = "right side heavy"
		case v < -0.005:
			side = "left side heavy"
		}
		f.Label += ", " + side
		low, high := f.Low, f.High
		f.Value = math.Abs(v)
		f.High = math.Max(math.Abs(low), math.Abs(high))
		f.Low = math.Min(math.Abs(low), math.Abs(high))
		if low < 0 && high > 0 {
			f.Low = 0
		}
		above = func(limit float64) float64 {
			return math.Min(1, chanceAbove(v, sd, limit)+chanceAbove(-v, sd, limit))
		}
	}
	switch m.sense {
	case config.AtMost:
		f.Chance = above(m.limit)
	case config.AtLeast:
		f.Chance = 1 - above(m.limit)
		if f.Value == m.limit && sd == 0 {
			f.Chance = 0
		}
	}
	f.Chance = round6(f.Chance)
	return f, true
}

// figures of the unit, in the order of the measures, and the standing ones of
// the chassis.
func (l *loader) figures(items []Item, est *estimate) []config.Figure {
	var fs []config.Figure
	for _, m := range l.measures() {
		if f, ok := m.figure(items, est); ok {
			fs = append(fs, f)
		}
	}
	return append(fs, l.tireFigures()...)
}

// tireFigures stand only where the tires of an axle carry less than its
// rating, which 49 CFR 571.120 S5.1.2 forbids.
func (l *loader) tireFigures() []config.Figure {
	var fs []config.Figure
	check := func(code, label string, t config.Tires, gawr float64) {
		if v := TireCapacity(t); v < gawr && gawr < mostLb {
			fs = append(fs, config.Figure{
				Code: code, Label: label, Unit: quantity.Pound, Value: round6(v), Low: round6(v), High: round6(v),
				Limit: gawr, Sense: config.AtLeast, Source: "49 CFR 571.120 S5.1.2", Basis: config.ReadInText,
				Chance: 1,
			})
		}
	}
	check("weight.gawr-tires-front", "Front tires against front GAWR", l.ch.FrontTires, float64(l.ch.GAWRFrontLb))
	check("weight.gawr-tires-rear", "Rear tires against rear GAWR", l.ch.RearTires, float64(l.ch.GAWRRearLb))
	return fs
}
