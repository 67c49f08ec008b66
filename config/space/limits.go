package space

import (
	"boxwright/config"
	"boxwright/config/body"
	"boxwright/config/quantity"
)

// Limits hands the space limits that stop a unit to the rules engine: headroom,
// walkway and inside storage, where the rule set in force states one that was
// read in its text. All are least values, so both sides are negated; Limit less
// the sum is the margin of Measure's figure with the same code.
func Limits(cat *config.Catalogue, u *config.Unit, assume *config.Assumptions) []config.Linear {
	if cat == nil || u == nil || assume == nil {
		return nil
	}
	box := cat.BodyOf(u)
	if box == nil || cat.ChassisByID(u.Chassis) == nil {
		return nil
	}
	var out []config.Linear
	for _, k := range []struct {
		code, label, unit string
		base              func(*config.Body) float64
		takes             func(*config.Option) float64
	}{
		{"space.headroom", "Headroom", quantity.Inch, body.HeadroomIn, func(o *config.Option) float64 {
			return float64(config.Clean(o.HeadroomIn))
		}},
		{"space.aisle", "Walkway", quantity.Inch, func(b *config.Body) float64 {
			return float64(config.Clean(b.AisleIn))
		}, func(o *config.Option) float64 { return float64(config.Clean(o.AisleIn)) }},
		{"space.storage", "Inside storage", quantity.CubicFoot, func(b *config.Body) float64 {
			return float64(bodyStorage(b))
		}, func(o *config.Option) float64 { return -float64(storageOf(o)) }},
	} {
		l, ok := assume.Limits[k.code]
		if !ok || l.Sense != config.AtLeast || l.Basis.Severity() != config.Stop {
			continue
		}
		lin := config.Linear{Code: k.code, Label: k.label, Unit: k.unit, Base: -k.base(box), Per: map[string]float64{},
			Limit: -l.Value}
		for i := range cat.Options {
			if v := k.takes(&cat.Options[i]); v != 0 {
				lin.Per[cat.Options[i].ID] = v
			}
		}
		out = append(out, lin)
	}
	return out
}
