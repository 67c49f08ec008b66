package bid

import (
	"slices"
	"strconv"
	"strings"
	"unicode"

	"boxwright/config"
	"boxwright/config/quantity"
)

// A requirement is read in two ways: as a number that a figure of the unit is
// held against, when it names the figure and gives a number in a unit that fits
// it; else as words that an option, a chassis or a module is described by.

// measure is a number as people write it, brought to the unit of its kind.
type measure struct {
	value float64
	unit  string // "in", "lb", "A", ... as in units; empty for a bare number
}

// units by how they are written, and what one of them is in the unit of its
// kind.
var units = map[string]measure{
	"in": {1, quantity.Inch}, "inch": {1, quantity.Inch}, `"`: {1, quantity.Inch}, "ft": {12, quantity.Inch}, "foot": {12, quantity.Inch}, "feet": {12, quantity.Inch},
	"mm": {1 / quantity.MillimetersPerIn, quantity.Inch}, "cm": {10 / quantity.MillimetersPerIn, quantity.Inch}, "m": {1000 / quantity.MillimetersPerIn, quantity.Inch},
	"lb": {1, quantity.Pound}, "pound": {1, quantity.Pound}, "kg": {1 / quantity.KilogramsPerPound, quantity.Pound},
	"a": {1, quantity.Amp}, "amp": {1, quantity.Amp}, "ampere": {1, quantity.Amp}, "ah": {1, quantity.AmpHour},
	"w": {1, quantity.Watt}, "watt": {1, quantity.Watt}, "kw": {1000, quantity.Watt}, "v": {1, quantity.Volt}, "volt": {1, quantity.Volt},
	"l": {1, quantity.Liter}, "liter": {1, quantity.Liter}, "ft3": {1, quantity.CubicFoot},
	"min": {1, quantity.Minute}, "minute": {1, quantity.Minute}, "h": {60, quantity.Minute}, "hour": {60, quantity.Minute},
	"day": {1, days}, "week": {7, days}, "month": {1, "month"}, "year": {12, "month"}, "mi": {1, "mi"}, "mile": {1, "mi"}, "%": {1, quantity.Percent}, "percent": {1, quantity.Percent},
	"usd": {1, currency}, "dollar": {1, currency},
}

const (
	currency = "money"
	days     = "days"
)

// asked is a requirement taken apart.
type asked struct {
	words []string  // in the form of wordOf, numbers without a unit among them
	nums  []measure // with their units
	date  config.Date
	sense config.Sense // as written; empty when not said
	not   bool         // something is to be left out
}

// spelling brings British and written-out forms to one.
var spelling = map[string]string{
	"colour": "color", "aluminium": "aluminum", "centre": "center", "litre": "liter", "tyre": "tire", "grey": "gray", "moulded": "molded", "licence": "license",
	"one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6", "seven": "7", "eight": "8", "nine": "9", "ten": "10", "lbs": "lb", "stretcher": "cot", "gas": "gasoline",
}

// Words that say nothing of what is asked for.
var idle = map[string]bool{}

func init() {
	for _, w := range strings.Fields("a an and any are as at be by each for from have has if in is it its made of on " +
		"or per provide provided shall should so such supplied supply that the their them there these this to unit " +
		"vehicle ambulance must will with be equal approved required requirement include including installed install " +
		"equipped fitted furnish furnished least most minimum maximum min max not less more than no exceed over " +
		"under up within above below before") {
		idle[w] = true
	}
}

// wordOf is a word without its ending, so that "fold" and "folding" meet.
func wordOf(w string) string {
	if s, ok := spelling[w]; ok {
		w = s
	}
	for _, end := range []string{"ings", "ing", "ers", "er", "ed", "es", "s"} {
		if stem, cut := strings.CutSuffix(w, end); cut && len(stem) >= 4 {
			w = stem
			break
		}
	}
	if len(w) > 4 {
		w = strings.TrimSuffix(w, "e")
	}
	if s, ok := spelling[w]; ok {
		return s
	}
	return w
}

// unitOf reads the name of a unit.
func unitOf(w string) measure {
	for _, form := range []string{w, strings.TrimSuffix(w, "s"), strings.TrimSuffix(w, "es")} {
		if s, ok := spelling[form]; ok {
			form = s
		}
		if u, ok := units[form]; ok {
			return u
		}
	}
	return measure{}
}

