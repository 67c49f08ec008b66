package e2e

import (
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/web/e2e/drive"
)

// heard is an element as it is in the accessibility tree.
func (w *window) heard(selector string) drive.Heard {
	w.t.Helper()
	h, err := w.Heard(selector)
	w.must(err)
	return h
}

// How an option stands is told with its control, and a button says of what it is.
func TestControlsSayHowTheyStand(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.begin("cut-14500-158-gas", "mod-146-72")
	w.openWinch()
	w.show("fb-winch")
	winch := demo.LabelOf("fb-winch")
	h := w.heard("#o-fb-winch")
	require.Equal(t, winch, h.Name)
	for _, part := range []string{flat(w.text("#t-fb-winch")), w.text("#p-fb-winch"), w.text("#m-fb-winch")} {
		require.NotEmpty(t, part)
		require.Contains(t, h.Description, part)
	}
	require.False(t, w.has("#o-fb-winch[aria-disabled]"), "it can be pressed, and says why it is not available")
	require.Equal(t, drive.Heard{Role: "button", Name: "Why not " + winch}, w.heard("#ask-fb-winch"))
	w.click("#chapter-chassis")
	require.Contains(t, w.heard("#o-cut-14500-158-gas").Description, "GVWR 14,500 lb")
	require.Equal(t, drive.Heard{Role: "heading", Name: "Chassis"}, w.heard("#options h2"), "a chapter is a heading")
	w.click("#chapter-exterior")
	require.Equal(t, "heading", w.heard("#options legend h3").Role, "and so is a group")
}

// A number is heard with its unit, a row of a table by its name alone, and fields of one label
// with the group that they are in.
func TestFieldsAndTablesAreHeardWhole(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.begin("cut-14500-158-gas", "mod-146-72")
	w.area("power")
	const idle = `#main tr:has([id="help-power.idle"]) th`
	w.click(idle + " summary")
	require.Contains(t, w.text(idle), "A hot alternator", "what is meant stands open")
	require.Equal(t, drive.Heard{Role: "rowheader", Name: "On scene at low idle, 12 V load"}, w.heard(idle))
	w.area("space")
	const clearance = `[id="f-assumed-space.litter-clearance"]`
	w.click(clearance)
	require.Equal(t, "in Blank = 16.0, common practice, no source", w.heard(clearance).Description)
	w.typed(clearance, "high")
	require.Regexp(t, "^“high” is not a number.* in Blank = 16.0", w.heard(clearance).Description)
	w.area("quote")
	for field, group := range map[string]string{"buyer.person": "To", "seller.person": "From"} {
		require.Equal(t, drive.Heard{Role: "group", Name: group}, w.heard(`[role="group"]:has(> .field > [id="f-`+field+`"])`))
	}
	w.click("#fold-leave summary")
	require.Equal(t, "Passphrase to seal the quotes with", w.heard("#seal-pass").Name)
	w.area("seller")
	require.Equal(t, "Passphrase of the cost sheet", w.heard("#costs-pass").Name)
	require.Equal(t, "Passphrase of the key", w.heard("#key-pass").Name)
	require.Contains(t, w.heard("#f-costs").Description, "Type the passphrase first.")
	w.area("compare")
	w.click("#pin")
	w.pick("fb-push")
	w.area("compare")
	column := w.heard("#main .compare thead th")
	require.Equal(t, "columnheader", column.Role)
	require.NotContains(t, column.Name, "Work on this")
	require.True(t, w.has("#main .compare thead td #swap-0"), "buttons stand beneath the name")
}

// A picture of figures is heard in a sentence or two, and the whisker of a bar beside its figure.
func TestChartsAreHeard(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.begin("cut-14500-158-gas", "mod-146-72")
	for _, x := range [][3]string{
		{"delivery", `#main svg:has(.curve)`, `^The chance that it is delivered rises from .*\. Marked: likely .*, safe .*, 80 % .*\.$`},
		{"delivery", `#main svg:has(.critical)`,
			`^From the order on .* to delivery: .*\. Of \d+ bars \d+ decide the date, from .*\.$`},
		{"power", `#main .load-chart svg`, `^What the alternator gives, .*\. 12 V loads, .*\.$`},
	} {
		w.area(x[0])
		h := w.heard(x[1])
		require.Equal(t, "image", h.Role)
		require.Regexp(t, x[2], h.Name)
	}
	require.Regexp(t, `lb to spare likely [\d,]+ lb to [\d,]+ lb [\d,]+ lb of GAWR`,
		flat(w.text("#standing .gauge:has(.range)")))
}

