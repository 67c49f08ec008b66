package claims_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/pricing/bid/claims"
)

// said writes a line as it was read: words, amounts with how they bind, what is ruled
// out, and where a claim may end.
func said(text string) string {
	var out []string
	for _, t := range claims.Read(text).Tokens {
		switch t.Kind {
		case claims.Word:
			out = append(out, t.Word)
		case claims.Count:
			out = append(out, strings.TrimSpace(fmt.Sprintf("%.4g %s %s", t.Num.Value, t.Num.Unit, t.Num.Sense)))
		case claims.Day:
			out = append(out, t.Day.String()+" "+string(t.Num.Sense))
		case claims.Not:
			out = append(out, "NOT")
		case claims.Or:
			out = append(out, "OR")
		case claims.Stop:
			out = append(out, ".")
		}
	}
	return strings.TrimRight(strings.Join(out, " | "), " |.")
}

func TestRead(t *testing.T) {
	for _, c := range []struct{ name, line, want string }{
		{"feet and inches", `Height not to exceed 9'-2"`, "height | 110 in at most"},
		{"feet and inches in words", "Headroom: not less than 6 ft 4 in", "headroom | 76 in at least"},
		{"a thousands comma", "5,200 lbs. minimum payload", "5200 lb at least | payload"},
		{"a number said twice", "two (2) flowmeters", "2 | flowmeter"},
		{"kilowatts", "2kW inverter", "2000 W | inverter"},
		{"years in months", "fifteen (15) year warranty", "180 months | warranty"},
		{"money", "Price not to exceed $385,000.00", "pric | 3.85e+05 $ at most"},
		{"a comparison of the next amount", "Payload 2,500 lb min. and headroom 70 in",
			"payload | 2500 lb at least | headroom | 70 in"},
		{"an inch is no place", "two lights in the grille", "2 | light | grill"},
		{"a place is no inch", "R-30 in roof", "r30 | roof"},
		{"a cylinder is no meter", "One M cylinder", "1 | m | cylinder"},
		{"a designation is no amount", "Compartment S3", "compartment | s3"},
		{"what is ruled out before", "No wood in cabinets", "NOT | wood | cabinet"},
		{"what is ruled out behind", "Wood is not acceptable in cabinets", "NOT | wood | cabinet"},
		{"or equal", "Ejecting inlet or approved equal", "autoeject | inlet"},
		{"a comparison that speaks of a dimension", "Shall not be wider than 96 in", "width | 96 in at most"},
		{"the blanks of a form", "Powered cot   Comply: Yes ____ No ____", "powercot"},
		{"two names of one thing", "Gurney with lap and shoulder belts", "cot | threepoint"},
		{"a date", "Delivery no later than March 3, 2027", "delivery | 2027-03-03 at most"},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, said(c.line)) })
	}
}
