// Package areas says what an area of the page brings. Each area is a package in a
// folder of its own beneath this one; web/app has the list of them.
package areas

import "boxwright/web/page"

// Area is one part of the page, led to by a tab.
type Area struct {
	ID, Name string
	Codes    []string                // beginnings of the codes of findings that mark its tab
	Gist     func(*page.Page) string // what its tab says
	Words    []*page.Term            // what is spoken of in it
}
