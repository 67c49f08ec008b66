package bid

import (
	"slices"
	"strings"

	"boxwright/pricing/bid/claims"
)

// ofUnread takes out what is claimed of something that was not read: a piece that only says where or in
// what that is, "in the color of the fleet", and a size of the vehicle of which something is left out.
func (v *vocabulary) ofUnread(all []piece, of []*claim) {
	for i := range all {
		if all[i].with && (saysState(all[i].tokens) ||
			slices.ContainsFunc(of, (*claim).measured) && saysParted(all[i].tokens)) {
			for k, c := range of {
				if c != nil && c.inState(all[i].tokens) {
					continue
				}
				if c != nil && (k == i || c.gauge != nil && !stopBetween(all, min(i, k), max(i, k))) {
					takeOut(of, c)
				}
			}
		}
		for k, c := range of {
			if c != nil && c.gauge != nil && !stopBetween(all, min(i, k), max(i, k)) &&
				(all[i].with && c.gauge.code == payload && manned(all[i].tokens) ||
					c.gauge.code == everySeat && inModule(all[i].tokens, of[i]) ||
					of[i] != nil && of[i].gauge == nil && c.unmeasured(all[i].tokens)) {
				takeOut(of, c)
			}
		}
		if c := of[i]; c != nil {
			if i > 0 && of[i-1] == nil && !all[i-1].stop && v.warrants(c) && len(claims.Words(all[i].tokens)) == 0 {
				takeOut(of, c) // of "engine warranty: 5 years" the five years are of no other warranty
				continue
			}
			if i > 0 && of[i-1] == nil && all[i].opens && c.gauge != nil && saysPlace(all[i-1].tokens) {
				takeOut(of, c) // "streetside cabinets: 28 cu ft" is not the volume of all
				continue
			}
			if i > 0 && of[i-1] == nil && !all[i-1].stop && c.gauge == nil && saysWhereOnly(all[i].tokens) &&
				!slices.ContainsFunc(of[:i], func(o *claim) bool { return o != nil && v.groupOf(o) == v.groupOf(c) }) {
				takeOut(of, c)
			}
			continue
		}
		if k := i - 1; k >= 0 && !all[k].stop && of[k] != nil && v.putElsewhere(of[k], all[i].tokens) {
			takeOut(of, of[k])
		}
		out, how := len(claims.LeftOut(all[i].tokens)) > 0, saysMeasured(all[i].tokens)
		for k, c := range of {
			if c != nil && c.gauge != nil && (how || out && len(leftOut[c.gauge.code])+len(countedIn[c.gauge.code]) > 0) &&
				!stopBetween(all, min(i, k), max(i, k)) {
				takeOut(of, c)
			}
		}
	}
}

// forAnother takes out what is claimed for a thing named before it, "one charger for it", where not all of that
// was read, or it was read as another thing.
func (v *vocabulary) forAnother(text string, all []piece, of []*claim) {
	for i, c := range of {
		to := len(text)
		if i+1 < len(all) {
			to = all[i+1].from
		}
		said := strings.TrimRight(strings.ToLower(text[all[i].from:to]), " ,;.")
		if c == nil || !strings.HasSuffix(said, " for it") && !strings.HasSuffix(said, " for them") {
			continue
		}
		for k := i - 1; k >= 0 && !all[k].stop; k-- {
			if of[k] == nil || v.groupOf(of[k]) != v.groupOf(c) {
				takeOut(of, c)
			}
		}
	}
}

// ofHead takes out what is claimed of a further thing where what stands before a colon names a thing that
// has just that: "Stretcher: battery powered; 1 charger" asks for no charger of the batteries of the chassis.
func (v *vocabulary) ofHead(all []piece, of []*claim) {
	if len(all) < 2 {
		return
	}
	if v.ofHolder(all, of); !all[1].opens {
		return
	}
	var groups []string
	for _, w := range claims.Words(all[0].tokens) {
		for _, t := range v.titles[w] {
			if len(t.words) == 1 {
				groups = append(groups, t.group)
			}
		}
	}
	for i, c := range of {
		if i == 0 || c == nil || c.gauge != nil || slices.Contains(groups, v.groupOf(c)) ||
			of[0] != nil && v.groupOf(of[0]) == v.groupOf(c) {
			continue
		}
		words := claims.Words(all[i].tokens)
		if len(words) > 0 && slices.ContainsFunc(v.having(words, false, v.every), func(place int) bool {
			return slices.Contains(groups, v.list[place].group)
		}) {
			takeOut(of, c)
		}
	}
}

