package link_test

import (
	"reflect"
	"regexp"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/pricing/link"
	"boxwright/pricing/quote"
)

// What a link can carry is what a draft and Frozen can hold. No field of theirs,
// however deep, may be about what the seller pays, earns or notes privately.
func TestNoFieldIsPrivate(t *testing.T) {
	private := regexp.MustCompile(`(?i)cost|margin|profit|internal|private|secret`)
	seen := map[reflect.Type]bool{}
	var names []string
	var walk func(reflect.Type)
	walk = func(x reflect.Type) {
		switch x.Kind() {
		case reflect.Pointer, reflect.Slice, reflect.Array, reflect.Map:
			walk(x.Elem())
			return
		case reflect.Struct:
		default:
			return
		}
		if seen[x] {
			return
		}
		seen[x] = true
		for i := range x.NumField() {
			f := x.Field(i)
			names = append(names, f.Name)
			assert.NotRegexp(t, private, f.Name, x.String())
			assert.NotRegexp(t, private, f.Tag.Get("json"), x.String())
			walk(f.Type)
		}
	}
	walk(reflect.TypeOf(quote.Draft{}))
	walk(reflect.TypeOf(link.Frozen{}))
	require.True(t, slices.Contains(names, "TradeInText"), "the walk goes down into the terms")
}

// A link of a draft that holds other links does not carry them.
func TestLinkCarriesNoOtherLink(t *testing.T) {
	d := typical()
	bare, err := quote.Compute(demo(), d)
	require.NoError(t, err)
	want, err := link.Encode(bare)
	require.NoError(t, err)
	d.Earlier, d.Issued = "q=earlier", "q=issued"
	q, err := quote.Compute(demo(), d)
	require.NoError(t, err)
	got, err := link.Encode(q)
	require.NoError(t, err)
	assert.Equal(t, want, got)
}

func TestSignedLink(t *testing.T) {
	q, err := quote.Compute(demo(), typical())
	require.NoError(t, err)
	text, err := link.Encode(q)
	require.NoError(t, err)
	signed, err := link.Sign(text, demo().Cat, key("a"))
	require.NoError(t, err)
	who, err := link.Signer("https://quotes.example/#" + signed)
	require.NoError(t, err)
	assert.Equal(t, key("a").Public(), who)
	nobody, err := link.Signer(text)
	require.NoError(t, err)
	assert.Nil(t, nobody)
	_, err = link.Sign(signed, demo().Cat, key("b"))
	assert.Error(t, err, "signed twice")
	d, _, err := link.Decode(demo().Cat, signed)
	require.NoError(t, err)
	assert.Equal(t, signed, d.Issued)
	assert.Len(t, link.Name(signed), 22)
	assert.NotEqual(t, link.Name(text), link.Name(signed))
	assert.Empty(t, link.Name("q=AAAA"))
}
