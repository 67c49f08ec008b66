package rules

import "boxwright/config"

// IDs are those of all chassis, bodies and options, as the states of an answer follow each other.
func (e *Engine) IDs() []string { return e.ids }

// Answer is AnswerWithin with the usual budget.
func (e *Engine) Answer(u *config.Unit, limits *Limits) Answer {
	return e.AnswerWithin(u, limits, e.Budget)
}

// Why is WhyWithin, however long it takes.
func (e *Engine) Why(u *config.Unit, limits *Limits, id string) []Reason {
	reasons, _ := e.WhyWithin(u, limits, id, 0)
	return reasons
}

// Mend is MendWithin, however long it takes.
func (e *Engine) Mend(u *config.Unit, limits *Limits, id string, weigh func(id string) int64) []Mend {
	mends, _ := e.MendWithin(u, limits, id, weigh, 0)
	return mends
}
