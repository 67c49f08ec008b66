package pricing

import "slices"

// part is one of the three prices a unit is made of.
type part int

const (
	chassisPart part = iota
	bodyPart
	optionPart
	partCount
)

var partsOf = map[Scope][]part{
	OnChassis: {chassisPart},
	OnBody:    {bodyPart},
	OnOptions: {optionPart},
	OnBuild:   {bodyPart, optionPart},
	OnUnit:    {chassisPart, bodyPart, optionPart},
}

// covers reports whether the scope holds the part.
func (s Scope) covers(p part) bool { return slices.Contains(partsOf[s], p) }

// overlap reports whether two scopes share a part.
func overlap(s, t Scope) bool {
	return slices.ContainsFunc(partsOf[s], t.covers)
}

// Words names the scope in a sentence.
func (s Scope) Words() string {
	switch s {
	case OnChassis:
		return "the chassis"
	case OnBody:
		return "the body"
	case OnOptions:
		return "the options"
	case OnBuild:
		return "body and options"
	}
	return "the unit"
}
