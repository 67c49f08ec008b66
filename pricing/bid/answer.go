// Package bid reads a purchaser's requirement list, matches it with the unit and
// answers it line by line.
package bid

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/rules"
	"boxwright/config/standards"
	"boxwright/pricing/bid/claims"
	"boxwright/pricing/bid/intake"
	"boxwright/pricing/bid/terms"
	"boxwright/pricing/quote"
)

// Answer is what the bidder has to say to one line of the list.
type Answer struct {
	quote.Requirement
	At      int      // position in the list
	Read    []string // what the line was taken to ask for, claim by claim
	Unread  int      // words and amounts of it that were not read
	Pieces  []Piece  // of a line about the unit, as far as it was read
	Term    string   // id of the term of the bid that it is; empty for what is about the unit
	Sure    bool     // it is that term whatever else it holds
	Offered string   // what the unit has, with its figure
	Nearest string   // to be had, where the unit does not comply
	Takes   []Take   // that would meet it
	Matches []string // ids it may be asking for, the likeliest first
	Where   string   // in the quote the figure or option stands
	Outcome quote.Outcome
	// By is the day that nine in ten such units are delivered with what would be taken;
	// the zero date where it was not worked out.
	By config.Date
}

// Piece is a piece of a line with the answer to what it asks for.
type Piece struct {
	Text    string
	Read    bool
	As      string        // what it was read as; empty where it asks for nothing
	Outcome quote.Outcome // of that
	// Claim numbers what it was read as; pieces of one number were read as one claim.
	Claim int
}

// Claims are the pieces of a line, those together that were read as one claim.
func (a *Answer) Claims() []Piece {
	var out []Piece
	for _, p := range a.Pieces {
		if p.Read && p.As == "" {
			continue // it asks for nothing
		}
		k := slices.IndexFunc(out, func(o Piece) bool { return p.Read && o.Read && o.Claim == p.Claim })
		if k < 0 {
			out = append(out, p)
			continue
		}
		out[k].Text += ", " + p.Text
	}
	return out
}

// Take is something to be put into the unit.
type Take struct {
	ID  string
	Qty int
}

// Answers goes through the purchaser's list line by line. Lines that were answered before for
// the same unit are not judged again.
func Answers(q *quote.Quote, in quantity.System) []Answer {
	j := judgeOf(q, in)
	out := j.answers()
	clear(j.tried)
	return out
}

// judgeOf is the judge of a unit, who knows what was judged of it before.
func judgeOf(q *quote.Quote, in quantity.System) *judge {
	v := vocabularyOf(q.Edition)
	unit := judgedFor(q, in)
	if v.judged == nil || v.judged.unit != unit || v.judged.q.Undecided() {
		v.judged = newJudge(q, in)
		v.judged.unit = unit
	}
	v.judged.q = q
	return v.judged
}

// judgedFor names what answers depend on besides the list: the draft without it, the edition
// being that of the vocabulary.
func judgedFor(q *quote.Quote, in quantity.System) string {
	d := *q.Draft
	d.Requirements = nil
	data, err := d.Bytes()
	if err != nil {
		return ""
	}
	return fmt.Sprint(in, string(data))
}

func newJudge(q *quote.Quote, in quantity.System) *judge {
	return &judge{q: q, v: vocabularyOf(q.Edition), in: in, lifts: map[string][]lifted{}, whys: map[string]string{},
		places: map[string]string{}, tried: map[tried]*quote.Quote{},
		lines: map[line]Answer{}, shortened: map[line]*Shortened{}}
}

// answers goes through the list of the quote.
func (j *judge) answers() []Answer {
	list := j.q.Draft.Requirements
	out := make([]Answer, len(list))
	heads := headsOf(list)
	fresh := 0
	for i, r := range list {
		key := line{r, heads[i]}
		a, known := j.lines[key]
		if !known {
			if fresh++; fresh%mostAnswered == 0 {
				j.q.Edition.Rules.Pauses().Rest()
			}
			a = j.answer(r, key.head)
			if len(j.lines) >= mostRead {
				clear(j.lines)
				clear(j.shortened)
			}
			j.lines[key] = a
		}
		a.At = i
		out[i] = a
	}
	return out
}

