package body

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

func randomBox(t *rapid.T, name string) Box {
	at := func(axis string) (lo, hi float64) {
		lo = float64(rapid.IntRange(-200, 200).Draw(t, name+axis))
		return lo, lo + float64(rapid.IntRange(1, 80).Draw(t, name+axis+" long"))
	}
	var b Box
	b.X0, b.X1 = at("x")
	b.Y0, b.Y1 = at("y")
	b.Z0, b.Z1 = at("z")
	return b
}

// Counting cells of an inch says the same as the overlap does.
func TestOverlapIsWhatBothHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := randomBox(t, "a "), randomBox(t, "b ")
		x, y, z, ok := a.Overlap(b)
		cells := func(lo1, hi1, lo2, hi2 float64) (n int) {
			for v := lo1; v < hi1; v++ {
				if v >= lo2 && v < hi2 {
					n++
				}
			}
			return n
		}
		nx, ny, nz := cells(a.X0, a.X1, b.X0, b.X1), cells(a.Y0, a.Y1, b.Y0, b.Y1), cells(a.Z0, a.Z1, b.Z0, b.Z1)
		assert.Equal(t, nx > 0 && ny > 0 && nz > 0, ok)
		if ok {
			assert.Equal(t, []float64{float64(nx), float64(ny), float64(nz)}, []float64{x, y, z})
			assert.LessOrEqual(t, x*y*z, min(a.Volume(), b.Volume()), "what both hold is in each")
		}
		x2, y2, z2, ok2 := b.Overlap(a)
		assert.Equal(t, []any{x, y, z, ok}, []any{x2, y2, z2, ok2}, "whoever is asked first")
		assert.InDelta(t, a.Volume(), a.Mirrored().Volume(), 1e-9)
		assert.Equal(t, a, a.Mirrored().Mirrored())
		_, _, _, self := a.Overlap(a)
		assert.True(t, self)
	})
}
