package e2e

import (
	_ "embed"
	"os"
	"path/filepath"
	"slices"
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
func (w *window) check(where string) { w.t.Helper(); w.blame(where, `__check()`) }

// checkColors runs what of it looks at colors, for a theme in which all else is the same.
func (w *window) checkColors(where string) {
	w.t.Helper()
	w.blame(where, `__check("color-contrast", "link-in-text-block")`)
}

func (w *window) blame(where, script string) {
	w.t.Helper()
	for _, v := range eval[[]violation](w, script) {
		assert.Fail(w.t, v.ID+" in "+where, "%s:\n%s", v.Help, strings.Join(v.Nodes, "\n"))
	}
}

//go:embed check.js
var checking string

// engine is the accessibility engine, with what runs it.
func engine(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "node_modules", "axe-core", "axe.min.js"))
	require.NoError(t, err, "the npm packages are missing: run npm ci in web/ (make does it)")
	return string(text) + "\n" + checking
}

// Of texts that look alike the check looks at one: each of these must be another look.
func TestTheCheckSeesWhatShutsPeopleOut(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "", engine(t))
	w.area("weight")
	w.check("weight as it is")
	for _, x := range []struct{ name, change, want string }{
		{"faint", `text.style.color = "#bbb"`, "color-contrast"},
		{"on a background of its own", `(text.style.background = "#777", text.style.color = "#888")`, "color-contrast"},
		{"faint with all that is around it", `text.parentElement.style.opacity = "0.3"`, "color-contrast"},
		{"faint in a line that is apart", `(text.style.transform = "translate(1px)", text.style.color = "#bbb")`, "color-contrast"},
		{"a button without a name", `text.replaceChildren(document.createElement("button"))`, "button-name"},
		{"a role that there is not", `text.setAttribute("role", "paragraf")`, "aria-roles"},
	} {
		t.Run(x.name, func(t *testing.T) {
			found := eval[[]violation](w, `(async () => {
				const main = document.getElementById("main"), was = main.innerHTML;
				const text = [...main.querySelectorAll("p")].filter((p) => p.innerText).at(-1);
				`+x.change+`;
				const found = await __check();
				main.innerHTML = was;
				return found;
			})()`)
			ids := make([]string, 0, len(found))
			for _, v := range found {
				ids = append(ids, v.ID)
			}
			require.Contains(t, ids, x.want)
		})
	}
}

// onBothScreens gives a check of a state on both screens, which also holds it as wide
// as each. The presses that follow are made on the one that was looked at last, each
// in its turn.
func (w *window) onBothScreens() func(where string) {
	screens := []drive.Screen{drive.Desk, drive.Phone}
	return func(where string) {
		w.t.Helper()
		slices.Reverse(screens)
		for _, screen := range screens {
			w.must(w.Resize(screen))
			w.check(where)
			require.LessOrEqual(w.t, eval[int](w, `document.documentElement.scrollWidth - innerWidth`), 0,
				"%s is as wide as the screen of %d px", where, screen.Width)
		}
	}
}

// themes are what the page is looked at in; the last is the one it goes on with.
var themes = []string{"dark", "contrast", "light"}

func TestNoAreaShutsAnybodyOut(t *testing.T) {
	t.Parallel()
	axe := engine(t)
	for _, screen := range []drive.Screen{drive.Desk, drive.Phone} {
		t.Run(itoa(int(screen.Width)), func(t *testing.T) {
			t.Parallel()
			w := open(t, folder, screen, "", axe)
			check := func(where string) {
				for _, theme := range themes {
					w.in(theme)
					eval[bool](w, `(document.querySelectorAll("details:not(.menu)").forEach((d) => (d.open = true)), true)`)
					if theme == "light" {
						w.check(where)
					} else {
						w.checkColors(where + " in " + theme)
					}
				}
			}
			check("the offer to a newcomer")
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
				check(a + " with everything open")
			}
		})
	}
}

// The menu in the head of a phone lies over the page only while the reader is in it.
func TestTheMenuOfAPhoneShutsNobodyOut(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Phone, "", engine(t))
	isOpen := func() bool { return eval[bool](w, `document.getElementById("head-menu").open`) }
	atMenu := func() bool { return eval[bool](w, `document.activeElement.matches("#head-menu summary")`) }
	for _, theme := range themes {
		w.in(theme)
		w.click("#head-menu summary")
		w.check("the menu in " + theme)
		require.Empty(t, eval[[]string](w, smallTargets))
		w.must(w.Press(drive.TabKey, drive.Escape))
		require.False(t, isOpen(), "Escape closes it")
		require.True(t, atMenu(), "and leads back to its button")
	}
	w.click("#head-menu summary")
	heard, err := w.Heard(`#head-menu [data-act="units"]`)
	w.must(err)
	require.Equal(t, drive.Heard{Role: "button", Name: "Units: US", Description: "Press for the other system"}, heard)
	heard, err = w.Heard("#f-theme")
	w.must(err)
	require.Equal(t, "Appearance", heard.Name)
	w.click(`#head-menu [data-act="units"]`)
	require.False(t, isOpen(), "what was chosen is seen")
	require.True(t, atMenu())
	require.Contains(t, w.text("#standing > .line"), " kg")
	w.must(w.Press(drive.Enter))
	for range 5 { // its four choices, and on
		require.True(t, isOpen())
		w.must(w.Press(drive.TabKey))
	}
	require.False(t, isOpen(), "it does not lie over what has the focus")
	w.must(w.Resize(drive.Screen{Width: 320, Height: 256}))
	w.click("#head-menu summary")
	require.True(t, eval[bool](w, `[...document.querySelectorAll("#head-menu > div, #head-menu > div *")].every((e) => {
		const r = e.getBoundingClientRect();
		return !r.width || r.left >= 0 && r.right <= innerWidth;
	})`), "enlarged four times it is seen whole")
}

