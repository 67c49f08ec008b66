package link

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"errors"
	"fmt"
	"strings"

	"boxwright/pricing/sign"
)

// parts of a link before its content is looked at.
type parts struct {
	raw       []byte
	key       []byte // nil in an unsigned link
	signature []byte
	content   []byte
}

// sealUp writes a link of a kind.
func sealUp(kind byte, rest []byte) string {
	sum := sha256.Sum256(rest)
	whole := append([]byte{kind}, sum[:checkBytes]...)
	return prefix + base64.RawURLEncoding.EncodeToString(append(whole, rest...))
}

// fragment is the link in a text that may be a whole address and may bring the
// quote before it along.
func fragment(text string) string {
	text, _ = Pair(strings.TrimSpace(text))
	if i := strings.Index(text, "#"); i >= 0 {
		text = text[i+1:]
	}
	return text
}

// was stands between the link of a revision and that of the quote before it. No
// link holds the sign it begins with.
const was = "&was="

// With is the link of a revision that brings the quote before it along, so that
// a reader who never had that one sees what changed. Nothing vouches for the
// second link but its name in the first; see Name.
func With(text, before string) string {
	if before == "" {
		return text
	}
	return text + was + strings.TrimPrefix(before, prefix)
}

// Pair parts the link of a revision from that of the quote before it, which is
// empty where the text brings none along, or one too long to be a link.
func Pair(text string) (own, before string) {
	own, before, _ = strings.Cut(text, was)
	if before == "" || len(before) > MaxText {
		return own, ""
	}
	return own, prefix + before
}

// unwrap checks size, form, check and signature of a link. The error is an
// *Error.
func unwrap(text string) (*parts, error) {
	text = fragment(text)
	if len(text) > MaxText {
		return nil, &Error{Code: TooLong, Text: fmt.Sprintf("The link has %d characters; the most that is read is %d. It was not opened.", len(text), MaxText)}
	}
	body, ok := strings.CutPrefix(text, prefix)
	raw, err := base64.RawURLEncoding.Strict().DecodeString(body)
	if !ok || err != nil || len(raw) <= unsignedHead+hashBytes || strings.ContainsAny(body, "\r\n") {
		return nil, &Error{Code: Malformed, Text: "This is not a whole quote link: it should begin with q= and hold only letters, digits, - and _. Copy it again from the sender; a mail program may have broken it over two lines."}
	}
	if raw[0] != unsigned && raw[0] != signed {
		return nil, &Error{Code: NewerVersion, Text: fmt.Sprintf("The link is of kind %d, which this page does not read. Use a newer copy of the page.", raw[0])}
	}
	p := &parts{raw: raw, content: raw[unsignedHead:]}
	if sum := sha256.Sum256(p.content); !bytes.Equal(sum[:checkBytes], raw[1:unsignedHead]) {
		return nil, &Error{Code: Altered, Text: "The link was changed or cut short on its way: its check does not agree. Ask for it again."}
	}
	if raw[0] == unsigned {
		return p, nil
	}
	if len(p.content) <= signatureHead+hashBytes {
		return nil, &Error{Code: Malformed, Text: "The link says that it is signed and is too short to be. Ask for it again."}
	}
	p.key, p.signature, p.content = p.content[:sign.KeyBytes], p.content[sign.KeyBytes:signatureHead], p.content[signatureHead:]
	if !sign.Check(p.key, p.content, p.signature) {
		return nil, &Error{Code: Altered, Text: "The link was altered after it was signed, or signed by nobody: the signature does not agree with what it says. It was not opened. Ask the seller for it again."}
	}
	return p, nil
}

// Sign puts a key's signature under an unsigned link.
func Sign(text string, key *sign.Key) (string, error) {
	p, err := unwrap(text)
	if err != nil {
		return "", err
	}
	if p.key != nil {
		return "", errors.New("the link is signed already")
	}
	rest := append(bytes.Clone(key.Public()), key.Sign(p.content)...)
	return sealUp(signed, append(rest, p.content...)), nil
}

// Signer is the public key under a link that nobody altered since; nil when the
// link is not signed. The error is an *Error.
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
