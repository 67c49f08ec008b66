package quantity

import "strings"

// Units that people write and no figure of a vehicle is held in.
const (
	Dollar      = "$" // of the price book's currency; only read, never computed with here
	Mile        = "mi"
	SquareFoot  = "ft2"
	LiterMinute = "L/min"
	CalendarDay = "days"
	Month       = "months"
	Year        = "years"
)

// scale is what one of a unit is in another: times, divided by over.
type scale struct {
	unit        string
	times, over float64
}

// bases says what the units of one dimension are in the unit that measures it. A
// unit that is not listed measures a dimension of its own.
var bases = map[string]scale{
	Foot:   {Inch, 12, 1},
	Liter:  {CubicFoot, 1, LitersPerCubicFt},
	Gallon: {CubicFoot, 231, 1728},
	Hour:   {Minute, 60, 1},
	Year:   {Month, 12, 1},
}

// base is a unit's own base.
func base(unit string) scale {
	if b, ok := bases[unit]; ok {
		return b
	}
	return scale{unit, 1, 1}
}

// dimensions names what the base units measure.
var dimensions = map[string]string{
	Inch: "a length", Pound: "a weight", Dollar: "an amount of money", Mile: "a distance", Watt: "a power",
	Amp: "a current", AmpHour: "a charge", Volt: "a voltage", Minute: "a time", CalendarDay: "a number of days",
	Day: "a number of working days", Month: "a time in months", CubicFoot: "a volume", SquareFoot: "an area",
	LiterMinute: "a flow", Percent: "a percentage", Count: "a count", Ratio: "a plain number",
}

// written are the units by how they are written: in small letters, ³ and ² as
// digits. Source of the factors: NIST SP 811 appendix B; all but the horsepower
// and the British thermal unit are exact.
var written = names(map[string]string{
	"in inch inches \" ''":                                Inch,
	"lb lbs pound pounds # lbm":                           Pound,
	"$ usd dollar dollars":                                Dollar,
	"mi mile miles":                                       Mile,
	"w watt watts":                                        Watt,
	"a amp amps ampere amperes":                           Amp,
	"ah amp-hour amp-hours amp_hour amp_hours":            AmpHour,
	"v volt volts vdc vac":                                Volt,
	"min mins minute minutes":                             Minute,
	"h hr hrs hour hours":                                 Hour,
	"day days calendar_day calendar_days":                 CalendarDay,
	"working_day working_days business_day business_days": Day,
	"month months mo mos":                                 Month,
	"year years yr yrs":                                   Year,
	"ft3 cu_ft cu._ft cubic_feet cubic_foot cf":           CubicFoot,
	"l liter liters litre litres":                         Liter,
	"ft2 sq_ft sq._ft square_feet square_foot":            SquareFoot,
	"l/min lpm liters_per_minute":                         LiterMinute,
	"% percent pct":                                       Percent,
}, map[string]scale{
	"ft foot feet '":    {Inch, 12, 1},
	"yd yds yard yards": {Inch, 36, 1},
	"mm millimeter millimeters millimetre millimetres": {Inch, 1, MillimetersPerIn},
	"cm centimeter centimeters centimetre centimetres": {Inch, 10, MillimetersPerIn},
	"m meter meters metre metres":                      {Inch, 1000, MillimetersPerIn},
	"kg kgs kilo kilos kilogram kilograms":             {Pound, 1, KilogramsPerPound},
	"oz ounce ounces":                                  {Pound, 1, 16},
	"ton tons":                                         {Pound, 2000, 1}, // the short ton
	"tonne tonnes":                                     {Pound, 1000, KilogramsPerPound},
	"km kilometer kilometers kilometre kilometres":     {Mile, 1, 1.609344},
	"kw kilowatt kilowatts":                            {Watt, 1000, 1},
	"hp horsepower":                                    {Watt, 745.69987, 1},
	"btu/h btuh btu btu/hr":                            {Watt, 0.29307107, 1},
	"s sec secs second seconds":                        {Minute, 1, 60},
	"week weeks wk wks":                                {CalendarDay, 7, 1},
	"in3 cu_in cu._in cubic_inch cubic_inches":         {CubicFoot, 1, 1728},
	"gal gals gallon gallons":                          {CubicFoot, 231, 1728},
	"m3 cubic_meter cubic_meters":                      {CubicFoot, 1000, LitersPerCubicFt},
	"in2 sq_in sq._in square_inch square_inches":       {SquareFoot, 1, 144},
	"m2 sq_m square_meter square_meters":               {SquareFoot, 1e6, 144 * MillimetersPerIn * MillimetersPerIn},
	"gpm gal/min gallons_per_minute":                   {LiterMinute, 3.785411784, 1},
	"cfm ft3/min":                                      {LiterMinute, LitersPerCubicFt, 1},
})

// counted are words after a number of things. They are units only where a count
// is asked for; in a requirement they say what is counted.
var counted = func() map[string]bool {
	out := map[string]bool{}
	for word := range strings.FieldsSeq("ea each pc pcs piece pieces place places seat seats unit units patient " +
		"patients person persons people time times payments periods") {
		out[word] = true
	}
	return out
}()

// longestName is how many letters the longest name of a unit has.
var longestName int

func names(plain map[string]string, scaled map[string]scale) map[string]scale {
	out := map[string]scale{}
	add := func(list string, s scale) {
		for name := range strings.FieldsSeq(list) {
			name = strings.ReplaceAll(name, "_", " ")
			out[name] = s
			longestName = max(longestName, len(name))
		}
	}
	for list, unit := range plain {
		add(list, scale{unit, 1, 1})
	}
	for list, s := range scaled {
		add(list, s)
	}
	return out
}

// inThousands reports whether thousands of a unit are common, so that 1.750 of
// them may mean 1,750.
func inThousands(s scale) bool {
	switch s.unit {
	case Pound, Dollar, Mile, Liter, LiterMinute, AmpHour, CalendarDay, Day, Count:
		return s.times <= 1 // but tons
	case Watt:
		return s.times == 1 // but kW
	case Inch:
		return s.over == MillimetersPerIn && s.times == 1
	case CubicFoot:
		return s.over == LitersPerCubicFt && s.times == 1
	}
	return false
}

// unit reads the unit that stands at i, behind a number, and says where it ends; i
// itself when none stands there.
func (r *reader) unit(i int) (s scale, end int) {
	at := r.past(i)
	if r.at(at) == '-' && isLetter(r.at(at+1)) {
		at++ // 153-inch
	}
	for n := min(longestName, len(r.letters)-at); n > 0; n-- {
		name := r.text(at, at+n)
		s, ok := written[name]
		to := at + n
		if !ok || isLetter(rune(name[len(name)-1])) && isLetter(r.at(to)) {
			continue
		}
		if isDigit(rune(name[len(name)-1])) && (isLetter(r.at(to)) || isDigit(r.at(to))) {
			continue
		}
		if isLetter(rune(name[len(name)-1])) && r.at(to) == '.' && !isDigit(r.at(to+1)) {
			to++
		}
		return s, to
	}
	return scale{}, i
}
