package e2e

import (
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/pricing/link"
	"boxwright/pricing/quote"
	"boxwright/web/app"
	"boxwright/web/assets/catalogue"
	"boxwright/web/e2e/drive"
)

// twelve units on as many chassis as may be, of several kinds and terms.
var twelve = []struct {
	name string
	acts []app.Act
}{
	{"van", begun("van-9500-148-gas", "van-60")},
	{"advanced van", begun("van-9900-148-4x4", "van-72", pick("dp-als"))},
	{"remount", begun("cab-16500-169-diesel", "mod-153-72", app.Act{Do: "remount"}, pick("rm-dye"), pick("rm-warranty"))},
	{"two patients", needed("multi", "3")},
	{"to a list", begun("cut-14500-158-gas", "mod-146-72")},
	{"neonatal", needed("neonatal", "4")},
	{"stopped", begun("cab-14000-165-gas", "mod-146-68", pick("fb-winch"))},
	{"critical care", needed("critical", "4")},
	{"three alike and another", begun("cab-16500-169-diesel", "mod-153-72",
		app.Act{Do: "set", ID: "terms.units", Value: "3"}, app.Act{Do: "add", ID: "item"}, pick("cot-power"))},
	{"leased", begun("cab-17500-169-4x4-diesel", "mod-153-72", app.Act{Do: "add", ID: "lease"})},
	{"rescue", begun("med-19500-175-diesel", "rescue-164", pick("dp-rescue"))},
	{"hazmat", begun("med-26000-189-diesel", "hazmat-164", pick("dp-hazmat"))},
}

func begun(chassis, body string, more ...app.Act) []app.Act {
	return append([]app.Act{{Do: "new", ID: chassis, Value: body}}, more...)
}

// needed is the unit proposed for a duty and so many seats, with its usual equipment aboard.
func needed(duty, crew string) []app.Act {
	return []app.Act{{Do: "set", ID: "needs.duty", Value: duty}, {Do: "set", ID: "needs.crew", Value: crew}, {Do: "propose"},
		{Do: "take-proposal", ID: "cheapest"}, {Do: "carry-usual", ID: duty}}
}

func pick(id string) app.Act { return app.Act{Do: "pick", ID: id, On: true} }

// mostPages of each document of one kind of unit.
var mostPages = map[string]int{"quote": 16, "drawings": 16, "response": 6, "exceptions": 2, "bidspec": 9, "order": 13,
	"test": 8, "labels": 4, "upkeep": 4, "change": 4, "comparison": 5}

// inLarge are units whose documents are printed in large print as well.
var inLarge = map[string]bool{"van": true, "to a list": true, "leased": true, "three alike and another": true}

// papers are the documents in the order they are offered, the comparison with another unit
// and the change order of a revision.
var papers = []string{"quote", "drawings", "response", "exceptions", "bidspec", "order", "test", "labels", "upkeep",
	"comparison", "change"}

// desk asks a core as the page does, without a browser.
type desk struct {
	core              *app.App
	draft, view, pins json.RawMessage
}

// do gives the main part of the page, when nothing of it is still worked out.
func (d *desk) do(t *testing.T, acts ...app.Act) (main string) {
	t.Helper()
	for range 100 {
		request, err := json.Marshal(map[string]any{"v": app.Version, "today": "2026-11-25", "kept": true, "acts": acts,
			"draft": d.draft, "view": d.view, "pins": d.pins})
		require.NoError(t, err)
		var reply struct {
			Draft, View, Pins json.RawMessage
			Regions           map[string][]string
			Fault             string
			Partial           bool
		}
		require.NoError(t, json.Unmarshal(d.core.Handle(request), &reply))
		require.Empty(t, reply.Fault)
		d.draft, d.view, d.pins = reply.Draft, reply.View, reply.Pins
		if r, ok := reply.Regions["main"]; ok {
			main = strings.Join(r, "")
		}
		if !reply.Partial {
			break
		}
		acts = []app.Act{{Do: "rest"}}
	}
	return main
}

// paper is the document within the main part of the page.
func (d *desk) paper(t *testing.T, id string) string {
	t.Helper()
	var main string
	switch id {
	case "comparison": // with a unit of another kind
		other := *d
		other.do(t, app.Act{Do: "pin"})
		other.do(t, begun("cut-14500-158-gas", "mod-146-72", app.Act{Do: "set", ID: "title", Value: "Medic 14"})...)
		return other.do(t, app.Act{Do: "go", ID: "compare"})
	case "change":
		revision := *d
		revision.revise(t)
		main = revision.do(t, app.Act{Do: "paper", ID: id})
	default:
		main = d.do(t, app.Act{Do: "paper", ID: id})
	}
	from, to := strings.Index(main, "<article"), strings.LastIndex(main, "</article>")
	require.Positive(t, from, "there is a document")
	return main[from:to] + "</article>"
}

