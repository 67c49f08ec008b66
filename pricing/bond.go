package pricing

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"boxwright/config"
)

// bond adds the premium of a performance bond for the sum of all lines above
// it.
func (o *order) bond() {
	if !o.t.Bond {
		return
	}
	if len(o.b.Bond) == 0 {
		o.find("bond", config.Warn, "performance bond", "A performance bond is asked for, but the price book has no "+
			"premium for one; it was left out.", "Add the premium's steps to the price book, or type the bond in as "+
			"an extra line.")
		return
	}
	if o.total.Sign() <= 0 {
		return
	}
	premium, how := o.b.bondPremium(o.total)
	o.whole(LineBond, "Performance bond", o.r.Cent(premium), false, fmt.Sprintf("on %s: %s", o.total.Show(), how),
		"bond")
}

// bondPremium adds the steps' parts exactly; the caller rounds once.
func (b *Book) bondPremium(sum Amount) (premium decimal.Decimal, how string) {
	var words []string
	for i, s := range b.Bond {
		if sum.Cmp(s.Over) <= 0 {
			break
		}
		part := sum.Sub(s.Over)
		if i+1 < len(b.Bond) && sum.Cmp(b.Bond[i+1].Over) > 0 {
			part = b.Bond[i+1].Over.Sub(s.Over)
		}
		premium = premium.Add(part.Decimal().Mul(s.Percent.Fraction()))
		words = append(words, fmt.Sprintf("%s of %s", s.Percent.Show(), part.Show()))
	}
	return premium, strings.Join(words, ", then ")
}
