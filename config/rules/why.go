package rules

import (
	"slices"

	"boxwright/config"
	"boxwright/config/solve"
)

// Reason is one sufficient cause, minimal: without any one of its picks,
// rules, groups or limits it would be none.
//
// Limits are those of the chassis with the body, and count on every group
// having what it needs; where a reason has limits, these are taken as given and
// not named.
type Reason struct {
	Picks  []string // deliberate picks, chassis and body among them, in the unit's order
	Rules  []Cause
	Groups []string // ids of groups whose "one" or "at most one" plays a part
	Limits []Arithmetic
}

// Cause is a rule in its own words.
type Cause struct {
	ID   string
	Text string
}

// Rule is the rule of an id, as the engine has it: of the catalogue, or made by its duties
// and groups; nil for none.
func (e *Engine) Rule(id string) *config.Rule {
	if i := slices.IndexFunc(e.rules, func(r config.Rule) bool { return r.ID == id }); i >= 0 {
		return &e.rules[i]
	}
	return nil
}

// Arithmetic shows how a limit cannot be kept, in the limit's unit:
// Base + Picked + Asked + Rest = Total, which is Over above Limit.
type Arithmetic struct {
	Code, Label, Unit string
	Base              float64 // what is not an option: chassis, body, people, ...
	Shares            []Share // what each deliberate pick adds, largest first
	Picked            float64 // their sum
	Asked             float64 // what the option asked about adds
	Rest              float64 // the least that all else a full unit needs can add
	Total             float64
	Limit             float64
	Over              float64
	Exact             bool // Rest is proven to be the least; else it is only known not to be less
}

// Share is what one pick adds.
type Share struct {
	ID     string
	Amount float64
}

// mostReasons is how many different reasons are looked for.
const mostReasons = 4

// asked is the last question why, or what would help, and how far its answer
// has come: a page shows one at a time and asks it again and again.
type asked struct {
	id, chassis, body, key string
	picks                  []config.Pick

	known   bool // reasons are complete
	reasons []Reason
	mend    *mender
}

// ask goes on with the last question where this is the same.
func (e *Engine) ask(u *config.Unit, limits *Limits, id string) *asked {
	a := &e.asked
	key := ""
	if limits != nil {
		key = limits.Key
	}
	same := a.id == id && a.chassis == u.Chassis && a.body == u.Body && a.key == key && slices.Equal(a.picks, u.Picks)
	if !same || limits != nil && key == "" {
		*a = asked{id: id, chassis: u.Chassis, body: u.Body, key: key, picks: slices.Clone(u.Picks)}
	}
	return a
}

// Afresh forgets the last question why, or what would help, so that what is found
// within a budget does not hang on how often it was asked.
func (e *Engine) Afresh() { e.asked = asked{} }

// GaveUp is said after a question ended in one of the Pauses: what it left in the middle
// is forgotten.
func (e *Engine) GaveUp() {
	e.Afresh()
	if e.filling {
		e.near, e.filling = nil, false
	}
	e.table.GaveUp()
}

// WhyWithin says why an id is ruled out, or why it is forced; nothing when it is
// neither, or unknown. Where there are several reasons, each alone suffices,
// but for one case: a chassis or body can be forced because limits rule out
// each of the others, and the reasons are then one for each of these. The budget is of
// the same kind as that of AnswerWithin; more says that more work may show more, or show
// that a part of one is not needed.
func (e *Engine) WhyWithin(u *config.Unit, limits *Limits, id string, budget int64) (reasons []Reason, more bool) {
	a := e.ask(u, limits, id)
	if !a.known {
		a.reasons, a.known = e.why(u, limits, id, mostReasons, budget)
	}
	return a.reasons, !a.known
}

// FirstReason is the first of those that WhyWithin gives, which takes a part of the
// work; false where it gives none.
func (e *Engine) FirstReason(u *config.Unit, limits *Limits, id string, budget int64) (Reason, bool) {
	reasons, _ := e.why(u, limits, id, 1, budget)
	if len(reasons) == 0 {
		return Reason{}, false
	}
	return reasons[0], true
}

