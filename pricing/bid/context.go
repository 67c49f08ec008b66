package bid

import (
	"slices"
	"strings"

	"boxwright/pricing/bid/claims"
)

// inContext reads a piece that does not say all by itself with what the line speaks of:
// "squad bench 72 in long, hinged lid", "cameras, rear and interior", "rear and interior
// cameras". What is read so has to be a figure, or of the group that the line speaks of already; two warranties
// may be of two groups.
func (v *vocabulary) inContext(all []piece, of []*claim, i int) (claim, bool) {
	anew := len(claims.Words(all[i].tokens)) > 0
	try := func(about *claim, tokens []claims.Token) (claim, bool) {
		if all := slices.Concat(about.same, about.more); len(all) == 1 {
			v.sure = all[0]
			defer func() { v.sure = "" }()
		}
		c, ok := v.claimOf(tokens)
		if !ok || slices.ContainsFunc(about.words, func(w string) bool { return sources[w] }) &&
			slices.ContainsFunc(c.numbers, func(n claims.Number) bool { return n.Each }) ||
			c.gauge != nil && slices.Contains(sizes, c.gauge.code) ||
			c.code() == factDelivery && c.day.IsZero() || // "20 weeks and 2 days"
			c.gauge == nil && about.gauge == nil && v.groupOf(&c) != v.groupOf(about) &&
				!(anew && v.warrants(&c) && v.warrants(about)) {
			return claim{}, false
		}
		return c, true
	}
	for k := i - 1; k >= 0 && (!all[k].stop || all[k].half); k-- {
		if of[k] == nil || k > 0 && of[k-1] == of[k] && !all[k-1].stop {
			continue // not where a claim begins
		}
		subject := nouns(all[k].tokens)
		whole := slices.Clone(subject)
		for n := k + 1; n < i && of[n] == of[k]; n++ {
			whole = append(whole, nouns(all[n].tokens)...)
		}
		for _, s := range [][]claims.Token{warranted(subject), subject, v.names(of[k], subject), plain(subject),
			v.names(of[k], whole),
			elsewhere(subject, all[i].tokens)} {
			if len(s) == 0 {
				continue
			}
			if c, ok := try(of[k], slices.Concat(s, all[i].tokens)); ok &&
				!(of[k].several() && c.gauge == nil && !all[i].with) &&
				!v.ofOtherSide(&c, slices.Concat(all[k].tokens, all[i].tokens)) {
				return c, true
			}
		}
		if s := v.whole(of[k], subject); s != nil {
			if c, ok := try(of[k], slices.Concat(s, all[i].tokens)); ok && c.gauge != nil {
				return c, true
			}
		}
	}
	if about, name := v.subject(all, of, i); about != nil {
		if c, ok := try(about, slices.Concat(name, all[i].tokens)); ok && c.gauge == nil && c.short == nil {
			return c, true
		}
	}
	if i+1 < len(all) && !all[i].stop && of[i+1] != nil {
		if next := nouns(all[i+1].tokens); len(next) > 0 {
			return try(of[i+1], append(slices.Clone(all[i].tokens), next[len(next)-1]))
		}
	}
	return claim{}, false
}

// ofOtherSide reports whether tokens say of one side what every thing of a claim has on the other alone.
func (v *vocabulary) ofOtherSide(c *claim, tokens []claims.Token) bool {
	words := claims.Words(tokens)
	return c.gauge == nil && !slices.ContainsFunc(slices.Concat(c.same, c.more, c.short), func(id string) bool {
		return !v.byID[id].ofOtherSide(words, sideWords)
	})
}

// subject is what the sentence of a piece begins with by a name of its own, though not all that is said of it
// there was read, and that name: the lightbar of "lightbar of some make, alley lights".
func (v *vocabulary) subject(all []piece, of []*claim, i int) (*claim, []claims.Token) {
	first := i
	for first > 0 && !all[first-1].stop {
		first--
	}
	if first == i || of[first] != nil {
		return nil, nil
	}
	tokens := all[first].tokens
	for to := range tokens {
		t := &tokens[to]
		if t.Kind != claims.Word || t.Role&claims.Located != 0 && to > 0 {
			return nil, nil
		}
		if t.Role == claims.Modifier {
			continue
		}
		var name []claims.Token
		group := ""
		for _, n := range v.titles[t.Word] {
			from := to + 1 - len(n.words)
			switch {
			case from < 0 || len(n.words) < len(name) || !slices.Equal(claims.Words(tokens[from:to+1]), n.words):
			case len(n.words) == len(name) && n.group != group:
				return nil, nil // which of two is meant cannot be told
			default:
				name, group = tokens[from:to+1], n.group
			}
		}
		if name == nil || slices.ContainsFunc(of[first:i], func(c *claim) bool { return c != nil && v.groupOf(c) != group }) {
			return nil, nil
		}
		about := &claim{}
		for k := range v.list {
			if p := &v.list[k]; p.group == group && !p.kept {
				about.same = append(about.same, p.id)
			}
		}
		return about, name
	}
	return nil, nil
}

// several reports whether a claim counts things in a figure: of "seats for five, swivel" no one seat is
// what is asked for.
func (c *claim) several() bool { return c.gauge != nil && c.gauge.unit == "" && c.want > 1 }

// whole is what is named first of words that ask for a figure: the bench of "a bench that seats three".
func (v *vocabulary) whole(c *claim, words []claims.Token) []claims.Token {
	if c.gauge == nil || len(words) < 2 || words[0].Role == claims.Modifier || v.titles[words[0].Word] == nil {
		return nil
	}
	return words[:1]
}