// What scrolls is a stop and a landmark; what does not is neither.
func TestOnlyWhatScrollsIsAStop(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.area("weight")
	eval[bool](w, `(document.querySelectorAll("#main details").forEach((d) => (d.open = true)), true)`)
	for _, screen := range []drive.Screen{drive.Desk, drive.Phone} {
		w.must(w.Resize(screen))
		w.must(w.Until(`document.querySelector("#main [data-scroll][tabindex]") || innerWidth > 1000`))
		require.Empty(t, eval[[]string](w, `(() => {
			const out = [];
			for (const el of document.querySelectorAll("[data-scroll]")) {
				const scrolls = el.scrollWidth > el.clientWidth + 1 || el.scrollHeight > el.clientHeight + 1;
				if (scrolls !== (el.tabIndex === 0)) out.push(el.outerHTML.slice(0, 100));
				if (scrolls !== (el.role === "region") && el.dataset.scroll) out.push(el.outerHTML.slice(0, 100));
			}
			return out;
		})()`))
	}
}

// Where the system decides on the colors, what is in use stays marked, and bars and drawings
// are drawn in its colors, whatever theme was chosen.
func TestColorsOfTheSystem(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.begin("cut-14500-158-gas", "mod-146-72")
	for _, theme := range []string{"light", "contrast"} {
		w.in(theme)
		w.must(w.Force("dark"))
		require.Equal(t, []string{}, eval[[]string](w, `(() => {
			const probe = document.body.appendChild(document.createElement("i")), out = [];
			const color = (name) => ((probe.style.backgroundColor = name), getComputedStyle(probe).backgroundColor);
			const [canvas, marked] = [color("Canvas"), color("Highlight")];
			for (const at of ["#areas [aria-current]", ".chapters [aria-current]", ".looks [aria-current]"]) {
				const is = getComputedStyle(document.querySelector(at)).backgroundColor;
				if (is !== marked) out.push(at + " is " + is);
			}
			for (const at of [".bar .fill", ".drawing .tire"]) {
				const is = getComputedStyle(document.querySelector(at)).fill;
				if (is === canvas) out.push(at + " is drawn in the color of the ground");
			}
			for (const el of document.querySelectorAll(".option button.quiet")) {
				if (getComputedStyle(el).borderColor !== canvas) out.push(el.textContent + " has a box that touches its letters");
			}
			for (const el of document.querySelectorAll("#standing .bar .limit, .drawing .rim")) {
				if (getComputedStyle(el).stroke === canvas) out.push(el.outerHTML + " is drawn in the color of the ground");
			}
			probe.remove();
			return out;
		})()`), theme)
		w.area("weight")
		eval[bool](w, `(document.querySelectorAll("#main details").forEach((d) => (d.open = true)), true)`)
		w.must(w.Resize(drive.Phone))
		w.must(w.Until(`document.querySelector("#main .scroll[tabindex]")`))
		require.Equal(t, "double", eval[string](w,
			`getComputedStyle(document.querySelector("#main .scroll[tabindex]")).borderInlineEndStyle`),
			"there are more columns, though no shade is painted")
		w.must(w.Resize(drive.Desk))
		w.area("unit")
		w.must(w.Prefer("light"))
	}
}

