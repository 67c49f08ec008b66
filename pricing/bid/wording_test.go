package bid_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/pricing/bid"
	"boxwright/pricing/quote"
)

// Ways of putting things that ask for nothing more, or for the same in other words, each with one beside it
// that does ask for more.
func TestWordings(t *testing.T) {
	areAnswered(t, []worded{
		{"Payload 3,000 lb minimum; it is a long haul to the hospital", quote.Meets},
		{"CO detector; it is wired through the battery switch", quote.Unanswered},
		{"Duplex outlets in the action area, they are surface mounted", quote.Unanswered},
		{"Squad bench with a hinged lid, for ease of cleaning", quote.Meets},
		{"Squad bench with a hinged lid, for ease of cleaning with a 12 V outlet", quote.Unanswered},
		{"Squad bench, for safety harness anchors", quote.Unanswered},
		{"6 ft bench, belts for 3", quote.Meets},
		{"6 ft bench, belts for 5", quote.Excepted},
		{"Squad bench with belts", quote.Meets},
		{"Squad bench with two-point belts", quote.Unanswered},
		{"Siren, 100 W, at no additional cost", quote.Meets},
		{"Siren, 100 W, no additional speakers", quote.Unanswered},
		{"W.B. 160 in max.", quote.Meets},
		{"Wheelbase shall not exceed thirteen feet two inches", quote.Meets},
		{"Wheelbase shall not exceed thirteen feet one inch", quote.Excepted},
		{"Loading height 33 in. or less, measured from grade", quote.Meets},
		{"Loading height 30 in. or less, measured with the suspension at ride height", quote.Unanswered},
		{"Bank of three drawers", quote.MeetsWith},
		{"Three drawer banks of three drawers each", quote.Unanswered},
		{"Operator's manual", quote.Meets},
		{"Hand operated", quote.Unanswered},
		{"Six outside compartments minimum, totaling not less than 65 cu. ft.", quote.Meets},
		{"Six outside compartments minimum, totaling not less than 75 cu. ft.", quote.MeetsWith},
		{"Total length, optional bumpers and steps left out: 20 ft. max.", quote.Meets},
		{"Total length, optional bumpers and steps left out: 19 ft. max.", quote.Excepted},
		{"Total length, optional mirrors and steps left out: 20 ft. max.", quote.Unanswered},
		{"Rear axle to be left with at least one tenth of its rating unused", quote.Meets},
		{"Rear axle to be left with at least one fifth of its rating unused", quote.Excepted},
		{"Siren, 200 W, dual tone", quote.MeetsWith},
		{"Dual tone capability", quote.Unanswered},
		{"Doors to swing on hinges", quote.Unanswered},
		{"Rear entrance of two leaves", quote.Meets},
		{"Rear entrance of three leaves", quote.Unanswered},
		{"The vehicle shall clear a 9 ft. 0 in. station door", quote.Meets},
		{"Unit must fit Station 3: door is 8'-10\" high", quote.Excepted},
		{"Must clear a 10 ft wide bay door", quote.Unanswered},
		{"Sprayed closed cell foam, 50 mm depth", quote.MeetsWith},
		{"Sprayed closed cell foam, 55 mm depth", quote.Excepted},
		{"Sprayed closed cell foam, at least 52 mm", quote.Excepted},
		{"Door of the station to be cleared by 6 in", quote.Unanswered},
		{"Block heater that runs off the shore line, and heated power mirrors", quote.MeetsWith},
		{"Block heater that runs off the alternator, and heated power mirrors", quote.Unanswered},
		{"Battery charger of at least 45 amps fed by a 40-amp inlet", quote.Unanswered},
		{"Lightbar, alley lights, 60 in long minimum", quote.Excepted},
		{"Batteries shall carry the on-scene load with engine off for ten minutes before reaching half charge", quote.Meets},
		{"Interior cabinets shall be of welded aluminum, wood is not acceptable", quote.MeetsWith},
		{"Interior cabinets shall be of wood, aluminum is not acceptable", quote.Unanswered},
		{"Cabinets of aluminum or wood are not acceptable", quote.Unanswered},
		{"Bench shall be 72 in, belts, lids and cushions not required", quote.Unanswered},
		{"No squad bench", quote.MeetsWith},
		{"Lumber, plywood and chipboard are not acceptable in the cabinets", quote.MeetsWith},
		{"CO detector (battery type not acceptable)", quote.MeetsWith},
		{"CO detector (hard wired type not acceptable)", quote.Unanswered},
		{"Compartment doors shall be hinged, roll-up doors are not acceptable", quote.Meets},
		{"Compartment doors shall be roll-up, and roll-up doors are not acceptable", quote.Unanswered},
		{"Side door opening 30 in wide", quote.Meets},
		{"Width in the bay with the side door open 100 in", quote.Excepted},
		{"Door handles, locking from inside", quote.Unanswered},
		{"OEM front bumper with winch", quote.Unanswered},
		{"Front axle rating raised to 5,600 lbs", quote.Excepted},
		{"Overall length, bumper and rear step left out: 19 ft. 6 in. or under", quote.Excepted},
		{"Squad bench together with a CO detector", quote.MeetsWith},
		{"Squad bench with a CO detector", quote.Unanswered},
	})
}

