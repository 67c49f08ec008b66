package large

import (
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/seeds"
)

// What is grown is a catalogue like any other, and each time the same.
func TestFile(t *testing.T) {
	const options = 1200
	for seed := range seeds.Each(2) {
		file, err := File(options, seed)
		require.NoError(t, err)
		again, err := File(options, seed)
		require.NoError(t, err)
		require.Equal(t, file, again)
		cat, err := config.Read(file)
		require.NoError(t, err)
		require.Len(t, cat.Options, options)
		require.Len(t, cat.Rules, 2*options)
	}
}

func TestNoSmallerThanTheDemonstration(t *testing.T) {
	_, err := File(10, 1)
	require.Error(t, err)
}
