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

// A line that orders something of the unit is no term for what is to be handed in beside it.
func TestWhatIsHandedInBesideIsNoTerm(t *testing.T) {
	for _, line := range []string{
		"Hinges shall carry the door in any position; submit test sheet.",
		"Seat belts must hold at 3,000 lb, certificate submitted.",
	} {
		id, _ := terms.Of(line)
		assert.Empty(t, id, line)
	}
	assert.Empty(t, terms.General("The unit shall meet all bulletins in force when the contract is signed."))
	for _, line := range []string{
		"Bidder shall, within ten days, submit its drawings.",
		"Submit three copies, signed.",
		"Proposals, however late, shall be submitted.",
	} {
		id, _ := terms.Of(line)
		assert.NotEmpty(t, id, line)
	}
}
