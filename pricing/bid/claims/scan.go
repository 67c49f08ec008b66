package claims

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"boxwright/config"
	"boxwright/config/quantity"
)

// Kind of a token.
type Kind uint8

// The kinds.
const (
	Word  Kind = iota
	Count      // a number, with a unit or without
	Day        // a date
	Not        // what follows is ruled out
	Break      // a comma, "and", "plus": one claim may end here
	Stop       // the end of a sentence or a semicolon: one claim ends here
	Or
)

// Token is a piece of a line in its place. It is copied often and therefore small.
type Token struct {
	Word   string       // in the form of stem
	raw    string       // as written, in small letters
	Num    *Number      // of a count or a day; its copies share it
	Day    *config.Date // of a day
	Part   int          // of its line, between two places where a claim may end
	End    int          // where it ends in the text that was read
	ID     int32        // for who reads lines beside a catalogue: the number there of its word or unit; 0 of none
	Kind   Kind
	Role   Role // of a word
	Across bool // of a word: "across" stands before it
	Done   bool // of a word: it says what is done, "furnished"
	Many   bool // of a word: it speaks of several
	Before bool // of a word: what is done is done before it, "before paint"
	After  bool // of a word: what is done is done after it
	Lights bool // of a word: something comes on with it, "on with the doors"
	tied   bool // follows the token before it with nothing between, or a hyphen
	incl   bool // stands behind "including" or "with"
	big    bool // written in capitals
	said   bool // a number in words
	links  bool // of a word: it only leads to what stands behind it, "carried on"
	back   bool // of a word: it stands in "in the back"
}

// Number is a quantity.
type Number struct {
	Value float64
	Unit  string       // a name of package quantity or of this one; empty for a bare number
	Sense config.Sense // empty where the line states the number alone
	// Beyond says that the number itself is not enough: "more than 96 in"
	Beyond bool
	Loose  bool     // the bound may be one on what a thing copes with, which is to be no less: "patients up to 900 lb"
	Near   []string // of a bare number: the words it may count, those right behind it first
	Behind int      // how many of them stand right behind it
	noun   int      // how many of these until what is counted, "two sealed batteries on a tray"; 0 of none
	Of     string   // the dimension it is said of, "width"; empty where the line does not say
	Range  Range
	First  bool // the line begins with it
	Whole  bool // its sentence names the whole unit
	Apiece bool // a count stands right before it: "two 100 W speakers"
	Each   bool // said of each of several things: "150 lb each"
	All    bool // it counts all that were named before it, of whatever kinds: "hooks and eyes, all four on the frame"
	Choice bool // something else may stand in the place of what has it: "a 7 in monitor or the screen"
	Single bool // written "single", which says that there are no more
	PerOne bool // of a bare number from two on: as many are on, in or over each of several
	said   bool
}

// Counted are the words of what a bare number may count.
func (n *Number) Counted() []string {
	if n.noun > 0 {
		return n.Near[:n.noun]
	}
	return n.Near
}

// Nominal reports whether an amount in inches is the rounded metric size of another, 50 mm that of 2 in, and
// does not bind more closely.
func (n *Number) Nominal(inches float64) bool {
	return n.Unit == quantity.Inch && n.Sense == "" && math.Abs(n.Value*sixteenths-math.Round(n.Value*sixteenths)) > .01 &&
		math.Abs(inches-n.Value) <= mostRounded*n.Value
}

// sixteenths are those of an inch, which no metric size is a number of; mostRounded is the share by which
// a nominal metric size differs at most, common practice, no source.
const (
	sixteenths  = 16
	mostRounded = .02
)

// Noun is the word of what a bare number counts, "bank" of "three drawer banks"; empty where that is not
// known.
func (n *Number) Noun() string {
	if n.noun == 0 {
		return ""
	}
	return n.Near[n.noun-1]
}

// Range tells the ends of "44 to 48 in".
type Range uint8

// The ends.
const (
	NoRange Range = iota
	Low
	High
)

var numbers = map[string]float64{
	"zero": 0, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9,
	"ten":    10,
	"eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16, "seventeen": 17,
	"eighteen": 18,
	"nineteen": 19, "twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80,
	"ninety": 90,
	"single": 1, "dual": 2, "pair": 2, "double": 2, "twin": 2, "triple": 3, "couple": 2,
}

