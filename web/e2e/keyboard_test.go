package e2e

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/web/app"
	"boxwright/web/e2e/drive"
)

// stop is where the focus stands.
type stop struct {
	ID     string
	What   string // its markup; empty when nothing has the focus
	Seen   bool   // the element, or the label that stands for it, shows the focus
	InView bool
	Hidden bool    // something that stays in its place lies over all of it
	Name   string  // what is said of it, by label, text or title
	Stands float64 // contrast of what shows the focus with what it lies on
}

// stopped is a script that tells of the element el.
const stopped = `((el) => {
		const shows = (x) => { const s = getComputedStyle(x); return s.outlineStyle !== "none" && parseFloat(s.outlineWidth) >= 2; };
		const small = (r) => r.width < 4 || r.height < 4;
		const stands = small(el.getBoundingClientRect()) && el.labels && el.labels.length ? el.labels[0] : el;
		const r = stands.getBoundingClientRect();
		const text = (x) => (x ? x.textContent.trim() : "");
		const said = (el.getAttribute("aria-labelledby") || "").split(" ").map((id) => text(document.getElementById(id))).join(" ").trim();
		const name = el.getAttribute("aria-label") || said || (el.labels && [...el.labels].map(text).join(" ")) || (el.matches("input, select, textarea") ? el.title : text(el)) || el.title || "";
		const parts = (color) => (color.match(/[\d.]+/g) || [0, 0, 0, 0]).map(Number);
		const light = (color) => { const [a, b, c] = parts(color).map((v) => (v /= 255, v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4)); return 0.2126 * a + 0.7152 * b + 0.0722 * c; };
		let under = stands.parentElement;
		while (under.parentElement && (parts(getComputedStyle(under).backgroundColor)[3] ?? 1) < 1) under = under.parentElement;
		const [dark, bright] = [light(getComputedStyle(stands).outlineColor), light(getComputedStyle(under).backgroundColor)].sort((a, b) => a - b);
		return {
			Name: name.trim(), Stands: shows(stands) ? (bright + 0.05) / (dark + 0.05) : 21,
			ID: el.id, What: el === document.body ? "" : el.outerHTML.slice(0, 140),
			// Inside a date field the browser marks the part that has the focus itself.
			Seen: !small(r) && (shows(stands) || el.type === "date"),
			Hidden: [[r.left + 2, r.top + 2], [r.left + r.width / 2, r.top + r.height / 2], [r.right - 2, r.bottom - 2]].every(([x, y]) => {
				const over = document.elementFromPoint(x, y);
				const bar = over && over.closest("#masthead, #areas, #guide, #standing > .line, #notices");
				return bar && !bar.contains(stands);
			}),
			InView: r.bottom > 0 && r.top < innerHeight && r.right > 0 && r.left < innerWidth,
		};
	})`

// focus tells where the focus stands.
func (w *window) focus() stop {
	w.t.Helper()
	return eval[stop](w, stopped+`(document.activeElement)`)
}

// focusEach gives the focus to everything that can have it, one after another.
func (w *window) focusEach() []stop {
	w.t.Helper()
	return eval[[]stop](w, `(() => {
		const tell = `+stopped+`, out = [];
		for (const el of document.querySelectorAll("a[href], button, input, select, textarea, summary, [tabindex]")) {
			if (el.tabIndex < 0 || el.disabled || !el.checkVisibility()) continue;
			el.focus({ preventScroll: true });
			if (el === document.activeElement) out.push(tell(el));
		}
		return out;
	})()`)
}

// tabTo presses Tab until the focus stands on the wanted element. On the way
// every stop must be visible.
func (w *window) tabTo(id string) {
	w.t.Helper()
	var last stop
	for range 400 {
		w.must(w.Press(drive.TabKey))
		last = w.focus()
		if last.What == "" {
			continue // past the last stop; the next is the first
		}
		require.True(w.t, last.Seen, "the focus cannot be seen on %s", last.What)
		require.True(w.t, last.InView, "the focus is outside the window on %s", last.What)
		if last.ID == id {
			return
		}
	}
	require.Fail(w.t, "the Tab key never reaches #"+id, "it came to %s", last.What)
}

// press presses a key and expects the focus to stay on the element.
func (w *window) press(id, key string) {
	w.t.Helper()
	require.Equal(w.t, id, w.focus().ID)
	w.must(w.Press(key))
}