// split cuts a text into words and numbers.
func split(text string) []string {
	text = strings.ToLower(text)
	for _, r := range [][2]string{{"cubic feet", "ft3"}, {"cu ft", "ft3"}, {"cu. ft.", "ft3"}, {"cubic foot", "ft3"},
		{"ft³", "ft3"}, {"four-wheel drive", "4x4"}, {"all-wheel drive", "4x4"}, {"four wheel drive", "4x4"}, {"$",
			" usd "}, {"≥", " minimum "}, {">=", " minimum "}, {"≤", " maximum "}, {"<=", " maximum "}} {
		text = strings.ReplaceAll(text, r[0], r[1])
	}
	var out []string
	start := -1
	kind := 0 // 1 letters, 2 digits
	flush := func(end int) {
		if start >= 0 {
			out = append(out, strings.Trim(text[start:end], ".,/-"))
		}
		start, kind = -1, 0
	}
	for i, r := range text {
		k := 0
		switch {
		case unicode.IsLetter(r):
			k = 1
		case unicode.IsDigit(r):
			k = 2
		case kind == 2 && strings.ContainsRune(".,/-", r) && i+1 < len(text) && text[i+1] >= '0' && text[i+1] <= '9':
			k = 2 // 1,750 and 12.5 and 1/4 and 2027-06-01
		}
		if k == 1 && kind == 2 && strings.ContainsRune("x³3", r) || k == 2 && kind == 1 && start >= 0 &&
			(strings.HasSuffix(text[start:i], "x") || text[start:i] == "ft" || text[start:i] == "o") {
			k = kind // 4x4, ft3, o2
		}
		if k != kind {
			flush(i)
			if k != 0 {
				start, kind = i, k
			}
		}
		if r == '"' || r == '%' {
			out = append(out, string(r))
		}
	}
	flush(len(text))
	return slices.DeleteFunc(out, func(w string) bool { return w == "" })
}

// numberOf reads a number as written: 1,750 or 12.5 or 1/4.
func numberOf(w string) (float64, bool) {
	if a, b, cut := strings.Cut(w, "/"); cut {
		x, errA := strconv.ParseFloat(a, 64)
		y, errB := strconv.ParseFloat(b, 64)
		return x / y, errA == nil && errB == nil && y > 0
	}
	v, err := strconv.ParseFloat(strings.ReplaceAll(w, ",", ""), 64)
	return v, err == nil && w[0] >= '0' && w[0] <= '9' && v < 1e9
}

// dateAt reads a day written in the first word or the first three, "2027-06-01"
// or "june", "1", "2027", and says how many they are; 0 when there is none.
func dateAt(list []string) (config.Date, int) {
	for _, n := range []int{3, 1} {
		if n <= len(list) {
			if d, err := config.ReadDate(strings.Join(list[:n], " ")); err == nil && !d.IsZero() {
				return d, n
			}
		}
	}
	return config.Date{}, 0
}

// read takes a line apart.
func read(text string) asked {
	var a asked
	list := split(text)
	line := " " + strings.Join(list, " ") + " "
	has := func(phrases ...string) bool {
		return slices.ContainsFunc(phrases, func(p string) bool { return strings.Contains(line, " "+p+" ") })
	}
	switch {
	case has("not less than", "no less than", "at least", "minimum", "min", "or more", "not under", "no fewer than",
		"exceeding", "or larger", "or greater"):
		a.sense = config.AtLeast
	case has("at most", "maximum", "max", "not more than", "no more than", "not exceed", "not to exceed", "up to",
		"or less", "within", "by", "before", "under", "not later than", "no later than", "below"):
		a.sense = config.AtMost
	}
	a.not = has("no", "not", "without", "none", "delete", "omit") && a.sense == ""
	for i := 0; i < len(list); i++ {
		w := list[i]
		if d, n := dateAt(list[i:]); n > 0 {
			a.date = d
			i += n - 1
			continue
		}
		v, isNumber := numberOf(w)
		if !isNumber {
			if i > 0 && unitOf(w).unit != "" {
				if _, before := numberOf(list[i-1]); before {
					continue // the unit of the number before it
				}
			}
			if w = wordOf(w); !idle[w] && w != `"` && (len(w) > 1 || strings.Contains("mhde0123456789", w)) {
				a.words = append(a.words, w)
			}
			continue
		}
		u := measure{}
		if next := i + 1; next < len(list) {
			if next+1 < len(list) && slices.Contains([]string{"working", "business", "calendar"}, list[next]) {
				next++
			}
			u = unitOf(list[next])
		}
		if u.unit == "" && i > 0 && units[list[i-1]].unit == currency {
			u = measure{1, currency}
		}
		if u.unit == "" {
			a.words = append(a.words, strings.ReplaceAll(w, ",", ""))
		} else {
			a.nums = append(a.nums, measure{v * u.value, u.unit})
		}
	}
	a.words = slices.DeleteFunc(a.words, func(w string) bool { return w == "usd" })
	return a
}

