// Package solve decides clauses and linear limits over true-or-false variables.
//
// It learns from conflicts, keeps what it learned between questions, and takes
// each question as a list of assumptions, so that a person clicking through
// choices is answered from nearly finished work. It knows nothing of vehicles,
// reads no clock and draws no random number: the same calls give the same
// answers everywhere. Work is counted in conflicts and steps, never in seconds.
package solve

// Lit is a variable or its negation: variable v is 2v, its negation 2v+1.
type Lit int32

// Pos is the literal that holds when variable v is true.
func Pos(v int) Lit { return Lit(2 * v) }

// Neg is the literal that holds when variable v is false.
func Neg(v int) Lit { return Lit(2*v + 1) }

// Not is the opposite literal.
func (l Lit) Not() Lit { return l ^ 1 }

// Var is the literal's variable.
func (l Lit) Var() int { return int(l >> 1) }

// Negative reports whether the literal holds when its variable is false.
func (l Lit) Negative() bool { return l&1 == 1 }

// noLit stands where no literal is meant.
const noLit Lit = -1

// Result of a question.
type Result int8

// Unknown means that the conflicts or the steps allowed were used up.
const (
	Unknown Result = iota
	Sat
	Unsat
)

func (r Result) String() string { return [...]string{"unknown", "satisfiable", "unsatisfiable"}[r] }
