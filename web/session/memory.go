package session

import (
	"slices"

	"boxwright/pricing/costs"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	"boxwright/pricing/sign"
)

// Memory is what the core keeps between requests: catalogues it has read and what
// it has worked out. A worker that dies loses nothing by losing it.
type Memory struct {
	Edition   *quote.Edition // in use
	Plant     string         // key of the one plant whose catalogues are taken; empty: any
	Keep      Keeping
	Proposals Later[*propose.Search] // answers to needs
	GiveUps   Later[*propose.Giving] // what would have to go where they cannot all be met
	Costs     *costs.Sheet           // open until locked; never in a reply

	drafts latest[*quote.Draft] // by the text that requests brought
	worked latest[*Worked]      // by edition and draft
	issued latest[*Issued]      // by edition and link
}

// Mark is what was worked out of drafts before work began that may end in the middle.
func (m *Memory) Mark() []Worked {
	out := make([]Worked, len(m.worked.list))
	for i, k := range m.worked.list {
		out[i] = *k.value
	}
	return out
}

// GaveUp is said after such work did: what was worked out is as it was at the mark.
func (m *Memory) GaveUp(mark []Worked) {
	m.Edition.GaveUp()
	list := m.worked.list
	m.worked.list = nil
	for i := range mark {
		if at := slices.IndexFunc(list, func(k keyed[*Worked]) bool { return k.key == mark[i].key }); at >= 0 {
			*list[at].value = mark[i]
			m.worked.list = append(m.worked.list, list[at])
		}
	}
}

// Accept takes a catalogue file in as quote.Accept does, if it is of the plant that the
// page is for.
func (m *Memory) Accept(file []byte) (*quote.Edition, error) { return m.ofPlant(quote.Accept(file)) }

// Open opens a catalogue file as quote.OpenEdition does, if it is of the plant that the
// page is for.
func (m *Memory) Open(file []byte) (*quote.Edition, error) { return m.ofPlant(quote.OpenEdition(file)) }

func (m *Memory) ofPlant(ed *quote.Edition, err error) (*quote.Edition, error) {
	if err != nil {
		return nil, err
	}
	if ps := sign.OfPlant(ed.Cat, m.Plant); ps != nil {
		return nil, ps
	}
	return ed, nil
}
