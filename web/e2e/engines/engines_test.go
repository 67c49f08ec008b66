//go:build linux

package engines

import (
	"fmt"
	"net/http/httptest"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/web/assets/catalogue"
	"boxwright/web/pack/site"
)

var (
	dist string // folder with both forms of the page
	host *httptest.Server
	demo *config.Catalogue
)

func TestMain(m *testing.M) {
	code, err := tried(m)
	if err != nil {
		fmt.Fprintln(os.Stderr, "engines:", err)
		code = 1
	}
	os.Exit(code)
}

// tried runs the tests on the page in the folder BOXWRIGHT_DIST (relative to the
// repository), or on one built from the present sources.
func tried(m *testing.M) (int, error) {
	err := Missing()
	if err != nil {
		return 1, err
	}
	if demo, err = config.Read(catalogue.Demo); err != nil {
		return 1, err
	}
	root, err := site.Root()
	if err != nil {
		return 1, err
	}
	if dist = os.Getenv("BOXWRIGHT_DIST"); dist == "" {
		if _, dist, err = site.Temporary(root); err != nil {
			return 1, err
		}
		defer os.RemoveAll(dist)
	} else if !filepath.IsAbs(dist) {
		dist = filepath.Join(root, dist)
	}
	host = httptest.NewServer(site.Handler(filepath.Join(dist, site.FolderForm)))
	defer host.Close()
	return m.Run(), nil
}

// TestFirstWalk goes the salesman's first walk in every engine and both forms: a
// unit, an option that is ruled out, its why and its mend, paper, a reload, a link.
func TestFirstWalk(t *testing.T) {
	forms := []struct{ name, address string }{
		{"folder", host.URL + "/"},
		{"single", "file://" + filepath.Join(dist, site.SingleForm)},
	}
	for _, e := range Engines {
		t.Run(e.Name, func(t *testing.T) {
			t.Parallel()
			for _, f := range forms {
				t.Run(f.name, func(t *testing.T) {
					b, err := e.Start(1400, 900)
					require.NoError(t, err)
					t.Cleanup(b.Close)
					walk(t, b, f.address)
				})
			}
		})
	}
}

// visitor is a person at a tab; what goes wrong ends the test.
type visitor struct {
	t *testing.T
	Tab
}

// visit opens the page in a new tab and waits until the core has drawn it.
func visit(t *testing.T, b Browser, address string) *visitor {
	t.Helper()
	tab, err := b.Open()
	require.NoError(t, err)
	v := &visitor{t, tab}
	v.must(tab.Visit(address))
	v.must(Ready(tab))
	return v
}

func (v *visitor) must(err error) {
	v.t.Helper()
	require.NoError(v.t, err)
}

func (v *visitor) until(condition string) { v.t.Helper(); v.must(Until(v.Tab, condition)) }

func (v *visitor) click(selector string) { v.t.Helper(); v.must(Click(v.Tab, selector)) }

func (v *visitor) read(expression string) string {
	v.t.Helper()
	text, err := Eval[string](v.Tab, expression)
	v.must(err)
	return text
}

func (v *visitor) text(selector string) string {
	v.t.Helper()
	return v.read(`document.querySelector(` + quote(selector) + `).innerText`)
}

// area goes to an area of the page.
func (v *visitor) area(id string) {
	v.t.Helper()
	v.click("#area-" + id)
	v.until(`document.querySelector("#area-` + id + `[aria-current]")`)
}

// chapter opens the chapter of the Unit area that an option is in.
func (v *visitor) chapter(option string) {
	v.t.Helper()
	o := demo.OptionByID(option)
	require.NotNil(v.t, o, "the demonstration catalogue has the option %s", option)
	v.click("#chapter-" + demo.GroupByID(o.Group).Chapter)
	v.until(isThere(option))
}

// choose makes an option a deliberate choice.
func (v *visitor) choose(option string) {
	v.t.Helper()
	v.chapter(option)
	// One that the page filled in is kept, any other one is pressed.
	kept := "#keep-" + option
	if v.read(`String(`+isIn(option)+` && !!document.querySelector(`+quote(kept)+`))`) == "true" {
		v.click(kept)
		v.until(`!document.querySelector(` + quote(kept) + `)`)
	} else {
		v.click("#o-" + option)
		v.until(isIn(option))
	}
}

func isThere(option string) string { return `document.getElementById(` + quote("o-"+option) + `)` }

func isIn(option string) string { return isThere(option) + `.checked` }

const (
	price  = "#standing .big"
	gauges = "#standing .gauges"
)

var money = regexp.MustCompile(`\d,\d{3}\.\d\d$`)

// Of the firehouse walk: the module, what makes the front heavy, and the winch
// that the front axle then cannot take.
const (
	chassis = "cut-14500-158-gas"
	body    = "mod-146-72"
	winch   = "fb-winch"
	wheels  = "whl-aluminium"
)

var heavy = []string{
	"rest-four", "cot-power", "mount-power", "front-tall", "street-full", "build-ply", "bench-72", "o2-m1",
	"rbd-plate", "whl-steel",
}

