package e2e

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/web/e2e/drive"
)

// The manager's private figures: sealed in this browser, on the screen while
// unlocked, and neither on paper nor in anything the browser keeps.
func TestSellersCostsStayPrivate(t *testing.T) {
	t.Parallel()
	const passphrase = "plum orchard lantern"
	w := open(t, folder, drive.Desk, "", engine(t))
	w.begin("cut-14500-158-gas", "mod-146-72")
	w.area("seller")
	file, err := os.ReadFile("../assets/catalogue/demo-costs.json")
	require.NoError(t, err)
	const title = "Demonstration cost sheet"
	require.Contains(t, string(file), title)
	w.must(w.Type("#costs-pass", passphrase))
	w.must(w.Choose("#f-costs", written(t, "costs.json", file)))
	w.must(w.Until(`document.getElementById("costs-lock")`))
	w.must(w.Settle())
	seen := w.text("#costs")
	require.Contains(t, seen, title)
	require.Contains(t, seen, "Salesperson")
	w.check("costs that are open")
	for _, theme := range themes {
		w.in(theme)
		w.checkColors("costs that are open, in " + theme)
	}
	margin := eval[string](w, `document.querySelector("#costs tbody td:nth-of-type(3)").textContent`)
	require.Regexp(t, `^\d+,\d{3}\.\d\d$`, margin)
	private := []string{title, "Salesperson", "Preparation and hand-over", margin, passphrase}

	kept := func() string {
		return eval[string](w, `JSON.stringify(Object.entries(localStorage))`) + eval[string](w, stored)
	}
	sealed := eval[string](w, `localStorage.getItem("boxwright.costs.1")`)
	paper := flat(strings.Join(w.paper(), " "))
	require.Contains(t, paper, "they are not printed", "the area is printed, without what it shows, and says so")
	w.area("quote")
	for _, where := range []string{paper, flat(strings.Join(w.paper(), " ")), kept(),
		eval[string](w, `document.documentElement.outerHTML`)} {
		for _, secret := range private {
			require.NotContains(t, where, secret)
		}
	}

	w.area("seller")
	w.click("#costs-lock")
	require.NotContains(t, w.text("#main"), title)
	w.typed("#costs-pass", "not the passphrase")
	w.click("#costs-unlock")
	require.Contains(t, w.trouble(), "passphrase is wrong")
	w.typed("#costs-pass", passphrase)
	w.click("#costs-unlock")
	require.Contains(t, w.text("#costs"), title)

	w.must(w.Reload())
	require.NotContains(t, eval[string](w, `document.documentElement.outerHTML`), title, "a new page begins locked")
	require.Equal(t, sealed, eval[string](w, `localStorage.getItem("boxwright.costs.1")`))
	w.click("#costs-forget")
	require.NotContains(t, kept(), "boxwright.costs.1")
}