// revise begins a revision of the quote that changes what most customers change.
func (d *desk) revise(t *testing.T) {
	t.Helper()
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	was, err := quote.ReadDraft(d.draft)
	require.NoError(t, err)
	q, err := quote.Compute(ed, was)
	require.NoError(t, err)
	text, err := link.Encode(q)
	require.NoError(t, err)
	now := was.Clone()
	now.Prev, now.Earlier, now.Rev = link.Name(text), text, was.Rev+1
	d.draft, err = json.Marshal(now)
	require.NoError(t, err)
	d.do(t, pick("cot-power"), pick("rm-floor-board"), app.Act{Do: "set", ID: "terms.training_days", Value: "3"},
		app.Act{Do: "go", ID: "quote"})
}

// The widths of a letter page within its margins, and of a sheet of drawings.
var (
	letterWide = drive.Screen{Width: 703, Height: 900}
	sheetWide  = drive.Screen{Width: 1632, Height: 1055}
)

// cutOff is what is lost on paper or smaller than type may be: text wider or higher than
// its box, drawn beyond its picture, or below so many points. Lettering painted on a unit
// is drawn to scale.
const cutOff = `((points) => {
	const out = new Set();
	const tell = (what, e) => out.add(what + ": " + (e.textContent || e.value).trim().slice(0, 60));
	for (const e of document.querySelectorAll("#main *")) {
		if (!e.getClientRects().length) continue;
		const style = getComputedStyle(e);
		if (e.ownerSVGElement) {
			if (e.localName !== "text" || e.classList.contains("text")) continue;
			const box = e.getBoundingClientRect(), all = e.ownerSVGElement.getBoundingClientRect();
			if (box.left < all.left - 1 || box.right > all.right + 1 || box.top < all.top - 1 || box.bottom > all.bottom + 1)
				tell("drawn beyond its picture", e);
			const m = e.getScreenCTM(), size = parseFloat(style.fontSize) * Math.hypot(m.a, m.b) * .75;
			if (size < 7.95) tell(size.toFixed(1) + " pt in a picture", e);
			continue;
		}
		if (e.localName === "svg" || e.closest(".hidden-text")) continue;
		if (style.display === "inline" || style.display === "contents") continue;
		if (e.clientWidth && e.scrollWidth > e.clientWidth + 1) tell("wider than its box", e);
		if (style.overflowY !== "visible" && e.scrollHeight > e.clientHeight + 1) tell("higher than its box", e);
		const size = parseFloat(style.fontSize) * .75;
		if (size < points - .05 && [...e.childNodes].some((n) => n.nodeType === 3 && n.data.trim()))
			tell(size.toFixed(1) + " pt", e);
	}
	return [...out];
})`

// markAll numbers what stands on paper and leads to each from a page added at the end:
// with that the PDF says on which page and how high each is.
const markAll = `(() => {
	const links = document.createElement("div"), told = [];
	links.style.breakBefore = "page";
	const rows = new Map();
	const kinds = "h1, h2, h3, caption, tr, figure, li, p";
	for (const e of document.querySelectorAll(".paper:not(.bare) .sheet > tbody > tr > td :is(" + kinds +
		"), #main:not(:has(.paper)) :is(" + kinds + ")")) {
		const a = document.createElement("a");
		e.id = "at-" + told.length;
		a.href = "#" + e.id; a.textContent = ".";
		links.append(a, " ");
		const table = e.localName === "tr" ? e.closest("table") : null;
		if (table && !rows.has(table)) rows.set(table, rows.size + 1);
		told.push({ kind: e.closest("thead") ? "head" : e.closest("ol.notes") ? "note" : e.localName, table: table ? rows.get(table) : 0,
			text: [...e.querySelectorAll("th, td")].map((c) => c.innerText).join(" ") || e.textContent.slice(0, 60),
			shown: e.getClientRects().length > 0 });
	}
	document.getElementById("main").append(links);
	return JSON.stringify(told);
})()`

// placed is a heading, a row, a picture or a paragraph where it stands on paper.
type placed struct {
	Kind, Text string
	Table      int // number of the table that a row is in
	Shown      bool
	page       int
}

