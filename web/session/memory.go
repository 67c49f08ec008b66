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
	Proposals Later[*propose.Search] // answers to needs
	GiveUps   Later[*propose.Giving] // what would have to go where they cannot all be met
	Costs     *costs.Sheet           // open until locked; never in a reply

	drafts latest[*quote.Draft] // by the text that requests brought
	worked latest[*Worked]      // by edition and draft
	issued latest[*Issued]      // by edition and link
}
