package quote

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/leadtime"
	"boxwright/config/power"
	"boxwright/config/quantity"
	"boxwright/config/rules"
	"boxwright/config/space"
	"boxwright/config/standards"
	"boxwright/config/weight"
	"boxwright/pricing"
)

// Quote is a draft with everything computed from it.
type Quote struct {
	Edition *Edition
	Draft   *Draft
	Chassis *config.Chassis
	Body    *config.Body
	OfDuty  *config.Duty // by what the unit has; nil for none

	Assume   config.Assumptions
	Weight   *weight.Sheet
	Power    *power.Sheet
	Space    *space.Sheet
	Plan     *leadtime.Plan
	Price    *pricing.Sheet
	Book     *pricing.Book // as in force on the day of the quote
	Verdicts []standards.Verdict

	Arrangements []Arrangement // of people, in a unit of several patients

	// Findings of every check, those that stop the quote first.
	Findings []config.Finding

	own        []config.Finding // the findings of the unit in work alone
	deliveries []Delivery
	reached    reach // how far the deliveries go

	answer *rules.Answer
	effort int // spent on the answer
}

// Compute checks the draft against the edition and works everything out. The
// error is a config.Problems when the draft cannot be computed with this
// edition at all.
func Compute(ed *Edition, d *Draft) (*Quote, error) { return ComputeWith(ed, d, 0) }

// ComputeWith is Compute with more work allowed for what is undecided: each step
// of effort, from 0 to MaxEffort, doubles it.
func ComputeWith(ed *Edition, d *Draft, effort int) (*Quote, error) {
	ed = ed.For(&d.Unit)
	u := &d.Unit
	if ps := ed.Cat.CheckUnit(u); len(ps) > 0 {
		return nil, ps
	}
	q := &Quote{
		Edition: ed, Draft: d,
		Chassis: ed.Cat.ChassisByID(u.Chassis), Body: ed.Cat.BodyOf(u), OfDuty: ed.Cat.DutyOf(u),
		Assume: standards.Assume(u.RuleSet, ed.Cat, u),
	}
	q.Weight = weight.Weigh(ed.Cat, u, &q.Assume, d.Tickets...)
	q.Power = power.Budget(ed.Cat, u, &q.Assume)
	q.rewire()
	q.Space = space.Measure(ed.Cat, u, &q.Assume)
	var err error
	if err = q.schedule(); err != nil {
		return nil, err
	}
	if q.Price, err = PriceAll(ed, d); err != nil {
		return nil, err
	}
	q.say()
	q.Book = ed.bookOn(d.Date)
	q.Verdicts = standards.Judge(u.RuleSet, u, ed.Cat, q.judged()...)
	q.effort = min(max(effort, 0), MaxEffort)
	q.stand()
	q.Arrangements = q.arranged()
	others, err := q.fleet()
	if err != nil {
		return nil, err
	}
	q.gather(others)
	return q, nil
}

// say puts the words of the unit's duty into what the checks say.
func (q *Quote) say() {
	d := q.OfDuty
	if d == nil || len(d.Says) == 0 {
		return
	}
	if d.Lacks("cot") && len(q.Space.Cots) == 0 { // what the unit has no place for is no figure of it
		none := func(f config.Figure) bool {
			return f.Code == "space.patients" || f.Code == "weight.patients" ||
				(f.Code == "space.oxygen" || f.Code == "space.storage") && f.Value == 0
		}
		q.Space.Figures = slices.DeleteFunc(q.Space.Figures, none)
		q.Weight.Figures = slices.DeleteFunc(q.Weight.Figures, none)
	}
	for i := range q.Weight.Items {
		q.Weight.Items[i].Label = d.Say(q.Weight.Items[i].Label)
	}
	for _, seats := range [][]config.Seat{q.Space.Cots, q.Space.Seats, q.Space.Model.Seats} {
		for i := range seats {
			seats[i].Label = d.Say(seats[i].Label)
		}
	}
	for i := range q.Space.Compartments {
		q.Space.Compartments[i].Label = d.Say(q.Space.Compartments[i].Label)
	}
	if m := q.Space.Model; m != nil {
		for i := range m.Parts {
			m.Parts[i].Label = d.Say(m.Parts[i].Label)
		}
		for i := range m.Compartments {
			m.Compartments[i].Label = d.Say(m.Compartments[i].Label)
		}
	}
	for _, r := range q.judged() {
		for i := range r.Figures {
			r.Figures[i].Label, r.Figures[i].Assumed = d.Say(r.Figures[i].Label), d.Say(r.Figures[i].Assumed)
		}
		for i := range r.Findings {
			f := &r.Findings[i]
			f.Text, f.Remedy, f.Where = d.Say(f.Text), d.Say(f.Remedy), d.Say(f.Where)
		}
	}
}

