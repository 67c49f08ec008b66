package session

import (
	"boxwright/config"
	"boxwright/pricing"
)

// Heard is what was last read out of the quote, so that after a press only what it changed
// is. It travels with the view, as nothing stays in the core.
type Heard struct {
	Place   string            `json:"place,omitempty"` // the area, or what it answered last
	Area    string            `json:"area,omitempty"`
	Broken  map[string]string `json:"broken,omitempty"` // what must be fixed, in its words
	Checks  []string          `json:"checks,omitempty"` // what is to be checked
	Total   pricing.Amount    `json:"total"`
	Payload string            `json:"payload,omitempty"`
	Likely  config.Date       `json:"likely"`
}