func TestByKeyboardAlone(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.tabTo("begin-cut-14500-158-gas")
	w.press("begin-cut-14500-158-gas", drive.Enter)
	require.Contains(t, w.text("#masthead"), demo.LabelOf("cut-14500-158-gas"))

	w.onRail()
	w.toArea("unit")
	// The row of chapters is one stop; arrows lead from one to the next.
	w.tabTo("chapter-chassis")
	w.press("chapter-chassis", drive.Right)
	w.press("chapter-module", drive.Left)
	for w.focus().ID != "chapter-exterior" {
		w.must(w.Press(drive.Right))
	}
	require.True(t, w.focus().InView && w.focus().Seen)
	w.press("chapter-exterior", drive.Space)
	require.Equal(t, "chapter-exterior", w.focus().ID, "the focus stays through the redrawing")

	// A box by the space bar.
	w.tabTo("o-rec-hitch")
	w.press("o-rec-hitch", drive.Space)
	require.True(t, w.checked("rec-hitch"))
	require.Equal(t, "o-rec-hitch", w.focus().ID)
	w.press("o-rec-hitch", drive.Space)
	require.False(t, w.checked("rec-hitch"))

	// Of several of which one is had, the arrows look through them and the space bar takes one.
	w.tabTo("o-mir-stock")
	w.press("o-mir-stock", drive.Down)
	require.False(t, w.checked("mir-heated"), "nothing is bought by looking at it")
	w.press("o-mir-heated", drive.Space)
	require.True(t, w.checked("mir-heated"))
	require.Contains(t, w.text("#row-mir-heated"), "your choice")

	// A button that turns into another keeps the focus.
	w.tabTo("rel-mir-heated")
	w.press("rel-mir-heated", drive.Enter)
	w.press("keep-mir-heated", drive.Enter)
	require.Equal(t, "rel-mir-heated", w.focus().ID)

	// What cannot be had: ask why, and take a way out.
	w.openWinch()
	w.show("fb-winch")
	w.tabTo("ask-fb-winch")
	w.press("ask-fb-winch", drive.Enter)
	require.Equal(t, "why-fb-winch", w.focus().ID, "the answer has the focus")
	w.press("why-fb-winch", drive.Escape)
	require.False(t, w.has("#why-fb-winch"))
	w.press("ask-fb-winch", drive.Enter)
	w.tabTo("mend-fb-winch-0")
	w.press("mend-fb-winch-0", drive.Enter)
	require.True(t, w.checked("fb-winch"))
	require.Equal(t, "o-fb-winch", w.focus().ID, "when the answer closes the focus is on what was got")

	w.onRail()
	w.toArea("quote")
	w.tabTo("print-quote")
}

// onRail presses Tab until the focus stands in the row of areas.
func (w *window) onRail() {
	w.t.Helper()
	for range 400 {
		w.must(w.Press(drive.TabKey))
		if strings.HasPrefix(w.focus().ID, "area-") {
			return
		}
	}
	require.Fail(w.t, "the Tab key never reaches the areas")
}

// toArea goes from one area to another by arrows along their row, which has the focus.
func (w *window) toArea(id string) {
	w.t.Helper()
	list := app.Areas()
	from := slices.Index(list, strings.TrimPrefix(w.focus().ID, "area-"))
	require.GreaterOrEqual(w.t, from, 0)
	for range (slices.Index(list, id) - from + len(list)) % len(list) {
		w.must(w.Press(drive.Down))
	}
	w.press("area-"+id, drive.Enter)
	require.Equal(w.t, "main", w.focus().ID, "after a change of area the reader stands at its beginning")
}

// Contrast that what shows the focus needs with what it lies on.
// Source: WCAG 2.2, success criterion 1.4.11, non-text contrast, from memory.
const leastContrast = 3

// The Tab key comes through every area to its end; each stop has a name and shows
// that it is the one, in every theme.
func TestEveryStopOfEveryAreaIsVisible(t *testing.T) {
	t.Parallel()
	for _, screen := range []drive.Screen{drive.Desk, drive.Phone} {
		t.Run(itoa(int(screen.Width)), func(t *testing.T) {
			t.Parallel()
			w := open(t, folder, screen, "")
			w.click("#guide-start")
			w.begin("cut-14500-158-gas", "mod-146-72")
			for _, a := range areas {
				w.area(a)
				seen := map[string]bool{}
				ended, last, same := false, "", 0
				for i := range 500 {
					w.must(w.Press(drive.TabKey))
					at := w.focus()
					if same++; at.What != last {
						same = 0
					}
					if last = at.What; same > 0 && same < 5 { // the parts of a date
						continue
					}
					require.Less(t, same, 5, "the Tab key is caught in %s", at.What)
					if at.What == "" {
						continue // past the last stop; the next is the first
					}
					if ended = at.ID != "" && seen[at.What]; ended {
						break
					}
					seen[at.What] = true
					where := fmt.Sprintf("%s at %d px wide, stop %d: %s", a, screen.Width, i, at.What)
					w.standsOut(at, where)
					require.True(t, at.InView, "the focus is outside the window in %s", where)
					require.False(t, at.Hidden, "the focus lies beneath something in %s", where)
					require.NotEmpty(t, at.Name, "nothing says what it is in %s", where)
				}
				require.True(t, ended, "the Tab key never comes round in %s", a)
				require.Greater(t, len(seen), 12, a)
				for _, id := range []string{"guide-end", "area-" + a} {
					require.True(t, reached(seen, id), "%s is reached in %s", id, a)
				}
				// The same stops in the other themes, where each takes the focus from the one before.
				for _, theme := range themes {
					w.in(theme)
					w.must(w.Press(drive.TabKey)) // the focus is shown to who uses the keys
					again := w.focusEach()
					require.GreaterOrEqual(t, len(again), len(seen), "%s in %s", a, theme)
					for _, at := range again {
						w.standsOut(at, fmt.Sprintf("%s in %s at %d px wide: %s", a, theme, screen.Width, at.What))
					}
				}
			}
		})
	}
}

// standsOut holds that a stop shows the focus, and that it can be seen there.
func (w *window) standsOut(at stop, where string) {
	w.t.Helper()
	require.True(w.t, at.Seen, "the focus cannot be seen in %s", where)
	require.GreaterOrEqual(w.t, at.Stands, float64(leastContrast), "the focus hardly stands out in %s", where)
}

func reached(seen map[string]bool, id string) bool {
	for what := range seen {
		if strings.Contains(what, ` id="`+id+`"`) {
			return true
		}
	}
	return false
}
