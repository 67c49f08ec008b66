package e2e

import (
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/web/e2e/drive"
)

func TestRuleBrokenAndMended(t *testing.T) {
	eachForm(t, func(t *testing.T, f form) {
		w := open(t, f, drive.Desk, "")
		w.winchStory()
		w.show("fb-winch")
		require.Contains(t, w.text("#row-fb-winch"), "Cannot be had with the present choices")

		before := w.draft()
		w.click("#o-fb-winch")
		require.False(t, w.checked("fb-winch"), "a thing that cannot be had is not taken")
		require.Equal(t, before, w.draft(), "asking for it changes nothing")
		require.True(t, w.has("#why-fb-winch"), "the reason opens where it was asked for")
		why := w.text("#why-fb-winch")
		require.Contains(t, why, "Front axle")
		require.Contains(t, why, "over the limit of")
		require.NotEmpty(t, w.text("#mend-fb-winch-0"))

		w.click("#mend-fb-winch-0")
		w.show("fb-winch")
		require.True(t, w.checked("fb-winch"), "the mend brings it in")
		require.False(t, w.has("#why-fb-winch"))
		require.NotContains(t, w.text("#standing"), "■ Stop")
	})
}
