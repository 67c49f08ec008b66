package app

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/web/session"
)

// A standard item that cannot go says what holds it in.
func TestWhatHasToStayIsSaid(t *testing.T) {
	p := open(t)
	p.do(Act{Do: "new", ID: "cut-14500-158-gas"}, Act{Do: "go", ID: "unit"})
	before, stayed := p.req["draft"], 0
	for i, x := range p.unit().Picks {
		if i%4 != 0 {
			continue
		}
		p.req["draft"] = before
		s := p.do(Act{Do: "pick", ID: x.Option})
		d := draftOf(t, s)
		if !d.Unit.Has(x.Option) {
			assert.NotContains(t, s.Say, "has to stay in", x.Option)
			continue
		}
		stayed++
		assert.Contains(t, s.Say, "has to stay in. See why beside it.", x.Option)
		var v session.View
		require.NoError(t, json.Unmarshal(s.View, &v))
		assert.Equal(t, x.Option, v.Asked, "and why stands beside it")
	}
	assert.Positive(t, stayed)
}
