package drawing

import (
	"fmt"
	"maps"
	"math"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
)

// rule of the style sheet: one selector, what it declares, under which media.
type rule struct {
	selector, media string
	says            map[string]string
}

var (
	cssComment = regexp.MustCompile(`(?s)/\*.*?\*/`)
	cssPiece   = regexp.MustCompile(`^(\.[\w-]+|\[class\*="[^"]*"\]|:not\(\.[\w-]+\)|[a-z]+)`)
	cssIs      = regexp.MustCompile(`:is\(([^()]*)\)`)
)

// rulesOf reads the page's style sheet.
func rulesOf(t *testing.T) (list []rule) {
	t.Helper()
	file, err := os.ReadFile("../assets/style.css")
	require.NoError(t, err)
	text, media := cssComment.ReplaceAllString(string(file), ""), ""
	for text = strings.TrimSpace(text); text != ""; text = strings.TrimSpace(text) {
		if text[0] == '}' {
			media, text = "", text[1:]
			continue
		}
		head, rest, ok := strings.Cut(text, "{")
		require.True(t, ok, text)
		head = strings.ReplaceAll(strings.TrimSpace(head), `" t-"`, `"_t-"`) // a space parts compounds
		if strings.HasPrefix(head, "@media") {
			media, text = head, rest
			continue
		}
		body, after, _ := strings.Cut(rest, "}")
		text = after
		if strings.HasPrefix(head, "@") || strings.Contains(body, "{") { // page boxes and key frames
			media, text = "skipped", rest[strings.Index(rest, "{")+1:]
			if strings.HasPrefix(head, "@page") {
				media, text = "", after
				if strings.Contains(body, "{") {
					text = strings.TrimPrefix(strings.TrimSpace(after), "}")
					_, text, _ = strings.Cut(after, "}")
				}
			}
			continue
		}
		says := map[string]string{}
		for _, d := range strings.Split(body, ";") {
			if name, value, ok := strings.Cut(d, ":"); ok {
				says[strings.TrimSpace(name)] = strings.Join(strings.Fields(value), " ")
			}
		}
		for _, s := range spread(head) {
			list = append(list, rule{s, media, says})
		}
	}
	return list
}

// spread writes a selector out, one for each of its alternatives.
func spread(selector string) (out []string) {
	if m := cssIs.FindStringSubmatchIndex(selector); m != nil {
		for _, one := range strings.Split(selector[m[2]:m[3]], ",") {
			out = append(out, spread(selector[:m[0]]+strings.TrimSpace(one)+selector[m[1]:])...)
		}
		return out
	}
	for _, one := range strings.Split(selector, ",") {
		out = append(out, strings.TrimSpace(one))
	}
	return out
}

// fits reports whether a compound selector fits an element, and how specific it is.
func fits(compound, tag, classes string) (weight int, ok bool) {
	for rest := compound; rest != ""; {
		piece := cssPiece.FindString(rest)
		has := false
		switch {
		case piece == "":
			return 0, false
		case piece[0] == '.':
			has, weight = slices.Contains(strings.Fields(classes), piece[1:]), weight+10
		case piece[0] == '[':
			has, weight = strings.Contains(classes, strings.ReplaceAll(strings.Split(piece, `"`)[1], "_", " ")), weight+
				10
		case piece[0] == ':':
			name := strings.TrimSuffix(strings.TrimPrefix(piece, ":not(."), ")")
			has, weight = !slices.Contains(strings.Fields(classes), name), weight+10
		default:
			has, weight = piece == tag, weight+1
		}
		if !has {
			return 0, false
		}
		rest = rest[len(piece):]
	}
	return weight, true
}

// look is a style sheet as one reader sees it.
type look struct {
	rules  []rule
	within string // classes of what holds the drawing
	vars   map[string]string
	dark   bool
}

