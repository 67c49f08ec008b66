package e2e

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/web/app"
	"boxwright/web/e2e/drive"
)

// areas of the page, in its order.
var areas = app.Areas()

// violation is what the accessibility engine holds against the page.
type violation struct {
	ID, Help string
	Nodes    []string
}

// check runs the accessibility engine over the page as it stands.
func (w *window) check(where string) {
	w.t.Helper()
	list := eval[[]violation](w, `axe.run(document, { resultTypes: ["violations"] }).then((r) =>
		r.violations.map((v) => ({ ID: v.id, Help: v.help, Nodes: v.nodes.slice(0, 3).map((n) => n.html.slice(0, 160) + " – " + (n.any[0] || n.all[0] || n.none[0] || {}).message) })))`)
	for _, v := range list {
		assert.Fail(w.t, v.ID+" in "+where, "%s:\n%s", v.Help, strings.Join(v.Nodes, "\n"))
	}
}

func engine(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "node_modules", "axe-core", "axe.min.js"))
	require.NoError(t, err, "the npm packages are missing: run npm ci in web/ (make does it)")
	return string(text)
}

func TestNoAreaShutsAnybodyOut(t *testing.T) {
	t.Parallel()
	axe := engine(t)
	for _, screen := range []drive.Screen{drive.Desk, drive.Phone} {
		for _, scheme := range []string{"light", "dark", "contrast"} {
			t.Run(scheme+"-"+itoa(int(screen.Width)), func(t *testing.T) {
				t.Parallel()
				w := open(t, folder, screen, "", axe)
				w.in(scheme)
				w.check("the offer to a newcomer")
				w.click("#guide-start") // its strip stands in every area from now on
				w.begin("cut-14500-158-gas", "mod-146-72")
				w.pick("fb-push")
				for _, a := range areas {
					if a == "compare" {
						w.area("compare")
						w.click("#pin")
					}
					w.area(a)
					require.True(t, w.has("#guide"), a)
					eval[bool](w, `(document.querySelectorAll("details").forEach((d) => (d.open = true)), true)`)
					w.check(a + " with everything open")
				}
			})
		}
	}
}

// in shows the page as the device prefers it, or in the theme for those who
// need strong contrast.
func (w *window) in(scheme string) {
	w.t.Helper()
	if scheme != "contrast" {
		w.must(w.Prefer(scheme))
		return
	}
	eval[bool](w,
		`(document.getElementById("f-theme").value = "contrast", document.getElementById("f-theme").dispatchEvent(new Event("change", { bubbles: true })), true)`)
	w.must(w.Until(`document.documentElement.dataset.theme === "contrast"`))
	w.must(w.Settle())
}

// The states an area takes on while it is used.
func TestNoStateShutsAnybodyOut(t *testing.T) {
	t.Parallel()
	w := blank(t, folder, drive.Desk, engine(t))
	w.openWinch(folder)
	w.show("fb-winch")
	w.click("#ask-fb-winch")
	w.check("unit with an answer open")
	w.typed("#f-search", "light")
	w.check("unit while searching")
	w.typed("#f-search", "")
	for _, c := range demo.Chapters {
		if w.has("#chapter-" + c.ID) { // some are shown for a remount only
			w.click("#chapter-" + c.ID)
			w.check("chapter " + c.ID)
		}
	}
	w.area("needs")
	w.typed(`#f-unit\.payload_lb`, "heavy")
	w.typed("#f-carry-eq-stock", "60")
	w.check("needs with a fault in a field")
	w.area("weight")
	w.check("weight with stops")
	w.area("quote")
	w.typed("#f-open-link", "nonsense")
	w.check("quote with an alert")
	w.must(w.Type("#f-address", ""))
	w.in("contrast")
	for _, a := range areas {
		w.area(a)
		w.check(a + " in high contrast")
	}
}

func TestNothingRunsOffANarrowScreen(t *testing.T) {
	t.Parallel()
	eachForm(t, func(t *testing.T, f form) {
		w := blank(t, f, drive.Phone)
		w.openWinch(f)
		w.show("fb-winch")
		w.click("#ask-fb-winch")
		fits := func(where string) {
			wide := eval[[]string](w, `(() => {
				const most = document.documentElement.clientWidth, out = [];
				const held = (el) => { for (let up = el.parentElement; up && up !== document.body; up = up.parentElement) if (getComputedStyle(up).overflowX !== "visible") return true; return false; };
				if (document.scrollingElement.scrollWidth > most) {
					for (const el of document.body.querySelectorAll("*")) {
						if (el.getBoundingClientRect().right > most + 1 && !held(el)) out.push(Math.round(el.getBoundingClientRect().right) + ": " + el.outerHTML.slice(0, 120));
					}
					out.push("scrollWidth " + document.scrollingElement.scrollWidth);
				}
				return out.slice(0, 2).concat(out.slice(2).slice(-3));
			})()`)
			require.Empty(t, wide, "%s runs off a screen of 360 px", where)
		}
		fits("the answer to why")
		for _, a := range areas {
			w.area(a)
			fits(a)
		}
		w.area("compare")
		w.click("#pin")
		fits("compare of two")
	})
}
