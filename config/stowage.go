package config

import (
	"fmt"
	"slices"
)

// Stowage says where a thing belongs, by the practice of the service. What is left
// out asks for nothing. Needs and Apart are held; the rest is weighed against the
// balance of the unit.
type Stowage struct {
	Place  string `json:"place,omitempty"`  // "inside", with the patient, or "outside"
	Height string `json:"height,omitempty"` // "low", "reach" of somebody seated or standing, or "high"
	// "clean" or "dirty"; the two do not share a compartment if it can be helped
	Dirt  string   `json:"dirt,omitempty"`
	Needs string   `json:"needs,omitempty"` // rides only in a compartment that takes this, such as "oxygen"
	Apart []string `json:"apart,omitempty"` // ids of equipment that never shares its compartment
	Why   string   `json:"why,omitempty"`   // a sentence for the reader
}

// The words of a Stowage.
const (
	StowInside  = "inside"
	StowOutside = "outside"
	StowLow     = "low"
	StowReach   = "reach"
	StowHigh    = "high"
	StowClean   = "clean"
	StowDirty   = "dirty"
)

// stowage checks where each thing belongs.
func (k *checker) stowage() {
	takes := map[string]bool{}
	for _, c := range k.c.everyCompartment() {
		for _, t := range c.Takes {
			takes[t] = true
		}
	}
	for i := range k.c.Equipment {
		e := &k.c.Equipment[i]
		if e.Stow == nil {
			continue
		}
		where := at("equipment", i, e.ID) + " stow"
		k.oneOf(where+" place", e.Stow.Place, "", StowInside, StowOutside)
		k.oneOf(where+" height", e.Stow.Height, "", StowLow, StowReach, StowHigh)
		k.oneOf(where+" dirt", e.Stow.Dirt, "", StowClean, StowDirty)
		if e.Stow.Needs != "" && !takes[e.Stow.Needs] {
			k.add("value", where+" needs", "no compartment takes %q; name it under takes of those that do",
				e.Stow.Needs)
		}
		for n, id := range e.Stow.Apart {
			if !slices.ContainsFunc(k.c.Equipment, func(x Equipment) bool { return x.ID == id }) {
				k.add("unknown-id", fmt.Sprintf("%s apart[%d]", where, n), "%q is not equipment", id)
			}
		}
	}
}

// everyCompartment lists those of all bodies and options.
func (c *Catalogue) everyCompartment() []Compartment {
	var out []Compartment
	for i := range c.Bodies {
		out = append(out, c.Bodies[i].Compartments...)
	}
	for i := range c.Options {
		out = append(out, c.Options[i].Compartments...)
	}
	return out
}
