package config

import (
	"fmt"
	"strings"
)

// Picked is an option that a unit holds, and how many of it.
type Picked struct {
	*Option
	Qty int
}

// Picked lists what a calculator counts of a unit. What this edition does not
// know, or the unit has in no quantity, is left out and reported; so are the
// fields of an option that bad names, which the calculator takes for zero.
// Area is the calculator's name for readers, in small letters the first part of
// the codes: "Power" reports "power.unknown-option" and "power.bad-number".
func (c *Catalogue) Picked(u *Unit, area string, r *Report, bad func(*Option) Unclean) []Picked {
	var out []Picked
	for _, p := range u.Picks {
		o := c.OptionByID(p.Option)
		if o == nil || p.Qty < 1 {
			r.Tell(area, "unknown-option", Warn, fmt.Sprintf("Option %q (%d) is not counted.", p.Option, p.Qty),
				"Take it out, or choose one of this edition in a quantity of 1 or more.")
			continue
		}
		r.BadNumbers(area, o.Label, bad(o))
		out = append(out, Picked{o, p.Qty})
	}
	return out
}

// BadNumbers reports the named fields of a thing that count as zero.
func (r *Report) BadNumbers(area, label string, names Unclean) {
	for _, name := range names {
		r.Tell(area, "bad-number", Warn, fmt.Sprintf("%s: %s is negative or not a number and counts as zero.", label,
			name), "Correct the catalogue.")
	}
}

// Tell adds a finding of a calculator's area; see Picked for its code.
func (r *Report) Tell(area, code string, severity Severity, text, remedy string) {
	r.Findings = append(r.Findings, Finding{Code: strings.ToLower(area) + "." + code, Severity: severity, Where: area,
		Text: text, Remedy: remedy})
}

// Clean makes a hostile number harmless: what is negative, above a million or no
// number is zero.
func Clean[T ~float64](v T) T {
	if !(v >= 0 && v <= 1e6) {
		return 0
	}
	return v
}

// Unclean gathers the names of fields that Clean would change.
type Unclean []string

// Look takes a field's name in the file, and its value.
func (u *Unclean) Look(name string, v float64) {
	if Clean(v) != v {
		*u = append(*u, name)
	}
}

// Cots is how many patients one of the option carries on cots.
func (o *Option) Cots() int {
	n := 0
	for _, s := range o.Seats {
		if s.Kind == "cot" {
			n++
		}
	}
	return n
}