// worded is a line with the answer to it.
type worded struct {
	line string
	want quote.Outcome
}

func areAnswered(t *testing.T, lines []worded) {
	for _, c := range lines {
		t.Run(c.line, func(t *testing.T) {
			_, list := answersTo(t, c.line)
			assert.Equal(t, c.want, list[0].Outcome, "read as %q", list[0].Read)
		})
	}
}

// A piece of a line is not answered by what only the rest of the line shows to be another thing.
func TestPiecesOfUnreadThings(t *testing.T) {
	for _, line := range []string{
		"Flip-up step, dock bumpers, beneath the bulkhead at the streetside",
		"Loading height 30 in. or less, measured with the suspension at ride height",
		"CO detector of the make now used, they shall be battery powered",
	} {
		t.Run(line, func(t *testing.T) {
			_, list := answersTo(t, line)
			for _, p := range list[0].Pieces {
				assert.NotContains(t, []quote.Outcome{quote.Meets, quote.MeetsWith}, p.Outcome, "%q as %s", p.Text, p.As)
			}
		})
	}
}

// What a sentence says of one thing piece by piece is all said of the same one.
func TestNarrowed(t *testing.T) {
	_, list := answersTo(t, "USB charge ports, dual, in curbside wall above bench, flush")
	assert.Equal(t, []bid.Take{{ID: "out-usb-bench"}}, list[0].Takes, "read as %q", list[0].Read)
}

// Words of business that stand in requirements of the unit make no term of them.
func TestNoTerms(t *testing.T) {
	_, list := answersTo(t, "1. Locks of all doors worked by a key fob from 50 ft", "2. Two tier rear step, lowest tread 17 in. high",
		"3. Delivery shall be FOB destination")
	assert.Empty(t, list[0].Term)
	assert.Empty(t, list[1].Term)
	assert.Equal(t, "delivery", list[2].Term)
}

// What a line begins with by name is what its further pieces are of, though not all of the first was read.
func TestSubjectsNotAllRead(t *testing.T) {
	read := func(line string) (out []string) {
		_, list := answersTo(t, line)
		for _, p := range list[0].Pieces {
			out = append(out, string(p.Outcome))
		}
		return out
	}
	assert.Equal(t, []string{"", string(quote.MeetsWith)}, read("Lightbar of the make now used, alley lights"))
	assert.Empty(t, read("Lightbar of the make now used, ashtrays"))
	assert.Empty(t, read("Lights of the make now used, take downs"), "which lights are meant is not told")
}
