package strip

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// calls is a module with one function for each code.
func calls(codes ...[]byte) []byte {
	body := []byte{byte(len(codes))}
	for _, c := range codes {
		body = append(append(body, byte(len(c))), c...)
	}
	return joinSections([]section{{codeSection, body}})
}

// comeBack stores the place of a function to come back to, and calls.
func comeBack(own, place int64) []byte {
	return append(appendSigned([]byte{constant}, own<<16|place), store, aligned, 0, 0x10, 0)
}

func TestFoldKeepsEveryPlace(t *testing.T) {
	first := append(comeBack(firstFunction, 3), comeBack(firstFunction, 5)...)
	second := append(comeBack(firstFunction+1, 1), comeBack(firstFunction, 9)...)
	module := calls(first, second)
	folded, err := Fold(module)
	require.NoError(t, err)
	left := func(n byte) []byte {
		return []byte{constant, filler, filler, filler, filler, n, store, aligned, 0, 0x10, 0}
	}
	want := calls(append(left(3), left(2)...), append(left(1), comeBack(firstFunction, 9)...))
	assert.Equal(t, want, folded, "places are counted from the one before; another function's stays as it is")
}

func TestFoldTableInOrder(t *testing.T) {
	table := []byte{1, 0, 0x41, 0x80, 0x20, 0x0b, 4, 126, 127, 0x80, 1, 0x81, 1}
	folded, err := Fold(joinSections([]section{{tableSection, table}}))
	require.NoError(t, err)
	assert.True(t, bytes.HasSuffix(folded, []byte{4, 126, 0, 0, 0, 0, 0}), "all but the first")
}

func TestFoldRefuses(t *testing.T) {
	for _, c := range []struct {
		module []byte
		reason string
	}{
		{[]byte("no module"), "not WebAssembly"},
		{calls([]byte{constant, filler, filler, filler, filler, 1, store, aligned, 0}), "a constant of the program's own would be taken for one that was left out"},
		{joinSections([]section{{tableSection, []byte{1, 0, 0x41, 0x80, 0x20, 0x0b, 2, 9, 7}}}), "the table is not in order"},
		{joinSections([]section{{tableSection, []byte{2}}}), "two segments"},
		{joinSections([]section{{codeSection, []byte{1, 9}}}), "cut short"},
	} {
		_, err := Fold(c.module)
		assert.Error(t, err, c.reason)
	}
}
