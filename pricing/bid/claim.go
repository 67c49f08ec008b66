package bid

import (
	"slices"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/bid/claims"
)

// claim is one thing that a line asks for: an amount of a figure, or something the
// catalogue offers.
type claim struct {
	gauge  *gauge
	want   float64
	sense  config.Sense
	most   float64 // of a range, that begins at want; 0 of none
	stated bool    // the line says how the amount binds
	beyond bool    // the amount itself does not do: "more than"
	whole  bool    // the figure is of more than the line speaks of: of the oxygen, not what is usable of it
	unit   string  // of a time of delivery
	day    config.Date

	same  []string      // what is offered just so, the likeliest first
	more  []string      // what is offered and exceeds it
	also  []string      // what else is offered of which all is true, under another name
	maybe []string      // what may have what is asked for, though that cannot be told
	short []string      // what is offered and falls short of it by an amount
	by    claims.Number // the amount that they fall short of
	// silent is what else is offered of which all is true but the amount, and that says nothing of it
	silent []string
	qty    int // asked for; 0 when not said

	tokens  []claims.Token // that a claim on things was read from
	words   []string
	plain   []string // those that say no trait
	numbers []claims.Number
	room    *roomAsk    // of the size of compartments
	outlets *outletKind // of a number of outlets
}

// claimOf reads tokens as one claim; false when a word or an amount of them is not
// accounted for.
func (v *vocabulary) claimOf(tokens []claims.Token) (claim, bool) {
	if c, ok := v.plainClaim(tokens); ok && !v.halfRuledOut(&c, tokens) {
		return c, true
	}
	if claims.Ruled(tokens) { // "no a or b": neither will do
		both := slices.DeleteFunc(slices.Clone(tokens), func(t claims.Token) bool { return t.Kind == claims.Or })
		c, ok := v.plainClaim(both)
		return c, ok && !v.halfRuledOut(&c, tokens)
	}
	for i, t := range tokens { // "a or b": either will do
		if t.Kind != claims.Or || i > 0 && settings[tokens[i-1].Word] {
			continue // whoever names two places may mean both
		}
		for _, drop := range [][2]int{{i, i + 2}, {i - 1, i + 1}} {
			if drop[0] < 0 || drop[1] > len(tokens) {
				continue
			}
			if c, ok := v.plainClaim(slices.Delete(slices.Clone(tokens), drop[0], drop[1])); ok {
				return c, true
			}
		}
	}
	return claim{}, false
}

// settings are the places that a thing may be set to.
var settings = wordSet("center middle streetside curbside")

// namedBy reports whether words hold a whole name of a thing.
func (p *profile) namedBy(words []string) bool {
	return slices.ContainsFunc(p.names, func(n []string) bool {
		return !slices.ContainsFunc(n, func(w string) bool { return !slices.Contains(words, w) })
	})
}

// plainClaim reads tokens as they stand or, where that tells nothing, without what only leads to other words.
func (v *vocabulary) plainClaim(tokens []claims.Token) (claim, bool) {
	c, ok := v.literally(tokens)
	if plainer, can := claims.Plainer(tokens); !ok && can {
		return v.literally(plainer)
	}
	return c, ok
}

func (v *vocabulary) literally(tokens []claims.Token) (claim, bool) {
	if onlyWhere(tokens) {
		return claim{}, false
	}
	words, list := wordsAndNumbers(tokens)
	not := claims.Ruled(tokens)
	day, dated := claims.DayOf(tokens)
	if !slices.ContainsFunc(words, func(w string) bool { return w != completeWord }) {
		return alone(list)
	}
	has := slices.Clone(words)
	for _, n := range list {
		if n.Of != "" {
			has = append(has, dimensionStem[n.Of])
		}
	}
	for _, i := range gaugesOf(words) {
		g := &readyGauges[i]
		if not && g.code != ratioScene {
			continue
		}
		if c, ok := g.asks(tokens, words, list, day, has); ok {
			return c, true
		}
	}
	if dated {
		return claim{}, false
	}
	if c, ok := roomClaim(words, list); ok && !not {
		return c, true
	}
	if spareGeneration(words) || powersEach(tokens, list) {
		return claim{}, false
	}
	if c, ok := v.offered(tokens, has); ok {
		if c.short != nil && c.by.Unit == "" { // there are more of it elsewhere
			if o, ok := outletClaim(words, list); ok {
				return o, ok
			}
		}
		return c, ok
	}
	if not {
		return v.without(words, list, tokens)
	}
	if slices.ContainsFunc(words, func(w string) bool { return harder[w] || lessens[w] }) {
		c, ok := v.plainClaim(slices.DeleteFunc(slices.Clone(tokens), func(t claims.Token) bool {
			return t.Kind == claims.Word && (harder[t.Word] || lessens[t.Word])
		}))
		if ok && c.short != nil { // without them it falls short, and all the more with them
			c.tokens = nil
			return c, true
		}
		if ok && c.gauge != nil && c.sense == atLeast && c.most == 0 &&
			!slices.ContainsFunc(words, func(w string) bool { return harder[w] }) {
			c.whole = true
			return c, true
		}
	}
	return outletClaim(words, list)
}

