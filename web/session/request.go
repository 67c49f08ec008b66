package session

import (
	"encoding/json"

	"boxwright/config"
)

// Request is one message from the page.
type Request struct {
	V     int             `json:"v"`
	Acts  []Act           `json:"acts"`
	Draft json.RawMessage `json:"draft"`
	// View and pins were kept by an earlier visit, perhaps of another version of
	// the page: what does not read of them is begun anew.
	View  json.RawMessage `json:"view"`
	Pins  json.RawMessage `json:"pins"` // links set aside for comparison
	Today config.Date     `json:"today"`
	Base  string          `json:"base"` // address of the page, without fragment
	Kept  bool            `json:"kept"`
	// Unkept is why the browser keeps nothing: "refused", "full", "newer" or "off".
	Unkept string `json:"unkept,omitempty"`
	// another window has the quote open: what is done in this one waits
	Elsewhere bool     `json:"elsewhere,omitempty"`
	Costs     bool     `json:"costs"`            // a sealed cost sheet is kept in the browser
	Saved     []Saved  `json:"saved"`            // quotes kept in the browser, the last changed first
	Copies    *Copies  `json:"copies,omitempty"` // sent with the list of saved quotes
	Trail     []Moment `json:"trail"`            // states of this quote that can be gone back to
	// Scale tickets of the other quotes kept in the browser. As with view and pins,
	// what does not read of them is left.
	Weighed json.RawMessage `json:"weighed"`
	Bids    string          `json:"bids,omitempty"` // what is kept for the next requirement list, where an act needs it
	Key     string          `json:"key"`            // public half of the signing key kept in the browser
	Undo    int             `json:"undo"`
	Redo    int             `json:"redo"`
	Shown   string          `json:"shown,omitempty"` // names the regions that the page shows
}

// Act is one thing the user did.
type Act struct {
	Do    string `json:"do"`
	ID    string `json:"id"`
	Value string `json:"value"`
	On    bool   `json:"on"`
	Said  string `json:"said,omitempty"` // a field's label and what was put in, as the page shows them
	// Button is the name of the button that was pressed, as the page shows it.
	Button string `json:"button,omitempty"`
	// Of a private file: what it holds, and 64 random bytes, in base64. Of a link
	// that is opened: the signed links at hand.
	File   string `json:"file,omitempty"`
	Random string `json:"random,omitempty"`
}

// Step is something only the browser can do.
type Step struct {
	// "focus", "show", "reveal", "unfold", "top", "print", "copy", "save", "keep-catalogue", "keep-costs", "keep-key",
	// "new-quote", "import", "fill-sheet", "keep-bids", "keep-sealed", "send-kept", "keep-moved" or "embed"
	Do   string `json:"do"`
	ID   string `json:"id,omitempty"`
	Name string `json:"name,omitempty"`
	Type string `json:"type,omitempty"`
	Text string `json:"text,omitempty"`
	// Base64 says that Text stands for bytes.
	Base64 bool `json:"base64,omitempty"`
	// Gist names a draft that is kept without being worked on.
	Gist *Gist `json:"gist,omitempty"`
	// Screen is the first screen of a page that is put together.
	Screen First `json:"screen,omitempty"`
}

// First is the screen of somebody who opens the page for the first time, by
// region. It is drawn when the page is built, so that there is something to read
// before the core runs.
type First map[string]string
