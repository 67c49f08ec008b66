package main

import (
	"fmt"

	"boxwright/config"
	"boxwright/config/rules"
	"boxwright/pricing"
	"boxwright/pricing/bid"
	"boxwright/pricing/editions"
	"boxwright/pricing/quote"
)

// Result is what a check of a catalogue file has to say.
type Result struct {
	Problems config.Problems   // what the reader refuses
	Findings []config.Finding  // what the lint of the rules found
	Read     *config.Catalogue // nil when it could not be read at all
	places   places
}

// Check reads a catalogue file as the page does, and looks through its rules.
func Check(file []byte) Result {
	r, findings := read(file)
	for _, f := range findings() {
		if f.Code != "catalogue.no-price" { // the price book's reader has said so
			r.Findings = append(r.Findings, f)
		}
	}
	return r
}

// read reads it, and gives what looks through its rules.
func read(file []byte) (r Result, findings func() []config.Finding) {
	cat, err := config.Read(file)
	if err != nil {
		return Result{Problems: err.(config.Problems), places: placesOf(file)},
			func() []config.Finding { return nil }
	}
	r = Result{Read: cat, places: placesOf(file)}
	if _, err := pricing.ReadBook(cat.PriceBook, cat); err != nil {
		r.Problems = append(r.Problems, err.(config.Problems)...)
	}
	ed, err := quote.Accept(file)
	if err == nil {
		return r, func() []config.Finding { return append(editions.Lint(ed), bid.Lint(ed)...) }
	}
	if r.Problems == nil {
		r.Problems = err.(config.Problems)
	}
	return r, func() []config.Finding { return rules.Lint(cat) }
}

// Faults counts what keeps the page from taking the catalogue, and the faults
// of its rules.
func (r *Result) Faults() int { return len(r.Problems) + r.count(config.Stop) }

func (r *Result) count(s config.Severity) int {
	n := 0
	for _, f := range r.Findings {
		if f.Severity == s {
			n++
		}
	}
	return n
}

// Lines says everything in words, a line each: the file's name and line, the
// place, the fault and its remedy. Notes are only counted unless asked for.
func (r *Result) Lines(name string, notes bool) []string {
	var lines []string
	add := func(where, text string) {
		at := name
		if n := r.places.line(where); n > 0 {
			at = fmt.Sprintf("%s:%d", name, n)
		}
		lines = append(lines, at+": "+text)
	}
	for _, p := range r.Problems {
		add(p.Where, p.String())
	}
	for _, f := range r.Findings {
		if f.Severity != config.Note || notes {
			add(f.Where, fmt.Sprintf("%s: %s: %s %s", f.Severity, f.Where, f.Text, f.Remedy))
		}
	}
	if n := r.count(config.Note); n > 0 && !notes {
		lines = append(lines, fmt.Sprintf("%s: %d notes; -notes lists them", name, n))
	}
	return lines
}

// Summary is one line about a catalogue in order.
func (r *Result) Summary() string {
	c := r.Read
	return fmt.Sprintf("in order: %q, edition %s from %s: %d chassis, %d bodies, %d options in %d groups, %d rules, "+
		"%d pieces of equipment; content %s",
		c.Title, c.Edition, c.ValidFrom, len(c.Chassis), len(c.Bodies), len(c.Options), len(c.Groups), len(c.Rules),
		len(c.Equipment), c.Hash())
}
