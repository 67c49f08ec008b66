package link_test

import (
	"encoding/base64"
	"strings"
	"sync"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boxwright/config"
	"boxwright/pricing/link"
	"boxwright/pricing/quote"
	"boxwright/web/assets/catalogue"
)

// laterEdition is an edition that the links of these tests were not made with.
var laterEdition = sync.OnceValue(func() *config.Catalogue {
	file := strings.Replace(string(catalogue.Demo), `"edition": "2026-11"`, `"edition": "2027-03"`, 1)
	return must(config.Read([]byte(file)))
})

// sentLinks are a link, unsigned and signed, and the cover that belongs to it.
func sentLinks(t *testing.T) (texts map[string]string, cover string) {
	t.Helper()
	q, err := quote.Compute(demo(), typical())
	require.NoError(t, err)
	text, err := link.Encode(q)
	require.NoError(t, err)
	signed, err := link.Sign(text, demo().Cat, key("a"))
	require.NoError(t, err)
	return map[string]string{"unsigned": text, "signed": signed}, link.Cover(q.Draft, link.Freeze(q))
}

func TestCoverSaysTitlePriceAndDate(t *testing.T) {
	_, cover := sentLinks(t)
	lines := strings.Split(cover, "\n")
	require.Len(t, lines, 3)
	assert.Equal(t, "Rescue 4", lines[0])
	assert.Regexp(t, `^USD [0-9]{3},[0-9]{3}\.[0-9]{2}$`, lines[1])
	assert.Regexp(t, `^2027-[0-9]{2}-[0-9]{2}$`, lines[2])
}

func TestCoverThatAgreesIsOpened(t *testing.T) {
	texts, cover := sentLinks(t)
	for name, text := range texts {
		t.Run(name, func(t *testing.T) {
			sent := link.WithCover(text, cover)
			assert.Regexp(t, `^q=[A-Za-z0-9_-]+&cover=[A-Za-z0-9_-]+$`, sent)
			plain, _, err := link.Decode(demo().Cat, text)
			require.NoError(t, err)
			for _, whole := range []string{sent, link.With(sent, text), "https://quotes.example/#" + sent,
				text + "&was=" + text[2:] + sent[len(text):]} {
				own, says, _ := link.Split(whole)
				assert.Equal(t, text, own)
				assert.Equal(t, cover, says)
				assert.Equal(t, link.Name(text), link.Name(whole), "the cover is no part of what a link is called")
				d, _, err := link.Decode(demo().Cat, whole)
				require.NoError(t, err)
				assert.Equal(t, plain, d)
			}
		})
	}
}

func field(cover string) string { return base64.RawURLEncoding.EncodeToString([]byte(cover)) }

func TestCoverThatDiffersIsRefused(t *testing.T) {
	texts, cover := sentLinks(t)
	lines := strings.Split(cover, "\n")
	title, price, date := lines[0], lines[1], lines[2]
	for _, x := range []struct{ name, field, says string }{
		{"another title", field("Rescue 5\n" + price + "\n" + date), `"Rescue 5" as its title`},
		{"another price", field(title + "\nUSD 1.00\n" + date), `"USD 1.00" as its price`},
		{"another date", field(title + "\n" + price + "\n2026-12-24"), `"2026-12-24" as its likely date`},
		{"no price", field(title + "\n\n" + date), `"" as its price`},
		{"a line too few", field(title + "\n" + price), "missing or was changed"},
		{"a line too many", field(cover + "\n"), "missing or was changed"},
		{"a title too long", field(strings.Repeat("é", link.MaxCover) + "\n" + price + "\n" + date), "missing or was changed"},
		{"a text far too long", strings.Repeat("A", 10_000), "missing or was changed"},
		{"a control character", field(title + "\x07\n" + price + "\n" + date), "missing or was changed"},
		{"a character that turns the line", field("\u202e" + title + "\n" + price + "\n" + date), "missing or was changed"},
		{"an isolate", field("\u2066" + title + "\n" + price + "\n" + date), "missing or was changed"},
		{"a space at the end", field(title + " \n" + price + "\n" + date), "missing or was changed"},
		{"a line separator", field(title + "\u2028\n" + price + "\n" + date), "missing or was changed"},
		{"no UTF-8", field(title + "\xff\n" + price + "\n" + date), "missing or was changed"},
		{"markup of another quote", field("<b>Rescue 4</b>\n" + price + "\n" + date), `<b>Rescue 4</b>" as its title`},
		{"no base64", "Rescue+4", "missing or was changed"},
		{"a line break inside", field(cover)[:8] + "\n" + field(cover)[8:], "missing or was changed"},
		{"the end cut off", field(cover)[:len(field(cover))-3], "cover"},
	} {
		t.Run(x.name, func(t *testing.T) {
			for kind, text := range texts {
				for edition, cat := range map[string]*config.Catalogue{"its edition": demo().Cat,
					"another edition": laterEdition()} {
					_, _, err := link.Decode(cat, text+"&cover="+x.field)
					var fault *link.Error
					require.ErrorAs(t, err, &fault, "%s, %s", kind, edition)
					require.Equal(t, link.BadCover, fault.Code, "%s, %s", kind, edition)
					require.Contains(t, fault.Text, x.says)
					require.Nil(t, fault.Frozen, "nothing of it is shown")
				}
			}
		})
	}
}

func TestFieldsThatAreNotRead(t *testing.T) {
	texts, cover := sentLinks(t)
	text := texts["unsigned"]
	for name, more := range map[string]string{
		"two covers":       "&cover=" + field(cover) + "&cover=" + field(cover),
		"an empty cover":   "&cover=",
		"an unknown field": "&price=1",
		"an empty field":   "&",
		"two links before": "&was=" + text[2:] + "&was=" + text[2:],
	} {
		t.Run(name, func(t *testing.T) {
			_, _, err := link.Decode(demo().Cat, text+more)
			var fault *link.Error
			require.ErrorAs(t, err, &fault)
			require.Equal(t, link.Malformed, fault.Code)
		})
	}
}

// A cover is well-formed and short, whatever title and figures the link holds,
// and a link goes with its own cover and with no other.
func TestCoverOfAnything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := quote.New(demo(), "", "", today)
		d.Title = rapid.OneOf(words, rapid.StringN(40, 120, 400)).Draw(t, "title")
		f := link.Freeze(quoted(d))
		f.Total = rapid.OneOf(rapid.Just(f.Total), words).Draw(t, "total")
		cover := link.Cover(d, f)
		require.LessOrEqual(t, utf8.RuneCountInString(cover), link.MaxCover)
		text, err := link.Encode(quoted(d))
		require.NoError(t, err)
		_, says, _ := link.Split(link.WithCover(text, cover))
		require.Equal(t, cover, says)
		_, _, err = link.Decode(demo().Cat, text)
		if err != nil {
			t.Skip(err) // such as a title that is too long
		}
		_, _, err = link.Decode(demo().Cat, link.WithCover(text, cover))
		if cover == link.Cover(d, link.Freeze(quoted(d))) {
			require.NoError(t, err)
		} else {
			require.Error(t, err)
		}
	})
}
