package e2e

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/web/e2e/drive"
)

// dead has the worker never answer, as on a device too slow to wait for.
const dead = `window.Worker = class { postMessage() {} terminate() {} addEventListener() {} }`

// late holds the core back until window.release is called.
const late = `(() => {
	const Plain = window.Worker;
	const held = [];
	window.release = () => { for (const send of held.splice(0)) send(); window.release = () => {}; window.__free = true; };
	window.Worker = class extends Plain {
		postMessage(m) { if (m.core && !window.__free) held.push(() => super.postMessage(m)); else super.postMessage(m); }
	};
})()`

// watching collects every text that can be seen, at each change and in the pictures
// after it, from the first element on, with the window's titles.
const watching = `(() => {
	const seen = window.__seen = new Set();
	// Before the style is there the browser paints nothing.
	const styled = () => document.body && getComputedStyle(document.documentElement).getPropertyValue("--ink");
	const look = () => {
		seen.add(document.title);
		if (!styled()) return;
		for (const line of document.body.innerText.split("\n")) seen.add(line);
		const say = document.getElementById("say");
		if (say) seen.add(say.textContent);
	};
	let pictures = 2; // still to look at: what does not change looks the same in the next ones
	const again = () => { look(); pictures = 2; };
	new MutationObserver(again).observe(document, { childList: true, subtree: true, attributes: true, characterData: true });
	seen.clear = () => { Set.prototype.clear.call(seen); pictures = 2; };
	const each = () => {
		if (pictures > 0) look();
		if (styled()) pictures--;
		requestAnimationFrame(each);
	};
	requestAnimationFrame(each);
})()`

func (w *window) seen() string {
	w.t.Helper()
	return strings.Join(eval[[]string](w, `[...window.__seen]`), "\n")
}

// before opens the page without waiting for its core.
func before(t *testing.T, f form, screen drive.Screen, fragment string, scripts ...string) *window {
	t.Helper()
	w := blank(t, f, screen, scripts...)
	w.must(w.Visit(w.address + fragment))
	w.must(w.Until(`document.readyState === "complete"`))
	return w
}

// What can be read while no core has answered: the unit that a new visitor
// begins with, and nothing that depends on the day.
func TestFirstScreenWithoutACore(t *testing.T) {
	t.Parallel()
	eachForm(t, func(t *testing.T, f form) {
		for _, screen := range []drive.Screen{drive.Desk, drive.Phone} {
			w := before(t, f, screen, "", dead)
			page := w.text("body")
			for _, says := range []string{"Cutaway 14,500 lb", "Needs", "With a need", "Remaining payload", "1,790 lb"} {
				require.Contains(t, page, says)
			}
			require.NotRegexp(t, `(Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec) \d+, 20[2-9]\d`,
				strings.ReplaceAll(page, "Nov 1, 2026", ""), "no day but the edition's own")
			require.Empty(t,
				eval[string](w,
					`[...document.querySelectorAll("input[type=date]")].map((d) => d.value).join("")`))
			require.NotContains(t, w.text("#standing"), "USD", "the price follows the day")
		}
	})
}

// What is pressed before the core is there is done when it comes.
func TestPressedBeforeTheCoreIsReady(t *testing.T) {
	t.Parallel()
	eachShipped(t, func(t *testing.T, f form) {
		w := before(t, f, drive.Desk, "", late)
		eval[bool](w, `(() => {
			document.getElementById("begin-cut-14500-158-4x4").click();
			const title = document.getElementById("f-title");
			title.value = "Medic 7";
			title.dispatchEvent(new Event("change", { bubbles: true }));
			document.getElementById("area-weight").click();
			return true;
		})()`)
		require.Equal(t, "1", eval[string](w, `document.documentElement.dataset.busy || ""`),
			"it is seen that something is worked on")
		eval[bool](w, `(window.release(), true)`)
		w.must(w.Ready())
		require.Equal(t, "page", eval[string](w, `document.getElementById("area-weight").getAttribute("aria-current")`))
		require.Contains(t, w.draft(), `"cut-14500-158-4x4"`, "the unit that was begun")
		require.Contains(t, w.text("#masthead"), "Medic 7", "the title that was typed")
		require.Contains(t, w.text("#areas"), "20", "the dates are there now")
		w.must(w.Until(`!document.documentElement.dataset.busy`))
		w.click(`[data-act="undo"]`)
		w.area("needs")
		require.Empty(t, w.trouble())
	})
}

