package session

import (
	"boxwright/pricing/costs"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
)

// Memory is what the core keeps between requests: catalogues it has read and what
// it has worked out. A worker that dies loses nothing by losing it.
type Memory struct {
	Edition   *quote.Edition // in use
	Keep      Keeping
	worked    []*Worked    // the drafts worked out last, the latest first
	drafts    []readDraft  // those that requests brought last
	Proposed  Proposed     // the last answer to needs
	Costs     *costs.Sheet // open until locked; never in a reply
	issued    *issued      // what the last signed quote holds
	issuedFor *quote.Edition
}

// Proposed is an answer to needs.
type Proposed struct {
	Key    string
	Search propose.Search
}
