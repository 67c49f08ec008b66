package e2e

import (
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/web/e2e/drive"
)

func TestRuleBrokenAndMended(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.winchStory()
	w.show("fb-winch")
	require.Contains(t, w.text("#row-fb-winch"), "Not available with this build")

	before := w.draft()
	w.click("#o-fb-winch")
	require.False(t, w.checked("fb-winch"), "a thing that cannot be had is not taken")
	require.Equal(t, before, w.draft(), "asking for it changes nothing")
	require.True(t, w.has("#why-fb-winch"), "the reason opens where it was asked for")
	why := w.text("#why-fb-winch")
	require.Contains(t, why, "Front axle")
	require.Regexp(t, `[\d,]+ lb over the limit of [\d,]+ lb`, why)
	require.NotEmpty(t, w.text("#mend-fb-winch-0"))

	w.click("#mend-fb-winch-0")
	w.show("fb-winch")
	require.True(t, w.checked("fb-winch"), "the mend brings it in")
	require.False(t, w.has("#why-fb-winch"))
	require.NotContains(t, w.text("#standing"), "■ Must fix")
}

func TestOverloadedAxleStops(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.begin("cut-12500-138-gas", "mod-132-68")
	require.NotContains(t, w.text("#standing"), "■ Must fix")
	w.area("equipment")
	w.typed("#f-carry-eq-stock", "40") // 3,400 lb
	standing := w.text("#standing")
	require.Contains(t, standing, "■ Must fix")
	require.Contains(t, standing, "Rear axle")
	require.Regexp(t, `[\d,]+ lb over`, standing)
	w.area("weight")
	require.Contains(t, w.text("#main"), "■ Must fix")
	w.area("quote")
	require.Contains(t, w.text("#main .paper"), "This quote cannot be issued yet")

	w.area("equipment")
	w.click("#fold-carried summary")
	w.typed("#f-carry-eq-stock", "")
	require.NotContains(t, w.text("#standing"), "■ Must fix")
}

func TestWhatCannotBeTakenStaysInItsField(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	before := w.draft()
	for _, x := range []struct{ area, field, typed, says, reason string }{
		{"equipment", "#f-carry-eq-stock", "-3", "0 to 99", "fewer than none"},
		{"standards", "#f-unit\\.occupant_lb", "heavy", "", "a word for a mass"},
		{"standards", "#f-unit\\.payload_lb", "30,000", "0 lb to 20,000 lb", "more than any unit"},
	} {
		t.Run(x.reason, func(t *testing.T) {
			w.area(x.area)
			w.typed(x.field, x.typed)
			require.Equal(t, x.typed, eval[string](w, `document.querySelector(`+drive.Quote(x.field)+`).value`),
				x.reason)
			require.Equal(t, "true",
				eval[string](w, `document.querySelector(`+drive.Quote(x.field)+`).getAttribute("aria-invalid")`),
				x.reason)
			require.Contains(t, w.text("#main"), x.says, x.reason)
			require.Equal(t, before, w.draft(), x.reason)
		})
	}
}

func TestUndoAndRedo(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.begin("cut-14500-158-gas", "mod-146-72")
	before := w.draft()
	w.pick("hvac-roof")
	after := w.draft()
	require.NotEqual(t, before, after)
	w.click(`[data-act="undo"]`)
	require.Equal(t, before, w.draft())
	require.False(t, w.checked("hvac-roof"))
	w.click(`[data-act="redo"]`)
	require.Equal(t, after, w.draft())
}
