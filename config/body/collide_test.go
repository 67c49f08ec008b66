package body_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config/body"
)

// boxes are parts of options of their own, somewhere in a room of 100 in.
func boxes(r *rand.Rand, n int, size float64) []body.Part {
	list := make([]body.Part, n)
	for i := range list {
		x, y, z := 100*r.Float64(), 100*r.Float64(), 100*r.Float64()
		list[i] = body.Part{ID: fmt.Sprint(i), Kind: "lamp", Option: fmt.Sprint("o", i),
			Box: body.Box{X0: x, X1: x + size, Y0: y, Y1: y + size, Z0: z, Z1: z + size}}
	}
	return list
}

// Looking from the front to the rear finds what trying every pair does, in its order.
func TestCollisionsAgreeWithTryingEveryPair(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	found := 0
	for range 40 {
		list := boxes(r, 40, 12)
		var want, got []string
		for i := range list {
			for k := i + 1; k < len(list); k++ {
				x, y, z, _ := list[i].Overlap(list[k].Box)
				if math.Min(x, math.Min(y, z)) > 0.26 {
					want = append(want, list[i].ID+" "+list[k].ID)
				}
			}
		}
		for _, c := range body.Between(list, list) {
			got = append(got, c.A.ID+" "+c.B.ID)
		}
		require.Equal(t, want, got)
		found += len(got)
	}
	require.NotZero(t, found)
}

// Ten thousand parts in one place are told of by a few.
func TestCollisionsEnd(t *testing.T) {
	list := boxes(rand.New(rand.NewPCG(1, 1)), 10_000, 100)
	require.Len(t, body.Between(list, list), 200)
	for i := range list {
		list[i].Option = "one"
	}
	require.Empty(t, body.Between(list, list))
}

// Who is told of a collision is told which of the sizes nobody has stated.
func TestCollisionsSayWhatIsAssumed(t *testing.T) {
	stated := body.Part{Label: "Hose reel", Kind: "lamp", Option: "a"}
	about := body.Part{Label: "Pump", Kind: "lamp", Option: "b", About: true}
	for _, c := range []struct {
		a, b body.Part
		want string
	}{{stated, stated, ""}, {about, stated, "Pump"}, {stated, about, "Pump"}, {about, about, "Pump and Pump"}} {
		f := (&body.Collision{A: c.a, B: c.b, X: 2, Y: 3, Z: 4}).Finding()
		require.Equal(t, c.want, f.Figure.Assumed)
		if c.want == "" {
			require.NotContains(t, f.Text+f.Remedy, "size")
		} else {
			require.Contains(t, f.Text, "Assumed size, not stated: "+c.want+".")
			require.Contains(t, f.Remedy, "ask the plant")
		}
	}
}
