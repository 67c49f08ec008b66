// Package claims reads a line of a purchaser's list: its words in one form, its
// quantities with the comparison each stands under, and what the line rules out.
// It knows no catalogue.
package claims

import (
	"slices"
	"strings"
)

// marks brings quotes, dashes, fractions and signs to one kind each.
var marks = strings.NewReplacer(markPairs...)

var markPairs = []string{
	"\u2018", "'", "\u2019", "'", "\u2032", "'", "\u201c", `"`, "\u201d", `"`, "\u2033", `"`, "''", `"`,
	"\u2010", "-", "\u2011", "-", "\u2013", " - ", "\u2014", " - ", "\u2212", "-", "\u00a0", " ",
	"\u202f", " ", "\u2009", " ", "\u00d7", " x ", "\u00bd", " 1/2", "\u00bc", " 1/4", "\u00be", " 3/4",
	"\u00b0", " degrees ", "\u00b3", "3", "\u00b2", "2", "\u2265", " at least ", "\u2264", " at most ",
	">=", " at least ", "<=", " at most ", "=>", " at least ", "=<", " at most ", "< ", " less than ", "> ", " more than ",
	"<", " less than ", ">", " more than ", " + ", " and ", "\u2022", " ", "\u25cf", " ", "\u25aa", " ",
	"&", " and ", "w/o ", "without ", "W/", "with ", "w/", "with ", "\t", " ", "\n", " ",
}

// begins are, by a byte, the places of the marks that begin with it.
var begins = func() (out [256][]int) {
	for k := 0; k < len(markPairs); k += 2 {
		out[markPairs[k][0]] = append(out[markPairs[k][0]], k)
	}
	return out
}()

// marked is a text with its marks of one kind each, and where each of its letters, and its
// end, stand in the text.
func marked(text string) (string, []int) {
	out := marks.Replace(text)
	at := make([]int, 0, len(out)+1)
	for i := 0; i < len(text); {
		n, to := 1, 1
		for _, k := range begins[text[i]] {
			if strings.HasPrefix(text[i:], markPairs[k]) {
				n, to = len(markPairs[k]), len(markPairs[k+1])
				break
			}
		}
		for k := range to {
			at = append(at, i+min(k, 1)*n)
		}
		i += n
	}
	return out, append(at, len(text))
}

// blanks are what a form leaves to be filled in behind a line, and formWords what
// it prints beside them.
var (
	blanks    = []string{"__", "\u2610", "[ ]", "( )", "[]"}
	formWords = []string{"comply", "complies", "exception", "yes", "no", "y", "n", "initial", "initials", "meets",
		"deviation", "y/n", "yes/no"}
)

// withoutForm is a line without the blanks of a form at its end.
func withoutForm(text string) string {
	at := -1
	for _, b := range blanks {
		if i := strings.Index(text, b); i >= 0 && (at < 0 || i < at) {
			at = i
		}
	}
	if at < 0 {
		return text
	}
	formed := func(words []string) bool {
		return !slices.ContainsFunc(words, func(w string) bool { return !slices.Contains(formWords, w) })
	}
	words := func(s string) []string {
		return strings.FieldsFunc(strings.ToLower(s), func(r rune) bool {
			return strings.ContainsRune(" _/()[]:.\u2610-", r)
		})
	}
	if !formed(words(text[at:])) {
		return text
	}
	text = text[:at]
	for {
		cut := strings.TrimRight(text, " _/()[]:.\u2610-")
		last := strings.ToLower(cut[strings.LastIndexAny(cut, " /([")+1:])
		if len(last) < 2 || !slices.Contains(formWords, last) {
			return text
		}
		text = cut[:len(cut)-len(last)]
	}
}

// Key is a line as it is remembered: what is left when writing differs only in
// spaces, capitals, quotes and dashes.
func Key(text string) string {
	return strings.Join(strings.Fields(strings.ToLower(marks.Replace(withoutForm(text)))), " ")
}

// unscanned mends what reading a scanned page makes of words and numbers: "1ess", "usab1e",
// "4,OOO". A letter and a number that may be a name, such as "O2", stay as they are.
func unscanned(text string) string {
	if !strings.ContainsAny(text, "0123456789") {
		return text
	}
	out := []byte(text)
	for i := 0; i < len(out); {
		end := i
		for end < len(out) && (alphanumeric(out[end]) || out[end] == ',' && end > i && end+1 < len(out) &&
			alphanumeric(out[end+1])) {
			end++
		}
		mend(out[i:end])
		i = max(end, i+1)
	}
	return string(out)
}

func alphanumeric(c byte) bool { return c >= '0' && c <= '9' || letter(c|0x20) }

// mend puts letters for digits in a word, or digits for letters in a number.
func mend(run []byte) {
	letters, digits, commas := 0, 0, 0
	for _, c := range run {
		switch {
		case c == ',':
			commas++
		case c >= '0' && c <= '9':
			digits++
		case !strings.ContainsRune("OolI", rune(c)):
			letters++
		}
	}
	ambiguous := len(run) - letters - digits - commas
	_, unit := units[strings.ToLower(strings.TrimLeft(string(run), "0123456789"))]
	last := len(run) - 1
	switch {
	case digits == 0 || letters+ambiguous == 0 || unit:
	case letters == 0 && run[0] >= '0' && run[0] <= '9' && (run[last] != 'l' || commas > 0):
		for k, c := range run {
			switch c {
			case 'O', 'o':
				run[k] = '0'
			case 'l', 'I':
				run[k] = '1'
			}
		}
	case letters >= 2 && digits == 1 && commas == 0:
		for k, c := range run {
			within := k > 0 && k < last && letter(run[k-1]) && letter(run[k+1]) // "usab1e"
			if first := k == 0 && last >= 3; (within || first) && (c == '1' || c == '0') {
				run[k] = map[byte]byte{'1': 'l', '0': 'o'}[c]
			}
		}
	}
}