// gauge is a figure as buyers name it.
type gauge struct {
	names string // of which one, parted by |, has all its words in the line
	code  string // of the figure; or one of the facts below
	unit  string // of the number it takes
	sense config.Sense
}

// Facts beside the figures of the checks.
const (
	factDelivery  = "delivery"
	factPrice     = "price"
	factGVWR      = "gvwr"
	factWheelbase = "wheelbase"
	factModule    = "module"
	factGAWRFront = "gawr-front"
	factGAWRRear  = "gawr-rear"
)

// gauges in the order they are tried: the particular before the general.
var gauges = []gauge{
	{"gvwr|gross vehicle weight rating", factGVWR, quantity.Pound, config.AtLeast},
	{"front gawr|front axle rating", factGAWRFront, quantity.Pound, config.AtLeast},
	{"rear gawr|rear axle rating", factGAWRRear, quantity.Pound, config.AtLeast},
	{"payload left|payload remaining|payload reserve", "weight.payload-left", quantity.Pound, config.AtLeast},
	{"payload|carrying capacity", "weight.payload", quantity.Pound, config.AtLeast},
	{"curb weight", "weight.curb", quantity.Pound, config.AtMost},
	{"wheelbase", factWheelbase, quantity.Inch, config.AtMost},
	{"headroom|interior height|ceiling height", "space.headroom", quantity.Inch, config.AtLeast},
	{"aisle|walkway", "space.aisle", quantity.Inch, config.AtLeast},
	{"overall height|vehicle height", "space.height", quantity.Inch, config.AtMost},
	{"overall length|vehicle length", "space.length", quantity.Inch, config.AtMost},
	{"overall width|vehicle width", "space.width", quantity.Inch, config.AtMost},
	{"inside length|interior length|compartment length", "space.inside-length", quantity.Inch, config.AtLeast},
	{"bench length|squad bench", "space.bench", quantity.Inch, config.AtLeast},
	{"module length|body length", factModule, quantity.Inch, config.AtLeast},
	{"oxygen", "space.oxygen", quantity.Liter, config.AtLeast},
	{"exterior compartment|outside compartment|exterior storage", "space.compartments", quantity.CubicFoot, config.AtLeast},
	{"storage|cabinet volume", "space.storage", quantity.CubicFoot, config.AtLeast},
	{"battery|batteries", "power.battery-minutes", quantity.Minute, config.AtLeast},
	{"remaining|reserve|spare|generating capacity", "power.remaining", quantity.Amp, config.AtLeast},
	{"seat|seating|occupants", "space.seats", "", config.AtLeast},
	{"patients", "space.patients", "", config.AtLeast},
	{"static stability|ssf", "weight.ssf", "", config.AtLeast},
	{"delivery|delivered|completion", factDelivery, days, config.AtMost},
	{"price|cost", factPrice, currency, config.AtMost},
}

// gaugeOf finds the figure a line asks for, and how much of it.
func (a *asked) gaugeOf() (g gauge, v float64, ok bool) {
	line := " " + strings.Join(a.words, " ") + " "
	for _, g := range gauges {
		if !slices.ContainsFunc(strings.Split(g.names, "|"), func(n string) bool {
			for _, w := range strings.Fields(n) {
				if !strings.Contains(line, " "+wordOf(w)+" ") {
					return false
				}
			}
			return true
		}) {
			continue
		}
		if g.code == factDelivery && !a.date.IsZero() {
			return g, 0, true
		}
		for _, m := range a.nums {
			if m.unit == g.unit {
				return g, m.value, true
			}
		}
		if g.unit == "" || g.unit == currency { // a bare number will do, where it is the only one
			var bare []float64
			for _, w := range a.words {
				if n, is := numberOf(w); is {
					bare = append(bare, n)
				}
			}
			if len(bare) == 1 && len(a.nums) == 0 &&
				(g.unit == currency && bare[0] >= 1000 || g.unit == "" && len(a.words) <= 3) {
				return g, bare[0], true
			}
		}
	}
	return gauge{}, 0, false
}