// MaxEffort ends the doubling of what is spent on one question.
const MaxEffort = 12

// budget of an effort, in conflicts.
func budget(effort int) int64 { return rules.DefaultBudget << effort }

// effortForOthers is added to the effort where chassis and bodies other than the
// unit's are judged: each takes a solver of its own, and few need a search. On a large
// catalogue some are still being checked then, and each takes its turn.
func (q *Quote) effortForOthers() int {
	effort := 6
	for n := len(q.Edition.Cat.Options); n > 2*usualOptions && effort > 0; n /= 2 {
		effort--
	}
	return effort
}

// usualOptions are those of a catalogue that is not large.
const usualOptions = 600

// State tells whether a chassis, a body or an option can still be chosen. It is judged
// when it is first asked about: chassis and bodies other than the unit's all together,
// and so are the options that Judge was not asked for.
func (q *Quote) State(id string) rules.State {
	e, u := q.Edition.Rules, &q.Draft.Unit
	if q.Edition.Cat.OptionByID(id) == nil {
		e.AskElsewhere(q.answer, u, Limits(q.Edition, q.Draft), budget(q.effort+q.effortForOthers()))
	}
	if q.answer.State(id) == rules.Unasked {
		e.AskAll(q.answer, u, Limits(q.Edition, q.Draft), budget(q.effort))
	}
	return q.answer.State(id)
}

// Judge judges some options at once, whose State is asked for next. On a large
// catalogue that takes a fraction of what judging all of it does.
func (q *Quote) Judge(options ...string) {
	q.Edition.Rules.Ask(q.answer, &q.Draft.Unit, Limits(q.Edition, q.Draft), budget(q.effort), options)
}

// Decide is State of one id which the user waits for: it is given more work while that
// does not suffice, up to MaxEffort.
func (q *Quote) Decide(id string) rules.State {
	q.Judge(id)
	state, harder := q.State(id), *q
	for state == rules.Checking && harder.effort < MaxEffort {
		harder.effort = min(harder.effort+2, MaxEffort)
		harder.stand()
		harder.Judge(id)
		state = harder.State(id)
	}
	return state
}

// stand asks whether the picks can stand together.
func (q *Quote) stand() {
	answer := q.Edition.Rules.Stand(&q.Draft.Unit, Limits(q.Edition, q.Draft), budget(q.effort))
	q.answer = &answer
}

// Undecided reports whether more effort may tell more of what State was asked.
func (q *Quote) Undecided() bool { return len(q.answer.Undecided) > 0 && q.effort < MaxEffort }

// judged are the reports that clauses are held against.
func (q *Quote) judged() []*config.Report {
	return []*config.Report{&q.Weight.Report, &q.Power.Report, &q.Space.Report}
}

