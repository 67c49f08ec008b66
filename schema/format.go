package main

import (
	"encoding/json"
	"regexp"

	"boxwright/config"
)

// opened are the places of a catalogue that stand over several lines in the
// house's form, so that a change shows as the line of what changed: an option,
// a rule, a price, a figure of a chassis.
var opened = regexp.MustCompile(`^(` +
	`|guide|guide\.steps|chapters|groups|options|rules|duties|equipment|traits|asked` +
	`|(chassis|bodies)(\[\])?|bodies\[\]\.compartments` +
	`|plant|plant\.(activities|stations|shutdowns|slots)` +
	`|price_book|price_book\.(notes|prices|surcharges|credits|contracts|prepayments|fees|bond|milestones)` +
	`|price_book\.editions(\[\](\.prices)?)?` +
	`)$`)

// Format writes a catalogue file in the house's form. Order, numbers and texts
// stay as they are, and so does the edition's content hash. It does not judge
// the catalogue, but refuses what is not JSON and a field that stands twice.
func Format(file []byte) ([]byte, error) {
	if len(file) > config.MaxCatalogueBytes {
		_, err := config.Read(file)
		return nil, err
	}
	var value json.RawMessage
	if p := config.DecodeStrict(file, &value); p != nil {
		return nil, config.Problems{*p}
	}
	return layout(file, opened.MatchString)
}