// in shows the page as the device prefers it, or in the theme for those who
// need strong contrast.
func (w *window) in(theme string) {
	w.t.Helper()
	chosen := ""
	if theme == "contrast" {
		chosen = theme
	} else {
		w.must(w.Prefer(theme))
	}
	eval[bool](w, `((f) => {
		const other = f.value !== `+drive.Quote(chosen)+`;
		f.value = `+drive.Quote(chosen)+`;
		if (other) f.dispatchEvent(new Event("change", { bubbles: true }));
		return true;
	})(document.getElementById("f-theme"))`)
	w.must(w.Until(`(document.documentElement.dataset.theme || "") === ` + drive.Quote(chosen)))
	w.must(w.Settle())
}

// The states an area takes on while it is used.
func TestNoStateShutsAnybodyOut(t *testing.T) {
	t.Parallel()
	w := blank(t, folder, drive.Desk, engine(t))
	w.openWinch()
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
	w.area("standards")
	w.typed(`#f-unit\.payload_lb`, "heavy")
	w.check("standards with a fault in a field")
	w.area("equipment")
	w.typed("#f-carry-eq-stock", "60")
	w.check("equipment with more than fits")
	w.area("weight")
	w.check("weight with stops")
	w.area("start")
	w.typed("#f-open-link", "nonsense")
	w.check("quote with an alert")
	w.in("contrast")
	for _, a := range areas {
		w.area(a)
		w.checkColors(a + " in high contrast")
	}
}

// smallTargets opens every fold and lists what is pressed and less than 24 px wide or high.
// Source: WCAG 2.2, success criterion 2.5.8, target size, from memory.
const smallTargets = `(() => {
	document.querySelectorAll("#main details").forEach((d) => (d.open = true));
	return [...document.querySelectorAll("#main :is(button, input, select, textarea, summary), #masthead *, #areas button")]
		.filter((el) => el.tabIndex >= 0 && el.checkVisibility() && !el.matches(".hidden-text"))
		.map((el) => [el, el.getBoundingClientRect()]).filter(([, r]) => r.width < 23.9 || r.height < 23.9)
		.map(([el, r]) => r.width + " x " + r.height + ": " + el.outerHTML.slice(0, 120));
})()`

func TestNothingRunsOffANarrowScreen(t *testing.T) {
	t.Parallel()
	w := blank(t, folder, drive.Phone)
	w.openWinch()
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
		require.Empty(t, eval[[]string](w, smallTargets), "what is too small to be pressed with a finger, in %s", a)
	}
	w.area("compare")
	w.click("#pin")
	fits("compare of two")
	w.unlock()
	fits("the seller's costs")
	require.Empty(t, eval[[]string](w, smallTargets), "what is too small, beside the costs")
}

// unlock brings the demonstration's cost sheet and leaves it open.
func (w *window) unlock() {
	w.t.Helper()
	file, err := os.ReadFile("../assets/catalogue/demo-costs.json")
	w.must(err)
	w.area("seller")
	w.typed("#costs-pass", keyPhrase)
	w.must(w.Choose("#f-costs", written(w.t, "costs.json", file)))
	w.must(w.Until(`document.getElementById("costs-lock")`))
	w.must(w.Settle())
}

// cutMoney lists what costs or weighs and does not stand whole on the screen, of what is
// shown without scrolling sideways.
const cutMoney = `(() => {
	document.querySelectorAll("#main details").forEach((d) => (d.open = true));
	const out = [...document.querySelectorAll("#main td.num, #main .cover b, .big, #standing > .line b")]
		.filter((e) => e.checkVisibility()).filter((e) => {
			const right = e.closest(".scroll, .paper")?.getBoundingClientRect().right ?? innerWidth;
			return e.getBoundingClientRect().right > right + 1 || e.scrollWidth > e.clientWidth + 1 && e.clientWidth;
		}).map((e) => (e.closest("table")?.caption?.textContent || "") + ": " + e.textContent);
	for (const e of document.querySelectorAll("#main .ledger .sum td:last-child"))
		if (e.checkVisibility() && !e.innerText.trim()) out.push("no figure beside " + e.parentElement.innerText);
	const bar = document.querySelector("#standing > .line").getBoundingClientRect().height;
	return bar > 50 ? [...out, "the lower bar is " + bar + " px high"] : out;
})()`

// No digit of a price is cut or out of sight on a phone, whatever a change order comes to.
func TestMoneyIsWholeOnAPhone(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Phone, "")
	w.begin("cut-12500-138-gas", "mod-132-68")
	w.area("price")
	w.typed(`#f-item\.0\.units`, "4")
	w.click("#add-lease")
	w.signs("demo-key.json")
	w.area("unit")
	for _, press := range []string{"#chapter-chassis", "#o-cab-17500-169-4x4-diesel", "#chapter-module", "#o-mod-153-72"} {
		w.click(press)
	}
	w.area("compare")
	w.click("#pin")
	w.unlock()
	for _, screen := range []drive.Screen{drive.Phone, {Width: 390, Height: 844}} {
		w.must(w.Resize(screen))
		for _, a := range []string{"price", "compare", "seller", "quote"} {
			w.area(a)
			if a == "quote" {
				require.Regexp(t, `comes to USD \d{3},\d{3}\.\d\d`, w.text("#revision"))
			}
			require.Empty(t, eval[[]string](w, cutMoney), "%s at %d px", a, screen.Width)
		}
	}
}
