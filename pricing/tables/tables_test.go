package tables_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boxwright/config"
	"boxwright/config/csv"
	"boxwright/config/letters"
	"boxwright/pricing"
	"boxwright/pricing/tables"
	"boxwright/web/assets/catalogue"
)

func all(t require.TestingT, file []byte) []tables.Sheet {
	var out []tables.Sheet
	for _, name := range tables.Names {
		text, err := tables.Out(file, name)
		require.NoError(t, err)
		out = append(out, tables.Sheet{Name: name + ".csv", Text: text})
	}
	return out
}

func hash(t require.TestingT, file []byte) string {
	cat, err := config.Read(file)
	require.NoError(t, err)
	_, err = pricing.ReadBook(cat.PriceBook, cat)
	require.NoError(t, err)
	return cat.Hash()
}

// A table that comes back as it went out leaves every byte in place.
func TestRoundTripOfTheDemonstration(t *testing.T) {
	back, err := tables.In(catalogue.Demo, all(t, catalogue.Demo))
	require.NoError(t, err)
	require.True(t, bytes.Equal(catalogue.Demo, back))
	var tight bytes.Buffer
	require.NoError(t, json.Compact(&tight, catalogue.Demo))
	back, err = tables.In(tight.Bytes(), all(t, tight.Bytes()))
	require.NoError(t, err)
	require.True(t, bytes.Equal(tight.Bytes(), back))
}

// What a spreadsheet does to a table changes nothing.
func TestSpreadsheetsTakeLiberties(t *testing.T) {
	for _, c := range []struct {
		reason string
		as     func(rows [][]string) string
	}{
		{"a byte order mark and line ends of two", func(r [][]string) string {
			return "\ufeff" + strings.ReplaceAll(csv.Write(r), "\n", "\r\n")
		}},
		{"semicolons and quotes around every cell", func(r [][]string) string {
			var b strings.Builder
			for _, row := range r {
				for i, cell := range row {
					if i > 0 {
						b.WriteByte(';')
					}
					b.WriteString(`"` + strings.ReplaceAll(csv.Safe(cell), `"`, `""`) + `"`)
				}
				b.WriteString("\r\n")
			}
			return b.String()
		}},
		{"empty columns and rows at the end", func(r [][]string) string {
			for i := range r {
				r[i] = append(r[i], "", " ", "")
			}
			return csv.Write(append(r, make([]string, len(r[0]))))
		}},
		{"rows and columns in another order", func(r [][]string) string {
			draw := rand.New(rand.NewPCG(1, 2))
			rest := r[1:]
			draw.Shuffle(len(rest), func(i, j int) { rest[i], rest[j] = rest[j], rest[i] })
			for _, row := range r {
				slices.Reverse(row)
			}
			return csv.Write(r)
		}},
		{"numbers in another form", func(r [][]string) string {
			for _, row := range r[1:] {
				for i, cell := range row {
					if whole, ok := strings.CutSuffix(cell, ".00"); ok {
						row[i] = whole
					}
					if i > 7 && cell != "" && strings.Trim(cell, "0123456789") == "" {
						row[i] = cell + ".0"
					}
					if cell == "yes" {
						row[i] = "TRUE"
					}
				}
			}
			return csv.Write(r)
		}},
		{"columns taken out", func(r [][]string) string {
			head := r[0]
			for i, row := range r {
				var kept []string
				for k, cell := range row {
					if slices.Contains([]string{"id", "group", "label", "price", "then"}, head[k]) {
						kept = append(kept, cell)
					}
				}
				r[i] = kept
			}
			return csv.Write(r)
		}},
	} {
		t.Run(c.reason, func(t *testing.T) {
			var sheets []tables.Sheet
			for _, s := range all(t, catalogue.Demo) {
				rows, err := csv.Read(s.Text)
				require.NoError(t, err)
				sheets = append(sheets, tables.Sheet{Name: s.Name, Text: c.as(rows)})
			}
			back, err := tables.In(catalogue.Demo, sheets)
			require.NoError(t, err, c.reason)
			require.True(t, bytes.Equal(catalogue.Demo, back), c.reason)
		})
	}
}

