package quote_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/standards"
	"boxwright/pricing/link"
	"boxwright/pricing/quote"
	"boxwright/web/assets/catalogue"
)

func edition(t *testing.T) *quote.Edition {
	t.Helper()
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	return ed
}

func remount(t *testing.T, ed *quote.Edition) *quote.Draft {
	t.Helper()
	before := &quote.Draft{Unit: config.Unit{RuleSet: standards.Join(standards.KKK, standards.Nevada),
		Existing: &config.Existing{Maker: "A box of 2013", LengthIn: 146, MassLb: 4400, TolLb: 50, XIn: 72, ZIn: 30,
			WarrantyYears: new(6)}}}
	d, ok := quote.BeginRemount(ed, "cut-14500-158-gas", before, config.Date{Year: 2026, Month: 11, Day: 25})
	require.True(t, ok)
	return d
}

func TestRemountIsAUnitOfItsOwn(t *testing.T) {
	ed := edition(t)
	d := remount(t, ed)
	assert.Equal(t, standards.Join(standards.Own, standards.Nevada), d.Unit.RuleSet,
		"the state's text stays, the specification that covers no remount goes")
	q, err := quote.Compute(ed, d)
	require.NoError(t, err)
	assert.True(t, q.Remount())
	assert.EqualValues(t, 146, q.Body.LengthIn)
	for _, f := range q.Findings {
		assert.NotContains(t, f.Code, "weight.existing", f.Text)
		assert.NotEqual(t, "standards.remount", f.Code)
	}
	assert.False(t, q.Price.Total.IsZero())
	assert.False(t, q.Plan.EvenOdds.IsZero())

	d.Unit.RuleSet = standards.KKK
	q, err = quote.Compute(ed, d)
	require.NoError(t, err)
	noted := false
	for _, f := range q.Findings {
		noted = noted || f.Code == "standards.remount" && f.Severity == config.Note && f.Basis == config.ReadInText
	}
	assert.True(t, noted, "KKK-A-1822F: refurbished and remounted vehicles are not covered by this standard")
}

// The measured mass takes part in what can be chosen, and a change of it alone
// is not mistaken for the module before.
func TestMeasuredMassTakesPartInTheLimits(t *testing.T) {
	ed := edition(t)
	d := remount(t, ed)
	at := func(lb quantity.Mass) (key string, base float64) {
		d.Unit.Existing.MassLb = lb
		l := quote.Limits(ed, d)
		for _, x := range l.For("cab-16500-169-diesel", "old-module") {
			if x.Code == "weight.rear-axle" {
				base = x.Base
			}
		}
		return l.Key, base
	}
	light, one := at(4400)
	heavy, two := at(5400)
	assert.NotEqual(t, light, heavy)
	assert.InDelta(t, 1000.0*(86+72)/169, two-one, 0.001, "each pound pulls by its lever on that chassis: 86 in to "+
		"the module, 72 in to its center")
	again, _ := at(4400)
	d = d.Clone()
	cloned, _ := at(4400)
	assert.Equal(t, light, again)
	assert.Equal(t, light, cloned, "a copy of the measurements is no other module")
}

func TestRulesKeepWhatTheyHaveLearnt(t *testing.T) {
	ed := edition(t)
	d := remount(t, ed)
	first := ed.For(&d.Unit)
	assert.Same(t, first.Rules, first.For(&d.Unit).Rules)
	d.Unit.Existing.MassLb++
	assert.Same(t, first.Rules, ed.For(&d.Unit).Rules, "mass is no matter of the rules' attributes")
	d.Unit.Existing.LengthIn++
	assert.NotSame(t, first.Rules, ed.For(&d.Unit).Rules)
	d.Unit.Body = "mod-146-72"
	assert.Same(t, ed, first.For(&d.Unit), "a new module is judged by the edition itself")
}

func TestRemountTravelsInALink(t *testing.T) {
	ed := edition(t)
	d := remount(t, ed)
	q, err := quote.Compute(ed, d)
	require.NoError(t, err)
	text, err := link.Encode(q)
	require.NoError(t, err)
	back, _, err := link.Decode(ed.Cat, text)
	require.NoError(t, err)
	assert.Equal(t, d.Unit, back.Unit)
}

// The order of magnitude of a published pair: new 282,000, remounted 88,000
// less, 31.2 % (mylethbridgenow.com, F-13 of the reference). The demonstration
// prices are invented and must look like the trade.
func TestRemountAgainstANewUnit(t *testing.T) {
	ed := edition(t)
	d := remount(t, ed)
	service, err := quote.AgainstNew(ed, d)
	require.NoError(t, err)
	d.Terms.Service = service
	q, err := quote.Compute(ed, d)
	require.NoError(t, err)
	ratio := q.Price.Total.Float() / service.Others[0].Price.Float()
	assert.InDelta(t, 194000.0/282000, ratio, 0.06)
	require.NotNil(t, q.Price.Service, "cost per year is shown")
	assert.Equal(t, 6, q.Price.Service.Ways[0].Choice.Warranty, "what is left on the structure")
	assert.Positive(t, q.Price.Service.Ways[1].PerYear.Sign())
}
