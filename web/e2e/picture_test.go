package e2e

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

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
	require.Equal(t, "o-fb-extended", eval[string](w, `(() => {
		const price = document.getElementById("p-fb-extended");
		price.scrollIntoView({ block: "center" });
		const { left, top } = price.getBoundingClientRect();
		return document.elementFromPoint(left + 2, top + 2).control?.id ?? "";
	})()`), "the whole row is pressed")
	w.pick("fb-extended")
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