// lex cuts a text into words, numbers and marks.
func lex(text string) []Token {
	text, at := marked(withoutForm(text))
	text = unscanned(text)
	low := strings.ToLower(text)
	if len(low) != len(text) { // a letter whose small form is longer: then case is not known
		text = low
		for last := at[len(at)-1]; len(at) <= len(low); {
			at = append(at, last)
		}
	}
	for i := 1; i+2 < len(low); i++ { // "3-1/2"
		if low[i] == '-' && low[i-1] >= '0' && low[i-1] <= '9' && low[i+1] >= '1' && low[i+1] <= '9' && low[i+2] == '/' {
			low, text = low[:i]+" "+low[i+1:], text[:i]+" "+text[i+1:]
		}
	}
	may := mayJoin(low)
	for k, j := range joined {
		for may[k/64]&(1<<(k%64)) != 0 {
			i := wordIndex(low, j[0])
			if i < 0 {
				break
			}
			end := i + len(j[0])
			low, text = low[:i]+j[1]+low[end:], text[:i]+j[1]+text[end:]
			at = slices.Replace(at, i+min(len(j[1]), 1), end, slices.Repeat(at[end:end+1], max(len(j[1])-1, 0))...)
			may = mayJoin(low)
		}
	}
	return designations(scanned(low, text, at))
}

// scanned are the tokens of a text that stands there in small letters too, and of which it is told where each letter
// stood.
func scanned(low, text string, at []int) []Token {
	out := make([]Token, 0, len(low)/4+1)
	tied := false
	for i := 0; i < len(low); {
		start := i
		c := low[i]
		digit := func(k int) bool { return k < len(low) && low[k] >= '0' && low[k] <= '9' }
		switch {
		case strings.HasPrefix(low[i:], "4x4") || strings.HasPrefix(low[i:], "4x2"):
			i += 3
			out = append(out, Token{Kind: Word, raw: low[start:i], tied: tied, End: i})
			tied = true
		case isoDay(low[i:]):
			i += len("2027-06-01")
			out = append(out, Token{Kind: Count, Num: &Number{}, raw: low[start:i], tied: tied, End: i})
			tied = true
		case digit(i) || c == '.' && digit(i+1) && (i == 0 || low[i-1] == ' ' || low[i-1] == '('):
			for i++; i < len(low); i++ {
				thousands := low[i] == ',' && digit(i+1) && digit(i+2) && digit(i+3) && !digit(i+4)
				if !digit(i) && !thousands && !(strings.IndexByte("./", low[i]) >= 0 && digit(i+1)) {
					break
				}
			}
			out = append(out, Token{Kind: Count, Num: &Number{}, raw: low[start:i], tied: tied, End: i})
			tied = true
		case c == ' ':
			i++
			tied = false
		case c >= 'a' && c <= 'z' || c >= 0x80:
			for i < len(low) && (low[i] >= 'a' && low[i] <= 'z' || low[i] >= 0x80 ||
				low[i] == '\'' && i+1 < len(low) && low[i+1] == 's' && (i+2 == len(low) || !letter(low[i+2]))) {
				if low[i] == '\'' {
					i++
				}
				i++
			}
			if i < len(low) && (low[i] == '3' && low[start:i] == "ft" || cubed(low, start, i) && afterCount(out)) ||
				digit(i) && low[start:i] == "o" {
				i++ // ft3, m3, o2
			}
			raw := strings.ReplaceAll(low[start:i], "'", "")
			big := i <= len(text) && unicode.IsUpper(rune(text[start]))
			if n := len(out) - 1; len(raw) == 1 && n >= 0 && out[n].big && big && start > 1 && low[start-1] == '.' &&
				out[n].End == start-1 && out[n].Kind == Word && low[out[n].End-1] == out[n].raw[len(out[n].raw)-1] {
				out[n].raw += raw // "W.B."
				out[n].End = i
				continue
			}
			out = append(out, Token{Kind: Word, raw: raw, tied: tied, big: big, End: i})
			tied = true
		default:
			i++
			switch c {
			case '|': // between the cells of a table
				if n := len(out); n > 0 && out[n-1].Kind == Word && !cellOfAmount[out[n-1].raw] {
					out = append(out, Token{Kind: Word, raw: ":", tied: tied, End: i})
				}
			case '#', '%', '"', '\'', '$', '(', ')', ':', '/':
				out = append(out, Token{Kind: Word, raw: string(c), tied: tied, End: i})
			case ';', '.', '?', '!':
				if c == '.' && !ends(text, i) {
					tied = false
					continue
				}
				out = append(out, Token{Kind: Stop, raw: string(c), tied: tied, End: i})
			case ',':
				out = append(out, Token{Kind: Break, raw: ",", tied: tied, End: i})
			case '-':
				if tied && i < len(low) && low[i] != ' ' {
					continue // a hyphen ties
				}
				out = append(out, Token{Kind: Break, raw: "-", End: i})
			}
			tied = true
		}
	}
	for i := range out {
		out[i].End = at[out[i].End]
	}
	return out
}