// of is what the rules give a property of an element in the drawing.
func (l *look) of(property, tag, classes string) string {
	value, best := "", -1
	for _, r := range l.rules {
		said, ok := r.says[property]
		if !ok || r.media != "" {
			continue
		}
		parts := strings.Fields(r.selector)
		weight, fit := fits(parts[len(parts)-1], tag, classes)
		for _, p := range parts[:len(parts)-1] {
			w, in := fits(p, "svg", l.within)
			weight, fit = weight+w, fit && in
		}
		if fit && weight >= best {
			value, best = said, weight
		}
	}
	return value
}

// color is what a value comes to on an element.
func (l *look) color(t *testing.T, value, tag, classes string) [3]float64 {
	t.Helper()
	again := func(v string) [3]float64 { return l.color(t, strings.TrimSpace(v), tag, classes) }
	switch {
	case value == "currentColor":
		return again("var(--ink)")
	case strings.HasPrefix(value, "light-dark("):
		light, dark, _ := strings.Cut(strings.TrimSuffix(strings.TrimPrefix(value, "light-dark("), ")"), ",")
		if l.dark {
			return again(dark)
		}
		return again(light)
	case strings.HasPrefix(value, "var("):
		name := strings.TrimSuffix(strings.TrimPrefix(value, "var("), ")")
		if own := l.of(name, tag, classes); own != "" {
			return again(own)
		}
		require.NotEmpty(t, l.vars[name], name)
		return again(l.vars[name])
	case strings.HasPrefix(value, "color-mix("):
		a, b, _ := strings.Cut(strings.TrimSuffix(strings.TrimPrefix(value, "color-mix(in srgb, "), ")"), "%, ")
		i := strings.LastIndex(a, " ")
		share, err := strconv.ParseFloat(a[i+1:], 64)
		require.NoError(t, err)
		x, y := again(a[:i]), again(b)
		for k := range x {
			x[k] = (x[k]*share + y[k]*(100-share)) / 100
		}
		return x
	}
	hex := strings.TrimPrefix(value, "#")
	if len(hex) == 3 {
		hex = fmt.Sprintf("%c%c%c%c%c%c", hex[0], hex[0], hex[1], hex[1], hex[2], hex[2])
	}
	n, err := strconv.ParseUint(hex, 16, 32)
	require.NoError(t, err, "%q of %s", value, classes)
	return [3]float64{float64(n >> 16), float64(n >> 8 & 255), float64(n & 255)}
}

// contrast of two colors, by their luminance, which is also what black-and-white paper
// keeps of them. Source: WCAG 2.2, relative luminance and contrast ratio, from memory.
func contrast(a, b [3]float64) float64 {
	light := func(c [3]float64) float64 {
		sum := 0.0
		for i, share := range []float64{0.2126, 0.7152, 0.0722} {
			v := c[i] / 255
			if v <= 0.04045 {
				v /= 12.92
			} else {
				v = math.Pow((v+0.055)/1.055, 2.4)
			}
			sum += share * v
		}
		return sum
	}
	x, y := light(a), light(b)
	return (math.Max(x, y) + 0.05) / (math.Min(x, y) + 0.05)
}

// looks are how the page and the drawing set are seen.
func looks(t *testing.T) map[string]*look {
	rules := rulesOf(t)
	vars := func(selector, media string, from map[string]string) map[string]string {
		out := maps.Clone(from)
		found := false
		for _, r := range rules {
			if r.selector == selector && strings.HasPrefix(r.media, media) && (media != "" || r.media == "") {
				maps.Copy(out, r.says)
				found = true
			}
		}
		require.True(t, found, selector)
		return out
	}
	root := vars(":root", "", map[string]string{})
	return map[string]*look{
		"light":         {rules, "drawing view", root, false},
		"dark":          {rules, "drawing view", root, true},
		"high contrast": {rules, "drawing view", vars(`:root[data-theme="contrast"]`, "", root), false},
		"print":         {rules, "drawing view", vars(":root", "@media print", root), false},
		"drawing set":   {rules, "plate-drawing drawn-sheet", vars(".drawn-sheet", "", root), false},
	}
}

