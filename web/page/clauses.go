package page

import (
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/standards"
	. "boxwright/web/page/markup"
)

// SetName is what readers call a set of verdicts.
func SetName(id string) string {
	if set, ok := standards.Find(id); ok {
		return set.Label
	} else if id == "purchaser" {
		return "The purchaser's own limits"
	}
	return "Federal rules"
}

// VerdictTally counts verdicts in words.
func VerdictTally(list []standards.Verdict) string {
	var said []string
	for _, o := range standards.Outcomes {
		n := 0
		for _, v := range list {
			if v.Outcome == o {
				n++
			}
		}
		words := string(o)
		if o == standards.DoesNotApply && n > 1 {
			words = "do not apply"
		}
		if n > 0 {
			said = append(said, strconv.Itoa(n)+" "+words)
		}
	}
	return strings.Join(said, ", ")
}

// VerdictMark shows a verdict as a shape; nil for a clause that is not judged.
func VerdictMark(v standards.Verdict) Part {
	switch v.Outcome {
	case standards.NotMet:
		switch {
		case v.Basis == config.ReadInText && !v.Mild:
			return Mark(config.Stop)
		case v.Basis == config.FromMemory:
			return Mark(config.Note)
		}
		return Mark(config.Warn)
	case standards.Met, standards.Declared:
		return Mark("")
	}
	return nil
}

// RemountNote says above a compliance sheet that the rule set does not cover
// the unit.
func RemountNote(p *Page) Part {
	text := standards.OutsideRemount(p.Q.Draft.Unit.RuleSet)
	return If(p.Q.Remount() && text != "", El("p", Class("how"), Mark(config.Warn), Text(" "+text)))
}