// why looks for so many reasons within a budget, and reports whether it sufficed.
func (e *Engine) why(u *config.Unit, limits *Limits, id string, most int, budget int64) (list []Reason, all bool) {
	v, known := e.vars[id]
	if !known {
		return nil, true
	}
	p := e.newProverWith(e.limitsOf(limits, e.pairWith(u, v)), e.quantities(u))
	p.solver.Allow(budget * stepsEach)
	defer p.solver.Allow(0)
	list = e.whyNow(u, limits, v, most)
	return list, !p.solver.Spent()
}

func (e *Engine) whyNow(u *config.Unit, limits *Limits, v, most int) []Reason {
	pair := e.pairWith(u, v)
	_, picks, aside := e.standing(u, limits)
	if pair != [2]string{u.Chassis, u.Body} {
		aside = nil // other limits hold there
	}
	picks = e.otherPicks(v, picks)
	if rs := e.reasons(u, limits, pair, picks, aside, solve.Pos(v), most); rs != nil {
		return rs
	}
	if v >= e.firstOption() {
		return e.reasons(u, limits, pair, picks, aside, solve.Neg(v), most)
	}
	if rs := e.reasons(u, nil, pair, picks, nil, solve.Neg(v), most); rs != nil {
		return rs
	}
	var out []Reason
	for x := range e.firstOption() {
		if x == v || e.class[x] != e.class[v] {
			continue
		}
		rs := e.reasons(u, limits, e.pairWith(u, x), picks, nil, solve.Pos(x), 1)
		if rs == nil {
			return nil // this one is possible
		}
		out = append(out, rs[0])
	}
	return out
}

// Conflict says why the deliberate picks themselves cannot stand together; nil
// when they can.
func (e *Engine) Conflict(u *config.Unit, limits *Limits) []Reason {
	p := e.newProverWith(e.limitsOf(limits, [2]string{u.Chassis, u.Body}), e.quantities(u)).solver
	p.Allow(proofSteps)
	defer func() { e.aside += p.Stats.Steps }()
	return e.reasons(u, limits, [2]string{u.Chassis, u.Body}, e.picks(u), nil, -1, mostReasons)
}

// pairWith is the chassis and body of the unit with v in it.
func (e *Engine) pairWith(u *config.Unit, v int) [2]string {
	switch e.class[v] {
	case chassisClass:
		return [2]string{e.ids[v], u.Body}
	case bodyClass:
		return [2]string{u.Chassis, e.ids[v]}
	}
	return [2]string{u.Chassis, u.Body}
}

// standing returns the unit's picks and the guards of its limits without those
// that contradict the others; aside names what was left out, as Answer.SetAside does.
func (e *Engine) standing(u *config.Unit, limits *Limits) (guards, picks []solve.Lit, aside []string) {
	picks = e.picks(u)
	guards, _ = e.limits.load(e, u, limits)
	guards = slices.Clone(guards)
	if !e.solver.Bounded() {
		e.solver.Allow(proofSteps)
		defer e.solver.Allow(0)
	}
	if e.solver.Solve(append(slices.Clone(guards), picks...), proofBudget) == solve.Unsat {
		return e.setAside(guards, picks)
	}
	return guards, picks, nil
}

// otherPicks leaves out the picks that v would replace, and v's own.
func (e *Engine) otherPicks(v int, picks []solve.Lit) []solve.Lit {
	return slices.DeleteFunc(slices.Clone(picks), func(p solve.Lit) bool {
		return p.Var() == v || e.class[v] >= 0 && e.class[p.Var()] == e.class[v]
	})
}

// noLimits are the limits of every pair where none are asked for.
var noLimits onPair

