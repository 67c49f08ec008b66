package editions

import (
	"fmt"
	"slices"

	"boxwright/config"
	"boxwright/config/rules"
	"boxwright/config/standards"
	"boxwright/pricing/quote"
)

// Lint looks for what reading an edition does not show: what nobody can ever
// have, by the rules or by the limits of every chassis; what everybody always
// has; rules that say nothing; what lacks a weight or work; clauses of no rule set; pairs
// of chassis and body that begin with things in one place or with a clause that is not
// met. It takes some seconds on a large catalogue. Those that stop come first.
func Lint(ed *quote.Edition) []config.Finding {
	l := NewLint(ed)
	l.Go(0)
	list := slices.Clone(l.Findings())
	quote.Worst(list)
	return list
}

// NewLint prepares what Lint does, to be done in slices.
func NewLint(ed *quote.Edition) *rules.Linter {
	d := quote.New(ed, "", "", config.Date{})
	d.Unit.RuleSet = standards.Default()
	l := rules.NewLinter(ed.Cat, quote.Limits(ed, d))
	p := &pairs{ed: ed, missed: map[string]*missed{}}
	l.Then("clauses", int64(len(ed.Cat.Options)), func() []config.Finding { return strangeClauses(ed.Cat) })
	l.Then("units as they begin", stepsOfPair+stepsPerPick*int64(len(ed.Cat.Options)), p.jobs()...)
	return l
}

// strangeClauses finds the clauses that options name and no rule set has: what they are
// said to satisfy counts nowhere.
func strangeClauses(cat *config.Catalogue) []config.Finding {
	var out []config.Finding
	for i := range cat.Options {
		o := &cat.Options[i]
		for _, clause := range o.Clauses {
			if _, _, known := standards.Lookup(clause); !known {
				out = append(out, config.Finding{Code: "catalogue.no-clause", Severity: config.Warn,
					Basis: config.Computed, Where: fmt.Sprintf("option %q", o.ID),
					Text:   fmt.Sprintf("No rule set has the clause %q that it names.", clause),
					Remedy: "Write it as in Standards, or take it out.", Picks: []string{o.ID}})
			}
		}
	}
	return out
}
