package page

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/leadtime"
	"boxwright/web/page/markup"
)

func TestTheLastMonthIsReadInFull(t *testing.T) {
	begin := []month{{config.Date{Year: 2027, Month: 4, Day: 1}, 50}, {config.Date{Year: 2027, Month: 5, Day: 1}, 72}}
	x := func(day float64) float64 { return 4 * day }
	for name, width := range map[string]float64{"with room after it": 330, "at the edge": 290} {
		t.Run(name, func(t *testing.T) {
			drawn := markup.Many(monthNames(begin, x, 10, 7.4, width)...).String()
			ends := strings.Contains(drawn, `class="small end" x="290.0"`)
			require.Equal(t, width == 290, ends, drawn)
		})
	}
}

// The bars are told in two sentences, however many there are.
func TestTheScheduleSaysWhatItShows(t *testing.T) {
	on := func(day int) config.Date { return config.Date{Year: 2027, Month: 3, Day: day} }
	step := func(label string, from, to int, float float64, critical bool) leadtime.Step {
		return leadtime.Step{Label: label, Start: on(from), Finish: on(to), EF: 5, LF: 5 + float, Critical: critical}
	}
	s := &leadtime.Plan{Order: on(1), EvenOdds: on(28), NineInTen: on(30)}
	require.Equal(t, "From the order on Mon, Mar 1, 2027 to delivery: likely (50 %) Sun, Mar 28, 2027, safe (90 %) Tue, Mar 30, 2027. "+
		"Of 4 bars 2 decide the date, from Frame, which begins Wed, Mar 3, 2027, to Test, which ends Thu, Mar 25, 2027; "+
		"most float has Lights arrive, 12 working days.",
		saidOf(s, []leadtime.Step{step("Chassis arrives", 1, 2, 3, false), step("Lights arrive", 1, 2, 12, false),
			step("Frame", 3, 9, 0, true), step("Test", 20, 25, 0, true)}))
}

// The parts that nothing waits for are one bar, called what they are: their list tells how many
// are of options, and the ordinary ones are not on it.
func TestPartsThatNothingWaitsForAreOneBar(t *testing.T) {
	part := func(label, option string, critical bool) leadtime.Step {
		return leadtime.Step{Label: label, Option: option, Source: config.SourceParts, Critical: critical}
	}
	var names []string
	plant := &config.Plant{Activities: []config.Activity{{Label: "Parts arrive", Source: config.SourceParts}}}
	for _, st := range waiting([]leadtime.Step{{Label: "Chassis arrives"}, part("Parts arrive: Cot", "cot", false),
		part("Parts arrive: Mast", "mast", true), part("Parts arrive", "", false)}, plant) {
		names = append(names, st.Label)
	}
	require.Equal(t, []string{"Chassis arrives", "Parts arrive", "Parts arrive: Mast"}, names)
}
