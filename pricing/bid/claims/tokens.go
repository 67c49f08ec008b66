package claims

import (
	"boxwright/config"
)

// Words are the content words of tokens.
func Words(list []Token) []string {
	out := make([]string, 0, len(list))
	for i := range list {
		if list[i].Kind == Word {
			out = append(out, list[i].Word)
		}
	}
	if len(out) == 0 {
		return nil
	}
	return out
}

// AllWords are the content words of a text that was read, those that make a phrase also one by
// one.
func AllWords(text string, read []Token) []string {
	out := Words(read)
	for _, t := range lex(text) {
		if t.Kind == Word && !idle[t.raw] && numbers[t.raw] == 0 && len(t.raw) > 1 {
			out = append(out, stem(t.raw))
		}
	}
	return out
}

// Compartments reports whether a token speaks of several compartments, and so of those for equipment.
func Compartments(t Token) bool { return t.Kind == Word && t.raw == "compartments" }

// Numbers are the quantities of tokens.
func Numbers(list []Token) []Number {
	many := 0
	for i := range list {
		if list[i].Kind == Count {
			many++
		}
	}
	if many == 0 {
		return nil
	}
	out := make([]Number, 0, many)
	for i := range list {
		if list[i].Kind == Count {
			out = append(out, *list[i].Num)
		}
	}
	return out
}

// DayOf is the date by which something is asked for, the day before where tokens say "before"
// it; none can be told of several dates, nor of one "after" which it is asked for.
func DayOf(list []Token) (day config.Date, dated bool) {
	for i := range list {
		t := &list[i]
		switch {
		case t.Kind != Day:
			continue
		case dated || t.Num.Sense == config.AtLeast:
			return config.Date{}, true
		}
		day, dated = *t.Day, true
		if t.Num.Beyond && t.Num.Sense == config.AtMost {
			day = day.AddDays(-1)
		}
	}
	return day, dated
}
