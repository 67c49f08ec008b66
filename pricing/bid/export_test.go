package bid

import "boxwright/pricing/quote"

// Forget drops the lines that an edition remembers.
func Forget(ed *quote.Edition) { clear(vocabularyOf(ed).read) }
