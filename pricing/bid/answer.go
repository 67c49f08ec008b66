// Package bid reads a purchaser's requirement list, matches it with the unit and
// answers it line by line.
package bid

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
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

// TermPick is the beginning of a pick that says a line is a term of the bid.
const TermPick = "term:"

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
