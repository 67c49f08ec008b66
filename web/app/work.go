package app

import "boxwright/pricing/quote"

// Most requests show the same draft in another way, so what was worked out of a
// draft is kept until others take its place. What takes long is left out of the
// first answer; the page comes back for it once that is drawn.

// worked is what was worked out of one draft.
type worked struct {
	key    string // edition and draft
	draft  []byte // the draft's canonical form
	quote  *quote.Quote
	effort int
	slow   map[string]any // by what was asked
}

// mostWorked drafts are kept: the one in work, and those that undo, redo and a
// look at another unit go back to.
const mostWorked = 4

// work is what is worked out of the draft as it is. It holds a draft of its own,
// which acts do not change.
func (s *session) work() (*worked, error) {
	a := s.app
	data, err := s.draft.Bytes()
	if err != nil {
		return nil, err
	}
	key := a.edition.Cat.Hash() + string(data)
	w := &worked{key: key, draft: data, slow: map[string]any{}}
	for i, known := range a.worked {
		if known.key == key {
			w = known
			a.worked = append(a.worked[:i:i], a.worked[i+1:]...)
			break
		}
	}
	if w.quote == nil || s.effort > w.effort && len(w.quote.Answer.Undecided) > 0 {
		q, err := quote.Settle(a.edition, s.draft.Clone(), s.effort)
		if err != nil {
			return nil, err
		}
		w.quote, w.effort = q, s.effort
	}
	a.worked = append([]*worked{w}, a.worked...)
	a.worked = a.worked[:min(len(a.worked), mostWorked)]
	return w, nil
}

// read decodes and checks the draft of a request. The page sends the same one
// again and again, so those read last are kept; what is handed out is a copy.
func (a *App) read(text []byte) (*quote.Draft, error) {
	for _, known := range a.drafts {
		if known.text == string(text) {
			return known.draft.Clone(), nil
		}
	}
	d, err := quote.ReadDraft(text)
	if err != nil {
		return nil, err
	}
	a.drafts = append([]readDraft{{string(text), d}}, a.drafts...)
	a.drafts = a.drafts[:min(len(a.drafts), mostRead)]
	return d.Clone(), nil
}

// readDraft is a draft as a request brought it, and what was read of it.
type readDraft struct {
	text  string
	draft *quote.Draft
}

// mostRead drafts are kept as they were read.
const mostRead = 4

// compute is the quote of the draft as it is.
func (s *session) compute() (*quote.Quote, error) {
	w, err := s.work()
	if err != nil {
		return nil, err
	}
	return w.quote, nil
}

// kept gives what is worked out of the draft under a name, once.
func (w *worked) kept(name string, work func() any) any {
	v, known := w.slow[name]
	if !known {
		v = work()
		w.slow[name] = v
	}
	return v
}

// later is kept for what takes long: nil, when the page has first to draw what
// is quick.
func (s *session) later(w *worked, name string, work func() any) any {
	if _, known := w.slow[name]; !known && !s.settling() {
		s.soon = true
		return nil
	}
	return w.kept(name, work)
}

// settling reports whether the page has come back for what takes long.
func (s *session) settling() bool {
	for _, a := range s.req.Acts {
		if a.Do != "settle" {
			return false
		}
	}
	return len(s.req.Acts) > 0
}
