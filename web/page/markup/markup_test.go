package markup_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	. "boxwright/web/page/markup"
)

func ExampleEl() {
	fmt.Println(El("p", Class("note", ""), At("title", `a "quoted" word`), Text("2 < 3 & more"), El("br"), nil))
	// Output: <p class="note" title="a &#34;quoted&#34; word">2 &lt; 3 &amp; more<br></p>
}

func TestNothingBecomesMarkup(t *testing.T) {
	hostile := `"><script>alert(1)</script>`
	got := El("a", At("href", hostile), Flag("hidden", true), Flag("checked", false), Text(hostile)).String()
	assert.NotContains(t, got, "<script>")
	assert.Contains(t, got, " hidden>")
	assert.NotContains(t, got, "checked")
}

func TestRuns(t *testing.T) {
	list := Each([]string{"a", "b"}, func(i int, s string) Part { return El("li", Text(fmt.Sprintf("%d %s", i, s))) })
	assert.Equal(t, "<ul id=\"x\"><li>0 a</li><li>1 b</li></ul>",
		El("ul", Many(At("id", "x"), list), If(false, Text("no")), When(false, nil)).String(), "attributes of a run "+
			"belong to the element around it")
}

// What was written once stands in another page as it would be drawn there.
func TestWritten(t *testing.T) {
	row := El("li", Class("a"), Text("1 < 2"), El("br"))
	kept := Written(row)
	assert.Equal(t, row.String(), kept.String())
	assert.Equal(t, El("ul", row, row).String(), El("ul", kept, kept).String())
	assert.Equal(t, Many(row, Text("")).Pieces(), Many(kept, Text("")).Pieces())
	assert.Equal(t, []string{row.String(), row.String()}, Many(kept, kept).Pieces())
}

// A word without an end may be broken, but not in a field or a picture, where nothing but
// text stands.
func TestLongWordsMayBeBroken(t *testing.T) {
	long := strings.Repeat("W", 100)
	pieces := strings.Repeat("W", 48) + "<wbr>" + strings.Repeat("W", 48) + "<wbr>WWWW"
	key := strings.Repeat("k", 48)
	for _, x := range []struct {
		name, want string
		part       Part
	}{
		{"a long word", "<p>" + pieces + "</p>", El("p", Text(long))},
		{"behind others", "<p>a &lt; " + pieces + "</p>", El("p", Many(Text("a < "+long)))},
		{"a key", "<p>the key " + key + " " + key + "</p>", El("p", Text("the key "+key+" "+key))},
		{"letters of several bytes", "<p>" + strings.Repeat("é", 24) + "<wbr>é</p>", El("p", Text(strings.Repeat("é", 25)))},
		{"in a field", "<textarea>" + long + "</textarea>", El("textarea", Many(Text(long)))},
		{"in a choice", "<option>" + long + "</option>", El("option", Text(long))},
		{"in a picture", "<svg><g><text>" + long + "</text></g></svg>", El("svg", El("g", El("text", Text(long))))},
		{"after a field", "<p><textarea>" + long + "</textarea>" + pieces + "</p>",
			El("p", El("textarea", Text(long)), Text(long))},
	} {
		t.Run(x.name, func(t *testing.T) { assert.Equal(t, x.want, x.part.String()) })
	}
}
