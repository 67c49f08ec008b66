package session

import (
	"boxwright/config"
	"boxwright/config/leadtime"
	"boxwright/pricing/bid"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	"boxwright/web/page/markup"
)

// Worked is what was worked out of one draft.
type Worked struct {
	Draft []byte // the draft's canonical form
	Quote *quote.Quote

	key    string // by edition and draft
	effort int    // spent on what is undecided

	Delays    Later[[]leadtime.Delay]   // what the picks do to the delivery
	TooLate   Later[map[string]float64] // options that would miss the needed day, by how many working days
	Mountings Later[[]quote.Mounting]   // an existing module on every chassis, by system of units
	Ways      Later[propose.Ways]       // why not, and how nevertheless, by the thing asked about
	Told      Later[map[string]string]  // why the last press changed more than itself
	Pictures  Later[markup.Part]        // of the unit, by the side it is seen from and what is lit in it
	Answers   Later[[]bid.Answer]       // to the purchaser's list, by the list
	Dates     Later[[]config.Date]      // of delivery when a line of it is complied with, by the list
	Shorter   Later[[]bid.Shortened]    // open lines of it that the page shows, without what was not read
	TakingAll Later[*bid.Preview]       // what meeting all of it would do; nil where nothing can be taken
}

// Work is what is worked out of the draft as it is. It holds a draft of its own,
// which acts do not change. Most requests show the same draft in another way, so it
// is kept until others take its place.
func (s *Session) Work() (*Worked, error) {
	m := s.Memory
	data, err := s.Draft.Bytes()
	if err != nil {
		return nil, err
	}
	key := m.Edition.Cat.Hash() + string(data)
	w, err := m.worked.get(key, func() (*Worked, error) { return new(Worked), nil })
	if err != nil {
		return nil, err
	}
	if w.Quote == nil || s.Effort > w.effort && w.Quote.Undecided() {
		q, err := quote.ComputeWith(m.Edition, s.Draft.Clone(), s.Effort)
		if err != nil {
			return nil, err
		}
		name := short(key)
		*w = Worked{Draft: data, Quote: q, key: key, effort: s.Effort}
		w.Delays.name, w.TooLate.name = "delays "+name, "too late "+name
		w.Mountings.name, w.Ways.name = "mountings "+name, "ways "+name
		w.Told.name, w.Pictures.name = "told "+name, "picture "+name
		w.Answers.name, w.Dates.name, w.TakingAll.name = "answers", "dates "+name, "taking all "+name
		w.Shorter.name = "shorter"
	}
	return w, nil
}

// Compute is the quote of the draft as it is.
func (s *Session) Compute() (*quote.Quote, error) {
	w, err := s.Work()
	if err != nil {
		return nil, err
	}
	return w.Quote, nil
}

// Read decodes and checks the draft of a request. The page sends the same one
// again and again, so those read last are kept; what is handed out is a copy.
func (m *Memory) Read(text []byte) (*quote.Draft, error) {
	d, err := m.drafts.get(string(text), func() (*quote.Draft, error) { return quote.ReadDraft(text) })
	if err != nil {
		return nil, err
	}
	return d.Clone(), nil
}
