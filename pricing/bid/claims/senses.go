package claims

import (
	"slices"
	"strings"

	"boxwright/config"
)

// bound is words of comparison. Those of leading stand before the number, those of trailing
// behind it; of both the longer are tried before the shorter ones that they hold.
type bound struct {
	words []string
	sense config.Sense
	near  bool // counts only right before a number: "under" and "within" are also places
	more  bool // the amount itself is not enough: "more than 96 in"
}

func boundsOf(sense config.Sense, near bool, list ...string) []bound {
	var out []bound
	for _, w := range list {
		out = append(out, bound{words: strings.Fields(w), sense: sense, near: near})
	}
	return out
}

// beyond are bounds that the amount itself does not keep.
func beyond(list []bound) []bound {
	for i := range list {
		list[i].more = true
	}
	return list
}

// loose reports whether a bound is put on what a thing is to cope with as often as on what it may come to:
// "for patients up to 900 lb", "12,000 lb maximum pull".
func (b bound) loose() bool {
	return b.sense == config.AtMost && slices.ContainsFunc(b.words, func(w string) bool {
		return w == "up" || strings.HasPrefix(w, "max")
	})
}

var (
	leading   []bound
	trailing  []bound
	leadingBy = map[string][]bound{} // by their first words
)

func init() {
	leading = slices.Concat(
		boundsOf(config.AtLeast, false, "not be less than", "not less than", "no less than", "no fewer than",
			"not fewer than", "not be smaller than",
			"no smaller than", "not smaller than", "no lower than", "not lower than", "not be lower than", "no shorter than",
			"not be shorter than", "no narrower than",
			"not be under", "not under", "not fall below", "not be below", "not drop below", "not below",
			"not narrower than", "no thinner than", "not thinner than", "not be thinner than", "no lighter than",
			"not lighter than", "not be lighter than", "no weaker than", "not shallower than", "meet or exceed",
			"equal or exceed", "meets or exceeds", "equals or exceeds", "equal to or exceed", "upwards of",
			"equal to or greater than", "greater than or equal to", "at or over", "at or above", "at least",
			"at a minimum", "a minimum of", "minimum of", "minimum", "min", "starting at", "no shallower than",
			"nothing less than", "nothing under", "nothing below", "nothing fewer than", "nothing smaller than"),
		beyond(boundsOf(config.AtLeast, false, "in excess of", "greater than", "more than", "exceeding", "must exceed",
			"shall exceed", "will exceed", "exceeds", "better than")),
		boundsOf(config.AtMost, false, "not be more than", "not more than", "no more than", "not be greater than",
			"not greater than", "no greater than", "not be larger than", "no larger than", "not larger than",
			"not be longer than", "no longer than", "not longer than", "no higher than", "not higher than",
			"not be higher than", "not be taller than",
			"no taller than", "no wider than", "not wider than", "not be wider than",
			"no thicker than", "not thicker than", "not be thicker than", "no heavier than", "not heavier than",
			"not be heavier than", "no farther than", "not farther than",
			"no farther apart than", "not farther apart than", "no further apart than", "not be farther apart than",
			"no later than", "not later than", "not to exceed", "not be exceed", "not exceed", "not exceeding",
			"does not exceed", "without exceeding", "not be over", "not over", "no over", "not go over",
			"cannot go over", "not go above", "cannot go above", "cannot be over",
			"cannot be more than", "cannot be above", "not run over", "not run above",
			"not above", "at most", "a maximum of", "maximum of", "maximum", "max", "up to", "limited to",
			"never exceed",
			"cannot exceed", "never be more than", "no deeper than", "less than or equal to", "at or under", "at or below",
			"equal to or less than",
			"equal or less than", "nothing more than", "nothing over",
			"nothing above", "nothing greater than", "nothing longer than", "nothing wider than", "nothing taller than",
			"nothing higher than", "nothing heavier than"),
		beyond(boundsOf(config.AtMost, false, "less than", "fewer than", "smaller than")),
		boundsOf(config.AtMost, true, "within", "by", "in", "on or before"),
		beyond(boundsOf(config.AtMost, true, "under", "below", "before", "prior to", "earlier than", "sooner than")),
		beyond(boundsOf(config.AtLeast, true, "over", "above")),
		boundsOf(config.AtLeast, true, "after", "on or after", "not before", "no earlier than", "not earlier than",
			"no sooner than", "not sooner than", "from"),
	)
	trailing = slices.Concat(
		boundsOf(config.AtMost, false, "tops"),
		boundsOf(config.AtLeast, false, "or more", "or greater", "or higher", "or better", "or larger", "or above",
			"or longer", "or wider", "or over", "or bigger",
			"and above", "and up", "and over", "or thicker", "or stronger", "or up", "or deeper", "or beyond",
			"minimum", "min", "at a minimum", "at least", "or heavier", "or taller", "no less", "no smaller", "no fewer",
			"no narrower", "no shorter", "no lower", "no thinner"),
		boundsOf(config.AtMost, false, "or less", "or lower", "or under", "or shorter", "or smaller", "or fewer",
			"or below", "or narrower", "maximum", "max", "or earlier", "or sooner", "at most", "no more", "no wider",
			"no longer", "no higher", "no greater", "no larger", "no heavier", "no farther", "no deeper", "no later"),
	)
	for _, b := range slices.Clone(leading) { // "is not to be longer than"
		if len(b.words) > 2 && b.words[0] == "not" && b.words[1] == "be" {
			b.words = slices.Concat([]string{"not", "to"}, b.words[1:])
			leading = append(leading, b)
		}
	}
	byLength := func(a, b bound) int { return len(b.words) - len(a.words) }
	slices.SortStableFunc(leading, byLength)
	slices.SortStableFunc(trailing, byLength)
	for _, b := range leading {
		leadingBy[b.words[0]] = append(leadingBy[b.words[0]], b)
	}
}