// edited is a table of the demonstration catalogue with some of its text
// replaced.
func edited(t *testing.T, name string, pairs ...string) tables.Sheet {
	t.Helper()
	text, err := tables.Out(catalogue.Demo, name)
	require.NoError(t, err)
	for i := 0; i < len(pairs); i += 2 {
		require.True(t, strings.Contains(text, pairs[i]), "the table holds %s", pairs[i])
		text = strings.Replace(text, pairs[i], pairs[i+1], 1)
	}
	return tables.Sheet{Name: name + ".csv", Text: text}
}

// lines are those of the file that a change took out and put in.
func lines(before, after []byte) (out, in []string) {
	was, is := strings.Split(string(before), "\n"), strings.Split(string(after), "\n")
	count := map[string]int{}
	for _, l := range was {
		count[l]--
	}
	for _, l := range is {
		count[l]++
	}
	for _, l := range was {
		if count[l] < 0 {
			out = append(out, strings.TrimSpace(l))
		}
	}
	for _, l := range is {
		if count[l] > 0 {
			in = append(in, strings.TrimSpace(l))
		}
	}
	return out, in
}

func TestOneChangeChangesOneLine(t *testing.T) {
	for _, c := range []struct {
		reason string
		sheet  tables.Sheet
		out    int
		in     string
	}{
		{"a price", edited(t, "prices", "Winch bumper with 9,000 lb electric winch\",6480.00", "Winch bumper with 9,000 lb electric winch\",6400"), 1, `"fb-winch": "6400.00",`},
		{"a price with a comma between the thousands", edited(t, "prices", "Winch bumper with 9,000 lb electric winch\",6480.00", "Winch bumper with 9,000 lb electric winch\",\"6,400.00\""), 1, `"fb-winch": "6400.00",`},
		{"a price as money is shown in a spreadsheet", edited(t, "prices", "Winch bumper with 9,000 lb electric winch\",6480.00", "Winch bumper with 9,000 lb electric winch\",\"$6,400.00 \""), 1, `"fb-winch": "6400.00",`},
		{"a rule", edited(t, "rules", "body.length_in > 153,chassis.gvwr_lb >= 14500", `body.length_in > 153,"any(chassis.gvwr_lb>=14500, not fb-winch)"`), 1, `"then": {"any": [{"chassis": {"attr": "gvwr_lb", "op": ">=", "number": 14500}}, {"not": {"pick": "fb-winch"}}]}`},
		{"a label", edited(t, "options", "Stitch-welded behind the corner post", "Stitched <at> the post"), 1, `"label": "Stitched <at> the post"`},
		{"the reason of a dated change", edited(t, "prices", "Mid-year change of cot", "A change of cot"), 1, `"reason": "A change of cot and fluid-spring`},
	} {
		t.Run(c.reason, func(t *testing.T) {
			back, err := tables.In(catalogue.Demo, []tables.Sheet{c.sheet})
			require.NoError(t, err, c.reason)
			out, in := lines(catalogue.Demo, back)
			require.Len(t, out, c.out, c.reason)
			require.Len(t, in, c.out, c.reason)
			assert.Contains(t, in[0], c.in, c.reason)
		})
	}
}

func TestRowsComeAndGo(t *testing.T) {
	sheets := []tables.Sheet{
		edited(t, "options", "\nbuild-stitch,", "\nbuild-rivet,body-build,Riveted,Skins riveted to the "+
			"frame.,,,,,12,,module-mid,,,30,,,,,2.5,1,,,,,,,,,Rivet lamp,2.5,12,,weld 3; grind -1.5,5 / 8 / "+
			"13,,,,a-clause; b-clause,new,\nbuild-stitch,"),
		edited(t, "prices", "\nbuild-stitch,", "\nbuild-rivet,,125.50\nbuild-stitch,"),
		edited(t, "rules", "\nfit-van-chassis,", "\nno-rivet,plant,Rivets do not hold in a van.,body.kind = van,not "+
			"build-rivet\nfit-van-chassis,"),
	}
	back, err := tables.In(catalogue.Demo, sheets)
	require.NoError(t, err)
	out, in := lines(catalogue.Demo, back)
	require.Empty(t, out)
	require.Len(t, in, 3)
	cat, err := config.Read(back)
	require.NoError(t, err)
	o := cat.OptionByID("build-rivet")
	require.NotNil(t, o)
	demo, err := config.Read(catalogue.Demo)
	require.NoError(t, err)
	at := slices.IndexFunc(cat.Options, func(o config.Option) bool { return o.ID == "build-rivet" })
	require.Equal(t, demo.Options[at].ID, cat.Options[at+1].ID, "it stands behind the row above it")
	require.Equal(t, demo.Options[at-1].ID, cat.Options[at-1].ID)
	require.Equal(t, config.Option{
		ID: "build-rivet", Group: "body-build", Label: "Riveted", Spec: "Skins riveted to the frame.",
		Mass: &config.Mass{Lb: 12, Zone: "module-mid", ZIn: 30}, Load: &config.Load{SceneA: 2.5, Shed: 1},
		Circuit: &config.Circuit{Function: "Rivet lamp", Amps: 2.5, RunFt: 12},
		Work:    []config.Work{{Station: "weld", Hours: 3}, {Station: "grind", Hours: -1.5}},
		Parts:   &config.Span{Low: 5, Likely: 8, High: 13},
		Clauses: []string{"a-clause", "b-clause"}, Tags: []string{"new"},
	}, *o)

	// Taken out again, the file is as it was.
	again, err := tables.In(back, all(t, catalogue.Demo))
	require.NoError(t, err)
	require.True(t, bytes.Equal(catalogue.Demo, again))
}