// Nobody who opens a link ever sees another vehicle: not in an empty profile, and
// not where another quote was worked on.
func TestALinkShowsNoOtherVehicle(t *testing.T) {
	t.Parallel()
	eachForm(t, func(t *testing.T, f form) {
		w := open(t, f, drive.Desk, "", watching)
		w.begin("cut-14500-158-4x4", "mod-153-72")
		w.area("needs")
		w.typed("#f-title", "Rescue 4")
		link := w.link()
		require.Contains(t, link, "&cover=")
		plain, _, _ := strings.Cut(link, "&cover=")
		for reason, fragment := range map[string]string{"with a cover": link, "without": plain} {
			buyer := before(t, f, drive.Phone, "#"+fragment, watching, late)
			first := buyer.text("body")
			require.Contains(t, first, "Sent to you, being checked", reason)
			require.Equal(t, fragment == link, strings.Contains(first, "Rescue 4"), reason)
			eval[bool](buyer, `(window.release(), true)`)
			buyer.must(buyer.Ready())
			require.Contains(t, buyer.text("#main h1"), "Rescue 4", reason)
			require.Empty(t, buyer.trouble(), reason)
			for _, other := range []string{"Cutaway 14,500 lb, 158 in", "1,790 lb", "Build one real quote"} {
				require.NotContains(t, buyer.seen(), other, reason)
			}
		}

		// The link of one unit, where another one is worked on.
		other := w
		other.head("#go-quotes")
		other.click("#kept-fresh")
		other.must(other.Until(`!document.getElementById("masthead").innerText.includes("Rescue 4")`))
		other.area("needs")
		other.typed("#f-title", "Quite another one")
		require.Contains(t, other.seen(), "Quite another one ·", "what is seen is noted")
		eval[bool](other, `(addEventListener("hashchange", () => window.__seen.clear()), location.hash = `+
			drive.Quote("#"+link)+`, true)`)
		other.must(other.Until(`document.getElementById("main").innerText.includes("Rescue 4")`))
		// From the moment the link is followed; the list of kept quotes names it for good.
		for _, one := range []string{"Quite another one ·", "Quite another one –", "1,790 lb"} {
			require.NotContains(t, other.seen(), one)
		}
	})
}

// A link that is refused shows that alone; the reader goes on when they say so.
func TestARefusedLinkStandsAlone(t *testing.T) {
	t.Parallel()
	eachForm(t, func(t *testing.T, f form) {
		w := before(t, f, drive.Phone, "#q=AQAAAAAAAAA", watching)
		w.must(w.Ready())
		w.must(w.Until(`!document.getElementById("trouble").hidden`))
		require.Contains(t, w.text("body"), "This quote cannot be shown")
		for _, other := range []string{"Cutaway", "1,790 lb", "USD"} {
			require.NotContains(t, w.seen(), other)
		}
		require.True(t, eval[bool](w, `(() => {
			const [why, go] = ["trouble", "leave-refused"].map((id) => document.getElementById(id).getBoundingClientRect());
			return why.height > 0 && why.bottom < go.top && why.bottom < innerHeight / 2;
		})()`), "the reason stands above what to do")
		w.click("#leave-refused")
		w.must(w.Until(`!document.documentElement.dataset.opening`))
		require.Contains(t, w.text("#masthead"), "Cutaway")
		require.Len(t, eval[[]string](w, `[...document.querySelectorAll("#areas li .name")].map((x) => x.textContent)`),
			len(areas), "the page goes on without the link")
		require.Empty(t, w.trouble())
	})
}