// ReadAhead reads lines that Answers will ask for, so that a long list can be read a
// part at a time. Without lines it has only the words of the catalogue ready.
func ReadAhead(ed *quote.Edition, lines []quote.Requirement) {
	v := vocabularyOf(ed)
	var above heading
	fresh := len(v.read)
	for _, r := range lines {
		if head := above.over(r); !r.Head {
			v.readUnder(r, head)
		}
		if len(v.read) >= fresh+mostFresh {
			ed.Rules.Pauses().Rest()
			fresh = len(v.read)
		}
	}
}

// mostAnswered is how many lines are answered, and mostFresh how many are read, between two
// pauses of work that nobody waits for.
const (
	mostAnswered = 100
	mostFresh    = 64
)

// judge answers lines for one unit.
type judge struct {
	q        *quote.Quote
	v        *vocabulary
	in       quantity.System
	lifts    map[string][]lifted    // by the code of the figure and the sense it is asked in
	whys     map[string]string      // what keeps a thing from being had
	places   map[string]string      // where the quote speaks of a thing
	tried    map[tried]*quote.Quote // the unit with an option
	measured int                    // how many of these were worked out
	lines    map[line]Answer        // judged before
	unit     string                 // for which, see judgedFor
	// shortened are open lines without what was not read; nil of those that cannot be shortened
	shortened map[line]*Shortened
}

// line is a line of a list with what stands above it.
type line struct {
	quote.Requirement
	head string
}

func (j *judge) answer(r quote.Requirement, head string) Answer {
	a := Answer{Requirement: r, Outcome: quote.Unanswered}
	if r.Head {
		a.Outcome = ""
		return a
	}
	read := j.v.readUnder(r, head)
	a.Matches, a.Unread = read.matches, len(read.unread)
	switch id, isTerm := strings.CutPrefix(r.Pick, TermPick); {
	case isTerm:
		a.Term = id
	case r.Pick == quote.NoPick:
	case r.Pick != "" && known(j.q, r.Pick):
		j.picked(&a, read, cmp.Or(r.Meant, r.Text), r.Pick)
	case read.term != "" && (len(read.unread) > 0 || len(read.claims) == 0):
		a.Term, a.Sure = read.term, read.strong
		j.term(&a)
	case len(read.claims) > 0:
		j.judge(&a, read)
	}
	if a.Term != "" {
		a.Read = append([]string{terms.Name(a.Term)}, a.Read...)
	}
	if r.Verdict != "" {
		a.Outcome = r.Verdict
		if r.Verdict != quote.MeetsWith {
			a.Takes = nil
		}
	}
	if r.Answer != "" {
		a.Offered = r.Answer
	}
	return a
}

// readUnder reads a line beneath a heading.
func (v *vocabulary) readUnder(r quote.Requirement, head string) *reading {
	read, _ := under(v.readLine, r, head)
	return read
}

// under reads a line beneath a heading: by itself, or with the heading where it does not say all alone. The
// second result is the text that was read.
func under(readText func(string) *reading, r quote.Requirement, head string) (*reading, string) {
	text := cmp.Or(r.Meant, r.Text)
	read := readText(text)
	if head == "" || r.Meant != "" || read.term != "" {
		return read, text
	}
	if intake.LeadIn(head) { // the line alone is half a sentence
		text = strings.TrimSuffix(withoutSection(head), ":") + " " + r.Text
		return readText(text), text
	}
	strange := slices.ContainsFunc(read.claims, func(c claim) bool { return c.bare() && !c.suits(head) })
	if len(read.unread) > 0 || len(read.claims) == 0 || strange {
		// "Two on each side" beneath "Warning lights"
		whole := withoutSection(head) + ", " + r.Text
		under := readText(whole)
		if len(under.unread) == 0 && len(under.claims) > 0 && under.term == "" {
			return under, whole
		}
	}
	if strange { // "96 in wide" beneath "Bench"
		return &reading{matches: read.matches, unread: []string{head}}, text
	}
	return read, text
}