// limitsOf are the limits of a chassis with a body.
func (e *Engine) limitsOf(limits *Limits, pair [2]string) *onPair {
	if limits == nil || limits.For == nil {
		return &noLimits
	}
	return e.limits.forPair(e, pair, limits)
}

// reasons are up to so many why the literal cannot hold with the picks and the limits
// that are not set aside; with a literal below zero, why the picks contradict each other.
func (e *Engine) reasons(
	u *config.Unit, limits *Limits, pair [2]string, picks []solve.Lit, aside []string, l solve.Lit, most int,
) []Reason {
	p := e.prover()
	quantity := e.quantities(u)
	guards := p.load(e, e.limitsOf(limits, pair).list, quantity)
	var inForce []solve.Lit
	for i, g := range guards {
		if !slices.Contains(aside, p.codes[i].linear.Code) {
			inForce = append(inForce, g)
		}
	}
	// What stands last is left out first: limits before late picks, late picks
	// before early ones, these before rules, and groups stay longest.
	var groups, rules []solve.Lit
	for i := range e.parts {
		if e.parts[i].rule < 0 {
			groups = append(groups, p.switches[i])
		} else {
			rules = append(rules, p.switches[i])
		}
	}
	logic := append(rules, picks...)
	var fixed []solve.Lit
	if l >= 0 {
		fixed = []solve.Lit{l}
	}

	var found [][]solve.Lit
	note := func(core []solve.Lit) bool {
		if core != nil && !slices.ContainsFunc(found, func(other []solve.Lit) bool {
			return slices.Equal(other, core)
		}) {
			found = append(found, core)
		}
		return core != nil
	}
	// A limit counts on one of each group being chosen, and is that of one
	// chassis with one body; so where limits count these are fixed and are no
	// part of the reason.
	var options, truck []solve.Lit
	for _, x := range logic {
		if v := x.Var(); v < e.firstOption() {
			truck = append(truck, x)
		} else {
			options = append(options, x)
		}
	}
	given := slices.Concat(groups, truck, fixed)
	search := func(without solve.Lit, budget int64) bool {
		rest := func(all []solve.Lit) []solve.Lit {
			return slices.DeleteFunc(slices.Clone(all), func(x solve.Lit) bool { return x == without })
		}
		if note(p.minimal(rest(append(slices.Clone(groups), logic...)), fixed, budget)) {
			return true
		}
		if len(inForce) == 0 || slices.Contains(given, without) {
			return false
		}
		return note(p.minimal(rest(append(slices.Clone(options), inForce...)), given, budget))
	}
	if !search(-1, proofBudget) {
		return nil
	}
	for i := 0; i < len(found) && len(found) < most; i++ {
		for _, x := range found[i] {
			if len(found) < most {
				search(x, trimBudget)
			}
		}
	}
	out := make([]Reason, 0, len(found))
	for _, core := range found {
		out = append(out, e.reason(core, l, picks, guards, quantity))
	}
	return out
}

func (e *Engine) reason(core []solve.Lit, l solve.Lit, picks, guards []solve.Lit, quantity map[int]int) Reason {
	var r Reason
	for _, x := range picks {
		if slices.Contains(core, x) {
			r.Picks = append(r.Picks, e.ids[x.Var()])
		}
	}
	var broken []solve.Lit
	for _, g := range guards {
		if slices.Contains(core, g) {
			broken = append(broken, g)
		}
	}
	for i, sw := range e.proof.switches {
		if !slices.Contains(core, sw) {
			continue
		}
		if part := e.parts[i]; part.rule >= 0 {
			rule := &e.rules[part.rule]
			r.Rules = append(r.Rules, Cause{rule.ID, rule.Reason})
		} else {
			r.Groups = append(r.Groups, e.cat.Groups[part.group].ID)
		}
	}
	for i, g := range broken {
		others := slices.Delete(slices.Clone(broken), i, i+1)
		r.Limits = append(r.Limits, e.arithmetic(&e.proof.codes[slices.Index(guards, g)], l, picks, others, quantity))
	}
	return r
}
