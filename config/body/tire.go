package body

import (
	"regexp"
	"strconv"

	"boxwright/config"
)

// tireSize is a size in the metric form, such as LT245/75R16 or 225/70R19.5.
var tireSize = regexp.MustCompile(`(\d{3})/(\d{2,3})R(\d{2}(?:\.\d)?)`)

// Outside diameter and section width where a size cannot be read, in: common
// practice, no source.
const (
	usualTireIn    = 31.0
	usualSectionIn = 9.5
)

// TireSize is the outside diameter and the section width of a new tire from its
// size as written, in inches; false, with the usual values, when it cannot be read.
//
//	diameter = rim + 2 x section x aspect / 100
//
// Source: the metric tire size designation. Units: in; section in mm. Valid: sizes
// with section, aspect and rim. Example: LT235/85R16 is 31.7 in across.
func TireSize(size string) (diameter, section float64, ok bool) {
	m := tireSize.FindStringSubmatch(size)
	if m == nil {
		return usualTireIn, usualSectionIn, false
	}
	var v [3]float64
	for i := range v {
		v[i], _ = strconv.ParseFloat(m[i+1], 64) // digits by the expression
	}
	section = v[0] / 25.4
	return v[2] + 2*section*v[1]/100, section, true
}

// Wheel is what stands on one end of an axle: a tire, or a pair of them.
type Wheel struct{ Radius, Inner, Outer float64 } // inner and outer faces from the centerline

func wheelOf(t config.Tires, track, dual float64) Wheel {
	diameter, section, _ := TireSize(t.Size)
	half := section / 2
	if t.Count > 2 {
		half += dual / 2
	}
	return Wheel{diameter / 2, track/2 - half, track/2 + half}
}
