// Package app is everything the page can ask for. A request carries the whole
// state and what the user did; the reply carries the new state and the regions
// of the page as HTML. It keeps nothing between requests but catalogues it has
// read and what it has worked out, so a worker that dies loses nothing.
package app

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"

	"boxwright/config"
	"boxwright/pricing/costs"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	sess "boxwright/web/session"
)

// MaxRequestBytes bounds one request; a catalogue file is the largest part.
const MaxRequestBytes = 12 << 20

// Version of the request and reply format.
const Version = 1

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
	Costs bool            `json:"costs"` // a sealed cost sheet is kept in the browser
	Saved []sess.Saved    `json:"saved"` // quotes kept in the browser, the last changed first
	Trail []sess.Moment   `json:"trail"` // states of this quote that can be gone back to
	// Scale tickets of the other quotes kept in the browser. As with view and pins,
	// what does not read of them is left.
	Weighed json.RawMessage `json:"weighed"`
	Key     string          `json:"key"` // public half of the signing key kept in the browser
	Undo    int             `json:"undo"`
	Redo    int             `json:"redo"`
}

// Act is one thing the user did.
type Act struct {
	Do    string `json:"do"`
	ID    string `json:"id"`
	Value string `json:"value"`
	On    bool   `json:"on"`
	Said  string `json:"said,omitempty"` // a field's label and what was put in, as the page shows them
	// Of a private file: what it holds, and 64 random bytes, in base64. Of a link
	// that is opened: the signed links at hand.
	File   string `json:"file,omitempty"`
	Random string `json:"random,omitempty"`
}

// Reply is what the page shows and keeps next.
type Reply struct {
	Draft   json.RawMessage     `json:"draft,omitempty"`
	View    *sess.View          `json:"view,omitempty"`
	Pins    []string            `json:"pins"`
	Regions map[string][]string `json:"regions,omitempty"`
	Title   string              `json:"title,omitempty"`
	Say     string              `json:"say,omitempty"`  // read out politely
	Said    string              `json:"said,omitempty"` // what was done, for the trail
	Gist    Gist                `json:"gist"`
	Fault   string              `json:"fault,omitempty"` // shown as an alert; the earlier state stands
	Do      []Step              `json:"do,omitempty"`
	// Soon asks the page to come back with a "settle" act once it has drawn this:
	// something that takes long is left out. Unsettled asks for the same when the
	// page is idle: something is still checking.
	Soon      bool `json:"soon,omitempty"`
	Unsettled bool `json:"unsettled,omitempty"`
	Rehearsed bool `json:"rehearsed,omitempty"` // there is nothing to show
}

// Step is something only the browser can do.
type Step struct {
	Do   string `json:"do"` // "focus", "show", "top", "print", "copy", "save", "keep-catalogue", "keep-costs", "keep-key", "new-quote", "import", "send-kept", "keep-moved" or "embed"
	ID   string `json:"id,omitempty"`
	Name string `json:"name,omitempty"`
	Type string `json:"type,omitempty"`
	Text string `json:"text,omitempty"`
	// Base64 says that Text stands for bytes.
	Base64 bool `json:"base64,omitempty"`
	// Gist names a draft that is kept without being worked on.
	Gist *Gist `json:"gist,omitempty"`
}

// App answers requests. It is not safe for concurrent use.
type App struct {
	edition  *quote.Edition // in use
	keep     keeper
	worked   []*worked // the drafts worked out last, the latest first
	proposed struct {  // the last answer to needs
		key    string
		search propose.Search
	}
	costs     *costs.Sheet // open until locked; never in a reply
	issued    *issued      // what the last signed quote holds
	issuedFor *quote.Edition
}

// New is an app with the built-in catalogue, read at the first request.
func New() *App { return &App{} }

// Handle answers one request. It never panics on any input: a fault comes back
// in the reply, with the state as it was.
func (a *App) Handle(request []byte) []byte {
	reply, err := a.answer(request)
	if err != nil {
		reply = &Reply{Fault: sentence(err)}
	}
	// Most of a reply is markup, which JSON need not escape again.
	var out bytes.Buffer
	write := json.NewEncoder(&out)
	write.SetEscapeHTML(false)
	if err := write.Encode(reply); err != nil {
		out.Reset()
		write.Encode(Reply{Fault: "The answer could not be written: " + err.Error()}) //nolint:errcheck // a text always can
	}
	return bytes.TrimSuffix(out.Bytes(), []byte("\n"))
}

func (a *App) answer(request []byte) (*Reply, error) {
	if len(request) > MaxRequestBytes {
		return nil, fmt.Errorf("the request is %d bytes; the most that is read is %d", len(request), MaxRequestBytes)
	}
	var req Request
	if p := config.DecodeStrict(request, &req); p != nil {
		return nil, fmt.Errorf("the request cannot be read, %s", p)
	}
	if req.V != Version {
		return nil, fmt.Errorf("the page speaks version %d, the core version %d: reload the page", req.V, Version)
	}
	if err := a.ensure(); err != nil {
		return nil, err
	}
	s := a.session(&req)
	if area := rehearsal(req.Acts); area != "" {
		return s.rehearse(area)
	}
	for _, act := range req.Acts {
		s.do(act)
	}
	s.unsign()
	return s.reply()
}

// ensure has the built-in catalogue ready.
func (a *App) ensure() error {
	if a.edition != nil {
		return nil
	}
	h, err := demonstration()
	if err == nil {
		a.keep.builtIn = h
		a.use(h)
	}
	return err
}

// sentence words an error for the reader: the first few problems with their
// places.
func sentence(err error) string {
	var ps config.Problems
	if !errors.As(err, &ps) {
		return err.Error()
	}
	text := ""
	for i, p := range ps {
		if i == 3 {
			return text + fmt.Sprintf(" And %d more.", len(ps)-i)
		}
		if i > 0 {
			text += " "
		}
		text += p.String() + "."
	}
	return text
}
