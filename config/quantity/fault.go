package quantity

import "strings"

// Fault says why a text cannot be taken as a quantity. Says is a whole sentence
// for the person who typed it, with what to write instead.
type Fault struct {
	Code string // one of the codes below
	Text string // what was typed, at most 60 letters of it
	Says string
}

// The codes of a Fault.
const (
	NoNumber  = "no-number"  // nothing there, or no number
	TwoWays   = "two-ways"   // a comma or a point that may separate thousands or decimals
	TwoValues = "two-values" // a span, or words and digits that differ
	NoUnit    = "no-unit"    // the word after the number is no unit known here
	OtherKind = "other-kind" // a length where a weight is asked for
	NotWhole  = "not-whole"  // part of a seat
	OutOfSpan = "out-of-span"
)

func (f *Fault) Error() string { return f.Says }

// faultIn makes a fault whose sentence begins with what was typed.
func faultIn(code, text, says string) *Fault {
	text = strings.TrimSpace(text)
	if r := []rune(text); len(r) > 60 {
		text = string(r[:59]) + "…"
	}
	return &Fault{code, text, "“" + text + "”" + says}
}
