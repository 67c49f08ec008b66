package config

import (
	"fmt"
	"slices"

	"boxwright/config/quantity"
)

// Factor is a number that the calculators assume, such as how far one unit's weight
// differs from the next. A plant that has measured its own states it in the catalogue,
// and a seller can set it for one unit. Unless its Source says otherwise the usual
// value is common practice without a source.
type Factor struct {
	Code        string
	Label       string
	Usual       float64
	Least, Most float64 // of what can be set
	Unit        string  // a name of package quantity
	Source      string  // empty: common practice, no source
}

// Codes of the factors.
const (
	MassBuild     = "weight.build"
	MassUnit      = "weight.unit"
	ChassisUnit   = "weight.chassis-unit"
	ChassisSplit  = "weight.chassis-split"
	ChassisSide   = "weight.chassis-side"
	ChassisHeight = "weight.chassis-height"
	StationBuild  = "weight.station-build"
	StationThing  = "weight.station"
	SideThing     = "weight.side-thing"
	HeightThing   = "weight.height-thing"
	ScaleError    = "weight.scale"
	// SideUsual is how far the two sides may differ where nobody has set a limit.
	SideUsual = "weight.side-usual"
	// EquipmentAllowance stands in the place of loose equipment until some is listed.
	EquipmentAllowance = "weight.equipment-allowance"

	// LitterClearance is the least clear height over somebody who lies.
	LitterClearance = "space.litter-clearance"

	RunningVolts      = "power.running-volts"
	OffVolts          = "power.off-volts"
	ShoreVolts        = "power.shore-volts"
	DrawSpread        = "power.draw"
	OutputSpread      = "power.output"
	InverterShare     = "power.inverter-efficiency"
	LeadUsable        = "power.lead-usable"
	LeadExponent      = "power.lead-exponent"
	LithiumUsable     = "power.lithium-usable"
	LithiumExponent   = "power.lithium-exponent"
	BatteryAhSpread   = "power.battery-spread"
	WireDrop          = "power.drop" // in a circuit, from source to device and back
	CriticalDrop      = "power.drop-critical"
	DelaysTogether    = "time.together"
	PlantBacklog      = "time.backlog"
	ChassisWaitingPct = "time.chassis"
)

// memory marks a usual value that somebody remembers.
const memory = "from memory"

var factors = []Factor{
	{MassBuild, "What the plant builds, all of it heavier or lighter together", 3, 0, 20, quantity.Percent, ""},
	{MassUnit, "One unit against the next, of what the plant builds", 1, 0, 10, quantity.Percent, ""},
	{ChassisUnit, "One chassis against the next, of its weight", 0.75, 0, 10, quantity.Percent, ""},
	{ChassisSplit, "Chassis weight that may rest on the other axle", 1.5, 0, 10, quantity.Percent, ""},
	{ChassisSide, "Chassis center off the middle line", 0.5, 0, 10, quantity.Inch, ""},
	{ChassisHeight, "Height of the chassis center", 1.5, 0, 20, quantity.Inch, ""},
	{StationBuild, "Module and what is in it, fore and aft together", 1.5, 0, 20, quantity.Inch, ""},
	{StationThing, "Place of each thing, fore and aft", 3, 0, 40, quantity.Inch, ""},
	{SideThing, "Place of each thing, left and right", 1.5, 0, 40, quantity.Inch, ""},
	{HeightThing, "Place of each thing, up and down", 3, 0, 40, quantity.Inch, ""},
	{ScaleError, "The scale itself, at every reading alike", 0.1, 0, 5, quantity.Percent, ""},

	{SideUsual, "Left-right difference that is noted, where no limit is set", 5, 0, 50, quantity.Percent, memory},
	{EquipmentAllowance, "Loose equipment, until it is listed", 700, 0, 5000, quantity.Pound, memory},

	{LitterClearance, "Clear height over a lying patient, at least", 16, 0, 60, quantity.Inch, ""},

	{RunningVolts, "System voltage, engine running", 14, 12, 15, quantity.Volt, ""},
	{OffVolts, "System voltage, engine off", 12.5, 11, 13.5, quantity.Volt, ""},
	{ShoreVolts, "System voltage on the shore line's charger", 13.6, 12, 15, quantity.Volt, ""},
	{DrawSpread, "Current of each load, more or less", 10, 0, 50, quantity.Percent, ""},
	{OutputSpread, "Hot output of the alternator, more or less", 5, 0, 50, quantity.Percent, ""},
	{InverterShare, "Efficiency of an inverter that states none", 88, 50, 100, quantity.Percent, ""},
	{LeadUsable, "Usable share of a lead-acid battery", 50, 5, 100, quantity.Percent, memory},
	{LeadExponent, "Peukert exponent, lead-acid", 1.2, 1, 1.6, quantity.Ratio, memory},
	{LithiumUsable, "Usable share of a lithium battery", 85, 5, 100, quantity.Percent, memory},
	{LithiumExponent, "Peukert exponent, lithium", 1.05, 1, 1.6, quantity.Ratio, memory},
	{BatteryAhSpread, "Capacity of a battery in service, more or less", 15, 0, 80, quantity.Percent, ""},
	{WireDrop, "Voltage drop allowed in a circuit", 10, 0.5, 20, quantity.Percent, ""},
	{CriticalDrop, "Voltage drop allowed in a critical circuit", 3, 0.5, 20, quantity.Percent, ""},

	{DelaysTogether, "Share of the delays that come together", 40, 0, 100, quantity.Percent, ""},
	{PlantBacklog, "Work ahead of this order in the plant", 0, 0, 1500, quantity.Day, ""},
	{ChassisWaitingPct, "Waiting time for the chassis, against the catalogue's", 100, 0, 1000, quantity.Percent, ""},
}

