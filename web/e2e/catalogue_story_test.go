package e2e

import (
	"strings"

	"github.com/stretchr/testify/require"

	"boxwright/web/e2e/drive"
)

// Sentences of the stories about editions of the catalogue and kept quotes.

var editionDeeds = map[string]sentence{
	`begin another quote on "…"`: func(s *story, says []string) {
		s.head("#go-quotes")
		s.click("#kept-fresh")
		s.area("start")
		s.click("#begin-" + s.id(says[0]))
	},
	`sign the quote`: func(s *story, _ []string) { s.signs("demo-key.json") },
	`set beside it an edition in which "…" costs "…"`: func(s *story, says []string) {
		price := `"` + s.id(says[0]) + `": "`
		text := string(altered(s.t, price, price))
		before, rest, _ := strings.Cut(text[strings.Index(text, `"prices": {`):], price)
		_, after, _ := strings.Cut(rest, `"`)
		next := text[:strings.Index(text, `"prices": {`)] + before + price + strings.ReplaceAll(says[1], ",", "") +
			`"` + after
		next = strings.Replace(next, `"edition": "2026-11"`, `"edition": "2027-02"`, 1)
		s.keeping()
		s.takes("#f-beside", written(s.t, "next.json", []byte(next)), "The other edition, not in use yet")
		s.lookedAt()
	},
	`use that edition`: func(s *story, _ []string) {
		s.click("#use-beside")
		require.Empty(s.t, s.trouble())
		s.lookedAt()
	},
	`move the kept quote "…"`: func(s *story, says []string) {
		button := `#touched [data-act="move-kept"][aria-label$=` + drive.Quote(": "+says[0]) + `]`
		s.click(button)
		s.must(s.Until(`!document.querySelector(` + drive.Quote(button) + `)`)) // it is read from the database first
		s.must(s.Settle())
	},
	`open the kept quote "…"`: func(s *story, says []string) {
		s.head("#go-quotes")
		id := eval[string](s.window,
			`[...document.querySelectorAll("#kept-quotes tr")].find((r) => r.innerText.includes(`+drive.Quote(says[0])+
				`)).querySelector("button").id`)
		s.click("#" + id)
		s.must(s.Until(`document.title.includes(` + drive.Quote(says[0]) + `)`))
		s.must(s.Settle())
	},
}

var editionLooks = map[string]sentence{
	`the change of "…" reads "…"`: func(s *story, says []string) {
		require.Contains(s.t, flat(s.text("#main")), says[0]+" "+s.id(says[0])+" the first day "+says[1])
	},
	`"…" saved quotes are touched of "…"`: func(s *story, says []string) {
		require.Contains(s.t, s.text("#touched"), says[0]+" saved quotes are touched, of "+says[1]+" looked at.")
	},
	`the kept quote "…" costs between "…" and "…" more`: func(s *story, says []string) {
		more := strings.Fields(s.touched(says[0])[2])[0]
		require.True(s.t, strings.HasPrefix(more, "+"), more)
		s.between(more[1:], says[1:])
	},
	`the kept quote "…" keeps its signed figures`: func(s *story, says []string) {
		require.Contains(s.t, flat(s.touched(says[0])[6]), "Signed: it stays as signed. Total USD")
	},
	`the kept quote "…" is moved`: func(s *story, says []string) {
		require.Equal(s.t, "moved", flat(s.touched(says[0])[6]))
	},
	`it stands as it was signed`: func(s *story, _ []string) {
		require.Contains(s.t, s.text("#elsewhere"), "It is signed and stands as it was signed: total USD")
	},
	`it is a quote of the edition in use`: func(s *story, _ []string) { require.False(s.t, s.has("#elsewhere")) },
}

// lookedAt waits until every kept quote was gone through.
func (s *story) lookedAt() {
	s.t.Helper()
	s.must(s.Until(`document.getElementById("touched").innerText.includes("looked at.")`))
	s.must(s.Settle())
}

// touched is the row of a kept quote, cell by cell.
func (s *story) touched(name string) []string {
	s.t.Helper()
	row := eval[[]string](s.window,
		`((r) => r ? [...r.cells].map((c) => c.innerText) : [])([...document.querySelectorAll("#touched tbody tr")].find((r) => r.cells[0].innerText.includes(`+drive.Quote(name)+`)))`)
	require.Len(s.t, row, 7, "the kept quote %s is touched: %s", name, s.text("#touched"))
	return row
}
