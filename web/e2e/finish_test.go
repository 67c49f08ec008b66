package e2e

import (
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/web/e2e/drive"
)

// The figures one decides by stay in sight wherever one reads, follow every
// choice and are said aloud.
func TestTheSummaryStaysInSight(t *testing.T) {
	t.Parallel()
	for screen, summary := range map[drive.Screen]string{drive.Desk: "#standing .big",
		drive.Phone: "#standing > .line"} {
		w := open(t, folder, screen, "")
		w.begin("cut-14500-158-gas", "mod-146-72")
		before := w.text(summary)
		w.pick("cot-power")
		require.NotEqual(t, before, w.text(summary))
		price := eval[string](w, `document.querySelector("#standing .big").textContent.replace("USD ", "")`)
		require.Contains(t, w.text(summary), price)
		require.Contains(t, w.text("#say"), price)
		eval[bool](w, `(scrollTo(0, document.scrollingElement.scrollHeight / 3), true)`)
		require.True(t, eval[bool](w, `(() => {
			const r = document.querySelector(`+drive.Quote(summary)+`).getBoundingClientRect();
			return r.top >= 0 && r.bottom <= innerHeight && r.left >= 0 && r.right <= innerWidth;
		})()`), "in sight in a window %d px wide", screen.Width)
	}
}

// Whoever asks the device for stillness gets it; see drive.Tab.Prefer.
func TestNothingMovesForWhomThatIsUnwelcome(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.click("#guide-start")
	for _, a := range []string{"needs", "unit", "quote"} {
		w.area(a)
		require.Empty(t, eval[[]string](w, `[...document.querySelectorAll("*")].filter((el) => {
			const s = getComputedStyle(el);
			return s.transitionDuration.split(", ").some((d) => parseFloat(d) > 0) || s.animationName !== "none" || s.scrollBehavior !== "auto";
		}).map((el) => el.outerHTML.slice(0, 80))`), a)
	}
}