// nouns are the words of tokens that may be what they speak of: no dimensions.
func nouns(tokens []claims.Token) []claims.Token {
	var out []claims.Token
	for _, t := range tokens {
		if t.Kind == claims.Word && !claims.Dimension(t.Word) {
			out = append(out, t)
		}
	}
	return out
}

// elsewhere are words without those that say where, if others say another place: "5,000 lb front
// and 9,600 lb rear". None are left where they do not.
func elsewhere(list, other []claims.Token) []claims.Token {
	place := func(t claims.Token) bool { return oppositePlaces[t.Word] }
	if !slices.ContainsFunc(list, place) || !slices.ContainsFunc(other, place) {
		return nil
	}
	return slices.DeleteFunc(slices.Clone(list), place)
}

// warranted is the word of a warranty among others: of what it is, the next piece says anew.
func warranted(list []claims.Token) []claims.Token {
	return slices.DeleteFunc(slices.Clone(list), func(t claims.Token) bool { return t.Word != warrantyWord })
}

// oppositePlaces are those of which a thing stands in one.
var oppositePlaces = wordSet("front rear streetside curbside upper lower inside outside")

// plain are words without materials and colors.
func plain(list []claims.Token) []claims.Token {
	return slices.DeleteFunc(slices.Clone(list), func(t claims.Token) bool { return qualities[t.Word] })
}

// names are those of words by which the things of a claim are called.
func (v *vocabulary) names(c *claim, words []claims.Token) []claims.Token {
	named := map[string]bool{}
	if c.gauge != nil {
		for _, n := range strings.Split(c.gauge.names, "|") {
			for _, w := range stems(n) {
				named[w] = true
			}
		}
	}
	for _, id := range slices.Concat(c.same, c.more) {
		for _, n := range v.byID[id].names {
			for _, w := range n {
				named[w] = true
			}
		}
	}
	return slices.DeleteFunc(slices.Clone(words), func(t claims.Token) bool { return !named[t.Word] })
}

// groupOf is the group of what a claim asks for; empty for a figure.
func (v *vocabulary) groupOf(c *claim) string {
	for _, id := range slices.Concat(c.same, c.more, c.short) {
		return v.byID[id].group
	}
	return ""
}

// together makes one claim of those that ask for things of a group of which a unit has
// one: "cabinets of aluminum, powder coated, no wood" is one thing. Of claims on two that
// no unit has both of, the words of the second are returned as not read. The pieces of the line
// are told what became of their claims.
func (v *vocabulary) together(list []claim, pieces []told) (out []claim, apart []string) {
	became := make([]int, len(list))
	defer func() {
		for i := range pieces {
			if at := pieces[i].claim; at >= 0 {
				pieces[i].claim = became[at]
			}
		}
	}()
	for i, c := range list {
		k := slices.IndexFunc(out, func(o claim) bool {
			return c.gauge == nil && o.gauge == nil && v.rivals(&c) && v.rivals(&o) && v.groupOf(&c) == v.groupOf(&o)
		})
		switch {
		case k < 0:
			out = append(out, c)
			became[i] = len(out) - 1
		case len(v.common(&out[k], &c).same) > 0:
			out[k] = v.common(&out[k], &c)
			became[i] = k
		case slices.ContainsFunc(slices.Concat(out[k].same, out[k].more), func(id string) bool {
			return slices.Contains(c.short, id)
		}):
			out = append(out, c) // the same falls short of an amount
			became[i] = len(out) - 1
		default:
			out, apart = append(out, c), append(apart, c.words...)
			became[i] = unreadPiece
		}
	}
	return out, apart
}

// rivals reports whether a unit has just one of what a claim asks for.
func (v *vocabulary) rivals(c *claim) bool {
	group := v.groupOf(c)
	return group != "" && !slices.ContainsFunc(slices.Concat(c.same, c.more), func(id string) bool {
		return v.byID[id].beside || v.byID[id].group != group
	})
}

// common is what two claims both ask for.
func (v *vocabulary) common(a, b *claim) claim {
	out := *a
	all := slices.Concat(b.same, b.more)
	out.words, out.plain = slices.Concat(a.words, b.words), slices.Concat(a.plain, b.plain)
	out.numbers = slices.Concat(a.numbers, b.numbers)
	out.same = slices.DeleteFunc(slices.Concat(a.same, a.more), func(id string) bool {
		p := v.byID[id]
		return !slices.Contains(all, id) || !p.underCondition(out.words, out.numbers) ||
			slices.ContainsFunc(b.numbers, func(n claims.Number) bool { return n.Unit != "" && p.secondOf(a.numbers, n) })
	})
	out.also = slices.DeleteFunc(slices.Clone(a.also), func(id string) bool { return !slices.Contains(b.also, id) })
	out.more, out.short = nil, nil
	return out
}

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
var holders = wordSet("bench squad-bench seat chair seated-attendant attendant console counter countertop cabinet wall " +
	"ceiling floor door side-door rear-door cot roof hood bumper step cab compartment patient-compartment window dash " +
	"action-area bulkhead partition")

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
			v.groupOf(c) == v.groupOf(o) || len(claims.Words(all[i].tokens)) != 1 {
			continue
		}
		if slices.ContainsFunc(claims.Numbers(all[i].tokens), func(n claims.Number) bool {
			return n.Unit == "" && n.Noun() != "" && !slices.ContainsFunc(o.same, func(id string) bool {
				return !v.byID[id].countsUnlike(n)
			}) && len(o.same) > 0
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