func TestNewDatedPrices(t *testing.T) {
	for _, c := range []struct{ day, reason string }{{"2028-01-01", "newer than all"}, {"2027-03-01", "in between"},
		{"2026-12-01", "older than all"}} {
		t.Run(c.reason, func(t *testing.T) {
			text, err := tables.Out(catalogue.Demo, "prices")
			require.NoError(t, err)
			rows, err := csv.Read(text)
			require.NoError(t, err)
			for i := range rows {
				cell := ""
				switch rows[i][0] {
				case "id":
					cell = "From " + c.day + ": Steel costs more"
				case "fb-winch":
					cell = "7000"
				}
				rows[i] = append(rows[i], cell)
			}
			back, err := tables.In(catalogue.Demo, []tables.Sheet{{Name: "p.csv", Text: csv.Write(rows)}})
			require.NoError(t, err, c.reason)
			cat, err := config.Read(back)
			require.NoError(t, err)
			book, err := pricing.ReadBook(cat.PriceBook, cat)
			require.NoError(t, err)
			require.Len(t, book.Editions, 3, c.reason)
			day, _ := config.ParseDate(c.day)
			require.Equal(t, "7000.00", book.AsOf(day).Prices["fb-winch"].String(), c.reason)
		})
	}
}

func TestThingsOfSeveralCells(t *testing.T) {
	text, err := tables.Out(catalogue.Demo, "options")
	require.NoError(t, err)
	rows, err := csv.Read(text)
	require.NoError(t, err)
	column := func(head string) int { return slices.Index(rows[0], head) }
	winch := slices.IndexFunc(rows, func(r []string) bool { return r[0] == "fb-winch" })
	for _, h := range rows[0] {
		if strings.HasPrefix(h, "mass ") {
			rows[winch][column(h)] = ""
		}
	}
	back, err := tables.In(catalogue.Demo, []tables.Sheet{{Name: "o.csv", Text: csv.Write(rows)}})
	require.NoError(t, err)
	cat, err := config.Read(back)
	require.NoError(t, err)
	require.Nil(t, cat.OptionByID("fb-winch").Mass, "all its cells emptied, the mass is gone")

	rows[winch][column("mass zone")] = "bumper"
	_, err = tables.In(catalogue.Demo, []tables.Sheet{{Name: "o.csv", Text: csv.Write(rows)}})
	require.ErrorContains(t, err,
		fmt.Sprintf(`o.csv, row %d "fb-winch", column mass lb: is empty; write a number, 0 if it has none`, winch+1))
}

