package quote

import (
	"boxwright/config"
	"boxwright/config/rules"
	"boxwright/pricing"
	"boxwright/pricing/sign"
)

// Edition is a catalogue made ready: its price book read and its rules
// compiled. It is not safe for concurrent use, since the rules engine keeps
// what it has learnt.
type Edition struct {
	Cat   *config.Catalogue
	Book  *pricing.Book
	Rules *rules.Engine

	items map[string]*Quote // units of a fleet checked before
	once  map[any]any       // see Once

	dayLimits map[string][]config.Linear // see days
	dated     *pricing.Book              // the book on the day it was last asked for; see bookOn
	datedOn   config.Date

	saying   map[string]*Edition // in the words of a duty, by its id; see For
	measured []*Edition          // for remounts, the latest last; see For
	base     *Edition            // the edition that such a one is made from
	key      string              // of its module
}

// GaveUp is said after a question to the rules ended in the middle, see solve.Pauses.
func (ed *Edition) GaveUp() {
	ed.Rules.GaveUp()
	for _, m := range ed.measured {
		m.GaveUp()
	}
}

// OpenEdition reads a catalogue file and makes it ready. The error, when there
// is one, is a config.Problems with the places in the file.
func OpenEdition(file []byte) (*Edition, error) {
	cat, err := config.Read(file)
	if err != nil {
		return nil, err
	}
	if ps := sign.CheckCatalogue(cat); ps != nil {
		return nil, ps
	}
	return ready(cat)
}

// OpenBuilt is OpenEdition for the catalogue that a program is built with, see
// config.ReadBuilt.
func OpenBuilt(file []byte, hash string) (*Edition, error) {
	cat, err := config.ReadBuilt(file, hash)
	if err != nil {
		return nil, err
	}
	return ready(cat)
}

// Once gives what make makes for this edition: made at the first call with a key
// and kept as long as the edition. A package keeps what it works out of a
// catalogue under a key of a type of its own.
func (ed *Edition) Once(key any, make func() any) any {
	v, known := ed.once[key]
	if !known {
		v = make()
		if ed.once == nil {
			ed.once = map[any]any{}
		}
		ed.once[key] = v
	}
	return v
}

// bookOn is the price book as in force on a day. The day asked for last is kept,
// since every press of one quote asks for the same.
func (ed *Edition) bookOn(day config.Date) *pricing.Book {
	if ed.dated == nil || ed.datedOn != day {
		ed.dated, ed.datedOn = ed.Book.AsOf(day), day
	}
	return ed.dated
}

func ready(cat *config.Catalogue) (*Edition, error) {
	book, err := pricing.ReadBook(cat.PriceBook, cat)
	if err != nil {
		return nil, err
	}
	engine, err := rules.Compile(cat)
	if err != nil {
		return nil, err
	}
	return &Edition{Cat: cat, Book: book, Rules: engine}, nil
}
