package link

import (
	"bytes"
	"encoding/base64"
	"errors"
	"runtime"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boxwright/config"
	"boxwright/pricing/quote"
	"boxwright/web/assets/catalogue"
)

func TestTextComesBackWithWhatFollows(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		text := rapid.SliceOfN(rapid.Byte(), 0, 600).Draw(r, "text")
		if rapid.Bool().Draw(r, "like a draft") {
			from := rapid.IntRange(0, len(dictionary2)).Draw(r, "from")
			text = append(text, dictionary2[from:]...)
		}
		more := rapid.SliceOfN(rapid.Byte(), 0, 20).Draw(r, "more")
		packed, err := squeeze(text)
		require.NoError(r, err)
		got, after, err := expand(slices.Concat(packed, more))
		require.NoError(r, err)
		require.Equal(r, string(text), string(got))
		require.Equal(r, string(more), string(after))
		_, _, err = expand(packed[:len(packed)-1])
		require.Error(r, err, "the end is missing")
	})
}

// A text packed by an earlier build stays readable for as long as links of content
// version 2 are read, which a change of the dictionary would end; and the same
// text is packed into the same bytes natively and in wasm. Should a later
// toolchain pack it otherwise, only the second half changes.
func TestPackedTextStaysReadable(t *testing.T) {
	const text = `{"q":{"format":"boxwright-quote/1","number":"27-0031","rev":2,"date":"2027-02-09","title":"Rettung 7` +
		` – Ünit","seller":{"name":"Prairie Emergency Vehicles"},"buyer":{"name":"Larkspur County","person":"` +
		`Chief M. Okafor"},"unit":{"catalogue":"","edition":"","chassis":"","body":"","picks":null,"rule_set"` +
		`:"kkk-a-1822f","order_on":"2027-02-09"},"terms":{"freight_miles":"412","bond":true}},"f":{"e":"demo ` +
		`2026-11","c":"Cutaway","b":"Module","t":"USD 301,100.00","u":"2027-04-10","d":"2027-09-30","p":1502}` +
		`}`
	const packed = `Iq1tYK5rYGBsCGsbGOmg9oWMdA0skdoGQaklJaV56QrmCo8aJiscngPpDGG0EQKKEjOLMlOxNRGwVtdF2cUFpUXQKhtLhayn4J-d` +
		`mJZfpET_ViMsDJBLWPRiycTQCCUzE5lyUNIEUrwbGxjqGBpgxLsJpAZIQS35IfFuamBUWwsIAAD__w`
	data, err := base64.RawURLEncoding.DecodeString(packed)
	require.NoError(t, err)
	got, after, err := expand(data)
	require.NoError(t, err)
	require.Equal(t, text, string(got))
	require.Empty(t, after)

	again, err := squeeze([]byte(text))
	require.NoError(t, err)
	require.Equal(t, packed, base64.RawURLEncoding.EncodeToString(again))
}

// What expands to more than is read is given up at the limit: a text of 64 MB
// takes no more memory than one of 256 KB.
func TestTextThatExpandsForEverIsGivenUp(t *testing.T) {
	for name, size := range map[string]int{"one byte too many": maxRest + 1, "64 MB": 64 << 20} {
		t.Run(name, func(t *testing.T) {
			packed, err := squeeze(bytes.Repeat([]byte{' '}, size))
			require.NoError(t, err)
			var before, after runtime.MemStats
			runtime.ReadMemStats(&before)
			_, _, err = expand(packed)
			runtime.ReadMemStats(&after)
			require.ErrorIs(t, err, errPacked)
			require.Less(t, after.TotalAlloc-before.TotalAlloc, uint64(4<<20))
		})
	}
	packed, err := squeeze(bytes.Repeat([]byte{' '}, maxRest))
	require.NoError(t, err)
	_, _, err = expand(packed)
	require.NoError(t, err, "the most that is read")
}