// Every fault of every table is said at once, by file, row, column and remedy,
// and nothing is taken.
func TestFaultsAreLocated(t *testing.T) {
	for _, c := range []struct {
		reason string
		sheet  tables.Sheet
		says   string
	}{
		{"letters where a number belongs", edited(t, "options", "fb-push,", "fb-push,", ",places,", ",places,x"), `column mass x_in: "x`},
		{"a comma that may be a point", edited(t, "prices", `,6480.00`, `,"6480,00"`), `"fb-winch", column price: “6480,00” can be read in two ways: write 6480.00 or 648000`},
		{"no price", edited(t, "prices", `,6480.00`, `,`), `"fb-winch", column price: is empty; write a price, 0 if it costs nothing`},
		{"a heading nobody knows", edited(t, "options", "mass lb", "mass pounds"), `options.csv, row 1, column I: "mass pounds" is no column of the table of options; its columns are id, group`},
		{"a heading twice", edited(t, "options", "mass tol_lb", "mass lb"), `the heading "mass lb" stands twice`},
		{"an id twice", edited(t, "rules", "\nfit-164,", "\nfit-180,"), `rules.csv, row 6 "fit-180", column id: this id stands in row 5 already`},
		{"a row without an id", edited(t, "rules", "\nfit-164,", "\n\"\","), `rules.csv, row 5, column id: the row has no id`},
		{"a rule that does not read", edited(t, "rules", "chassis.gvwr_lb >= 14500", "chassis.gvwr_lb => 14500"), `rules.csv, row 5 "fit-164", column then: at character`},
		{"a rule that demands nothing", edited(t, "rules", "body.length_in > 153,chassis.gvwr_lb >= 14500", "body.length_in > 153,"), `rules.csv, row 5 "fit-164", column then: is empty`},
		{"a rule that names what is not there", edited(t, "rules", "chassis.gvwr_lb >= 14500", "no-such-thing"), `rules.csv, row 5 "fit-164", column then: "no-such-thing" is no option, chassis or body`},
		{"a word that an attribute never is", edited(t, "rules", "chassis.cab = van,", "chassis.cab = bus,"), `rules.csv, row 2 "fit-van-body", column if: "bus" is not one of cab-chassis, cutaway, van`},
		{"more than any option weighs", edited(t, "options", ",96,5,places,", ",96000000,5,places,"), `column mass lb: 96000000 is outside -20000 to 50000`},
		{"a zone that is none", edited(t, "options", ",module-mid,", ",attic,"), `column mass zone: "attic" is not one of`},
		{"work at no station", edited(t, "options", "weld 10; grind 14", "weld 10; sand 14"), `options.csv, row 2 "build-seam", column work: "sand" is not a station of the plant: framing, `},
		{"work without hours", edited(t, "options", "weld 10; grind 14", "weld 10; grind"), `options.csv, row 2 "build-seam", column work: "grind" is no work`},
		{"a column that only tells", edited(t, "options", `,"shell; unseen"`, ",seats"), `options.csv, row 2 "build-seam", column also has: this column only tells`},
		{"an option of another catalogue, with what no column holds", edited(t, "options", "\nfb-push,", "\nfb-other,front-bumper,A,A.,,,,,60,4,places,,,,,,,,,,,,,,,,,,,,,,,,,,,,,,places\nfb-push,"), `"fb-other", column also has: the id is new, and a table has no columns for places: empty the cell to do without them, write the old id again`},
		{"a mass where pieces stand that no column holds", edited(t, "options", "\nfb-push,", "\nfb-other,front-bumper,A,A.,,,,,60,4,places,,,,,,,,,,,,,,,,,,,,,,,,,,,,,,,,\nfb-push,"), `"fb-other", column mass zone: "places" is where its pieces stand, which a table has no columns for; write another zone`},
		{"a text under no heading", edited(t, "options", `,"shell; unseen"`, `,"shell; unseen",,why`), `options.csv, row 2 "build-seam", column AQ: "why" stands under no heading`},
		{"neither yes nor no", edited(t, "options", ",yes,", ",perhaps,"), `"perhaps" is neither yes nor no`},
		{"an option without a price", edited(t, "options", "\nbuild-stitch,", "\nbuild-rivet,body-build,Riveted,Riveted.\nbuild-stitch,"), `the table of prices, row "build-rivet": has no price, but options[1] "build-rivet" needs one`},
		{"a price without an option", edited(t, "prices", "\nbuild-stitch,", "\nbuild-rivet,,5\nbuild-stitch,"), `"build-rivet": is no chassis, body or price key`},
		{"a chassis for less than nothing", edited(t, "prices", ",54800.00,", ",-54800.00,"), `prices.csv, row 2 "van-9500-148-gas"`},
		{"a day without a reason", edited(t, "prices", "from 2027-01-01: Model-year change of the chassis and yearly change of the bodies.", "from 2027-01-02"), "need a reason the customer can read"},
		{"a day that is none", edited(t, "prices", "from 2027-01-01", "from 1/1/2027"), `prices.csv, row 1, column D: "1/1/2027" is not a date: write year-month-day`},
		{"a month that is none", edited(t, "prices", "from 2027-01-01", "from 2027-13-01"), `column D: "2027-13-01" is not a date`},
		{"no day", edited(t, "prices", "from 2027-01-01: ", "early 2027: "), "is no column of the table of prices"},
		{"another table altogether", tables.Sheet{Name: "x.csv", Text: "a,b\n1,2\n"}, "x.csv, row 1: the first row has the headings of no table"},
		{"a workbook", tables.Sheet{Name: "x.xlsx", Text: "PK\x03\x04\x14"}, `x.xlsx: is a workbook and no text; save the sheet`},
		{"letters of another age", edited(t, "rules", "fit-164,", "fit-164\xbd,"), "is not in UTF-8"},
		{"letters lost on the way", edited(t, "rules", "fit-164,", "fit-164\ufffd,"), "is not in UTF-8"},
		{"nothing", tables.Sheet{Name: "x.csv", Text: " \n"}, "x.csv: is empty"},
		{"no rows", tables.Sheet{Name: "x.csv", Text: "id,then\n"}, "x.csv: has no rows"},
		{"a quote never closed", tables.Sheet{Name: "x.csv", Text: "id,then\n\"a,b"}, "x.csv: line 2: a quote is opened and never closed"},
		{"too much", tables.Sheet{Name: "x.csv", Text: strings.Repeat("x", csv.MaxBytes+1)}, "the most that is read"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			back, err := tables.In(catalogue.Demo, []tables.Sheet{c.sheet})
			require.Nil(t, back, c.reason)
			require.Error(t, err, c.reason)
			var said []string
			for _, p := range err.(config.Problems) {
				said = append(said, p.String())
			}
			assert.Contains(t, strings.Join(said, "\n"), c.says, c.reason)
		})
	}
}

