package e2e

import (
	"math"
	"strconv"
	"strings"

	"github.com/stretchr/testify/require"

	"boxwright/web/e2e/drive"
)

// Prices, the seller's own margin, signatures, and what a revision changes.
func init() {
	know(deeds, map[string]sentence{
		`unlock the cost sheet "…" with the passphrase "…"`: func(s *story, says []string) {
			s.area("seller")
			s.typed("#costs-pass", says[1])
			s.must(s.Choose("#f-costs", s.file(says[0])))
			s.must(s.Until(`document.getElementById("costs-lock")`))
			s.must(s.Settle())
			require.Empty(s.t, s.trouble())
		},
		`note the margin and the price`: func(s *story, _ []string) {
			s.noted["margin"], s.noted["price"] = s.margin(), s.price()
		},
		`give a discount of "…" percent for "…"`: func(s *story, says []string) {
			s.area("price")
			s.typed(s.field("Discount"), says[0])
			s.typed(s.field("Reason for the discount"), says[1])
		},
		`sign with the key "…" and the passphrase "…"`: func(s *story, says []string) {
			if s.area("quote"); s.has("#go-keys") {
				s.takesIn(says[0], says[1])
				s.area("quote")
			}
			s.typed("#key-pass", says[1])
			s.click("#sign")
			s.must(s.Until(`document.querySelector("#trust h2").innerText.includes("Signed")`))
			require.Empty(s.t, s.trouble())
		},
	})
	know(deeds, map[string]sentence{
		`take in the key "…" with the passphrase "…"`: func(s *story, says []string) { s.takesIn(says[0], says[1]) },
		`revise it as the seller`: func(s *story, _ []string) {
			s.click("#reading-menu summary")
			s.click("#revise")
			s.must(s.Until(`document.getElementById("areas").innerText`))
			s.must(s.Settle())
		},
	})
	know(looked, map[string]sentence{
		`the margin fell by exactly the discount`: func(s *story, _ []string) {
			s.area("price")
			off := -s.line("Discount")
			require.Positive(s.t, off)
			require.Equal(s.t, s.noted["margin"]-off, s.margin())
		},
		`the discount is "…" percent of one unit at list`: func(s *story, says []string) {
			percent, err := strconv.ParseFloat(says[0], 64)
			s.must(err)
			s.area("price")
			require.Equal(s.t, int(math.Round(float64(s.line("One unit at list"))*percent/100)), -s.line("Discount"),
				"to the nearest cent")
		},
		`"…" may agree to it`: func(s *story, says []string) {
			s.area("seller")
			require.Contains(s.t, s.row("#costs tr", says[0]), "may agree")
		},
		`what changed is "…"`: func(s *story, says []string) {
			require.Equal(s.t, strings.Split(says[0], "; "),
				eval[[]string](s.window,
					`[...document.querySelectorAll('.paper [data-scroll="What changed"] tbody th')].map((x) => x.innerText)`))
		},
		`"…" went from "…" to "…"`: func(s *story, says []string) {
			require.Equal(s.t, strings.Join(says, "\t"), s.row(`.paper [data-scroll="What changed"] tr`, says[0]))
		},
		`the change order is the discount with its tax, and makes the whole difference`: func(s *story, _ []string) {
			by := eval[[]string](s.window,
				`[...document.querySelectorAll('.paper [data-scroll="What it costs"] tbody tr')].map((r) => r.cells[0].innerText + ": " + r.cells[3].innerText)`)
			require.Len(s.t, by, 3, "tax, discount and their sum")
			sum := 0
			for _, line := range by[:2] {
				sum += s.number(line)
			}
			require.Equal(s.t, sum, s.number(by[2]))
			require.Equal(s.t, s.price()-s.noted["price"], sum)
			require.Contains(s.t, s.text("#revision"), "The change order comes to USD "+
				strings.TrimPrefix(by[2], "Total: "))
		},
		`nothing of "…" is on the page or in what the browser keeps`: func(s *story, says []string) {
			everything := eval[string](s.window,
				`document.documentElement.outerHTML + JSON.stringify(Object.entries(localStorage))`) +
				eval[string](s.window, stored)
			for _, word := range strings.Split(says[0], "; ") {
				require.NotContains(s.t, everything, word)
			}
		},
	})
}

func (s *story) price() int { s.t.Helper(); return s.number(s.text(":is(#standing, .reading) .big")) }

// takesIn takes a signing key in from its file.
func (s *story) takesIn(file, passphrase string) {
	s.t.Helper()
	s.area("seller")
	s.typed("#key-pass", passphrase)
	s.must(s.Choose("#f-key", s.file(file)))
	s.must(s.Until(`document.getElementById("key-export")`))
	s.must(s.Settle())
}

// margin is the seller's, as the open cost sheet sums it up.
func (s *story) margin() int {
	s.t.Helper()
	s.area("seller")
	return s.number(s.text("#costs tbody td:nth-of-type(3)"))
}

// line is the amount of a line of the price.
func (s *story) line(label string) int {
	s.t.Helper()
	row := strings.Split(s.row(".ledger tr", label), "\t")
	return s.number(row[len(row)-1])
}

// row is the first row that begins with a label, its cells parted by tabs.
func (s *story) row(rows, label string) string {
	s.t.Helper()
	text := eval[string](s.window, `(() => { const r = [...document.querySelectorAll(`+drive.Quote(rows)+
		`)].find((r) => r.cells[0].innerText.trim().split("\n")[0] === `+drive.Quote(label)+
		`); return r ? [...r.cells].map((c) => c.innerText.trim()).join("\t") : ""; })()`)
	require.NotEmpty(s.t, text, "there is a row %s", label)
	return text
}
