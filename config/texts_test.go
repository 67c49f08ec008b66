package config

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What reaches beyond its place is found wherever it stands, and can be taken out.
func TestTextsAreFoundWhereTheyStand(t *testing.T) {
	limit := 5.0
	c := &Catalogue{Title: "Plain – “catalogue”", Signers: []Signer{{Name: "A"}, {Name: "B\u202e", MaxDiscount: &limit}},
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
