package rules

import (
	"fmt"
	"slices"

	"boxwright/config"
	"boxwright/config/solve"
)

// What one question of the lint may take: conflicts, and steps of a solver. A
// table of many questions begins with some of the steps and goes on with twice as
// many, in a slice of its own, until all is answered or the most was spent.
const (
	lintBudget     = 20_000
	lintSteps      = 2_000_000
	firstLintSteps = 250_000
)

// Lint looks for faults of a catalogue's rules and data that reading it file
// by place does not show: options that no unit can have or that every unit has,
// rules that say nothing or contradict each other, and options that lack a
// price, a weight or work. Findings come in the order of the catalogue; a Stop
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
	l.phases = []phase{
		{"whether any unit is possible", func() {
			if !l.stands() {
				l.phases = nil
			}
		}},
		{"options", l.choices},
		{"chassis with their modules", l.groups},
		{"rules", l.rules},
		{"prices, masses and work", l.data},
		{"what stands in one place", l.shapes},
	}
	if limits != nil {
		l.phases = append(l.phases, phase{"weights and other limits", func() { l.within(limits) }})
	}
	l.phases = append(l.phases, phase{"what is left open", l.tellOpen})
	l.name = l.phases[0].name
	return l
}

// Linter goes through a catalogue in slices.
type Linter struct {
	e      *Engine
	out    []config.Finding
	phases []phase  // still to begin
	name   string   // of the phase under way
	jobs   []func() // of it, still to be done
	of     int      // jobs that it has in all
	other  int64    // work beside that of the solvers, in steps
	open   int      // questions left open for want of work

	possible []bool // by id: a unit without limits can have it
}

// Then has the linter do more jobs before it tells what it left open: each gives what it
// finds, and counts as so many steps of a solver.
func (l *Linter) Then(name string, steps int64, jobs ...func() []config.Finding) {
	if len(l.phases) == 0 {
		return // the catalogue cannot be compiled, and that is said
	}
	do := make([]func(), len(jobs))
	for i, job := range jobs {
		do[i] = func() {
			l.other += steps
			l.out = append(l.out, job()...)
		}
	}
	last := len(l.phases) - 1
	l.phases = slices.Insert(l.phases, last, phase{name, func() { l.next(do...) }})
}

// phase is a part of the lint that looks at one kind of thing.
type phase struct {
	name  string // such as "rules", after "checking"
	begin func() // does it, or puts jobs before the next phase
}

// jobSteps is what a job takes at least, in steps of a solver.
const jobSteps = 300

// Go goes on until the steps are used up, 0 or less for the end, and reports
// whether all is done.
func (l *Linter) Go(steps int64) bool {
	for spent := int64(0); len(l.jobs)+len(l.phases) > 0; {
		if steps > 0 && spent >= steps {
			return false
		}
		before := l.steps()
		l.step()
		spent += max(jobSteps, l.steps()-before)
	}
	return true
}

// step does the next job, or begins the next phase.
func (l *Linter) step() {
	if len(l.jobs) > 0 {
		job := l.jobs[0]
		l.jobs = l.jobs[1:]
		job()
		return
	}
	next := l.phases[0]
	l.phases = l.phases[1:]
	l.name, l.of = next.name, 0
	next.begin()
}

// steps of the solvers in work, and of what is done beside; fewer when a solver
// was exchanged.
func (l *Linter) steps() int64 {
	n := l.other + l.e.solver.Stats.Steps
	if l.e.proof != nil {
		n += l.e.proof.solver.Stats.Steps
	}
	return n
}

// next puts jobs into the phase under way, before those it has.
func (l *Linter) next(jobs ...func()) {
	l.of += len(jobs)
	l.jobs = append(jobs, l.jobs...)
}

// again goes on with the job at hand in a slice of its own.
func (l *Linter) again(job func()) { l.jobs = append([]func(){job}, l.jobs...) }

// Progress is what is looked at now, such as "rules", and how many of them are
// done; of is 0 while that is not known.
func (l *Linter) Progress() (name string, done, of int) { return l.name, l.of - len(l.jobs), l.of }

// Findings so far.
func (l *Linter) Findings() []config.Finding { return l.out }

func (l *Linter) add(code string, s config.Severity, where, text, remedy string, picks ...string) {
	l.out = append(l.out, config.Finding{Code: "catalogue." + code, Severity: s, Where: where, Text: text,
		Remedy: remedy, Basis: config.Computed, Picks: picks})
}

// table has a table judged, in slices, and hands it on. What is still undecided
// when the most was spent is counted as open, and is handed on as it is.
func (l *Linter) table(q solve.Query, then func([]solve.Verdict, solve.Result)) {
	q.Budget = lintBudget
	if q.Work == 0 {
		q.Work = firstLintSteps
	}
	verdicts, r := l.e.table.Answer(q)
	open := 0
	if r == solve.Unknown {
		open = 1
	}
	for v, verdict := range verdicts {
		switch {
		case q.Only != nil && !q.Only[v]:
		case !q.Hold && !verdict.Decided(), verdict&(solve.CanHold|solve.CannotHold) == 0:
			open++
		}
	}
	if open > 0 && q.Work < lintSteps {
		q.Work *= 2
		l.again(func() { l.table(q, then) })
		return
	}
	l.open += open
	then(verdicts, r)
}

// tellOpen says how much the work allowed did not suffice for.
func (l *Linter) tellOpen() {
	if l.open > 0 {
		l.add("left-open", config.Note, "rules", fmt.Sprintf("%d questions took more work than is allowed, and nothing "+
			"is said of them.", l.open), "Nothing needs to be done; simpler rules are checked in full.")
	}
}
