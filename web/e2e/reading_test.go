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
	for _, first := range []string{"#trust summary", ".reading h1", ".reading .big", ".reading .facts", "#open-items",
		"#reading-included", "#reading-compare", ".swipe svg"} {
		box := eval[[]float64](buyer, `(() => { const r = document.querySelector(`+drive.Quote(first)+
			`).getBoundingClientRect(); return [r.top, r.bottom, r.left, r.right]; })()`)
		require.GreaterOrEqual(t, box[0], 0.0, first)
		require.LessOrEqual(t, box[1], 740.0, first) // of a small phone
		require.Less(t, box[0], box[1], "%s is seen", first)
		if first != ".swipe svg" {
			require.LessOrEqual(t, box[3], 360.0, first)
		}
	}
	require.LessOrEqual(t, eval[int](buyer,
		`document.scrollingElement.scrollWidth - document.documentElement.clientWidth`), 0, "nothing runs off")

	buyer.click("#reading-included")
	require.True(t, eval[bool](buyer, `document.getElementById("fold-included").open`))
	buyer.must(buyer.Until(`Math.abs(document.getElementById("fold-included").getBoundingClientRect().top) < 90`))
	buyer.check("a quote that is read, on a phone")
	buyer.must(buyer.Resize(drive.Desk))
	buyer.check("a quote that is read, on a desk")
}
