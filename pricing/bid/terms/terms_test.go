package terms_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/pricing/bid/terms"
)

func TestOf(t *testing.T) {
	for _, c := range []struct {
		line, want string
		strong     bool
	}{
		{"A bid bond of 5 % shall be furnished", "bond", true},
		{"F.O.B. destination", "delivery", true},
		{"The bidder\u2019s insurance", "insurance", false},
		{"Powered cot with one charger", "", false},
		{"Bonded tread plate on the roof", "", false},
		{"Drug locker with audit trail", "", false},
	} {
		t.Run(c.line, func(t *testing.T) {
			id, strong := terms.Of(c.line)
			assert.Equal(t, c.want, id)
			assert.Equal(t, c.strong, strong)
		})
	}
	seen := map[string]bool{}
	for _, k := range terms.Kinds {
		assert.False(t, seen[k.ID], "%s stands twice", k.ID)
		seen[k.ID] = true
		assert.Equal(t, k.Name, terms.Name(k.ID))
	}
}