// heading is what stands above a line of a list: the last heading, or the sentence that the
// line completes.
type heading struct {
	head, lead string
	no, of     string // forms of the numbers of that sentence and of the lines beneath it
	first      bool   // none of these came yet
}

// over takes the next line of the list and is what stands above it.
func (h *heading) over(r quote.Requirement) string {
	form := numberForm(r.No)
	switch {
	case r.Head && intake.LeadIn(r.Text):
		h.lead, h.no, h.first = r.Text, form, true
		return h.head
	case r.Head:
		h.head, h.lead = r.Text, ""
	case h.lead == "":
	case h.first && (form != h.no || form == "" && begunSmall(r.Text)):
		h.of, h.first = form, false
	case h.first, form != h.of, form == h.no && !begunSmall(r.Text):
		h.lead = "" // the sentence has all its lines
	}
	return cmp.Or(h.lead, h.head)
}

// numberForm is the form of a number, "9.9" of "2.14".
func numberForm(no string) string {
	var out []rune
	for _, r := range strings.ToLower(no) {
		switch {
		case unicode.IsDigit(r):
			r = '9'
		case unicode.IsLetter(r):
			r = 'a'
		}
		if n := len(out); n == 0 || out[n-1] != r {
			out = append(out, r)
		}
	}
	return string(out)
}

func begunSmall(text string) bool {
	r, _ := utf8.DecodeRuneInString(text)
	return unicode.IsLower(r)
}

// withoutSection is a heading without the number of its section.
func withoutSection(head string) string {
	words := strings.Fields(strings.TrimSuffix(head, ":"))
	if len(words) > 2 {
		switch strings.ToUpper(words[0]) {
		case "SECTION", "PART", "ARTICLE", "CHAPTER", "DIVISION":
			words = words[2:]
		}
	}
	return strings.Join(words, " ")
}

// TermPick is the beginning of a pick that says a line is a term of the bid.
const TermPick = "term:"

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

func known(q *quote.Quote, id string) bool {
	cat := q.Edition.Cat
	return cat.OptionByID(id) != nil || cat.ChassisByID(id) != nil || cat.BodyByID(id) != nil
}

// holds reports whether the unit has an option, or stands on a chassis or body.
func holds(q *quote.Quote, id string) bool {
	u := &q.Draft.Unit
	return u.Has(id) || u.Chassis == id || u.Body == id
}

// holding is the first of a list that the unit has, as often as asked for.
func (j *judge) holding(list []string, qty int) string {
	for _, id := range list {
		if holds(j.q, id) && (qty == 0 || j.q.Draft.Unit.Qty(id) >= qty || j.q.Edition.Cat.OptionByID(id).MaxQty <= 1) {
			return id
		}
	}
	return ""
}

