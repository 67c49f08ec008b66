package e2e

import (
	"bytes"
	"image"
	"image/png"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/pricing/link"
	"boxwright/pricing/sign"
	"boxwright/web/assets/catalogue"
	"boxwright/web/e2e/drive"
)

const keyPhrase = "plum orchard lantern"

// signs takes a key from its file and signs the quote in work with it.
func (w *window) signs(file string) {
	w.t.Helper()
	data, err := os.ReadFile("../assets/catalogue/" + file)
	w.must(err)
	w.parties()
	w.area("seller")
	w.typed("#key-pass", keyPhrase)
	w.must(w.Choose("#f-key", written(w.t, file, data)))
	w.must(w.Until(`document.getElementById("key-export")`))
	w.must(w.Settle())
	w.area("quote")
	w.signsAgain()
}

// parties names who buys and who sells, and numbers the quote, where that is not done.
func (w *window) parties() {
	w.t.Helper()
	w.area("quote")
	for _, f := range [][2]string{{`#f-buyer\\.name`, "Alder County Rescue"}, {`#f-seller\\.name`, "Lakeland Fleet"},
		{"#f-number", "2026-114"}} {
		if eval[string](w, `document.querySelector(`+"`"+f[0]+"`"+`).value`) == "" {
			w.typed(strings.ReplaceAll(f[0], `\\`, `\`), f[1])
		}
	}
}

// otherwiseSigned is a link that one of our keys signed which the page would not sign
// with.
func (w *window) otherwiseSigned(file string) string {
	w.t.Helper()
	w.parties()
	own, cover, _ := link.Split(w.link())
	data, err := os.ReadFile("../assets/catalogue/" + file)
	w.must(err)
	key, err := sign.Read(data)
	w.must(err)
	signed, err := link.Sign(own, demo, key)
	w.must(err)
	return link.WithCover(signed, cover)
}

func (w *window) signsAgain() {
	w.t.Helper()
	w.typed("#key-pass", keyPhrase)
	w.click("#sign")
	w.must(w.Until(`document.querySelector("#trust h2").innerText.includes("Signed")`))
	require.Empty(w.t, w.trouble())
}

func TestSignedQuoteReachesTheBuyer(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.begin("cut-14500-158-gas", "mod-146-72")
	w.area("needs")
	w.typed("#f-title", "Rescue 4")
	w.signs("demo-key.json")
	require.NotContains(t, eval[string](w, stored)+eval[string](w, `JSON.stringify(Object.entries(localStorage))`),
		keyPhrase)
	require.NotContains(t, eval[string](w, `document.documentElement.outerHTML`), keyPhrase)
	first := w.link()

	buyer := open(t, folder, drive.Phone, "#"+first)
	require.Contains(t, buyer.text("#trust"), "Genuine. Signed by Dana Whitfield (invented), sales manager.")
	require.Contains(t, buyer.whole("#trust"), "agree with those signed")
	paper := flat(strings.Join(buyer.paper(), " "))
	require.Contains(t, paper, "Dana Whitfield (invented)")

	// The seller changes it: a new revision, not signed until somebody signs.
	w.pick("rdoor-tall")
	w.area("quote")
	require.Contains(t, w.text("#trust h2"), "Revision 1: Not signed")
	require.Contains(t, w.text("#revision"), "The change order comes to")
	w.signsAgain()
	second := w.link()
	require.NotEqual(t, first, second)

	// The buyer, who had the first one, sees exactly what changed.
	eval[bool](buyer, `(location.hash = `+drive.Quote("#"+second)+`, true)`)
	buyer.must(buyer.Until(`document.getElementById("revision")`))
	buyer.must(buyer.Settle())
	require.Contains(t, buyer.text("#revision"), "The change order comes to USD")
	changed := flat(strings.Join(buyer.paper(), " "))
	require.Contains(t, changed, "Change order to the first issue")
	require.Contains(t, changed, demo.OptionByID("rdoor-tall").Label)

	// Looking at it does not touch the signature; editing begins with a copy.
	buyer.click("#reading-menu summary")
	buyer.click(`[data-act="units"]`)
	require.Contains(t, buyer.text("#trust"), "Genuine.")
	require.Contains(t, buyer.text("#masthead"), "2026-114, revision 1")
	eval[bool](buyer, `(document.getElementById("reading-menu").open = false, true)`)
	buyer.own()
	require.Contains(t, buyer.text("#main h1"), "Unit")
	buyer.area("quote")
	require.Contains(t, buyer.text("#trust h2"), "Not signed")
	require.Contains(t, buyer.text("#masthead"), "Rescue 4")
	require.NotContains(t, buyer.text("#masthead"), "copy of Rescue 4")
	buyer.area("needs")
	buyer.typed("#f-title", "Another title")

	// The quote that was sent is still there as it was.
	buyer.area("quote")
	buyer.click("#kept-open-1")
	buyer.must(buyer.Until(`document.getElementById("reading-menu")`))
	buyer.must(buyer.Settle())
	require.Contains(t, buyer.text("#trust"), "Genuine.")
}

func TestWhatAReaderIsWarnedOf(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.begin("cut-14500-158-gas", "mod-146-72")
	link := w.otherwiseSigned("demo-key-revoked.json")
	late := `(() => { const Plain = Date; window.Date = class extends Plain { constructor(...a) { if (a.length) super(...a); else super("2028-06-01T12:00:00"); } }; })()`
	buyer := open(t, folder, drive.Desk, "#"+link, late, engine(t))
	require.Contains(t, buyer.text("#trust"), "Do not rely on this quote.")
	require.Contains(t, buyer.whole("#trust"), "was revoked on")
	require.Contains(t, buyer.whole("#trust"), "It expired")

	// A key that is on no roster.
	stranger := open(t, folder, drive.Desk, "")
	stranger.begin("cut-14500-158-gas", "mod-146-72")
	stranger.parties()
	stranger.area("quote")
	stranger.click("#go-keys")
	stranger.typed("#key-pass", keyPhrase)
	stranger.click("#key-new")
	stranger.must(stranger.Until(`document.getElementById("key-export")`))
	stranger.must(stranger.Settle())
	stranger.click("#key-quote")
	stranger.signsAgain()
	require.Contains(t, stranger.text("#trust"), "It is on no list of signers of this catalogue")
	reader := open(t, folder, drive.Desk, "#"+stranger.link())
	require.Contains(t, reader.whole("#trust"), "does not know the key")
	reader.click("#copy-link")
	reader.must(reader.Until(`document.querySelector("#notices > :not([hidden])")`))
	require.True(t, eval[bool](reader, `(() => {
		scrollTo(0, 0);
		const [told, foot] = ["#notices > :not([hidden])", ".reading > .foot"].map((x) =>
			document.querySelector(x).getBoundingClientRect());
		return told.bottom <= foot.top;
	})()`), "what a press did does not lie over what is pressed next")

	// One character altered anywhere.
	for _, at := range []int{8, 60, 150, len(link) - 3} {
		other := map[bool]string{true: "B", false: "A"}[link[at] == 'A']
		eval[bool](buyer, `(location.hash = `+drive.Quote("#"+link[:at]+other+link[at+1:])+`, true)`)
		buyer.must(buyer.Until(`!document.getElementById("trouble").hidden && !location.hash`))
		require.Regexp(t, "changed|altered", buyer.trouble())
		buyer.click("#leave-refused")
		buyer.area("compare")
		buyer.area("quote")
	}

	// An edition that is not at hand.
	buyer.own()
	buyer.area("catalogue")
	buyer.must(buyer.Choose("#f-catalogue",
		written(t, "other.json", altered(t, `"edition": "2026-11"`, `"edition": "2027-03"`))))
	buyer.must(buyer.Until(`document.getElementById("main").innerText.includes("2027-03")`))
	buyer.must(buyer.Settle())
	eval[bool](buyer, `(location.hash = `+drive.Quote("#"+link)+`, true)`)
	buyer.must(buyer.Until(`document.getElementById("foreign")`))
	require.Contains(t, buyer.text("#foreign"), "NOT recomputed")
	require.Contains(t, buyer.text("#foreign"), "demo 2026-11")
	require.Equal(t, buyer.text("#foreign"), strings.TrimSpace(strings.TrimSuffix(buyer.text("#main"), "Words explained")),
		"and nothing of the quote worked on")
	require.NotContains(t, buyer.text("body"), "Where it stands")
	buyer.must(buyer.Resize(drive.Phone))
	buyer.firstScreen("#foreign-trust summary", "#masthead .number", ".reading h1", ".reading .big", ".reading .facts",
		"#reading-included", "#reading-compare")
	buyer.check("a quote of another edition, on a phone")
	buyer.click("#reading-included")
	require.True(t, eval[bool](buyer, `document.getElementById("fold-included").open`))
	buyer.click("#reading-compare")
	require.Contains(t, buyer.text("#main"), "being read")
	buyer.click("#reading-back")
	buyer.must(buyer.Resize(drive.Desk))
	buyer.click("#foreign-drop")
	require.Contains(t, buyer.text("#masthead"), "Cutaway")
	require.True(t, bytes.Contains(catalogue.Demo, []byte("signers")))
}

// The printed code is a picture of the link: its three corners and its size are
// as the standard has them.
func TestPrintedCode(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.begin("cut-14500-158-gas", "mod-146-72")
	w.signs("demo-key.json")
	w.click(".signature")
	box := eval[[]float64](w,
		`(() => { const r = document.querySelector(".qr").getBoundingClientRect(); return [r.left, r.top, r.width, +document.querySelector(".qr").getAttribute("viewBox").split(" ")[2]]; })()`)
	side := int(box[3]) - 8
	require.LessOrEqual(t, side, 97, "version 20")
	require.Zero(t, (side-17)%4)
	data, err := w.Picture()
	require.NoError(t, err)
	picture, err := png.Decode(bytes.NewReader(data))
	require.NoError(t, err)
	module := box[2] / box[3]
	dark := func(x, y int) bool {
		r, _, _, _ := picture.At(int(box[0]+(float64(x+4)+.5)*module), int(box[1]+(float64(y+4)+.5)*module)).RGBA()
		return r < 0x8000
	}
	for _, corner := range []image.Point{{0, 0}, {side - 7, 0}, {0, side - 7}} {
		for y := range 7 {
			for x := range 7 {
				ring := x == 0 || y == 0 || x == 6 || y == 6 || x >= 2 && x <= 4 && y >= 2 && y <= 4
				require.Equal(t, ring, dark(corner.X+x, corner.Y+y), "%v %d %d", corner, x, y)
			}
		}
	}
}
