package link

import (
	"math"
	"slices"

	"boxwright/config"
	"boxwright/pricing/quote"
)

// sizeIDs and needIDs are needs by their place in a link, which belongs to content
// version 2 for good: a new one changes what older links say, and takes a version of
// its own.
var (
	sizeIDs = []string{"module", "module_most", "headroom", "height", "length", "loading", "turning"}
	needIDs = append([]string{"duty", "roads", "climate", "type", "fuel", "drive", "crew", "patients"}, sizeIDs...)
)

// Sizes that are packed: whole ones or quarters, below so many. Others stay in the text.
const (
	mostSize = 1024
	quarters = 4
)

// packs reports whether a size can be packed.
func packs(v float64) bool {
	return v > 0 && v < mostSize && math.Floor(quarters*v) == quarters*v
}

// leaves reports whether what a unit leaves out can be packed.
func leaves(cat *config.Catalogue, u *config.Unit) bool {
	return len(u.LeftOut) > 0 && !slices.ContainsFunc(u.LeftOut, func(id string) bool {
		return cat.OptionByID(id) == nil || u.Has(id)
	})
}

// hasMore reports whether a draft says something that coder.more packs.
func hasMore(cat *config.Catalogue, d *quote.Draft) bool {
	sized := slices.ContainsFunc(sizeIDs, func(id string) bool { return packs(quote.SizeByID(id).Asked(&d.Needs)) })
	return sized || len(d.Needs.Wants) > 0 ||
		slices.ContainsFunc(units(d), func(u *config.Unit) bool { return leaves(cat, u) })
}

// withoutMore takes out of a draft what coder.more packs.
func withoutMore(cat *config.Catalogue, d *quote.Draft) {
	for _, id := range sizeIDs {
		if s := quote.SizeByID(id); packs(s.Asked(&d.Needs)) {
			s.Ask(&d.Needs, 0)
		}
	}
	d.Needs.Wants = nil
	for _, u := range units(d) {
		if leaves(cat, u) {
			u.LeftOut = nil
		}
	}
}

// more codes the needs that are a number, which needs are wants, and what each unit
// leaves out of the standard. It follows the units.
func (c *coder) more(cat *config.Catalogue, d *quote.Draft) {
	var sized, whole, want, leaving odds
	for _, id := range sizeIDs {
		s := quote.SizeByID(id)
		v := s.Asked(&d.Needs)
		if !c.flip(&sized, packs(v)) {
			continue
		}
		if c.flip(&whole, math.Floor(v) == v) {
			v = float64(c.below(mostSize, int(v)))
		} else {
			v = float64(c.below(quarters*mostSize, int(quarters*v))) / quarters
		}
		if c.reading {
			s.Ask(&d.Needs, v)
		}
	}
	for _, id := range needIDs {
		if c.flip(&want, d.Needs.IsWant(id)) && c.reading {
			d.Needs.SetWant(id, true)
		}
	}
	for _, u := range units(d) {
		if c.flip(&leaving, leaves(cat, u)) {
			c.leftOut(cat, u)
		}
	}
}

// leftOut codes which of the options that a unit does not have are left out of it.
func (c *coder) leftOut(cat *config.Catalogue, u *config.Unit) {
	var know [2]odds // by whether the option is standard: others hardly ever are
	for i := range cat.Options {
		o := &cat.Options[i]
		if !u.Has(o.ID) && c.flip(&know[bits(o.Standard || o.Remount)], slices.Contains(u.LeftOut, o.ID)) && c.reading {
			u.LeaveOut(o.ID, true)
		}
	}
}
