package editions

import (
	"fmt"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/body"
	"boxwright/config/power"
	"boxwright/config/quantity"
	"boxwright/config/space"
	"boxwright/config/standards"
	"boxwright/config/weight"
	"boxwright/pricing/quote"
)

// Bounds of trying each chassis with each body: how many pairs are tried, and what one
// counts for, in steps of a solver, with so many more for each option.
const (
	mostPairs    = 300
	stepsOfPair  = 20_000
	stepsPerPick = 50
	toldOfClause = 5 // pairs that are named for one clause
)

// pairs tries each chassis with each body as the page begins a unit on them: whether
// anything stands where something else does, and which clauses are not met. What is
// declared or not judged is no fault.
type pairs struct {
	ed     *quote.Edition
	missed map[string]*missed
	order  []string // of the clauses
	left   int      // pairs that are not tried
}

// missed is a clause that pairs begin without meeting.
type missed struct {
	verdict standards.Verdict // as it is missed most
	on      []string          // pairs, usual ones first
	usual   int               // of them
	picks   []string
}

func (p *pairs) jobs() []func() []config.Finding {
	var jobs []func() []config.Finding
	for c := range p.ed.Cat.Chassis {
		for b := range p.ed.Cat.Bodies {
			if p.ed.Cat.Bodies[b].Existing {
				continue // what is on it is measured, not begun
			}
			if len(jobs) == mostPairs {
				p.left++
				continue
			}
			jobs = append(jobs, func() []config.Finding { return p.try(&p.ed.Cat.Chassis[c], &p.ed.Cat.Bodies[b]) })
		}
	}
	return append(jobs, p.tell)
}

// try begins a unit on a pair, where the rules allow one.
func (p *pairs) try(ch *config.Chassis, b *config.Body) []config.Finding {
	cat := p.ed.Cat
	d := quote.New(p.ed, ch.ID, b.ID, cat.ValidFrom)
	d.Unit.RuleSet = standards.Suit(standards.Default(), dutyOn(cat, b))
	u, ok := p.ed.Rules.StartWhole(&d.Unit, quote.Limits(p.ed, d))
	if !ok {
		return nil
	}
	on := ch.Label + " with " + b.Label
	var out []config.Finding
	for _, c := range body.Of(cat, &u).Collisions() {
		f := c.Finding()
		f.Code, f.Where, f.Picks = "catalogue.pair-collision", "chassis with their modules", []string{ch.ID, b.ID}
		f.Text = "As it begins, " + on + ": " + f.Text
		f.Remedy = "Correct a place, or add a rule that keeps the two apart."
		out = append(out, f)
	}
	as := standards.Assume(u.RuleSet, cat, &u)
	for _, v := range standards.Judge(u.RuleSet, &u, cat, &weight.Weigh(cat, &u, &as).Report,
		&power.Budget(cat, &u, &as).Report, &space.Measure(cat, &u, &as).Report) {
		if v.Outcome == standards.NotMet {
			p.note(v, on+" ("+missing(v.Figure)+")", ch.UsualBody == b.ID, ch.ID, b.ID)
		}
	}
	return out
}

// missing shows a figure that misses its limit so that the two are told apart.
func missing(f *config.Figure) string {
	value := quantity.US.Show(f.Value, f.Unit)
	if value != quantity.US.Show(f.Limit, f.Unit) {
		return value
	}
	return map[config.Sense]string{config.AtLeast: "just under ", config.AtMost: "just over "}[f.Sense] + value
}

// dutyOn is the duty that a body is for; nil for one that any may have.
func dutyOn(cat *config.Catalogue, b *config.Body) *config.Duty {
	for i := range cat.Duties {
		if slices.Contains(cat.Duties[i].Bodies, b.ID) {
			return &cat.Duties[i]
		}
	}
	return nil
}

func (p *pairs) note(v standards.Verdict, on string, usual bool, ids ...string) {
	m := p.missed[v.Clause]
	if m == nil {
		m = &missed{verdict: v}
		p.missed[v.Clause], p.order = m, append(p.order, v.Clause)
	}
	if v.Figure.Margin() < m.verdict.Figure.Margin() {
		m.verdict = v
	}
	at := len(m.on)
	if usual {
		at = m.usual
		m.usual++
	}
	m.on = slices.Insert(m.on, at, on)
	for _, id := range ids {
		if !slices.Contains(m.picks, id) {
			m.picks = append(m.picks, id)
		}
	}
}

// tell says each clause that is missed once, with the pairs. A usual pair meets the
// default rule set, or it is not usual.
func (p *pairs) tell() []config.Finding {
	var out []config.Finding
	for _, id := range p.order {
		m := p.missed[id]
		f := m.verdict.Figure
		named := m.on[:min(len(m.on), toldOfClause)]
		more := ""
		if n := len(m.on) - len(named); n > 0 {
			more = fmt.Sprintf("; and %d more", n)
		}
		found := config.Finding{Code: "catalogue.pair-not-met", Severity: config.Note,
			Where:  "chassis with their modules",
			Clause: id, Basis: m.verdict.Basis, Figure: f, Picks: m.picks,
			Text: fmt.Sprintf("%s, %s %s (%s), is not met as these begin: %s%s.", m.verdict.Title, f.Sense,
				quantity.US.Show(f.Limit, f.Unit), m.verdict.Basis, strings.Join(named, "; "), more),
			Remedy: "Nothing needs to be done where such a pair is sold as an exception; else correct it, or forbid it " +
				"by a rule."}
		if m.usual > 0 {
			found.Severity = config.Warn
			found.Remedy = "Name another usual body for the chassis, or correct what the first pairs begin with."
		}
		out = append(out, found)
	}
	if p.left > 0 {
		out = append(out, config.Finding{Code: "catalogue.pairs-left", Severity: config.Note,
			Where: "chassis with their modules", Basis: config.Computed,
			Text:   fmt.Sprintf("Units were begun on %d pairs, and not on %d more.", mostPairs, p.left),
			Remedy: "Nothing needs to be done; of fewer pairs all are begun."})
	}
	return out
}
