package bid

import (
	"slices"

	"boxwright/pricing/bid/claims"
)

// vacuous takes out the claims behind another of the same sentence that hold just the name of
// something that each unit has one of: in "oxygen outlet: ceiling" no ceiling is asked for.
func (v *vocabulary) vacuous(all []piece, of []*claim) {
	first := 0 // piece of the sentence
	for i := 1; i < len(of); i++ {
		if all[i-1].stop {
			first = i
		}
		c, n := of[i], 1
		for i+n < len(of) && of[i+n] == c {
			n++
		}
		if c == nil || of[i-1] == c || all[i-1].stop || len(c.words) > n && !v.justNamed(c) && !onlyPlaces(c.words) ||
			len(c.numbers) > 0 && !oneAt(c, all[i].tokens) ||
			c.gauge != nil ||
			len(claims.Words(all[first].tokens)) == 1 && !holders[c.words[len(c.words)-1]] || !v.rivals(c) ||
			listed(all[first:i+1], v.ownNamed(c)) || all[i].with && of[i-1] != nil &&
			slices.Contains(seatCounts, of[i-1].code()) {
			continue
		}
		takeOut(of, c)
	}
}

// seatCounts are the figures that count seats, which come with what is on every one of them.
var seatCounts = []string{everySeat, countBench, countModule}

// onlyPlaces reports whether words only say where something is: "outside compartment".
func onlyPlaces(words []string) bool {
	return !slices.ContainsFunc(words, func(w string) bool { return !oppositePlaces[w] && !holders[w] })
}

// oneAt reports whether a piece says where one of several is: "one of them at the bench".
func oneAt(c *claim, tokens []claims.Token) bool {
	return len(c.numbers) == 1 && c.numbers[0].Unit == "" && c.numbers[0].Value == 1 &&
		tokens[len(tokens)-1].Role&claims.Located != 0
}

// listed reports whether the last piece of a sentence is one of a list of things, "mud flaps and running
// boards": it has a name of several words, and nothing before it says where something is.
func listed(list []piece, own bool) bool {
	last := list[len(list)-1]
	if last.with || last.opens || last.to-last.from < leastListed || !own && atHolder(last.tokens) &&
		!atHolder(list[0].tokens) {
		return false
	}
	return !slices.ContainsFunc(list, func(p piece) bool {
		return slices.ContainsFunc(p.tokens, func(t claims.Token) bool {
			return t.Kind == claims.Count || t.Kind == claims.Word && t.Role&claims.Located != 0
		})
	})
}

// justNamed reports whether a claim holds nothing but the name of a thing, and ownNamed whether that is
// one that it does not share with its group.
func (v *vocabulary) justNamed(c *claim) bool {
	return slices.ContainsFunc(c.same, func(id string) bool { return c.isName(v.byID[id].names) })
}

func (v *vocabulary) ownNamed(c *claim) bool {
	return len(c.words) > 1 && slices.ContainsFunc(c.same, func(id string) bool { return c.isName(v.byID[id].own) })
}

func (c *claim) isName(names [][]string) bool {
	words := slices.DeleteFunc(slices.Clone(c.words), func(w string) bool { return w == everyWord })
	return slices.ContainsFunc(names, func(n []string) bool {
		return len(n) == len(words) && !slices.ContainsFunc(n, func(w string) bool { return !slices.Contains(c.words, w) })
	})
}

// atHolder reports whether tokens end with something at which others are.
func atHolder(tokens []claims.Token) bool {
	words := claims.Words(tokens)
	return len(words) > 0 && holders[words[len(words)-1]]
}

// holders are what other things are at.
var holders = wordSet("bench squad-bench seat chair seated-attendant attendant console counter countertop cabinet " +
	"wall ceiling floor door side-door rear-door cot roof hood bumper step cab compartment patient-compartment " +
	"window dash action-area bulkhead partition")

// leastListed is how long, in letters, a piece of a list of things is at least.
const leastListed = 11

// attached takes out the claims on things that a line asks for as part of another and that
// nothing says to be part of it: a "bench with a 12 V outlet" is not had by an outlet
// somewhere else.
func (v *vocabulary) attached(all []piece, of []*claim) {
	var whole *claim // of which parts are named
	lost := false    // it was not read
	clause := false  // they are named in a clause on it
	var nouns, where []string
	for i := range all {
		if i == 0 || all[i-1].stop {
			whole, nouns, where = nil, nil, nil
			lost = false
		}
		if clause && all[i].apart {
			whole, nouns, where, clause = nil, nil, nil, false // the clause has ended
		}
		if all[i].with && i > 0 && of[i-1] == nil && whole == nil && !all[i-1].stop {
			lost = true
		}
		if c := of[i]; lost && c != nil && c.gauge == nil {
			takeOut(of, c) // what it is part of was not read
		}
		if i+1 < len(all) && !all[i+1].adds {
			lost = false
		}
		if all[i].with && whole == nil && i > 0 && of[i-1] != nil && v.groupOf(of[i-1]) != "" {
			whole, clause = of[i-1], all[i].clause
			for k := i - 1; k >= 0 && of[k] == whole; k-- {
				for _, t := range all[k].tokens { // what loads are to a "load manager" tells nothing of it
					if t.Kind == claims.Word && t.Role != claims.Modifier {
						nouns = append(nouns, t.Word)
					}
					if entries[t.Word] || t.Word == actionArea {
						where = append(where, t.Word)
					}
				}
			}
		}
		if c := of[i]; c != nil && c.short != nil && all[i].with && i > 0 && of[i-1] != nil && of[i-1].gauge != nil {
			takeOut(of, c) // "compartments with five doors" are not those of the rear
		}
		if c := of[i]; whole != nil && c != nil && c != whole && (!v.partOf(c, nouns) || v.partElsewhere(c, whole, where)) &&
			!(c.short == nil && v.rivals(c) && len(v.common(whole, c).same) > 0) {
			takeOut(of, c)
		}
	}
	v.everyOne(all, of)
	for i, c := range of { // "AGM batteries, 24 month warranty": theirs, not the conversion's
		if c == nil || !v.warrants(c) {
			continue
		}
		for k, o := range of {
			if o != nil && !v.warrants(o) && o.gauge == nil && !stopBetween(all, min(i, k), max(i, k)) {
				takeOut(of, c)
				break
			}
		}
	}
}

