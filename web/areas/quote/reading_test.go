package quote

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/config"
)

// A total whose parts are not known says what each unit comes to, and no more than is known.
func TestForUnits(t *testing.T) {
	for _, c := range []struct {
		reason, total string
		units         int
		alike         bool
		want          string
	}{
		{"one unit", "USD 276,699.00", 1, true, "for 1 unit."},
		{"alike", "USD 553,398.00", 2, true, "2 units at 276,699.00 each."},
		{"alike, but for a cent", "USD 553,398.01", 2, true, "2 units at about 276,699.01 each."},
		{"not alike", "USD 500,000.00", 4, false, "4 units at 125,000.00 each on average."},
		{"what is no sum", "ask the seller", 2, true, "for 2 units."},
	} {
		t.Run(c.reason, func(t *testing.T) { assert.Equal(t, c.want, forUnits(c.total, c.units, c.alike)) })
	}
}

// An unsigned quote tells whoever buys and whoever sells what to do; a seller with a key can revise it.
func TestAnUnsignedQuoteSpeaksToBoth(t *testing.T) {
	for key, seller := range map[string]string{"": "make your own copy (Menu) and sign that.", "k": "revise it (Menu) and sign that."} {
		says := trustOf(&Trust{OwnKey: key}, config.Date{}).says
		assert.Equal(t, "Nothing proves who sent it. Buyer: ask the sender for a signed quote before you order. Seller: "+seller, says)
		drawn := banner("trust", &Trust{OwnKey: key}, config.Date{}).String()
		assert.Contains(t, drawn, `class="banner warn"`, "it looks like something to be checked")
		assert.Contains(t, drawn, "Draft, not signed. </b><span>"+says, "and is read before it is opened")
	}
}