// cellOfAmount are words of a table behind which stands an amount.
var cellOfAmount = wordsOf(`min minimum max maximum`)

// mayJoin marks, as bits, the phrases that begin with the letters of a word of a text, so that most need not be
// searched for.
func mayJoin(low string) (may [mostJoined / 64]uint64) {
	for i := range len(low) {
		if i == 0 || !letter(low[i-1]) {
			for _, k := range joinedBy[pairOf(low, i)] {
				may[k/64] |= 1 << (k % 64)
			}
		}
	}
	return may
}

// mostJoined is how many phrases may be joined.
const mostJoined = 512

// joinedBy are the phrases that are joined, in their order, by the pair of letters that they begin with.
var joinedBy = func() (out [mostPairs][]int) {
	for k, j := range joined {
		pair := pairOf(j[0], 0)
		out[pair] = append(out[pair], k)
	}
	return out
}()

const mostPairs = 1 << 10

// pairOf is the mark of two letters, which others may share.
func pairOf(s string, at int) int {
	second := byte(0)
	if at+1 < len(s) {
		second = s[at+1]
	}
	return int(s[at]&31)<<5 | int(second&31)
}

// cubed reports whether a square or a cube of a length is written at a place: "ft2", "m3".
func cubed(low string, start, end int) bool {
	word := low[start:end]
	return end < len(low) && (low[end] == '2' || low[end] == '3') && (word == "ft" || word == "m") &&
		(end+1 == len(low) || low[end+1] < '0' || low[end+1] > '9')
}

// afterCount reports whether a number stands right before.
func afterCount(list []Token) bool { return len(list) > 0 && list[len(list)-1].Kind == Count }

// designations makes one word of a letter and the number tied to it: "R-30", "S3".
func designations(list []Token) []Token {
	out := list[:0]
	for _, t := range list {
		n := len(out)
		if t.Kind == Count && t.tied && n > 0 && out[n-1].Kind == Word && len(out[n-1].raw) == 1 &&
			letter(out[n-1].raw[0]) &&
			out[n-1].raw != "x" && !out[n-1].tied {
			out[n-1].raw += t.raw
			out[n-1].End = t.End
			continue
		}
		out = append(out, t)
	}
	return out
}

// isoDay reports whether a text begins with a day such as 2027-06-01.
func isoDay(text string) bool {
	const form = "0000-00-00"
	if len(text) < len(form) {
		return false
	}
	for i := range len(form) {
		if d := text[i] >= '0' && text[i] <= '9'; d != (form[i] == '0') || !d && text[i] != '-' {
			return false
		}
	}
	return true
}

// ends reports whether the point before a place ends a sentence: not within a word,
// not before a small letter, and not behind a short form before a number.
func ends(text string, at int) bool {
	rest := strings.TrimLeft(text[at:], " ")
	switch {
	case rest == "":
		return true
	case text[at] != ' ' || rest[0] >= 'a' && rest[0] <= 'z':
		return false
	case rest[0] >= '0' && rest[0] <= '9':
		before := strings.TrimRight(text[:at], ". ")
		return len(before)-strings.LastIndexAny(before, " (,")-1 > 4
	}
	return true
}

func letter(c byte) bool { return c >= 'a' && c <= 'z' }

// wordIndex is where a phrase stands with no letter or digit against it.
func wordIndex(text, phrase string) int {
	for from := 0; ; {
		i := strings.Index(text[from:], phrase)
		if i < 0 {
			return -1
		}
		i += from
		end := i + len(phrase)
		before := i > 0 && letter(text[i-1])
		after := end < len(text) && (letter(text[end]) || text[end] >= '0' && text[end] <= '9') &&
			letter(phrase[len(phrase)-1])
		if !before && !after {
			return i
		}
		from = i + 1
	}
}

