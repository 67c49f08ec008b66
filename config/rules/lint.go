package rules

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/solve"
)

// lintBudget is how many conflicts one question of the lint may take.
const lintBudget = 20000

// Lint looks for faults of a catalogue's rules and data that reading it file
// by place does not show: options that no unit can have or that every unit has,
// rules that say nothing or contradict each other, and options that lack a
// price, a mass or work. Findings come in the order of the catalogue; a Stop
// is a fault, a Warn is likely one, a Note is worth a look.
func Lint(cat *config.Catalogue) []config.Finding {
	l := NewLinter(cat, nil)
	l.Go(0)
	return l.Findings()
}

// NewLinter prepares what Lint does, to be done in slices; with limits, which are
// those of a unit with no picks yet, also what LintWithin does.
func NewLinter(cat *config.Catalogue, limits *Limits) *Linter {
	e, err := Compile(cat)
	if err != nil {
		l := &Linter{}
		for _, p := range err.(config.Problems) {
			l.out = append(l.out, config.Finding{Code: p.Code, Severity: config.Stop, Where: p.Where, Text: p.Text,
				Remedy: "Correct the catalogue at this place."})
		}
		return l
	}
	l := &Linter{e: e}
	phases := []func(){l.choices, l.groups, l.rules, l.data, l.shapes}
	if limits != nil {
		phases = append(phases, func() { l.within(limits) })
	}
	l.jobs = []func(){func() {
		if l.stands() {
			l.jobs = append(l.jobs, phases...)
		}
	}}
	return l
}

// Linter goes through a catalogue in slices.
type Linter struct {
	e    *Engine
	out  []config.Finding
	jobs []func() // still to be done; one may put others at the head of the list
	done int
	near *solve.Walker // of the prover, where the last question about a rule ended
}

// lintBlock is how many rules are switched off one after another while all others
// stay as they are for the solver, which then has little to do anew.
const lintBlock = 64

// jobSteps is what a job takes at least, in steps of a solver.
const jobSteps = 300

// Go goes on until the steps are used up, 0 or less for the end, and reports
// whether all is done.
func (l *Linter) Go(steps int64) bool {
	for spent := int64(0); len(l.jobs) > 0 && (steps <= 0 || spent < steps); l.done++ {
		job := l.jobs[0]
		l.jobs = l.jobs[1:]
		before := l.steps()
		job()
		spent += max(jobSteps, l.steps()-before)
	}
	return len(l.jobs) == 0
}

// steps of the solvers in work; fewer when one was exchanged.
func (l *Linter) steps() int64 {
	n := l.e.solver.Stats.Steps
	if l.e.proof != nil {
		n += l.e.proof.solver.Stats.Steps
	}
	return n
}

// next puts jobs before all others.
func (l *Linter) next(jobs ...func()) { l.jobs = append(jobs, l.jobs...) }

// Progress is how many things were looked at, and how many are known to be left.
func (l *Linter) Progress() (done, left int) { return l.done, len(l.jobs) }

// Findings so far.
func (l *Linter) Findings() []config.Finding { return l.out }

func (l *Linter) add(code string, s config.Severity, where, text, remedy string, picks ...string) {
	l.out = append(l.out, config.Finding{Code: "catalogue." + code, Severity: s, Where: where, Text: text,
		Remedy: remedy, Basis: config.Computed, Picks: picks})
}

// stands reports whether there is any unit at all, and if not says which rules
// and groups contradict each other.
func (l *Linter) stands() bool {
	if l.e.solver.Solve(nil, lintBudget) != solve.Unsat {
		return true
	}
	text := "No unit can keep all rules"
	if rs := l.e.reasons(&config.Unit{}, nil, [2]string{}, nil, nil, -1); len(rs) > 0 {
		text += "; these contradict each other: " + l.members(rs[0])
	}
	l.add("nothing-possible", config.Stop, "rules", text+".", "Correct or remove one of them.")
	return false
}

// members names the rules and groups of a reason.
func (l *Linter) members(r Reason) string {
	var names []string
	for _, c := range r.Rules {
		names = append(names, fmt.Sprintf("rule %q", c.ID))
	}
	for _, g := range r.Groups {
		names = append(names, fmt.Sprintf("group %q", g))
	}
	if len(names) == 0 {
		return "that a unit has one chassis and one body"
	}
	return strings.Join(names, ", ")
}

