package bid_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/pricing/quote"
)

// Figures that lists ask for beside those of the checks.
func TestAskable(t *testing.T) {
	for _, c := range []struct {
		reason, line string
		want         quote.Outcome
		offered      string
	}{
		{"a compartment by its place", "Street side front compartment at least 70 in high and 20 in wide", quote.Meets,
			"72.0 in high, 21.5 in wide, 20.0 in deep"},
		{"forward is the front", "Street side forward compartment: minimum 80 inches high", quote.Excepted, "72.0 in high"},
		{"dimensions by their letters", `Street side rear compartment, minimum 70" H x 25" W x 18" D`, quote.Meets,
			"26.0 in wide"},
		{"several compartments, not all alike", "Curb side compartments at least 50 in high", quote.Unanswered,
			"10.0 in high"},
		{"each compartment", "Each exterior compartment shall be at least 40 in high", quote.Excepted, "10.0 in high"},
		{"no such compartment", "Compartment over the battery at least 10 in high", quote.Unanswered, ""},
		{"receptacles counted", "At least two duplex receptacles in the patient compartment", quote.Meets, "Two duplex"},
		{"more receptacles than there are", "At least 20 duplex receptacles", quote.Excepted, "2"},
		{"outlets of several things together", "Minimum of three oxygen outlets in total", quote.MeetsWith,
			"Oxygen outlets: 2"},
		{"oxygen outlets", "Minimum of two oxygen outlets", quote.Meets, "One M cylinder"},
		{"an additional one where there is one", "Two additional 12 V outlets in the action area", quote.Unanswered, ""},
		{"outlets of another voltage", "At least nine 125 V outlets in total", quote.Unanswered, ""},
		{"an angle", "Departure angle of 12 degrees or more", quote.Meets, "Departure angle"},
		{"oxygen by hours and flow", "Oxygen for three hours at 15 liters per minute", quote.Meets, "3.5"},
		{"oxygen by hours at a flow not computed", "Oxygen for three hours at 10 liters per minute", quote.Unanswered, ""},
		{"more than is not as much as", "GVWR shall be more than 14,500 lb", quote.Excepted, "more is asked for"},
		{"less than is not as much as", "Wheelbase less than 158 inches", quote.Excepted, "less is asked for"},
		{"a price that stands long enough", "Prices shall remain firm for 30 days", quote.Meets, "Price good until"},
		{"a price that does not", "Prices shall be firm for 200 days", quote.Excepted, "Price good until"},
		{"days from a day not known", "Prices shall remain firm for 30 days after bid opening", quote.Unanswered,
			"Price good until"},
		{"a price until a day", "Price shall remain firm through December 1, 2026", quote.Meets, "Price good until"},
		{"a limit of the price that speaks of freight", "Price shall not exceed $275,000 including freight",
			quote.Excepted,
			"Price"},
		{"what is ruled out is not what is asked for",
			"Vehicle shall be diesel powered; gasoline engines will not be " +
				"considered.", quote.MeetsWith, "gasoline"},
		{"an amount of one of several things alone", "Rear step shall support 1,000 lb", quote.Unanswered, ""},
		{"why an amount is asked for", "Station 2 door restricts overall height to 9'-0\", for clearance", quote.Meets,
			"Overall height"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			_, list := answersTo(t, c.line)
			a := list[0]
			assert.Equal(t, c.want, a.Outcome, "%s read as %q, offered %q", c.line, a.Read, a.Offered)
			assert.Contains(t, a.Offered, c.offered)
		})
	}
}
