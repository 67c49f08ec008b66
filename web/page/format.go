package page

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"boxwright/config/quantity"
)

// Whole writes a whole number with thousands set apart.
func Whole(n int) string { return quantity.Group(float64(n), 0) }

// DayCount is a count of days, months or years for a field; empty for zero.
func DayCount(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}

// shortened keeps a label within so many letters.
func shortened(text string, most int) string {
	if r := []rune(text); len(r) > most {
		return string(r[:most-1]) + "…"
	}
	return text
}

// Blank is what a field shows of a number: nothing where it is zero.
func Blank(v interface {
	IsZero() bool
	String() string
}) string {
	if v.IsZero() {
		return ""
	}
	return v.String()
}

// Capital begins a text with a capital letter.
func Capital(text string) string {
	_, n := utf8.DecodeRuneInString(text)
	return strings.ToUpper(text[:n]) + text[n:]
}

// Small begins a text with a small letter.
func Small(text string) string {
	_, n := utf8.DecodeRuneInString(text)
	return strings.ToLower(text[:n]) + text[n:]
}

// OrDash is the text, or a dash where there is none.
func OrDash(text string) string {
	if text == "" {
		return "–"
	}
	return text
}

// units that stand behind a figure, as they are shown.
var units = map[string]bool{"lb": true, "kg": true, "in": true, "mm": true, "ft": true, "m": true, "A": true,
	"Ah": true,
	"W":  true, "V": true, "%": true, "psi": true, "kPa": true, "ft²": true, "m²": true, "ft³": true, "L": true,
	"min": true, "h": true, "degrees": true}

// Held is a text whose figures stay on one line with their units.
func Held(text string) string {
	if !strings.Contains(text, " ") {
		return text
	}
	words := strings.Split(text, " ")
	out := words[0]
	for i, w := range words[1:] {
		before := words[i]
		if before != "" && strings.ContainsRune("0123456789", rune(before[len(before)-1])) &&
			units[strings.TrimRight(w, ".,;:)")] {
			out += "\u00a0" + w
		} else {
			out += " " + w
		}
	}
	return out
}

// Between is a range that breaks between its ends alone.
func Between(p *Page, low, high float64, unit string) string {
	return Held(p.Show(low, unit) + " to " + p.Show(high, unit))
}
