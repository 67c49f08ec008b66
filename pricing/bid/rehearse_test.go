package bid_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/config/quantity"
	"boxwright/pricing/bid"
)

// What is rehearsed leaves nothing behind: neither lines that were read nor other answers.
func TestRehearsalLeavesNothing(t *testing.T) {
	q, before := answersTo(t, "GVWR 14,500 lb minimum", "Squad bench 72 in long", "Power-load cot fastening")
	read := bid.LinesRead(q.Edition)
	bid.Rehearse(q, quantity.US)
	assert.Equal(t, read, bid.LinesRead(q.Edition))
	assert.Equal(t, before, bid.Answers(q, quantity.US))
}
