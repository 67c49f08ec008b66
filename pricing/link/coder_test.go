package link

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestCoderGivesBackTheSame(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		numbers := rapid.SliceOfN(rapid.IntRange(0, 1<<22), 0, 40).Draw(r, "numbers")
		w := newWriter()
		var s sizes
		for _, n := range numbers {
			w.number(&s, n)
			w.below(n+1, n/2)
		}
		c := newReader(w.finish())
		s = sizes{}
		for _, n := range numbers {
			require.Equal(r, n, c.number(&s, 0))
			require.Equal(r, n/2, c.below(n+1, 0))
		}
		require.True(r, c.ended())
	})
}
