package claims

import (
	"strings"

	"boxwright/config/quantity"
)

// Units of a line: those of package quantity under short names, and others.
const (
	Money  = quantity.Dollar
	Days   = quantity.CalendarDay
	Month  = quantity.Month
	Mile   = quantity.Mile
	Gallon = "gal"
	PSI    = "psi"
	MPH    = "mph"
	Degree = "degrees"
	Heat   = "°F"
	BTU    = "BTU/h"
	Milli  = "mL"
	Horse  = "hp"
	Sound  = "dB"
	Gram   = "gauge"
	VA     = "VA"
)

// unit is a unit's name and how many of it one of the written unit is.
type unit struct {
	factor float64
	name   string
}

// written are the units that the one parser of quantities reads, as they are written,
// in small letters without points.
const written = `lb lbs pound pounds # kg kgs kilogram kilograms ton tons in inch inches ft foot feet mm cm m meter
meters
a amp amps ampere amperes ah w watt watts kw kilowatt kilowatts v vac vdc volt volts l liter liters litre litres lpm ft3
minute minutes m3 ft2 m2 h hr hrs hour hours day days week weeks month months mo mos year years yr yrs mi mile miles
% percent pct
usd dollars dollar`

// units by how they are written. Years are told in months and hours in minutes, so
// that two lines that mean the same say the same.
var units = func() map[string]unit {
	out := map[string]unit{
		`"`: {1, quantity.Inch}, "'": {12, quantity.Inch}, "cuft": {1, quantity.CubicFoot}, "cf": {1, quantity.CubicFoot},
		"ml": {1, Milli}, "cc": {1, Milli}, "gal": {1, Gallon}, "gallon": {1, Gallon}, "gallons": {1, Gallon},
		"psi": {1, PSI}, "mph": {1, MPH}, "hp": {1, Horse}, "horsepower": {1, Horse}, "va": {1, VA}, "kva": {1000, VA},
		"degree": {1, Degree}, "degrees": {1, Degree}, "deg": {1, Degree}, "f": {1, Heat}, "°f": {1, Heat},
		"btu": {1, BTU}, "btus": {1, BTU}, "btuh": {1, BTU},
		"db": {1, Sound}, "dba": {1, Sound}, "ga": {1, Gram}, "gauge": {1, Gram},
	}
	for _, w := range strings.Fields(written) {
		m, n, f := quantity.Scan("1 " + w)
		if m.Unit == "" { // "1 a" is an article, "1 A" an amount
			m, n, f = quantity.Scan("1 " + strings.ToUpper(w))
		}
		if f != nil || n < len(w) || m.Unit == "" {
			continue
		}
		u := unit{m.Value, m.Unit}
		switch m.Unit {
		case quantity.Year:
			u = unit{12 * m.Value, Month}
		case quantity.Hour:
			u = unit{60 * m.Value, quantity.Minute}
		}
		out[w] = u
	}
	return out
}()