// Factors lists what the calculators assume, by area. The result is shared; do not
// change it.
func Factors() []Factor { return factors }

// FactorByCode finds a factor, or nil.
func FactorByCode(code string) *Factor {
	i := slices.IndexFunc(factors, func(f Factor) bool { return f.Code == code })
	if i < 0 {
		return nil
	}
	return &factors[i]
}

// Assumed is a value set for a factor in place of the usual one.
type Assumed struct {
	Factor string  `json:"factor"` // code, such as "weight.build"
	Value  float64 `json:"value"`  // in the factor's unit
}

// FactorFault says what is wrong with a value that is set; empty when nothing is.
func FactorFault(a Assumed) string {
	f := FactorByCode(a.Factor)
	if f == nil {
		return fmt.Sprintf("%q is not a factor of this program", a.Factor)
	}
	if !(a.Value >= f.Least && a.Value <= f.Most) {
		return fmt.Sprintf("%s is %s to %s, not %v", f.Label, quantity.US.Show(f.Least, f.Unit),
			quantity.US.Show(f.Most, f.Unit), a.Value)
	}
	return ""
}

// Factor is the value in force of an assumed number: the unit's own, the plant's, or
// the usual one. Without assumptions it is the usual one; a code that is not known is 0.
func (a *Assumptions) Factor(code string) float64 {
	if a != nil {
		if v, set := a.Factors[code]; set {
			return v
		}
	}
	if f := FactorByCode(code); f != nil {
		return f.Usual
	}
	return 0
}

// Stated reports whether somebody set a factor, the plant or the seller.
func (a *Assumptions) Stated(code string) bool {
	if a == nil {
		return false
	}
	_, set := a.Factors[code]
	return set
}

// Assume puts a factor on the figure as its limit, unless it has one already.
func (a *Assumptions) Assume(f *Figure, code string, sense Sense, source string) {
	if f.Sense != "" {
		return
	}
	f.Limit, f.Sense, f.Source, f.Basis = a.Factor(code), sense, source, CommonPractice
	switch factor := FactorByCode(code); {
	case a.Stated(code):
		f.Source = "the plant's or this quote's own limit"
	case factor != nil && factor.Source == memory:
		f.Basis = FromMemory
	}
}

// Set puts sound values among those in force, later lists over earlier ones.
func (a *Assumptions) Set(lists ...[]Assumed) {
	for _, list := range lists {
		for _, v := range list {
			if FactorFault(v) != "" {
				continue
			}
			if a.Factors == nil {
				a.Factors = map[string]float64{}
			}
			a.Factors[v.Factor] = v.Value
		}
	}
}

// SetFactor gives the unit its own value of a factor, or with nil the plant's again.
func (u *Unit) SetFactor(code string, value *float64) {
	u.Factors = slices.DeleteFunc(slices.Clone(u.Factors), func(a Assumed) bool { return a.Factor == code })
	if value != nil {
		i, _ := slices.BinarySearchFunc(u.Factors, code, func(a Assumed, code string) int {
			if a.Factor < code {
				return -1
			}
			return 1
		})
		u.Factors = slices.Insert(u.Factors, i, Assumed{code, *value})
	}
	if len(u.Factors) == 0 {
		u.Factors = nil
	}
}
