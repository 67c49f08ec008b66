// Package areas says what an area of the page brings. Each area is a package in a
// folder of its own beneath this one; web/app has the list of them.
package areas

import (
	"boxwright/web/page"
	"boxwright/web/page/markup"
	"boxwright/web/session"
)

// What tabs stand under, in the order of the job.
const (
	Ask    = "Ask"
	Build  = "Build"
	Check  = "Check"
	Offer  = "Offer"
	Office = "Office"
)

// Area is one part of the page, led to by a tab.
type Area struct {
	ID, Name string
	Section  string                  // what its tab stands under
	Codes    []string                // beginnings of the codes of findings that mark its tab
	Gist     func(*page.Page) string // what its tab says

	// Clear is the mark of its tab while no finding is; nil for "OK".
	Clear func(*page.Page) markup.Part

	// Load takes from the session what the area shows, and gives what draws it.
	Load func(*session.Session, *page.Page, *session.Worked) func() markup.Part

	Acts     map[string]session.Do           // what it can be asked to do, by the word in its markup
	Editions map[string]session.Do           // the same where it decides which catalogue the draft is taken with
	Fields   map[string]session.Setter       // its fields, by the id of their input
	Families map[string]session.SetterByName // fields by the part of their id before the point
	Joined   bool                            // what one field refuses may be taken once another is set
	Tells    bool                            // it shows by itself, where the press was, what a press changed
	Words    []*page.Term                    // what is spoken of in it

	// Rehearse are presses to go through while nobody waits, each before the area is drawn,
	// on a copy of the state; see web/app/rehearse.go.
	Rehearse []func(*session.Session)
}