// forged are contents that no page of ours writes.
func forged(t testing.TB) map[string]string {
	cat, err := config.Read(catalogue.Demo)
	require.NoError(t, err)
	hash := func(c *config.Catalogue) []byte {
		text, err := Encode(computed(t))
		require.NoError(t, err)
		p, err := unwrap(text)
		require.NoError(t, err)
		return p.content[:hashBytes]
	}(cat)
	pack := func(text string) []byte {
		packed, err := squeeze([]byte(text))
		require.NoError(t, err)
		return packed
	}
	q := computed(t)
	whole, err := Encode(q)
	require.NoError(t, err)
	p, err := unwrap(whole)
	require.NoError(t, err)
	text, made, err := expand(p.content[hashBytes:])
	require.NoError(t, err)
	with := func(old, new string) string {
		require.Contains(t, string(text), old)
		return strings.Replace(string(text), old, new, 1)
	}
	link := func(parts ...[]byte) string {
		return sealUp(unsigned, slices.Concat(append([][]byte{hash}, parts...)...))
	}
	return map[string]string{
		"nothing in the text":         link(pack(""), made),
		"null":                        link(pack("null"), made),
		"no draft":                    link(pack(`{"f":{}}`), made),
		"a draft that is null":        link(pack(`{"q":null,"f":{}}`), made),
		"another link inside":         link(pack(with(`"date"`, `"earlier":"q=A","date"`)), made),
		"a signed link inside":        link(pack(with(`"date"`, `"issued":"q=A","date"`)), made),
		"a field that is unknown":     link(pack(with(`"date"`, `"margin":"1","date"`)), made),
		"deep":                        link(pack(strings.Repeat("[", 50_000)), made),
		"a bomb":                      link(pack(strings.Repeat(" ", 8<<20)), made),
		"a text without its end":      link(pack(string(text))[:20]),
		"no units":                    link(pack(string(text))),
		"units without their end":     link(pack(string(text)), made[:len(made)/2]),
		"a byte after the units":      link(pack(string(text)), made, []byte{1}),
		"a zero after the units":      link(pack(string(text)), made, []byte{0}),
		"zeros after the units":       link(pack(string(text)), made, make([]byte, 3)),
		"ones in place of the units":  link(pack(string(text)), bytes.Repeat([]byte{0xff}, 40)),
		"carried stands in the text":  link(pack(with(`"picks":null`, `"picks":null,"carried":[{"equipment":"eq-stair-chair","qty":1}]`)), made),
		"many units":                  link(pack(with(`"terms"`, `"more":[`+strings.TrimSuffix(strings.Repeat(`{"unit":{"catalogue":"","edition":"","chassis":"","body":"","picks":null,"rule_set":"","order_on":""}},`, 900), ",")+`],"terms"`)), made),
		"signed by nobody":            sealUp(signed, slices.Concat(make([]byte, signatureHead), hash, pack(string(text)), made)),
		"signed, and nothing more":    sealUp(signed, make([]byte, signatureHead)),
		"another edition":             sealUp(unsigned, slices.Concat([]byte("12345678"), pack(string(text)), made)),
		"another edition, no draft":   sealUp(unsigned, slices.Concat([]byte("12345678"), pack(`{"q":null,"f":{}}`), made)),
		"another edition, and a bomb": sealUp(unsigned, slices.Concat([]byte("12345678"), pack(strings.Repeat(" ", 8<<20)))),
	}
}

// computed is a small quote of the demonstration catalogue.
func computed(t testing.TB) *quote.Quote {
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	q, err := quote.Compute(ed, quote.Begin(ed, "", "", config.Date{Year: 2026, Month: 11, Day: 25}))
	require.NoError(t, err)
	return q
}

func TestForgedLinksAreRefused(t *testing.T) {
	cat, err := config.Read(catalogue.Demo)
	require.NoError(t, err)
	for name, text := range forged(t) {
		t.Run(name, func(t *testing.T) {
			d, f, err := Decode(cat, text)
			var fault *Error
			require.True(t, errors.As(err, &fault), "%v", err)
			require.NotEmpty(t, fault.Text)
			require.Nil(t, d)
			require.Nil(t, f)
			if name == "another edition" {
				require.Equal(t, UnknownEdition, fault.Code)
			} else {
				require.Contains(t, []string{NotValid, Altered, Malformed, TooLong}, fault.Code)
			}
		})
	}
}