// value reads the digits of a number; not ok where it can be read in two ways.
func value(raw string) (float64, bool) {
	m, n, f := quantity.Scan(raw)
	return m.Value, f == nil && n == len(raw) && m.Unit == "" && m.Value < 1e9
}

// days finds the dates of a line.
func days(list []Token) []Token {
	out := list[:0]
	for i := 0; i < len(list); i++ {
		found := false
		for _, n := range []int{4, 3, 1} {
			if i+n > len(list) || list[i+n-1].Kind != Count || !dateLike(list[i:i+n]) {
				continue
			}
			var words []string
			for _, t := range list[i : i+n] {
				if t.raw != "," {
					words = append(words, t.raw)
				}
			}
			if list[i].Kind == Stop || list[i].Kind == Break {
				continue
			}
			if d, err := config.ReadDate(strings.Join(words, " ")); err == nil && !d.IsZero() {
				out = append(out, Token{Kind: Day, Day: &d, Num: &Number{}, raw: strings.Join(words, " "),
					End: list[i+n-1].End})
				i, found = i+n-1, true
				break
			}
		}
		if !found {
			out = append(out, list[i])
		}
	}
	return out
}

// dateLike reports whether tokens may be a date: one with marks within, or several with the
// name of a month among them.
func dateLike(list []Token) bool {
	if len(list) == 1 {
		return strings.ContainsAny(list[0].raw, "/-")
	}
	return slices.ContainsFunc(list, func(t Token) bool {
		return t.Kind == Word && len(t.raw) >= 3 && slices.Contains(monthNames, t.raw[:3])
	})
}

var monthNames = []string{"jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"}

// inWords is the number that tokens begin with in words, "one hundred and twenty", "two
// and one half", and how many of them it takes; none where they begin otherwise.
func inWords(list []Token) (value float64, n int) {
	word := func(k int) string {
		if k < len(list) && list[k].Kind == Word {
			return list[k].raw
		}
		return ""
	}
	part, known := numbers[word(0)] // of what is below the last thousand
	if !known {
		return 0, 0
	}
	for n = 1; ; {
		k := n
		if word(k) == "and" && (part >= 100 || value > 0) {
			k++
		}
		more, small := numbers[word(k)]
		ones := int(part) % 100
		switch {
		case word(n) == "hundred" && part > 0 && part < 100:
			part *= 100
			n++
		case word(n) == "thousand" && value == 0 && part > 0 && part < 1000:
			value, part = 1000*part, 0
			n++
		case small && more > 0 && (ones == 0 && (part > 0 || value > 0) && more < 100 ||
			ones >= 20 && ones%10 == 0 && more < 10):
			part += more
			n = k + 1
		case word(n) == "and" && (word(n+1) == "one" || word(n+1) == "a") && word(n+2) == "half":
			return value + part + .5, n + 3
		case word(n) == "thousandths" && value == 0 && part > 0:
			return part / 1000, n + 1
		case denominators[word(n)] > part && value == 0:
			if next := word(n + 1); next == "inch" || next == "(" { // "three-quarters (3/4)"
				return part / denominators[word(n)], n + 1
			}
			if word(n+1) == "of" && word(n+2) == "an" && word(n+3) == "inch" {
				return part / denominators[word(n)], n + 3
			}
			return part, n
		default:
			return value + part, n
		}
	}
}

// denominators are those of the fractions of an inch that people write in words, "three-sixteenths of an inch".
var denominators = map[string]float64{"half": 2, "quarter": 4, "quarters": 4, "eighth": 8, "eighths": 8,
	"sixteenth": 16, "sixteenths": 16}

