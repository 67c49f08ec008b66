package claims

import (
	"slices"
	"strings"
)

// counted tells each bare number what it may count: the words behind it, then those
// before it.
func counted(list []Token) []Token {
	for i := range list {
		t := &list[i]
		if t.Kind != Count || t.Num.Unit != "" {
			continue
		}
		t.Num.First = i == 0
		if i+1 < len(list) && list[i+1].Kind == Count && t.Num.Value > 1 {
			list[i+1].Num.Apiece = true // "two 100 W outputs"
		}
		for k := i + 1; k < len(list) && len(t.Num.Near) < 3 && list[k].Kind != Stop && list[k].Kind != Break; k++ {
			if list[k].Kind == Word {
				t.Num.Near = append(t.Num.Near, list[k].Word)
				if t.Num.noun == 0 && (plural(list[k].raw) || list[k].Role != Modifier &&
					!(k+1 < len(list) && list[k+1].Kind == Count)) {
					t.Num.noun = len(t.Num.Near)
				}
			}
		}
		t.Num.Behind = len(t.Num.Near)
		t.Num.PerOne = t.Num.Value > 1 && perEach(list[i+1:])
		for k := i - 1; k >= 0 && k >= i-4 && len(t.Num.Near) < 5 && list[k].Kind != Stop; k-- {
			if list[k].Kind == Word {
				t.Num.Near = append(t.Num.Near, list[k].Word)
			}
		}
	}
	return list
}

// perEach reports whether tokens say of how many there are that they are at each of several, "intersection lights on
// each front fender".
func perEach(list []Token) bool {
	each := false
	for k, t := range list {
		switch {
		case t.Kind != Word || k > mostBetween:
			return false
		case t.raw == "each" || t.raw == "every":
			each = k > 0
		case each && t.Role != Modifier:
			return t.Role&Located != 0
		}
	}
	return false
}

// plural reports whether a word may be the name of several things.
func plural(raw string) bool {
	return len(raw) > 3 && strings.HasSuffix(raw, "s") && !strings.HasSuffix(raw, "ss") && !strings.HasSuffix(raw, "us")
}

// equals takes out "or approved equal" and its kin: what is offered is the thing
// named or one as good.
func equals(list []Token) []Token {
	out := list[:0]
	for i := 0; i < len(list); i++ {
		if list[i].raw == "or" {
			k := i + 1
			for k < len(list) &&
				slices.Contains([]string{"an", "approved", "purchaser", "district", "county", "city", "department",
					"functional"}, list[k].raw) {
				k++
			}
			if k < len(list) && slices.Contains([]string{"equal", "equivalent", "equals", "similar"}, list[k].raw) {
				i = k
				continue
			}
		}
		out = append(out, list[i])
	}
	return out
}