// choices finds what can never and what must always be in a unit.
func (l *Linter) choices() {
	e := l.e
	verdicts, _ := e.table.Answer(solve.Query{Budget: lintBudget})
	var jobs []func()
	for v, verdict := range slices.Clone(verdicts) {
		if verdict&(solve.CannotHold|solve.MustHold) != 0 {
			jobs = append(jobs, func() { l.choice(v, verdict) })
		}
	}
	l.next(jobs...)
}

// choice tells what can never or must always be in a unit.
func (l *Linter) choice(v int, verdict solve.Verdict) {
	e := l.e
	id, where := e.ids[v], l.where(v)
	switch {
	case verdict&solve.CannotHold != 0:
		l.add("never", config.Stop, where, fmt.Sprintf("%s can be in no unit: %s.", l.label(v),
			l.because(solve.Pos(v))), "Correct one of these, or take it out of the catalogue.", id)
	case verdict&solve.MustHold != 0 && !l.only(v):
		l.add("always", config.Warn, where,
			fmt.Sprintf("%s is in every unit: %s.", l.label(v), l.because(solve.Neg(v))), "If it is meant so, "+
				"offer it as part of the body; else correct one of these.", id)
	}
}

// only reports whether a variable is the sole member of a group that needs
// one, so that nobody would expect a choice.
func (l *Linter) only(v int) bool {
	n := 0
	for _, c := range l.e.class {
		if c >= 0 && c == l.e.class[v] {
			n++
		}
	}
	return n == 1
}

func (l *Linter) because(x solve.Lit) string {
	rs := l.e.reasons(&config.Unit{}, nil, [2]string{}, nil, nil, x)
	if len(rs) == 0 {
		return "as the rules together have it"
	}
	return l.members(rs[0])
}

func (l *Linter) label(v int) string {
	e := l.e
	switch chassis := len(e.cat.Chassis); {
	case v < chassis:
		return e.cat.Chassis[v].Label
	case v < e.firstOption():
		return e.cat.Bodies[v-chassis].Label
	}
	return e.cat.Options[v-e.firstOption()].Label
}

func (l *Linter) where(v int) string {
	e := l.e
	switch chassis := len(e.cat.Chassis); {
	case v < chassis:
		return fmt.Sprintf("chassis %q", e.ids[v])
	case v < e.firstOption():
		return fmt.Sprintf("body %q", e.ids[v])
	}
	return fmt.Sprintf("option %q", e.ids[v])
}

// groups finds those that leave nothing to choose for a chassis with a body
// that no rule forbids: each option of the group is ruled out there, which is
// hardly ever meant.
func (l *Linter) groups() {
	e := l.e
	p := e.prover()
	var rules, groups []solve.Lit
	for i := range e.parts {
		if e.parts[i].rule >= 0 {
			rules = append(rules, p.switches[i])
		} else if e.parts[i].group >= 0 {
			groups = append(groups, p.switches[i])
		}
	}
	var jobs []func()
	seen := map[string]bool{}
	for c := range e.cat.Chassis {
		for b := range e.cat.Bodies {
			jobs = append(jobs, func() { l.pair(c, b, rules, groups, seen) })
		}
	}
	l.next(jobs...)
}

// pair looks at a chassis with a body; groups that were told of are seen.
func (l *Linter) pair(c, b int, rules, groups []solve.Lit, seen map[string]bool) {
	e, p := l.e, l.e.prover()
	pair := []solve.Lit{solve.Pos(c), solve.Pos(len(e.cat.Chassis) + b)}
	if p.solver.Solve(slices.Concat(rules, groups, pair), lintBudget) != solve.Unsat {
		return
	}
	if p.solver.Solve(slices.Concat(rules, pair), lintBudget) != solve.Sat {
		return // rules alone forbid it
	}
	core := p.minimal(slices.Concat(rules, groups), pair, proofBudget)
	r := e.reason(core, -1, nil, nil, nil)
	for _, g := range r.Groups {
		if seen[g] {
			continue
		}
		seen[g] = true
		l.add("group-empty", config.Warn, fmt.Sprintf("group %q", g),
			fmt.Sprintf("%s with %s leaves nothing to choose here: %s. No rule says that they do not go "+
				"together.", e.cat.Chassis[c].Label, e.cat.Bodies[b].Label, l.members(r)),
			"Add a rule that forbids the pair with its reason, or an option that fits.")
	}
}

