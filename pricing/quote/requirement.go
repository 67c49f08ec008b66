package quote

// Bounds of a purchaser's list.
const (
	MaxRequirements     = 1000
	MaxNo               = 60
	MaxRequirementText  = 2000
	maxRequirementBytes = 200 << 10 // of all that is typed or said of the lines, together
)

// Outcome of a requirement.
type Outcome string

// The outcomes.
const (
	Meets      Outcome = "meets"
	MeetsWith  Outcome = "meets with" // when something is put into the unit
	Excepted   Outcome = "exception"
	Clarify    Outcome = "clarification"
	Unanswered Outcome = ""
)

// Words are an outcome as a purchasing department prints it.
func (o Outcome) Words() string {
	switch o {
	case Meets:
		return "Comply"
	case MeetsWith:
		return "Comply with"
	case Excepted:
		return "Exception"
	case Clarify:
		return "Clarification"
	}
	return "Not answered yet"
}

// Requirement is one line of the purchaser's list, and what the seller made of it.
type Requirement struct {
	No   string `json:"no,omitempty"`   // as the purchaser counts
	Text string `json:"text"`           // as the purchaser wrote it
	Head bool   `json:"head,omitempty"` // a heading, which asks for nothing
	Row  int    `json:"row,omitempty"`  // of the purchaser's spreadsheet, from one
	// what it asks for, as a person said: id of an option, "term:" and a term's id, or NoPick
	Pick    string  `json:"pick,omitempty"`
	Verdict Outcome `json:"verdict,omitempty"`
	Answer  string  `json:"answer,omitempty"` // in words, by a person
	Meant   string  `json:"meant,omitempty"`  // what it asks for, as a person put it; read in place of the text
}

// NoPick says that a line asks for nothing the catalogue lists.
const NoPick = "-"