// joined are phrases and what is read in their place, before anything else is: units of several words,
// contractions, and what is said in more than one way.
var joined = [][2]string{
	{"high-back", "highback"}, {"high back", "highback"}, {"low-back", "lowback"}, {"low back", "lowback"},
	{"plus or minus", "plusorminus"}, {"plus/minus", "plusorminus"}, {"inside and out", "inside and outside"},
	{"after cabinets", "aftercabinets"}, {"after the cabinets", "aftercabinets"}, {"percent of rating", "percent of gawr"},
	{"percent of its rating", "percent of its gawr"},
	{"percent of the rating", "percent of the gawr"}, {"% of rating", "% of gawr"}, {"% of its rating", "% of its gawr"},
	{"base price", "baseprice"}, {"price of options", "optionprice"}, {"price of all options", "optionprice"},
	{"options price", "optionprice"},
	{"option price", "optionprice"}, {"cubic feet", "ft3"}, {"cubic foot", "ft3"}, {"cu. ft.", "ft3"},
	{"cu. ft", "ft3"}, {"cu ft", "ft3"},
	{"cu.ft.", "ft3"}, {"cubic ft", "ft3"}, {"ft.3", "ft3"}, {"(no exceptions)", ""}, {"(no exception)", ""},
	{"no exceptions", ""}, {"can't", "cannot"}, {"won't", "will not"}, {"shan't", "shall not"},
	{"mustn't", "must not"}, {"don't", "do not"}, {"doesn't", "does not"}, {"isn't", "is not"},
	{"shouldn't", "should not"}, {"wb", "wheelbase"}, {"l/r", "left right"}, {"half inch", "1/2 inch"},
	{"one-quarter inch", "1/4 inch"}, {"one quarter inch", "1/4 inch"}, {"three-quarter inch", "3/4 inch"},
	{"three quarter inch", "3/4 inch"}, {"three-eighth inch", "3/8 inch"}, {"three eighth inch", "3/8 inch"},
	{"one-eighth inch", "1/8 inch"}, {"one eighth inch", "1/8 inch"}, {"eighth-inch", "1/8 inch"},
	{"eighth inch", "1/8 inch"},
	{"(inches)", "inches"}, {"lifepo4", "lithium iron phosphate"}, {"one-second", "onesecond"},
	{"one second", "onesecond"}, {"fore and aft", "fore aft"}, {"throw-away", "disposable"},
	{"throw away", "disposable"}, {"not harmed by", "unaffected by"},
	{"not damaged by", "unaffected by"}, {"not affected by", "unaffected by"}, {"unharmed by", "unaffected by"},
	{"an inch and a quarter", "1 1/4 inch"}, {"inch and a quarter", "1 1/4 inch"}, {"an inch and a half", "1 1/2 inch"},
	{"inch and a half", "1 1/2 inch"}, {"half-inch", "1/2 inch"}, {"quarter inch", "1/4 inch"},
	{"quarter-inch", "1/4 inch"}, {"square feet", "ft2"},
	{"square foot", "ft2"}, {"sq. ft.", "ft2"}, {"sq. ft", "ft2"}, {"sq ft", "ft2"}, {"cubic meters", "m3"},
	{"amp-hours", "ah"}, {"amp-hour", "ah"}, {"amp hours", "ah"}, {"amp hour", "ah"}, {"ampere-hours", "ah"},
	{"ampere hours", "ah"}, {"ampere-hour", "ah"}, {"ampere hour", "ah"}, {"amp/hr", "ah"}, {"l/min", "lpm"},
	{"liters per minute", "lpm"}, {"liter per minute", "lpm"}, {"liters/minute", "lpm"}, {"liters/min", "lpm"},
	{"btu/hr", "btu"}, {"btu/h", "btu"}, {"btus/hr", "btu"}, {"btu per hour", "btu"}, {"btuh", "btu"},
	{"kilo watt", "kw"}, {"degrees f", "°f"}, {"deg f", "°f"}, {"degree f", "°f"}, {"degrees fahrenheit", "°f"},
	{"miles per hour", "mph"}, {"gross vehicle weight rating", "gvwr"}, {"g.v.w.r.", "gvwr"},
	{"gross weight rating", "gvwr"}, {"gross axle weight rating", "gawr"}, {"g.a.w.r.", "gawr"},
	{"rather than", ", insteadof"}, {"instead of", ", insteadof"}, {"in lieu of", ", insteadof"},
	{"in place of", ", insteadof"}, {"without seams", "seamless"}, {"without joints", "seamless"},
	{"no seams", "seamless"}, {"no stitched seams", "seamless"}, {"without stitched seams", "seamless"},
	{"no stitching", "seamless"}, {"no joints", "seamless"}, {"in addition to", "and"}, {"as well as", "and"},
	{"as well", "also"},
	{"together with", "and"}, {"along with", "and"}, {"in addition", "and"},
	{"without mileage limitation", "unlimited mileage"},
	{"without limitation as to mileage", "unlimited mileage"}, {"van cutaway", "cutaway van"},
	{"left out of the measurement", "excluded"},
	{"left out of the measure", "excluded"}, {"left out", "excluded"}, {"from grade", "above ground"},
	{"off grade", "above ground"}, {"above the pavement", "above ground"}, {"off the pavement", "above ground"},
	{"from the pavement", "above ground"}, {"above the roadway", "above ground"}, {"from ground level", "above ground"},
	{"above ground level", "above ground"}, {"without interruption", "continuous"}, {"whole length", "full length"},
	{"entire length", "full length"}, {"whole width", "full width"}, {"entire width", "full width"},
	{"full perimeter", "all around"}, {"entire perimeter", "all around"}, {"whole perimeter", "all around"},
	{"all the way around", "all around"}, {"all the way round", "all around"}, {"all round", "all around"},
	{"walk-in door", "entry door"}, {"walk in door", "entry door"}, {"wheel cutout", "wheel opening"},
	{"wheel cutouts", "wheel openings"}, {"wheel cut-outs", "wheel openings"}, {"wheel cut-out", "wheel opening"},
	{"short tons", "tons"}, {"short ton", "ton"}, {"minus", "less"},
	{"one fifth of", "20 percent of"}, {"one-fifth of", "20 percent of"}, {"one tenth of", "10 percent of"},
	{"one-tenth of", "10 percent of"}, {"one quarter of its", "25 percent of its"},
	{"one-quarter of its", "25 percent of its"}, {"deg. f", "°f"}, {"deg.f", "°f"}, {"to handle", "to carry"},
	{"shall handle", "shall carry"}, {"must handle", "must carry"}, {"will handle", "will carry"},
	{"wheelhouse", "wheel well"}, {"wheelhouses", "wheel wells"},
	{"wheel house", "wheel well"}, {"wheel houses", "wheel wells"}, {"runs off", "runs on"}, {"run off", "run on"},
	{"running off", "running on"},
	{"works off", "works on"}, {"operates off", "operates on"}, {"operated off", "operated on"},
	{"powered off the", "powered by the"}, {"fed off", "fed by"}, {"battery powered", "batterypowered"},
	{"battery-powered", "batterypowered"},
	{"battery operated", "batterypowered"}, {"battery-operated", "batterypowered"}, {"thumb drive", "file"},
	{"flash drive", "file"}, {"memory stick", "file"}, {"with key out", "withoutkey"},
	{"with the key out", "withoutkey"}, {"with key removed", "withoutkey"}, {"without the key", "withoutkey"},
	{"without key", "withoutkey"}, {"without a key", "withoutkey"}, {"including the cab", "cabincluded"},
	{"including cab", "cabincluded"}, {"including driver", "cabincluded"},
	{"including the driver", "cabincluded"}, {"counting the cab", "cabincluded"},
	{"counting the driver", "cabincluded"}, {"cab included", "cabincluded"}, {"cab counted", "cabincluded"},
	{"driver included", "cabincluded"}, {"driver counted", "cabincluded"}, {"inclusive of the cab", "cabincluded"},
	{"inclusive of the driver", "cabincluded"}, {"cab plus module", "cabincluded"}, {"cab and module", "cabincluded"},
	{"excluding the cab", "in the patient compartment"}, {"excluding cab", "in the patient compartment"},
	{"exclusive of the cab", "in the patient compartment"}, {"not counting the cab", "in the patient compartment"},
	{"not including the cab", "in the patient compartment"}, {"cab excluded", "in the patient compartment"},
	{"cab not included", "in the patient compartment"}, {"cab not counted", "in the patient compartment"},
	{"from inside cab", "from within cab"}, {"from inside the", "from within the"},
	{"headroom in back", "headroom in the patient compartment"},
	{"headroom in the back", "headroom in the patient compartment"}, {"pt. compartment", "patient compartment"},
	{"pt. weight", "patient weight"}, {"pt. wt.", "patient weight"}, {"free of", "without"}, {"free from", "without"},
	{"in no event be", "not be"}, {"in no case be", "not be"}, {"in no event exceed", "not exceed"},
	{"in no case exceed", "not exceed"}, {"at no time exceed", "not exceed"}, {"without occupants", "unloaded"},
	{"without passengers", "unloaded"}, {"without crew", "unloaded"}, {"that'll", "that will"},
	{"it'll", "it will"}, {"mini-mum", "minimum"}, {"maxi-mum", "maximum"},
	{"bumper to bumper", "bumpertobumper"}, {"no mirrors", "excluding mirrors"},
	{"without mirrors", "excluding mirrors"}, {"w/o mirrors", "excluding mirrors"},
	{"as opposed to", ", insteadof"}, {"not counting", "excluding"}, {"not counted", "excluded"},
	{"not including", "excluding"}, {"not included", "excluded"}, {"exclusive of", "excluding"},
	{"not to include", "excluding"}, {"disregarding", "excluding"}, {"a/c", "air conditioning"},
	{"wi-fi", "wifi"}, {"p.a.", "public address"}, {"l.e.d.", "led"}, {"i.v.", "iv"}, {"o 2", "o2"},
	{"o.a.l.", "overall length"}, {"o.a.h.", "overall height"}, {"o.a.w.", "overall width"},
	{"oal", "overall length"}, {"oah", "overall height"},
	{"oaw", "overall width"}, {"psw", "pure sine"}, {"req'd", "required"},
	{"2nd", "second"}, {"complete with", "with"}, {"complete unit", "unit"}, {"complete vehicle", "vehicle"},
	{"complete system", "system"}, {"3rd", "third"}, {"we'd like", "we want"},
	{"would be nice", ""}, {"would like", "want"}, {"sq bench", "squad bench"}, {"t/2h", "ssf"},
	{"right rear", "curbside rear"}, {"right front", "curbside front"}, {"left rear", "streetside rear"},
	{"left front", "streetside front"}, {"o.c.", "on center"}, {"kkk-a-1822f", "kkkf"}, {"kkk-a 1822f", "kkkf"},
	{"kkk 1822f", "kkkf"}, {"kkk-1822f", "kkkf"}, {"kkk-a-1822-f", "kkkf"}, {"kkk-a-1822 rev f", "kkkf"},
	{"air changes per hour", "ach"}, {"air changes an hour", "ach"}, {"air exchanges per hour", "ach"},
	{"by hand", "manually"}, {"seats in back", "seats in the patient compartment"},
	{"seats in the back", "seats in the patient compartment"}, {"seat covers", "seatcover"},
	{"seat cover", "seatcover"}, {"by itself", "automatically"}, {"by themselves", "automatically"},
	{"in addition to the patient", ""}, {"besides the patient", ""}, {"not counting the patient", ""},
	{"in addition to patient", ""}, {"besides patients", ""}, {"hand operated", "manual"}, {"hand-operated", "manual"},
	{"feet up", "feet high"}, {"ft up", "ft high"}, {"ft. up", "ft high"}, {"out front", "front"},
	{"up front", "front"},
	{"is all we need", ""}, {"out here", ""}, {"or not", ""}, {"absolutely no", "no"}, {"in number", ""},
	{"handed over", "delivered"},
	{"positive locking", "locking"}, {"positive lock", "lock"}, {"positive latching", "latching"},
	{"off the ground", "above ground"}, {"off of the ground", "above ground"}, {"above grade", "above ground"},
	{"off ground", "above ground"}, {"from the ground", "above ground"}, {"thru", "through"},
	{"two wheel drive", "4x2"}, {"two-wheel drive", "4x2"}, {"alternating current", "ac power"},
	{"mileage unlimited", "unlimited mileage"}, {"without mileage limit", "unlimited mileage"},
	{"without limitation of mileage", "unlimited mileage"}, {"no limit on mileage", "unlimited mileage"},
	{"without regard to mileage", "unlimited mileage"}, {"regardless of mileage", "unlimited mileage"},
	{"without limit of mileage", "unlimited mileage"}, {"no mileage limit", "unlimited mileage"},
	{"4wd", "4x4"}, {"2wd", "4x2"}, {"4 wd", "4x4"}, {"4 x 4", "4x4"}, {"4 x 2", "4x2"}, {"f.o.b.", "fob"},
	{"rearview", "rear view"}, {"800 mhz", "eighthundredmhz"}, {"not excepted", "included"},
	{"3 pt belt", "3-point belt"}, {"3 pt belts", "3-point belts"},
	{"5 pt belt", "5-point belt"}, {"5 pt belts", "5-point belts"}, {"5 pt harness", "5-point harness"},
	{"3 pt harness", "3-point harness"}, {"compatible with", "unaffected by"}, {"compatible w/", "unaffected by"},
	{"u.s. gallon", "gallon"}, {"u.s. gallons", "gallons"}, {"us gallons", "gallons"}, {"air changes/hr", "ach"},
	{"air changes/hour", "ach"}, {"air changes hourly", "ach"}, {"gross rating less curb weight", "gvwr less curb weight"},
}

// SameVolts reports whether two voltages name the same supply: household mains are
// written as 110, 115, 120 or 125 V.
func SameVolts(a, b float64) bool {
	mains := func(v float64) bool { return v >= 110 && v <= 125 }
	return a == b || mains(a) && mains(b)
}