// rules finds those that say nothing: their condition can never be true, or
// all the others together already demand the same.
func (l *Linter) rules() {
	e := l.e
	var jobs []func()
	for i := range e.parts {
		if e.parts[i].rule < 0 {
			continue
		}
		rule := &e.cat.Rules[e.parts[i].rule]
		broken, err := e.form(&rule.Then, false, 0)
		if err != nil {
			continue
		}
		// Literals for all of them come first, since a solver begins anew with each.
		given := noCondition
		if rule.If != nil {
			f, err := e.form(rule.If, true, 0)
			if err != nil {
				continue
			}
			given = l.means(f)
			broken = form{op: and, kids: []form{f, broken}}
		}
		violated := l.means(broken)
		jobs = append(jobs, func() { l.rule(i, rule, given, violated) })
	}
	if l.near = solve.NewWalker(e.prover().solver); e.prover().solver.Solve(e.prover().switches,
		lintBudget) == solve.Sat {
		l.near.Take()
	}
	l.next(jobs...)
}

// ask the prover, first near the answer before.
func (l *Linter) ask(lits []solve.Lit) solve.Result {
	if l.near.Stands() {
		if r := l.near.Near(nil, lits, nearBudget); r != solve.Unknown {
			return r
		}
	}
	return l.e.prover().solver.Solve(lits, lintBudget)
}

// noCondition stands for the condition of a rule that has none.
const noCondition solve.Lit = -1

// rule looks at one, by literals that imply its condition, and that it is broken.
func (l *Linter) rule(part int, rule *config.Rule, given, violated solve.Lit) {
	e, p := l.e, l.e.prover()
	where := fmt.Sprintf("rule %q", rule.ID)
	others := l.others(part)
	if given != noCondition && l.ask(append(slices.Clip(others), given)) == solve.Unsat {
		l.add("rule-idle", config.Warn, where, "Its condition can never come about, so it says nothing.",
			"Correct the condition or take the rule out.")
		return
	}
	if l.ask(append(slices.Clip(others), violated)) != solve.Unsat {
		return
	}
	names := "the groups"
	if core := p.solver.Core(); len(core) > 0 {
		if r := e.reason(core, -1, nil, nil, nil); len(r.Rules)+len(r.Groups) > 0 {
			names = l.members(r)
		}
	}
	l.add("rule-redundant", config.Note, where, fmt.Sprintf("It demands nothing that %s do not demand already.",
		names), "Keep it if its reason serves the customer; else take it out.")
}

// others are the switches of all other rules and groups. Those that stay on for
// the rules that are looked at next come first.
func (l *Linter) others(part int) []solve.Lit {
	all := l.e.prover().switches
	from := part - part%lintBlock
	until := min(from+lintBlock, len(all))
	return slices.Concat(all[:from], all[until:], all[from:part], all[part+1:until])
}

// means is a fresh literal of the prover's solver that implies the form.
func (l *Linter) means(f form) solve.Lit {
	s := l.e.prover().solver
	x := encoder{newVar: s.NewVar}
	h := x.named(x.cnf(f))
	for _, c := range x.clauses {
		s.AddClause(c...)
	}
	return h
}

// data finds options that lack what a quote, a weigh-up or a plan needs. Zero
// stated is taken for an answer; nothing stated is not.
func (l *Linter) data() {
	var book struct { // only what is priced; the prices are for package pricing
		Prices map[string]json.RawMessage `json:"prices"`
	}
	_ = json.Unmarshal(l.e.cat.PriceBook, &book)
	for i := range l.e.cat.Options {
		o := &l.e.cat.Options[i]
		where := fmt.Sprintf("option %q", o.ID)
		key := o.PriceKey
		if key == "" {
			key = o.ID
		}
		if _, priced := book.Prices[key]; !priced && len(l.e.cat.PriceBook) > 0 {
			l.add("no-price", config.Stop, where, fmt.Sprintf("%s has no price: the price book has no %q.", o.Label,
				key), "Add a price, 0 if it costs nothing.", o.ID)
		}
		if o.Mass == nil {
			l.add("no-mass", config.Note, where, fmt.Sprintf("%s has no mass.", o.Label),
				"State its mass, 0 if it has none.", o.ID)
		}
		if len(o.Work) == 0 {
			l.add("no-work", config.Note, where, fmt.Sprintf("%s adds no plant work.", o.Label),
				"State the station and hours, 0 if it takes none.", o.ID)
		}
	}
}