// spelled reads numbers written in words, and drops the figure in brackets that
// says one again, "two (2)".
func spelled(list []Token) []Token {
	out := list[:0]
	for i := 0; i < len(list); i++ {
		t := list[i]
		if v, n := inWords(list[i:]); n > 0 {
			i += n - 1
			t.Kind, t.Num, t.said = Count, &Number{Value: v, said: true, Single: t.raw == "single"}, true
		} else if t.Kind == Count {
			v, ok := value(t.raw)
			if !ok {
				t.Kind = Word
			}
			t.Num.Value = v
			if n := len(out); n > 0 && out[n-1].Kind == Count && !out[n-1].said && strings.Contains(t.raw, "/") &&
				v < 1 && !t.tied &&
				out[n-1].Num.Value == float64(int(out[n-1].Num.Value)) {
				out[n-1].Num.Value += v // 3 1/2
				continue
			}
		}
		out = append(out, t)
	}
	// "(2)" is a number; behind the same number in words it is dropped.
	flat := out[:0]
	for i := 0; i < len(out); i++ {
		if out[i].raw == "(" && i+2 < len(out) && out[i+1].Kind == Count && out[i+2].raw == ")" {
			n := len(flat)
			if n > 0 && flat[n-1].Kind == Count && flat[n-1].Num.Value == out[i+1].Num.Value {
				i += 2
				flat[n-1].End = out[i].End
				continue
			}
			out[i+1].Num.said, out[i+1].said, out[i+1].tied = true, true, false
			flat = append(flat, out[i+1])
			i += 2
			continue
		}
		flat = append(flat, out[i])
	}
	return flat
}

// glued are nouns that make one word with the number before them: a four-point
// belt, a three-stage charger.
var glued = []string{"point", "pt", "way", "stage", "tone", "pin", "channel", "speed", "rise", "step", "head", "gas",
	"color", "level",
	"part", "sided", "piece", "wheel"}

// places are words before which "in" says where, and not inches.
var places = []string{"the", "a", "an", "each", "every", "all", "action", "cab", "patient", "front", "rear", "ceiling",
	"both", "compartment",
	"wall", "walls", "street", "streetside", "curb", "curbside", "grille", "cabinet", "cabinets", "place", "exterior",
	"lower", "upper",
	"series", "module", "total", "number", "quantity", "which", "action-area", "one", "two", "bumper", "center", "left",
	"right", "inside",
	"outside", "writing", "white", "red", "console", "rows", "row", "service", "this", "that", "any", "roof", "floor",
	"door",
	"doors", "hood", "partition", "bulkhead", "corners", "skirt", "skirts", "locker", "drawer", "drawers", "box",
	"bench", "squad",
	"attendant", "driver", "drivers", "passenger", "view", "accordance", "compliance", "stock", "lieu", "color",
	"black", "yellow",
	"amber", "blue", "oxygen", "engine", "grill", "headliner", "overhead", "addition", "operation", "use", "plain"}

// measured gives numbers their units.
func measured(list []Token) []Token {
	list = headed(list)
	out := list[:0]
	for i := 0; i < len(list); i++ {
		t := list[i]
		if t.Kind != Count {
			if t.raw == "$" {
				if i+1 < len(list) && list[i+1].Kind == Count {
					list[i+1].Num.Unit = Money
				}
				continue
			}
			if t.raw == "usd" && i+1 < len(list) && list[i+1].Kind == Count {
				list[i+1].Num.Unit = Money
				continue
			}
			out = append(out, t)
			continue
		}
		if i+1 < len(list) && list[i+1].raw == "k" && list[i+1].tied { // "$300k", "11k"
			t.Num.Value *= 1000
			i++
			t.End = list[i].End
		}
		if t.Num.Unit == "" && t.Num.Value < 1 && i+3 < len(list) && list[i+1].raw == "of" && list[i+2].raw == "an" &&
			list[i+3].raw == "inch" { // "125 thousandths of an inch"
			t.Num.Unit, t.End = quantity.Inch, list[i+3].End
			out = append(out, t)
			i += 3
			continue
		}
		if i+1 < len(list) && t.Num.Unit == "" {
			next := list[i+1]
			k := i + 1
			if next.Kind == Break && next.raw == "-" && k+1 < len(list) {
				next, k = list[k+1], k+1
			}
			if next.Kind == Word && slices.Contains(glued, strings.TrimSuffix(next.raw, "s")) && t.Num.Value < 20 &&
				(t.Num.Value >= 2 || t.Num.Value == 1 && slices.Contains([]string{"stage", "tone", "channel"}, next.raw)) &&
				(next.tied || next.raw != "heads") && (next.tied || next.raw == "wheel" && k+1 < len(list) &&
				list[k+1].raw == "drive" ||
				slices.Contains([]string{"point", "pt", "stage", "tone", "pin", "channel", "way", "head", "speed"},
					strings.TrimSuffix(next.raw, "s"))) {
				word := strings.TrimSuffix(next.raw, "s")
				if word == "pt" {
					word = "point"
				}
				out = append(out, Token{Kind: Word, raw: strconv.Itoa(int(t.Num.Value)) + word, End: next.End})
				i = k
				continue
			}
			working := next.raw == "working" || next.raw == "business" || next.raw == "work"
			if (working || slices.Contains([]string{"calendar", "consecutive", "full"}, next.raw)) && k+1 < len(list) &&
				list[k+1].raw == "days" {
				t.Num.Unit = Days
				if working {
					t.Num.Unit = quantity.Day
				}
				i = k + 1
				t.End = list[i].End
				out = append(out, t)
				continue
			}
			if u, known := units[next.raw]; known && next.Kind == Word && fits(list, i, k, u) {
				t.Num.Value *= u.factor
				t.Num.Unit = u.name
				feet := u.factor == 12 && u.name == quantity.Inch
				i = k
				if i+1 < len(list) && list[i+1].Kind == Stop && list[i+1].raw == "." && abbreviated(list, i+1) {
					i++ // the point of an abbreviation
				}
				if feet {
					i = inches(&t, list, i)
				}
				t.End = list[i].End
			}
		}
		if twoWays(t) {
			t.Kind = Word // which nothing accounts for, so that a person is asked
		}
		out = append(out, t)
	}
	return dimensions(converted(out))
}

