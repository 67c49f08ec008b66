package markup

import "strings"

// mostMarks are how many accents may stand on one letter.
const mostMarks = 4

// calm takes out of a text what reaches beyond it: characters that turn the direction of
// writing, which would turn what stands beside it too, control characters, and accents
// stacked so high that they cover other lines.
func calm(s string) string {
	if tame(s) {
		return s
	}
	marks := 0
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t':
		case r < ' ', r >= 0x7f && r < 0xa0, turns(r):
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
		if c < ' ' && c != '\n' && c != '\t' || c == 0x7f || c >= 0xc2 && turning[c] {
			return false
		}
	}
	return true
}

// turning are the first bytes of the characters that calm looks at.
var turning = [256]bool{0xc2: true, 0xcc: true, 0xcd: true, 0xe1: true, 0xe2: true, 0xef: true}

// turns reports whether a character embeds, overrides or isolates a direction.
func turns(r rune) bool { return r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069 }

// accent reports whether a character stands on the one before it.
func accent(r rune) bool {
	return r >= 0x300 && r <= 0x36f || r >= 0x1ab0 && r <= 0x1aff || r >= 0x1dc0 && r <= 0x1dff ||
		r >= 0x20d0 && r <= 0x20ff || r >= 0xfe20 && r <= 0xfe2f
}