// Whoever has only keys is never sent back to the top of the page: the focus stays, goes to
// what was asked for, or to what stands where the pressed thing stood.
func TestFocusIsNeverLost(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	press := func(id string) string {
		t.Helper()
		require.True(t, eval[bool](w, `(() => {
			const el = document.getElementById(`+drive.Quote(id)+`);
			for (let up = el; up; up = up.parentElement) if (up.tagName === "DETAILS") up.open = true;
			el.focus();
			return el === document.activeElement;
		})()`), id)
		w.must(w.Press(drive.Enter))
		w.must(w.Settle())
		at := w.focus()
		require.NotEmpty(t, at.What, "after %s", id)
		return at.ID
	}
	require.Equal(t, "main", press("area-needs"))
	require.Equal(t, "first-proposal", press("propose"), "who asked for proposals stands at the first")
	require.Equal(t, "told", press("take-lightest"))
	press("area-needs")
	w.click("#fold-requirements summary")
	w.typed("#f-list", "1. Powered cot\n2. Siren, 100 W\n")
	press("preview-answers")
	require.Equal(t, "preview-answers", press("leave-answers"), "who leaves it stands where it was asked for")
	press("preview-answers")
	require.Equal(t, "told", press("take-answers"), "who takes it stands at what was taken")
	require.True(t, w.focus().InView)
	require.Contains(t, w.text("#requirements #told"), "For line 1 of the list.")
	require.Equal(t, drive.Heard{Role: "region", Name: "What was taken"}, w.heard("#told"))
	press("clear-list")
	require.True(t, eval[bool](w, `document.activeElement.matches("#fold-requirements > summary")`),
		"of a list that is gone, its fold")
	press("area-price")
	press("add-item")
	press("drop-item.1")
	press("area-compare")
	press("add-rival")
	press("drop-rival.0")
	w.parties()
	press("area-seller")
	w.typed("#key-pass", "crane lantern orchard velvet")
	require.Equal(t, "key-export", press("key-new"), "what a new key needs next")
	press("area-quote")
	w.typed("#key-pass", "crane lantern orchard velvet")
	require.Equal(t, "copy-link", press("sign"), "what a signed quote needs next")

	press("area-unit")
	eval[bool](w, `(document.activeElement.blur(), true)`)
	for _, x := range [][2]string{{"Options", "options"}, {"Figures", "standing"}} {
		eval[bool](w, `([...document.querySelectorAll(".skip")].find((a) => a.textContent === `+drive.Quote(x[0])+`).focus(), true)`)
		require.True(t, w.focus().InView, "a way past the rest is seen where it has the focus")
		w.must(w.Press(drive.Enter))
		require.Equal(t, x[1], w.focus().ID)
	}
}

// Whoever moves by headings meets the area, its parts, what opens in them, and a document under
// the area that shows it, no level left out; the rail tells its parts by headings as well.
func TestHeadingsLeadThroughEveryArea(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.begin("cut-14500-158-gas", "mod-146-72")
	require.Equal(t, []string{"Ask", "Build", "Check", "Offer", "Office"},
		eval[[]string](w, `[...document.querySelectorAll("#areas h2")].map((h) => h.textContent)`))
	require.Equal(t, drive.Heard{Role: "heading", Name: "Ask"}, w.heard("#section-ask h2"))
	for _, a := range areas {
		w.area(a)
		eval[bool](w, `(document.querySelectorAll("#main details").forEach((d) => (d.open = true)), true)`)
		require.Empty(t, eval[[]string](w, `(() => {
			const out = [...document.querySelectorAll("#main details.block > summary:not(:has(:is(h2, h3)))")].map((el) => el.outerHTML);
			let was = 0;
			for (const el of document.querySelectorAll("#main :is(h1, h2, h3, h4)")) {
				if (!el.checkVisibility()) continue;
				const level = Number(el.ariaLevel || el.tagName[1]);
				if (level > was + 1 || level === 1 && was) out.push(was + " before " + level + ": " + el.textContent);
				was = level;
			}
			return was ? out : ["no heading"];
		})()`), a)
	}
	w.area("quote")
	require.Equal(t, "heading", w.heard("#fold-trail summary h3").Role, "a fold's name is one for who hears it")
	const title = `document.querySelector(".paper h1").ariaLevel`
	require.Equal(t, "2", eval[string](w, title))
	eval[bool](w, `(addEventListener("beforeprint", () => (window.printed = `+title+` || "its own")), true)`)
	_, err := w.PDF()
	w.must(err)
	require.Equal(t, "its own", eval[string](w, `window.printed`), "a paper is a document of its own")
	require.Equal(t, "2", eval[string](w, title))
}
