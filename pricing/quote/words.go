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

// summed reports whether a reason is a sum: of what must be in the unit the rules
// say why it cannot be.
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

// sum writes a limit's arithmetic as one can say it aloud: what is there without
// options, what the choices and this add, what it comes to, and by how much that is
// too much.
func (q *Quote) sum(a *rules.Arithmetic, in quantity.System) string {
	if strings.HasPrefix(a.Code, needCode) {
		return q.needSum(a, in)
	}
	sign := 1.0
	if a.Limit < 0 && q.Assume.Limits[a.Code].Sense == config.AtLeast {
		sign = -1 // handed to the rules with both sides negated
	}
	show := func(v float64) string { return in.Show(sign*v, a.Unit) }
	text := fmt.Sprintf("%s: %s without options", a.Label, show(a.Base))
	for _, part := range []struct {
		v    float64
		said string
	}{{a.Picked, "from your choices"}, {a.Asked, "from this"}, {a.Rest, "from what a full unit still needs"}} {
		if part.v == 0 {
			continue
		}
		word := " and "
		if part.v == a.Rest && !a.Exact {
			word += map[float64]string{1: "at least ", -1: "at most "}[sign]
		}
		text += word + show(part.v) + " " + part.said
	}
	if a.Over <= 0 {
		bound := map[float64]string{1: "at least ", -1: "at most "}[sign]
		return text + fmt.Sprintf(" make %s%s. The limit is %s, and what the rules need for a full unit does not keep it.",
			bound, show(a.Total), show(a.Limit))
	}
	if sign < 0 {
		return text + fmt.Sprintf(" make %s. At least %s are asked for: %s short.", show(a.Total), show(a.Limit),
			in.Show(a.Over, a.Unit))
	}
	return text + fmt.Sprintf(" make %s. The limit is %s: %s too much.", show(a.Total), show(a.Limit),
		in.Show(a.Over, a.Unit))
}
