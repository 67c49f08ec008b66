package e2e

import (
	"fmt"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/web/app"
	"boxwright/web/e2e/drive"
)

// What a working page may take on a desk.
const (
	mostHigh  = 2500 // px of a page
	mostSizes = 6    // of type, drawings and papers aside
)

// sixStates are units in which pages grow long: one area or another has the most to show.
func sixStates(t *testing.T) map[string][]app.Act {
	list, err := os.ReadFile("../../testdata/requirements/county.csv")
	require.NoError(t, err)
	set := func(id, value string) app.Act { return app.Act{Do: "set", ID: id, Value: value} }
	carry := func(id string) app.Act { return app.Act{Do: "carry", ID: id, Value: "9"} }
	full := begun("cab-17500-169-4x4-diesel", "mod-153-72", set("needs.duty", "critical"), set("terms.budget", "300000"),
		set("unit.needed_by", "2027-03-01"), app.Act{Do: "propose"}, app.Act{Do: "take-proposal", ID: "lightest"},
		app.Act{Do: "carry-usual", ID: "critical"}, app.Act{Do: "add", ID: "lease"}, set("terms.units", "3"),
		app.Act{Do: "add", ID: "milestone"}, set("buyer.name", "Alder County Rescue"))
	return map[string][]app.Act{
		"fresh": begun("cut-14500-158-gas", "mod-146-72"),
		"full":  full,
		"overloaded": begun("cut-12500-138-gas", "mod-132-68", app.Act{Do: "carry-usual", ID: "als"}, carry("eq-struts"),
			carry("eq-cribbing"), app.Act{Do: "suggest"}, pick("fb-winch")),
		"list":       begun("cut-14500-158-gas", "mod-146-72", app.Act{Do: "paste-list", Value: string(list)}),
		"remount":    {{Do: "remount", ID: "cut-12500-138-gas"}},
		"comparison": begun("cab-16500-169-diesel", "mod-153-72", pick("fb-push")),
	}
}

// Working pages are short in every state, have few sizes of type, and on a small desk nothing is
// cut or runs off: where it stands is one low strip, and the heading of an area is high up.
func TestPagesAreShortAndWhole(t *testing.T) {
	t.Parallel()
	for name, acts := range sixStates(t) {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			w := open(t, folder, drive.Screen{Width: 1440, Height: 900}, "")
			w.load(acts)
			if name == "comparison" {
				for _, on := range [][2]string{{"cut-14500-158-gas", "mod-146-72"}, {"med-26000-189-diesel", "mod-180-74"},
					{"van-9500-148-gas", "van-60"}} {
					w.load(begun(on[0], on[1]))
				}
				w.area("compare")
				w.click("#add-rival")
			}
			sizes := map[string]string{}
			for _, id := range app.Areas() {
				w.must(w.Resize(drive.Screen{Width: 1440, Height: 900}))
				w.area(id)
				w.must(w.Settle())
				high := eval[int](w, `document.scrollingElement.scrollHeight`)
				t.Logf("%s %s %d px", name, id, high)
				assert.LessOrEqual(t, high, mostHigh, "%s is long", id)
				for size, what := range eval[map[string]string](w, sizesOfType) {
					sizes[size] = id + ": " + what
				}
				assert.Empty(t, eval[string](w, cut), "%s at 1440", id)
				assert.Empty(t, eval[string](w, cutPlaces), "%s at 1440", id)
				w.must(w.Resize(drive.Screen{Width: 1024, Height: 768}))
				assert.Empty(t, eval[string](w, across), "%s at 1024", id)
				assert.Empty(t, eval[string](w, cut), "%s at 1024", id)
				assert.Empty(t, eval[string](w, cutPlaces), "%s at 1024", id)
				at := eval[[2]float64](w, `[document.querySelector("#standing > .line").offsetHeight,
					document.querySelector("#main h1").getBoundingClientRect().top]`)
				assert.LessOrEqual(t, at[0], 64.0, "the strip over %s", id)
				assert.LessOrEqual(t, at[1], 130.0, "the heading of %s", id)
			}
			assert.LessOrEqual(t, len(sizes), mostSizes, fmt.Sprint(sizes))
		})
	}
}

// Power stays short while one of its supplies is read.
func TestPowerIsShortWithASupplyOpen(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Screen{Width: 1440, Height: 900}, "")
	w.begin("med-19500-175-diesel", "mod-164-72")
	w.area("power")
	w.click("#fold-mains-shore summary")
	assert.Contains(t, w.text("#fold-mains-shore"), "Total", "open")
	assert.LessOrEqual(t, eval[int](w, `document.scrollingElement.scrollHeight`), mostHigh)
}

