// Package sign puts a person's name under a quote's bytes and tells later
// whether it still stands there: Ed25519 with a key that is kept sealed by a
// passphrase, judged by the roster of a catalogue.
//
// The signature is made and checked in Go and not by the browser's own
// crypto.subtle, after measuring: it costs 52 KB of gzip in the page, of which
// checking alone is 39. For that the answer is there at once and not in a
// promise, it is the same in a test on the host, in Node and in the page, and it
// does not depend on a browser new enough or on a page served securely.
package sign

import (
	"crypto/ed25519"
	"encoding/base64"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"strings"

	"boxwright/config"
	"boxwright/pricing/seal"
)

// Sizes of what a signature adds to a text.
const (
	KeyBytes       = ed25519.PublicKeySize
	SignatureBytes = ed25519.SignatureSize
)

// domain keeps a signature of ours from being taken for one of anything else.
const domain = "boxwright quote signature 1\n"

// purpose binds a sealed key to what it is.
const purpose = "signing key"

// KeyFormat is the value of the format field of a key file.
const KeyFormat = "boxwright-key/1"

// ErrKey is the error of a file that holds no signing key.
var ErrKey = errors.New("this is not a signing key: it should be a file that was saved from here")

// Key signs. Whoever holds it can sign in its owner's name.
type Key struct{ private ed25519.PrivateKey }

// keyFile is a key before it is sealed. Notice says what it is, to somebody who
// finds it.
type keyFile struct {
	Format string `json:"format"`
	Notice string `json:"notice,omitempty"`
	Seed   string `json:"seed"` // 32 bytes, base64url
}

// New makes a key of 32 random bytes: in the page, the browser's own.
func New(random io.Reader) (*Key, error) {
	seed := make([]byte, ed25519.SeedSize)
	if _, err := io.ReadFull(random, seed); err != nil {
		return nil, fmt.Errorf("no randomness for a key: %w", err)
	}
	return &Key{ed25519.NewKeyFromSeed(seed)}, nil
}

// Read takes a key from its file before sealing.
func Read(file []byte) (*Key, error) {
	var f keyFile
	if len(file) > 4096 || config.DecodeStrict(file, &f) != nil || f.Format != KeyFormat {
		return nil, ErrKey
	}
	seed, err := base64.RawURLEncoding.Strict().DecodeString(f.Seed)
	if err != nil || len(seed) != ed25519.SeedSize {
		return nil, ErrKey
	}
	return &Key{ed25519.NewKeyFromSeed(seed)}, nil
}

// Open takes a key from its sealed file. It works about a second, also on a
// wrong passphrase.
func Open(sealed []byte, passphrase string) (*Key, error) {
	file, err := seal.Open(purpose, passphrase, sealed)
	if err != nil {
		return nil, err
	}
	return Read(file)
}

// Seal is the key's file behind a passphrase. Random gives 28 bytes.
func (k *Key) Seal(random io.Reader, passphrase string) ([]byte, error) {
	file := `{"format":"` + KeyFormat + `","seed":"` + base64.RawURLEncoding.EncodeToString(k.private.Seed()) + `"}`
	return seal.Seal(random, purpose, passphrase, []byte(file))
}

// Public is the key that a roster lists.
func (k *Key) Public() []byte { return k.private.Public().(ed25519.PublicKey) }

// Sign is the signature under a message: the same for the same message.
func (k *Key) Sign(message []byte) []byte {
	return ed25519.Sign(k.private, append([]byte(domain), message...))
}

// Check reports whether the signature under the message is the key's, and not a
// byte of it was changed.
func Check(public, message, signature []byte) bool {
	return len(public) == KeyBytes && !weak(public) && ed25519.Verify(public, append([]byte(domain), message...),
		signature)
}

// Text writes a public key the way a roster does.
func Text(public []byte) string { return base64.RawURLEncoding.EncodeToString(public) }

// PublicKey reads what Text wrote; nil where it is no key.
func PublicKey(text string) []byte {
	raw, err := base64.RawURLEncoding.DecodeString(text)
	if err != nil || len(raw) != KeyBytes {
		return nil
	}
	return raw
}

// Short is what two people read to each other to compare a key.
func Short(public []byte) string {
	digits := hex.EncodeToString(public[:min(len(public), 8)])
	var groups []string
	for len(digits) >= 4 {
		groups, digits = append(groups, digits[:4]), digits[4:]
	}
	return strings.Join(groups, " ")
}