// everyOne takes out the claims on what every one of several kinds of things is to have, where it comes with
// some of them: "every seat has a belt and a headrest" asks for more than one on the bench.
func (v *vocabulary) everyOne(all []piece, of []*claim) {
	var kind string // of which each is to have what follows
	for i, p := range all {
		if i == 0 || all[i-1].stop {
			kind = ""
		}
		if len(p.tokens) > 1 && p.tokens[0].Word == everyWord && severalKinds[p.tokens[1].Word] {
			kind = p.tokens[1].Word
			continue
		}
		if c := of[i]; kind != "" && c != nil && c.gauge == nil && c != of[i-1] && !slices.ContainsFunc(
			slices.Concat(c.same, c.more), func(id string) bool { return v.byID[id].everyOf[kind] }) {
			takeOut(of, c)
		}
	}
}

// itsOwn reads a piece as part of what the sentence speaks of, where that has what the piece asks
// for itself: the "gas hold-open" of hinged doors that come with one is no addition to them.
func (v *vocabulary) itsOwn(all []piece, of []*claim) {
	for i := 1; i < len(of); i++ {
		c := of[i]
		if c != nil && c.gauge == nil && c != of[i-1] && !all[i-1].stop &&
			(saysHow(all[i].tokens) || v.onlyAt(c, all[i].tokens)) &&
			!slices.ContainsFunc(of[:i], func(o *claim) bool { return o != nil && v.groupOf(o) == v.groupOf(c) }) {
			takeOut(of, c) // "controlled at the console" asks for no console
			continue
		}
		if c != nil && c.code() == insideStorage && !all[i-1].stop &&
			of[i-1] != nil && of[i-1].gauge == nil {
			first := slices.Index(of, of[i-1]) // "street-side cabinets: 28 cu. ft. of storage" are these alone
			if own, ok := v.claimOf(joined(all[first : i+1])); ok && own.gauge == nil {
				for k := first; k <= i; k++ {
					of[k] = &own
				}
			}
			continue
		}
		if own, ok := v.ofSentenceBefore(all, of, i); ok {
			for k := i; k < len(of) && of[k] == c; k++ {
				of[k] = &own
			}
			continue
		}
		if c == nil || c == of[i-1] || i+1 < len(of) && of[i+1] == c || c.gauge != nil || all[i-1].stop {
			continue
		}
		if own, ok := v.inContext(all, of, i); ok && v.groupOf(&own) != v.groupOf(c) {
			of[i] = &own
		}
	}
}

// onlyAt reports whether tokens name the things of a claim only as what something else is at or done by: in "the
// curbside pair lit by opening the side door" no such door is asked for.
func (v *vocabulary) onlyAt(c *claim, tokens []claims.Token) bool {
	elsewhere := func(w string) bool { // it is named otherwise than as a place
		return !slices.ContainsFunc(tokens, func(t claims.Token) bool {
			return t.Word == w && t.Role&(claims.Located|claims.Companion|claims.Inside) == claims.Located
		})
	}
	named := false
	for _, id := range slices.Concat(c.same, c.more) {
		for _, n := range v.byID[id].names {
			if slices.ContainsFunc(n, func(w string) bool { return !slices.Contains(claims.Words(tokens), w) }) {
				continue
			}
			if slices.ContainsFunc(n, elsewhere) {
				return false
			}
			named = true
		}
	}
	return named
}

// insideStorage is the figure of all that is stored inside.
const insideStorage = "space.storage"

// ofSentenceBefore reads what begins a sentence as said of the one thing that the sentence before speaks
// of, where that has what else would be an addition: "Tall cabinet by the bulkhead. Four adjustable shelves."
func (v *vocabulary) ofSentenceBefore(all []piece, of []*claim, i int) (claim, bool) {
	c, about := of[i], of[i-1]
	if c == nil || about == nil || c == about || !all[i-1].stop || c.gauge != nil || len(c.same)+len(c.more) == 0 ||
		!v.rivals(about) || slices.ContainsFunc(slices.Concat(c.same, c.more), func(id string) bool {
		return !v.byID[id].beside
	}) {
		return claim{}, false
	}
	first, last := slices.Index(of, about), i
	for last+1 < len(of) && of[last+1] == c {
		last++
	}
	own, ok := v.claimOf(slices.Concat(nouns(all[first].tokens), joined(all[i:last+1])))
	return own, ok && v.groupOf(&own) == v.groupOf(about) && len(v.common(about, &own).same) > 0
}