// Who comes back sees the last quote before the core has drawn anything: as it
// was in the folder form, in words in the single file.
func TestComingBack(t *testing.T) {
	t.Parallel()
	eachForm(t, func(t *testing.T, f form) {
		f.offline = false
		w := open(t, f, drive.Desk, "")
		w.begin("cut-14500-158-4x4", "mod-153-72")
		w.area("needs")
		w.typed("#f-title", "Rescue 4")
		w.area("weight")
		standing := w.text("#standing")
		w.must(w.Visit("about:blank"))

		back := w.beside(dead, watching)
		back.must(back.Visit(back.address))
		back.must(back.Until(`document.readyState === "complete"`))
		require.Contains(t, back.text("body"), "Rescue 4")
		if f.name == folder.name {
			require.Equal(t, standing, back.text("#standing"))
			require.Equal(t, "page",
				eval[string](back, `document.getElementById("area-weight").getAttribute("aria-current")`))
			require.True(t, back.has("#stale[hidden]"), "it is of this very day")
		}
		require.NotContains(t, back.seen(), "1,790 lb", "never the unit of a new visitor")

		// On another day, and written since, it says that it is being brought up.
		eval[bool](back,
			`(() => { const s = JSON.parse(localStorage.getItem("boxwright.screen")); s.day = "2020-01-01"; localStorage.setItem("boxwright.screen", JSON.stringify(s)); return true; })()`)
		later := w.beside(late)
		later.must(later.Visit(later.address))
		later.must(later.Until(`document.readyState === "complete"`))
		if f.name == folder.name {
			require.Contains(t, later.text("#stale"), "brought up to date")
		}
		eval[bool](later, `(window.release(), true)`)
		later.must(later.Ready())
		require.True(t, later.has("#stale[hidden]"))
		require.Equal(t, standing, later.text("#standing"))
	})
}

// Whatever somebody wrote where the last screen is kept runs nothing, and goes
// when the core has drawn the page. The single file shows no markup at all. More of
// them are tried under Node, in last.test.js.
func TestAHostileLastScreen(t *testing.T) {
	t.Parallel()
	eachForm(t, func(t *testing.T, f form) {
		f.offline = false
		w := open(t, f, drive.Desk, "")
		w.must(w.Until(`localStorage.getItem("boxwright.screen")`))
		hostile := `<p id="hostile"><b onclick="window.broken = 1">x</b><svg onload="window.broken = 1"></svg></p>`
		eval[bool](w, `(() => {
			const s = JSON.parse(localStorage.getItem("boxwright.screen"));
			s.name = "<i id=hostile-name>name</i>";
			s.theme = "x y";
			s.regions = { main: [`+drive.Quote(hostile)+`], masthead: [], areas: [], standing: [], "__proto__": ["x"] };
			window.onpagehide = null;
			Object.defineProperty(Storage.prototype, "setItem", { value() {} });
			localStorage["boxwright.screen"] = JSON.stringify(s);
			return true;
		})()`)
		w.must(w.Visit("about:blank"))
		back := w.beside(late)
		back.must(back.Visit(back.address))
		back.must(back.Until(`document.readyState === "complete"`))
		require.False(t, back.has("#hostile-name"), "a name is text")
		if f.name == single.name {
			require.False(t, back.has("#hostile"), "no markup in the single file")
		}
		eval[bool](back, `(window.release(), true)`)
		back.must(back.Ready())
		require.False(t, back.has("#hostile"))
		require.False(t, eval[bool](back, `!!window.broken`))
	})
}

// beside is a second window of the same profile.
func (w *window) beside(scripts ...string) *window {
	w.t.Helper()
	tab := w.another(scripts...)
	w.t.Cleanup(tab.Close)
	return &window{tab, w.t, w.form, w.address}
}
