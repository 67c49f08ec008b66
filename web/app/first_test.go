package app

import (
	"bytes"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/web/assets/catalogue"
)

var anyDay = regexp.MustCompile(`20[2-9]\d-\d\d-\d\d|(Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec) \d+, 20[2-9]\d`)

// The first screen is what a new visitor would see, but for what depends on the
// day: that is open, and nothing of it is of the day the page was built.
func TestFirstScreen(t *testing.T) {
	screen, err := FirstScreen(nil)
	require.NoError(t, err)
	var all strings.Builder
	for _, id := range []string{"masthead", "areas", "main", "standing"} {
		all.WriteString(screen[id])
	}
	for _, says := range []string{"Cutaway 14,500 lb", "Remaining payload", "Begin on this", `data-id="weight"`} {
		assert.Contains(t, all.String(), says)
	}
	// The edition's own first day is no day of the visit.
	for _, found := range anyDay.FindAllString(strings.ReplaceAll(all.String(), "Nov 1, 2026", ""), -1) {
		t.Errorf("a day stands in the first screen: %s", found)
	}
	assert.NotContains(t, all.String(), "295,842.85", "the price follows the day")

	for _, day := range []string{"2026-11-25", "2027-07-04", "2029-01-15"} {
		p := open(t)
		p.req["today"] = day
		r := p.do(Act{Do: "start"})
		for id, text := range screen {
			drawn := parse(r.Regions[id])
			assert.True(t, text == write(common(parse(text), drawn)), "%s says nothing that is not so on %s", id, day)
		}
	}
}

func TestFirstScreenOfAnotherCatalogue(t *testing.T) {
	own := bytes.Replace(catalogue.Demo, []byte(`"edition": "2026-11"`), []byte(`"edition": "own <b>"`), 1)
	screen, err := FirstScreen(own)
	require.NoError(t, err)
	assert.Contains(t, screen["areas"], "edition own &lt;b&gt;")
	_, err = FirstScreen([]byte("{"))
	assert.Error(t, err)
}

func TestWhatTwoDrawingsShare(t *testing.T) {
	for _, c := range []struct{ name, a, b, want string }{
		{"the same", `<p class="x">one <b>two</b></p>`, `<p class="x">one <b>two</b></p>`, `<p class="x">one <b>two</b></p>`},
		{"a text", `<p>on <b>May 1</b></p>`, `<p>on <b>May 2</b></p>`, `<p>on <b>…</b></p>`},
		{"a field", `<input type="date" value="2026-01-01" id="d">`, `<input type="date" value="2026-01-02" id="d">`, `<input type="date" value="" id="d">`},
		{"another element", `<h2>x</h2><p>all well</p><i>y</i>`, `<h2>x</h2><ul><li>late</li></ul><i>y</i>`, `<h2>x</h2><span>…</span><i>y</i>`},
		{"another class", `<b class="ok">●</b> z`, `<b class="stop">■</b> z`, `<span>…</span> z`},
		{"one element more", `<ul><li>1</li></ul>`, `<ul><li>1</li><li>2</li></ul>`, `<ul>…</ul>`},
		{"a text and an element", `x`, `<b>x</b>`, `…`},
	} {
		t.Run(c.name, func(t *testing.T) {
			assert.Equal(t, c.want, write(common(parse(c.a), parse(c.b))))
			assert.Equal(t, c.a, write(parse(c.a)))
		})
	}
}
