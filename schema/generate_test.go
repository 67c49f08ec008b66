package main

import (
	"bytes"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	validator "github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing"
	"boxwright/pricing/money"
	"boxwright/pricing/quote"
	"boxwright/web/assets/catalogue"
)

func schema(t *testing.T, name string) *validator.Schema {
	t.Helper()
	text, err := os.ReadFile(name)
	require.NoError(t, err)
	doc, err := validator.UnmarshalJSON(bytes.NewReader(text))
	require.NoError(t, err)
	c := validator.NewCompiler()
	require.NoError(t, c.AddResource(name, doc))
	s, err := c.Compile(name)
	require.NoError(t, err)
	return s
}

func valid(t *testing.T, s *validator.Schema, file []byte) error {
	t.Helper()
	v, err := validator.UnmarshalJSON(bytes.NewReader(file))
	require.NoError(t, err)
	return s.Validate(v)
}

func TestCommittedSchemasAreThoseOfTheTypes(t *testing.T) {
	t.Chdir("..")
	for name := range Schemas {
		want, err := Generate(name)
		require.NoError(t, err)
		have, err := os.ReadFile("schema/" + name)
		require.NoError(t, err)
		assert.True(t, bytes.Equal(want, have), "%s has drifted from the Go types; run: go run ./schema generate", name)
		again, err := Generate(name)
		require.NoError(t, err)
		assert.True(t, bytes.Equal(want, again), "%s: the same types give the same bytes", name)
	}
	_, err := Generate("recipe.schema.json")
	assert.ErrorContains(t, err, "recipe")
}

func TestCommittedProtocolIsThatOfTheTypes(t *testing.T) {
	t.Chdir("..")
	for path, make := range Protocol {
		want, err := make()
		require.NoError(t, err)
		have, err := os.ReadFile(path)
		require.NoError(t, err)
		assert.Equal(t, string(want), string(have), "%s has drifted from the Go types; run: go run ./schema generate",
			path)
	}
}

func TestDemoCatalogueFitsItsSchema(t *testing.T) {
	require.NoError(t, valid(t, schema(t, "catalogue.schema.json"), catalogue.Demo))
}

func TestQuotesFitTheirSchema(t *testing.T) {
	s := schema(t, "quote.schema.json")
	amount, percent := money.Dollars(1250), func(text string) money.Percent {
		p, err := money.ParsePercent(text)
		require.NoError(t, err)
		return p
	}
	rate := percent("6.5")
	for _, c := range []struct {
		reason string
		draft  quote.Draft
	}{
		{"hardly anything filled in", quote.Draft{Format: quote.DraftFormat, Unit: config.Unit{Picks: []config.Pick{}}}},
		{"much filled in", quote.Draft{
			Format: quote.DraftFormat, Number: "Q-1", Rev: 2, Date: config.Date{Year: 2026, Month: 11, Day: 25},
			Seller: quote.Party{Name: "Seller"},
			Unit: config.Unit{Chassis: "cut", Body: "mod",
				Picks: []config.Pick{{Option: "flood", Qty: 2, Filled: true}},
				Own:   []config.OwnLimit{{Figure: "space.headroom", Value: 72}}, OrderOn: config.Date{Year: 2026,
					Month: 12, Day: 1}},
			Terms: pricing.Terms{Units: 3, Use: pricing.UseOther, DiscountPercent: percent("1.5"), TradeIn: amount,
				TaxRate:      &rate,
				FreightMiles: money.Count(412), Extras: []pricing.Extra{{Label: "Radios", Price: amount}},
				Milestones: []pricing.Milestone{{ID: "order", Label: "With the order", Percent: percent("100")}}},
		}},
	} {
		file, err := c.draft.Bytes()
		require.NoError(t, err)
		require.NoError(t, valid(t, s, file), c.reason)
		_, err = quote.ReadDraft(file)
		require.NoError(t, err, c.reason)
		assert.Error(t, valid(t, s, bytes.Replace(file, []byte(`"title"`), []byte(`"headline"`), 1)), c.reason)
		assert.Error(t, valid(t, s, bytes.Replace(file, []byte(quote.DraftFormat), []byte("other/1"), 1)), c.reason)
	}
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	file, err := quote.Begin(ed, "", "", config.Date{Year: 2026, Month: 11, Day: 25}).Bytes()
	require.NoError(t, err)
	require.NoError(t, valid(t, s, file), "the quote that the page begins with")
}

// Names in the tables of restrict.go must be fields of some schema: a field
// that was renamed would otherwise lose its restriction without a word.
func TestRestrictionsMeetAField(t *testing.T) {
	names := slices.Concat(slices.Collect(maps.Keys(words)), positive)
	for _, typ := range named {
		names = append(names, typ+".id")
	}
	var all strings.Builder
	for name := range Schemas {
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		all.Write(text)
	}
	for _, name := range names {
		typ, prop, _ := strings.Cut(name, ".")
		_, after, found := strings.Cut(all.String(), "\n    \""+typ+"\": {\n")
		require.True(t, found, name)
		def, _, _ := strings.Cut(after, "\n    }")
		assert.Contains(t, def, "\n        \""+prop+"\": {", name)
	}
}
