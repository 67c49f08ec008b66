package standards

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
)

// Weights of people where no set says otherwise.
const (
	OccupantFederal = 150 // lb a designated seat, 49 CFR 567.4(g)(3)
	PatientUsual    = 175 // lb on a cot; common practice, no source
)

// Assume is what the sets named by ruleSet (see Join), the federal rules, the
// plant's factors, the unit's duty and the purchaser's own values hand to the
// calculators for this unit, on the day it is ordered. Where several sets limit
// one figure, a number that was read goes before one that was not, and of equals
// the stricter; Judge still judges every clause. The unit's own values win. A set
// that is not known is named in the label and has no say.
func Assume(ruleSet string, cat *config.Catalogue, u *config.Unit) config.Assumptions {
	chosen, unknown := Split(ruleSet)
	assume := config.Assumptions{RuleSet: ruleSet, Label: label(chosen, unknown), Limits: map[string]config.Limit{},
		OccupantLb: config.Limit{Value: OccupantFederal, Source: "49 CFR 567.4(g)(3)", Basis: config.ReadInText},
		PatientLb:  config.Limit{Value: PatientUsual, Source: "usual weight of a patient", Basis: config.CommonPractice},
	}
	for _, s := range slices.Backward(chosen) {
		if s.OccupantLb != nil {
			assume.OccupantLb = *s.OccupantLb
		}
		if s.PatientLb != nil {
			assume.PatientLb = *s.PatientLb
		}
	}
	if cat != nil {
		assume.Set(cat.Plant.Factors)
	}
	if u == nil {
		return assume
	}
	if cat != nil {
		if d := cat.DutyOf(u); d != nil && d.PatientLb > 0 {
			assume.PatientLb = config.Limit{Value: float64(d.PatientLb), Basis: config.CommonPractice,
				Source: "usual weight of a patient of " + strings.ToLower(d.Label)}
		}
	}
	assume.Set(u.Factors)
	var ch *config.Chassis
	if cat != nil {
		ch = cat.ChassisByID(u.Chassis)
	}
	if ch != nil {
		for i := range chosen {
			for j := range chosen[i].Clauses {
				limit(assume.Limits, &chosen[i].Clauses[j], u.OrderOn, ch)
			}
		}
	}
	ownValues(&assume, u)
	return assume
}

// limit puts a clause's number into the limits unless a better one is there.
func limit(limits map[string]config.Limit, c *Clause, day config.Date, ch *config.Chassis) {
	row, ok := c.At(day, ch)
	if !ok || row.Open || c.Figure == "" || c.Sense == "" || strings.HasPrefix(c.Figure, factPrefix) {
		return
	}
	l := config.Limit{Value: row.Value, Sense: c.Sense, Clause: c.ID, Source: row.Source, Basis: row.Basis}
	if was, taken := limits[c.Figure]; !taken || better(l, was) {
		limits[c.Figure] = l
	}
}

// better prefers what was read, then the stricter. Limits that point opposite
// ways are not compared; the first stays.
func better(a, b config.Limit) bool {
	if fa, fb := a.Basis == config.ReadInText, b.Basis == config.ReadInText; fa != fb {
		return fa
	}
	switch {
	case a.Sense != b.Sense:
		return false
	case a.Sense == config.AtLeast:
		return a.Value > b.Value
	}
	return a.Value < b.Value
}

// ownValues replaces the rule sets' values by the purchaser's.
func ownValues(assume *config.Assumptions, u *config.Unit) {
	const source = "set by the purchaser"
	if v := float64(u.OccupantLb); positive(v) {
		assume.OccupantLb = config.Limit{Value: v, Source: source, Basis: config.Purchaser}
	}
	if v := float64(u.PatientLb); positive(v) {
		assume.PatientLb = config.Limit{Value: v, Source: source, Basis: config.Purchaser}
	}
	for _, o := range ownLimits(u) {
		sense, known := SenseOf(o.Figure)
		if !known {
			continue
		}
		assume.Limits[o.Figure] = config.Limit{Value: o.Value, Sense: sense, Clause: assume.Limits[o.Figure].Clause,
			Source: source, Basis: config.Purchaser}
	}
}

// ownLimits are the purchaser's limits of a unit, its payload among them, with
// what is no number left out.
func ownLimits(u *config.Unit) []config.OwnLimit {
	var out []config.OwnLimit
	if v := float64(u.PayloadLb); positive(v) {
		out = append(out, config.OwnLimit{Figure: "weight.payload", Value: v})
	}
	for _, o := range u.Own {
		if o.Value >= 0 && !math.IsInf(o.Value, 0) && !(o.Figure == "weight.payload" && u.PayloadLb > 0) {
			out = append(out, o)
		}
	}
	return out
}

// SenseOf says which way a limit on a figure points, as the clause tables have
// it; false when no table limits the figure. A purchaser can set a limit on
// every figure that has one.
func SenseOf(figure string) (config.Sense, bool) {
	for i := range sets {
		for j := range sets[i].Clauses {
			if c := &sets[i].Clauses[j]; c.Figure == figure && c.Sense != "" && !strings.HasPrefix(figure, factPrefix) {
				return c.Sense, true
			}
		}
	}
	return "", false
}

func positive(v float64) bool { return v > 0 && !math.IsInf(v, 0) }

// label names the sets for readers.
func label(chosen []Set, unknown []string) string {
	var names []string
	for _, s := range chosen {
		names = append(names, s.Label)
	}
	if len(names) == 0 {
		names = append(names, "Federal rules only")
	}
	for _, id := range unknown {
		if id != "" {
			names = append(names, "unknown rule set "+strconv.Quote(id))
		}
	}
	return strings.Join(names, " + ")
}