const (
	lineContrast = 3.0 // what is not text; WCAG 2.2, success criterion 1.4.11, from memory
	textContrast = 4.5 // 1.4.3, from memory
)

// On paint, glass and lamps of every color, in every theme and on paper, each line and each
// letter stands out from what is under it.
func TestEveryLineStandsOutFromWhatIsUnderIt(t *testing.T) {
	tints := []string{""}
	for _, name := range slices.Sorted(maps.Keys(config.ColorNames)) {
		tints = append(tints, " t-"+name)
	}
	for name, l := range looks(t) {
		t.Run(name, func(t *testing.T) {
			get := func(property, tag, classes string) [3]float64 {
				value := l.of(property, tag, classes)
				require.NotEmpty(t, value, "%s of %s", property, classes)
				return l.color(t, value, tag, classes)
			}
			out := func(least float64, line, under [3]float64, what ...string) {
				assert.GreaterOrEqual(t, contrast(line, under), least, strings.Join(what, " on "))
			}
			for _, tint := range tints {
				paint := get("fill", "path", "edge"+tint)
				for _, line := range []string{"edge", "rim", "thin", "door", "hidden", "lamp", "mark", "glass",
					"store"} {
					out(lineContrast, get("stroke", "path", line), paint, line, "paint"+tint)
				}
				lamp := get("fill", "path", "lamp"+tint)
				out(lineContrast, get("stroke", "path", "thin"+tint), lamp, "a line", "lamp"+tint)
				if tint != "" {
					out(textContrast, get("fill", "text", "text letter"+tint+" mid"), lamp, "letter", "lamp"+tint)
				}
				if l.of("paint-order", "text", "text") == "stroke" { // lettering has a rim of paper
					out(textContrast, get("fill", "text", "text"+tint+" mid"),
						get("stroke", "text", "text"+tint+" mid"),
						"lettering"+tint, "its rim")
				} else {
					out(textContrast, get("fill", "text", "text"+tint+" mid"), paint, "lettering", "paint"+tint)
				}
			}
			for _, x := range []struct{ line, under string }{{"glass", "glass"}, {"thin", "glass"}, {"store", "store"},
				{"thin", "store"}, {"door", "store"}, {"seat", "seat"}, {"thin", "seat"}, {"cot", "cot"}, {"thin", "cot"},
				{"thin", "hub"}} {
				out(lineContrast, get("stroke", "path", x.line), get("fill", "path", x.under), x.line, x.under)
			}
			out(lineContrast, get("fill", "path", "tire"), get("fill", "path", "edge"), "tire", "panel")
		})
	}
}

// In forced colors the drawings and charts are drawn in colors of the system: every color
// that they use is replaced by one.
func TestForcedColorsReplaceAllOthers(t *testing.T) {
	rules := rulesOf(t)
	system := regexp.MustCompile(`^(CanvasText|Canvas|GrayText|Highlight)$`)
	forced, used := map[string]bool{}, map[string]string{}
	variable := regexp.MustCompile(`var\((--[\w-]+)\)`)
	for _, r := range rules {
		if strings.Contains(r.media, "forced-colors") {
			for name, value := range r.says {
				if strings.HasPrefix(name, "--") {
					assert.Regexp(t, system, value, "%s %s", r.selector, name)
					forced[name] = true
				}
			}
			continue
		}
		if !strings.Contains(r.selector, "drawing") && !strings.Contains(r.selector, "chart") {
			continue
		}
		for _, property := range []string{"fill", "stroke", "color"} {
			for _, m := range variable.FindAllStringSubmatch(r.says[property], -1) {
				used[m[1]] = r.selector
			}
		}
	}
	require.NotEmpty(t, used)
	for name, where := range used {
		assert.True(t, forced[name], "%s of %s keeps its color", name, where)
	}
}