// headed gives a number the unit that stands with the name of what it measures, as
// spreadsheets have it: "GVWR (lb): 14,500", "Payload, lb: 3,500".
func headed(list []Token) []Token {
	for i := 1; i+1 < len(list); i++ {
		u := list[i]
		_, known := units[u.raw]
		bracket := list[i-1].raw == "("
		if u.Kind != Word || !known || list[i-1].Kind == Count || i > 1 && bracket && list[i-2].Kind == Count ||
			!bracket && (len(u.raw) < 2 || u.raw == "in" || list[i+1].raw != ":") {
			continue
		}
		k := i + 1
		for k < len(list) && list[k].Kind != Count && list[k].Kind != Stop {
			k++
		}
		if k == len(list) || list[k].Kind != Count {
			continue
		}
		if k+1 < len(list) {
			if _, has := units[list[k+1].raw]; has {
				continue
			}
		}
		u.tied = true
		list = slices.Insert(list, k+1, u)
		list = slices.Delete(list, i, i+1)
	}
	return list
}

// twoWays reports whether a number can be read in two ways in its unit: "1.750 lb".
func twoWays(t Token) bool {
	if t.said || t.Num.Unit == "" || !strings.Contains(t.raw, ".") {
		return false
	}
	v, ok := value(t.raw)
	if !ok || t.Num.Value > 10*v { // 1.750 tons
		return false
	}
	_, _, f := quantity.Scan(t.raw + " " + t.Num.Unit)
	return f != nil && f.Code == quantity.TwoWays
}

// converted drops an amount in brackets that says the one before it again in another
// unit, "74 in (188 cm)".
func converted(list []Token) []Token {
	out := list[:0]
	for i := 0; i < len(list); i++ {
		n := len(out)
		if i+2 < len(list) && list[i].raw == "(" && list[i+1].Kind == Count && list[i+2].raw == ")" && n > 0 &&
			out[n-1].Kind == Count && list[i+1].Num.Unit == out[n-1].Num.Unit && out[n-1].Num.Unit != "" &&
			math.Abs(list[i+1].Num.Value-out[n-1].Num.Value) <= .015*out[n-1].Num.Value {
			i += 2
			continue
		}
		out = append(out, list[i])
	}
	return out
}

// abbreviated reports whether a point ends an abbreviation and no sentence: what
// follows is not written with a capital.
func abbreviated(list []Token, at int) bool {
	return at+1 >= len(list) || !list[at+1].big || list[at+1].Kind != Word
}

