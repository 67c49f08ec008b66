package session

// Saved is a quote kept in the browser.
type Saved struct {
	ID   string `json:"id"`
	Name string `json:"name"`
	Line string `json:"line"`
	When string `json:"when"`
	Here bool   `json:"here"` // the one being worked on

	Number string `json:"number,omitempty"` // of a signed quote
	Rev    int    `json:"rev,omitempty"`    // of a signed quote
}

// Moment is an earlier or a later state of the quote in work.
type Moment struct {
	N    int    `json:"n"`
	Said string `json:"said"`
	When string `json:"when"`
	Here bool   `json:"here"`
}
