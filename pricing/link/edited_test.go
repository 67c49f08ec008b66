package link_test

import (
	"errors"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/seeds"
	"boxwright/pricing/link"
	"boxwright/pricing/quote"
	"boxwright/pricing/sign"
)

const letters64 = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"

// edits are what a stranger may do to a link by hand or by program; other is another
// signed link of the same seller.
var edits = []struct {
	name string
	edit func(r *rand.Rand, text, other string) string
}{
	{"a letter changed", func(r *rand.Rand, s, _ string) string {
		at := 2 + r.IntN(len(s)-2)
		return s[:at] + string(letters64[r.IntN(64)]) + s[at+1:]
	}},
	{"a letter taken out", func(r *rand.Rand, s, _ string) string {
		at := 2 + r.IntN(len(s)-2)
		return s[:at] + s[at+1:]
	}},
	{"a letter put in", func(r *rand.Rand, s, _ string) string {
		at := 2 + r.IntN(len(s)-1)
		return s[:at] + string(letters64[r.IntN(64)]) + s[at:]
	}},
	{"cut short", func(r *rand.Rand, s, _ string) string { return s[:2+r.IntN(len(s)-2)] }},
	{"two parts in the other order", func(r *rand.Rand, s, _ string) string {
		a, b := 2+r.IntN(len(s)-2), 2+r.IntN(len(s)-2)
		a, b = min(a, b), max(a, b)
		return s[:a] + s[b:] + s[a:b]
	}},
	{"a part of another link", func(r *rand.Rand, s, other string) string {
		n := min(len(s), len(other))
		a := 2 + r.IntN(n-2)
		b := a + r.IntN(n-a)
		return s[:a] + other[a:b] + s[b:]
	}},
	{"the beginning of one, the end of another", func(r *rand.Rand, s, other string) string {
		at := 2 + r.IntN(min(len(s), len(other))-2)
		return s[:at] + other[at:]
	}},
	{"many letters changed", func(r *rand.Rand, s, _ string) string {
		b := []byte(s)
		for range 2 + r.IntN(40) {
			b[2+r.IntN(len(b)-2)] = letters64[r.IntN(64)]
		}
		return string(b)
	}},
}

// Links that were edited by the thousand are refused in words, or are the very quote that
// was signed, byte for byte: no edit opens as another one.
func TestLinksEditedByTheThousand(t *testing.T) {
	k, err := sign.New(strings.NewReader(strings.Repeat("s", 32)))
	require.NoError(t, err)
	var links, drafts []string
	for _, title := range []string{"Medic 1", "Medic 2 of the county"} {
		d := quote.New(demo(), "", "", config.Date{Year: 2026, Month: 11, Day: 25})
		d.Title, d.Number = title, "2026-114"
		plain, err := link.Encode(quoted(d))
		require.NoError(t, err)
		signed, err := link.Sign(plain, demo().Cat, k)
		require.NoError(t, err)
		for _, text := range []string{plain, signed} {
			back, _, err := link.Decode(demo().Cat, text)
			require.NoError(t, err)
			data, err := back.Bytes()
			require.NoError(t, err)
			links, drafts = append(links, text), append(drafts, string(data))
		}
	}
	number := 20_000
	if testing.Short() {
		number = 2_000
	}
	r := rand.New(rand.NewPCG(uint64(seeds.First()), 1))
	refused, same := map[string]int{}, 0
	for n := range number {
		from := r.IntN(len(links))
		e := edits[n%len(edits)]
		text := e.edit(r, links[from], links[(from+2)%len(links)])
		if slices.Contains(links, text) {
			continue
		}
		d, _, err := link.Decode(demo().Cat, text)
		if err != nil {
			fault, known := errors.AsType[*link.Error](err)
			require.True(t, known, "%s: %v", e.name, err)
			require.NotEmpty(t, fault.Text, e.name)
			refused[fault.Code]++
			continue
		}
		data, err := d.Bytes()
		require.NoError(t, err)
		at := slices.Index(drafts, string(data))
		if at < 0 { // as it was sent, in other letters around it
			d.Issued = links[from]
			data, err = d.Bytes()
			require.NoError(t, err)
			at = slices.Index(drafts, string(data))
		}
		require.GreaterOrEqual(t, at, 0, "%s opens as another quote:\n%s", e.name, text)
		same++
	}
	t.Logf("%d edited links: refused %v, the same quote %d", number, refused, same)
}
