package app

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// A chassis begun on is where proposals begin, until the customer says otherwise; the
// page's own first unit is no such choice.
func TestAChassisBegunOnIsWhereProposalsBegin(t *testing.T) {
	p := open(t)
	ask := func() string {
		p.do(Act{Do: "go", ID: "needs"})
		p.do(Act{Do: "propose"})
		return p.do(Act{Do: "rest"}).Regions["main"]
	}
	const title = "On the chassis you began on"
	assert.NotContains(t, ask(), title)

	p.do(Act{Do: "new", ID: "med-19500-175-diesel"})
	html := ask()
	assert.Contains(t, html, "Proposals start with your chassis: Medium-duty 19,500 lb")
	if assert.Contains(t, html, "<h3>"+title) {
		assert.Less(t, strings.Index(html, "<h3>"+title), strings.Index(html, `id="take-lightest"`), "it is offered first")
	}
	p.do(set("needs.fuel", "gasoline"))
	assert.Contains(t, ask(), "Nothing on the chassis you began on, Medium-duty 19,500 lb, 175 in wheelbase, diesel, "+
		"keeps every must. It would be: With diesel instead of gasoline.")
	p.do(set("needs.fuel", ""))
	p.do(Act{Do: "take-proposal", ID: "begun"})
	assert.Equal(t, "med-19500-175-diesel", p.draft().Unit.Chassis)

	p.do(Act{Do: "begun-off"})
	assert.NotContains(t, ask(), title)
}
