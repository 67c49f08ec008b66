// Package view turns the document model into HTML and SVG, for the screen and
// for paper. It decides nothing: every number and every word of judgement comes
// from the packages below it.
package view

import (
	"cmp"
	"fmt"
	"strings"

	"boxwright/config"
	"boxwright/config/leadtime"
	"boxwright/config/quantity"
	"boxwright/config/rules"
	"boxwright/config/weight"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	. "boxwright/web/view/markup"
)

// State is what the page remembers beside the draft: where the reader is and
// how they like to read. It travels with every request.
type State struct {
	Area      string            `json:"area"`
	Chapter   string            `json:"chapter"`
	Metric    bool              `json:"metric,omitempty"`
	Theme     string            `json:"theme,omitempty"`  // "", "light", "dark" or "contrast"
	Asked     string            `json:"asked,omitempty"`  // the thing whose "why" is open
	Search    string            `json:"search,omitempty"` // words to find options by
	OnlyDif   bool              `json:"only_dif,omitempty"`
	Address   string            `json:"address,omitempty"`   // where the page is published, for links
	Ticket    *weight.Ticket    `json:"ticket,omitempty"`    // scale ticket being entered
	Chance    int               `json:"chance,omitempty"`    // in a hundred, of the delivery date asked for
	Late      bool              `json:"late,omitempty"`      // the options that would be too late are listed
	Mountings bool              `json:"mountings,omitempty"` // the existing module is looked at on every chassis
	Foreign   string            `json:"foreign,omitempty"`   // link of a quote whose edition is not at hand
	Find      string            `json:"find,omitempty"`      // words to find options by among the needs
	Proposed  string            `json:"proposed,omitempty"`  // names the needs that were answered by proposals
	Paper     string            `json:"paper,omitempty"`     // id of one of the papers; the quote when empty
	Received  string            `json:"received,omitempty"`  // names the quote as the last opened link brought it
	Brought   []string          `json:"brought,omitempty"`   // names of scale tickets that came with a link or a file
	Alone     bool              `json:"alone,omitempty"`     // the link of a revision does not bring the quote before it along
	Rivals    []quote.Rival     `json:"rivals,omitempty"`    // other bids, typed in for Compare
	Guide     int               `json:"guide,omitempty"`     // step of the guided quote, from one
	GuideOff  bool              `json:"guide_off,omitempty"` // it was ended, or declined
	Typed     map[string]string `json:"typed,omitempty"`     // text in a field that could not be taken
	Wrong     map[string]string `json:"wrong,omitempty"`     // and why, by field
	Keeping   bool              `json:"keeping,omitempty"`   // the catalogue's own part is shown in the place of Needs
}

// Page is everything one screen is drawn from.
type Page struct {
	Q         *quote.Quote
	State     *State
	Others    []Other          // what Compare sets beside the unit
	Mountings []quote.Mounting // the existing module on every chassis, while asked for
	Search    *propose.Search  // proposals, while they answer the needs as they are
	Proposing bool             // they are left out, see Soon
	Lessons   []Lesson         // tickets of earlier units that could count; for the Weight area
	Link      string           // fragment that reproduces the draft
	Covered   string           // the same with its cover, as it is copied
	Base      string           // address of this page
	Undo      int              // steps that can be undone
	Redo      int
	Kept      bool // the browser keeps the draft
	Notice    string
	GuidedOn  bool     // the guide has just come to another step
	Costs     *Costs   // the seller's own, while open; for the Price area alone
	Saved     []Saved  // quotes kept in this browser; for the Quote area
	Trail     []Moment // states of this one
	Trust     *Trust   // how far the quote can be relied on; for the Quote area
	Foreign   *Foreign // a quote whose edition is not at hand; for the Quote area
	Reader    bool     // the quote is as its link brought it: its reader comes first
	CostsKept bool     // a sealed cost sheet is kept in the browser
	Keeper    *Keeper  // while the catalogue's own part is shown
	Elsewhere *Elsewhere
	// Answers to the open "why": reasons and ways out.
	Reasons []rules.Reason
	Mends   []rules.Mend
	Offers  []propose.Offer // where it fits only by changing much of what was filled in
	Delays  []leadtime.Delay
	TooLate map[string]float64 // options that would miss the needed day, by how many working days
	Soon    bool               // what takes long is left out: the page comes back for it

	Rows *Rows // rows of options drawn before, when some are kept

	span    float64  // least width of a side view, in, so that several have one scale
	sources *sources // of the limits, on the paper being drawn
}

