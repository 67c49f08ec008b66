package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/web/assets/catalogue"
)

func ExampleCheck() {
	file := strings.Replace(string(catalogue.Demo), `"valid_from": "2026-11-01"`, `"valid_from": "2026-11-31"`, 1)
	r := Check([]byte(file))
	for _, line := range r.Lines("mine.json", false) {
		fmt.Println(line)
	}
	// Output:
	// mine.json:6: line 6, column 17 at valid_from: "2026-11-31" is not a date: write year-month-day, such as 2027-03-31
}

func ExampleFormat() {
	out, err := Format([]byte(`{"id":"demo","options":[{"id":"step","mass":{"lb":40.0}},{"id":"rail"}],"rules":[]}`))
	fmt.Print(string(out), err)
	// Output:
	// {
	//   "id": "demo",
	//   "options": [
	//     {"id": "step", "mass": {"lb": 40.0}},
	//     {"id": "rail"}
	//   ],
	//   "rules": []
	// }
	// <nil>
}

func ExampleGenerate() {
	here, _ := os.Getwd()
	_ = os.Chdir("..") // the doc comments are read from the sources below the module's root
	defer func() { _ = os.Chdir(here) }()
	text, err := Generate("quote.schema.json")
	var s struct {
		Title string `json:"title"`
	}
	_ = json.Unmarshal(text, &s)
	fmt.Println(s.Title, err)
	// Output: Boxwright quote: a unit, its terms and the parties <nil>
}

func TestDemoStandsInTheHousesForm(t *testing.T) {
	out, err := Format(catalogue.Demo)
	require.NoError(t, err)
	require.True(t, bytes.Equal(catalogue.Demo, out), "run: go run ./schema format web/assets/catalogue/demo.json")
}

func TestFormatKeepsTheEdition(t *testing.T) {
	var tight bytes.Buffer
	require.NoError(t, json.Compact(&tight, catalogue.Demo))
	out, err := Format(tight.Bytes())
	require.NoError(t, err)
	assert.True(t, bytes.Equal(catalogue.Demo, out), "from any layout the same comes out")
	before, err := config.Read(tight.Bytes())
	require.NoError(t, err)
	after, err := config.Read(out)
	require.NoError(t, err)
	assert.Equal(t, before.Hash(), after.Hash())
}

func TestFormatOfOddFiles(t *testing.T) {
	for _, c := range []struct{ reason, in, want, problem string }{
		{"nothing in it", `{}`, "{}\n", ""},
		{"empty lists", `{"options":[],"plant":{}}`, "{\n  \"options\": [],\n  \"plant\": {}\n}\n", ""},
		{"numbers as they were written", `{"a":1.50,"b":1e3,"c":12345678901234567890}`, "{\n  \"a\": 1.50,\n  \"b\": 1e3,\n  \"c\": 12345678901234567890\n}\n", ""},
		{"texts as a person reads them", `{"a":"\u003c 5 \u0026 \u00b0","b":"line\nend"}`, "{\n  \"a\": \"< 5 & °\",\n  \"b\": \"line\\nend\"\n}\n", ""},
		{"no object at all", `[1,2]`, "[\n  1,\n  2\n]\n", ""},
		{"cut short", `{"a":`, "", "cut short"},
		{"nothing", ``, "", "cut short"},
		{"two values", `{} {}`, "", "after the end"},
		{"a comma too many", `{"a":1,}`, "", "line 1, column 8"},
		{"a field twice", `{"price_book":{"prices":{"x":"1","x":"2"}}}`, "", "price_book.prices.x stands twice"},
		{"brackets without end", strings.Repeat("[", 20000), "", "not JSON"},
		{"too large", strings.Repeat(" ", config.MaxCatalogueBytes+1), "", "the most that is read"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			out, err := Format([]byte(c.in))
			if c.problem != "" {
				assert.ErrorContains(t, err, c.problem, c.reason)
				return
			}
			require.NoError(t, err, c.reason)
			assert.Equal(t, c.want, string(out), c.reason)
			again, err := Format(out)
			require.NoError(t, err, c.reason)
			assert.Equal(t, string(out), string(again), c.reason)
		})
	}
}

func TestCommand(t *testing.T) {
	dir := t.TempDir()
	file := func(name, old, new string) string {
		path := filepath.Join(dir, name)
		require.NoError(t, os.WriteFile(path, bytes.Replace(catalogue.Demo, []byte(old), []byte(new), 1), 0o644))
		return path
	}
	good, bad, cut := file("good.json", "", ""), file("bad.json", `"price_book": {`, `"pricebook": {`),
		filepath.Join(dir, "cut.json")
	require.NoError(t, os.WriteFile(cut, catalogue.Demo[:5000], 0o644))
	marked := file("marked.json", "{", "\ufeff{")
	for _, c := range []struct {
		reason    string
		args      []string
		status    int
		out, errs string // part of what is printed
	}{
		{"nothing asked", nil, 2, "", "usage"},
		{"something unknown asked", []string{"mend"}, 2, "", "usage"},
		{"no file", []string{"check"}, 2, "", "usage"},
		{"a file that is not there", []string{"check", filepath.Join(dir, "none.json")}, 2, "", "none.json"},
		{"in order", []string{"check", good}, 0, "good.json: in order: \"Demonstration catalogue", ""},
		{"in order, as an editor of Windows saves it", []string{"check", marked}, 0, "in order", ""},
		{"with its notes", []string{"check", "-notes", good}, 0, ": note: option", ""},
		{"not in order", []string{"check", bad}, 1, `at pricebook: there is no field "pricebook" here`, ""},
		{"one of two not in order", []string{"check", cut, good}, 1, "cut.json: the end of the file: the file ends too early", ""},
		{"format of a file in order", []string{"format", good}, 0, "", ""},
		{"format of half a file", []string{"format", cut}, 1, "", "cut short"},
		{"format of two", []string{"format", good, bad}, 2, "", "usage"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			var out, errs strings.Builder
			assert.Equal(t, c.status, run(c.args, &out, &errs), c.reason)
			assert.Contains(t, out.String(), c.out, c.reason)
			assert.Contains(t, errs.String(), c.errs, c.reason)
		})
	}
	left, err := os.ReadFile(cut)
	require.NoError(t, err)
	assert.Len(t, left, 5000, "a file that cannot be read is left as it was")
}