// ofHolder takes out the claim behind a place that is named alone where it is on a thing that stands there too,
// but of elsewhere: "Rear doors, sliding windows" asks for no window of the side entry door.
func (v *vocabulary) ofHolder(all []piece, of []*claim) {
	c := of[1]
	if len(all) != 2 || c == nil || c.gauge != nil || c == of[0] || len(all[0].tokens) > 1 || !atHolder(all[0].tokens) {
		return
	}
	holder, words := claims.Words(all[0].tokens), claims.Words(all[1].tokens)
	if len(words) == 0 {
		return
	}
	there := v.having(append(holder, words[len(words)-1]), false, v.every)
	if len(there) > 0 && !slices.ContainsFunc(there, func(i int) bool { return v.list[i].group == v.groupOf(c) }) {
		takeOut(of, c)
	}
}

// ofBench has seats that a sentence on nothing but a bench counts be those of the bench: "squad bench, 72 x 22 in,
// seats five".
func (v *vocabulary) ofBench(all []piece, of []*claim) {
	for i, c := range of {
		if c == nil || c.code() != everySeat {
			continue
		}
		first := i
		for first > 0 && !all[first-1].stop {
			first--
		}
		subject := nouns(all[first].tokens)
		if len(subject) == 0 || subject[len(subject)-1].Word != benchWord ||
			slices.ContainsFunc(all[first:i], func(p piece) bool { return slices.Contains(claims.Words(p.tokens), seatWord) }) ||
			slices.ContainsFunc(of[first:i], func(o *claim) bool {
				return o == nil || o.gauge != nil || v.groupOf(o) != v.groupOf(of[first])
			}) {
			continue
		}
		takeOut(of, c)
		if own, ok := v.claimOf(slices.Concat(subject, all[i].tokens)); ok && own.code() == countBench {
			of[i] = kept(own)
		}
	}
}

// ofCounted takes out what counts, behind a thing and in its sentence, what that has another number of: of "one
// charger and three batteries" of a cot the batteries are not those of the vehicle.
func (v *vocabulary) ofCounted(all []piece, of []*claim) {
	for i := 1; i < len(all); i++ {
		c, o := of[i], of[i-1]
		if c == nil || o == nil || c == o || c.gauge != nil || o.gauge != nil || all[i-1].stop ||
			v.groupOf(c) == v.groupOf(o) || len(o.same) == 0 || len(claims.Words(all[i].tokens)) != 1 {
			continue
		}
		if slices.ContainsFunc(claims.Numbers(all[i].tokens), func(n claims.Number) bool {
			return n.Unit == "" && n.Noun() != "" && !slices.ContainsFunc(o.same, func(id string) bool {
				return !v.byID[id].countsUnlike(n)
			})
		}) {
			takeOut(of, c)
		}
	}
}

// countsUnlike reports whether a thing says of just what a number counts that it has another number of it.
func (p *profile) countsUnlike(n claims.Number) bool {
	of := func(x claims.Number) bool { return x.Unit == "" && x.Noun() == n.Noun() }
	return slices.ContainsFunc(p.numbers, of) &&
		!slices.ContainsFunc(p.numbers, func(x claims.Number) bool { return of(x) && x.Value == n.Value })
}

var benchWord = stems("squad bench")[0]

// saysState reports whether a piece says in what state something is when a figure is taken, "with the air
// conditioning off" or "with the springs deflated".
func saysState(tokens []claims.Token) bool { return states[tokens[len(tokens)-1].Word] }

