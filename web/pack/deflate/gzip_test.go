package deflate

import (
	"bytes"
	"compress/gzip"
	"io"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func unpack(t require.TestingT, packed []byte) []byte {
	r, err := gzip.NewReader(bytes.NewReader(packed))
	require.NoError(t, err)
	data, err := io.ReadAll(r)
	require.NoError(t, err)
	return data
}

// The standard library's reader is the independent judge.
func TestWhatIsPackedUnpacks(t *testing.T) {
	for _, c := range []struct {
		data   string
		reason string
	}{
		{"", "nothing"},
		{"a", "one byte"},
		{"abc", "no match"},
		{strings.Repeat("a", 3), "too short for a match of its own"},
		{strings.Repeat("a", 259), "the longest match and no more"},
		{strings.Repeat("a", 600_000), "one long run"},
		{strings.Repeat("\x00", window) + "x" + strings.Repeat("\x00", window), "as far back as a distance goes"},
		{strings.Repeat("abcdefghijklmnopqrstuvwxyz", stretch/26) + strings.Repeat("0123456789", 10_000), "more than one stretch"},
		{strings.Repeat("plain words and words again. ", 2000) + strings.Repeat("\x01\x02\x00\x00\x03", 9000), "two kinds of bytes"},
	} {
		assert.True(t, c.data == string(unpack(t, Gzip([]byte(c.data)))), c.reason)
	}
}

func TestAnythingUnpacks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var data []byte
		for range rapid.IntRange(0, 30).Draw(t, "parts") {
			switch rapid.IntRange(0, 2).Draw(t, "kind") {
			case 0:
				data = append(data, rapid.SliceOfN(rapid.Byte(), 0, 300).Draw(t, "bytes")...)
			case 1:
				data = append(data, bytes.Repeat(rapid.SliceOfN(rapid.Byte(), 1, 9).Draw(t, "again"), rapid.IntRange(0, 200).Draw(t, "times"))...)
			case 2:
				if len(data) > 0 {
					from := rapid.IntRange(0, len(data)-1).Draw(t, "from")
					data = append(data, data[from:min(len(data), from+700)]...)
				}
			}
		}
		assert.True(t, bytes.Equal(data, unpack(t, Gzip(data))))
	})
}

func TestItIsSmallerThanTheStandardPacker(t *testing.T) {
	var data []byte
	for _, name := range []string{"gzip.go", "finder.go", "block.go", "codes.go", "huffman.go", "write.go", "gzip_test.go"} {
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		data = append(data, text...)
	}
	var b bytes.Buffer
	w, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	require.NoError(t, err)
	_, err = w.Write(data)
	require.NoError(t, err)
	require.NoError(t, w.Close())
	assert.Less(t, len(Gzip(data)), b.Len()*98/100)
}

// Codes of each length in sum fill the room of codes exactly (Kraft), and none
// is longer than allowed.
func TestLengthsMakeAFullCode(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		count := rapid.SliceOfN(rapid.Uint32Range(0, 1<<20), 2, 19).Draw(t, "count")
		count[0], count[1] = 1, 1<<24
		sum := 0
		for s, n := range lengths(count, 7) {
			assert.Equal(t, count[s] > 0, n > 0)
			assert.LessOrEqual(t, n, uint8(7))
			if n > 0 {
				sum += 1 << (7 - n)
			}
		}
		assert.Equal(t, 1<<7, sum)
	})
}

// Source: RFC 1951, 3.2.2: lengths (3, 3, 3, 3, 3, 2, 4, 4) give the codes 010,
// 011, 100, 101, 110, 00, 1110 and 1111.
func TestCodesAreThoseOfTheStandard(t *testing.T) {
	assert.Equal(t, []uint16{0b010, 0b110, 0b001, 0b101, 0b011, 0b00, 0b0111, 0b1111}, codes([]uint8{3, 3, 3, 3, 3, 2, 4, 4}), "bits are turned round")
}

// Source: RFC 1951, 3.2.5, first and last of some rows.
func TestLengthAndDistanceCodesAreThoseOfTheStandard(t *testing.T) {
	for length, code := range map[int]uint16{3: 257, 10: 264, 11: 265, 12: 265, 18: 268, 19: 269, 66: 276, 67: 277, 227: 284, 257: 284, 258: 285} {
		assert.Equal(t, code, lengthCode[length], length)
	}
	for distance, code := range map[uint16]int{1: 0, 4: 3, 5: 4, 6: 4, 7: 5, 9: 6, 24: 8, 25: 9, 193: 15, 16385: 28, 24577: 29, 32768: 29} {
		assert.Equal(t, code, distanceCode(distance), distance)
	}
	for code := range 30 {
		assert.Equal(t, code, distanceCode(distanceBase(code)))
	}
}

func BenchmarkGzip(b *testing.B) {
	data := bytes.Repeat([]byte("a page of words, 1234 of them; and some more. "), 5000)
	b.SetBytes(int64(len(data)))
	for b.Loop() {
		Gzip(data)
	}
}
