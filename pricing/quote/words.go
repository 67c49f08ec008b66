package quote

import (
	"fmt"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/rules"
)

// Words puts a reason in the rules' own sentences. Where a limit is reached its
// sum says it all: the many rules that keep a full unit from being lighter
// would only hide it, see Background.
func (q *Quote) Words(r rules.Reason, in quantity.System) string {
	return strings.Join(q.Sentences(r, in), " ")
}

// Sentences are the words of a reason, a rule or a limit each.
func (q *Quote) Sentences(r rules.Reason, in quantity.System) []string {
	var out []string
	for i := range r.Limits {
		out = append(out, q.sum(&r.Limits[i], in))
	}
	if !summed(r) {
		out = append(out, ruleTexts(r)...)
	}
	if len(out) == 0 {
		for _, id := range r.Groups {
			if g := q.Edition.Cat.GroupByID(id); g != nil {
				out = append(out, fmt.Sprintf("Of %s only %s can be had.", g.Label,
					map[string]string{config.ChooseOne: "one", config.ChooseAtMostOne: "one at most"}[g.Choose]))
			}
		}
	}
	return out
}

// Background is the rules that play a part in a reason whose limit is shown.
func (q *Quote) Background(r rules.Reason) []string {
	if !summed(r) {
		return nil
	}
	return ruleTexts(r)
}

// summed reports whether a reason is the sum of a limit, other than that an option must be in:
// of such a one the rules say why it cannot be.
func summed(r rules.Reason) bool {
	return slices.ContainsFunc(r.Limits, func(a rules.Arithmetic) bool { return !strings.HasPrefix(a.Code, hasCode) })
}

// ruleTexts are the rules' sentences, each once.
func ruleTexts(r rules.Reason) []string {
	var out []string
	for _, rule := range r.Rules {
		if !slices.Contains(out, rule.Text) {
			out = append(out, rule.Text)
		}
	}
	return out
}

// sum writes a limit's arithmetic as one can say it aloud: what it comes to, and by how
// much that is too much; where only a full unit would be, what is left for the rest of it.
func (q *Quote) sum(a *rules.Arithmetic, in quantity.System) string {
	if strings.HasPrefix(a.Code, needCode) {
		return q.needSum(a, in)
	}
	show := q.shown(a, in)
	with := "with this"
	if a.Asked == 0 {
		with = "with your choices"
	}
	none, total, by := in.Show(0, a.Unit), a.Total, a.Over
	if by <= 0 { // what is asked of a full unit decides, beside what is known to be in it
		total = a.Base + a.Picked + a.Asked
		by = total - a.Limit
		if left := in.Show(-by, a.Unit); by < 0 && left != none {
			return fmt.Sprintf("%s: %s left %s, and a full unit still needs more.", a.Label, left, with)
		}
	}
	over := in.Show(by, a.Unit)
	if over == none {
		over = "just"
	}
	if q.negated(a) {
		return fmt.Sprintf("%s: %s %s, %s short of %s.", a.Label, show(total), with, over, show(a.Limit))
	}
	return fmt.Sprintf("%s: %s %s, %s over the limit of %s.", a.Label, show(total), with, over, show(a.Limit))
}

// negated reports whether a limit was handed to the rules with both sides negated.
func (q *Quote) negated(a *rules.Arithmetic) bool {
	return a.Limit < 0 && q.Assume.Limits[a.Code].Sense == config.AtLeast
}

// shown writes the amounts of a sum.
func (q *Quote) shown(a *rules.Arithmetic, in quantity.System) func(float64) string {
	sign := 1.0
	if q.negated(a) {
		sign = -1
	}
	return func(v float64) string { return in.Show(sign*v, a.Unit) }
}

// mostShares of the choices behind a sum are named; what adds less is added up.
const mostShares = 5

// MakeUp is what a limit's sum is made of, a line each: what is there without options, the
// choices that add most, this, and what a full unit still needs.
func (q *Quote) MakeUp(a *rules.Arithmetic, in quantity.System) []string {
	if strings.HasPrefix(a.Code, needCode) {
		return nil
	}
	show, rest := q.shown(a, in), a.Picked
	lines := []string{show(a.Base) + " without options"}
	add := func(v float64, said string) {
		if v != 0 {
			lines = append(lines, show(v)+" "+said)
		}
	}
	for _, s := range a.Shares[:min(len(a.Shares), mostShares)] {
		add(s.Amount, q.Edition.Cat.LabelOf(s.ID))
		rest -= s.Amount
	}
	if len(a.Shares) > mostShares {
		add(rest, fmt.Sprintf("%d more of your choices", len(a.Shares)-mostShares))
	}
	add(a.Asked, "this")
	word := "what a full unit still needs"
	if !a.Exact {
		word += ", or more"
	}
	add(a.Rest, word)
	return lines
}
