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
	e, err := Compile(cat)
	if err != nil {
		var out []config.Finding
		for _, p := range err.(config.Problems) {
			out = append(out, config.Finding{Code: p.Code, Severity: config.Stop, Where: p.Where, Text: p.Text,
				Remedy: "Correct the catalogue at this place."})
		}
		return out
	}
	l := &linter{e: e}
	if !l.stands() {
		return l.out
	}
	l.choices()
	l.groups()
	l.rules()
	l.data()
	return l.out
}

type linter struct {
	e   *Engine
	out []config.Finding
}

func (l *linter) add(code string, s config.Severity, where, text, remedy string, picks ...string) {
	l.out = append(l.out, config.Finding{Code: "catalogue." + code, Severity: s, Where: where, Text: text,
		Remedy: remedy, Basis: config.Computed, Picks: picks})
}

// stands reports whether there is any unit at all, and if not says which rules
// and groups contradict each other.
func (l *linter) stands() bool {
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
func (l *linter) members(r Reason) string {
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
func (l *linter) choices() {
	e := l.e
	verdicts, _ := e.table.Answer(solve.Query{Budget: lintBudget})
	for v, verdict := range verdicts {
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
}

// only reports whether a variable is the sole member of a group that needs
// one, so that nobody would expect a choice.
func (l *linter) only(v int) bool {
	n := 0
	for _, c := range l.e.class {
		if c >= 0 && c == l.e.class[v] {
			n++
		}
	}
	return n == 1
}

func (l *linter) because(x solve.Lit) string {
	rs := l.e.reasons(&config.Unit{}, nil, [2]string{}, nil, nil, x)
	if len(rs) == 0 {
		return "as the rules together have it"
	}
	return l.members(rs[0])
}

func (l *linter) label(v int) string {
	e := l.e
	switch chassis := len(e.cat.Chassis); {
	case v < chassis:
		return e.cat.Chassis[v].Label
	case v < e.firstOption():
		return e.cat.Bodies[v-chassis].Label
	}
	return e.cat.Options[v-e.firstOption()].Label
}

func (l *linter) where(v int) string {
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
func (l *linter) groups() {
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
	seen := map[string]bool{}
	for c := range e.cat.Chassis {
		for b := range e.cat.Bodies {
			pair := []solve.Lit{solve.Pos(c), solve.Pos(len(e.cat.Chassis) + b)}
			if p.solver.Solve(slices.Concat(rules, groups, pair), lintBudget) != solve.Unsat {
				continue
			}
			if p.solver.Solve(slices.Concat(rules, pair), lintBudget) != solve.Sat {
				continue // rules alone forbid it
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
	}
}

// rules finds those that say nothing: their condition can never be true, or
// all the others together already demand the same.
func (l *linter) rules() {
	e := l.e
	p := e.prover()
	for i := range e.parts {
		part := &e.parts[i]
		if part.rule < 0 {
			continue
		}
		rule := &e.cat.Rules[part.rule]
		where := fmt.Sprintf("rule %q", rule.ID)
		if rule.If != nil {
			if f, err := e.form(rule.If, true, 0); err == nil && !l.comesAbout(i, f) {
				l.add("rule-idle", config.Warn, where, "Its condition can never come about, so it says nothing.",
					"Correct the condition or take the rule out.")
				continue
			}
		}
		if l.redundant(i) {
			others := "the groups"
			if core := p.solver.Core(); len(core) > 0 {
				if r := e.reason(core, -1, nil, nil, nil); len(r.Rules)+len(r.Groups) > 0 {
					others = l.members(r)
				}
			}
			l.add("rule-redundant", config.Note, where, fmt.Sprintf("It demands nothing that %s do not demand already.",
				others), "Keep it if its reason serves the customer; else take it out.")
		}
	}
}

// comesAbout reports whether some unit that keeps all other rules meets the
// condition of one.
func (l *linter) comesAbout(part int, f form) bool {
	return l.e.prover().solver.Solve(append(l.others(part), l.means(f)), lintBudget) != solve.Unsat
}

// others are the switches of all other rules and groups.
func (l *linter) others(part int) []solve.Lit {
	return slices.Delete(slices.Clone(l.e.prover().switches), part, part+1)
}

// redundant reports whether a rule follows from all other rules and groups,
// which are then in the prover's core.
func (l *linter) redundant(part int) bool {
	e, p := l.e, l.e.prover()
	rule := &e.cat.Rules[e.parts[part].rule]
	broken, err := e.form(&rule.Then, false, 0)
	if err == nil && rule.If != nil {
		var given form
		given, err = e.form(rule.If, true, 0)
		broken = form{op: and, kids: []form{given, broken}}
	}
	if err != nil {
		return false
	}
	return p.solver.Solve(append(l.others(part), l.means(broken)), lintBudget) == solve.Unsat
}

// means is a fresh literal of the prover's solver that implies the form.
func (l *linter) means(f form) solve.Lit {
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
func (l *linter) data() {
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
