package view

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config/quantity"
	"boxwright/config/weight"
	"boxwright/pricing/money"
	"boxwright/pricing/quote"
)

// rowOf is the cells of a table's row, without marks and markup.
func rowOf(t *testing.T, html, first string) []string {
	t.Helper()
	for _, row := range regexp.MustCompile(`(?s)<tr[^>]*>(.*?)</tr>`).FindAllStringSubmatch(html, -1) {
		var cells []string
		for _, c := range regexp.MustCompile(`(?s)<t[hd][^>]*>(.*?)</t[hd]>`).FindAllStringSubmatch(row[1], -1) {
			cells = append(cells, strings.TrimSpace(regexp.MustCompile(`<[^>]*>`).ReplaceAllString(c[1], "")))
		}
		if len(cells) > 0 && cells[0] == first {
			return cells
		}
	}
	require.Fail(t, "no row "+first)
	return nil
}

// Every load stands under its own head in the tables of Weight.
func TestLoadsStandUnderTheirHeads(t *testing.T) {
	p := pageOf(t, demo(t), "cut-14500-158-gas", false)
	g := &p.Q.Weight.Gross
	g.TotalLb, g.FrontLb, g.RearLb, g.LeftLb, g.RightLb, g.XIn, g.ZIn = 13001, 4502, 8499, 6603, 6398, 105, 41
	g.Wheels = []weight.Wheel{
		{Pos: "LF", Lb: 2301, Tires: 1, PerTireLb: 2301, RatedLb: 3042}, {Pos: "RF", Lb: 2202, Tires: 1,
			PerTireLb: 2202, RatedLb: 3042},
		{Pos: "LR", Lb: 4304, Tires: 2, PerTireLb: 2152, RatedLb: 5556}, {Pos: "RR", Lb: 6000, Tires: 2,
			PerTireLb: 3000, RatedLb: 5556},
	}
	html := conditions(p).String()
	heads := rowOf(t, html, "")
	row := rowOf(t, html, g.Label)
	require.Len(t, heads, len(row))
	for i, head := range heads {
		want := map[string]string{"Total": "13,001 lb", "Front axle": "4,502 lb", "Rear axle": "8,499 lb",
			"Street side": "6,603 lb", "Curb side": "6,398 lb"}[head]
		if want != "" {
			assert.Equal(t, want, row[i], head)
		}
	}
	assert.Contains(t, row[6], "105.0 in", "behind the front axle")
	assert.Contains(t, row[7], "41.0 in", "its height")
	for name, want := range map[string][]string{
		"Left front (street side)": {"2,301 lb", "1", "2,301 lb", "3,042 lb", "+741 lb"},
		"Right front (curb side)":  {"2,202 lb", "1", "2,202 lb", "3,042 lb", "+840 lb"},
		"Left rear (street side)":  {"4,304 lb", "2", "2,152 lb", "5,556 lb", "+1,252 lb"},
		"Right rear (curb side)":   {"6,000 lb", "2", "3,000 lb", "5,556 lb", "-444 lb"},
	} {
		t.Run(name, func(t *testing.T) {
			assert.Equal(t, want, rowOf(t, strings.ReplaceAll(html, "−", "-"), name)[1:])
		})
	}
}

// Each axle's load and rating stand beneath that axle in the side view.
func TestAxleLoadsStandBeneathTheirAxles(t *testing.T) {
	p := pageOf(t, demo(t), "cut-14500-158-gas", true)
	p.Q.Weight.Gross.FrontLb, p.Q.Weight.Gross.RearLb = 4502, 8499
	c := *p.Q.Chassis
	c.GAWRFrontLb, c.GAWRRearLb = 5001, 9502
	p.Q.Chassis = &c
	svg := sideView(p).String()
	for _, x := range []struct {
		name, label string
		at          float64
	}{
		{"front load", "4,502 lb", 0}, {"front rating", "of 5,001 lb", 0},
		{"rear load", "8,499 lb", float64(c.WheelbaseIn)}, {"rear rating", "of 9,502 lb", float64(c.WheelbaseIn)},
	} {
		t.Run(x.name, func(t *testing.T) {
			placed := `<text class="[^"]*" x="([-0-9.]+)" y="[-0-9.]+">` + x.label + `</text>`
			m := regexp.MustCompile(placed).FindStringSubmatch(svg)
			require.NotNil(t, m, "it is lettered")
			is, err := strconv.ParseFloat(m[1], 64)
			require.NoError(t, err)
			assert.InDelta(t, x.at, is, float64(c.WheelbaseIn)/4)
		})
	}
	for _, words := range []string{"Front axle 4,502 lb of 5,001 lb", "rear axle 8,499 lb of 9,502 lb"} {
		assert.Contains(t, svg, words, "and the text alternative says the same")
	}
}

// A rival's bid is told against ours in the right direction.
func TestRivalsAreToldInTheRightDirection(t *testing.T) {
	p := pageOf(t, demo(t), "cut-14500-158-gas", false)
	total, ours := p.Q.Price.Total, p.Q.Plan.NineInTen
	payload, _ := p.Q.Figure("weight.payload")
	dollars := func(n int64) money.Amount { return money.Cents(n * 100) }
	for _, c := range []struct {
		name, reason string
		rival        quote.Rival
		want         string
	}{
		{"cheaper than ours", "our price is the higher one", quote.Rival{Price: total.Sub(dollars(1500))},
			"the unit in work is USD 1,500.00 more"},
		{"dearer than ours", "our price is the lower one", quote.Rival{Price: total.Add(dollars(1500))},
			"the unit in work is USD 1,500.00 less"},
		{"sooner", "their date lies before ours", quote.Rival{Date: ours.AddDays(-9)},
			"promised 9 days before ours at nine in ten"},
		{"later", "their date lies after ours", quote.Rival{Date: ours.AddDays(1)},
			"promised 1 day after ours at nine in ten"},
		{"carries less", "ours less theirs", quote.Rival{PayloadLb: quantity.Mass(payload.Value - 100)},
			"our payload less theirs is +100 lb"},
		{"carries more", "ours less theirs", quote.Rival{PayloadLb: quantity.Mass(payload.Value + 100)},
			"our payload less theirs is -100 lb"},
	} {
		t.Run(c.name, func(t *testing.T) {
			c.rival.Name = "Other bidder"
			p.State.Rivals = []quote.Rival{c.rival}
			html := differences(p, []*quote.Quote{p.Q}).String()
			assert.Contains(t, strings.ReplaceAll(html, "−", "-"), c.want, c.reason)
		})
	}
}

// How much later or earlier another quote arrives, and what it costs against
// ours.
func TestDifferencesAreToldInTheRightDirection(t *testing.T) {
	p := pageOf(t, demo(t), "cut-14500-158-gas", false)
	for _, c := range []struct {
		name string
		days int
		want string
	}{{"later", 8, "It arrives 8 calendar days later"}, {"a day earlier", -1,
		"It arrives 1 calendar day earlier"}, {"the same", 0, "It arrives on the same day"}} {
		t.Run(c.name, func(t *testing.T) {
			other, plan, price := *p.Q, *p.Q.Plan, *p.Q.Price
			plan.EvenOdds = plan.EvenOdds.AddDays(c.days)
			price.Total = price.Total.Add(money.Cents(250_00))
			other.Plan, other.Price = &plan, &price
			html := differences(p, []*quote.Quote{p.Q, &other}).String()
			assert.Contains(t, html, c.want)
			assert.Equal(t, []string{p.Q.Price.Total.Show(), price.Total.Show(), "250.00"}, rowOf(t, html,
				"Total")[1:])
		})
	}
}
