package quantity

import "unicode"

// maxRunes bounds how much of a text is looked at for one quantity.
const maxRunes = 160

// reader is the beginning of a text in one spelling: lower case, straight quotes,
// one kind of dash. Positions count letters.
type reader struct {
	letters []rune
	typed   []rune // as written
	bytes   []int  // where each begins in the text, and where the last ends
}

func newReader(text string) *reader {
	r := &reader{letters: make([]rune, 0, 24), typed: make([]rune, 0, 24), bytes: make([]int, 0, 25)}
	end := len(text)
	for i, c := range text {
		if len(r.letters) == maxRunes {
			end = i
			break
		}
		r.letters, r.typed, r.bytes = append(r.letters, straight(c)), append(r.typed, c), append(r.bytes, i)
	}
	r.bytes = append(r.bytes, end)
	return r
}

// straight brings the ways to write one sign to one.
func straight(c rune) rune {
	switch c {
	case '’', '‘', '′', 'ʼ', '`', '´':
		return '\''
	case '”', '“', '″', '„':
		return '"'
	case '−', '–', '—', '‑', '‒':
		return '-'
	case '⁄', '∕':
		return '/'
	case '³':
		return '3'
	case '²':
		return '2'
	case '\u2009', '\u202f', '\u2007':
		return narrow
	case '\t', '\n', '\r':
		return ' '
	}
	return unicode.ToLower(c)
}

// narrow is a space that does not break a line, as printed between thousands.
const narrow = '\u00a0'

// at is a letter; 0 beyond the end.
func (r *reader) at(i int) rune {
	if i < 0 || i >= len(r.letters) {
		return 0
	}
	return r.letters[i]
}

func (r *reader) end(i int) bool { return i >= len(r.letters) }

// past goes over spaces.
func (r *reader) past(i int) int {
	for r.at(i) == ' ' || r.at(i) == narrow {
		i++
	}
	return i
}

// run goes over letters of a kind.
func (r *reader) run(i int, of func(rune) bool) int {
	for !r.end(i) && of(r.letters[i]) {
		i++
	}
	return i
}

// says reports whether a text stands at i, not as the beginning of a longer word,
// and where it ends.
func (r *reader) says(i int, word string) (end int, ok bool) {
	end = i + len(word)
	if end > len(r.letters) || string(r.letters[i:end]) != word {
		return i, false
	}
	return end, !isLetter(r.at(end-1)) || !isLetter(r.at(end))
}

// text is what stands there, in the one spelling; said is the same as typed.
func (r *reader) text(from, to int) string { return string(r.letters[from:to]) }
func (r *reader) said(from, to int) string { return string(r.typed[from:to]) }

func isDigit(c rune) bool  { return c >= '0' && c <= '9' }
func isLetter(c rune) bool { return unicode.IsLetter(c) }
