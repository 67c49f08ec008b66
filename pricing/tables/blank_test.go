package tables_test

import (
	"encoding/json"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/csv"
	"boxwright/pricing/tables"
)

// A wire's marking made of white space shows as an empty cell. It counts as one
// when the table comes back.
func TestBlankCellsOfACircuit(t *testing.T) {
	marked := func(text string) *config.Circuit { return &config.Circuit{Function: text} }
	for _, c := range []struct {
		name, reason string
		was          *config.Circuit
		cells        map[string]string // what the row says instead of what went out
		want         *config.Circuit
		fault        string
	}{
		{"unchanged", "a row as it went out changes nothing", marked("\n"), nil, marked("\n"), ""},
		{"no amps", "a circuit without amps goes out as 0", marked("LAMP"), nil, marked("LAMP"), ""},
		{"all emptied", "a row whose circuit cells are all empty takes the circuit out", marked("LAMP"),
			map[string]string{"circuit function": "", "circuit amps": "", "circuit run_ft": ""}, nil, ""},
		{"all emptied, blank before", "white space left in the file does not keep the circuit", marked("\n"),
			map[string]string{"circuit amps": "", "circuit run_ft": ""}, nil, ""},
		{"one emptied", "amps alone are never empty", marked("LAMP"),
			map[string]string{"circuit amps": ""}, nil, `column circuit amps: is empty; write a number`},
	} {
		t.Run(c.name, func(t *testing.T) {
			const id = "fb-guard"
			var cat config.Catalogue
			require.NoError(t, json.Unmarshal(small(t), &cat))
			cat.Options[slices.IndexFunc(cat.Options,
				func(o config.Option) bool { return o.ID == id })].Circuit = c.was
			file, err := json.Marshal(&cat)
			require.NoError(t, err)
			text, err := tables.Out(file, "options")
			require.NoError(t, err)
			rows, err := csv.Read(text)
			require.NoError(t, err)
			row := rows[slices.IndexFunc(rows, func(r []string) bool { return r[0] == id })]
			for head, cell := range c.cells {
				row[slices.Index(rows[0], head)] = cell
			}
			back, err := tables.In(file, []tables.Sheet{{Name: "options.csv", Text: csv.Write(rows)}})
			if c.fault != "" {
				require.ErrorContains(t, err, c.fault, c.reason)
				return
			}
			require.NoError(t, err, c.reason)
			var is config.Catalogue
			require.NoError(t, json.Unmarshal(back, &is))
			at := slices.IndexFunc(is.Options, func(o config.Option) bool { return o.ID == id })
			require.Equal(t, c.want, is.Options[at].Circuit, c.reason)
		})
	}
}