// load opens a quote from a file, as acts make it.
func (w *window) load(acts []app.Act) {
	w.t.Helper()
	d := &desk{core: app.New()}
	d.do(w.t, acts...)
	w.area("start")
	w.must(w.Choose("#f-draft", written(w.t, "x.json", d.draft)))
	w.must(w.Until(`document.getElementById("done").innerText.includes("x.json")`))
	w.must(w.Settle())
}

// On a phone what an area's checks found is one line, and the area's own first thing is seen beneath. A
// desk has the findings whole.
func TestAPhoneBeginsWithTheAreasOwn(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Phone, "")
	w.load(sixStates(t)["overloaded"])
	found := 0
	for _, id := range []string{"standards", "unit", "weight", "power", "space", "delivery", "price"} {
		w.area(id)
		first := eval[float64](w, `document.querySelector("#main :is(.block, .chapters)").getBoundingClientRect().top`)
		assert.LessOrEqual(t, first, 0.6*float64(drive.Phone.Height), "the first of %s", id)
		if !w.has("#found") {
			continue
		}
		found++
		require.False(t, eval[bool](w, `document.querySelector("#found .findings").checkVisibility({ contentVisibilityAuto: true })`), id)
		w.must(w.Resize(drive.Desk))
		require.False(t, eval[bool](w, `document.querySelector("#found summary").checkVisibility()`), id)
		require.Greater(t, eval[float64](w, `document.querySelector("#found .findings").offsetHeight`), 20., id)
		w.must(w.Resize(drive.Phone))
	}
	require.Greater(t, found, 2)
	w.area("weight")
	require.Contains(t, w.text("#found summary"), "Must fix: ")
	w.click("#found summary")
	require.True(t, eval[bool](w, `document.querySelector("#found .findings").checkVisibility()`), "opened")
}

// A unit's name is read whole where it is typed, however long; Enter takes it.
func TestALongNameIsWrapped(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Phone, "")
	w.begin("cut-14500-158-gas", "mod-146-72")
	w.area("needs")
	const name = "Medic 14, in the place of the unit that the county lost in the flood of last year"
	w.click("#f-title")
	for _, letter := range name {
		w.must(w.Press(string(letter)))
	}
	w.must(w.Press(drive.Enter))
	for _, screen := range []drive.Screen{drive.Phone, {Width: 1440, Height: 900}} {
		w.must(w.Resize(screen))
		require.True(t, eval[bool](w, `(({ scrollWidth: a, clientWidth: b, scrollHeight: c, clientHeight: d }) => a <= b && c <= d)
			(document.getElementById("f-title"))`), "%d px", screen.Width)
	}
	require.Equal(t, name, eval[string](w, `document.getElementById("f-title").value`))
	require.Contains(t, w.draft(), name)
}

// What a press says at the foot of the window never covers what was pressed, enlarged four times
// neither.
func TestANoticeNeverCoversWhatWasPressed(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Screen{Width: 320, Height: 256}, "")
	w.begin("cut-14500-158-gas", "mod-146-72")
	w.area("compare")
	at := `(() => {
		const [pin, over] = ["pin", "notices"].map((id) => document.getElementById(id).getBoundingClientRect());
		return [pin.bottom, over.top, pin.top];
	})()`
	eval[bool](w, `(scrollTo(0, 0), document.getElementById("pin").focus({ preventScroll: true }), true)`)
	require.Greater(t, eval[[3]float64](w, at)[0], 200., "it stands where notices come")
	w.must(w.Press(drive.Enter))
	require.Contains(t, w.text("#done"), "Added to compare.")
	is := eval[[3]float64](w, at)
	require.LessOrEqual(t, is[0], is[1], "above the notice")
	require.GreaterOrEqual(t, is[2], 0., "and in sight")
	eval[bool](w, `(scrollTo(0, 0), true)`)
	w.click("#head-menu summary")
	require.Equal(t, "Print", eval[string](w, `(() => {
		const { left, bottom } = [...document.querySelectorAll("#head-menu button")].find((b) => b.textContent === "Print").getBoundingClientRect();
		return document.elementFromPoint(left + 20, Math.min(bottom, innerHeight) - 4)?.textContent;
	})()`), "nor what a menu offers")
}

