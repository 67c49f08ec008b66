package costs_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"go/parser"
	"go/token"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing"
	"boxwright/pricing/costs"
	"boxwright/pricing/money"
	"boxwright/pricing/seal"
	"boxwright/pricing/seal/sealtest"
)

const bookText = `{"currency": "USD", "rounding": "half-up", "prices": {"cutaway": "60000.00", "module": "95000.00", "winch": "2000.00", "lights": "350.00"},
  "credits": [{"id": "pack", "label": "Scene package", "when": ["winch", "lights"], "amount": "150.00"}],
  "freight": {"per_mile": "3.00"}, "tax": {"rate": "6.5"}}`

// Figures that stand nowhere else, so that a search for them means something.
const sheetText = `{"format": "boxwright-costs/1", "catalogue": "small", "title": "Private to the seller",
  "costs": {"cutaway": "56173.91", "module": "71137.37", "winch": "1391.17"},
  "shares": {"option": "71.73"}, "charges": {"freight": "83.19"},
  "overheads": [{"id": "prep", "label": "Preparation at the dealer", "amount": "917.13"}],
  "roles": [
    {"id": "seller", "label": "Salesperson", "max_discount": "2.17", "min_margin": "16.71"},
    {"id": "manager", "label": "Sales manager", "max_discount": "6.31", "min_margin": "13.97"}]}`

var secrets = []string{"56173.91", "71137.37", "1391.17", "71.73", "83.19", "917.13", "2.17", "16.71", "6.31", "13.97",
	"Private", "Preparation", "Salesperson", "manager"}

var day = config.Date{Year: 2026, Month: 11, Day: 25}

func amount(t testing.TB, text string) money.Amount {
	t.Helper()
	a, err := money.ParseAmount(text)
	require.NoError(t, err)
	return a
}

func percent(t testing.TB, text string) money.Percent {
	t.Helper()
	p, err := money.ParsePercent(text)
	require.NoError(t, err)
	return p
}

func catalogue(t testing.TB) *config.Catalogue {
	t.Helper()
	front := config.Tires{Count: 2, LoadLb: 3640}
	rear := config.Tires{Count: 4, LoadLb: 3640}
	c := &config.Catalogue{
		Format: config.CatalogueFormat, ID: "small", Title: "Small", Edition: "1", Notice: "Invented.",
		Chapters: []config.Chapter{{ID: "all"}},
		Groups:   []config.Group{{ID: "all", Chapter: "all", Choose: config.ChooseAny}},
		Chassis: []config.Chassis{{ID: "cutaway", Label: "Cutaway", Type: "III", Cab: "cutaway", Drive: "4x2",
			Fuel: "diesel", WheelbaseIn: 158, FloorHeightIn: 32,
			TrackFrontIn: 68, TrackRearIn: 76, CGHeightIn: 28, GVWRLb: 14500, GAWRFrontLb: 5000, GAWRRearLb: 9450,
			CurbFrontLb: 3200, CurbRearLb: 2600, FrontTires: front, RearTires: rear}},
		Bodies: []config.Body{{ID: "module", Label: "Module", Kind: "module", Shell: &config.Shell{}}},
		Options: []config.Option{{ID: "winch", Group: "all", Label: "Winch"},
			{ID: "lights", Group: "all", Label: "Lights", MaxQty: 4}},
		Plant: config.Plant{HoursPerDay: 8}, PriceBook: json.RawMessage(bookText),
	}
	require.Empty(t, c.Prepare())
	return c
}

func read(t testing.TB) (*costs.Sheet, *pricing.Book, *config.Catalogue) {
	t.Helper()
	cat := catalogue(t)
	b, err := pricing.ReadBook(cat.PriceBook, cat)
	require.NoError(t, err)
	c, err := costs.Read([]byte(sheetText), cat, b)
	require.NoError(t, err)
	return c, b, cat
}

func unit() *config.Unit {
	return &config.Unit{Chassis: "cutaway", Body: "module",
		Picks: []config.Pick{{Option: "lights", Qty: 2}, {Option: "winch", Qty: 1}}}
}

func terms(t testing.TB) pricing.Terms {
	miles, err := money.ParseQuantity("100")
	require.NoError(t, err)
	return pricing.Terms{Units: 2, FreightMiles: miles, TradeIn: amount(t, "5000")}
}

// price prices the order anew with an agreed discount.
func price(t testing.TB, b *pricing.Book, cat *config.Catalogue) costs.Price {
	return func(d money.Percent) (*pricing.Sheet, error) {
		x := terms(t)
		x.DiscountPercent = d
		return pricing.Build(b, cat, unit(), &x, day)
	}
}