func TestAllFaultsAtOnceAndBounded(t *testing.T) {
	text, err := tables.Out(catalogue.Demo, "prices")
	require.NoError(t, err)
	_, err = tables.In(catalogue.Demo,
		[]tables.Sheet{{Name: "prices.csv", Text: strings.ReplaceAll(text, ".00", ".000")},
			edited(t, "rules", "chassis.gvwr_lb >= 14500", "?")})
	ps := err.(config.Problems)
	require.Len(t, ps, 101)
	require.Contains(t, ps[100].Text, "more faults")

	sheet := edited(t, "rules", "chassis.gvwr_lb >= 14500", "?", "fit-van-body,physics", "fit-van-body,whim")
	_, err = tables.In(catalogue.Demo, []tables.Sheet{sheet, edited(t, "options", "weld 10; grind 14", "x")})
	require.Len(t, err, 2, "a fault of the whole is looked for when the cells are sound")

	text, err = tables.Out(catalogue.Demo, "options")
	require.NoError(t, err)
	rows := strings.SplitAfter(text, "\n")
	half := strings.Join(rows[:len(rows)/2], "")
	_, err = tables.In(catalogue.Demo, []tables.Sheet{{Name: "options.csv", Text: half}})
	ps = err.(config.Problems)
	require.Len(t, ps, 12, "the cause, the first that follow from it, and how many more")
	require.Contains(t, ps[0].Text, "options.csv lacks ")
	require.Contains(t, ps[11].Text, "more places like these")

	_, err = tables.In(catalogue.Demo, []tables.Sheet{{Name: "prices.csv", Text: "id,price\nfb-push,5\n"}})
	ps = err.(config.Problems)
	require.Len(t, ps, 12, "a list of what changed alone lacks the other prices")
	require.Contains(t, ps[0].Text, "prices.csv lacks ")

	_, err = tables.In(catalogue.Demo, []tables.Sheet{sheet, sheet})
	require.ErrorContains(t, err, "take in one of each")
	_, err = tables.In([]byte("{}"), nil)
	require.Error(t, err)
	_, err = tables.Out(catalogue.Demo, "chassis")
	require.ErrorContains(t, err, "none of the tables")
}

