package quantity

import (
	"math"
	"slices"
	"strconv"
	"strings"
)

// number is one as a person writes it.
type number struct {
	value  float64
	digits string // exactly, without separators: "-1750", "12.5"
	money  bool   // a sign of the currency stands before it
	// Set where a separator may be meant in another way: the number without it, for
	// a point as in 1.750, or with a point, for a comma as in 8,625.
	ifGroups, ifDecimal string
}

// maxDigits is how long a number may be; more are no longer held exactly.
const maxDigits = 15

// number reads the number that stands at i and says where it ends; i itself when
// none stands there. A fault ends behind what it is about.
func (r *reader) number(i int) (n number, end int, f *Fault) {
	at, sign := i, ""
	signed := func() {
		if c := r.at(at); sign == "" && (c == '-' || c == '+') {
			sign, at = string(c), at+1
		}
	}
	signed()
	if after, ok := r.currency(at); ok {
		n.money, at = true, r.past(after)
		signed()
	}
	if sign == "" && !n.money && isLetter(r.at(at)) {
		return r.inWords(at)
	}
	if r.at(at) == '(' && sign == "" && !n.money { // (1)
		inner, to, f := r.number(at + 1)
		if f != nil || to == at+1 || r.at(to) != ')' || inner.money { // ($500) is below zero to some
			return n, i, nil
		}
		return inner, to + 1, nil
	}
	plain, to, f := r.plain(at)
	if f != nil || to == at {
		return n, max(to, i), r.around(f, i, to)
	}
	plain.money = n.money
	if sign == "-" {
		plain.value, plain.digits = -plain.value, "-"+plain.digits
	}
	return r.multiplied(plain, to)
}

// around leaves a fault as it is and no fault where nothing was read.
func (r *reader) around(f *Fault, from, to int) *Fault {
	if f != nil && f.Text == "" {
		f = faultIn(f.Code, r.said(from, to), f.Says)
	}
	return f
}

func (r *reader) currency(i int) (int, bool) {
	for _, sign := range []string{"us$", "$", "usd"} {
		if to, ok := r.says(i, sign); ok {
			return to, true
		}
	}
	return i, false
}

// multiplied takes "345k", "1.2 million" and "1.2M" for an amount.
func (r *reader) multiplied(n number, i int) (number, int, *Fault) {
	at := r.past(i)
	for _, m := range []struct {
		word   string
		zeros  int
		closed bool // stands at the digits
		money  bool
	}{{"k", 3, true, false}, {"m", 6, true, true}, {"thousand", 3, false, false}, {"million", 6, false, false}} {
		from := at
		if m.closed {
			from = i
		}
		if to, ok := r.says(from, m.word); ok && !isDigit(r.at(to)) && (!m.money || n.money) {
			n.value *= math.Pow10(m.zeros)
			n.digits = shifted(n.digits, m.zeros)
			return n, to, nil
		}
	}
	return n, i, nil
}

// shifted moves the point of a number to the right.
func shifted(digits string, places int) string {
	whole, part, _ := strings.Cut(digits, ".")
	part += strings.Repeat("0", places)
	rest := strings.TrimRight(part[places:], "0")
	minus := ""
	if strings.HasPrefix(whole, "-") {
		minus, whole = "-", whole[1:]
	}
	if whole = strings.TrimLeft(whole+part[:places], "0"); whole == "" {
		whole = "0"
	}
	if rest != "" {
		whole += "." + rest
	}
	return minus + whole
}

