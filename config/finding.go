package config

import "math"

// Severity of a finding.
type Severity string

// Stop forbids the quote to be issued as it stands, Warn asks for a decision,
// Note is for information.
const (
	Stop Severity = "stop"
	Warn Severity = "warn"
	Note Severity = "note"
)

// Rank orders severities, the graver the higher. A note leaves all in order, as no finding does.
func (s Severity) Rank() int {
	switch s {
	case Stop:
		return 2
	case Warn:
		return 1
	}
	return 0
}

// Basis says how well a limit is known.
type Basis string

// The bases, from firm to soft. A limit that rests on memory is shown as an
// editable default and never stops a unit.
const (
	ReadInText     Basis = "read from the text"
	Rating         Basis = "rating of the part"
	Computed       Basis = "computed"
	FromMemory     Basis = "from memory"
	CommonPractice Basis = "common practice, no source"
	Purchaser      Basis = "set by the purchaser"
)

// Known is a source with how well it is known. Of a rating the source says enough.
func (b Basis) Known(source string) string {
	switch {
	case source == "":
		return string(b)
	case b == "" || b == Rating:
		return source
	}
	return source + "; " + string(b)
}

// Severity of a limit that is not kept: a rating or a text that was read stops, one from
// memory is a note, and anything between asks for a decision.
func (b Basis) Severity() Severity {
	switch b {
	case Rating, ReadInText:
		return Stop
	case FromMemory:
		return Note
	}
	return Warn
}

// Figure is a number a user decides by: value, limit, margin and likely range,
// all in Unit (a name of package quantity). Margin is positive when the limit
// is kept, whichever way the limit points.
type Figure struct {
	Code   string  `json:"code"`  // stable, such as "weight.front-axle"
	Label  string  `json:"label"` // for readers
	Value  float64 `json:"value"`
	Low    float64 `json:"low"` // likely range, Low <= Value <= High
	High   float64 `json:"high"`
	Limit  float64 `json:"limit,omitempty"`
	Sense  Sense   `json:"sense,omitempty"` // how Limit binds; empty when there is none
	Unit   string  `json:"unit"`
	Source string  `json:"source,omitempty"` // where the limit is written
	Basis  Basis   `json:"basis,omitempty"`
	Chance float64 `json:"chance,omitempty"` // that the limit is exceeded, 0 to 1
	// Assumed names the part that decides the value and whose size the catalogue only assumes.
	Assumed string `json:"assumed,omitempty"`
	// Noted says that missing the limit is worth knowing and no fault.
	Noted bool `json:"noted,omitempty"`
}

// Sense says which side of a limit is good.
type Sense string

// AtMost and AtLeast.
const (
	AtMost  Sense = "at most"
	AtLeast Sense = "at least"
)

// Margin to the limit, in the figure's unit; positive when kept. Without a
// limit, or where value or limit is no number to 1e15, it is zero.
func (f Figure) Margin() float64 {
	if !f.known() {
		return 0
	}
	switch f.Sense {
	case AtMost:
		return f.Limit - f.Value
	case AtLeast:
		return f.Value - f.Limit
	}
	return 0
}

// Met reports whether the limit is kept; a figure without one is met, one that is no
// number never meets its limit.
func (f Figure) Met() bool { return f.Sense == "" || f.known() && f.Margin() >= 0 }

func (f Figure) known() bool { return math.Abs(f.Value) <= 1e15 && math.Abs(f.Limit) <= 1e15 }

// Finding is something a check has to say: a stable code, where, the numbers,
// and what would help.
type Finding struct {
	Code     string   `json:"code"`
	Severity Severity `json:"severity"`
	Where    string   `json:"where"`            // area or thing concerned, for readers
	Text     string   `json:"text"`             // one plain sentence
	Figure   *Figure  `json:"figure,omitempty"` // value, limit, margin
	Clause   string   `json:"clause,omitempty"` // clause or rule id
	Basis    Basis    `json:"basis,omitempty"`
	Remedy   string   `json:"remedy,omitempty"` // what to do, in words
	Picks    []string `json:"picks,omitempty"`  // options concerned, or to take
}

// Report is what a calculator hands back.
type Report struct {
	Figures  []Figure  `json:"figures"`
	Findings []Finding `json:"findings"`
}

// Figure finds one by code; the zero Figure and false when it is not there.
func (r *Report) Figure(code string) (Figure, bool) {
	for _, f := range r.Figures {
		if f.Code == code {
			return f, true
		}
	}
	return Figure{}, false
}
