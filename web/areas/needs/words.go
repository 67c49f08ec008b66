package needs

import "boxwright/web/page"

// words of the area, in the order they are met.
var words = []*page.Term{
	page.Types,
	page.Payload,
	page.EvenOdds,
	page.NineInTen,
}
