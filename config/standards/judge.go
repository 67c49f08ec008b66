package standards

import (
	"fmt"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
)

// Outcome of one clause.
type Outcome string

// The outcomes.
const (
	Met       Outcome = "met"
	NotMet    Outcome = "not met"
	Declared  Outcome = "declared by the plant"
	NotJudged Outcome = "not judged"
	// DoesNotApply is a clause for other vehicles or for what is not ordered.
	DoesNotApply Outcome = "does not apply"
)

// Outcomes in the order in which they are counted.
var Outcomes = []Outcome{NotMet, Met, Declared, NotJudged, DoesNotApply}

// Verdict is one line of the compliance sheet.
type Verdict struct {
	Set     string // id of the rule set
	Clause  string // id
	Title   string
	Text    string
	Edition string
	Outcome Outcome
	Figure  *config.Figure // with the clause's limit; nil when there is none
	Source  string
	Basis   config.Basis
	Note    string   // why it is not judged, or who declares it
	Settles string   // the paper or the test that settles it; empty where a figure does
	Picks   []string // options that declare it
	Mild    bool     // see Clause
}

// Judge goes through the federal rules and then through every clause of the
// chosen sets, in their order, reading the figures the calculators have
// reported. A number that was read is judged as the text has it, even where the
// purchaser asks for less; one that was not read gives way to the purchaser's
// own. The purchaser's limits by which no clause was judged come last, as lines
// of their own.
func Judge(ruleSet string, u *config.Unit, cat *config.Catalogue, reports ...*config.Report) []Verdict {
	chosen, unknown := Split(ruleSet)
	j := judge{own: map[string]float64{}, used: map[string]bool{}, figures: map[string]config.Figure{}}
	if u == nil || cat == nil || cat.ChassisByID(u.Chassis) == nil {
		return []Verdict{{Outcome: NotJudged, Title: "The unit",
			Note: "There is no unit with a chassis of this edition to judge."}}
	}
	j.read(cat, u, Assume(ruleSet, cat, u), reports)
	var out []Verdict
	for _, s := range append([]Set{always}, chosen...) {
		for i := range s.Clauses {
			out = append(out, j.clause(s.ID, &s.Clauses[i]))
		}
	}
	for _, id := range unknown {
		out = append(out, Verdict{Set: id, Outcome: NotJudged, Title: "Rule set",
			Note: fmt.Sprintf("%q is not a rule set of this program; choose another.", id)})
	}
	return append(out, j.purchaser(u)...)
}

// judge holds what the clauses are judged by.
type judge struct {
	chassis  *config.Chassis
	day      config.Date
	figures  map[string]config.Figure
	own      map[string]float64
	used     map[string]bool     // own limits by which a clause was judged
	declares map[string][]string // clause id to the options that declare it
	offered  map[string]string   // clause id to the label of the first option that would
}

func (j *judge) read(cat *config.Catalogue, u *config.Unit, assume config.Assumptions, reports []*config.Report) {
	j.chassis, j.day = cat.ChassisByID(u.Chassis), u.OrderOn
	for _, f := range facts(j.chassis, assume) {
		j.figures[f.Code] = f
	}
	for _, r := range reports {
		if r == nil {
			continue
		}
		for _, f := range r.Figures {
			j.figures[f.Code] = f
		}
	}
	for _, o := range ownLimits(u) {
		j.own[o.Figure] = o.Value
	}
	j.declares, j.offered = map[string][]string{}, map[string]string{}
	for _, o := range cat.Options {
		for _, c := range o.Clauses {
			if j.offered[c] == "" {
				j.offered[c] = o.Label
			}
		}
	}
	for _, p := range u.Picks {
		o := cat.OptionByID(p.Option)
		if o == nil {
			continue
		}
		for _, c := range o.Clauses {
			if !slices.Contains(j.declares[c], o.ID) {
				j.declares[c] = append(j.declares[c], o.ID)
			}
		}
	}
}

