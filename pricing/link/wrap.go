package link

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"encoding/hex"
	"errors"
	"fmt"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/pricing/sign"
)

// parts of a link before its content is looked at.
type parts struct {
	raw       []byte
	cover     string // the field as it stands
	key       []byte // nil in an unsigned link
	signature []byte
	content   []byte // the edition's hash first
	hash      []byte // as much of it as the link holds
}

// bound is what a signature is made under.
func (p *parts) bound() []byte {
	if len(p.hash) == wholeBytes {
		return append([]byte("edition\n"), p.content...)
	}
	return p.content
}

// sealUp writes a link of a kind.
func sealUp(kind byte, rest []byte) string {
	sum := sha256.Sum256(rest)
	whole := append([]byte{kind}, sum[:checkBytes]...)
	return prefix + base64.RawURLEncoding.EncodeToString(append(whole, rest...))
}

// Fields that may follow the link itself, each at most once.
const (
	coverField = "cover="
	wasField   = "was="
)

// sent is a link as it was sent, before anything of it is decoded.
type sent struct {
	own, cover, before string // before without its "q="
	bad                bool   // a field is unknown, empty or stands twice
}

// split parts the fields of a text that may be a whole address.
func split(text string) (s sent) {
	text = strings.TrimSpace(text)
	if i := strings.Index(text, "#"); i >= 0 {
		text = text[i+1:]
	}
	fields := strings.Split(text, "&")
	s.own = fields[0]
	for _, field := range fields[1:] {
		if cover, ok := strings.CutPrefix(field, coverField); ok && cover != "" && s.cover == "" {
			s.cover = cover
		} else if before, ok := strings.CutPrefix(field, wasField); ok && before != "" && s.before == "" {
			s.before = before
		} else {
			s.bad = true
		}
	}
	return s
}

// With is the link of a revision that brings the quote before it along, so that
// a reader who never had that one sees what changed. Nothing vouches for the
// second link but its name in the first; see Name.
func With(text, before string) string {
	if before == "" {
		return text
	}
	return text + "&" + wasField + strings.TrimPrefix(before, prefix)
}

// Split takes a link as it was sent apart: the link itself, what its cover says,
// and the link of the quote before it. The last two are empty where there are
// none or where they cannot be read. The cover is not checked; see Decode.
func Split(text string) (own, cover, before string) {
	s := split(text)
	if s.before != "" && len(s.before) <= MaxText {
		before = prefix + s.before
	}
	if cover, err := readCover(s.cover); err == nil {
		return s.own, cover, before
	}
	return s.own, "", before
}

// unwrap checks size, form, check and signature of a link. The error is an
// *Error.
func unwrap(text string) (*parts, error) {
	s := split(text)
	text = s.own
	if len(text) > MaxText {
		return nil, &Error{Code: TooLong,
			Text: fmt.Sprintf("The link has %d characters; the most that is read is %d. It was not opened.", len(text),
				MaxText)}
	}
	body, ok := strings.CutPrefix(text, prefix)
	raw, err := base64.RawURLEncoding.Strict().DecodeString(body)
	if s.bad || !ok || err != nil || len(raw) <= unsignedHead+hashBytes || strings.ContainsAny(body, "\r\n") {
		return nil, &Error{Code: Malformed, Text: "This link is not a whole quote: part of it is missing, or was " +
			"broken over two lines by a mail program. Copy the whole link from the message, from https to its end, or " +
			"ask the sender for it again."}
	}
	if raw[0] == unsigned1 || raw[0] == signed1 {
		return nil, &Error{Code: OlderVersion, Text: "The link was made by an older copy of the page, in a form that " +
			"is no longer read. Ask the sender for a new link."}
	}
	if raw[0] != unsigned && raw[0] != signed8 && raw[0] != signed {
		return nil, &Error{Code: NewerVersion,
			Text: fmt.Sprintf("The link is of kind %d, which this page does not read. Use a newer copy of the page.",
				raw[0])}
	}
	p := &parts{raw: raw, cover: s.cover, content: raw[unsignedHead:]}
	if sum := sha256.Sum256(p.content); !bytes.Equal(sum[:checkBytes], raw[1:unsignedHead]) {
		return nil, &Error{Code: Altered, Text: "This link was changed or cut short on its way: what arrived is not " +
			"what was sent. Copy the whole link from the message, from https to its end, or ask the sender for it again."}
	}
	if raw[0] == unsigned {
		p.hash = p.content[:hashBytes]
		return p, nil
	}
	hash := hashBytes
	if raw[0] == signed {
		hash = wholeBytes
	}
	if len(p.content) <= signatureHead+hash {
		return nil, &Error{Code: Malformed, Text: "The end of this link is missing: it says that it is signed, and is " +
			"too short to be. Copy the whole link from the message, or ask the sender for it again."}
	}
	p.key, p.signature, p.content = p.content[:sign.KeyBytes], p.content[sign.KeyBytes:signatureHead],
		p.content[signatureHead:]
	p.hash = p.content[:hash]
	if !sign.Check(p.key, p.bound(), p.signature) {
		return nil, &Error{Code: Altered, Text: "The link was altered after it was signed, or signed by nobody: the " +
			"signature does not agree with what it says. It was not opened. Ask the seller for it again."}
	}
	return p, nil
}

// Sign puts a key's signature under an unsigned link of an edition.
func Sign(text string, cat *config.Catalogue, key *sign.Key) (string, error) {
	p, err := unwrap(text)
	if err != nil {
		return "", err
	}
	if p.key != nil {
		return "", errors.New("the link is signed already")
	}
	whole, err := hex.DecodeString(cat.Hash())
	if err != nil || !bytes.HasPrefix(whole, p.hash) {
		return "", errors.New("the link is not of this edition")
	}
	s := parts{content: slices.Concat(whole, p.content[hashBytes:]), hash: whole}
	return sealUp(signed, slices.Concat(key.Public(), key.Sign(s.bound()), s.content)), nil
}

// BindsWhole reports whether a link binds the whole hash of its edition and not its
// first 8 bytes alone.
func BindsWhole(text string) bool {
	p, err := unwrap(text)
	return err == nil && len(p.hash) == wholeBytes
}

// Signer returns the public key that signed a link whose signature is sound; nil
// when the link is not signed. The error is an *Error.
func Signer(text string) ([]byte, error) {
	p, err := unwrap(text)
	if err != nil {
		return nil, err
	}
	return p.key, nil
}

// Name is what a later revision calls a link: 16 bytes of its SHA-256, so that
// nobody can put another quote in its place. It is empty for what is no link.
func Name(text string) string {
	p, err := unwrap(text)
	if err != nil {
		return ""
	}
	sum := sha256.Sum256(p.raw)
	return base64.RawURLEncoding.EncodeToString(sum[:nameBytes])
}
