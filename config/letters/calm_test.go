package letters

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A text of a stranger does not turn, hide or cover what stands beside it.
func TestTextsOfStrangersStayWithinThemselves(t *testing.T) {
	for name, x := range map[string]struct{ text, want string }{
		"plain":                      {"Medic 7", "Medic 7"},
		"several lines":              {"a\r\n\tb", "a\r\n\tb"},
		"accents":                    {"Médic cafe\u0301 Việt № 7 – “q” 100 °C", "Médic cafe\u0301 Việt № 7 – “q” 100 °C"},
		"another writing":            {"רכב 7", "רכב 7"},
		"a direction turned":         {"\u202e00.996,672 DSU", "00.996,672 DSU"},
		"a direction isolated, open": {"a\u2067b", "ab"},
		"a direction embedded, open": {"a\u202bb", "ab"},
		"control characters":         {"a\x00b\x07c\u0085d\x7f", "abcd"},
		"accents stacked":            {"Z" + strings.Repeat("\u0310", 40) + "a\u0301", "Z" + strings.Repeat("\u0310", 4) + "a\u0301"},
		"accents of another writing": {"ก" + strings.Repeat("\u0e47", 40), "ก" + strings.Repeat("\u0e47", 4)},
		"usual accents there":        {"ที่นี่ מְנוֹרָה हिन्दी", "ที่นี่ מְנוֹרָה हिन्दी"},
		"a mark of direction":        {"USD \u200f1\u061c 2\u200e", "USD 1 2"},
		"of no width":                {"a\u200bb\u2060c\ufeffd\U000e0041\u2028e", "abcde"},
		"accents of another block":   {"Z" + strings.Repeat("\u20dd", 40), "Z" + strings.Repeat("\u20dd", 4)},
	} {
		t.Run(name, func(t *testing.T) {
			assert.Equal(t, x.want, Calm(x.text))
		})
	}
}

// A part written from the right stands within itself, whoever wrote it.
func TestWhatIsWrittenFromTheRightTurnsNothingElse(t *testing.T) {
	for name, x := range map[string]struct{ text, want string }{
		"from the left":       {"Medic 7", "Medic 7"},
		"from the right":      {"רכב 7", "\u2068רכב 7\u2069"},
		"with an end in it":   {"רכב\u2069 7\u2068", "\u2068רכב 7\u2069"},
		"with a turn in it":   {"רכב\u202e7", "\u2068רכב7\u2069"},
		"isolated by us":      {"\u2068רכב\u2069 · USD 1", "\u2068רכב\u2069 · USD 1"},
		"written in cyrillic": {"Медик 7", "Медик 7"},
	} {
		t.Run(name, func(t *testing.T) {
			got := Isolate(x.text)
			if name == "isolated by us" {
				got = Calm(x.text)
			}
			assert.Equal(t, x.want, got)
			assert.Equal(t, got, Calm(got), "what is drawn keeps it")
		})
	}
}

// A text without any of the first bytes that are looked at has nothing to take out.
func TestEveryCharacterTakenOutIsLookedAt(t *testing.T) {
	for r := rune(0x80); r <= 0x10ffff; r++ {
		if text := string(r); control(r) || turns(r) || accent(r) {
			require.False(t, tame(text), "%U", r)
			require.True(t, Wild([]byte(text)), "%U", r)
			if r <= 0xffff {
				require.True(t, Wild(fmt.Appendf(nil, `"\u%04x"`, r)), "%U escaped", r)
			}
		}
	}
}

func TestWildTextsAreFoundInTheirJSON(t *testing.T) {
	for _, text := range []string{"\u202e", "\x00", "a\u0301", "\u2066", "\x7f", "\u0085"} {
		escaped, err := json.Marshal(text)
		require.NoError(t, err)
		assert.True(t, Wild(escaped), "%q", text)
		if text >= " " { // no JSON has a control character as it is
			assert.True(t, Wild([]byte(`"`+text+`"`)), "%q", text)
		}
	}
	for _, text := range []string{`"\ud83d\ude91"`, `"\u02"`, `"\u`, `"\uzzzz"`} {
		assert.True(t, Wild([]byte(text)), text)
	}
	assert.False(t, Wild([]byte(`{"title":"under \u003c 9 lb \u0026 dry"}`)))
	assert.False(t, Wild([]byte(`{"title":"Medic \"7\"\n\\ é"}`)))
	assert.False(t, Wild([]byte(`{"title":"Van – “short”, 3 × 4 in, 70 °F, Wi‑Fi"}`)), "usual letters of print")
}
