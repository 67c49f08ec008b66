package e2e

import (
	"os"
	"strconv"
	"strings"

	"github.com/stretchr/testify/require"

	"boxwright/config/csv"
	"boxwright/web/e2e/drive"
)

// The buyer's requirement list: pasted, answered, printed and sent back as a
// table.
func init() {
	know(deeds, map[string]sentence{
		`paste the requirement list "…"`: func(s *story, says []string) {
			list, err := os.ReadFile(s.file(says[0]))
			s.must(err)
			s.area("needs")
			s.click("#fold-requirements summary")
			s.typed("#f-list", string(list))
			require.True(s.t, s.has("#requirements"), "the list is read")
		},
		`look at what taking all would change`: func(s *story, _ []string) {
			s.area("needs")
			s.click("#preview-answers")
		},
		`take all that can be complied with`: func(s *story, _ []string) { s.area("needs"); s.click("#take-answers") },
		`print the response form`: func(s *story, _ []string) {
			s.area("needs")
			s.click("#to-response")
			s.sheets = flat(strings.Join(s.paper(), " "))
		},
		`print the schedule of exceptions`: func(s *story, _ []string) {
			s.area("needs")
			s.click("#to-exceptions")
			s.sheets = flat(strings.Join(s.paper(), " "))
		},
		`save the answers as a table`: func(s *story, _ []string) {
			s.area("needs")
			s.saved = s.saving("#save-answers")
		},
	})
	know(looked, map[string]sentence{
		`of "…" lines "…" comply, "…" with additions, "…" an exception`: func(s *story, says []string) {
			s.area("needs")
			want := says[0] + " lines: " + says[1] + " comply, "
			if says[2] != "0" {
				want += says[2] + " comply with additions, "
			}
			require.Contains(s.t, flat(s.text("#requirements")), want+says[3]+" exception.")
			// The tally is that of the rows.
			outcomes := eval[[]string](s.window,
				`[...document.querySelectorAll(".answers tbody tr")].map((r) => r.cells[1].innerText.replace(/[^a-z: ]/gi, "").trim())`)
			require.Len(s.t, outcomes, s.number(says[0]))
			n := map[string]int{}
			for _, o := range outcomes {
				for _, kind := range []string{"Comply with:", "Comply", "Exception"} {
					if strings.Contains(o, kind) {
						n[kind]++
						break
					}
				}
			}
			require.Equal(s.t, says[1:], []string{strconv.Itoa(n["Comply"]), strconv.Itoa(n["Comply with:"]),
				strconv.Itoa(n["Exception"])})
		},
		`line "…" complies with "…"`: func(s *story, says []string) {
			require.Contains(s.t, s.answer(says[0]), "Comply with: "+says[1])
		},
		`line "…" complies`: func(s *story, says []string) {
			require.Contains(s.t, s.answer(says[0]), "Comply")
			require.NotContains(s.t, s.answer(says[0]), "Comply with")
		},
		`the page says what taking all changes: "…"`: func(s *story, says []string) {
			s.area("needs")
			require.Contains(s.t, flat(s.text("#taking")), says[0])
		},
		`line "…" is an exception; offered is "…"`: func(s *story, says []string) {
			require.Contains(s.t, s.answer(says[0]), "Exception")
			require.Contains(s.t, s.answer(says[0]), says[1])
		},
		`the table has "…" rows beneath its head`: func(s *story, says []string) {
			require.Len(s.t, s.table(), 1+s.number(says[0]))
		},
		`in the table line "…" says "…", offered "…"`: func(s *story, says []string) {
			rows := s.table()
			for _, r := range rows[1:] {
				if r[0] == says[0] {
					require.Equal(s.t, says[1], r[2])
					require.Contains(s.t, r[3], says[2])
					return
				}
			}
			require.Fail(s.t, "the table has no line "+says[0])
		},
		`in the table "…" lines say "…"`: func(s *story, says []string) {
			n := 0
			for _, r := range s.table()[1:] {
				if r[2] == says[1] {
					n++
				}
			}
			require.Equal(s.t, s.number(says[0]), n)
		},
	})
}

// answer is what stands in the page's row of a line of the list.
func (s *story) answer(no string) string {
	s.t.Helper()
	s.area("needs")
	text := eval[string](s.window,
		`([...document.querySelectorAll(".answers tbody tr")].find((r) => r.cells[0].innerText.startsWith(`+
			drive.Quote(no+" ")+`)) || { innerText: "" }).innerText`)
	require.NotEmpty(s.t, text, "the list has a line %s", no)
	return flat(text)
}

// table is the file saved last, read as a spreadsheet reads it.
func (s *story) table() [][]string {
	s.t.Helper()
	rows, err := csv.Read(s.saved)
	s.must(err)
	require.NotEmpty(s.t, rows)
	require.Equal(s.t, []string{"No.", "Requirement", "Response", "Offered", "In the quote"}, rows[0])
	return rows
}