// clause gives one line.
func (j *judge) clause(set string, c *Clause) Verdict {
	v := Verdict{Set: set, Clause: c.ID, Title: c.Title, Text: c.Text, Outcome: NotJudged, Picks: j.declares[c.ID],
		Mild: c.Mild}
	row, ok := c.At(j.day, j.chassis)
	if !ok {
		v.Outcome, v.Note = DoesNotApply, "Nothing of it is in force for this type of vehicle on the day of the order."
		return v
	}
	if c.Ordered && len(v.Picks) == 0 {
		v.Outcome, v.Note = DoesNotApply, "What it is about is not ordered."
		return v
	}
	v.Edition, v.Source, v.Basis = row.Edition, row.Source, row.Basis
	f, computed := j.figures[c.Figure]
	switch {
	case c.Figure == "":
		v.Settles = Settles(c.ID)
		j.declared(&v)
		return v
	case !computed && c.Fitted:
		return Verdict{Set: set, Clause: c.ID, Title: c.Title, Text: c.Text, Outcome: DoesNotApply,
			Note: "The unit has none."}
	case !computed:
		v.Note, v.Settles = "No such figure is worked out for this unit.", measured
		if len(v.Picks) > 0 {
			j.declared(&v)
		}
		return v
	}
	v.Figure = &f
	if c.Sense == "" {
		if f.Sense == "" {
			v.Settles = Settles(c.ID)
			j.declared(&v)
			return v
		}
		v.decide()
		return v
	}
	f.Sense, f.Limit, f.Source, f.Basis, f.Chance = c.Sense, row.Value, row.Source, row.Basis, 0
	if own, given := j.own[c.Figure]; given && row.Basis != config.ReadInText {
		f.Limit, f.Source, f.Basis = own, "set by the purchaser", config.Purchaser
		v.Basis = config.Purchaser
		j.used[c.Figure] = true
		if !row.Open {
			v.Note = fmt.Sprintf("The purchaser's own value; from memory the text has %s.",
				quantity.US.Show(row.Value, c.Unit))
		}
	} else if row.Open {
		f.Sense, f.Limit = "", 0
		v.Note, v.Settles = "No number is built in; enter the purchaser's own to have it judged.", named
		return v
	}
	v.decide()
	return v
}

// declared by the options that name the clause, if there are any.
func (j *judge) declared(v *Verdict) {
	if len(v.Picks) == 0 {
		v.Note = "No option of this catalogue declares it: ask the plant."
		if label := j.offered[v.Clause]; label != "" {
			v.Note = "Nothing in the unit declares it; " + label + " would."
		}
		return
	}
	v.Outcome, v.Note = Declared, ""
}

func (v *Verdict) decide() {
	v.Outcome = NotMet
	if v.Figure.Met() {
		v.Outcome = Met
	}
}

// purchaser judges the purchaser's limits by which no clause was judged.
func (j *judge) purchaser(u *config.Unit) []Verdict {
	var out []Verdict
	for _, o := range ownLimits(u) {
		if j.used[o.Figure] {
			continue
		}
		v := Verdict{Set: "purchaser", Clause: "purchaser-" + o.Figure, Title: "Purchaser's own limit",
			Outcome: NotJudged, Source: "set by the purchaser", Basis: config.Purchaser}
		f, computed := j.figures[o.Figure]
		sense, known := SenseOf(o.Figure)
		if !computed || !known {
			v.Note = fmt.Sprintf("%q is not a figure of this unit that can be limited.", o.Figure)
			out = append(out, v)
			continue
		}
		v.Title, v.Text = f.Label, fmt.Sprintf("The purchaser asks for %s %s.", sense,
			quantity.US.Show(o.Value, f.Unit))
		f.Sense, f.Limit, f.Source, f.Basis, f.Chance = sense, o.Value, v.Source, v.Basis, 0
		v.Figure = &f
		v.decide()
		out = append(out, v)
	}
	return out
}

