package link

import (
	"cmp"
	"encoding/base64"
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"

	"boxwright/pricing/quote"
)

// MaxCover is the most characters of a cover, the two line breaks included. The
// longest title, price and date together come to as much.
const MaxCover = maxTitle + 1 + maxPrice + 1 + len("2027-06-21")

const (
	maxTitle = 44
	maxPrice = 24
)

// coverParts name the lines of a cover, in their order.
var coverParts = [...]string{"title", "price", "likely date"}

// Cover is the cover of a link that carries this draft and these figures: title,
// price and likely date, one to a line. It belongs to content version 2 for good,
// since a link whose cover differs from it is refused.
func Cover(d *quote.Draft, f *Frozen) string {
	return strings.Join([]string{
		shorten(cmp.Or(printable(d.Title), f.Chassis), maxTitle),
		shorten(f.Total, maxPrice),
		f.Even.String(),
	}, "\n")
}

// WithCover adds a cover to a link that has none.
func WithCover(text, cover string) string {
	return text + "&" + coverField + base64.RawURLEncoding.EncodeToString([]byte(cover))
}

// printable replaces what is no printable character by a space, and several
// spaces by one. Control characters and those that turn the direction of a line
// are not printable.
func printable(text string) string {
	return strings.Join(strings.FieldsFunc(text, func(r rune) bool {
		return r == ' ' || r == utf8.RuneError || !strconv.IsPrint(r)
	}), " ")
}

// shorten makes a text printable and cuts it to so many characters, of which the
// last then is an ellipsis.
func shorten(text string, most int) string {
	text = printable(text)
	runes := []rune(text)
	if len(runes) <= most {
		return text
	}
	return strings.TrimSpace(string(runes[:most-1])) + "…"
}

// readCover decodes the cover field of a link.
func readCover(field string) (string, error) {
	unreadable := &Error{Code: BadCover, Text: "The end of this link is missing or was changed, as happens " +
		"when a message breaks a long link in two. It was not opened. Copy the whole link from the message, from " +
		"https to its end, or ask the sender for it again."}
	if len(field) > base64.RawURLEncoding.EncodedLen(utf8.UTFMax*MaxCover) {
		return "", unreadable
	}
	raw, err := base64.RawURLEncoding.Strict().DecodeString(field)
	cover := string(raw)
	lines := strings.Split(cover, "\n")
	if err != nil || strings.ContainsAny(field, "\r\n") || utf8.RuneCountInString(cover) > MaxCover ||
		len(lines) != len(coverParts) {
		return "", unreadable
	}
	for _, line := range lines {
		if printable(line) != line {
			return "", unreadable
		}
	}
	return cover, nil
}

// checkCover compares the cover field of a link with what the link holds. A link
// without a cover is as good as one that has it.
func checkCover(field string, d *quote.Draft, f *Frozen) error {
	if field == "" {
		return nil
	}
	cover, err := readCover(field)
	if err != nil {
		return err
	}
	says, holds := strings.Split(cover, "\n"), strings.Split(Cover(d, f), "\n")
	for i, part := range coverParts {
		if says[i] != holds[i] {
			return &Error{Code: BadCover,
				Text: fmt.Sprintf("The cover of the link says %q as its %s, the quote in it %q: somebody changed it. "+
					"The link was not opened. Ask the sender for it again.", says[i], part, holds[i])}
		}
	}
	return nil
}
