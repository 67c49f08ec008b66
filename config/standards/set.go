// Package standards holds the rule sets a unit can be judged by: dated clause
// tables as data, with the source of every number and how well it is known. It
// hands the calculators their limits and judges a unit clause by clause.
//
// Only a number that was read in its text is ever a hard limit. One recalled
// from memory is a labeled default that the purchaser can replace; one that
// nobody could read is left open.
package standards

import (
	"slices"
	"strings"

	"boxwright/config"
)

// Set is a rule set, or a state's text that goes on top of one.
type Set struct {
	ID      string
	Label   string
	AddOn   bool   // a state or county text: chosen beside a base set, or alone
	Note    string // what a reader must know of how the set was gathered
	Clauses []Clause
	// Declaration is the clause by which an option declares the whole unit to the set.
	Declaration string

	OccupantLb *config.Limit // per designated seat; nil: the federal 150 lb
	PatientLb  *config.Limit // nil: PatientUsual
}

// Clause is one demand. With a Figure and a Sense it is judged by number; with
// a Figure alone by the figure's own limit; without either the plant declares
// it, through an option that names the clause.
type Clause struct {
	ID     string
	Title  string
	Text   string // what it asks, in our own words
	Figure string // code of the figure it reads
	Sense  config.Sense
	Unit   string
	Mild   bool // a miss asks for a decision and does not stop the unit
	// Ordered binds a unit only where an option that declares the clause is ordered.
	Ordered bool
	// Fitted binds a unit only where it has what the figure measures.
	Fitted bool
	Rows   []Row // newest first; older ones are kept
}

// Row is the clause as one edition of the text has it, for some or all
// vehicles.
type Row struct {
	Edition string
	From    config.Date // in force from; zero when no date was read
	Old     bool        // superseded by a newer text of unknown date
	For     For
	Value   float64
	Open    bool // no number is built in: the purchaser sets it
	Source  string
	Basis   config.Basis
}

// For narrows a row to some chassis; its zero value fits all.
type For struct {
	Types []string // of config.Chassis.Type
	Rear  int      // tires on the rear axle, 2 or 4; 0 either
}

func (f For) fits(ch *config.Chassis) bool {
	if f.Types != nil && !slices.Contains(f.Types, ch.Type) {
		return false
	}
	return f.Rear == 0 || f.Rear == ch.RearTires.Count
}

// At is the row in force on a day for a chassis: the newest that began on or
// before it. The zero day takes the newest of all. False: none applies.
func (c *Clause) At(day config.Date, ch *config.Chassis) (Row, bool) {
	for _, r := range c.Rows {
		if r.Old || !r.For.fits(ch) || (!day.IsZero() && day.Before(r.From)) {
			continue
		}
		return r, true
	}
	return Row{}, false
}

// The base sets and the add-ons.
const (
	KKK        = "kkk-a-1822f"
	ASTM       = "astm-f2020"
	Own        = "own"
	Special    = "own-special" // units that are no ambulances
	Indiana    = "in"
	LACounty   = "ca-la"
	Nevada     = "nv"
	NewYork    = "ny"
	Washington = "wa"
)

// Default is the rule set of a new unit.
func Default() string { return KKK }

// Sets lists what can be chosen: base sets first, then add-ons. Their clauses
// are shared; do not change them. The federal clauses are no choice: every unit is
// judged by them.
func Sets() []Set { return slices.Clone(sets) }

var always = federal()

var sets = []Set{kkk(), astm(), own(), special(), indiana(), laCounty(), nevada(), newYork(), washington()}

// Find returns the set, or false.
func Find(id string) (Set, bool) {
	i := slices.IndexFunc(sets, func(s Set) bool { return s.ID == id })
	if i < 0 {
		return Set{}, false
	}
	return sets[i], true
}

// Lookup finds a clause by its id, as config.Finding.Clause and
// config.Option.Clauses name it, with the set it belongs to.
func Lookup(clause string) (Set, Clause, bool) {
	for _, s := range append([]Set{always}, sets...) {
		for _, c := range s.Clauses {
			if c.ID == clause {
				return s, c, true
			}
		}
	}
	return Set{}, Clause{}, false
}

// Join writes a choice of sets as one text, the form of config.Unit.RuleSet:
// "kkk-a-1822f+nv". The order of Sets is kept whatever the order given, and
// ids that are not known are left out.
func Join(ids ...string) string {
	var out []string
	for _, s := range sets {
		if slices.Contains(ids, s.ID) {
			out = append(out, s.ID)
		}
	}
	return strings.Join(out, "+")
}

// maxSets bounds what is read of a hostile text.
const maxSets = 16

// Split reads such a text: the sets it names, each once, and the ids it names
// that are not known.
func Split(ruleSet string) (chosen []Set, unknown []string) {
	for _, id := range strings.SplitN(ruleSet, "+", maxSets) {
		s, ok := Find(id)
		switch {
		case !ok:
			unknown = append(unknown, id)
		case !slices.ContainsFunc(chosen, func(x Set) bool { return x.ID == id }):
			chosen = append(chosen, s)
		}
	}
	return chosen, unknown
}

func day(y, m, d int) config.Date { return config.Date{Year: y, Month: m, Day: d} }

// one is a clause with a single row for every vehicle.
func one(
	id, title, text, figure string, sense config.Sense, value float64, unit, source string, basis config.Basis,
) Clause {
	return Clause{ID: id, Title: title, Text: text, Figure: figure, Sense: sense, Unit: unit,
		Rows: []Row{{Value: value, Source: source, Basis: basis}}}
}

// declared is a clause that no computed figure answers.
func declared(id, title, text, source string, basis config.Basis) Clause {
	return Clause{ID: id, Title: title, Text: text, Rows: []Row{{Source: source, Basis: basis}}}
}
