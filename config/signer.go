package config

import (
	"crypto/sha256"
	"encoding/base64"
	"encoding/hex"
	"encoding/json"
	"fmt"
)

// Signer is one line of the roster: a person who may sign quotes, and the key
// they sign with.
type Signer struct {
	Name string `json:"name"`
	Role string `json:"role"`
	Key  string `json:"key"` // Ed25519 public key, base64url without padding: 43 characters

	From    Date `json:"from"`             // first day of quotes they may sign
	Until   Date `json:"until,omitzero"`   // last day; zero: no end is set
	Revoked Date `json:"revoked,omitzero"` // day on which the key was declared lost or misused; zero: never

	// MaxDiscount is the largest agreed discount, in percent, that they may sign; nil
	// sets no limit. Buyers can read it.
	MaxDiscount *float64 `json:"max_discount_percent,omitempty"`
}

// PlantSignature is what a plant puts under its catalogue.
type PlantSignature struct {
	Key       string `json:"key"`       // Ed25519 public key, as a signer's
	Signature string `json:"signature"` // 64 bytes, base64url without padding
}

const (
	maxSigners = 500
	keyBytes   = 32
)

// PublicKey is the key's bytes; nil when it is not a key.
func (s *Signer) PublicKey() []byte {
	raw, err := base64.RawURLEncoding.Strict().DecodeString(s.Key)
	if err != nil || len(raw) != keyBytes {
		return nil
	}
	return raw
}

// SignerOf returns the roster's line for a public key, or nil.
func (c *Catalogue) SignerOf(key []byte) *Signer {
	text := base64.RawURLEncoding.EncodeToString(key)
	for i := range c.Signers {
		if c.Signers[i].Key == text {
			return &c.Signers[i]
		}
	}
	return nil
}

// RosterHash names the roster by its content, as Hash does the rest of the catalogue:
// the SHA-256 over the canonical JSON of its lines and its day, in hex.
func (c *Catalogue) RosterHash() string {
	canonical, err := json.Marshal(struct {
		On      Date
		Signers []Signer
	}{c.SignersOn, c.Signers})
	if err != nil {
		return "" // a number that is not finite was refused when the file was read
	}
	sum := sha256.Sum256(canonical)
	return hex.EncodeToString(sum[:])
}

// KeepRevoked revokes here the keys that another catalogue's roster has revoked: a key
// that is known to be stolen does not become good by an older list.
func (c *Catalogue) KeepRevoked(known *Catalogue) {
	for i := range c.Signers {
		s := &c.Signers[i]
		if other := known.SignerOf(s.PublicKey()); other != nil && s.Revoked.IsZero() {
			s.Revoked = other.Revoked
		}
	}
}

// signers checks the roster.
func (k *checker) signers() {
	if len(k.c.Signers) > maxSigners {
		k.add("too-large", "signers", "has %d lines; the most is %d", len(k.c.Signers), maxSigners)
		return
	}
	keys := map[string]bool{}
	for i := range k.c.Signers {
		s := &k.c.Signers[i]
		where := fmt.Sprintf("signers[%d] %q", i, s.Name)
		if s.Name == "" || s.Role == "" {
			k.add("missing", where, "a signer has a name and a role")
		}
		if s.PublicKey() == nil {
			k.add("value", where+" key", "an Ed25519 public key is 43 characters of base64url, for 32 bytes")
		} else if keys[s.Key] {
			k.add("id", where+" key", "this key stands twice on the roster")
		}
		keys[s.Key] = true
		if s.From.IsZero() {
			k.add("missing", where+" from", "a signer has a first day")
		}
		if m := s.MaxDiscount; m != nil && !(*m >= 0 && *m <= 100) {
			k.add("range", where+" max_discount_percent", "%g is no discount of 0 to 100 percent", *m)
		}
		if !s.Until.IsZero() && s.Until.Before(s.From) {
			k.add("range", where+" until", "%s is before the first day, %s", s.Until, s.From)
		}
	}
}
