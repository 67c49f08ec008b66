package session

import "boxwright/config/weight"

// Lesson is a scale ticket of another quote that could count in this one.
type Lesson struct {
	ID     string
	Ticket weight.Ticket
}