// saysParted reports whether a piece says that something is not where it is otherwise, "with the panels removed".
func saysParted(tokens []claims.Token) bool { return parted[tokens[len(tokens)-1].Word] }

var parted = wordSet("removed lowered tilted")

// measured reports whether a claim is on a figure.
func (c *claim) measured() bool { return c != nil && c.gauge != nil }

// inState reports whether a figure is that of the state that tokens end with: the floor height "with the vehicle
// loaded".
func (c *claim) inState(tokens []claims.Token) bool {
	return c.gauge != nil && slices.Contains(stems(c.gauge.label), tokens[len(tokens)-1].Word)
}

// manned reports whether a piece says that people are aboard.
func manned(tokens []claims.Token) bool {
	return slices.ContainsFunc(tokens, func(t claims.Token) bool { return aboard[t.Word] })
}

// inModule reports whether a piece that counts nothing says that what stands before it is in the module, "six
// seats with lap belts in the patient compartment".
func inModule(tokens []claims.Token, c *claim) bool {
	return (c == nil || c.gauge == nil) && slices.ContainsFunc(tokens, func(t claims.Token) bool {
		return t.Role&claims.Located != 0 && modules[t.Word]
	})
}

// unmeasured reports whether tokens name what a size of the vehicle leaves out, in a state of its own: the
// width with "mirrors folded".
func (c *claim) unmeasured(tokens []claims.Token) bool {
	less := leftOut[c.gauge.code]
	return slices.ContainsFunc(tokens, func(t claims.Token) bool { return less[t.Word] }) &&
		slices.ContainsFunc(tokens, func(t claims.Token) bool { return states[t.Word] })
}

// modules are the names of the room behind the cab, and everySeat is the figure that counts the cab's too.
var modules = wordSet("patient-compartment module rear back")

const everySeat = "space.seats"

// states are the words of a state, aboard those of people, and payload is the figure that leaves them out.
var (
	states = wordSet("off dumped deflated inflated deployed retracted stowed engaged running loaded unloaded turned " +
		"occupied folded extended raised seated")
	aboard = wordSet("crew occupant driver patient passenger")
)

const payload = "weight.payload"

// saysMeasured reports whether a piece says how what stands before it is measured, "measured with the
// suspension at ride height".
func saysMeasured(tokens []claims.Token) bool {
	return tokens[0].Word == measuredWord && tokens[0].Done
}

var measuredWord = stems("measured")[0]

// saysPlace reports whether tokens name a side or an end of the unit.
func saysPlace(tokens []claims.Token) bool {
	return slices.ContainsFunc(tokens, func(t claims.Token) bool { return oppositePlaces[t.Word] })
}

// putElsewhere reports whether a piece that was not read puts what a claim asks for where none of the
// things has it: a "flip-down step, beneath the side door" is not the one at the rear.
func (v *vocabulary) putElsewhere(c *claim, tokens []claims.Token) bool {
	if c.gauge != nil || tokens[0].Role&claims.Located == 0 && !beside[tokens[0].Word] {
		return false
	}
	return slices.ContainsFunc(tokens, func(t claims.Token) bool {
		return (oppositePlaces[t.Word] || insides[t.Word] || entries[t.Word]) && !slices.ContainsFunc(
			slices.Concat(c.same, c.more), func(id string) bool { return v.byID[id].words[t.Word] })
	})
}

// beside are words that say where something is by what stands behind them.
var beside = wordSet("under over behind beside ahead between")

// entries are the doors that things are at.
var entries = wordSet("side-door rear-door")

// narrowed leaves of the things that the claims of a sentence on one group may mean those that all of them
// are true of: "USB ports, two, above the bench, flush" are the ports above the bench.
func (v *vocabulary) narrowed(all []piece, of []*claim) {
	for from := 0; from < len(all); {
		to := from + 1
		for to < len(all) && !all[to-1].stop {
			to++
		}
		for i := from; i < to; i++ {
			if of[i] != nil && of[i].gauge == nil && !slices.Contains(of[from:i], of[i]) {
				v.narrow(of[i:to])
			}
		}
		from = to
	}
}