// Other is a quote pinned for comparison; Fault says why it could not be
// computed.
type Other struct {
	Link  string
	Q     *quote.Quote
	Fault string
}

// Area is one of the nine parts of the page.
type Area struct {
	ID, Name string
	gist     func(*Page) string
	codes    []string // of findings that mark it
	draw     func(*Page) Part
}

// Areas in the order of the job.
var Areas = []Area{
	{"needs", "Needs", gistNeeds, []string{"unit"}, needs},
	{"unit", "Unit", gistUnit, []string{"rules"}, unit},
	{"weight", "Weight", gistWeight, []string{"weight"}, weightArea},
	{"power", "Power", gistPower, []string{"power"}, powerArea},
	{"space", "Space", gistSpace, []string{"space", "standard"}, spaceArea},
	{"delivery", "Delivery", gistDelivery, []string{"time"}, delivery},
	{"price", "Price", gistPrice, []string{"price"}, price},
	{"compare", "Compare", gistCompare, nil, compare},
	{"quote", "Quote", gistQuote, nil, document},
}

// AreaByID finds an area; the first one when there is none of that name.
func AreaByID(id string) *Area {
	for i := range Areas {
		if Areas[i].ID == id {
			return &Areas[i]
		}
	}
	return &Areas[0]
}

// Regions draws every region of the page, by the id of its element: one piece of
// HTML after another.
func Regions(p *Page) map[string][]string {
	next := p.point()
	area := Many(guide(p), elsewhere(p), main(p)).Pieces()
	tabs := areas(p).Pieces()
	for _, pieces := range [][]string{area, tabs} {
		for i := range pieces {
			pieces[i] = pointed(pieces[i], next)
		}
	}
	return map[string][]string{"masthead": masthead(p).Pieces(), "areas": tabs, "main": area, "standing": standing(p).Pieces()}
}

// main is the area shown, or the catalogue's own part in its place.
func main(p *Page) Part {
	if p.Keeper != nil {
		return keeping(p)
	}
	return AreaByID(p.State.Area).draw(p)
}

// Title of the browser window.
func Title(p *Page) string {
	if p.Keeper != nil {
		return "Catalogue – Boxwright"
	}
	return AreaByID(p.State.Area).Name + " – " + subject(p) + " – Boxwright"
}

func subject(p *Page) string {
	t := cmp.Or(p.Q.Draft.Title, p.Q.Edition.Cat.LabelOf(p.Q.Draft.Unit.Chassis))
	if p.Q.Remount() {
		return "Remount: " + t
	}
	return t
}

// system is how the reader wants numbers shown.
func (p *Page) system() quantity.System { return quantity.System(p.State.Metric) }

// show formats a number held in unit.
func (p *Page) show(v float64, unit string) string { return p.system().Show(v, unit) }

// plain is show without the unit's name, for a field that names it beside.
func (p *Page) plain(v float64, unit string) string {
	text := p.show(v, unit)
	return strings.TrimSuffix(text, " "+p.unitName(unit))
}

// unitName is how the reader's system calls the unit.
func (p *Page) unitName(unit string) string {
	_, name, _ := strings.Cut(p.show(1, unit), " ")
	return name
}

// signed is show with a plus in front of what is not negative.
func (p *Page) signed(v float64, unit string) string {
	if v >= 0 {
		return "+" + p.show(v, unit)
	}
	return p.show(v, unit)
}

// worst severity among findings whose code begins with one of the prefixes.
func worst(findings []config.Finding, prefixes []string) config.Severity {
	rank := map[config.Severity]int{config.Note: 1, config.Warn: 2, config.Stop: 3}
	var top config.Severity
	for _, f := range findings {
		for _, prefix := range prefixes {
			if len(f.Code) > len(prefix) && f.Code[:len(prefix)] == prefix && rank[f.Severity] > rank[top] {
				top = f.Severity
			}
		}
	}
	return top
}

// mark shows a severity as a shape with a word for those who do not see it.
func mark(s config.Severity) Part {
	shape, class, word := "●", "ok", "in order"
	switch s {
	case config.Stop:
		shape, class, word = "■", "stop", "stopped"
	case config.Warn:
		shape, class, word = "▲", "warn", "needs a decision"
	}
	return El("span", Class("mark", class),
		El("span", At("aria-hidden", "true"), Text(shape)),
		El("span", Class("hidden-text"), Text(word)))
}

func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// working stands where something is shown a moment later.
func working() Part { return El("p", Class("soft"), Text("Working it out …")) }
