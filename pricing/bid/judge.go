package bid

import (
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/pricing/bid/claims"
	"boxwright/pricing/quote"
)

// part is the answer to one claim.
type part struct {
	outcome quote.Outcome
	read    string
	offered string
	nearest string
	where   string
	take    Take
}

// rank of outcomes, the worst first.
var rank = map[quote.Outcome]int{quote.Excepted: 0, quote.Unanswered: 1, quote.MeetsWith: 2, quote.Meets: 3}

func worse(a, b quote.Outcome) quote.Outcome {
	if rank[a] < rank[b] {
		return a
	}
	return b
}

// judge answers what was read. Where part of the line was not read, only an exception is an answer, one in a
// sentence of its own or one to what the line speaks of first (fallsShort): nothing else is known of the whole.
func (j *judge) judge(a *Answer, read *reading) {
	var parts []part
	outcomes, as := make([]quote.Outcome, len(read.claims)), make([]string, len(read.claims))
	for i := range read.claims {
		c := &read.claims[i]
		if c.gauge != nil && c.most > 0 { // a range
			from, to := *c, *c
			to.want, to.sense = c.most, atMost
			p, q := j.figure(&from), j.figure(&to)
			outcomes[i], as[i] = worse(p.outcome, q.outcome), p.read+"; "+q.read
			parts = append(parts, p, q)
			continue
		}
		p := j.claim(c)
		if p.outcome == quote.Excepted && ((read.sums || j.v.ofOne(c)) && j.v.sumReaches(c) ||
			read.sums && c.code() == insideStorage) {
			p.outcome = quote.Unanswered // together they may have it
		}
		if read.sums && p.outcome == quote.Meets && j.sided(c) {
			p.outcome = quote.Unanswered // "two in all" are not two on each side
		}
		if read.chooses && p.outcome == quote.Excepted && c.gauge != nil &&
			slices.ContainsFunc(read.claims[:i], func(o claim) bool {
				return o.gauge == c.gauge
			}) {
			p.outcome = quote.Unanswered // "5,000 lb minimum, 6,000 preferred"
		}
		if read.chooses && p.outcome == quote.MeetsWith && c.twoAmounts() {
			p.outcome = quote.Unanswered // "150 A required, 300 A desired"
		}
		outcomes[i], as[i] = p.outcome, p.read
		parts = append(parts, p)
	}
	for i := range read.claims {
		if c := &read.claims[i]; outcomes[i] == quote.Meets && !j.keeps(c, parts) {
			outcomes[i] = quote.Unanswered
			parts = append(parts, part{outcome: quote.Unanswered, read: as[i]})
		}
	}
	a.Pieces = nil
	for _, p := range read.pieces {
		piece := Piece{Text: p.text, Claim: p.claim, Read: p.claim != unreadPiece}
		switch {
		case p.claim >= 0:
			piece.Outcome, piece.As = outcomes[p.claim], as[p.claim]
		case p.claim == asksNothing:
			piece.Outcome = quote.Meets
		}
		a.Pieces = append(a.Pieces, piece)
	}
	if len(read.unread) > 0 {
		excepted := read.apart && slices.ContainsFunc(parts, func(p part) bool { return p.outcome == quote.Excepted }) ||
			read.fallsShort(outcomes)
		for _, p := range parts {
			a.Read = append(a.Read, p.read)
		}
		if !excepted {
			return
		}
	}
	j.worst(a, parts)
	if read.permits && a.Outcome != quote.Meets { // "diesel is acceptable" asks for nothing
		a.Outcome, a.Takes = quote.Unanswered, nil
	}
}

// twoAmounts reports whether a claim holds two amounts of one unit.
func (c *claim) twoAmounts() bool {
	for i, n := range c.numbers {
		if n.Unit != "" && slices.ContainsFunc(c.numbers[:i], func(o claims.Number) bool {
			return o.Unit == n.Unit && o.Value != n.Value && o.Of == n.Of
		}) {
			return true
		}
	}
	return false
}

// sided reports whether a claim counts things that the unit has as many of on each side.
func (j *judge) sided(c *claim) bool {
	id := j.holding(slices.Concat(c.same, c.more), c.qty)
	return id != "" && slices.ContainsFunc(c.numbers, func(n claims.Number) bool {
		return n.Unit == "" && !onEachSide(n) && slices.ContainsFunc(j.v.byID[id].numbers, func(x claims.Number) bool {
			return onEachSide(x) && x.Value == n.Value
		})
	})
}

