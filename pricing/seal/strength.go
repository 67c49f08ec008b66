package seal

import (
	"slices"
	"strings"
	"unicode"
)

// minCounted letters of a passphrase have to be guessed: as many as in three or four plain
// words. With the work that each guess takes, whoever tries words or dates does not come to
// their end.
const minCounted = 16

// first are words that guessers try before all others, whatever stands beside them: common
// practice, no source, with the words of this trade.
var first = []string{
	"passphrase", "password", "passwort", "letmein", "welcome", "iloveyou", "sunshine", "princess", "football", "baseball",
	"superman", "trustno", "administrator", "admin", "login", "master", "dragon", "monkey", "shadow", "secret", "hello",
	"ambulance", "rescue", "emergency", "hospital", "vehicle", "station", "service", "district", "department", "county",
	"engine", "medic", "company", "boxwright",
}

// rows are what fingers and children go along, there and back.
var rows = []string{"qwertyuiop", "asdfghjkl", "zxcvbnm", "1234567890", "abcdefghijklmnopqrstuvwxyz"}

// strong reports whether guessing a passphrase is hopeless.
func strong(passphrase string) bool {
	return len(passphrase) <= maxPassphrase && counted(passphrase) >= minCounted
}

// counted is how many letters of a passphrase have to be guessed. A word that is tried first
// counts as one letter, and so does what was said before, from its third letter on; what goes
// on along a row, or repeats the letter before it, does not count, nor does a space.
func counted(passphrase string) int {
	text := slices.DeleteFunc([]rune(strings.ToLower(passphrase)), unicode.IsSpace)
	n := 0
	for i := 0; i < len(text); {
		n++
		if skip := max(commonAt(text, i), saidBefore(text, i)); skip > 0 {
			i += skip
			continue
		}
		if i >= 2 && goesOn(text[i-2:i+1]) {
			n--
		}
		i++
	}
	return n
}

// commonAt is the length of the word tried first that stands there; 0 when none does.
func commonAt(text []rune, at int) int {
	for _, word := range first {
		if w := []rune(word); len(text)-at >= len(w) && slices.Equal(text[at:at+len(w)], w) {
			return len(w)
		}
	}
	return 0
}

// saidBefore is how many letters from there on stand in the text before; 0 when fewer than
// three do.
func saidBefore(text []rune, at int) int {
	longest := 0
	for from := range at {
		n := 0
		for at+n < len(text) && text[from+n] == text[at+n] {
			n++
		}
		longest = max(longest, n)
	}
	if longest < 3 {
		return 0
	}
	return longest
}

// goesOn reports whether three letters are one and the same, or go along a row.
func goesOn(three []rune) bool {
	if three[0] == three[1] && three[1] == three[2] {
		return true
	}
	back := slices.Clone(three)
	slices.Reverse(back)
	return slices.ContainsFunc(rows, func(row string) bool {
		return strings.Contains(row, string(three)) || strings.Contains(row, string(back))
	})
}
