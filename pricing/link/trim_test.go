package link_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/pricing/link"
	"boxwright/pricing/quote"
)

// What mail leaves around a link, and how it breaks it, does not keep it from being
// read.
func TestTrimLeavesTheLink(t *testing.T) {
	q := must(quote.Compute(demo(), typical()))
	bare, err := link.Encode(q)
	require.NoError(t, err)
	own := link.WithCover(bare, link.Cover(q.Draft, link.Freeze(q)))
	at := len(own) / 2
	broken := own[:at] + "\n" + own[at:]
	for name, sent := range map[string]string{
		"as it is":                 own,
		"an address":               "https://quotes.example/#" + own,
		"in angle brackets":        "<https://quotes.example/#" + own + ">",
		"in parentheses":           "(see https://quotes.example/#" + own + ")",
		"the end of a sentence":    "It is at https://quotes.example/#" + own + ". Regards, Ann",
		"quotation marks":          "“https://quotes.example/#" + own + "”",
		"over two lines":           "https://quotes.example/#" + broken,
		"with Windows line breaks": "https://quotes.example/#" + strings.ReplaceAll(broken, "\n", "\r\n") + "\r\n",
		"in a reply":               "> https://quotes.example/#" + strings.ReplaceAll(broken, "\n", "\n> "),
		"a soft break":             "https://quotes.example/#" + strings.ReplaceAll(broken, "\n", "=\n"),
		"a word beneath":           "https://quotes.example/#" + own + "\nRegards\nAnn",
		"written for HTML":         "https://quotes.example/#" + strings.ReplaceAll(own, "&", "&amp;"),
		"a field of a newsletter":  "https://quotes.example/#" + own + "&utm_source=mail",
	} {
		t.Run(name, func(t *testing.T) {
			assert.Equal(t, own, link.Trim(sent))
		})
	}
}

// What is no whole link stays one that is refused, and takes no long work.
func TestTrimMakesNothingSound(t *testing.T) {
	own, err := link.Encode(must(quote.Compute(demo(), typical())))
	require.NoError(t, err)
	for name, sent := range map[string]string{
		"nothing":           "",
		"other words":       "see you tomorrow",
		"the end cut off":   own[:len(own)-7] + "\nRegards",
		"lines without end": "q=" + strings.Repeat("A\n", 30_000),
		"a letter changed":  own[:30] + map[bool]string{true: "B", false: "A"}[own[30] == 'A'] + own[31:],
	} {
		t.Run(name, func(t *testing.T) {
			_, _, err := link.Decode(demo().Cat, link.Trim(sent))
			assert.Error(t, err)
		})
	}
}
