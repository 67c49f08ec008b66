package sign

import "boxwright/config"

// Standing is what a roster says about the key under a quote.
type Standing struct {
	Code   string
	Signer *config.Signer // nil when the roster does not know the key
}

// Codes of Standing.
const (
	Known   = "known"
	Unknown = "unknown"
	TooSoon = "too-soon" // the quote is dated before the signer might sign
	Ended   = "ended"    // or after
	Revoked = "revoked"  // whatever the date: who stole a key writes any date
)

// Judge says how a key stands on the roster for a quote of a date.
func Judge(cat *config.Catalogue, public []byte, dated config.Date) Standing {
	s := cat.SignerOf(public)
	switch {
	case s == nil:
		return Standing{Code: Unknown}
	case !s.Revoked.IsZero():
		return Standing{Revoked, s}
	case dated.Before(s.From):
		return Standing{TooSoon, s}
	case !s.Until.IsZero() && s.Until.Before(dated):
		return Standing{Ended, s}
	}
	return Standing{Known, s}
}

// Words says it to the reader.
func (s Standing) Words() string {
	if s.Signer == nil {
		return "The roster of this catalogue does not know the key. Whoever signed may be anybody: ask the seller, " +
			"over a line you trust, to read you the key."
	}
	who := s.Signer.Name + ", " + s.Signer.Role
	switch s.Code {
	case Revoked:
		return "The key of " + who + " was revoked on " + s.Signer.Revoked.Long() +
			". The quote may be somebody else's: ask the seller for a new one."
	case TooSoon:
		return "The quote is dated before " + s.Signer.From.Long() + ", the first day on which " + who +
			" might sign. Ask the seller."
	case Ended:
		return "The quote is dated after " + s.Signer.Until.Long() + ", the last day on which " + who +
			" might sign. Ask the seller."
	}
	return who + ", stands on the roster of this catalogue" +
		map[bool]string{true: ".", false: " until " + s.Signer.Until.Long() + "."}[s.Signer.Until.IsZero()]
}