func walk(t *testing.T, b Browser, address string) {
	v := visit(t, b, address)
	t.Cleanup(func() { require.Empty(t, b.Faults(), "errors of scripts or refusals of the security policy") })
	abilities(v)

	v.area("unit") // the core has answered when it is there
	v.area("start")
	v.click("#begin-" + chassis)
	v.until(`document.getElementById("standing").innerText.includes("5,000")`)
	v.area("unit")
	v.click("#chapter-module")
	v.until(isThere(body))
	if v.read(`String(`+isIn(body)+`)`) != "true" {
		v.click("#o-" + body)
		v.until(isIn(body))
	}
	for _, option := range heavy {
		v.choose(option)
	}
	mend(v)

	v.area("needs")
	v.must(Type(v.Tab, "#f-title", "Medic 4"))
	v.until(`document.getElementById("masthead").innerText.includes("Medic 4")`)
	v.area("quote")
	total, figures := v.text(price), v.text(gauges)
	require.Regexp(t, money, total)
	link := v.read(`document.getElementById("link-text").value`)
	paper(v, total)
	back(v)
	require.Equal(t, total, v.text(price))

	// What is written is still on its way to the database for a moment.
	v.must(v.Reload())
	v.must(Ready(v.Tab))
	v.until(`document.getElementById("link-text")?.value === ` + quote(link))
	require.Contains(t, v.text("#masthead"), "Medic 4", "a reload keeps the draft")
	require.Equal(t, total, v.text(price))
	require.Equal(t, figures, v.text(gauges))

	_, fragment, found := strings.Cut(link, "q=") // the form of one file has no address to give
	require.True(t, found, link)
	buyer := visit(t, b, address+"#q="+fragment)
	buyer.until(`document.getElementById("link-text")?.value === ` + quote(link))
	require.Contains(t, buyer.text("#reading"), total, "a link brings the same unit")
	require.Contains(t, buyer.text("#reading"), "Medic 4")
	require.Contains(t, buyer.read(`document.getElementById("main").textContent`), demo.LabelOf(winch))
	// By script: WebKit's driver does not come back from a pointer on this summary.
	buyer.read(`(document.querySelector("#reading-menu summary").click(), "open")`)
	buyer.read(`(document.getElementById("own-copy").click(), "copied")`)
	buyer.until(`document.getElementById("areas").innerText`)
	require.Equal(t, total, buyer.text(price))
	require.Equal(t, figures, buyer.text(gauges))
	require.Equal(t, "true", buyer.read(`String(document.getElementById("trouble").hidden)`))
	if strings.HasPrefix(address, "http:") {
		installed := buyer.read(`navigator.serviceWorker.ready.then((r) => r.scope)`)
		require.Equal(t, address, installed, "the page is kept for use without a network")
	}
}

// back goes to the area before by the browser's own button, and on again.
func back(v *visitor) {
	v.t.Helper()
	for _, way := range []struct {
		press func() error
		area  string
	}{{v.Back, "needs"}, {v.Back, "unit"}, {v.Forward, "needs"}, {v.Forward, "quote"}} {
		v.must(way.press())
		v.until(`document.querySelector("#area-` + way.area + `[aria-current]")`)
		v.until(settled)
	}
}

// abilities are what the page uses and falls back on nothing for.
func abilities(v *visitor) {
	v.t.Helper()
	for name, condition := range map[string]string{
		"streams that unpack": `new DecompressionStream("gzip")`,
		"streams that pack":   `new CompressionStream("gzip")`,
		":has() in styles":    `CSS.supports("selector(:has(a))")`,
		"wasm":                `WebAssembly.instantiateStreaming`,
		"a database": `new Promise((done) => {
			const o = indexedDB.open("probe");
			o.onsuccess = () => done(1);
			o.onerror = () => done(0);
		})`,
	} {
		require.Equal(v.t, "true", v.read(`(async () => String(!!(await (`+condition+`))))()`), name)
	}
}

// mend asks for the winch, reads why it is ruled out, and takes an offered way out.
func mend(v *visitor) {
	v.t.Helper()
	before, weights := v.text(price), v.text(gauges)
	v.chapter(winch)
	v.click("#o-" + winch)
	v.until(`document.getElementById("why-` + winch + `").innerText.includes("Front axle")`)
	require.Equal(v.t, "false", v.read(`String(`+isIn(winch)+`)`), "a thing that is ruled out is not taken")
	require.Contains(v.t, v.text("#why-"+winch), "5,000 lb")
	require.Equal(v.t, before, v.text(price), "asking changes nothing")

	// The offers come a moment after the reason.
	offer := `[...document.querySelectorAll("[id^=mend-` + winch + `-]")].find((x) => x.textContent.includes(` +
		quote(demo.LabelOf(wheels)) + `))`
	v.until(offer)
	v.click("#" + v.read(offer+`.id`))
	v.until(isIn(winch))
	require.NotEqual(v.t, before, v.text(price), "the price changes")
	require.NotEqual(v.t, weights, v.text(gauges), "the weights change")
	v.chapter(wheels)
	require.Equal(v.t, "true", v.read(`String(`+isIn(wheels)+`)`))
}

var spaces = regexp.MustCompile(`\s+`)

// paper holds the quote as it prints.
func paper(v *visitor, total string) {
	v.t.Helper()
	v.until(`document.getElementById("print-quote")`)
	text, err := v.Paper()
	v.must(err)
	first, _, _ := strings.Cut(text, "\f")
	require.Contains(v.t, first, "Medic 4", "the document begins on the first sheet")
	text = spaces.ReplaceAllString(text, " ")
	for _, words := range []string{"Medic 4", demo.LabelOf(chassis), demo.LabelOf(winch), total} {
		require.Contains(v.t, text, words)
	}
	for _, words := range []string{"Undo", "Where it stands", "Print or save", "Skip to"} {
		require.NotContains(v.t, text, words, "tools of the screen are not printed")
	}
}
