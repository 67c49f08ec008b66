package bid

import (
	"slices"
	"strings"

	"boxwright/config/quantity"
	"boxwright/pricing/bid/claims"
	"boxwright/pricing/quote"
)

// validityTerm is the term that asks how long the price stands.
const validityTerm = "validity"

// openings are words that count the days from a day the quote does not know.
var openings = []string{"opening", "opened", "due", "closing", "submission", "submittal", "award"}

// validityWords are those in which a line asks how long a price stands.
var validityWords = wordSet(`price prices pricing priced quote quoted quotes quotation bid bids proposal proposals offer
offers tender valid validity firm good hold honor honored fixed stand stands guaranteed remain remains binding
irrevocable effect effective days calendar date opening opened open after until through submission submittal due closing
award order receipt acceptance accepted purchaser period term delivery unchanged every`)

// term answers a term of the bid as far as the quote itself does: how long its price
// stands.
func (j *judge) term(a *Answer) {
	until := j.q.Price.ValidUntil
	if a.Term != validityTerm || until.IsZero() {
		return
	}
	line := claims.Read(a.Text)
	if slices.ContainsFunc(claims.Words(line.Tokens), func(w string) bool { return !validityWords[w] && !quiet[w] }) {
		return // it asks for something else as well
	}
	on := j.q.Price.On
	by, dated := claims.DayOf(line.Tokens)
	numbers := claims.Numbers(line.Tokens)
	if !dated && len(numbers) != 1 || dated && (len(numbers) > 0 || by.IsZero()) {
		return
	}
	low := strings.ToLower(a.Text)
	for _, other := range []string{"increase", "adjust", "escalat", "withdraw", "chassis"} {
		if strings.Contains(low, other) {
			return // not how long it stands, but whether it may change
		}
	}
	if !dated {
		days := numbers[0].Value
		switch numbers[0].Unit {
		case claims.Days:
		case claims.Month:
			days *= longMonth
		default:
			return
		}
		by = on.AddDays(int(days))
	}
	a.Read = []string{"Price good until " + by.Long()}
	a.Offered = "Price good until " + until.Long() + " (" + quantity.Group(float64(on.DaysUntil(until)), 0) +
		" days from " + on.Long() + ")"
	a.Where = quote.PriceSection.Place()
	switch {
	case until.Before(by):
		a.Outcome = quote.Excepted
	case dated || !counted(low):
		a.Outcome = quote.Meets
	}
}

// counted reports whether a line counts its days from a day that the quote does not know.
func counted(low string) bool {
	for _, w := range openings {
		if strings.Contains(low, w) {
			return true
		}
	}
	return false
}

// longMonth is the days of a month in which a price is to stand: no months are longer.
const longMonth = 31
