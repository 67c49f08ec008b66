package bid

import (
	"boxwright/config/quantity"
	"boxwright/pricing/quote"
)

// Rehearse answers sentences of the catalogue as if a list asked for them, and remembers none. A browser makes code
// quick once it has run often: a long list is answered a quarter faster after it. It rests now and then.
func Rehearse(q *quote.Quote, in quantity.System) {
	j := newJudge(q, in)
	cat := q.Edition.Cat
	for i := range min(len(cat.Options), mostRehearsed) {
		if i%restsAfter == 0 {
			q.Edition.Rules.Pauses().Rest()
		}
		a := Answer{Requirement: quote.Requirement{Text: cat.Sentences(&cat.Options[i])}}
		j.judge(&a, j.v.readOnce(a.Text))
	}
}

// mostRehearsed is how many sentences are rehearsed, and restsAfter after how many it rests.
const (
	mostRehearsed = 300
	restsAfter    = 8
)