// narrow does so for the first of some claims and those of its group behind it.
func (v *vocabulary) narrow(of []*claim) {
	group := v.groupOf(of[0])
	if group == "" || v.rivals(of[0]) {
		return
	}
	common := slices.Concat(of[0].same, of[0].more)
	var some []*claim
	for _, c := range of {
		if c != nil && c.gauge == nil && c.short == nil && v.groupOf(c) == group && !slices.Contains(some, c) {
			some = append(some, c)
			ids := slices.Concat(c.same, c.more)
			common = slices.DeleteFunc(common, func(id string) bool { return !slices.Contains(ids, id) })
		}
	}
	if len(common) == 0 || len(some) < 2 {
		return
	}
	for _, c := range some {
		other := func(id string) bool { return !slices.Contains(common, id) }
		c.same, c.more = slices.DeleteFunc(c.same, other), slices.DeleteFunc(c.more, other)
	}
}

// saysWhereOnly reports whether all that tokens name stands behind a word such as "in" or "of".
func saysWhereOnly(tokens []claims.Token) bool {
	return !slices.ContainsFunc(tokens, func(t claims.Token) bool {
		return t.Kind != claims.Word || t.Role&(claims.Located|claims.Modifier) == 0
	})
}

// saysHow reports whether a piece only says what is done with something named before, and where.
func saysHow(tokens []claims.Token) bool {
	first := slices.IndexFunc(tokens, func(t claims.Token) bool { return t.Kind == claims.Word })
	return first >= 0 && tokens[first].Done && !slices.ContainsFunc(tokens[first+1:], func(t claims.Token) bool {
		return t.Kind == claims.Count || t.Kind == claims.Word && !t.Done && t.Role != claims.Modifier &&
			t.Role&(claims.Located|claims.Inside) != claims.Located
	})
}

func takeOut(of []*claim, c *claim) {
	for k := range of {
		if of[k] == c {
			of[k] = nil
		}
	}
}

func stopBetween(all []piece, from, to int) bool {
	return slices.ContainsFunc(all[from:to], func(p piece) bool { return p.stop })
}

// warrants reports whether a claim asks for a warranty.
func (v *vocabulary) warrants(c *claim) bool {
	list := slices.Concat(c.same, c.more, c.short)
	return len(list) > 0 && !slices.ContainsFunc(list, func(id string) bool { return !v.byID[id].core[warrantyWord] })
}

var warrantyWord = stems("warranty")[0]

// partOf reports whether what a claim asks for is said to be part of something that words name.
func (v *vocabulary) partOf(c *claim, nouns []string) bool {
	return slices.ContainsFunc(nouns, func(w string) bool {
		if roomPlaces[w] || qualities[w] || quiet[w] || anyThing[w] {
			return false
		}
		if c.gauge != nil {
			return slices.Contains(stems(strings.ReplaceAll(c.gauge.names, "|", " ")+" "+c.gauge.also), w)
		}
		return slices.ContainsFunc(slices.Concat(c.same, c.more, c.short), func(id string) bool {
			return v.byID[id].words[w] && !v.byID[id].ofGroupNamed(w) // one outlet is no part of another
		})
	})
}

// partElsewhere leaves of the things that a claim asks for as part of another those that are at the places that this is
// named by, and reports whether none is: the window of a "side entry door" is not one of the rear.
func (v *vocabulary) partElsewhere(c, whole *claim, where []string) bool {
	if c.gauge != nil || v.groupOf(c) == v.groupOf(whole) {
		return false
	}
	away := func(id string) bool {
		return slices.ContainsFunc(where, func(w string) bool { return !v.byID[id].words[w] })
	}
	c.same, c.more = slices.DeleteFunc(c.same, away), slices.DeleteFunc(c.more, away)
	return len(where) > 0 && len(c.same)+len(c.more) == 0
}

var actionArea = stems("action area")[0]

// anyThing are words that may be said of anything.
var anyThing = wordSet("each all two led light power side inside outside patient-compartment module high low manual " +
	"automatic adjustable locking electric size number type set")
