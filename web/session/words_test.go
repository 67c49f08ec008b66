package session

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/rules"
	"boxwright/pricing/quote"
	"boxwright/web/assets/catalogue"
)

// What the program changed by itself is named up to four things.
func TestChangesAreTold(t *testing.T) {
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	var list []rules.Change
	for i, name := range []string{"a", "b", "c", "d", "e", "f"} {
		o := &ed.Cat.Options[i]
		o.Label = "Thing " + name
		list = append(list, rules.Change{Option: o.ID, Added: i%2 == 0})
	}
	for _, c := range []struct {
		name, reason string
		changes      []rules.Change
		want         string
	}{
		{"none", "nothing is said of nothing", nil, "Done."},
		{"two", "added and taken out are told apart", list[:2], "Done. Also added: Thing a. Gave way: Thing b."},
		{"four", "four are all named", list[:4], "Done. Also added: Thing a. Gave way: Thing b. Also added: Thing c. Gave way: Thing d."},
		{"six", "the rest is counted", list, "Done. Also added: Thing a. Gave way: Thing b. Also added: Thing c. Gave way: Thing d. And 2 more."},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := &Session{Memory: &Memory{Edition: ed}, Notice: "Done."}
			s.Tell(c.changes)
			assert.Equal(t, c.want, s.Notice, c.reason)
		})
	}
}

// A file with many faults names the first three and counts the rest.
func TestFaultsAreWordedAsSentences(t *testing.T) {
	ps := config.Problems{{Where: "a", Text: "is wrong"}, {Where: "b", Text: "is wrong"},
		{Where: "c", Text: "is wrong"}, {Where: "d", Text: "is wrong"}, {Where: "e", Text: "is wrong"}}
	for _, c := range []struct {
		name, reason string
		err          error
		want         string
	}{
		{"plain", "another error is said as it is", errors.New("no"), "no"},
		{"one", "a single fault", ps[:1], "a: is wrong."},
		{"three", "three are all named", ps[:3], "a: is wrong. b: is wrong. c: is wrong."},
		{"five", "the rest is counted", ps, "a: is wrong. b: is wrong. c: is wrong. And 2 more."},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, Sentence(c.err), c.reason) })
	}
}