func (q *Quote) gather(others []config.Finding) {
	q.own = slices.Concat(
		q.fit(), q.Weight.Findings, q.Power.Findings, q.Space.Findings, standards.Findings(q.Verdicts, q.judged()...),
		q.Plan.Findings, q.Price.Findings, q.dated(), q.lastLate(), q.unmet(), q.pending(),
		standards.Remount(q.Edition.Cat, &q.Draft.Unit), standards.Unsuited(q.Edition.Cat, &q.Draft.Unit),
		q.crowded(), q.foreign(),
	)
	q.Findings = slices.Concat(q.own, others)
	Worst(q.Findings)
}

// OwnFindings are the findings of the unit in work, without those of the other units
// of the quote.
func (q *Quote) OwnFindings() []config.Finding { return q.own }

// orderEarly is the code of an order before the quote's own day.
const orderEarly = "time.order-early"

// dated asks about an order that would be placed before the quote is dated.
func (q *Quote) dated() []config.Finding {
	order, quoted := q.Draft.Unit.OrderOn, q.Draft.Date
	if order.IsZero() || quoted.IsZero() || !order.Before(quoted) {
		return nil
	}
	return []config.Finding{{Code: orderEarly, Severity: config.Warn, Where: "order date",
		Text: "The order is placed on " + order.Long() + ", before the quote is dated, " + quoted.Long() + ".",
		Remedy: "Set the day of the order to " + quoted.Long() + " or later, or the quote's date to the day it " +
			"was made.",
	}}
}

// Worst puts the findings that stop something first, then those that need a
// decision.
func Worst(list []config.Finding) {
	slices.SortStableFunc(list, func(a, b config.Finding) int {
		return cmp.Compare(b.Severity.Rank(), a.Severity.Rank())
	})
}

// ConflictCode is the code of the finding that picks do not go together.
const ConflictCode = "rules.conflict"

// fit says where the picks do not go together. A limit that chassis and module
// break by themselves or with a single pick is left to the check that stops the
// unit by it: there the same sum would only be said again.
func (q *Quote) fit() []config.Finding {
	if q.answer.Satisfiable {
		return nil
	}
	var out []config.Finding
	for _, r := range q.Edition.Rules.Conflict(&q.Draft.Unit, Limits(q.Edition, q.Draft)) {
		if len(r.Picks) < 2 && len(r.Limits) > 0 && q.stopped(r.Limits[0].Code) || q.onlyUnasked(&r) {
			continue
		}
		said := strings.ReplaceAll(q.Words(r, quantity.US), withThis, "; with "+q.Labels(r.Picks)+" ")
		same := func(f config.Finding) bool { return slices.Equal(f.Picks, r.Picks) }
		if i := slices.IndexFunc(out, same); i >= 0 { // of the same picks once, with each of its reasons
			if !strings.Contains(out[i].Text, said) {
				out[i].Text += " " + said
			}
			continue
		}
		out = append(out, config.Finding{
			Code: ConflictCode, Severity: config.Stop, Where: "Options that do not go together",
			Text: said, Picks: r.Picks, Remedy: "Take out or exchange one of: " + q.Labels(r.Picks) +
				".",
		})
	}
	return out
}

// onlyUnasked reports whether a reason only says that chassis and body are not what
// was asked for, which the needs say themselves.
func (q *Quote) onlyUnasked(r *rules.Reason) bool {
	own := slices.ContainsFunc(r.Picks, func(id string) bool { return q.Edition.Cat.OptionByID(id) != nil })
	return !own && len(r.Limits) > 0 && !slices.ContainsFunc(r.Limits, func(a rules.Arithmetic) bool {
		return !strings.HasPrefix(a.Code, needCode)
	})
}

// stopped reports whether a check has stopped the unit by a figure.
func (q *Quote) stopped(figure string) bool {
	for _, r := range q.judged() {
		if slices.ContainsFunc(r.Findings, func(f config.Finding) bool {
			return f.Severity == config.Stop && f.Figure != nil && f.Figure.Code == figure
		}) {
			return true
		}
	}
	return false
}

// StillToBeNamed is the code of the finding that lists the options which ask for a word
// of the customer.
const StillToBeNamed = "rules.detail"