// Findings turns the lines that are not met into findings, leaving out those
// whose figure the calculators have already reported against the same limit. A
// text that was read stops, and a number from memory is a note; where the purchaser has
// knowingly asked for less, and where the number is softer, a decision is asked for. The
// undue declarations come last.
func Findings(verdicts []Verdict, reports ...*config.Report) []config.Finding {
	lowered := map[string]bool{}
	for _, v := range verdicts {
		if v.Basis == config.Purchaser && v.Figure != nil && v.Figure.Sense != "" {
			lowered[v.Figure.Code] = true
		}
	}
	var out []config.Finding
	for _, v := range verdicts {
		if v.Outcome != NotMet || reported(v.Figure, reports) {
			continue
		}
		f := config.Finding{Code: "standard." + v.Clause, Severity: config.Warn, Where: "Standard", Figure: v.Figure,
			Clause: v.Clause, Basis: v.Basis,
			Text: fmt.Sprintf("%s: %s is %s; %s asks for %s %s.", v.Title, v.Figure.Label,
				quantity.US.Show(v.Figure.Value, v.Figure.Unit), v.Figure.Source, v.Figure.Sense,
				quantity.US.Show(v.Figure.Limit, v.Figure.Unit)),
			Remedy: "Choose another chassis, body or options, or quote it as an exception."}
		switch {
		case v.Basis == config.ReadInText && !v.Mild && !lowered[v.Figure.Code]:
			f.Severity = config.Stop
		case v.Basis == config.FromMemory:
			f.Severity = config.Note
			f.Remedy = "The number is from memory: check the standard, or enter the purchaser's own limit."
		}
		out = append(out, f)
	}
	return append(out, undue(verdicts)...)
}

// DeclaredCode is the code of the finding that a unit is declared to a set and misses a clause of
// it.
const DeclaredCode = "standard.declared"

// undue are the declarations of a whole set of which a clause is not met. One stops the
// unit where a number was read; where all are from memory, they are to be checked before
// anybody signs.
func undue(verdicts []Verdict) []config.Finding {
	var out []config.Finding
	for _, s := range sets {
		i := slices.IndexFunc(verdicts, func(v Verdict) bool {
			return v.Set == s.ID && v.Clause == s.Declaration && v.Outcome == Declared
		})
		if s.Declaration == "" || i < 0 {
			continue
		}
		var missed []string
		f := config.Finding{Code: DeclaredCode, Severity: config.Warn, Where: "Standard",
			Clause: s.Declaration, Picks: verdicts[i].Picks, Remedy: "The numbers are from memory: check the " +
				"standard's text before anybody signs, and enter its own in Standards; or take the declaration out."}
		for _, v := range verdicts {
			if v.Set == s.ID && v.Outcome == NotMet {
				if v.Basis != config.FromMemory {
					f.Severity, f.Remedy = config.Stop, "Take the declaration out, or change the unit."
				}
				show := func(value float64) string { return quantity.US.Show(value, v.Figure.Unit) }
				missed = append(missed, fmt.Sprintf("%s, %s, missed by %s (%s %s, %s)", v.Title,
					show(v.Figure.Value), show(-v.Figure.Margin()), v.Figure.Sense, show(v.Figure.Limit), v.Basis))
			}
		}
		if missed == nil {
			continue
		}
		f.Text = "The unit is declared to " + s.Label + " and does not meet: " + strings.Join(missed, "; ") + "."
		out = append(out, f)
	}
	return out
}

// reported says whether a calculator has a finding on this figure and limit.
func reported(f *config.Figure, reports []*config.Report) bool {
	for _, r := range reports {
		if r == nil {
			continue
		}
		for _, x := range r.Findings {
			if x.Figure != nil && x.Figure.Code == f.Code && x.Figure.Limit == f.Limit && x.Figure.Sense == f.Sense {
				return true
			}
		}
	}
	return false
}
