package editions

import (
	"boxwright/config"
)

// SignerChange is what another catalogue says otherwise of somebody who may sign.
type SignerChange struct {
	Signer config.Signer // as it is after, or was where they were taken off
	How    SignerHow
}

// SignerHow is how a line of the roster changed.
type SignerHow string

// The ways.
const (
	SignerAdded      SignerHow = "added"
	SignerRemoved    SignerHow = "removed"
	SignerRevoked    SignerHow = "revoked"
	SignerReinstated SignerHow = "no longer revoked"
	SignerChanged    SignerHow = "changed"
)

// Signers lists how the roster of one catalogue differs from that of another, in the
// order of the second, those taken off last.
func Signers(from, to *config.Catalogue) []SignerChange {
	var out []SignerChange
	for _, s := range to.Signers {
		was := from.SignerOf(s.PublicKey())
		switch {
		case was == nil:
			out = append(out, SignerChange{s, SignerAdded})
		case was.Revoked.IsZero() && !s.Revoked.IsZero():
			out = append(out, SignerChange{s, SignerRevoked})
		case !was.Revoked.IsZero() && s.Revoked.IsZero():
			out = append(out, SignerChange{s, SignerReinstated})
		case !sameLine(was, &s):
			out = append(out, SignerChange{s, SignerChanged})
		}
	}
	for _, s := range from.Signers {
		if to.SignerOf(s.PublicKey()) == nil {
			out = append(out, SignerChange{s, SignerRemoved})
		}
	}
	return out
}

// sameLine reports whether two lines of a roster say the same.
func sameLine(a, b *config.Signer) bool {
	if (a.MaxDiscount == nil) != (b.MaxDiscount == nil) || a.MaxDiscount != nil && *a.MaxDiscount != *b.MaxDiscount {
		return false
	}
	x, y := *a, *b
	x.MaxDiscount, y.MaxDiscount = nil, nil
	return x == y
}