func TestMarginByLineByHand(t *testing.T) {
	c, b, cat := read(t)
	s, err := price(t, b, cat)(percent(t, "1"))
	require.NoError(t, err)
	m := costs.Judge(c, s)

	want := []struct{ code, cost, margin, reason string }{
		{"chassis", "112347.82", "7652.18", "two at 56,173.91"},
		{"body", "142274.74", "47725.26", "two at 71,137.37"},
		{"option", "1004.22", "395.78", "no cost of its own: 71.73 % of 1,400.00"},
		{"option", "2782.34", "1217.66", "two at 1,391.17"},
		{"credit", "0.00", "-300.00", "taken off the price, no cost saved"},
		{"discount", "0.00", "-3151.00", "1 % of 157,550.00, twice"},
		{"freight", "499.14", "100.86", "83.19 % of 600.00"},
		{"trade-in", "-5000.00", "0.00", "passed on"},
		{"tax", "19990.69", "0.00", "passed on: 6.5 % of 307,549.00 is 19,990.685"},
	}
	require.Len(t, m.Lines, len(want))
	for i, w := range want {
		t.Run(w.reason, func(t *testing.T) {
			l := m.Lines[i]
			assert.Equal(t, w.code, l.Code)
			assert.Equal(t, w.cost, l.Cost.String(), w.reason)
			assert.Equal(t, w.margin, l.Margin.String(), w.reason)
			assert.NotEmpty(t, l.How)
		})
	}
	assert.Equal(t, "312549.00", m.Price.String(), "without trade-in and tax")
	assert.Equal(t, "260742.52", m.Cost.String(), "with two preparations")
	assert.Equal(t, "51806.48", m.Margin.String())
	assert.Equal(t, "16.58", m.Percent.String())
	assert.Equal(t, "1", m.Discount.String())
	assert.Equal(t, []bool{false, true}, []bool{m.Roles[0].May, m.Roles[1].May},
		"below the salesperson's 16.71 %, within the manager's")
	assert.Contains(t, m.Roles[0].Why, "margin")
}

func TestEffectOfADiscount(t *testing.T) {
	c, b, cat := read(t)
	var tried []money.Percent
	for _, p := range []string{"0", "0.5", "1.5", "3", "7"} {
		tried = append(tried, percent(t, p))
	}
	steps, err := costs.Effect(c, price(t, b, cat), tried)
	require.NoError(t, err)
	require.Len(t, steps, 5)
	assert.Equal(t, "0", steps[0].Lost.String())
	assert.Equal(t, []string{"Salesperson", "Sales manager"}, steps[0].Roles)
	assert.Empty(t, steps[4].Roles, "above everybody's discount")
	for i := 1; i < len(steps); i++ {
		assert.Equal(t, -1, steps[i].Margin.Cmp(steps[i-1].Margin))
		assert.Equal(t, 1, steps[i].Lost.Cmp(steps[i-1].Lost), "1 %% of the price is far more than 1 %% of the margin")
	}
}

func TestMostARoleMayGrant(t *testing.T) {
	c, b, cat := read(t)
	at := price(t, b, cat)
	for _, r := range c.Roles {
		most, any, err := costs.Most(c, r, at)
		require.NoError(t, err)
		require.True(t, any)
		for _, x := range []struct {
			d   money.Percent
			may bool
		}{{most, true}, {most.Add(percent(t, "0.01")), false}} {
			s, err := at(x.d)
			require.NoError(t, err)
			for _, v := range costs.Judge(c, s).Roles {
				if v.Role.ID == r.ID {
					assert.Equal(t, x.may, v.May, "%s at %s: %s", r.ID, x.d.Show(), v.Why)
				}
			}
		}
	}
	_, any, err := costs.Most(c, costs.Role{MinMargin: percent(t, "90")}, at)
	require.NoError(t, err)
	assert.False(t, any, "a margin nobody has")
	broken := func(money.Percent) (*pricing.Sheet, error) { return nil, fmt.Errorf("cannot be priced") }
	_, _, err = costs.Most(c, c.Roles[0], broken)
	assert.Error(t, err)
	_, err = costs.Effect(c, broken, nil)
	assert.Error(t, err)
}