// generated is a small catalogue with all sorts of options, rules and prices.
func generated(t *rapid.T) []byte {
	c := &config.Catalogue{}
	base, err := os.ReadFile(filepath.Join("testdata", "small.json"))
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(base, c))
	c.Options, c.Rules, c.Groups = nil, []config.Rule{}, c.Groups[:2]
	text := rapid.OneOf(rapid.SampledFrom([]string{"Plain", "=1+1", "'quoted", `72" "wide"`, "a; b", "one\r\ntwo",
		" spaced ", "<b>&", "+5", "-", "größe"}), rapid.StringN(1, 12, 40).Filter(func(s string) bool {
		return !strings.Contains(s, "\ufffd") && letters.Calm(s) == s
	}))
	number := rapid.OneOf(rapid.SampledFrom([]float64{0, 0.1, 875, -12.5, 1e-7}), rapid.Float64Range(-900, 900))
	positive := rapid.Float64Range(0, 900)
	words := rapid.SliceOfN(rapid.SampledFrom([]string{"a-b", "c"}), 0, 2)
	prices := map[string]string{}
	for _, x := range c.Chassis {
		prices[x.ID] = "100.00"
	}
	for _, x := range c.Bodies {
		prices[x.ID] = "100.00"
	}
	dated := map[string]string{c.Chassis[0].ID: "90.00"}
	for g := range 2 {
		for i := range rapid.IntRange(1, 4).Draw(t, "n") {
			o := config.Option{ID: fmt.Sprintf("o%d-%d", g, i), Group: c.Groups[g].ID, Label: "L" +
				text.Draw(t, "label"), Spec: text.Draw(t, "spec")}
			maybe := func(what string) bool { return rapid.Bool().Draw(t, what) }
			o.Standard, o.MaxQty, o.Tags, o.Clauses = maybe("standard"), rapid.IntRange(0, 5).Draw(t, "max"),
				words.Draw(t, "tags"), words.Draw(t, "clauses")
			if maybe("mass") {
				o.Mass = &config.Mass{Zone: "module"}
				for _, to := range []any{&o.Mass.Lb, &o.Mass.XIn, &o.Mass.YIn} {
					data, _ := json.Marshal(number.Draw(t, "number"))
					require.NoError(t, json.Unmarshal(data, to))
				}
			}
			if maybe("load") {
				o.Load = &config.Load{}
				data, _ := json.Marshal(positive.Draw(t, "amps"))
				require.NoError(t, json.Unmarshal(data, &o.Load.SceneA))
			}
			if maybe("supply") {
				o.Supply = &config.Supply{Replaces: maybe("replaces")}
			}
			if maybe("circuit") {
				o.Circuit = &config.Circuit{Function: text.Draw(t, "function")}
			}
			if maybe("work") {
				o.Work = []config.Work{{Station: c.Plant.Stations[0].ID, Hours: 1.5}, {Station: c.Plant.Stations[1].ID}}
			}
			if maybe("parts") {
				o.Parts = &config.Span{Likely: 3, High: 3.5}
			}
			if maybe("seats") {
				o.Seats = []config.Seat{{ID: "s", Label: text.Draw(t, "seat"), Kind: "bench"}}
				if o.Mass != nil {
					o.Mass.Zone = config.ZonePlaces
				}
			}
			key := o.ID
			if maybe("key") {
				o.PriceKey = "shared"
				key = "shared"
			}
			prices[key] = fmt.Sprintf("%d.%02d", rapid.IntRange(-90, 90).Draw(t, "dollars"),
				rapid.IntRange(0, 99).Draw(t, "cents"))
			if maybe("dated") {
				dated[key] = "5.00"
			}
			c.Options = append(c.Options, o)
			if maybe("rule") {
				c.Rules = append(c.Rules, config.Rule{ID: "r-" + o.ID, Kind: "plant", Reason: "R" +
					text.Draw(t, "reason"), Then: config.Cond{Not: &config.Cond{Pick: o.ID}}})
			}
		}
	}
	book := map[string]any{"currency": "USD", "rounding": "half-up", "validity_days": 30, "prices": prices}
	book["editions"] = []any{}
	if rapid.Bool().Draw(t, "editions") {
		book["editions"] = []any{map[string]any{"id": "e", "from": "2027-01-01", "reason": "Why: because",
			"prices": dated}}
	}
	raw, err := json.Marshal(book)
	require.NoError(t, err)
	c.PriceBook = raw
	file, err := json.MarshalIndent(c, "", rapid.SampledFrom([]string{"", " ", "\t"}).Draw(t, "indent"))
	require.NoError(t, err)
	return file
}

func TestRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		file := generated(t)
		hash(t, file)
		back, err := tables.In(file, all(t, file))
		require.NoError(t, err)
		require.True(t, bytes.Equal(file, back))
	})
}