var destination = regexp.MustCompile(`(?m)^\s*(\d+) \[ XYZ .*\] "at-(\d+)"`)

// The documents of twelve units are printed. Each of them is read back as text and looked at
// as pictures: a heading stands on the page of what it heads, no row is alone, a table that
// goes on repeats its head, nothing runs off the paper, pages are filled, and there are no
// more of them than a reader bears.
func TestDocumentsOnPaper(t *testing.T) {
	t.Parallel()
	list, err := os.ReadFile("../../testdata/requirements/county.csv")
	require.NoError(t, err)
	t.Run("of", func(t *testing.T) {
		for half := range 2 { // side by side
			t.Run(strconv.Itoa(half), func(t *testing.T) {
				t.Parallel()
				w := open(t, folder, letterWide, "")
				w.must(w.Paper())
				for i := half; i < len(twelve); i += 2 {
					u := twelve[i]
					d := &desk{core: app.New()}
					for _, a := range u.acts { // one after the other, as they are pressed
						d.do(t, a)
					}
					if u.name == "to a list" {
						d.do(t, app.Act{Do: "paste-list", Value: string(list)})
					}
					for id, value := range map[string]string{"title": "Medic 12", "number": "Q-2041",
						"buyer.name": "Alder County Rescue", "seller.name": "Larkspur Fleet Sales"} {
						d.do(t, app.Act{Do: "set", ID: id, Value: value})
					}
					d.do(t, app.Act{Do: "go", ID: "quote"})
					for _, id := range papers {
						t.Run(u.name+" "+id, func(t *testing.T) {
							w.onPaper(t, id, 1+strings.Count(u.name, " and "), d.paper(t, id))
						})
					}
					if !inLarge[u.name] {
						continue
					}
					d.do(t, app.Act{Do: "set", ID: "large", On: true})
					for _, id := range papers {
						t.Run(u.name+" "+id+" in large print", func(t *testing.T) {
							w.onPaper(t, id, 1+strings.Count(u.name, " and "), d.paper(t, id))
						})
					}
				}
			})
		}
	})
}

// onPaper prints a document and looks at each of its pages.
func (w *window) onPaper(t *testing.T, id string, kinds int, document string) {
	article, err := json.Marshal(document)
	require.NoError(t, err)
	if id == "drawings" {
		w.must(w.Resize(sheetWide))
		defer func() { w.must(w.Resize(letterWide)) }()
	}
	large := strings.HasSuffix(t.Name(), "large_print")
	least := "8"
	if large && id != "drawings" && id != "comparison" {
		least = "12"
	}
	lost, err := drive.Eval[[]string](w.Tab,
		`(document.getElementById("main").innerHTML = `+string(article)+`, `+cutOff+`(`+least+`))`)
	require.NoError(t, err)
	assert.Empty(t, lost, "cut off, or too small to read")
	told, err := drive.Eval[string](w.Tab, markAll)
	require.NoError(t, err)
	var list []placed
	require.NoError(t, json.Unmarshal([]byte(told), &list))
	pdf, err := w.PDF()
	require.NoError(t, err)
	file := written(t, "paper.pdf", pdf)
	text, err := exec.Command("pdftotext", "-layout", file, "-").Output()
	require.NoError(t, err)
	for _, word := range []string{"Take out", "showing now"} {
		assert.NotContains(t, string(text), word, "it stays on the screen")
	}
	pages := strings.Split(strings.TrimSuffix(string(text), "\f"), "\f")
	if len(list) > 0 {
		pages = pages[:len(pages)-1] // that of the links
		if last := pages[len(pages)-1]; strings.Trim(last, " .\n") == "" {
			pages = pages[:len(pages)-1]
		}
	}
	at, err := exec.Command("pdfinfo", "-dests", file).Output()
	require.NoError(t, err)
	for _, m := range destination.FindAllSubmatch(at, -1) {
		n, _ := strconv.Atoi(string(m[2]))
		list[n].page, _ = strconv.Atoi(string(m[1]))
	}
	most := mostPages[id] * kinds
	if large {
		most *= 3
	}
	if strings.Contains(document, "lease-purchase") {
		most += 4 // its schedule is an annex
	}
	assert.LessOrEqual(t, len(pages), most, "pages")
	list = shown(list)
	headsStay(t, list)
	notesStay(t, list)
	rowsStay(t, list, pages)
	ends := map[int]bool{len(pages): true} // a sheet of one kind of unit begins on a page of its own
	for _, x := range list {
		if x.Kind == "h1" {
			ends[x.page-1] = true
		}
	}
	filled(t, file, len(pages), ends, id == "drawings")
	if dir := os.Getenv("PAPERS"); dir != "" {
		require.NoError(t, os.WriteFile(filepath.Join(dir, strings.ReplaceAll(t.Name(), "/", "-")+".pdf"), pdf, 0o600))
	}
}

