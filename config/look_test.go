package config_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
)

// What an option says of its looks is checked, with the place and the fault.
func TestLooksAreChecked(t *testing.T) {
	place := func(more string) string {
		return `"places": [{"kind": "band", "face": "street", "length_in": 4, "width_in": 0.1, "height_in": 6` + more +
			`}]`
	}
	for _, c := range []struct{ name, adds, fault string }{
		{"a spread row", place(`, "spread": true, "count": 3, "color": "red"`), ""},
		{"paint in two colors", `"look": {"paint": {"colors": ["white", "red"], "breaks_in": [20]}}`, ""},
		{"why it is not seen", `"unseen": "inside"`, ""},
		{"a color that is none", place(`, "color": "mauve"`), "places[0] color"},
		{"a hinge that is none", place(`, "hinge": "middle"`), "places[0] hinge"},
		{"a row without a distance", place(`, "count": 3`), "places[0] pitch_in"},
		{"two colors without a break", `"look": {"paint": {"colors": ["white", "red"]}}`, "look paint"},
		{"a letter that is none", `"look": {"lamps": {"front": "RX"}}`, "look lamps front"},
		{"a reason that is none", `"unseen": "shy"`, "unseen"},
		{"seen and not seen", `"unseen": "inside", ` + place(""), "unseen"},
	} {
		t.Run(c.name, func(t *testing.T) {
			text := strings.Replace(small, `"mass": {"lb": 8, "zone": "module-mid"}`, c.adds, 1)
			require.NotEqual(t, small, text)
			_, err := config.Read([]byte(text))
			if c.fault == "" {
				assert.NoError(t, err)
				return
			}
			require.Error(t, err)
			assert.Contains(t, err.Error(), c.fault)
		})
	}
}

func TestColorsInATypedText(t *testing.T) {
	for _, c := range []struct {
		text string
		want []string
	}{
		{"White over Blue, break at the belt", []string{"white", "blue"}},
		{"code 7731, grey", []string{"gray"}},
		{"school-bus", nil},
		{"", nil},
	} {
		t.Run(c.text, func(t *testing.T) { assert.Equal(t, c.want, config.ColorsIn(c.text)) })
	}
	seen := map[string]string{}
	for name, letter := range config.ColorNames {
		assert.Empty(t, seen[letter], "%s has the letter of another", name)
		seen[letter] = name
		assert.Equal(t, name, config.ColorOf(letter[0]))
	}
}
