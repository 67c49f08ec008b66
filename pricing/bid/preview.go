package bid

import (
	"slices"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing"
	"boxwright/pricing/quote"
)

// Preview is what taking all that can be complied with would do, before it is done.
type Preview struct {
	Taken
	Price   pricing.Amount // total less the present total
	Payload float64        // remaining, lb, less the present one
	Was, Is config.Date    // delivery that nine in ten such units keep
	Lost    []string       // lines that comply now and would not, by their numbers
	Broken  []config.Finding
}

// PreviewAll works out what taking all would do. It is nil when nothing can be taken,
// or the unit could not be computed.
func PreviewAll(q *quote.Quote, list []Answer, in quantity.System) *Preview {
	p := &Preview{Taken: TakeAnswers(q, list), Was: q.Plan.NineInTen}
	if p.Lines == 0 {
		return nil
	}
	on := q.Draft.Clone()
	on.Unit = p.Unit
	after, err := quote.Compute(q.Edition, on)
	if err != nil {
		return nil
	}
	p.Price = after.Price.Total.Sub(q.Price.Total)
	p.Is = after.Plan.NineInTen
	was, _ := q.Figure("weight.payload-left")
	is, _ := after.Figure("weight.payload-left")
	p.Payload = is.Value - was.Value
	for i, a := range newJudge(after, in).answers() {
		if list[i].Outcome == quote.Meets && a.Outcome != quote.Meets {
			p.Lost = append(p.Lost, a.NoOf())
		}
	}
	for _, f := range after.Findings {
		if f.Severity == config.Note {
			continue
		}
		if !slices.ContainsFunc(q.Findings, func(g config.Finding) bool {
			return g.Code == f.Code && g.Where == f.Where
		}) {
			p.Broken = append(p.Broken, f)
		}
	}
	return p
}
