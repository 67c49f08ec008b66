package link

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"slices"
	"strings"
)

// Bounds of looking for a link in a message.
const (
	mostMessage = 4 * MaxText // bytes
	mostLines   = 100         // over which a link is looked for
)

// linkLetters are those of a link with its fields.
const linkLetters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_=&"

// Trim takes a link out of what a message has left around it: words before and after,
// brackets and quotation marks, line breaks with the marks of a reply, and fields that
// a mail program has added. Where no whole link is found, it is what begins like one.
func Trim(text string) string {
	if len(text) > mostMessage {
		return text
	}
	text = strings.NewReplacer("&amp;", "&", "%3D", "=", "%3d", "=", "%26", "&", "\r", "").Replace(text)
	at := strings.Index(text, "#"+prefix) + 1
	if at == 0 {
		at = strings.Index(text, prefix)
	}
	if at < 0 {
		return strings.TrimSpace(text)
	}
	joined, found := "", ""
	for i, line := range strings.SplitN(text[at:], "\n", mostLines) {
		if i > 0 {
			joined, line = strings.TrimSuffix(joined, "="), strings.TrimLeft(line, "> \t")
		}
		line = strings.TrimRight(line, " \t")
		rest := strings.TrimLeft(line, linkLetters)
		joined += strings.TrimSuffix(line, rest)
		link := withoutStrange(joined)
		if whole(link) || found == "" && i == 0 {
			found = link
		}
		if rest != "" {
			break
		}
	}
	return found
}

// withoutStrange leaves out the fields that are none of a link.
func withoutStrange(text string) string {
	fields := slices.DeleteFunc(strings.Split(text, "&"), func(field string) bool {
		return !strings.HasPrefix(field, prefix) && !strings.HasPrefix(field, coverField) &&
			!strings.HasPrefix(field, wasField)
	})
	return strings.Join(fields, "&")
}

// whole reports whether nothing of a link and its fields is missing, so far as can be
// seen without its signature.
func whole(text string) bool {
	s := split(text)
	if s.bad || !checked(s.own) || s.before != "" && !checked(prefix+s.before) {
		return false
	}
	_, err := readCover(s.cover)
	return s.cover == "" || err == nil
}

// checked reports whether a link agrees with its check.
func checked(text string) bool {
	body, _ := strings.CutPrefix(text, prefix)
	raw, err := base64.RawURLEncoding.Strict().DecodeString(body)
	if err != nil || len(raw) <= unsignedHead || len(text) > MaxText {
		return false
	}
	sum := sha256.Sum256(raw[unsignedHead:])
	return bytes.Equal(sum[:checkBytes], raw[1:unsignedHead])
}
