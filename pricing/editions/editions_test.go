package editions_test

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing/editions"
	"boxwright/pricing/link"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	"boxwright/pricing/sign"
	"boxwright/web/assets/catalogue"
)

var today = config.Date{Year: 2026, Month: 11, Day: 25}

func edition(t *testing.T, pairs ...string) *quote.Edition {
	t.Helper()
	file := catalogue.Demo
	for i := 0; i < len(pairs); i += 2 {
		require.True(t, bytes.Contains(file, []byte(pairs[i])), "the catalogue holds %s", pairs[i])
		file = bytes.Replace(file, []byte(pairs[i]), []byte(pairs[i+1]), 1)
	}
	ed, err := quote.OpenEdition(file)
	require.NoError(t, err)
	return ed
}

func part(c *editions.Comparison, name string) []editions.Thing {
	for _, p := range c.Parts {
		if p.Name == name {
			return p.Things
		}
	}
	return nil
}

func TestNothingDiffersFromItself(t *testing.T) {
	require.True(t, editions.Compare(edition(t), edition(t)).Same())
}

func TestWhatChanged(t *testing.T) {
	c := editions.Compare(edition(t), edition(t,
		`"edition": "2026-11"`, `"edition": "2027-02"`,
		`"fb-winch": "6480.00"`, `"fb-winch": "6804.00"`, // from the first day; 6,650.00 from 2027 on stays
		`"id": "rail-rubber", "group": "rub-rail", "label": "Rub rail with rubber insert"`,
		`"id": "rail-rubber", "group": "rub-rail", "label": "Rubber rub rail"`,
		`{"id": "fit-164", "kind": "physics", "if": {"body": {"attr": "length_in", "op": ">", "number": 153}}, "then": {"chassis": {"attr": "gvwr_lb", "op": ">=", "number": 14500}}`,
		`{"id": "fit-164", "kind": "physics", "if": {"body": {"attr": "length_in", "op": ">", "number": 153}}, "then": {"chassis": {"attr": "gvwr_lb", "op": ">=", "number": 16000}}`,
		`{"id": "van-rail",`, `{"id": "van-no-rail",`,
		`"rate": "6.5"`, `"rate": "7"`,
	))
	require.Equal(t,
		[]editions.Thing{{ID: "rail-rubber", Label: "Rubber rub rail", How: editions.Changed,
			Fields: []editions.Field{{Name: "label", From: "Rub rail with rubber insert", To: "Rubber rub rail"}}}},
		part(c, "Options"))
	require.Equal(t, []editions.Field{{Name: "edition", From: "2026-11", To: "2027-02"}},
		part(c, "The edition")[0].Fields)
	require.Equal(t, []editions.Field{{Name: "tax rate", From: "6.5", To: "7"}},
		part(c, "Terms of the price book")[0].Fields)
	require.Equal(t, "Options", c.Parts[0].Name)

	require.Len(t, c.Prices, 1)
	p := c.Prices[0]
	assert.Equal(t, "Winch bumper with 9,000 lb electric winch", p.Label)
	assert.True(t, p.On.IsZero())
	assert.Equal(t, "324.00", p.By().String())
	assert.Equal(t, "+5.0 %", p.Percent())

	require.Len(t, c.Rules, 3)
	assert.Equal(t, editions.Rule{
		ID: "fit-164", Kind: "physics", Reason: c.Rules[0].Reason, How: editions.Changed,
		From: "if body.length_in > 153 then chassis.gvwr_lb >= 14500", To: "if body.length_in > 153 then " +
			"chassis.gvwr_lb >= 16000",
	}, c.Rules[0])
	assert.NotEmpty(t, c.Rules[0].Reason)
	assert.Equal(t, editions.Added, c.Rules[1].How)
	assert.Equal(t, editions.Removed, c.Rules[2].How)
	assert.Equal(t, "van-rail", c.Rules[2].ID)
}

// A price that differs from a day on is said with the day, once.
func TestDatedPricesAreToldByDay(t *testing.T) {
	c := editions.Compare(edition(t), edition(t, `"fb-winch": "6650.00"`, `"fb-winch": "6700.00"`))
	require.Len(t, c.Prices, 1)
	require.Equal(t, "2027-01-01", c.Prices[0].On.String())
	require.Equal(t, "50.00", c.Prices[0].By().String())
}