// plain reads digits with separators, a fraction, or both: 1,750 or 12.5 or 8 1/2
// or 8½. A fault without a text is about what was read.
func (r *reader) plain(i int) (n number, end int, f *Fault) {
	if v, ok := vulgar[r.at(i)]; ok {
		return valued(v), i + 1, nil
	}
	end = r.run(i, isDigit)
	for {
		c := r.at(end)
		if (c == '.' || c == ',') && isDigit(r.at(end+1)) {
			end = r.run(end+1, isDigit)
		} else if c == narrow && end > i && r.groupOfThree(end+1) {
			end += 4
		} else {
			break
		}
	}
	if end == i {
		return n, i, nil
	}
	written := strings.ReplaceAll(r.text(i, end), string(narrow), "")
	if n, f = separated(written); f != nil {
		return n, end, f
	} else if n.digits == "" { // 3.7.6
		return n, i, nil
	}
	whole := !strings.ContainsAny(written, ".,")
	if r.at(end) == '/' && isDigit(r.at(end+1)) { // 1/4
		if !whole {
			return n, end, nil
		}
		return r.over(n.value, end+1, i)
	}
	if !whole {
		return n, end, nil
	}
	if part, to := r.fraction(end); to > end {
		return valued(n.value + part), to, nil
	}
	return n, end, nil
}

// groupOfThree reports whether exactly three digits stand at i.
func (r *reader) groupOfThree(i int) bool { return r.run(i, isDigit) == i+3 }

// fraction reads the fraction that follows a whole number: " 1/2", "-1/2", "½".
func (r *reader) fraction(i int) (float64, int) {
	at := r.past(i)
	if v, ok := vulgar[r.at(at)]; ok {
		return v, at + 1
	}
	if r.at(at) == '-' {
		at = r.past(at + 1)
	}
	if at == i {
		return 0, i
	}
	to := r.run(at, isDigit)
	if to == at || to > at+3 || r.at(to) != '/' {
		return 0, i
	}
	top, _ := strconv.Atoi(r.text(at, to))
	n, end, f := r.over(float64(top), to+1, at)
	if f != nil || end == at || n.value <= 0 || n.value >= 1 {
		return 0, i
	}
	return n.value, end
}

// over reads the lower number of a fraction. What is no fraction, such as a date
// or a cable's 4/0, is no number.
func (r *reader) over(top float64, i, start int) (number, int, *Fault) {
	to := r.run(i, isDigit)
	below := 0
	if to > i && to <= i+3 {
		below, _ = strconv.Atoi(r.text(i, to))
	}
	if !slices.Contains([]int{2, 3, 4, 5, 6, 8, 10, 16, 32, 64}, below) || r.at(to) == '/' || r.at(to) == '-' &&
		isDigit(r.at(to+1)) {
		return number{}, start, nil
	}
	return valued(top / float64(below)), to, nil
}

func valued(v float64) number {
	return number{value: v, digits: strconv.FormatFloat(v, 'f', -1, 64)}
}

var vulgar = map[rune]float64{
	'½': 1. / 2, '¼': 1. / 4, '¾': 3. / 4, '⅛': 1. / 8, '⅜': 3. / 8, '⅝': 5. / 8, '⅞': 7. / 8, '⅓': 1. / 3, '⅔': 2. / 3,
	'⅕': 1. / 5, '⅖': 2. / 5, '⅗': 3. / 5, '⅘': 4. / 5, '⅙': 1. / 6, '⅚': 5. / 6,
}

// separated reads digits with points and commas. Commas stand before groups of
// three, as in 1,750.25; another single comma is asked about. What is no number,
// such as a paragraph's 3.7.6, has no digits.
func separated(written string) (n number, f *Fault) {
	whole, part, point := strings.Cut(written, ".")
	groups := strings.Split(whole, ",")
	commas := len(groups) > 1
	if strings.ContainsAny(part, ".,") || commas && !ofThree(groups) {
		return n, asked(written)
	}
	digits := trimmed(strings.Join(groups, ""))
	if point {
		digits += "." + part
	}
	if len(digits) > maxDigits {
		return n, &Fault{Code: OutOfSpan, Says: " is longer than any number meant here: write at most " +
			strconv.Itoa(maxDigits) + " digits"}
	}
	if point && !commas && ofThree([]string{whole, part}) {
		n.ifGroups = whole + part
	}
	if !point && len(groups) == 2 {
		n.ifDecimal = groups[0] + "." + groups[1]
	}
	n.digits = digits
	n.value, _ = strconv.ParseFloat(digits, 64)
	return n, nil
}

