package weight

// Static stability: SSF = T/2h (nhtsa.dot.gov, Rollover, chapter V).

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/quantity"
)

func TestPublishedStability(t *testing.T) {
	for _, c := range []struct {
		reason              string
		front, rear, height float64 // tracks, and the center of gravity
		want, within        float64
	}{
		{"half the track up", 70, 70, 35, 1, 1e-9},
		// Fleet mean of full-size vans of model year 2003: 1.12 (TRID 763766). A van of 67.4 in
		// track would have its center 30.1 in up.
		{"a full-size van", 67.4, 67.4, 30.1, 1.12, 0.005},
		{"the mean of two tracks", 68, 76, 36, 1, 1e-9},
	} {
		t.Run(c.reason, func(t *testing.T) {
			cat := prepared(t)
			ch := &cat.Chassis[0]
			ch.TrackFrontIn, ch.TrackRearIn = quantity.Length(c.front), quantity.Length(c.rear)
			l := newLoader(cat, &config.Unit{Chassis: ch.ID, Body: cat.Bodies[0].ID}, people(175))
			require.True(t, l.usable())
			items := []Item{{Kind: KindChassis, Lb: 9000, ZIn: quantity.Length(c.height)}}
			for _, m := range l.measures() {
				if m.code == "weight.ssf" {
					f, ok := m.figure(items, newEstimate(l.assume, items))
					require.True(t, ok)
					assert.InDelta(t, c.want, f.Value, c.within)
					return
				}
			}
			t.Error("the static stability factor is not measured")
		})
	}
}
