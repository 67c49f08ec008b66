package e2e

import (
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/web/e2e/drive"
)

func TestReloadKeepsEverything(t *testing.T) {
	t.Parallel()
	eachForm(t, func(t *testing.T, f form) {
		if f.name == folder.name {
			f.offline = false // reloading a served page needs its host
		}
		w := open(t, f, drive.Desk, "")
		w.begin("cut-14500-158-4x4", "mod-153-72")
		w.pick("fb-push")
		w.area("needs")
		w.typed(`#f-title`, "Rescue 4")
		w.area("weight")
		draft, standing := w.draft(), w.text("#standing")
		w.must(w.Reload())
		require.Equal(t, draft, w.draft())
		require.Equal(t, standing, w.text("#standing"))
		require.Contains(t, w.text("#masthead"), "Rescue 4")
		require.Equal(t, "page", eval[string](w, `document.getElementById("area-weight").getAttribute("aria-current")`),
			"the reader is where they were")
	})
}

// impatient shortens the page's patience with a worker that is silent, from when a
// test says so until it has run out once: it need not be sat out, and the next worker
// has all the time that it takes to start.
const impatient = `(() => {
	const plain = window.setTimeout;
	window.setTimeout = (what, ms, ...rest) => {
		if (ms !== 20000 || !window.__silent) return plain(what, ms, ...rest);
		return plain(() => { window.__silent = false; what(); }, 500);
	};
})()`

func TestKilledWorkerLosesNothing(t *testing.T) {
	t.Parallel()
	eachShipped(t, func(t *testing.T, f form) {
		w := open(t, f, drive.Desk, "", impatient)
		w.begin("cut-14500-158-gas", "mod-146-72")
		w.show("hvac-roof")
		w.must(w.KillWorker())
		eval[bool](w, `(window.__silent = true)`)
		w.click("#o-hvac-roof")
		require.True(t, w.checked("hvac-roof"), "what was pressed while the worker was dead is done by the next one")
		require.Empty(t, w.trouble())
		require.Contains(t, w.text("#row-hvac-roof"), "your choice")
	})
}

// Who comes back to a tab whose worker was ended behind its back finds another one, and need not
// press anything to get it. One that lives stays.
func TestKilledWorkerIsReplacedOnReturn(t *testing.T) {
	t.Parallel()
	w := open(t, shipped, drive.Desk, "")
	// Longer than the page waits for a sign of life. It is asked again where it was busy just then.
	const comeBack = `new Promise((later) => {
		document.dispatchEvent(new Event("visibilitychange"));
		setTimeout(() => later(__drive.launched), 3500);
	})`
	require.Equal(t, 1, eval[int](w, comeBack))
	w.must(w.KillWorker())
	launched := 1
	for tries := 0; launched == 1 && tries < 10; tries++ {
		launched = eval[int](w, comeBack)
	}
	require.Equal(t, 2, launched)
	w.must(w.Settle())
	w.click("#begin-cut-14500-158-gas")
	require.Contains(t, w.text("#masthead"), "Cutaway")
	require.Empty(t, w.trouble())
}

// A core that ends says so, and is replaced at once. That it may happen as often as
// it likes is tried under Node, in core.test.js.
func TestEndedCoreIsReplaced(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.begin("cut-14500-158-gas", "mod-146-72")
	w.show("hvac-roof")
	for i := range 3 {
		w.must(w.EndCore())
		id := []string{"hvac-roof", "hvac-tied"}[i%2]
		w.click("#o-" + id)
		require.True(t, w.checked(id), "after %d deaths; the alert says %q", i+1, w.trouble())
		require.Contains(t, w.draft(), id)
	}
	require.Empty(t, w.trouble())
}
