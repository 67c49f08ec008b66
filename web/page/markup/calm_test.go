package markup

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// A text of a stranger does not turn, hide or cover what stands beside it.
func TestTextsOfStrangersStayWithinThemselves(t *testing.T) {
	for name, x := range map[string]struct{ text, want string }{
		"plain":                      {"Medic 7", "Medic 7"},
		"several lines":              {"a\n\tb", "a\n\tb"},
		"accents":                    {"Médic cafe\u0301 Việt № 7 – “q” 100 °C", "Médic cafe\u0301 Việt № 7 – “q” 100 °C"},
		"another writing":            {"רכב 7", "רכב 7"},
		"a direction turned":         {"\u202e00.996,672 DSU", "00.996,672 DSU"},
		"a direction isolated, open": {"a\u2067b", "ab"},
		"a direction embedded, open": {"a\u202bb", "ab"},
		"control characters":         {"a\x00b\x07c\u0085d\x7f", "abcd"},
		"accents stacked":            {"Z" + strings.Repeat("\u0310", 40) + "a\u0301", "Z" + strings.Repeat("\u0310", 4) + "a\u0301"},
		"accents of another block":   {"Z" + strings.Repeat("\u20dd", 40), "Z" + strings.Repeat("\u20dd", 4)},
	} {
		t.Run(name, func(t *testing.T) {
			assert.Equal(t, "<p>"+x.want+"</p>", El("p", Text(x.text)).String())
		})
	}
}