// things answers a claim on something the catalogue offers.
func (j *judge) things(c *claim) part {
	cat := j.q.Edition.Cat
	if slices.Contains(c.words, federal) && !strings.HasPrefix(j.q.Draft.Unit.RuleSet, standards.KKK) {
		return part{outcome: quote.Unanswered, read: cat.LabelOf(j.likeliest(c))}
	}
	all := slices.Concat(c.same, c.more)
	if id := j.holding(all, c.qty); id != "" && j.beyondIt(c, id) {
		return part{outcome: quote.Unanswered, read: cat.LabelOf(id), offered: j.named(id), where: j.placeOf(id)}
	}
	if id := j.holding(c.same, c.qty); id != "" {
		return part{outcome: quote.Meets, read: cat.LabelOf(id), offered: j.named(id), where: j.placeOf(id)}
	}
	if id := j.holding(c.more, c.qty); id != "" && (c.same == nil || !j.hasAmps(id)) {
		return part{outcome: quote.Meets, read: cat.LabelOf(id), offered: j.named(id) + " (exceeds)",
			where: j.placeOf(id)}
	}
	if id := j.holding(c.also, c.qty); id != "" { // the line may mean that as well
		return part{outcome: quote.Unanswered, read: cat.LabelOf(id)}
	}
	had := func(list []string) string {
		best := ""
		for _, id := range list {
			if !j.had(id) {
				continue
			}
			if best == "" || j.alike(best, id) && j.price(id) < j.price(best) {
				best = id
			}
		}
		return best
	}
	if id := cmp.Or(had(c.same), had(c.more)); id != "" {
		return part{outcome: quote.MeetsWith, read: cat.LabelOf(id), offered: j.present(id), where: j.placeOf(id),
			take: Take{id, c.qty}}
	}
	if len(all) > 0 {
		may := slices.ContainsFunc(c.maybe, func(id string) bool { return j.alike(id, all[0]) && j.had(id) })
		if may || !j.differs(c, all[0]) {
			return part{outcome: quote.Unanswered, read: cat.LabelOf(all[0]), offered: j.present(all[0]),
				where: j.placeOf(all[0])}
		}
		p := part{outcome: quote.Excepted, read: cat.LabelOf(all[0]), offered: j.present(all[0]),
			where: j.placeOf(all[0])}
		p.nearest = j.why(all[0])
		if cat.ChassisByID(all[0]) != nil && j.q.State(all[0]) != rules.RuledOut {
			p.nearest = cat.LabelOf(all[0]) + ", as another chassis"
		}
		return p
	}
	return j.falling(c)
}

// federal is how the federal ambulance specification is read. What declares a unit to the
// standard that judges it declares it to that one only where it is that.
var federal = stems("KKK-A-1822F")[0]

// likeliest is the first thing that a claim may mean.
func (j *judge) likeliest(c *claim) string {
	return slices.Concat(c.same, c.more, c.short, []string{""})[0]
}

// beyondIt reports whether a line asks for more of a thing than the unit has of it: whether
// "an additional outlet" counts the one that is there, a person decides.
func (j *judge) beyondIt(c *claim, id string) bool {
	return slices.Contains(c.words, additional) && !j.v.byID[id].words[additional]
}

// additional is the stem of "additional" and "extra".
var additional = stems("additional")[0]

// differs reports whether what the unit has in the place of a thing that cannot be had
// is plainly another: not just by a word that may be true of it as well.
func (j *judge) differs(c *claim, id string) bool {
	if len(c.words) == 0 {
		return true // a person said what the line asks for
	}
	cat := j.q.Edition.Cat
	held := ""
	switch o := cat.OptionByID(id); {
	case o != nil && cat.GroupByID(o.Group).Choose == config.ChooseAny:
		return true
	case o != nil:
		for _, m := range cat.Members(o.Group) {
			if other := cat.Options[m].ID; j.q.Draft.Unit.Has(other) {
				held = other
			}
		}
	case cat.ChassisByID(id) != nil:
		held = j.q.Chassis.ID
	default:
		held = j.q.Body.ID
	}
	p := j.v.byID[held]
	if p == nil || p.lack { // "No spare wheel carried"
		return true
	}
	missing := 0
	for _, w := range c.plain {
		if p.never[w] {
			return true
		}
		if !p.words[w] {
			missing++
		}
	}
	fit, _ := p.fits(c.numbers)
	return missing >= 2 || fit == misses || fit == falls
}

// had reports whether a thing can be had with the unit as it is.
func (j *judge) had(id string) bool {
	if j.q.Edition.Cat.OptionByID(id) != nil {
		return j.q.State(id) != rules.RuledOut
	}
	s := j.q.State(id)
	return s != rules.RuledOut && s != rules.Checking
}

// alike reports whether two options are of one group, so that the price decides.
func (j *judge) alike(a, b string) bool {
	x, y := j.q.Edition.Cat.OptionByID(a), j.q.Edition.Cat.OptionByID(b)
	return x != nil && y != nil && x.Group == y.Group
}