// compared gives each number the comparison it stands under, and takes the words
// of comparison out.
func compared(list []Token) []Token {
	used := make([]bool, len(list))
	match := func(i int, words []string) bool {
		if i+len(words) > len(list) {
			return false
		}
		for k, w := range words {
			if used[i+k] || list[i+k].raw != w || list[i+k].Kind == Count {
				return false
			}
		}
		return true
	}
	amount := func(t *Token) bool { return t.Kind == Count || t.Kind == Day }
	for i := range list { // behind the number
		if !amount(&list[i]) {
			continue
		}
		k := i + 1
		for k < len(list) && k < i+3 && (list[k].Kind == Break && list[k].raw == "," || list[k].raw == "clear" ||
			list[k].raw == "capacity" || slices.Contains([]string{"long", "wide", "high", "tall", "deep",
			"thick"}, list[k].raw)) {
			k++
		}
		for _, b := range trailing {
			// "7,000 lb GAWR or more", "six feet of headroom, no less"
			no := b.words[0] == "no"
			for skip := k; (no || b.words[0] == "or") && skip < k+mostBetween; skip++ {
				if skip < len(list) && list[skip].raw == b.words[0] {
					if match(skip, b.words) {
						k = skip
					}
					break
				}
				if skip >= len(list) || list[skip].Kind != Word && !(no && list[skip].raw == ",") {
					break
				}
			}
			if match(k, b.words) && list[i].Num.Sense == "" && !(len(b.words) == 1 && followsAmount(list, k+1)) &&
				!(no && !endsBefore(list, k+len(b.words))) {
				list[i].Num.Sense, list[i].Num.Loose = b.sense, b.loose()
				list[i].Num.Of = dimensionWords[stem(dimensionOf[b.words[len(b.words)-1]])] // "or longer"
				for n := range b.words {
					used[k+n] = true
				}
				if e := k + len(b.words); len(b.words[len(b.words)-1]) == 3 && e < len(list) && list[e].Kind == Stop &&
					list[e].raw == "." && abbreviated(list, e) {
					used[e] = true // "min."
				}
				break
			}
		}
	}
	for i := 0; i < len(list); i++ { // before it
		for _, b := range leadingBy[list[i].raw] {
			if !match(i, b.words) {
				continue
			}
			k := i + len(b.words)
			if k < len(list) && list[k].Kind == Stop && list[k].raw == "." && len(b.words[len(b.words)-1]) == 3 {
				k++ // "min. 70 in"
			}
			begun := k
			if len(b.words) == 1 && !b.near && k < len(list) && list[k].Kind == Break {
				if n := bare(list, i); n >= 0 { // "six compartments minimum, of 65 cu. ft. in all"
					list[n].Num.Sense, list[n].Num.Loose = b.sense, b.loose()
					used[i] = true
					break
				}
			}
			for k < len(list) && !amount(&list[k]) && list[k].Kind != Stop && k < begun+9 {
				k++
			}
			if k >= len(list) || !amount(&list[k]) || list[k].Num.Sense != "" || b.near && k != begun &&
				!list[k].near(list, begun) || b.near && !b.bounds(&list[k]) {
				continue
			}
			list[k].Num.Sense, list[k].Num.Beyond = b.sense, b.more
			list[k].Num.Loose = b.loose()
			if b.sense == config.AtLeast && slices.Contains([]string{"every", "each"}, list[k-1].raw) && k > begun {
				list[k].Num.Sense, list[k].Num.Beyond = config.AtMost, false // "at least every 6 in"
			}
			if n := denied(list, i); b.more && n > 0 { // "not be in excess of"
				list[k].Num.Sense = map[config.Sense]config.Sense{config.AtLeast: config.AtMost,
					config.AtMost: config.AtLeast}[b.sense]
				list[k].Num.Beyond, used[i-n] = false, true
			}
			for n := i; n < begun; n++ {
				if d := dimensionOf[list[n].raw]; d != "" {
					list[n].raw = d // "no wider than" speaks of a width
					continue
				}
				used[n] = true
			}
			break
		}
	}
	out := list[:0]
	for i, t := range list {
		if !used[i] {
			out = append(out, t)
		}
	}
	return out
}

