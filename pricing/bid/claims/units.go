package claims

import "boxwright/config/quantity"

// Units of a line beside those of package quantity.
const (
	Money  = "money"
	Days   = "days"
	Month  = "month"
	Mile   = "mi"
	Gallon = "gal"
	PSI    = "psi"
	MPH    = "mph"
	Degree = "degrees"
	Heat   = "°F"
	BTU    = "BTU/h"
	Flow   = "L/min"
	Milli  = "mL"
	Horse  = "hp"
	Sound  = "dB"
	Gram   = "gauge"
)

// unit is a unit's name and how many of it one of the written unit is.
type unit struct {
	factor float64
	name   string
}

// units by how they are written, in small letters without points. Factors: NIST SP
// 811 appendix B, rounded where the exact one does not end.
var units = map[string]unit{
	"lb": {1, quantity.Pound}, "lbs": {1, quantity.Pound}, "pound": {1, quantity.Pound}, "pounds": {1, quantity.Pound}, "#": {1, quantity.Pound},
	"kg": {1 / quantity.KilogramsPerPound, quantity.Pound}, "kgs": {1 / quantity.KilogramsPerPound, quantity.Pound}, "kilogram": {1 / quantity.KilogramsPerPound, quantity.Pound}, "kilograms": {1 / quantity.KilogramsPerPound, quantity.Pound},
	"ton": {2000, quantity.Pound}, "tons": {2000, quantity.Pound},
	"in": {1, quantity.Inch}, "inch": {1, quantity.Inch}, "inches": {1, quantity.Inch}, `"`: {1, quantity.Inch},
	"ft": {12, quantity.Inch}, "foot": {12, quantity.Inch}, "feet": {12, quantity.Inch}, "'": {12, quantity.Inch},
	"mm": {1 / quantity.MillimetersPerIn, quantity.Inch}, "cm": {10 / quantity.MillimetersPerIn, quantity.Inch}, "m": {1000 / quantity.MillimetersPerIn, quantity.Inch},
	"meter": {1000 / quantity.MillimetersPerIn, quantity.Inch}, "meters": {1000 / quantity.MillimetersPerIn, quantity.Inch},
	"a": {1, quantity.Amp}, "amp": {1, quantity.Amp}, "amps": {1, quantity.Amp}, "ampere": {1, quantity.Amp}, "amperes": {1, quantity.Amp},
	"ah": {1, quantity.AmpHour}, "amphour": {1, quantity.AmpHour},
	"w": {1, quantity.Watt}, "watt": {1, quantity.Watt}, "watts": {1, quantity.Watt}, "kw": {1000, quantity.Watt}, "kilowatt": {1000, quantity.Watt}, "kilowatts": {1000, quantity.Watt},
	"v": {1, quantity.Volt}, "vac": {1, quantity.Volt}, "vdc": {1, quantity.Volt}, "volt": {1, quantity.Volt}, "volts": {1, quantity.Volt},
	"l": {1, quantity.Liter}, "liter": {1, quantity.Liter}, "liters": {1, quantity.Liter}, "litre": {1, quantity.Liter}, "litres": {1, quantity.Liter},
	"ml": {1, Milli}, "cc": {1, Milli}, "lpm": {1, Flow},
	"ft3": {1, quantity.CubicFoot}, "cuft": {1, quantity.CubicFoot}, "cf": {1, quantity.CubicFoot},
	"minute": {1, quantity.Minute}, "minutes": {1, quantity.Minute}, "h": {60, quantity.Minute}, "hr": {60, quantity.Minute}, "hrs": {60, quantity.Minute}, "hour": {60, quantity.Minute}, "hours": {60, quantity.Minute},
	"day": {1, Days}, "days": {1, Days}, "week": {7, Days}, "weeks": {7, Days},
	"month": {1, Month}, "months": {1, Month}, "mo": {1, Month}, "mos": {1, Month}, "year": {12, Month}, "years": {12, Month}, "yr": {12, Month}, "yrs": {12, Month},
	"mi": {1, Mile}, "mile": {1, Mile}, "miles": {1, Mile},
	"%": {1, quantity.Percent}, "percent": {1, quantity.Percent}, "pct": {1, quantity.Percent},
	"usd": {1, Money}, "dollars": {1, Money}, "dollar": {1, Money},
	"gal": {1, Gallon}, "gallon": {1, Gallon}, "gallons": {1, Gallon},
	"psi": {1, PSI}, "mph": {1, MPH}, "hp": {1, Horse}, "horsepower": {1, Horse},
	"degree": {1, Degree}, "degrees": {1, Degree}, "deg": {1, Degree}, "f": {1, Heat}, "°f": {1, Heat},
	"btu": {1, BTU}, "btus": {1, BTU}, "btuh": {1, BTU},
	"db": {1, Sound}, "dba": {1, Sound}, "ga": {1, Gram}, "gauge": {1, Gram},
}

// pairs of words that are one unit, before anything else is read.
var joined = [][2]string{
	{"cubic feet", "ft3"}, {"cubic foot", "ft3"}, {"cu. ft.", "ft3"}, {"cu. ft", "ft3"}, {"cu ft", "ft3"}, {"cu.ft.", "ft3"}, {"cubic ft", "ft3"}, {"ft.3", "ft3"},
	{"amp-hours", "ah"}, {"amp-hour", "ah"}, {"amp hours", "ah"}, {"amp hour", "ah"}, {"ampere-hour", "ah"}, {"ampere hour", "ah"}, {"amp/hr", "ah"},
	{"l/min", "lpm"}, {"liters per minute", "lpm"}, {"liter per minute", "lpm"}, {"liters/minute", "lpm"}, {"liters/min", "lpm"},
	{"btu/hr", "btu"}, {"btu/h", "btu"}, {"btus/hr", "btu"}, {"btu per hour", "btu"}, {"btuh", "btu"},
	{"kilo watt", "kw"}, {"degrees f", "°f"}, {"deg f", "°f"}, {"degree f", "°f"}, {"degrees fahrenheit", "°f"}, {"miles per hour", "mph"},
	{"gross vehicle weight rating", "gvwr"}, {"g.v.w.r.", "gvwr"}, {"gross axle weight rating", "gawr"}, {"g.a.w.r.", "gawr"},
	{"a/c", "air conditioning"}, {"wi-fi", "wifi"}, {"p.a.", "public address"}, {"l.e.d.", "led"}, {"i.v.", "iv"}, {"o 2", "o2"}, {"t/2h", "ssf"}, {"4wd", "4x4"}, {"4 wd", "4x4"}, {"4 x 4", "4x4"}, {"4 x 2", "4x2"}, {"f.o.b.", "fob"},
}

// SameVolts reports whether two voltages name the same supply: household mains are
// written as 110, 115, 120 or 125 V.
func SameVolts(a, b float64) bool {
	mains := func(v float64) bool { return v >= 110 && v <= 125 }
	return a == b || mains(a) && mains(b)
}
