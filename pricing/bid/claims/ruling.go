package claims

import (
	"slices"
)

// ruledFrom is where what is ruled out at the end of a list begins: its sentence, what stands behind a colon
// or in brackets, or behind a comma where what stands before that is ordered: "shall be aluminum, steel is not
// acceptable".
func ruledFrom(list []Token) int {
	from := len(list)
	for from > 0 && list[from-1].Kind != Stop {
		from--
	}
	ordered := false
	for k := from; k < len(list); k++ {
		t := &list[k]
		ordered = ordered || ordering[t.raw]
		if t.Kind == Break && (t.raw == ":" || t.raw == "(" || t.raw == "," && ordered) {
			from, ordered = k+1, false
		}
	}
	for from < len(list) && list[from].Kind == Break {
		from++
	}
	return from
}

// ordering are words of a clause that asks for something.
var ordering = wordsOf(`shall must will should`)

func ruledOutBehind(list []Token, at int) int {
	for _, b := range behind {
		if at+len(b) > len(list) {
			continue
		}
		same := true
		for k, w := range b {
			same = same && list[at+k].raw == w
		}
		if same && at > 0 {
			return len(b)
		}
	}
	return 0
}

// Ruling is how far tokens rule something out.
type Ruling struct {
	Before []string // words before what is ruled out
	Out    []string // words of the piece that rules something out
}

// RuledWords tells the words that are ruled out from those before them; nil where nothing
// is.
func RuledWords(list []Token) *Ruling {
	if !Ruled(list) {
		return nil
	}
	r, not := &Ruling{}, false
	ended := false
	for _, t := range list {
		switch {
		case t.Kind == Not:
			not, ended = true, false
		case t.Kind == Break:
			ended = not
		case t.Kind == Word && !not:
			r.Before = append(r.Before, t.Word)
		case t.Kind == Word && !ended:
			r.Out = append(r.Out, t.Word)
		}
	}
	return r
}

// Instead reports whether tokens say what something takes the place of.
func Instead(list []Token) bool {
	for i := range list {
		if list[i].Kind == Not && list[i].raw == instead {
			return true
		}
	}
	return false
}

// Replaced are the words of what tokens say that something takes the place of.
func Replaced(list []Token) []string {
	var out []string
	in := false
	for _, t := range list {
		switch {
		case t.Kind == Not:
			in = t.raw == instead
		case t.Kind == Break || t.Kind == Stop:
			in = false
		case in && t.Kind == Word:
			out = append(out, t.Word)
		}
	}
	return out
}

// Denied are the words right behind those that rule something out: "timer" and "shedding" in
// "without timer or shedding".
func Denied(list []Token) []string {
	var out []string
	for i, t := range list {
		if t.Kind == Word && i > 0 && (list[i-1].Kind == Not || list[i-1].Kind == Or && i > 1 &&
			slices.Contains(out, list[i-2].Word)) {
			out = append(out, t.Word)
		}
	}
	return out
}

// every is the stem of "all", "both" and "each".
const every = "every"

// instead is how "rather than" and its kin are written within the package.
const instead = "insteadof"

// Ruled reports whether something in tokens is ruled out.
func Ruled(list []Token) bool {
	for i := range list {
		if list[i].Kind == Not {
			return true
		}
	}
	return false
}
