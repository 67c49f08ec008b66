package quote

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config/standards"
	"boxwright/pricing"
	"boxwright/pricing/money"
	"boxwright/pricing/quote/quotetest"
	. "boxwright/web/page/markup"
	"boxwright/web/page/pagetest"
)

// A chapter that comes to less than zero says what was taken off; one above zero does not.
func TestNegativeChaptersAreExplained(t *testing.T) {
	p := &Page{Page: pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", false)}
	assert.NotContains(t, priceSummary(p).String(), "taken off for")
	off, err := money.ParseAmount("-3850.00")
	require.NoError(t, err)
	credit := pricing.Line{Code: pricing.LineOption, ID: "build-stitch", Label: "Stitch-welded", Item: 1, Amount: off}
	p.Q.Price.Lines = append(p.Q.Price.Lines, credit)
	drawn := priceSummary(p).String()
	assert.Contains(t, drawn, "Options: Body<span class=\"how\"> taken off for Stitch-welded</span>")
	assert.Contains(t, drawn, "−2,920.00")
}

// What a sentence says again behind its name is said once.
func TestANameAndItsSentenceSayThingsOnce(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"No rub rail", "Lower body without rub rail.", "<b>No rub rail.</b>"},
		{"No spare wheel carried", "No spare wheel is carried.", "<b>No spare wheel carried.</b>"},
		{"Unit number on the roof", "Unit number on the roof, 24 in figures.", "<b>Unit number on the roof</b>, 24 in figures."},
		{"Painted wheels", "Steel wheels, painted white.", "<b>Painted wheels. </b>Steel wheels, painted white."},
		{"Siren", "", "<b>Siren.</b>"},
	} {
		t.Run(c.name, func(t *testing.T) {
			assert.Equal(t, "<p>"+c.want+"</p>", El("p", once(c.name, c.text)).String())
		})
	}
}

// What a full load is made of is told, and adds up with the curb weight.
func TestAFullLoadIsTold(t *testing.T) {
	ed := quotetest.Demo(t)
	p := &Page{Page: pagetest.Of(t, ed, "cut-14500-158-gas", false)}
	told := fullLoad(p).String()
	for _, part := range []string{"curb weight with 6 people, 1,050 lb; 1 patient, 175 lb; ",
		"loose equipment, allowance until it is listed, 700 lb."} {
		assert.Contains(t, told, part)
	}
	w := p.Q.Weight
	assert.InDelta(t, 1050+175+700, float64(w.Gross.TotalLb-w.Curb.TotalLb), 0.5)
}

// What is not judged says on paper why, and what would settle it.
func TestWhatIsNotJudgedSaysWhyOnPaper(t *testing.T) {
	p := &Page{Page: pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", false), notes: new(notes),
		said: map[string]string{}}
	set := p.Q.Verdicts[0].Set
	p.Q.Verdicts = []standards.Verdict{
		{Set: set, Title: "Flash rate", Outcome: standards.NotJudged, Settles: "the maker's certificate"},
		{Set: set, Title: "Beam spread", Outcome: standards.NotJudged},
		{Set: set, Title: "Body mounts", Outcome: standards.Declared, Settles: "the plant's report"}}
	paper := compliancePaper(p).String()
	assert.Contains(t, paper, "<b>Not judged, since nothing in the unit declares it, with what settles it: </b>"+
		"Flash rate (the maker&#39;s certificate); Beam spread.")
	assert.Contains(t, paper, "<b>Declared by the plant: </b>Body mounts.")
}

// The maintenance schedule names the promises that a unit is kept up by, and no other.
func TestUpkeepNamesItsPromises(t *testing.T) {
	p := &Page{Page: pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", false)}
	drawn := service(p).String()
	assert.Contains(t, drawn, "24 months or 30,000 mi")
	assert.Contains(t, drawn, "No plan")
	assert.NotContains(t, drawn, "Collected at the plant")
}