// falling answers a claim that nothing offered reaches.
func (j *judge) falling(c *claim) part {
	cat := j.q.Edition.Cat
	best, most := "", 0.0
	for _, id := range c.short {
		if !j.had(id) && !holds(j.q, id) {
			continue
		}
		for _, n := range j.v.byID[id].numbers {
			if n.Unit == c.by.Unit && (n.Unit != "" || counts(n, c.by.Near)) &&
				(best == "" || (n.Value > most) == (c.by.Sense != atMost)) {
				best, most = id, n.Value
			}
		}
	}
	p := part{outcome: quote.Excepted,
		read: fmt.Sprintf("%s, %s %s", j.groupOf(c.short[0]), cmp.Or(string(c.by.Sense), string(atLeast)),
			show(j.in, c.by.Value, c.by.Unit)), where: j.placeOf(c.short[0])}
	if id := j.holding(c.short, 0); id != "" {
		p.offered = j.named(id)
	} else {
		p.offered = j.present(c.short[0])
	}
	if slices.ContainsFunc(c.silent, func(id string) bool { return j.had(id) || holds(j.q, id) }) {
		p.outcome = quote.Unanswered // that may have it
	}
	if best != "" && !holds(j.q, best) {
		p.nearest = cat.LabelOf(best)
	}
	return p
}

// hasAmps reports whether a thing is rated in amperes: what is rated higher then is
// another thing, such as an inlet.
func (j *judge) hasAmps(id string) bool {
	return slices.ContainsFunc(j.v.byID[id].numbers, func(n claims.Number) bool { return n.Unit == quantity.Amp })
}

// placeOf is where the quote speaks of a thing.
func (j *judge) placeOf(id string) string {
	at, known := j.places[id]
	if !known {
		at = j.q.PlaceOf(id)
		j.places[id] = at
	}
	return at
}

// named is a thing with the name of its group, where its label does not say it.
func (j *judge) named(id string) string {
	cat := j.q.Edition.Cat
	label := cat.LabelOf(id)
	o := cat.OptionByID(id)
	if o == nil {
		return label
	}
	g := cat.GroupByID(o.Group)
	if g.Choose == config.ChooseAny {
		return label
	}
	for _, w := range stems(g.Label) {
		if slices.Contains(j.v.byID[id].label, w) {
			return label
		}
	}
	return g.Label + ": " + label
}

// present is what the unit has in the place of a thing it does not have.
func (j *judge) present(id string) string {
	cat := j.q.Edition.Cat
	if o := cat.OptionByID(id); o != nil {
		if s := j.q.InGroup(o.Group); s != "–" && cat.GroupByID(o.Group).Choose != config.ChooseAny {
			return s
		}
		return "not in the unit"
	}
	if cat.ChassisByID(id) != nil {
		return j.q.Chassis.Label
	}
	return j.q.Body.Label
}

func (j *judge) groupOf(id string) string {
	cat := j.q.Edition.Cat
	if o := cat.OptionByID(id); o != nil {
		return cat.GroupByID(o.Group).Label
	}
	return cat.LabelOf(id)
}

// whyBudget is what a reason may take, as rules.AnswerWithin has it.
const whyBudget = 2000

// why says what keeps a thing from being had.
func (j *judge) why(id string) string {
	said, known := j.whys[id]
	if known {
		return said
	}
	defer func() { j.whys[id] = said }()
	q := j.q
	limits := quote.Limits(q.Edition, q.Draft)
	if r, found := q.Edition.Rules.FirstReason(&q.Draft.Unit, limits, id, whyBudget); found {
		said = q.Words(r, j.in)
	}
	return said
}

// show is an amount with its unit, in the user's units.
func show(in quantity.System, v float64, unit string) string {
	if unit == claims.Gallon || v == math.Trunc(v) && (unit == "" || unit == claims.BTU || unit == claims.VA) {
		return strings.TrimSpace(quantity.Group(v, 0) + " " + unit)
	}
	return strings.TrimSuffix(in.Show(v, unit), " places")
}
