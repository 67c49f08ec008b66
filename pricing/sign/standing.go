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
	Left    = "left"     // it is dated within, and the signer may sign no longer: nothing proves the date
	Ahead   = "ahead"    // it is dated after the day on which it is read
	Revoked = "revoked"  // whatever the date: who stole a key writes any date
)

// Judge says how a key stands on the roster for a quote of a date that is read today.
// A zero today is not known, and then the date of the quote alone counts.
func Judge(cat *config.Catalogue, public []byte, dated, today config.Date) Standing {
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
	case today.IsZero():
		return Standing{Known, s}
	case !s.Until.IsZero() && s.Until.Before(today):
		return Standing{Left, s}
	case today.AddDays(1).Before(dated): // a day lies between the ends of the earth
		return Standing{Ahead, s}
	}
	return Standing{Known, s}
}

// Who names the signer; empty when the roster does not know the key.
func (s Standing) Who() string {
	if s.Signer == nil {
		return ""
	}
	return s.Signer.Name + ", " + s.Signer.Role
}

// Words says it to the reader.
func (s Standing) Words() string {
	if s.Signer == nil {
		return "The plant's list of signers does not know the key. Whoever signed may be anybody: ask the seller, " +
			"over a line you trust, to read you the key."
	}
	who := s.Who()
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
	case Left:
		return who + " might sign until " + s.Signer.Until.Long() + ". The quote is dated before that, and nothing " +
			"proves the date: if it did not reach you before that day, ask the seller."
	case Ahead:
		return "The quote is dated after today. Look at the date of this device, or ask the seller."
	}
	return who + ", is an authorized signer of this plant" +
		map[bool]string{true: ".", false: " until " + s.Signer.Until.Long() + "."}[s.Signer.Until.IsZero()]
}
