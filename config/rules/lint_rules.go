package rules

import (
	"fmt"
	"slices"

	"boxwright/config"
	"boxwright/config/solve"
)

// rules finds those that say nothing: their condition can never be true, or
// all the others together already demand the same.
func (l *Linter) rules() {
	e := l.e
	c := &ruleChecker{l: l, switches: e.newProver().switches}
	posed := e.proof.solver
	e.proof = nil // its literals for the questions stand for nothing elsewhere
	var jobs []func()
	for i := range e.parts {
		if e.parts[i].rule < 0 {
			continue
		}
		rule := &e.rules[e.parts[i].rule]
		broken, err := e.form(&rule.Then, false, 0)
		if err != nil {
			continue
		}
		q := ruleQuestion{part: i, rule: rule, given: noCondition}
		if rule.If != nil {
			f, err := e.form(rule.If, true, 0)
			if err != nil {
				continue
			}
			q.given = implying(posed, f)
			broken = form{op: and, kids: []form{f, broken}}
		}
		q.broken = implying(posed, broken)
		jobs = append(jobs, func() { c.look(&q) })
	}
	c.anywhere.of(posed.Fork())
	c.there.of(posed.Fork())
	c.settleOnAPair()
	l.next(jobs...)
}

// ruleQuestion has literals that imply that a rule's condition is met, and that it is
// broken.
type ruleQuestion struct {
	part          int
	rule          *config.Rule
	given, broken solve.Lit
}

// noCondition stands for the condition of a rule that has none.
const noCondition solve.Lit = -1

// implying is a fresh literal of a solver that implies the form.
func implying(s *solve.Solver, f form) solve.Lit {
	x := encoder{newVar: s.NewVar}
	h := x.named(x.cnf(f))
	for _, clause := range x.clauses {
		s.AddClause(clause...)
	}
	return h
}

// ruleChecker asks, rule by rule, what all the others leave possible. Most of it is
// possible on one chassis with one body, and is found there with the least work, since
// a solver that stays on them has nothing of theirs to work out anew.
type ruleChecker struct {
	l        *Linter
	switches []solve.Lit // of rules and groups
	pair     []solve.Lit // a chassis and a body
	there    nearby      // on the pair
	anywhere nearby
	asked    []solve.Lit // the last question's, kept for the room it takes
}

// nearby asks a solver near its last answer.
type nearby struct {
	s    *solve.Solver
	near *solve.Walker
}

func (n *nearby) of(s *solve.Solver) { n.s, n.near = s, solve.NewWalker(s) }

// ask within the work allowed for a question.
func (n *nearby) ask(l *Linter, lits []solve.Lit) solve.Result {
	before := n.s.Stats.Steps
	n.s.Allow(lintSteps)
	defer n.s.Allow(0)
	r := solve.Unknown
	if n.near.Stands() {
		r = n.near.Near(nil, lits, nearBudget)
	}
	if r == solve.Unknown {
		if r = n.s.Solve(lits, lintBudget); r == solve.Sat {
			n.near.Take()
		}
	}
	l.other += n.s.Stats.Steps - before
	return r
}

// settleOnAPair takes the pair of the first unit found.
func (c *ruleChecker) settleOnAPair() {
	if c.anywhere.ask(c.l, c.switches) != solve.Sat {
		return
	}
	for v := range c.l.e.firstOption() {
		if x := solve.Pos(v); c.anywhere.s.Model(x) {
			c.pair = append(c.pair, x)
		}
	}
}

// ask whether all other parts leave a literal possible; if not, core has those that
// rule it out.
func (c *ruleChecker) ask(part int, x solve.Lit) (r solve.Result, core []solve.Lit) {
	c.asked = append(c.others(append(c.asked[:0], c.pair...), part), x)
	onPair := func(l solve.Lit) bool { return slices.Contains(c.pair, l) }
	if c.pair != nil {
		r = c.there.ask(c.l, c.asked)
		if core = c.there.s.Core(); r == solve.Sat || r == solve.Unsat && !slices.ContainsFunc(core, onPair) {
			return r, core
		}
	}
	r = c.anywhere.ask(c.l, c.asked[len(c.pair):])
	return r, c.anywhere.s.Core()
}

// lintBlock is how many rules are switched off one after another while all others
// stay as they are for the solver, which then has little to do anew.
const lintBlock = 64

// others appends the switches of all other rules and groups. Those that stay on for
// the rules that are looked at next come first.
func (c *ruleChecker) others(lits []solve.Lit, part int) []solve.Lit {
	all := c.switches
	from := part - part%lintBlock
	until := min(from+lintBlock, len(all))
	lits = append(append(lits, all[:from]...), all[until:]...)
	return append(append(lits, all[from:part]...), all[part+1:until]...)
}

// look at one rule. What breaks it meets its condition, so that one answer mostly tells
// that it is neither idle nor redundant.
func (c *ruleChecker) look(q *ruleQuestion) {
	l, where := c.l, fmt.Sprintf("rule %q", q.rule.ID)
	broken, core := c.ask(q.part, q.broken)
	if broken == solve.Sat {
		return
	}
	core = slices.Clone(core)
	if q.given != noCondition {
		if given, _ := c.ask(q.part, q.given); given == solve.Unsat {
			l.add("rule-idle", config.Warn, where, "Its condition can never come about, so it says nothing.",
				"Correct the condition or take the rule out.")
			return
		}
	}
	if broken == solve.Unknown {
		l.open++
		return
	}
	if l.e.parts[q.part].rule >= len(l.e.cat.Rules) {
		return // what duties and groups make of themselves is nobody's to take out
	}
	l.add("rule-redundant", config.Note, where, fmt.Sprintf("It demands nothing that %s do not demand already.",
		c.names(core)), "Keep it if its reason serves the customer; else take it out.")
}

// names of the rules and groups of a core.
func (c *ruleChecker) names(core []solve.Lit) string {
	e := c.l.e
	e.proof = &prover{switches: c.switches}
	defer func() { e.proof = nil }()
	if r := e.reason(core, -1, nil, nil, nil); len(r.Rules)+len(r.Groups) > 0 {
		return c.l.members(r)
	}
	return "the groups"
}
