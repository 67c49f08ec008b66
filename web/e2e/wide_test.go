package e2e

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/web/e2e/drive"
)

// endless puts words without an end into every text of a draft that is typed.
func endless(t *testing.T, draft string) []byte {
	t.Helper()
	word := func(n int) string { return strings.Repeat("W", n) }
	var d map[string]any
	require.NoError(t, json.Unmarshal([]byte(draft), &d))
	party := map[string]any{"name": word(400), "person": word(400), "address": word(400), "reach": word(400)}
	d["title"], d["number"], d["notes"], d["buyer"], d["seller"] = word(400), word(60), word(3900), party, party
	d["requirements"] = []any{
		map[string]any{"no": word(20), "text": word(584)},
		map[string]any{"no": "2", "text": word(584), "verdict": "exception", "answer": word(400)},
		map[string]any{"text": word(300), "head": true},
	}
	unit := d["unit"].(map[string]any)
	unit["carried"] = []any{map[string]any{"equipment": demo.Equipment[0].ID, "compartment": word(64), "qty": 2}}
	unit["details"] = []any{map[string]any{"option": "mrk-unit-number", "text": word(100)}}
	d["more"] = []any{map[string]any{"label": word(400), "units": 2, "unit": unit}}
	data, err := json.Marshal(d)
	require.NoError(t, err)
	return data
}

// across tells what makes a page wider than its window; empty while nothing does.
const across = `(() => {
	const wide = document.documentElement.scrollWidth;
	if (wide <= innerWidth) return "";
	const out = [...document.body.querySelectorAll("*")].filter((e) => e.getBoundingClientRect().right > innerWidth + 1
		&& !e.closest(".scroll, .swipe, .hidden-text, svg, #areas"));
	return wide + " px: " + out.slice(0, 4).map((e) => e.tagName + "#" + e.id + "." + e.className + " "
		+ Math.round(e.getBoundingClientRect().right) + " " + e.textContent.slice(0, 30)).join(" | ");
})()`

// A word without an end stays within the page, in every area, on every paper and where a
// link is read.
func TestWordsWithoutAnEndStayWithinThePage(t *testing.T) {
	t.Parallel()
	for name, screen := range map[string]drive.Screen{"phone": drive.Phone, "desk": {Width: 1440, Height: 900}} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			w := open(t, folder, screen, "")
			w.area("start")
			w.must(w.Choose("#f-draft", written(t, "wide.json", endless(t, w.draft()))))
			w.must(w.Until(`document.getElementById("masthead").innerText.includes("WWWW")`))
			require.Empty(t, w.trouble())
			var wide []string
			look := func(where string) {
				eval[bool](w, `(document.querySelectorAll("#main details").forEach((d) => d.open = true), true)`)
				if text := eval[string](w, across); text != "" {
					wide = append(wide, fmt.Sprintf("%s: %s", where, text))
				}
			}
			for _, area := range []string{"needs", "unit", "weight", "power", "space", "delivery", "price", "compare",
				"quote"} {
				w.area(area)
				look(area)
			}
			for _, paper := range []string{"response", "exceptions", "bidspec", "order", "test", "labels", "upkeep"} {
				w.click("#paper-" + paper)
				look("paper " + paper)
			}
			link := eval[string](w, `document.getElementById("link-text").value.replace(/^.*#/, "")`)
			r := open(t, folder, screen, "#"+link)
			require.True(t, r.has("#reading"))
			w = r
			look("reading")
			w.click("#reading-compare")
			look("comparing")
			require.Empty(t, wide)
		})
	}
}
