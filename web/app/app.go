// Package app is the protocol between the page and the core. A request carries the
// whole state and what the user did; the reply carries the new state and the
// regions of the page as HTML. The list of areas stands here and nowhere else.
package app

import (
	"bytes"
	"encoding/json"
	"fmt"

	"boxwright/config"
	"boxwright/pricing/quote"
	"boxwright/web/assets/catalogue"
	"boxwright/web/page"
	"boxwright/web/session"
)

// MaxRequestBytes bounds one request; a catalogue file is the largest part.
const MaxRequestBytes = 24 << 20

// Version of the request and reply format.
const Version = 1

// What the page sends and is asked to do, as acts know it.
type (
	Request = session.Request
	Act     = session.Act
	Step    = session.Step
	Gist    = session.Gist
	First   = session.First
)

// Reply is what the page shows and keeps next.
type Reply struct {
	Draft json.RawMessage `json:"draft,omitempty"`
	View  *session.View   `json:"view,omitempty"`
	Pins  []string        `json:"pins"`
	// Regions are HTML, one piece after another. A piece is null where it is the
	// same as in the regions that the request said are shown.
	Regions map[string][]*string `json:"regions,omitempty"`
	Shown   string               `json:"shown,omitempty"` // names these regions
	Title   string               `json:"title,omitempty"`
	Say     string               `json:"say,omitempty"`    // read out politely
	Notice  string               `json:"notice,omitempty"` // what the press did, shown until the next one
	Said    string               `json:"said,omitempty"`   // what was done, for the trail
	Gist    Gist                 `json:"gist"`
	Fault   string               `json:"fault,omitempty"` // shown as an alert; the earlier state stands
	Do      []Step               `json:"do,omitempty"`
	// Partial says that parts which take long are left out: once this is drawn, the
	// page asks for the rest with a "rest" act.
	Partial bool `json:"partial,omitempty"`
	// Undecided says that more work may tell more of what can be chosen: while the page
	// is idle it asks with a "decide" act for twice the work. Only here may the reply of
	// a core that has worked before differ from that of a new one, and while it is set in
	// what is drawn as still being checked.
	Undecided bool `json:"undecided,omitempty"`
	// Working says that a slice of what was asked for is done and nothing is to be shown:
	// the page asks for the same again, unless something was pressed.
	Working   bool `json:"working,omitempty"`
	Rehearsed bool `json:"rehearsed,omitempty"` // there is nothing to show
	Private   bool `json:"private,omitempty"`   // the page shows this and never keeps it
}

// App answers requests. It is not safe for concurrent use.
type App struct {
	// Slice is how many steps of a solver are done at once of what nobody waits for,
	// some 0.6 µs each in wasm: a press in between ends it. 0 does it in one go.
	Slice int64

	idle   *idleWork // what is done in slices, and not at its end
	memory session.Memory
	shown  shownRegions
	rows   page.Rows // of the unit, as they were drawn
}

// New is an app with the built-in catalogue, read at the first request.
func New() *App { return &App{} }

// Handle answers one request. It never panics on any input: a fault comes back
// in the reply, with the state as it was.
func (a *App) Handle(request []byte) []byte {
	reply, err := a.answer(request)
	if err != nil {
		reply = &Reply{Fault: session.Sentence(err)}
	}
	// Most of a reply is markup, which JSON need not escape again.
	var out bytes.Buffer
	write := json.NewEncoder(&out)
	write.SetEscapeHTML(false)
	if err := write.Encode(reply); err != nil {
		out.Reset()
		write.Encode(Reply{Fault: "The answer could not be written: " +
			err.Error()}) //nolint:errcheck // a text always can
	}
	return bytes.TrimSuffix(out.Bytes(), []byte("\n"))
}

func (a *App) answer(request []byte) (*Reply, error) {
	if len(request) > MaxRequestBytes {
		return nil, fmt.Errorf("the request is %d bytes; the most that is read is %d", len(request), MaxRequestBytes)
	}
	if w := a.idle; w != nil && bytes.Equal(w.asked, request) {
		return a.goOn(w)
	}
	a.giveUp()
	var req session.Request
	if p := config.DecodeStrict(request, &req); p != nil {
		return nil, fmt.Errorf("the request cannot be read, %s", p)
	}
	if req.V != Version {
		return nil, fmt.Errorf("the page speaks version %d, the core version %d: reload the page", req.V, Version)
	}
	if err := a.ensure(); err != nil {
		return nil, err
	}
	if a.Slice > 0 && (session.Resting(req.Acts) || rehearsal(req.Acts) != "") {
		return a.goOn(a.begin(bytes.Clone(request), &req))
	}
	return a.serve(&req)
}

// serve answers a request that was read.
func (a *App) serve(req *session.Request) (*Reply, error) {
	s := a.session(req)
	if area := rehearsal(req.Acts); area != "" {
		return a.rehearse(s, area)
	}
	for _, act := range req.Acts {
		do(s, act)
	}
	s.Unsign()
	s.Untie()
	putTogether(s)
	return a.reply(s)
}

// ensure has the built-in catalogue ready.
func (a *App) ensure() error {
	if a.memory.Edition != nil {
		return nil
	}
	h, err := demonstration()
	if err == nil {
		if a.memory.Plant = catalogue.Plant; a.memory.Plant != "" {
			h.Ed.Cat.Signers = nil // nobody of the demonstration signs for that plant
		}
		a.memory.Keep.BuiltIn = h
		a.memory.Use(h)
	}
	return err
}

// demonstration is the catalogue that is part of the core.
func demonstration() (session.Held, error) {
	open := quote.OpenEdition
	if catalogue.Hash != "" {
		open = func(file []byte) (*quote.Edition, error) { return quote.OpenBuilt(file, catalogue.Hash) }
	}
	ed, err := open(catalogue.Demo)
	if err != nil {
		return session.Held{}, fmt.Errorf("the demonstration catalogue: %w", err)
	}
	return session.Held{Ed: ed, File: catalogue.Demo}, nil
}