func TestReadNamesFaultsAndTheirPlace(t *testing.T) {
	_, b, cat := read(t)
	for _, c := range []struct{ old, new, code, where, reason string }{
		{`"boxwright-costs/1"`, `"boxwright-costs/2"`, "costs.format", "format", "another form"},
		{`"small"`, `"large"`, "costs.catalogue", "catalogue", "another plant's costs"},
		{`"module": "71137.37", `, ``, "costs.missing-cost", `"module"`, "a body without a cost has a margin of 100 %"},
		{`"winch": `, `"wnich": `, "costs.unknown-key", `"wnich"`, "a misspelled key"},
		{`"shares": {"option"`, `"shares": {"options"`, "costs.missing-cost", `"lights"`, "a share for no line"},
		{`"freight": "83.19"`, `"freigth": "83.19"`, "costs.unknown-key", "freigth", "a charge for no line"},
		{`"71.73"`, `"-71.73"`, "costs.negative", "shares option", "a cost below nothing"},
		{`"917.13"`, `"-917.13"`, "costs.negative", "overheads[0]", "an overhead below nothing"},
		{`"id": "manager"`, `"id": "seller"`, "costs.id", "roles[1]", "two roles of one id"},
		{`"max_discount": "2.17"`, `"max_discount": "217"`, "costs.range", "roles[0]", "a discount above the price"},
		{`"917.13"`, `"9e17"`, "costs.form", "overheads[0].amount", "an exponent"},
		{`"winch": `, `"winch": "1.00", "winch": `, "costs.repeated", "costs", "a cost twice"},
		{`"title"`, `"titel"`, "costs.field", "", "an unknown field"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			require.Contains(t, sheetText, c.old, "the fixture no longer holds what this case changes")
			_, err := costs.Read([]byte(strings.Replace(sheetText, c.old, c.new, 1)), cat, b)
			var ps config.Problems
			if assert.ErrorAs(t, err, &ps, c.reason) {
				assert.Equal(t, c.code, ps[0].Code, "%s: %v", c.reason, ps)
				assert.Contains(t, ps[0].Where, c.where, c.reason)
			}
		})
	}
	_, err := costs.Read(make([]byte, seal.MaxBytes+1), cat, b)
	assert.Error(t, err)
}

// What is stored is sealed, and shows nothing.
func TestStoredCostsShowNothing(t *testing.T) {
	sealtest.Cheap()
	_, b, cat := read(t)
	random := bytes.NewReader(bytes.Repeat([]byte{9}, 28))
	sealed, err := costs.Seal(random, "a long slate, a lantern", []byte(sheetText))
	require.NoError(t, err)
	for _, s := range secrets {
		assert.NotContains(t, string(sealed), s)
	}
	c, err := costs.Open(sealed, "a long slate, a lantern", cat, b)
	require.NoError(t, err)
	assert.Equal(t, "56173.91", c.Costs["cutaway"].String())
	_, err = costs.Open(sealed, "another passphrase", cat, b)
	assert.ErrorIs(t, err, seal.ErrWrong)
	assert.NotContains(t, err.Error(), "another")
}

// Nothing that is handed to the buyer holds a cost, also after the costs were
// looked at.
func TestNothingOfTheCostsReachesThePrice(t *testing.T) {
	c, b, cat := read(t)
	x := terms(t)
	s, err := pricing.Build(b, cat, unit(), &x, day)
	require.NoError(t, err)
	costs.Judge(c, s)
	for name, v := range map[string]any{"price": s, "terms": x, "price book": b, "catalogue": cat, "unit": unit()} {
		t.Run(name, func(t *testing.T) {
			data, err := json.Marshal(v)
			require.NoError(t, err)
			for _, secret := range secrets {
				assert.NotContains(t, string(data), secret, name)
			}
		})
	}
}

// The packages that make what a buyer sees do not know this one.
func TestBuyersPackagesDoNotImportCosts(t *testing.T) {
	for _, dir := range []string{"..", "../quote", "../link", "../money", "../finance"} {
		files, err := filepath.Glob(dir + "/*.go")
		require.NoError(t, err)
		for _, file := range files {
			f, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ImportsOnly)
			require.NoError(t, err)
			for _, i := range f.Imports {
				assert.NotEqual(t, `"boxwright/pricing/costs"`, i.Path.Value,
					"%s: what a buyer may see must not know costs", file)
			}
		}
	}
}

func ExampleJudge() {
	t := new(testing.T)
	c, b, cat := read(t)
	s, _ := pricing.Build(b, cat, unit(), nil, day)
	m := costs.Judge(c, s)
	fmt.Println("price", m.Price.Show(), "cost", m.Cost.Show(), "margin", m.Margin.Show(), m.Percent.Show())
	for _, v := range m.Roles {
		fmt.Println(v.Role.Label, v.May)
	}
	// Output:
	// price 157,550.00 cost 130,121.69 margin 27,428.31 17.41 %
	// Salesperson true
	// Sales manager true
}