// fits reports whether a word is the unit of the number before it.
func fits(list []Token, at, next int, u unit) bool {
	w := list[next]
	after := Token{}
	if next+1 < len(list) {
		after = list[next+1]
	}
	cylinder := after.Kind == Word &&
		slices.Contains([]string{"cylinder", "cylinders", "tank", "tanks", "size", "sized", "bottle", "bottles", `"`},
			after.raw)
	switch w.raw {
	case "in":
		if w.tied || after.Kind == Stop || after.Kind == Break || strings.ContainsAny(list[at].raw, "/.") {
			return true
		}
		return !list[at].said && !(after.Kind == Word && slices.Contains(places, after.raw))
	case "a":
		begins := at == 0 && strings.Contains(list[at].raw, ".") && after.Kind == Word // "5.1 A steel locker"
		return w.tied || w.big && !begins
	case "m", "h", "v", "w":
		return !cylinder && !(w.big && w.raw == "m")
	case "f":
		return w.tied || w.big
	case `"`:
		return w.tied
	case "'":
		return w.tied
	}
	return true
}

// inches adds the inches behind feet: 9'-2", 6 ft 4.
func inches(t *Token, list []Token, i int) int {
	k := i + 1
	if k < len(list) && list[k].Kind == Break && list[k].raw == "-" {
		k++
	}
	if k >= len(list) || list[k].Kind != Count || list[k].Num.Value >= 12 || list[k].Num.Unit != "" ||
		list[k].said && !(k+1 < len(list) && strings.HasPrefix(list[k+1].raw, "inch")) {
		return i
	}
	if k+1 < len(list) && list[k+1].Kind == Word {
		if u, known := units[list[k+1].raw]; known && (u.name != quantity.Inch || u.factor != 1) {
			return i
		} else if known && list[k+1].raw != "in" || list[k+1].raw == "in" && fits(list, k, k+1, u) {
			t.Num.Value += list[k].Num.Value
			if k+2 < len(list) && list[k+2].Kind == Stop && list[k+2].raw == "." && abbreviated(list, k+2) {
				return k + 2
			}
			return k + 1
		}
	}
	t.Num.Value += list[k].Num.Value
	return k
}

// dimensions gives the first of "2 x 2 in" and "0 to 25 L/min" the unit of the last, and marks the ends of a range.
func dimensions(list []Token) []Token {
	for i := len(list) - 3; i >= 0; i-- {
		a, by, b := &list[i], list[i+1], list[i+2]
		if a.Kind == Count && b.Kind == Count && a.Num.Unit == "" && b.Num.Unit != "" &&
			(by.raw == "x" || by.raw == "by" || by.raw == "to" || by.raw == "-" || by.raw == "/") &&
			(by.raw != "/" || b.Num.Unit != Mile) {
			a.Num.Unit = b.Num.Unit
			if u := factorOf(b); u != 1 {
				a.Num.Value *= u
			}
		}
	}
	for i := 0; i+2 < len(list); i++ {
		a, by, b := &list[i], list[i+1], &list[i+2]
		if by.raw == "x" && a.Kind == Count && b.Kind == Count && a.Num.Unit == "" && b.Num.Unit == "" {
			a.Num.Unit, b.Num.Unit = quantity.Inch, quantity.Inch // "2 x 2 tube"
		}
		if a.Kind == Count && b.Kind == Count && a.Num.Unit == b.Num.Unit && b.Num.Unit != "" &&
			a.Num.Value < b.Num.Value && (by.raw == "to" || by.raw == "-") {
			a.Num.Range, b.Num.Range = Low, High
		}
	}
	for i := len(list) - 2; i >= 0; i-- { // "0-25 lpm": the hyphen ties
		if a, b := &list[i], list[i+1]; a.Kind == Count && b.Kind == Count && b.tied && a.Num.Unit == "" &&
			b.Num.Unit != "" {
			a.Num.Unit = b.Num.Unit
			if a.Num.Value < b.Num.Value {
				a.Num.Range, list[i+1].Num.Range = Low, High
			}
		}
	}
	for i := range list {
		if t := &list[i]; t.Kind == Word && (t.raw == "(" || t.raw == ")") {
			t.Kind = Break
		}
	}
	return slices.DeleteFunc(list, func(t Token) bool {
		return t.Kind == Word && (t.raw == "x" || t.raw == `"` || t.raw == "'")
	})
}

// factorOf is how many base units one of the written unit was.
func factorOf(t Token) float64 {
	if v, ok := value(t.raw); ok && v > 0 && !t.said {
		if f := t.Num.Value / v; f == 12 || f == 1000 {
			return f
		}
	}
	return 1
}
