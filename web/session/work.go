package session

import "boxwright/pricing/quote"

// Most requests show the same draft in another way, so what was worked out of a
// draft is kept until others take its place. What takes long is left out of the
// first answer; the page comes back for it once that is drawn.

// Worked is what was worked out of one draft.
type Worked struct {
	key    string // edition and draft
	Draft  []byte // the draft's canonical form
	Quote  *quote.Quote
	effort int
	slow   map[string]any // by what was asked
}

// mostWorked drafts are kept: the one in work, and those that undo, redo and a
// look at another unit go back to.
const mostWorked = 4

// Work is what is worked out of the draft as it is. It holds a draft of its own,
// which acts do not change.
func (s *Session) Work() (*Worked, error) {
	a := s.Memory
	data, err := s.Draft.Bytes()
	if err != nil {
		return nil, err
	}
	key := a.Edition.Cat.Hash() + string(data)
	w := &Worked{key: key, Draft: data, slow: map[string]any{}}
	for i, known := range a.worked {
		if known.key == key {
			w = known
			a.worked = append(a.worked[:i:i], a.worked[i+1:]...)
			break
		}
	}
	if w.Quote == nil || s.Effort > w.effort && len(w.Quote.Answer.Undecided) > 0 {
		q, err := quote.Settle(a.Edition, s.Draft.Clone(), s.Effort)
		if err != nil {
			return nil, err
		}
		w.Quote, w.effort = q, s.Effort
	}
	a.worked = append([]*Worked{w}, a.worked...)
	a.worked = a.worked[:min(len(a.worked), mostWorked)]
	return w, nil
}

// Read decodes and checks the draft of a request. The page sends the same one
// again and again, so those read last are kept; what is handed out is a copy.
func (m *Memory) Read(text []byte) (*quote.Draft, error) {
	for _, known := range m.drafts {
		if known.text == string(text) {
			return known.draft.Clone(), nil
		}
	}
	d, err := quote.ReadDraft(text)
	if err != nil {
		return nil, err
	}
	m.drafts = append([]readDraft{{string(text), d}}, m.drafts...)
	m.drafts = m.drafts[:min(len(m.drafts), mostRead)]
	return d.Clone(), nil
}

// readDraft is a draft as a request brought it, and what was read of it.
type readDraft struct {
	text  string
	draft *quote.Draft
}

// mostRead drafts are kept as they were read.
const mostRead = 4

// Compute is the quote of the draft as it is.
func (s *Session) Compute() (*quote.Quote, error) {
	w, err := s.Work()
	if err != nil {
		return nil, err
	}
	return w.Quote, nil
}

// Kept gives what is worked out of the draft under a name, once.
func (w *Worked) Kept(name string, work func() any) any {
	v, known := w.slow[name]
	if !known {
		v = work()
		w.slow[name] = v
	}
	return v
}

// Later is kept for what takes long: nil, when the page has first to draw what
// is quick.
func (s *Session) Later(w *Worked, name string, work func() any) any {
	if _, known := w.slow[name]; !known && !s.Settling() {
		s.Soon = true
		return nil
	}
	return w.Kept(name, work)
}

// Settling reports whether the page has come back for what takes long.
func (s *Session) Settling() bool {
	for _, a := range s.Req.Acts {
		if a.Do != "settle" {
			return false
		}
	}
	return len(s.Req.Acts) > 0
}
