package quote

// MaxRequirements is the most lines of a buyer's list.
const (
	MaxRequirements = 200
	MaxNo           = 60
)

// Outcome of a requirement.
type Outcome string

// The outcomes.
const (
	Meets     Outcome = "meets"
	MeetsWith Outcome = "meets with"
	Excepted  Outcome = "exception"
	ByHand    Outcome = "answer by hand"
)

// Requirement is one line of the buyer's list, and what the seller made of it.
type Requirement struct {
	No      string  `json:"no,omitempty"` // as the buyer counts
	Text    string  `json:"text"`
	Pick    string  `json:"pick,omitempty"`    // id of what it asks for, as confirmed; NoPick where nothing offered is
	Verdict Outcome `json:"verdict,omitempty"` // by hand: Meets or Excepted
	Answer  string  `json:"answer,omitempty"`  // by hand, in words
}

// NoPick says that a line asks for nothing the catalogue lists.
const NoPick = "-"
