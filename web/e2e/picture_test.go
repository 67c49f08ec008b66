package e2e

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/web/app"
	"boxwright/web/e2e/drive"
)

// The picture beside the options shows what is chosen, leads to what is pressed in it,
// and is handed out for CAD.
func TestThePictureBesideTheOptions(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "", catching)
	w.begin("cut-14500-158-gas", "mod-146-72")
	w.click("#chapter-exterior")
	parts := func(option string) int {
		return eval[int](w, `document.querySelectorAll('#seen [data-part="`+option+`"]').length`)
	}
	require.Zero(t, parts("fb-extended"))
	w.click("#p-fb-extended")
	require.Equal(t, "o-fb-extended", eval[string](w, `document.activeElement.id`), "the whole row is pressed")
	require.Equal(t, 1, parts("fb-extended"), "it is drawn once it is chosen")
	w.click("#look-floor")
	require.Contains(t, w.text("#seen summary"), "Floor plan")
	require.Zero(t, parts("fb-extended"), "it is not seen from there")
	w.click("#chapter-module")
	require.Contains(t, w.text("#seen summary"), "Street side", "a chapter has its own view")
	eval[any](w, `document.querySelector('#seen [data-part="fb-extended"] path')
		.dispatchEvent(new MouseEvent("click", { bubbles: true }))`)
	w.must(w.Settle())
	require.Equal(t, "o-fb-extended", eval[string](w, `document.activeElement.id`))
	require.Equal(t, "2.2px", eval[string](w, `getComputedStyle(
		document.querySelector('#seen [data-part="fb-extended"] path')).strokeWidth`), "what has the focus is lit")
	w.click(`[data-act="save-dxf"]`)
	file := eval[string](w, `__saved.text()`)
	require.Equal(t, "quote-drawings.dxf", eval[string](w, `__name`))
	require.True(t, strings.HasSuffix(file, "EOF\r\n"))
	require.Contains(t, file, "Inside, toward the rear doors")
}

// The picture is seen where it comes in the order of the page: after the options, or beside them.
func TestThePictureIsSeenInItsOrder(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.area("unit")
	for _, wide := range []int64{360, 740, 800, 1024, 1200, 1300, 1440} {
		w.must(w.Resize(drive.Screen{Width: wide, Height: 800}))
		require.True(t, eval[bool](w, `(() => {
			const [a, b] = [".choices", ".seen"].map((at) => document.querySelector(at).getBoundingClientRect());
			return b.top >= a.bottom || (b.left >= a.right && b.top >= a.top - 1);
		})()`), "at %d px", wide)
	}
}

// unclear is lettering of pictures that is smaller than can be read or stands over other
// lettering. What stands before something in a compartment covers it.
const unclear = `(() => {
	const out = [];
	for (const svg of document.querySelectorAll("#main svg:not(.front)")) {
		if (svg.closest(".paper") || !svg.checkVisibility()) continue;
		const boxes = [];
		for (const text of svg.querySelectorAll("text")) {
			const a = text.getBoundingClientRect(), m = text.getScreenCTM();
			if (!a.width) continue;
			const px = parseFloat(getComputedStyle(text).fontSize) * Math.hypot(m.a, m.b);
			if (px < 11 && !text.classList.contains("text")) out.push(text.textContent + " is " + px.toFixed(1) + " px");
			for (const [other, b] of boxes) {
				const wide = Math.min(a.right, b.right) - Math.max(a.left, b.left);
				const high = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
				if (wide > 2 && high > 3) out.push(text.textContent + " over " + other.textContent);
			}
			boxes.push([text, a]);
		}
	}
	return out;
})()`

func TestPicturesCanBeRead(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	d := &desk{core: app.New()}
	d.do(t, sixStates(t)["full"]...)
	w.area("start")
	w.must(w.Choose("#f-draft", written(t, "full.json", d.draft)))
	w.must(w.Until(`document.getElementById("done").innerText.includes("full.json")`))
	w.must(w.Settle())
	for _, screen := range []drive.Screen{drive.Phone, {Width: 1024, Height: 768}} {
		w.must(w.Resize(screen))
		for _, area := range []string{"weight", "power", "space", "delivery"} {
			w.area(area)
			require.Empty(t, eval[[]string](w, unclear), "%s at %d px", area, screen.Width)
		}
		w.area("equipment")
		eval[bool](w, `(document.querySelectorAll("#main details").forEach((d) => (d.open = true)), true)`)
		require.Less(t, eval[float64](w, `document.querySelector(".front text").getBoundingClientRect().height`), 25.0,
			"a number in a compartment at %d px", screen.Width)
	}
	reader := open(t, folder, drive.Phone, "#"+w.link())
	require.Empty(t, eval[[]string](reader, unclear), "what a reader sees first")
}
