package editions

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing/quote"
	"boxwright/web/assets/catalogue"
)

// What pairs begin with is told: a usual pair that misses a clause is likely a fault,
// another is worth a look, and what stands in another thing is named with both.
func TestPairsAreTriedAsTheyBegin(t *testing.T) {
	tried := func(change func(*config.Chassis), bodies ...string) []config.Finding {
		ed, err := quote.OpenEdition(bytes.Clone(catalogue.Demo))
		require.NoError(t, err)
		ch := ed.Cat.ChassisByID("cut-12500-138-gas")
		if change != nil {
			change(ch)
		}
		p := &pairs{ed: ed, missed: map[string]*missed{}}
		var out []config.Finding
		for _, id := range bodies {
			out = append(out, p.try(ch, ed.Cat.BodyByID(id))...)
		}
		return append(out, p.tell()...)
	}
	require.Empty(t, tried(nil, "mod-132-68"), "the usual pair")
	require.Empty(t, tried(nil, "mod-180-76"), "no unit can have it")

	found := tried(nil, "mod-120-64", "mod-124-66")
	require.Len(t, found, 3)
	for i, text := range []string{"Length of the patient compartment, at least 116.0 in (from memory)",
		"Squad bench, length, at least 72.0 in (from memory), is not met as these begin: Cutaway 12,500 lb, 138 in " +
			"wheelbase, gasoline with Module 120 in long, 64 in headroom (60.0 in); Cutaway 12,500 lb, 138 in wheelbase, " +
			"gasoline with Module 124 in long, 66 in headroom (60.0 in).", "Squad bench, width"} {
		require.Equal(t, "catalogue.pair-not-met", found[i].Code)
		require.Equal(t, config.Note, found[i].Severity)
		require.Contains(t, found[i].Text, text)
	}

	found = tried(func(ch *config.Chassis) { ch.UsualBody = "mod-124-66" }, "mod-120-64", "mod-124-66")
	require.Equal(t, config.Note, found[0].Severity, "the usual one keeps this")
	require.Equal(t, config.Warn, found[1].Severity)
	require.Regexp(t, "begin: [^;]*Module 124 [^;]*; [^;]*Module 120 ", found[1].Text, "the usual one first")

	found = tried(func(ch *config.Chassis) { ch.WheelbaseIn = 120 }, "mod-132-68")
	require.NotEmpty(t, found, "the rear wheels have moved forward")
	require.Equal(t, "catalogue.pair-collision", found[0].Code)
	require.Contains(t, found[0].Text, "Rear wheels")
	require.Equal(t, []string{"cut-12500-138-gas", "mod-132-68"}, found[0].Picks)

	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	p := &pairs{ed: ed, missed: map[string]*missed{}}
	p.try(ed.Cat.ChassisByID("cut-14500-158-gas"), ed.Cat.BodyByID("rescue-164"))
	require.Empty(t, p.tell(), "no ambulance specification judges a rescue body")
}
