package csv_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boxwright/config/csv"
)

func ExampleWrite() {
	fmt.Print(csv.Write([][]string{{"No.", "Text", "Margin"}, {"1", `72" headroom, clear`, "-4.5"},
		{"2", "=HYPERLINK(1)", ""}}))
	// Output:
	// No.,Text,Margin
	// 1,"72"" headroom, clear",-4.5
	// 2,'=HYPERLINK(1),
}

func TestRead(t *testing.T) {
	for _, c := range []struct {
		reason, text string
		want         [][]string
	}{
		{"commas", "a,b\n1,2\n", [][]string{{"a", "b"}, {"1", "2"}}},
		{"semicolons, as some spreadsheets write", "a;b\n1,5;2\n", [][]string{{"a", "b"}, {"1,5", "2"}}},
		{"tabs, as pasted from a spreadsheet", "a\tb, c\r\n1\t2", [][]string{{"a", "b, c"}, {"1", "2"}}},
		{"quotes and line ends within", "\"a\"\"b\",\"c\nd\"", [][]string{{`a"b`, "c\nd"}}},
		{"inches in an open cell", `1,72" headroom`, [][]string{{"1", `72" headroom`}}},
		{"byte order mark and empty lines", "\ufeffa,b\n\n\nc,d\n\n", [][]string{{"a", "b"}, {"c", "d"}}},
		{"empty cells stay", ",\n", [][]string{{"", ""}}},
		{"what Safe has guarded is bared", "'=1+1,'tis", [][]string{{"=1+1", "'tis"}}},
	} {
		t.Run(c.reason, func(t *testing.T) {
			got, err := csv.Read(c.text)
			require.NoError(t, err, c.reason)
			assert.Equal(t, c.want, got, c.reason)
		})
	}
	_, err := csv.Read("a,b\nc,\"d\ne")
	assert.ErrorContains(t, err, "line 2", "an open quote is located")
	_, err = csv.Read(strings.Repeat("x", csv.MaxBytes+1))
	assert.Error(t, err, "size first")
	_, err = csv.Read(strings.Repeat(",", csv.MaxCells+1))
	assert.Error(t, err, "a row without end")
}

// A file we write holds no cell that begins a formula, and reads back alike.
func TestRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cell := rapid.StringOf(rapid.RuneFrom([]rune("ab1 ,;\"'=+-@\t\n")))
		rows := rapid.SliceOfN(rapid.SliceOfN(cell, 1, 4), 0, 5).Draw(t, "rows")
		text := csv.Write(rows)
		back, err := csv.Read(text)
		require.NoError(t, err)
		require.Equal(t, len(rows), len(back))
		for i := range rows {
			require.Equal(t, rows[i], back[i])
		}
	})
}

// Where a spreadsheet parts cells by semicolons, none of what we write begins a formula
// either: whatever stands after a separator, a line break or the quotes it takes off.
func TestNoFormulaWhereCellsArePartedBySemicolons(t *testing.T) {
	for _, cell := range []string{"a;=HYPERLINK(1)", "a;b;@SUM(1)", "a\n=1+1", "a;\"=1+1\"", "a;+cmd", "a\t=1", ";=1", "a;;=1",
		"\t=1", "a;'=1", "a;\"\"\"=1"} {
		for _, row := range [][]string{{"x", cell}, {cell, "x"}, {cell}} {
			written := csv.Write([][]string{row})
			back, err := csv.Read(written)
			require.NoError(t, err)
			require.Equal(t, row, back[0], "%q", written)
			for _, part := range strings.FieldsFunc(strings.TrimSuffix(written, "\n"), func(r rune) bool {
				return strings.ContainsRune(";\t\r\n", r)
			}) {
				begins := strings.TrimLeft(part, `"`)
				assert.False(t, begins != "" && strings.ContainsRune("=@+", rune(begins[0])), "%q has %q", written, part)
			}
		}
	}
}

func FuzzRead(f *testing.F) {
	for _, seed := range []string{"a,b\n1,2\n", "\"", "'=1", "\ufeff;\t,", "=cmd|' /C calc'!A0,@SUM(1)",
		strings.Repeat("\"\"", 40)} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		rows, err := csv.Read(text)
		if err != nil {
			return
		}
		for _, row := range rows {
			for _, c := range row {
				safe := csv.Safe(c)
				if safe != "" && strings.ContainsRune("=@\t\r", rune(safe[0])) {
					t.Fatalf("%q can still be taken for a formula", safe)
				}
			}
		}
		if _, err := csv.Read(csv.Write(rows)); err != nil {
			t.Fatalf("what was written does not read: %v", err)
		}
	})
}
