package bid

import (
	"strings"

	"boxwright/config/quantity"
	"boxwright/pricing/bid/claims"
	"boxwright/pricing/quote"
)

// Forget drops the lines that an edition remembers.
func Forget(ed *quote.Edition) {
	v := vocabularyOf(ed)
	clear(v.read)
	v.judged = nil
}

// Gauge is a figure as lines ask for it, with an amount of it.
type Gauge struct {
	Code, Label, Amount string
	Names               []string
}

// Gauges are the figures that can be asked for.
func Gauges() []Gauge {
	var out []Gauge
	for i := range gauges {
		g := Gauge{Code: gauges[i].code, Label: gauges[i].label}
		for _, n := range strings.Split(gauges[i].names, "|") {
			if len(stems(n)) > 0 {
				g.Names = append(g.Names, n)
			}
		}
		switch gauges[i].unit {
		case "":
			g.Amount = "2"
			if g.Code == "space.patients" {
				g.Amount = "1"
			}
		case claims.Money:
			g.Amount = "$200,000"
		case claims.Days:
			g.Amount = "30 days"
		case quantity.Hour:
			g.Amount = "3 hours"
		case quantity.Minute:
			g.Amount = "12 minutes"
		case quantity.Percent:
			g.Amount = "30 %"
		case claims.Degree:
			g.Amount = "15 degrees"
		default:
			g.Amount = "50 " + gauges[i].unit
		}
		if under, is := strings.CutPrefix(gauges[i].under, given); is {
			g.Amount += " at " + under
		}
		g.Amount = string(gauges[i].sense) + " " + g.Amount
		out = append(out, g)
	}
	return out
}

// Judged is how many lines are judged after a change.
func Judged(q *quote.Quote, change func()) int {
	j := vocabularyOf(q.Edition).judged
	known := len(j.lines)
	change()
	Answers(q, quantity.US)
	if now := vocabularyOf(q.Edition).judged; now != j {
		known, j = 0, now
	}
	return len(j.lines) - known
}

// LinesRead is how many lines an edition remembers.
func LinesRead(ed *quote.Edition) int { return len(vocabularyOf(ed).read) }