// spareGeneration reports whether words ask what the alternator has left, which none tells of itself.
func spareGeneration(words []string) bool {
	return slices.ContainsFunc(words, func(w string) bool { return generators[w] }) &&
		slices.ContainsFunc(words, func(w string) bool { return leaving[w] })
}

var generators, leaving = wordSet("generating alternator"), wordSet("remain remaining reserve spare")

// powersEach reports whether each of several is to have a current or a power, "1,000 W to each receptacle".
func powersEach(tokens []claims.Token, list []claims.Number) bool {
	at := slices.IndexFunc(tokens, func(t claims.Token) bool { return t.Word == everyWord })
	source := slices.ContainsFunc(tokens, func(t claims.Token) bool { return sources[t.Word] })
	return (source || at >= 0 && at+1 < len(tokens) && tokens[at+1].Role&claims.Located != 0) &&
		slices.ContainsFunc(list, func(n claims.Number) bool {
			return (!source || n.Each || at >= 0) && (n.Unit == quantity.Amp || n.Unit == quantity.Watt)
		})
}

// sources are things that feed several others together.
var sources = wordSet("inverter charger")

// onlyWhere reports whether tokens only say where something named before is: "one above the squad bench"
// asks for no bench.
func onlyWhere(tokens []claims.Token) bool {
	where := false
	for _, t := range tokens {
		switch {
		case t.Kind == claims.Count && t.Num.Unit == "",
			t.Kind == claims.Word && (t.Role == claims.Modifier || placing[t.Word]):
		case t.Kind == claims.Word && t.Role&(claims.Located|claims.Companion) == claims.Located:
			where = true
		default:
			return false
		}
	}
	return where
}

// placing are words behind which stands where something is.
var placing = wordSet("over above under below beneath beside behind near")

// harder are words that make what is asked for harder to reach, whatever it is.
var harder = wordSet("unlimited mileage unconditional non-prorated each every")

// lessens are words for a part of what a figure is of: none is more than the whole.
var lessens = wordSet("usable net")

// wordsAndNumbers are those of tokens, less words that only compare an amount with what a
// purchaser has.
func wordsAndNumbers(tokens []claims.Token) ([]string, []claims.Number) {
	words, list := claims.Words(tokens), claims.Numbers(tokens)
	if slices.ContainsFunc(list, func(n claims.Number) bool { return n.Unit != "" }) {
		words = slices.DeleteFunc(words, func(w string) bool { return greater[w] && len(words) > 1 })
	}
	return words, list
}

// completeWord may stand beside the price of the whole: "under $270k complete".
var completeWord = stems("complete")[0]

// greater are words of comparison with what a purchaser has, which an amount beside them
// says better: "bigger alternator, 320 A".
var greater = wordSet("big bigger large larger heavier strong stronger upgraded")

// measures are words without those that only say of what dimension an amount is.
func measures(words []string, list []claims.Number) []string {
	out := slices.DeleteFunc(slices.Clone(words), func(w string) bool {
		of := claims.DimensionOf(w)
		return of != "" && slices.ContainsFunc(list, func(n claims.Number) bool { return n.Of == of })
	})
	if len(out) == 0 {
		return words
	}
	return out
}

// code is that of the figure that a claim is on; empty of none.
func (c *claim) code() string {
	if c.gauge == nil {
		return ""
	}
	return c.gauge.code
}
