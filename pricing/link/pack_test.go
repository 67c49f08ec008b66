package link

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestPackGivesBackTheSame(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		text := rapid.SliceOfN(rapid.Byte(), 0, 600).Draw(r, "text")
		if rapid.Bool().Draw(r, "like a draft") {
			from := rapid.IntRange(0, len(dictionary1)).Draw(r, "from")
			text = append(text, dictionary1[from:]...)
		}
		numbers := rapid.SliceOfN(rapid.IntRange(0, 1<<22), 0, 40).Draw(r, "numbers")
		w := newWriter()
		w.words(text, len(text))
		var s sizes
		for _, n := range numbers {
			w.number(&s, n)
			w.below(n+1, n/2)
		}
		c := newReader(w.finish())
		require.Equal(r, string(text), string(c.words(nil, len(text))))
		s = sizes{}
		for _, n := range numbers {
			require.Equal(r, n, c.number(&s, 0))
			require.Equal(r, n/2, c.below(n+1, 0))
		}
		require.True(r, c.ended())
	})
}

func TestWordsHaveALimit(t *testing.T) {
	w := newWriter()
	w.words([]byte("more than is read"), 1000)
	c := newReader(w.finish())
	require.Empty(t, c.words(nil, 5))
	require.False(t, c.ended())
}

func BenchmarkPack(b *testing.B) {
	text := []byte(dictionary1)[:800]
	for b.Loop() {
		w := newWriter()
		w.words(text, len(text))
		w.finish()
	}
}