// bare is where the number without a unit stands that a comparison at the end of its clause speaks of; below
// zero where there is none.
func bare(list []Token, at int) int {
	for n := at - 1; n >= 0 && n >= at-mostBetween && (list[n].Kind == Word || list[n].Kind == Count); n-- {
		if list[n].Kind == Count {
			if list[n].Num.Unit == "" && list[n].Num.Sense == "" {
				return n
			}
			return -1
		}
	}
	return -1
}

// denied is how many tokens before a comparison a word stands that turns it round; 0 for
// none.
func denied(list []Token, at int) int {
	for n := 1; n <= 2 && n <= at; n++ {
		switch list[at-n].raw {
		case "not", "never", "no", "cannot":
			return n
		case "be", "ever", "cost", "weigh", "measure", "stand", "run", "extend", "reach", "sit", "go", "come", "rise", "take",
			"hold", "carry", "have", "draw", "use", "need", "to":
		default:
			return 0
		}
	}
	return 0
}

// mostBetween is how many words may stand between an amount and a comparison behind it, and between "with"
// and the "on" of "with the heater on".
const mostBetween = 4

// bounds reports whether a word that may also say where or by whom, such as "in" and
// "by", compares an amount.
func (b *bound) bounds(t *Token) bool {
	switch b.words[0] {
	case "in":
		return slices.Contains([]string{Days, Month}, t.Num.Unit)
	case "from":
		return t.Kind == Day
	case "after":
		return t.Kind == Day || t.Num.Unit == Days // "after 60 days"
	case "by", "before", "prior", "earlier", "sooner", "on":
		return t.Kind == Day || slices.Contains([]string{Days, Month}, t.Num.Unit)
	}
	return t.Kind == Day || t.Num.Unit != "" || t.Num.Value >= leastBare
}

// leastBare is the bare number from which "under" and "over" before it compare: "under 11k".
const leastBare = 1000

// between gives the ends of "between 150 and 160 in" their comparisons.
func between(list []Token) []Token {
	out := list[:0]
	for i := 0; i < len(list); i++ {
		if i+3 < len(list) && list[i].raw == "between" && list[i+1].Kind == Count && list[i+2].raw == "and" &&
			list[i+3].Kind == Count && list[i+1].Num.Value <= list[i+3].Num.Value {
			low, high := list[i+1], list[i+3]
			if low.Num.Unit == "" {
				low.Num.Unit = high.Num.Unit
				low.Num.Value *= factorOf(high)
			}
			low.Num.Sense, high.Num.Sense = config.AtLeast, config.AtMost
			out = append(out, low, high)
			i += 3
			continue
		}
		out = append(out, list[i])
	}
	return out
}

// near reports whether only an article stands between a comparison and its number.
func (t *Token) near(list []Token, from int) bool {
	for _, w := range list[from:] {
		if w.End == t.End {
			return true
		}
		if w.Kind != Word || !slices.Contains([]string{"the", "a", "an"}, w.raw) {
			return false
		}
	}
	return false
}

// followsAmount reports whether a number begins at a place: then "max" before it
// is the comparison of that one.
func followsAmount(list []Token, at int) bool {
	for at < len(list) && (list[at].Kind == Stop && list[at].raw == "." || list[at].raw == ":" ||
		list[at].raw == "of") {
		at++
	}
	return at < len(list) && list[at].Kind == Count
}

// dimensionOf is what a comparison speaks of.
var dimensionOf = map[string]string{"longer": "length", "shorter": "length", "wider": "width", "narrower": "width",
	"thinner": "thickness", "thicker": "thickness", "deeper": "depth", "shallower": "depth",
	"higher": "height",
	"taller": "height"}
