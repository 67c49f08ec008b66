package pricing_test

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing"
)

func TestReadBookNamesEveryFaultAndItsPlace(t *testing.T) {
	cat := catalogue(t)
	long := strings.Repeat("x", 401)
	for _, c := range []struct{ old, new, code, where, reason string }{
		{`"winch": "2000.00", `, ``, "book.missing-price", `prices "winch"`, "an option without a price cannot be quoted"},
		{`"winch": "2000.00", `, `"winch": "2000.00", "wnich": "1.00", `, "book.unknown-key", `prices "wnich"`, "a misspelled key would be a price nobody charges"},
		{`"cutaway": "60000.00"`, `"cutaway": "-1.00"`, "book.negative", `prices "cutaway"`, "a chassis is no credit"},
		{`"2000.00"`, `"2e9000000"`, "book.form", "prices.winch", "an exponent could hang the arithmetic"},
		{`"2000.00"`, `2000`, "book.form", "prices.winch", "a JSON number may have lost its cents"},
		{`"2000.00"`, `"2,000.00"`, "book.form", "prices.winch", "separators are ambiguous between countries"},
		{`"2000.00"`, `"2000.005"`, "book.form", "prices.winch", "half cents cannot be charged"},
		{`"percent": "2.25"`, `"percent": "2,25"`, "book.form", "fleet_breaks.breaks[1].percent", "found inside a list"},
		{`"percent": "2.25"`, `"percent": "122"`, "book.range", "fleet_breaks breaks[1] percent", "nothing is sold for less than nothing"},
		{`"half-up"`, `"down"`, "book.value", "rounding", "an unknown rounding"},
		{`"USD"`, `"usd"`, "book.value", "currency", "currencies are capital letters"},
		{`"from": "2027-07-01"`, `"from": "2026-07-01"`, "book.order", "editions[1]", "editions stand newest first"},
		{`"percent": "1.5", "reason"`, `"reason"`, "book.value", "surcharges[0]", "a surcharge of nothing"},
		{`"when": ["winch", "lights"]`, `"when": ["winch", "lamp"]`, "book.unknown-key", "credits[0]", "a package of an unknown option"},
		{`"ousts": ["scene-pack"]`, `"ousts": ["scene"]`, "book.unknown-key", "credits[1]", "an unknown credit"},
		{`{"on": "build", "percent": "4"}`, `{"on": "unit", "percent": "4"}`, "book.value", "contracts[0]", "two discounts of one contract on the chassis"},
		{`"at": "arrival"`, `"at": "soon"`, "book.value", "prepayments[0]", "nobody knows when it is paid"},
		{`"per": "order"`, `"per": "mile"`, "book.value", "fees[1]", "an unknown basis"},
		{`"over": "500000"`, `"over": "0"`, "book.order", "bond[1]", "two steps at one sum"},
		{`"percent": "60"`, `"percent": "50"`, "book.sum", "milestones", "ten percent would never be paid"},
		{`"Sheet cost."`, `"` + long + `"`, "book.too-long", "surcharges[0]", "a text without end"},
		{`"validity_days": 60`, `"validity_days": -1`, "book.range", "validity_days", "a quote that was never valid"},
		{`"id": "2027-07"`, `"id": "July 2027"`, "book.id", "editions[0]", "an id with a space"},
		{`"id": "2027-07"`, `"id": "2027-01"`, "book.id", "editions[1]", "an id twice"},
		{`"reason": "Yearly change."`, `"reason": " "`, "book.missing", "editions[1]", "a change without a reason"},
		{`"module": "97000.00"`, `"module": "-97000.00"`, "book.negative", "editions[1]", "a body is no credit in an edition either"},
		{`"on": "body", "percent": "1.5"`, `"on": "roof", "percent": "1.5"`, "book.value", "surcharges[0]", "no such scope"},
		{`"on": "body", "percent": "1.5"`, `"percent": "1.5"`, "book.value", "surcharges[0]", "a percentage of what?"},
		{`"on": "body", "percent": "1.5"`, `"on": "body", "percent": "-1.5"`, "book.negative", "surcharges[0]", "a surcharge that is a discount"},
		{`"amount": "25.00"`, `"on": "unit", "amount": "25.00"`, "book.value", "surcharges[1]", "a plain amount has no scope"},
		{`"keys": ["camera"]`, `"keys": ["kamera"]`, "book.unknown-key", "surcharges[1]", "on an unknown key"},
		{`"from": "2026-07-01", "until": "2026-12-31"`, `"from": "2026-07-01", "until": "2026-06-30"`, "book.order", "surcharges[0]", "over before it begins"},
		{`"from": "2026-07-01", "until": "2026-12-31", `, ``, "book.missing", "surcharges[0]", "from when?"},
		{`"amount": "150.00"`, `"amount": "-150.00"`, "book.range", "credits[0]", "a credit is written without a sign"},
		{`"units": 5`, `"units": 1`, "book.range", "fleet_breaks", "one unit is no fleet"},
		{`"units": 5`, `"units": 2`, "book.order", "fleet_breaks", "two breaks at one number"},
		{`"over": "0"`, `"over": "1"`, "book.order", "bond[0]", "the first dollar would be free"},
		{`"per_mile": "3.25"`, `"per_mile": "-3.25"`, "book.negative", "freight", "paid for the distance"},
		{`"amount": "185.00"`, `"amount": "-185.00"`, "book.negative", "fees[0]", "a fee is no credit"},
		{`"percent": "60"`, `"percent": "-60"`, "book.range", "milestones[2]", "a payment to the buyer"},
		{`"label": "On acceptance"`, `"label": ""`, "book.missing", "milestones[2]", "due when?"},
		{`"rounding"`, `"roundings"`, "book.field", "price_book roundings", "an unknown field"},
		{`"from": "2027-07-01"`, `"from": "2027-13-01"`, "book.field", "price_book editions[0].from", "no such month"},
	} {
		t.Run(c.code+" "+c.where, func(t *testing.T) {
			require.Contains(t, bookText, c.old, "the fixture no longer holds what this case changes")
			_, err := pricing.ReadBook(json.RawMessage(strings.Replace(bookText, c.old, c.new, 1)), cat)
			var ps config.Problems
			require.ErrorAs(t, err, &ps, c.reason)
			assert.Equal(t, c.code, ps[0].Code, "%s: %v", c.reason, ps)
			assert.Contains(t, ps[0].Where, c.where, c.reason)
			assert.NotContains(t, ps[0].Where, "line ", "the book's lines are not those of the file it stands in")
		})
	}
}

func TestReadBookWithoutABook(t *testing.T) {
	cat := catalogue(t)
	for _, raw := range []string{"", "  ", "null", "[]", `{"currency":"USD"`,
		strings.Repeat(" ", pricing.MaxBookBytes+1)} {
		_, err := pricing.ReadBook(json.RawMessage(raw), cat)
		assert.ErrorAs(t, err, new(config.Problems), "%.20q", raw)
	}
}

func TestPricesOfADay(t *testing.T) {
	b, cat := book(t)
	for _, c := range []struct{ day, id, want, reason string }{
		{"2026-12-31", "winch", "2000.00", "before the first edition"},
		{"2027-01-01", "winch", "2150.00", "an edition counts from its first day"},
		{"2027-08-01", "winch", "2300.00", "the newest edition in force"},
		{"2027-08-01", "module", "97000.00", "a key the newest edition leaves out keeps the earlier edition's price"},
		{"2027-08-01", "mount", "4200.00", "an option is found by its price key"},
		{"2027-08-01", "nothing", "0.00", "an unknown id"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			day, err := config.ParseDate(c.day)
			require.NoError(t, err)
			assert.Equal(t, c.want, pricing.PriceOf(b.AsOf(day), cat, c.id).String(), c.reason)
		})
	}
}
