package main

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/web/assets/catalogue"
)

// Each fault is refused by the schema and by the reader alike, and the reader
// says where it stands.
func TestBrokenCataloguesFailInBoth(t *testing.T) {
	s := schema(t, "catalogue.schema.json")
	for _, c := range []struct {
		reason   string
		old, new string // the first such piece of the demonstration catalogue, and what takes its place
		line     string // what Check prints
	}{
		{"another format", `boxwright-catalogue/1`, `boxwright-catalogue/9`, `format: is "boxwright-catalogue/9"; a catalogue that this program reads begins with "boxwright-catalogue/1"`},
		{"a misspelled field", `"choose": "one"`, `"chose": "one"`, `at groups[0].chose: there is no field "chose" here`},
		{"a way of choosing nobody knows", `"choose": "one"`, `"choose": "two"`, `groups[0] "body-build" choose: "two" is not`},
		{"a rule of no kind", `"kind": "physics"`, `"kind": "custom"`, `kind: "custom" is not one of physics, standard, plant, supplier, commercial`},
		{"a mass at no zone", `"zone": "module-mid"`, `"zone": "attic"`, `zone: "attic" is not one of chassis, bumper`},
		{"a compartment on no side", `"side": "street"`, `"side": "left"`, `side: "left" is not one of street, curb, rear, inside`},
		{"a type of vehicle nobody builds", `"type": "II"`, `"type": "V"`, `type: "V" is not one of I, I-AD, II, III, III-AD`},
		{"a text where a number belongs", `"wheelbase_in": 148`, `"wheelbase_in": "148"`, `at chassis[0].wheelbase_in: a text stands where a number belongs`},
		{"a wheelbase of 309 digits", `"wheelbase_in": 148`, `"wheelbase_in": 1e308`, `wheelbase_in: 1e+308 is outside 1 to 100000`},
		{"a negative wheelbase", `"wheelbase_in": 148`, `"wheelbase_in": -148`, `chassis[0] "van-9500-148-gas" wheelbase_in: -148 is outside`},
		{"an id with capitals", `"id": "body-build"`, `"id": "Body Build"`, `groups[0] "Body Build": an id is`},
		{"a day that is none", `"valid_from": "2026-11-01"`, `"valid_from": "2026-13-01"`, `at valid_from: "2026-13-01" is not a date`},
		{"a day written otherwise", `"valid_from": "2026-11-01"`, `"valid_from": "11/01/2026"`, `at valid_from: "11/01/2026" is not a date`},
		{"a condition that says nothing", `"then": {"body": {"attr": "kind", "op": "=", "text": "van"}}`, `"then": {}`, `a condition has exactly one of`},
		{"an attribute nobody has", `"attr": "cab"`, `"attr": "color"`, `there is no attribute "color"`},
		{"a comparison nobody knows", `"op": "="`, `"op": "~"`, `op: "~" is not one of`},
		{"work without hours told as a text", `"hours": 4`, `"hours": "four"`, `a text stands where a number belongs`},
		{"a price as a number", `"van-9500-148-gas": "54800.00"`, `"van-9500-148-gas": 54800.00`, `price_book prices.van-9500-148-gas: "54800.00" is not an amount`},
		{"a price with a separator", `"van-9500-148-gas": "54800.00"`, `"van-9500-148-gas": "54,800.00"`, `price_book prices.van-9500-148-gas: "54,800.00" is not an amount`},
		{"half a cent", `"van-9500-148-gas": "54800.00"`, `"van-9500-148-gas": "54800.005"`, `price_book prices.van-9500-148-gas: "54800.005" is not an amount`},
		{"a percentage with its sign", `"rate": "6.5"`, `"rate": "6.5%"`, `price_book tax.rate: "6.5%" is not a percentage`},
		{"a rounding nobody knows", `"rounding": "half-up"`, `"rounding": "down"`, `price_book rounding: "down" is not "half-up" or "half-even"`},
		{"a scope nobody knows", `"on": "build", "reason"`, `"on": "paint", "reason"`, `price_book fleet_breaks on: "paint" is not one of`},
		{"a fee per something else", `"per": "unit"`, `"per": "mile"`, `price_book fees[0] "documents" per: "mile" is not "unit" or "order"`},
		{"an early payment by days", `"percent": "1.6", "at": "arrival"`, `"percent": "1.6", "days": 30`,
			`price_book prepayments[0].days: there is no field "days" here; it is misspelled or in the wrong place. ` +
				`Fields here: id, label, percent, at, reason`},
		{"a misspelled field of the price book", `"validity_days": 60`, `"validity": 60`, `price_book validity: there is no field "validity" here`},
		{"a contract without a name", `"id": "coop-plains"`, `"id": ""`, `price_book contracts[0] ""`},
	} {
		t.Run(c.reason, func(t *testing.T) {
			require.True(t, bytes.Contains(catalogue.Demo, []byte(c.old)), "%s: the demonstration catalogue holds %s",
				c.reason, c.old)
			file := bytes.Replace(catalogue.Demo, []byte(c.old), []byte(c.new), 1)
			assert.Error(t, valid(t, s, file), "schema: %s", c.reason)
			r, _ := read(file)
			require.NotZero(t, r.Faults(), "reader: %s", c.reason)
			lines := r.Lines("mine.json", true)
			i := slices.IndexFunc(lines, func(line string) bool { return strings.Contains(line, c.line) })
			if !assert.GreaterOrEqual(t, i, 0, "%s: %q", c.reason, lines) {
				return
			}
			before, _, _ := bytes.Cut(file, []byte(c.new))
			at := fmt.Sprintf("mine.json:%d: ", bytes.Count(before, []byte("\n"))+1)
			assert.True(t, strings.HasPrefix(lines[i], at), "%s: %s, not %s", c.reason, at, lines[i])
		})
	}
}

