package config

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What reaches beyond its place is found wherever it stands, and can be taken out.
func TestTextsAreFoundWhereTheyStand(t *testing.T) {
	limit := 5.0
	c := &Catalogue{Title: "Plain – “catalogue”",
		Signers: []Signer{{Name: "A"}, {Name: "B\u202e", MaxDiscount: &limit}},
		Options: []Option{{Label: strings.Repeat("x", 4001)}, {Spec: "Z" + strings.Repeat("\u0310", 40)}}}
	var where []string
	for _, p := range Texts(c) {
		where = append(where, p.Where)
	}
	assert.ElementsMatch(t, []string{"signers[1] name", "options[0] label", "options[1] spec"}, where)
	Calm(c)
	assert.Equal(t, "B", c.Signers[1].Name)
	assert.Len(t, Texts(c), 1, "a text too long stays as it is")
	assert.Equal(t, "Plain – “catalogue”", c.Title)
}

// A file in which a text has anything to be told of is gone through, and a sound one is not.
func TestDoubtfulFilesAreGoneThrough(t *testing.T) {
	for name, text := range map[string]string{
		"turning":            "B\u202e",
		"isolated":           "a\u2068b\u2069",
		"stacked":            "Z" + strings.Repeat("\u0310", 40),
		"control":            "a\u0085",
		"long":               strings.Repeat("x", 4001),
		"long with marks":    strings.Repeat(`"x`, 2001),
		"long with slashes":  strings.Repeat(`\`, 4001),
		"long, no UTF-8":     strings.Repeat("\xff", 1400),
		"long and all space": strings.Repeat(" ", 4001),
	} {
		t.Run(name, func(t *testing.T) {
			file, err := json.Marshal(Catalogue{Title: text})
			require.NoError(t, err)
			raw := strings.NewReplacer(`"`, `\"`, `\`, `\\`).Replace(text)
			for _, file := range []string{string(file), `{"title":"` + raw + `"}`} {
				assert.True(t, doubtful([]byte(file)), "%.40q", file)
			}
		})
	}
	assert.False(t, doubtful([]byte(`{"title":"Plain – “catalogue”, \"sound\""}`)))
}

func TestIDsOfAUnitHaveLimits(t *testing.T) {
	long := strings.Repeat("x", 65)
	for name, u := range map[string]Unit{
		"chassis": {Chassis: long}, "body": {Body: long}, "rules": {RuleSet: long}, "edition": {Edition: long},
		"catalogue": {Catalogue: long}, "proposed": {Proposed: []string{"a", long}}, "left out": {LeftOut: []string{long}},
		"picks": {Picks: []Pick{{Option: long}}}, "details": {Details: []Detail{{Option: long}}},
		"equipment":   {Carried: []Carried{{Equipment: long}}},
		"compartment": {Carried: []Carried{{Compartment: long}}},
		"own":         {Own: []OwnLimit{{Figure: long}}}, "factors": {Factors: []Assumed{{Factor: long}}},
	} {
		t.Run(name, func(t *testing.T) {
			ps := u.CheckIDs()
			require.Len(t, ps, 1)
			assert.Contains(t, ps[0].Text, "65 bytes; the most is 64")
		})
	}
	assert.Empty(t, (&Unit{Edition: strings.Repeat("0", 64)}).CheckIDs())
}