// mostAsking is how many of them it lists by name; it leads to all of them.
const mostAsking = 8

// pending names the groups that still need a choice, and the options that still
// ask for something.
func (q *Quote) pending() []config.Finding {
	var out []config.Finding
	cat := q.Edition.Cat
	for i := range cat.Groups {
		g := &cat.Groups[i]
		if g.Choose != config.ChooseOne {
			continue
		}
		chosen := slices.ContainsFunc(cat.Members(g.ID), func(m int) bool {
			return q.Draft.Unit.Has(cat.Options[m].ID)
		})
		if !chosen {
			out = append(out, config.Finding{
				Code: "rules.choose", Severity: config.Warn, Where: g.Label, Clause: g.ID,
				Text:   "nothing is chosen yet.",
				Remedy: "Choose one, or complete the unit.",
			})
		}
	}
	var asking, said []string
	for _, p := range q.Draft.Unit.Picks {
		if o := cat.OptionByID(p.Option); o.Asks != "" && q.Draft.Unit.Detail(o.ID) == "" {
			asking, said = append(asking, o.ID), append(said, o.Label+" ("+o.Asks+")")
		}
	}
	if n := len(said); n > mostAsking {
		said = append(said[:mostAsking-1], fmt.Sprintf("and %d more", n-mostAsking+1))
	}
	if asking != nil {
		out = append(out, config.Finding{
			Code: StillToBeNamed, Severity: config.Note, Where: "Still to be named", Picks: asking,
			Text: strings.Join(said, "; ") + ".", Remedy: "Write it beside the option; until then the quote says that it " +
				"is to be named.",
		})
	}
	return out
}

// Chosen words what a reason rests on: the customer's own choices, and what the
// program filled in. Each ends with a full stop.
func (q *Quote) Chosen(ids []string) string {
	var own, filled []string
	for _, id := range ids {
		if q.Draft.Unit.Filled(id) {
			filled = append(filled, id)
		} else {
			own = append(own, id)
		}
	}
	text := ""
	if own != nil {
		text = "With your choice of: " + q.Labels(own) + ". "
	}
	if filled != nil {
		text += "With what was filled in: " + q.Labels(filled) + "."
	}
	return strings.TrimSpace(text)
}

// Labels joins the names of ids for a sentence.
func (q *Quote) Labels(ids []string) string {
	names := make([]string, len(ids))
	for i, id := range ids {
		names[i] = q.Edition.Cat.LabelOf(id)
	}
	return strings.Join(names, "; ")
}

// Total is the price with its currency.
func (q *Quote) Total() string { return q.Price.Currency + " " + q.Price.Total.Show() }

// PriceWords says how many units the total is for, at how much each, and
// what of it is sales tax.
func (q *Quote) PriceWords() string {
	words := q.Price.SalesTax.Words() + "."
	if each := q.Price.EachWords(); each != "" {
		words = each + ". " + words
	}
	return words
}

// Figure finds a figure of any check by its code.
func (q *Quote) Figure(code string) (config.Figure, bool) {
	for _, r := range append(q.judged(), &q.Plan.Report) {
		if f, ok := r.Figure(code); ok {
			return f, true
		}
	}
	return config.Figure{}, false
}

// Stopped reports whether something forbids issuing the quote as it stands.
func (q *Quote) Stopped() bool {
	return slices.ContainsFunc(q.Findings, func(f config.Finding) bool { return f.Severity == config.Stop })
}

// Misdeclared says which declaration the quote includes that a unit of it does not keep, in
// full sentences; empty when there is none. A clause whose number is from memory stops no
// unit, but a quote that declares the contrary is not signed.
func (q *Quote) Misdeclared() string {
	for _, f := range q.Findings {
		if f.Code == standards.DeclaredCode {
			return f.Text + " " + f.Remedy
		}
	}
	return ""
}
