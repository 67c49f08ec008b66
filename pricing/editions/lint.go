package editions

import (
	"slices"

	"boxwright/config"
	"boxwright/config/rules"
	"boxwright/config/standards"
	"boxwright/pricing/quote"
)

// Lint looks for what reading an edition does not show: what nobody can ever
// have, by the rules or by the limits of every chassis; what everybody always
// has; rules that say nothing; what lacks a mass or work; pairs of chassis and body
// that begin with things in one place or with a clause that is not met. It takes some
// seconds on a large catalogue. Those that stop come first.
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
	l.Then("units as they begin", stepsOfPair+stepsPerPick*int64(len(ed.Cat.Options)), p.jobs()...)
	return l
}
