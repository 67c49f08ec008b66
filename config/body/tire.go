package body

import (
	"strconv"
	"strings"

	"boxwright/config"
)

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
	before, after, _ := strings.Cut(size, "/")
	ratio, rim, _ := strings.Cut(after, "R")
	width := before[max(len(before)-3, 0):]
	if end := strings.IndexFunc(rim, func(r rune) bool { return r != '.' && (r < '0' || r > '9') }); end >= 0 {
		rim = rim[:end]
	}
	mm, badWidth := strconv.ParseUint(width, 10, 16)
	aspect, badRatio := strconv.ParseUint(ratio, 10, 16)
	across, badRim := strconv.ParseFloat(rim, 64)
	if badWidth != nil || badRatio != nil || badRim != nil || mm < 100 || aspect < 10 || aspect > 999 ||
		across < 10 || across >= 100 {
		return usualTireIn, usualSectionIn, false
	}
	section = float64(mm) / 25.4
	return across + 2*section*float64(aspect)/100, section, true
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
