package e2e

import (
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/web/e2e/drive"
)

// On a phone the first screen answers what it is, how much, when, and whether it can be
// trusted, without scrolling.
func TestFirstScreenOfAReader(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.begin("cut-14500-158-gas", "mod-146-72")
	w.area("needs")
	w.typed("#f-title", "Rescue 4, for the station at the upper lake")
	w.signs("demo-key.json")
	link := w.link()

	buyer := open(t, folder, drive.Phone, "#"+link, engine(t))
	buyer.firstScreen("#trust summary", ".reading h1", ".reading .big", ".reading .facts", "#open-items", "#reading-included",
		"#reading-compare", "#reading-documents", ".swipe svg")
	require.Less(t, eval[int](buyer, `document.querySelector(".reading .foot").offsetHeight`), 60, "a row of one line")
	long := `(() => { document.querySelector("#masthead .brand bdi").textContent = "Lakeland Fleet and Rescue Bodies of the Upper Valley";
		const n = document.querySelector("#masthead .number"); return n.scrollWidth - n.clientWidth; })()`
	require.LessOrEqual(t, eval[int](buyer, long), 0, "the number is shown before the whole name of the dealer")
	buyer.firstScreen("#masthead .number", "#reading-menu")

	buyer.click("#reading-included")
	require.True(t, eval[bool](buyer, `document.getElementById("fold-included").open`))
	buyer.must(buyer.Until(`Math.abs(document.getElementById("fold-included").getBoundingClientRect().top) < 90`))
	buyer.click("#reading-documents")
	buyer.must(buyer.Until(`document.getElementById("fold-document").open`))
	buyer.firstScreen("#print-quote", "#paper-quote", "#paper-drawings")
	buyer.check("a quote that is read, on a phone")
	buyer.must(buyer.Resize(drive.Desk))
	buyer.check("a quote that is read, on a desk")
}

// firstScreen holds that parts are seen on a small phone without scrolling.
func (w *window) firstScreen(parts ...string) {
	w.t.Helper()
	for _, first := range parts {
		box := eval[[]float64](w, `(() => { const r = document.querySelector(`+drive.Quote(first)+
			`).getBoundingClientRect(); return [r.top, r.bottom, r.left, r.right]; })()`)
		require.GreaterOrEqual(w.t, box[0], 0.0, first)
		require.LessOrEqual(w.t, box[1], 740.0, first)
		require.Less(w.t, box[0], box[1], "%s is seen", first)
		if first != ".swipe svg" {
			require.LessOrEqual(w.t, box[3], 360.0, first)
		}
	}
	require.LessOrEqual(w.t, eval[int](w,
		`document.scrollingElement.scrollWidth - document.documentElement.clientWidth`), 0, "nothing runs off")
}