// ofThree reports whether groups of digits are those of thousands.
func ofThree(groups []string) bool {
	for i, g := range groups {
		if i > 0 && len(g) != 3 || i == 0 && (len(g) == 0 || len(g) > 3 || g[0] == '0') {
			return false
		}
	}
	return true
}

// asked is the question about a comma or points that do not stand as they do in
// 1,750.25; nil when what is written is no number at all.
func asked(written string) *Fault {
	whole, part, comma := strings.Cut(written, ",")
	groups := strings.Split(whole, ".")
	switch {
	case !comma && ofThree(groups): // 1.750.000
		return &Fault{Code: TwoWays, Says: " has points between thousands: write " + strings.Join(groups, "")}
	case !comma, strings.ContainsAny(part, ".,"), len(groups) > 1 && !ofThree(groups):
		return nil
	case len(groups) > 1: // 1.750,5
		return &Fault{Code: TwoWays, Says: " has a decimal comma: write " + strings.Join(groups, "") + "." + part}
	case trimmed(whole) == "0": // 0,5
		return &Fault{Code: TwoWays, Says: " has a decimal comma: write 0." + part}
	}
	return twoWays(whole+"."+part, whole+part)
}

func twoWays(decimal, groups string) *Fault {
	return &Fault{Code: TwoWays, Says: " can be read in two ways: write " + decimal + " or " + groups}
}

// trimmed is a whole number without zeros before it.
func trimmed(digits string) string {
	if digits = strings.TrimLeft(digits, "0"); digits == "" {
		return "0"
	}
	return digits
}

// ---- numbers in words ----

var ones = []string{"zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven",
	"twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"}

var tens = []string{"twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"}

// inWords reads "one", "forty-eight", "one hundred and twenty", and the digits in
// parentheses behind, which must say the same.
func (r *reader) inWords(i int) (n number, end int, f *Fault) {
	total, part, end, last := 0, 0, i, 0 // last: what the word before counts, 1, 10, 100 or 1000
	for at := i; ; {
		to := r.run(at, isLetter)
		word := r.text(at, to)
		unit, ten := slices.Index(ones, word), slices.Index(tens, word)
		switch {
		case unit >= 0 && (last == 0 || last >= 100 || last == 10 && unit > 0 && unit < 10):
			part, last = part+unit, 1
		case ten >= 0 && (last == 0 || last >= 100):
			part, last = part+10*(ten+2), 10
		case word == "hundred" && last == 1 && part < 10:
			part, last = part*100, 100
		case word == "thousand" && last > 0 && last < 1000 && total == 0:
			total, part, last = part*1000, 0, 1000
		default:
			return r.confirmed(valued(float64(total+part)), i, end)
		}
		end = to
		at = r.past(to)
		if r.at(at) == '-' {
			at++
		} else if after, ok := r.says(at, "and"); ok && last >= 100 {
			at = r.past(after)
		}
		if at == to {
			return r.confirmed(valued(float64(total+part)), i, end)
		}
	}
}

// confirmed takes the digits in parentheses behind a number in words.
func (r *reader) confirmed(n number, start, end int) (number, int, *Fault) {
	if end == start {
		return number{}, start, nil
	}
	at := r.past(end)
	if r.at(at) != '(' {
		return n, end, nil
	}
	inner, to, f := r.number(at + 1)
	if f != nil || to == at+1 || r.at(to) != ')' {
		return n, end, nil
	}
	if inner.value != n.value {
		return n, to + 1, faultIn(TwoValues, r.said(start, to+1), " says "+n.digits+" in words and "+inner.digits+
			" in digits: write one of them")
	}
	return inner, to + 1, nil
}