// Four units are compared on a phone in a page that is not endless: side by side, the names in sight.
func TestFourAreComparedOnAPhone(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Screen{Width: 390, Height: 844}, "")
	for i, on := range [][2]string{{"cab-16500-169-diesel", "mod-153-72"}, {"cut-14500-158-gas", "mod-146-72"},
		{"med-26000-189-diesel", "mod-180-74"}, {"van-9500-148-gas", "van-60"}} {
		w.load(begun(on[0], on[1]))
		w.area("compare")
		if i < 3 {
			w.click("#pin")
		}
	}
	w.must(w.Settle())
	require.Contains(t, w.text("#fold-same summary"), "lines are the same")
	for _, wide := range []int64{390, 360} {
		w.must(w.Resize(drive.Screen{Width: wide, Height: 740}))
		high := eval[int](w, `document.scrollingElement.scrollHeight`)
		t.Logf("%d px wide, %d px", wide, high)
		assert.LessOrEqual(t, high, 4500)
		assert.Empty(t, eval[string](w, across))
		names := eval[[2]float64](w, `(() => {
			const table = document.querySelector("#main .compare");
			scrollTo(0, scrollY + table.getBoundingClientRect().top + 500);
			const [names, bar] = [table.querySelector("thead tr"), document.getElementById("areas")].map((e) => e.getBoundingClientRect());
			return [names.top - bar.bottom, names.height];
		})()`)
		assert.InDelta(t, -4, names[0], 4.5, "right beneath the areas")
		assert.Less(t, names[1], 90.)
		assert.Empty(t, eval[[]string](w, `[...document.querySelectorAll("#main .compare td")].filter((e) =>
			/^USD /.test(e.textContent) && e.checkVisibility() && e.offsetHeight > 45).map((e) => e.textContent)`), "no sum is broken")
	}
}

// Needs are short with many wants too, and so they are when they are answered, where nothing has
// everything and ways on stand above the proposals.
func TestManyWantsAreShort(t *testing.T) {
	t.Parallel()
	set := func(id, value string) app.Act { return app.Act{Do: "set", ID: id, Value: value} }
	acts := begun("cut-14500-158-gas", "mod-146-72", set("needs.duty", "critical"), set("needs.roads", "gravel"),
		set("needs.climate", "cold"), set("needs.crew", "4"), set("needs.patients", "1"), set("needs.height", "118"),
		set("needs.length", "310"), set("needs.loading", "36"), set("needs.turning", "60"), set("terms.budget", "320000"),
		set("unit.needed_by", "2027-08-01"))
	musts := []string{"cot-power", "mount-power"}
	for i, id := range append(musts, "fb-winch", "chx-skid", "trd-traction", "snd-floor", "ceil-quiet", "inv-2000",
		"hvac-second", "alt-320", "mount-vent") {
		acts = append(acts, app.Act{Do: "wish", ID: id, Value: map[bool]string{true: "must", false: "like"}[i < len(musts)]})
	}
	w := open(t, folder, drive.Screen{Width: 1440, Height: 900}, "")
	w.load(acts)
	w.area("needs")
	short := func(when string) {
		high := eval[int](w, `document.scrollingElement.scrollHeight`)
		t.Logf("%s %d px", when, high)
		assert.LessOrEqual(t, high, mostHigh, when)
	}
	short("asked for")
	w.click("#propose")
	w.must(w.Settle())
	require.True(t, w.has("#more-ways"), "there is more to give up than stands open")
	require.True(t, w.has("#aside"), "a proposal stands aside")
	short("answered")
	w.click("#more-ways summary")
	w.click("#give-up-2")
	w.must(w.Settle())
	w.click("#asked-more summary")
	w.click("#unwish-mount-vent")
	require.False(t, w.has("#unwish-mount-vent"), "what is folded is at work")
}

// sizesOfType are the sizes of what is read on the page, each with an example.
const sizesOfType = `(() => {
	const out = {}, walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
	while (walk.nextNode()) {
		const el = walk.currentNode.parentElement, text = walk.currentNode.textContent.trim();
		if (!text || !el.checkVisibility()) continue;
		if (el.closest(".paper, svg, script, .hidden-text, #say, #opening, #rescue, noscript")) continue;
		out[getComputedStyle(el).fontSize] ??= text.slice(0, 40);
	}
	return out;
})()`

// cut tells of texts in the rails that end before they are whole.
const cut = `[...document.querySelectorAll(
	"#areas .gist, #areas .name, #standing .line span, #standing b, #standing dd")]
	.filter((e) => e.offsetWidth && !e.closest(".hidden-text, .mark") && e.scrollWidth > e.clientWidth &&
		getComputedStyle(e).display !== "inline")
	.map((e) => e.textContent).join("; ")`

// cutPlaces tells of places to stow that end before they are whole: a choice draws its text
// between its padding and an arrow of some 18 px.
const cutPlaces = `(() => {
	const pen = document.createElement("canvas").getContext("2d");
	return [...document.querySelectorAll("#main select[id^=f-stow-]")].filter((e) => {
		const style = getComputedStyle(e);
		pen.font = style.font;
		const room = e.clientWidth - parseFloat(style.paddingLeft) - parseFloat(style.paddingRight) - 18;
		return pen.measureText(e.selectedOptions[0].text).width > room;
	}).map((e) => e.selectedOptions[0].text).join("; ");
})()`
