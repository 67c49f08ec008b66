package quote

import (
	"cmp"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/leadtime"
	"boxwright/config/order"
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

	Assume   config.Assumptions
	Answer   rules.Answer
	Weight   *weight.Sheet
	Power    *power.Sheet
	Space    *space.Sheet
	Plan     *leadtime.Plan
	Price    *pricing.Sheet
	Book     *pricing.Book // as in force on the day of the quote
	Verdicts []standards.Verdict

	// Findings of every check, those that stop the quote first.
	Findings []config.Finding

	deliveries []Delivery
}

// Compute checks the draft against the edition and works everything out. The
// error is a config.Problems when the draft cannot be computed with this
// edition at all.
func Compute(ed *Edition, d *Draft) (*Quote, error) { return Settle(ed, d, 0) }

// Settle is Compute with more work allowed for what is still checking: each
// step of effort doubles it.
func Settle(ed *Edition, d *Draft, effort int) (*Quote, error) {
	ed = ed.For(&d.Unit)
	u := &d.Unit
	if ps := ed.Cat.CheckUnit(u); len(ps) > 0 {
		return nil, ps
	}
	q := &Quote{
		Edition: ed, Draft: d,
		Chassis: ed.Cat.ChassisByID(u.Chassis), Body: ed.Cat.BodyOf(u),
		Assume: standards.Assume(u.RuleSet, ed.Cat, u),
	}
	q.Weight = weight.WeighWith(ed.Cat, u, &q.Assume, d.Tickets)
	q.Power = power.Budget(ed.Cat, u, &q.Assume)
	d.Wiring.rewire(ed.Cat, u, q.Power)
	q.Space = space.Measure(ed.Cat, u, &q.Assume)
	var err error
	if err = q.schedule(); err != nil {
		return nil, err
	}
	if q.Price, err = priceAll(ed, d); err != nil {
		return nil, err
	}
	q.Book = ed.Book.On(d.Date)
	q.Verdicts = standards.Judge(u.RuleSet, u, ed.Cat, &q.Weight.Report, &q.Power.Report, &q.Space.Report)
	q.Answer = ed.Rules.Settle(u, Limits(ed, d), rules.DefaultBudget<<min(max(effort, 0), 20))
	others, err := q.fleet()
	if err != nil {
		return nil, err
	}
	q.gather(others)
	return q, nil
}

func (q *Quote) gather(others []config.Finding) {
	q.Findings = slices.Concat(
		q.fit(), q.Weight.Findings, q.Power.Findings, q.Space.Findings, q.Plan.Findings, q.Price.Findings, q.pending(), standards.Remount(q.Edition.Cat, &q.Draft.Unit), others,
	)
	Worst(q.Findings)
}

// Worst puts the findings that stop something first, then those that need a
// decision.
func Worst(list []config.Finding) {
	rank := map[config.Severity]int{config.Stop: 0, config.Warn: 1, config.Note: 2}
	order.Sort(list, func(a, b config.Finding) int { return cmp.Compare(rank[a.Severity], rank[b.Severity]) })
}

// fit says where the picks do not go together.
func (q *Quote) fit() []config.Finding {
	if q.Answer.Satisfiable {
		return nil
	}
	var out []config.Finding
	for _, r := range q.Edition.Rules.Conflict(&q.Draft.Unit, Limits(q.Edition, q.Draft)) {
		out = append(out, config.Finding{
			Code: "rules.conflict", Severity: config.Stop, Where: "Options that do not go together",
			Text: q.Words(r, quantity.US), Picks: r.Picks, Remedy: "Take out or exchange one of: " + q.Labels(r.Picks) + ".",
		})
	}
	return out
}

// pending names the groups that still need a choice.
func (q *Quote) pending() []config.Finding {
	var out []config.Finding
	cat := q.Edition.Cat
	for i := range cat.Groups {
		g := &cat.Groups[i]
		if g.Choose != config.ChooseOne {
			continue
		}
		chosen := slices.ContainsFunc(cat.Members(g.ID), func(m int) bool { return q.Draft.Unit.Has(cat.Options[m].ID) })
		if !chosen {
			out = append(out, config.Finding{
				Code: "rules.choose", Severity: config.Warn, Where: g.Label, Clause: g.ID,
				Text: "nothing is chosen yet.", Remedy: "Choose one in the Unit area, or press Complete the unit there.",
			})
		}
	}
	return out
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

// Figure finds a figure of any check by its code.
func (q *Quote) Figure(code string) (config.Figure, bool) {
	for _, r := range []*config.Report{&q.Weight.Report, &q.Power.Report, &q.Space.Report, &q.Plan.Report} {
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
