package e2e

import (
	"encoding/base64"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config/seeds"
	"boxwright/web/e2e/drive"
)

// link is the fragment that the Quote area offers for the present unit.
func (w *window) link() string {
	w.t.Helper()
	w.area("quote")
	whole := eval[string](w, `document.getElementById("link-text").value`)
	i := strings.Index(whole, "q=")
	require.GreaterOrEqual(w.t, i, 0, whole)
	return whole[i:]
}

func TestLinkBringsTheSameBytes(t *testing.T) {
	t.Parallel()
	eachShipped(t, func(t *testing.T, f form) {
		w := blank(t, f, drive.Desk)
		w.openWinch()
		w.area("needs")
		w.typed("#f-title", `Médic 7 <b>"bold"</b> & 'sons'`)
		w.area("equipment")
		w.typed("#f-carry-eq-stair-chair", "2")
		link, draft := w.link(), w.draft()

		buyer := open(t, f, drive.Phone, "#"+link)
		require.Equal(t, draft, buyer.draft())
		require.Empty(t, buyer.trouble())
		// A narrow screen folds columns away: what stands in the document counts.
		whole := `document.querySelector("#main .paper").textContent`
		require.Equal(t, eval[string](w, whole), eval[string](buyer, whole))
		require.Equal(t, link, buyer.link(), "the link of the opened quote is the link itself")
		require.False(t, buyer.has("#main .paper h1 b"), "a title is text, whatever it holds")
		require.Contains(t, buyer.text("#main .paper h1"), `<b>"bold"</b>`)
	})
}

func TestLinksOfStrangers(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.begin("cut-14500-158-gas", "mod-146-72")
	w.pick("fb-push")
	sound := w.link()
	draft := w.draft()
	hostile, err := os.ReadFile(filepath.Join("..", "..", "testdata", "hostile", "links.txt"))
	require.NoError(t, err)
	own, _, found := strings.Cut(sound, "&cover=")
	require.True(t, found, "a copied link has a cover")
	cover := "&cover=" + base64.RawURLEncoding.EncodeToString([]byte("Rescue 4\nUSD 1.00\n2026-12-24"))
	cases := map[string]string{
		"the cover of another": own + cover,
		"two covers":           sound + cover,
		"without its end":      own[:len(own)-7],
		"a character altered":  sound[:60] + map[bool]string{true: "B", false: "A"}[sound[60] == 'A'] + sound[61:],
		"the end cut off":      sound[:len(sound)-7],
		"far too long":         "q=" + strings.Repeat("A", 200_000),
	}
	for _, line := range strings.Split(strings.TrimSpace(string(hostile)), "\n") {
		if line != "" && line[0] != ';' {
			reason, link, found := strings.Cut(line, ": ")
			require.True(t, found, line)
			cases[reason] = link
		}
	}
	in := []string{"weight", "quote"} // each is met in one of these in its turn
	for reason, link := range seeds.InOrder(cases) {
		eval[bool](w, `(location.hash = `+drive.Quote("#"+link)+`, true)`)
		w.must(w.Until(`!document.getElementById("trouble").hidden && !location.hash`))
		require.Greater(t, len(w.trouble()), 20, "%s: the alert is a sentence", reason)
		require.Less(t, len(w.trouble()), 600, "%s: the alert is short", reason)
		require.Equal(t, draft, w.draft(), "%s: the previous unit is kept", reason)
		w.click("#leave-refused")
		w.must(w.Until(`!document.documentElement.dataset.opening`))
		// The page goes on working, and the alert leaves with the next thing done.
		w.area(in[0])
		require.Empty(t, w.trouble(), reason)
		slices.Reverse(in)
	}
}
