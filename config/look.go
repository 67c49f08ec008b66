package config

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"unicode"

	"boxwright/config/quantity"
)

// Look is how an option changes what the chassis, the body and other options look like.
type Look struct {
	Paint *Paint `json:"paint,omitempty"`
	// colors of the warning lights by the face that they are on: a letter for each piece in turn
	Lamps    map[string]string `json:"lamps,omitempty"`
	Glass    string            `json:"glass,omitempty"`    // see GlassLooks
	Doors    string            `json:"doors,omitempty"`    // how the outside compartments open, see Hinges
	Cabinets string            `json:"cabinets,omitempty"` // how the cabinets inside open, see Hinges
	Cot      string            `json:"cot,omitempty"`      // see CotLooks
	Wheels   string            `json:"wheels,omitempty"`   // see WheelLooks
	// the rear doors reach up to the ceiling's edge
	TallDoors bool `json:"tall_doors,omitempty"`
}

// Paint is the color of the body, from the top down, and where one meets the next.
type Paint struct {
	Colors   []string          `json:"colors"`              // until the customer says which
	BreaksIn []quantity.Length `json:"breaks_in,omitempty"` // above the module floor, from the top down
	RiseIn   quantity.Length   `json:"rise_in,omitempty"`   // by how much a break rises toward the rear
}

// ColorNames are the colors that can be drawn, with the letter that stands for each
// beside its tint.
var ColorNames = map[string]string{"white": "W", "clear": "C", "red": "R", "amber": "A", "blue": "B", "green": "G",
	"yellow": "Y", "orange": "O", "black": "K", "gray": "S", "silver": "V", "gold": "D", "navy": "N", "lime": "L"}

// Colors that are another's: of the unit's warning lights on that face, and as the
// customer says.
const (
	ColorWarn = "warn"
	ColorAsks = "asks"
)

// GlassLooks are the looks of windows; empty: clear.
var GlassLooks = []string{"", "dark", "frosted"}

// CotLooks are the kinds of cots; empty: one that nothing is known of.
var CotLooks = []string{"", "manual", "wide", "power", "wide-power", "incubator"}

// WheelLooks are the kinds of wheels; empty: plain steel.
var WheelLooks = []string{"", "liners", "forged"}

// Hinges are where a leaf hangs or how it moves: at an edge, as a pair, along a track,
// rolled up, or none but a net.
var Hinges = []string{"", "left", "right", "top", "bottom", "pair", "slide", "roll", "net"}

// unseenNone is the reason of what leaves something out.
const unseenNone = "none"

// UnseenReasons are why an option cannot be seen in a picture.
var UnseenReasons = map[string]string{
	"inside":   "It is within walls, floor, cabinets or the chassis.",
	"same":     "It looks the same as without it.",
	unseenNone: "It leaves something out.",
	"service":  "It is a paper or a service.",
	"finish":   "It is a color, a finish or a detail too small for these pictures.",
	"loose":    "It is carried loose, or varies from one to the next.",
}

// Drawn reports whether an option says what it looks like.
func (o *Option) Drawn() bool {
	room := slices.ContainsFunc(o.Compartments, func(c Compartment) bool { return c.Holds == nil })
	return room || len(o.Places)+len(o.Seats) > 0 || o.Look != nil
}

// ColorsIn finds the colors named in a text, in their order.
func ColorsIn(text string) (list []string) {
	for _, w := range strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) }) {
		if w == "grey" {
			w = "gray"
		}
		if _, known := ColorNames[w]; known {
			list = append(list, w)
		}
	}
	return list
}

// ColorOf is the color that a letter stands for; empty for a letter that is none.
func ColorOf(letter byte) string {
	for _, name := range slices.Sorted(maps.Keys(ColorNames)) {
		if ColorNames[name] == string(letter) {
			return name
		}
	}
	return ""
}

// look checks how an option says that it, or what it changes, looks.
func (k *checker) look(w string, o *Option) {
	if o.Unseen != "" {
		if _, known := UnseenReasons[o.Unseen]; !known {
			k.add("value", w+" unseen", "%q is not a reason why an option cannot be seen", o.Unseen)
		}
		if o.Drawn() {
			k.add("value", w+" unseen", "it says both what it looks like and why it cannot be seen")
		}
	}
	l := o.Look
	if l == nil {
		return
	}
	k.oneOf(w+" look glass", l.Glass, GlassLooks...)
	k.oneOf(w+" look doors", l.Doors, Hinges...)
	k.oneOf(w+" look cabinets", l.Cabinets, Hinges...)
	k.oneOf(w+" look cot", l.Cot, CotLooks...)
	k.oneOf(w+" look wheels", l.Wheels, WheelLooks...)
	for _, face := range slices.Sorted(maps.Keys(l.Lamps)) {
		k.oneOf(w+" look lamps", face, PlaceFaces...)
		for i := range len(l.Lamps[face]) {
			if ColorOf(l.Lamps[face][i]) == "" {
				k.add("value", fmt.Sprintf("%s look lamps %s", w, face), "%q is not the letter of a color",
					l.Lamps[face][i:i+1])
			}
		}
	}
	p := l.Paint
	if p == nil {
		return
	}
	if len(p.Colors) == 0 || len(p.Colors) > 3 || len(p.BreaksIn) != len(p.Colors)-1 {
		k.add("value", w+" look paint", "one to three colors, and one break fewer than colors")
	}
	for i, c := range p.Colors {
		k.color(fmt.Sprintf("%s look paint colors[%d]", w, i), c)
	}
	for i, b := range p.BreaksIn {
		k.between(fmt.Sprintf("%s look paint breaks_in[%d]", w, i), -40, 120, map[string]float64{"": float64(b)})
	}
	k.between(w+" look paint", -80, 80, map[string]float64{"rise_in": float64(p.RiseIn)})
}

// color checks the name of one.
func (k *checker) color(where, name string) {
	if _, known := ColorNames[name]; !known && name != "" && name != ColorWarn && name != ColorAsks {
		k.add("value", where, "%q is not a color that can be drawn", name)
	}
}
