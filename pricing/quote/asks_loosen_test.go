package quote_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/config"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
)

// Of a climate that is a must, one option is let go and the others stay musts.
func TestOneOptionOfAWordIsLetGo(t *testing.T) {
	ed := quotetest.Demo(t)
	n := quote.Needs{Climate: "cold"}
	n.SetFirm("climate", true)
	all, _ := n.Wishes(ed.Cat)
	n.Loosen(ed.Cat, &config.Unit{}, "heat-fuel")
	left, _ := n.Wishes(ed.Cat)
	assert.Len(t, left, len(all)-1)
	assert.NotContains(t, left, "heat-fuel")
	n.GiveWay(ed.Cat, left[0])
	fewer, like := n.Wishes(ed.Cat)
	assert.Len(t, fewer, len(all)-2)
	assert.Contains(t, like, left[0], "it is a would-like still")
}
