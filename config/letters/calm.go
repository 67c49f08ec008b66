// Package letters keeps texts of strangers within themselves: no text turns the
// direction of what stands beside it, covers other lines, or holds what cannot be seen.
package letters

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf16"
	"unicode/utf8"
)

// mostMarks are how many accents may stand on one letter.
const mostMarks = 4

// Calm takes out of a text what reaches beyond it: characters that turn the direction of
// writing, which would turn what stands beside it too, control characters, and accents
// stacked so high that they cover other lines. What Isolate put around a part stays.
func Calm(s string) string {
	if tame(s) {
		return s
	}
	marks, pairs := 0, balanced(s)
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\r' || r == '\t':
		case pairs && (r == isolate || r == isolated):
			return r
		case control(r), turns(r):
			return -1
		case accent(r):
			if marks++; marks > mostMarks {
				return -1
			}
			return r
		}
		marks = 0
		return r
	}, s)
}

// tame reports whether a text is of letters in which there is nothing to take out, as
// nearly all are.
func tame(s string) bool {
	for i := range len(s) {
		c := s[i]
		if c < ' ' && c != '\n' && c != '\r' && c != '\t' || c == 0x7f || c >= 0xc2 && turning[c] {
			return false
		}
	}
	return true
}

// turning are the first bytes of the characters that Calm looks at.
var turning = [256]bool{0xc2: true, 0xcc: true, 0xcd: true, 0xd2: true, 0xd6: true, 0xd7: true, 0xd8: true, 0xd9: true,
	0xdb: true, 0xdc: true, 0xdd: true, 0xde: true, 0xdf: true, 0xe0: true, 0xe1: true, 0xe2: true, 0xe3: true,
	0xea: true, 0xef: true, 0xf0: true, 0xf3: true}

// control reports whether a character has no shape of its own: one of control, of the end
// of a line or paragraph, of no width, or a tag.
func control(r rune) bool {
	return r < ' ' || r >= 0x7f && r < 0xa0 || r == 0x200b || r == 0x2028 || r == 0x2029 || r >= 0x2060 &&
		r <= 0x2064 ||
		r >= 0x206a && r <= 0x206f || r == 0xfeff || r >= 0xfff9 && r <= 0xfffb || r >= 0xe0000 && r <= 0xe007f
}

// turns reports whether a character marks, embeds, overrides or isolates a direction.
func turns(r rune) bool {
	return r == 0x61c || r == 0x200e || r == 0x200f || r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069
}

// accent reports whether a character stands on the one before it, in any writing.
func accent(r rune) bool { return r >= 0x300 && unicode.In(r, unicode.Mn, unicode.Me) }

// The characters around a part of a text whose direction is its own.
const (
	isolate  = '\u2068'
	isolated = '\u2069'
)

// balanced reports whether each isolated part of a text ends in it.
func balanced(s string) bool {
	depth := 0
	for _, r := range s {
		switch r {
		case isolate:
			depth++
		case isolated:
			depth--
		}
		if depth < 0 {
			return false
		}
	}
	return depth == 0
}

// Isolate is a text of a stranger to be put into a line: where it has letters that are
// written from the right, they turn nothing else of the line.
func Isolate(s string) string {
	if !strings.ContainsFunc(s, fromRight) {
		return s
	}
	return string(isolate) + Calm(strings.Map(func(r rune) rune {
		if turns(r) {
			return -1
		}
		return r
	}, s)) + string(isolated)
}

// fromRight reports whether a letter is written from the right.
func fromRight(r rune) bool {
	return r >= 0x590 && r <= 0x8ff || r >= 0xfb1d && r <= 0xfdff || r >= 0xfe70 && r <= 0xfeff ||
		r >= 0x10800 && r <= 0x10fff || r >= 0x1e800 && r <= 0x1efff
}

// Wild reports whether a JSON text may hold a text that Calm would change: one that has a
// single accent may.
func Wild(raw []byte) bool {
	for i, c := range raw {
		switch {
		case c == 0x7f:
			return true
		case c == '\\':
			if i+1 < len(raw) && (raw[i+1] == 'b' || raw[i+1] == 'f' || raw[i+1] == 'u' && wildEscape(raw[i+2:])) {
				return true
			}
		case c >= 0xc2 && turning[c]:
			if r, _ := utf8.DecodeRune(raw[i:]); control(r) || turns(r) || accent(r) {
				return true
			}
		}
	}
	return false
}

// wildEscape reports whether Calm may change what an escape stands for, of which the
// digits come first: a half of a pair may.
func wildEscape(digits []byte) bool {
	n, err := strconv.ParseUint(string(digits[:min(4, len(digits))]), 16, 16)
	r := rune(n)
	return err != nil || utf16.IsSurrogate(r) || control(r) || turns(r) || accent(r)
}