func begun(t *testing.T, ed *quote.Edition, picks ...string) *quote.Draft {
	t.Helper()
	d := quote.Begin(ed, "cut-14500-158-gas", "mod-146-72", today)
	for _, id := range picks {
		d.Unit, _, _ = propose.Take(ed, d, id)
		require.True(t, d.Unit.Has(id), id)
	}
	return d
}

func TestWhatAChangeMeansForAQuote(t *testing.T) {
	from := edition(t)
	to := edition(t,
		`"id": "hw-sealed",`, `"id": "hw-sealed-2",`,
		`"hw-sealed": "1560.00"`, `"hw-sealed-2": "1560.00"`,
		`"rail-rubber": "380.00"`, `"rail-rubber": "480.00"`,
	)
	c := editions.Compare(from, to)

	plain := begun(t, from)
	touch := c.Touch(plain)
	require.False(t, touch.Touched(), "%+v", touch)
	require.Equal(t, touch.Was, touch.Now)

	dearer := begun(t, from, "rail-rubber")
	touch = c.Touch(dearer)
	require.True(t, touch.Touched())
	require.Equal(t, []string{"Rub rail with rubber insert"}, touch.Uses)
	require.Empty(t, touch.Lost)
	require.False(t, touch.Now.Stopped)
	was, err := quote.Compute(from, dearer)
	require.NoError(t, err)
	require.Equal(t, was.Total(), touch.Was.Total)
	require.Equal(t, 1, touch.Delta.Total.Sign())

	lost := begun(t, from, "hw-sealed")
	touch = c.Touch(lost)
	require.Equal(t, []string{"Sealed stainless latches"}, touch.Lost)
	require.NotEmpty(t, touch.Changes, "the group is filled again")
	require.False(t, touch.Now.Stopped)

	// A fleet is moved whole.
	require.True(t, lost.Duplicate())
	moved, gone, _ := quote.Move(to, lost)
	require.Equal(t, []string{"hw-sealed", "hw-sealed"}, gone)
	require.True(t, c.Touch(moved).Current)
	_, err = quote.Compute(to, moved)
	require.NoError(t, err)
}

func TestANewRuleStopsAQuote(t *testing.T) {
	from := edition(t)
	to := edition(t, `"rules": [`, `"rules": [
    {"id": "no-rubber", "kind": "supplier", "then": {"not": {"pick": "rail-rubber"}}, "reason": "The rubber is no longer made."},`)
	touch := editions.Compare(from, to).Touch(begun(t, from, "rail-rubber"))
	require.Contains(t, touch.Uses, "rule: The rubber is no longer made.")
	require.True(t, touch.Now.Stopped)
	require.NotEmpty(t, touch.Stops)
}

func TestSignedQuotesKeepTheirFigures(t *testing.T) {
	from, to := edition(t), edition(t, `"rail-rubber": "380.00"`, `"rail-rubber": "480.00"`)
	d := begun(t, from, "rail-rubber")
	q, err := quote.Compute(from, d)
	require.NoError(t, err)
	key, err := os.ReadFile("../../web/assets/catalogue/demo-key.json")
	require.NoError(t, err)
	k, err := sign.Read(key)
	require.NoError(t, err)
	text, err := link.Encode(q)
	require.NoError(t, err)
	d.Issued, err = link.Sign(text, from.Cat, k)
	require.NoError(t, err)
	for _, c := range []*editions.Comparison{editions.Compare(from, to), editions.Compare(to, to)} {
		touch := c.Touch(d)
		require.True(t, touch.Signed)
		require.Equal(t, q.Total(), touch.Frozen.Total)
		require.NotEqual(t, touch.Frozen.Total, touch.Now.Total)
	}
	d.Issued = "q=nonsense"
	touch := editions.Compare(from, to).Touch(d)
	require.True(t, touch.Signed)
	require.Nil(t, touch.Frozen)
	require.True(t, strings.HasPrefix(touch.Now.Total, "USD "))
}