// keeps reports whether a figure that a unit reaches is known to be reached with what else a line asks for
// in it: a powered cot is heavier, and a condenser on the roof stands higher.
func (j *judge) keeps(c *claim, parts []part) bool {
	for _, p := range parts {
		if c.gauge == nil || p.take.ID == "" {
			continue
		}
		o, code := j.q.Edition.Cat.OptionByID(p.take.ID), c.gauge.code
		switch at := sectionOf(code); {
		case strings.HasPrefix(code, "gvwr"), strings.HasPrefix(code, "gawr"):
			if o == nil {
				return false // another chassis
			}
		case o == nil, at == quote.WeightsSection.Place(), at == quote.PriceSection.Place():
			return false
		case restsOn(code) != onParts:
			f, ok := factOf(j.with(o, restsOn(code)), c.gauge)
			if f.Limit, f.Sense = c.want, c.sense; !ok || !f.Met() || c.most > 0 && f.Value > c.most {
				return false
			}
		}
	}
	return true
}

// fallsShort reports whether a thing that the line speaks of from its first word falls short of an
// amount, so that nothing that was not read makes the line complied with: it offers no choice and
// makes no condition.
func (r *reading) fallsShort(outcomes []quote.Outcome) bool {
	if r.pieces[0].claim < 0 || r.chooses {
		return false
	}
	first := &r.claims[r.pieces[0].claim]
	for i, o := range outcomes {
		c := &r.claims[i]
		if o == quote.Excepted && c.short != nil && first.gauge == nil && slices.ContainsFunc(
			slices.Concat(first.same, first.more, first.short), func(id string) bool { return slices.Contains(c.short, id) }) {
			return true
		}
	}
	return false
}

// dryWord is said of a weight without fuel, which is less than the curb weight.
var dryWord = stems("dry")[0]

// claim answers one claim.
func (j *judge) claim(c *claim) part {
	switch {
	case c.gauge != nil:
		p := j.figure(c)
		sure := map[config.Sense]quote.Outcome{atLeast: quote.Excepted, atMost: quote.Meets}[c.sense]
		if c.whole && p.outcome != sure || p.outcome != quote.Excepted && !j.hasCounted(c) || j.otherFuel(c) ||
			c.gauge.code == "weight.curb" && slices.Contains(c.words, dryWord) && p.outcome == quote.Excepted {
			p.outcome, p.take = quote.Unanswered, Take{}
		}
		return p
	case c.room != nil:
		return j.room(c)
	case c.outlets != nil:
		return j.count(c)
	}
	return j.things(c)
}

// otherFuel reports whether a line names a fuel for the tank that the chassis does not burn.
func (j *judge) otherFuel(c *claim) bool {
	return c.gauge.code == factFuel && slices.ContainsFunc(c.words, func(w string) bool {
		return fuels[w] && !j.v.byID[j.q.Chassis.ID].words[w]
	})
}

var fuels = wordSet("gasoline diesel")

// hasCounted reports whether the unit has what a line counts into a size by name: a height "with light bar" is
// not that of a unit without one.
func (j *judge) hasCounted(c *claim) bool {
	counted := countedIn[c.gauge.code]
	return !slices.ContainsFunc(c.words, func(w string) bool {
		return counted[w] && j.v.titles[w] != nil && !slices.ContainsFunc(j.q.Draft.Unit.Picks, func(p config.Pick) bool {
			return j.v.byID[p.Option].words[w]
		})
	})
}

// worst gives a line the worst answer of its parts, and says them all.
func (j *judge) worst(a *Answer, parts []part) {
	a.Read = nil
	a.Outcome = quote.Meets
	var offered, nearest, where []string
	for _, p := range parts {
		if rank[p.outcome] < rank[a.Outcome] {
			a.Outcome = p.outcome
		}
	}
	once := func(list []string, s string) []string {
		if s == "" || slices.Contains(list, s) {
			return list
		}
		return append(list, s)
	}
	for _, p := range parts {
		a.Read = append(a.Read, p.read)
		offered, nearest, where = once(offered, p.offered), once(nearest, p.nearest), once(where, p.where)
		if p.take.ID != "" && a.Outcome != quote.Unanswered {
			a.Takes = append(a.Takes, p.take)
		}
	}
	a.Offered, a.Nearest, a.Where = strings.Join(offered, "; "), strings.Join(nearest, "; "), strings.Join(where, "; ")
}
