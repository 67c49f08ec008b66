// Package session is what an act works on. It knows no area.
package session

import (
	"boxwright/config"
	"boxwright/config/weight"
	"boxwright/pricing/bid"
	"boxwright/pricing/link"
	"boxwright/pricing/quote"
)

// View is what the page remembers beside the draft: where the reader is and
// how they like to read. It travels with every request.
type View struct {
	Area      string         `json:"area"`
	Chapter   string         `json:"chapter"`
	Metric    bool           `json:"metric,omitempty"`
	Theme     string         `json:"theme,omitempty"`     // "", "light", "dark" or "contrast"
	Asked     string         `json:"asked,omitempty"`     // the thing whose "why" is open
	Search    string         `json:"search,omitempty"`    // words to find options by
	Opened    []string       `json:"opened,omitempty"`    // groups of a large chapter whose options are shown
	Look      string         `json:"look,omitempty"`      // view that the unit is shown in; the chapter's when empty
	Fresh     []string       `json:"fresh,omitempty"`     // options that the last press brought in, lit in the picture
	Address   string         `json:"address,omitempty"`   // where the page is published, for links
	Ticket    *weight.Ticket `json:"ticket,omitempty"`    // scale ticket being entered
	Chance    int            `json:"chance,omitempty"`    // in a hundred, of the delivery date asked for
	Late      bool           `json:"late,omitempty"`      // the options that would be too late are listed
	Mountings bool           `json:"mountings,omitempty"` // the existing module is looked at on every chassis
	Foreign   string         `json:"foreign,omitempty"`   // link of a quote whose edition is not at hand
	Find      string         `json:"find,omitempty"`      // words to find options by among the needs
	Parts     []string       `json:"parts,omitempty"`     // names the later parts that the page shows, see Later
	Proposed  string         `json:"proposed,omitempty"`  // names the needs that were answered by proposals
	Paper     string         `json:"paper,omitempty"`     // id of one of the papers; the quote when empty
	Large     bool           `json:"large,omitempty"`     // papers are printed in large type
	Brought   []string       `json:"brought,omitempty"`   // names of scale tickets that came with a link or a file
	KeySaved  bool           `json:"key_saved,omitempty"` // the file of the signing key was saved from this page
	Reading   bool           `json:"reading,omitempty"`   // the quote is read as its link brought it: nothing edits it
	Frozen    *link.Frozen   `json:"frozen,omitempty"`    // the figures that its link carries
	// the link of a revision does not bring the quote before it along
	Alone    bool              `json:"alone,omitempty"`
	Rivals   []quote.Rival     `json:"rivals,omitempty"`    // other bids, typed in for Compare
	Names    map[string]string `json:"names,omitempty"`     // of what is compared, by link.Name; of the quote itself by ""
	Guide    int               `json:"guide,omitempty"`     // step of the guided quote, from one
	GuideOff bool              `json:"guide_off,omitempty"` // it was ended, or declined
	Typed    map[string]string `json:"typed,omitempty"`     // text in a field that could not be taken
	Wrong    map[string]string `json:"wrong,omitempty"`     // and why, by field
	List     ListView          `json:"list,omitzero"`       // how the purchaser's list is looked at
	Told     *Told             `json:"told,omitempty"`      // what the last press changed beyond itself
	// the standing answers to terms of a bid, while they are shown
	Standing map[string]bid.Own `json:"standing,omitzero"`
	OwnItem  OwnItem            `json:"own_item,omitzero"` // that is being described
	Heard    *Heard             `json:"heard,omitempty"`   // what was read out last
}

// OwnItem is equipment of the purchaser's own as it is typed in.
type OwnItem struct {
	Name   string `json:"name,omitempty"`
	Mass   string `json:"mass,omitempty"`
	Length string `json:"length,omitempty"`
	Width  string `json:"width,omitempty"`
	Height string `json:"height,omitempty"`
	Place  string `json:"place,omitempty"` // where it rides, a word of config.Stowage
}

// ListView is how the purchaser's list is looked at.
type ListView struct {
	Show   string `json:"show,omitempty"`   // kind of answer that is shown; all when empty
	From   int    `json:"from,omitempty"`   // first line shown of a long list
	Taking bool   `json:"taking,omitempty"` // what taking all would do is shown
	Read   int    `json:"read,omitempty"`   // lines of a long list that are read so far
}

// The two chapters of the Unit area that stand before the catalogue's own.
const (
	ChapterChassis = "chassis"
	ChapterModule  = "module"
)

// ChapterIn is the chapter of the catalogue that is shown; empty while searching.
func (v *View) ChapterIn(cat *config.Catalogue) string {
	if v.Search != "" {
		return ""
	}
	if v.Chapter == ChapterModule {
		return ChapterModule
	}
	for _, c := range cat.Chapters {
		if c.ID == v.Chapter {
			return c.ID
		}
	}
	return ChapterChassis
}