// The tables of one catalogue make another one of theirs, as far as tables go.
func TestTablesCarryTheirContent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		file, other := generated(t), generated(t)
		sheets := all(t, file)
		rows, err := csv.Read(sheets[0].Text)
		require.NoError(t, err)
		// What no table shows is not carried; a new row may not claim it, nor a place of its mass
		// that goes by it.
		zone := slices.Index(rows[0], "mass zone")
		for _, row := range rows[1:] {
			row[len(row)-1] = ""
			row[zone] = strings.Replace(row[zone], config.ZonePlaces, config.ZoneModule, 1)
		}
		var fresh config.Catalogue
		require.NoError(t, json.Unmarshal(other, &fresh))
		old := map[string]bool{}
		for i := range fresh.Options {
			old[fresh.Options[i].ID] = true
			fresh.Options[i].Seats = nil
			if m := fresh.Options[i].Mass; m != nil {
				m.Zone = config.ZoneModule
			}
		}
		other, err = json.Marshal(&fresh)
		require.NoError(t, err)
		if strings.Count(sheets[2].Text, "\n") == 1 { // a table of nothing is refused
			fresh.Rules = []config.Rule{}
			other, err = json.Marshal(&fresh)
			require.NoError(t, err)
		}
		back, err := tables.In(other, []tables.Sheet{{Name: "o", Text: csv.Write(rows)}, sheets[1], sheets[2]})
		require.NoError(t, err)
		again := all(t, back)
		byID := func(text string) map[string][]string {
			rows, err := csv.Read(text)
			require.NoError(t, err)
			m := map[string][]string{}
			for _, r := range rows[1:] {
				for i := range r {
					r[i] = strings.TrimSpace(r[i])
				}
				m[r[0]] = r
			}
			return m
		}
		require.Equal(t, byID(csv.Write(rows)), byID(again[0].Text))
		require.Equal(t, byID(sheets[2].Text), byID(again[2].Text))
		for id, row := range byID(sheets[1].Text) {
			require.Equal(t, row[2], byID(again[1].Text)[id][2])
		}
	})
}

func corpus(f *testing.F, name string) {
	text, err := tables.Out(small(f), name)
	if err != nil {
		f.Fatal(err)
	}
	f.Add(text)
	f.Add("\ufeff" + strings.ReplaceAll(strings.ReplaceAll(text, ",", ";"), "\n", "\r\n"))
	f.Add(strings.ReplaceAll(text, "a", ","))
	f.Add("id,group,price,then\n\"\n")
}

// small is a catalogue of a few options, kept as a file so that the corpus
// stays what it is.
func small(t testing.TB) []byte {
	file, err := os.ReadFile(filepath.Join("testdata", "small.json"))
	require.NoError(t, err)
	return file
}

func fuzz(f *testing.F, name string) {
	corpus(f, name)
	file := small(f)
	f.Fuzz(func(t *testing.T, text string) {
		back, err := tables.In(file, []tables.Sheet{{Name: name, Text: text}})
		if err != nil {
			if ps, ok := err.(config.Problems); !ok || len(ps) == 0 || len(ps) > 101 {
				t.Fatalf("not a list of problems: %v", err)
			}
			return
		}
		hash(t, back)
		again, err := tables.In(back, all(t, back))
		if err != nil || !bytes.Equal(back, again) {
			t.Fatalf("what was taken in does not go out and come back: %v", err)
		}
	})
}

func FuzzOptions(f *testing.F) { fuzz(f, "options") }
func FuzzPrices(f *testing.F)  { fuzz(f, "prices") }
func FuzzRules(f *testing.F)   { fuzz(f, "rules") }

func TestRename(t *testing.T) {
	back, err := tables.Rename(catalogue.Demo, `2027-01 "early"`, "2027-01-01")
	require.NoError(t, err)
	cat, err := config.Read(back)
	require.NoError(t, err)
	require.Equal(t, `2027-01 "early"`, cat.Edition)
	require.Equal(t, "2027-01-01", cat.ValidFrom.String())
	again, err := tables.Rename(back, "2026-11", "2026-11-01")
	require.NoError(t, err)
	require.True(t, bytes.Equal(catalogue.Demo, again))
	_, err = tables.Rename(catalogue.Demo, "", "soon")
	require.Error(t, err)
}