func shown(list []placed) (out []placed) {
	for _, x := range list {
		if x.Shown && x.page > 0 {
			out = append(out, x)
		}
	}
	return out
}

// headsStay holds each heading to the page of what comes next.
func headsStay(t *testing.T, list []placed) {
	t.Helper()
	for i, x := range list[:max(len(list)-1, 0)] {
		switch x.Kind {
		case "h1", "h2", "h3", "caption", "head":
			assert.Equal(t, x.page, list[i+1].page, "%q stands at the foot of a page, away from %q", x.Text, list[i+1].Text)
			if x.Kind == "h2" && i+2 < len(list) && list[i+1].Kind == "p" && list[i+2].Kind == "caption" {
				assert.Equal(t, x.page, list[i+2].page, "%q and its note stand at the foot of a page", x.Text)
			}
		}
	}
}

// notesStay holds that the notes at the foot of a section are on one page: no page begins with
// what is left over of them.
func notesStay(t *testing.T, list []placed) {
	t.Helper()
	for i := 1; i < len(list); i++ {
		if x := list[i]; x.Kind == "note" && list[i-1].Kind == "note" {
			assert.Equal(t, list[i-1].page, x.page, "the note %q is not on the page of those before it", x.Text)
		}
	}
}

// shortTable is the most rows of a table that is not taken apart, but for those of stations,
// whose rows are high, and in large print.
const shortTable = 8

// rowsStay holds that no row of a table is alone on a page, that a short table is on one, and
// that a table that goes on has its head again.
func rowsStay(t *testing.T, list []placed, pages []string) {
	t.Helper()
	rows, heads := map[int]map[int]int{}, map[int]string{}
	for _, x := range list {
		switch {
		case x.Table == 0:
		case x.Kind == "head":
			heads[x.Table] = x.Text
		default:
			if rows[x.Table] == nil {
				rows[x.Table] = map[int]int{}
			}
			rows[x.Table][x.page]++
		}
	}
	for table, on := range rows {
		if len(on) < 2 {
			continue
		}
		all := 0
		for _, n := range on {
			all += n
		}
		if all <= shortTable && !strings.Contains(heads[table], "Done") && !strings.Contains(t.Name(), "large_print") {
			assert.Len(t, on, 1, "the short table %q is taken apart", heads[table])
		}
		for page, n := range on {
			assert.Greater(t, n, 1, "a row of %q is alone on page %d", heads[table], page)
			for _, word := range strings.Fields(heads[table]) { // a narrow one stands in two lines
				assert.Contains(t, pages[page-1], word, "page %d has no head of its table", page)
			}
		}
	}
}

// filled looks at the pictures of pages: ink keeps off the edge of the paper, and each page
// that a sheet does not end on is more than a third full.
func filled(t *testing.T, file string, pages int, ends map[int]bool, framed bool) {
	t.Helper()
	base := strings.TrimSuffix(file, ".pdf")
	require.NoError(t, exec.Command("pdftoppm", "-gray", "-r", "18", "-l", strconv.Itoa(pages), file, base).Run())
	pictures, err := filepath.Glob(base + "-*.pgm")
	require.NoError(t, err)
	require.Len(t, pictures, pages)
	for i, name := range pictures {
		data, err := os.ReadFile(name)
		require.NoError(t, err)
		var wide, high, most int
		_, err = fmt.Sscanf(string(data[:20]), "P5\n%d %d\n%d", &wide, &high, &most)
		require.NoError(t, err)
		dots := data[len(data)-wide*high:]
		dark := func(x, y int) bool { return dots[y*wide+x] < 200 }
		low := 0
		for y := range high {
			for x := range wide {
				edge := min(x, y, wide-1-x, high-1-y) < 4 // 0.2 in
				if !dark(x, y) {
					continue
				}
				assert.False(t, edge && !framed, "page %d: ink at the edge of the paper", i+1)
				if y < high*9/10 { // above the foot
					low = max(low, y)
				}
			}
		}
		if !ends[i+1] {
			assert.Greater(t, low, high/3, "page %d is nearly empty", i+1)
		}
	}
}