// Faults that take two places of the file to see are the reader's alone; that
// is why a schema is no substitute for a check.
func TestWhatOnlyTheReaderSees(t *testing.T) {
	s := schema(t, "catalogue.schema.json")
	for _, c := range []struct{ reason, old, new, line string }{
		{"a rule on an unknown option", `"pick": "build-van"`, `"pick": "build-vann"`, `"build-vann" is no option, chassis or body`},
		{"a group of another name", `"id": "body-build"`, `"id": "body-built"`, `options[0] "build-seam" group: "body-build" is not a group`},
		{"an option without a price", `"build-seam": "0.00",`, ``, `price_book prices "build-seam": has no price, but options[0] "build-seam" needs one`},
		{"a part for a step that is none", `"parts_for": ["cabinets"]`, `"parts_for": ["cabinetry"]`, `parts_for: "cabinetry" must be an activity of the plant`},
		{"a part for a step before it is ordered", `"parts_for": ["cabinets"]`, `"parts_for": ["release"]`, `parts_for: "release" must be an activity of the plant that stands after the one where parts arrive`},
		{"a step that waits for no part", `"parts": {"low": 20, "likely": 30, "high": 45}, "parts_for": ["cabinets"]`, `"parts_for": ["cabinets"]`, `parts_for: names steps that wait for a part`},
		{"a price for nothing", `"build-seam": "0.00",`, `"build-seam": "0.00", "build-dream": "9.00",`, `price_book prices "build-dream": is no chassis, body or price key`},
	} {
		t.Run(c.reason, func(t *testing.T) {
			require.True(t, bytes.Contains(catalogue.Demo, []byte(c.old)), "%s: the demonstration catalogue holds %s",
				c.reason, c.old)
			file := bytes.Replace(catalogue.Demo, []byte(c.old), []byte(c.new), 1)
			require.NoError(t, valid(t, s, file), c.reason)
			r := Check(file)
			require.NotZero(t, r.Faults(), c.reason)
			assert.Contains(t, strings.Join(r.Lines("mine.json", true), "\n"), c.line, c.reason)
		})
	}
}

// The words of the schema are those that the reader names when it refuses
// another one.
func TestFixedWordsAreThoseOfTheReader(t *testing.T) {
	for name, piece := range map[string]string{
		"Chassis.type": `"type": "II"`, "Chassis.cab": `"cab": "van"`, "Chassis.drive": `"drive": "4x2"`, "Chassis.fuel": `"fuel": "gasoline"`,
		"Body.kind": `"kind": "module"`, "Compartment.side": `"side": "street"`, "Mass.zone": `"zone": "module-mid"`, "Group.choose": `"choose": "one"`,
		"Rule.kind": `"kind": "physics"`, "Test.op": `"op": "="`, "Activity.source": `"source": "chassis"`, "Activity.only": `"only": "module"`, "Fee.per": `"per": "unit"`,
	} {
		t.Run(name, func(t *testing.T) {
			field, _, _ := strings.Cut(piece, ":")
			require.True(t, bytes.Contains(catalogue.Demo, []byte(piece)), "%s: the demonstration catalogue holds %s",
				name,
				piece)
			r := Check(bytes.Replace(catalogue.Demo, []byte(piece), []byte(field+`: "no-such-word"`), 1))
			i := slices.IndexFunc(r.Problems, func(p config.Problem) bool {
				return strings.Contains(p.Text, `"no-such-word" is not`)
			})
			require.GreaterOrEqual(t, i, 0, "%s: %v", name, r.Problems)
			text := r.Problems[i].Text
			if _, list, ok := strings.Cut(text, "is not one of "); ok {
				want := words[name]
				if name == "Mass.zone" {
					want = want[1:] // the empty word goes with a mass of zero
				}
				if plain, left := strings.CutSuffix(list, "; it may be left out too"); left {
					list = ", " + plain // the empty word
				}
				assert.Equal(t, strings.Join(want, ", "), list, name)
				return
			}
			for _, w := range words[name] {
				assert.Contains(t, text, fmt.Sprintf("%q", w), name)
			}
		})
	}
}
