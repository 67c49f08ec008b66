package bid_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/pricing/quote"
)

// Words that say nothing of what is asked for, each beside a line in which they do.
func TestManners(t *testing.T) {
	for _, c := range []struct {
		line string
		want quote.Outcome
	}{
		{"Slide-out compartment tray, 300 lb, latched both in and out", quote.MeetsWith},
		{"Slide-out compartment tray, 300 lb, latched both doors", quote.Unanswered},
		{"Two 12 V outlets in the action area, one of them live at all times", quote.Meets},
		{"Two 12 V outlets in the action area, both of them live at all times", quote.Unanswered},
		{"Two 12 V outlets in the streetside action area", quote.Meets},
		{"Two 12 V outlets in the curbside action area", quote.Unanswered},
		{"Streetside action-area console with a clock", quote.Meets},
		{"Curbside action-area console with a clock", quote.Unanswered},
		{"Streetside squad bench, three seats", quote.Unanswered},
		{"A cot that raises a load of at least 650 lb", quote.MeetsWith},
		{"A cot that raises a load of at least 1,000 lb", quote.Excepted},
		{"Rear axle load of 9,000 lb at most", quote.Meets},
		{"Side door with a clear opening of 36 in", quote.MeetsWith},
		{"Side door opening 40 in wide", quote.Excepted},
		{"Side door window opening 40 in wide", quote.Unanswered},
		{"Wire ID: number and function printed every 4 in", quote.Meets},
		{"Wire ID: color and function printed every 4 in", quote.Unanswered},
		{"Engine fuel: gasoline; diesel not acceptable", quote.Meets},
		{"Engine fuel: diesel; gasoline not acceptable", quote.MeetsWith},
		{"Heater fuel: gasoline; diesel not acceptable", quote.Unanswered},
		{"Cab access: sliding window, 18 x 18 in, latch on both sides", quote.Meets},
		{"Roof access: sliding window, 18 x 18 in, latch on both sides", quote.Unanswered},
		{"Spare cot: manual, X-frame", quote.Unanswered},
		{"Overall width, mirrors not counted: 96 in maximum", quote.Meets},
		{"Overall width, mirrors not counted: 95 in maximum", quote.Excepted},
		{"Siren not included", quote.Unanswered},
		{"USB outlets in the front console, qty 1", quote.Meets},
		{"Uprights of 2 x 2 in tube spaced 16 in", quote.Meets},
		{"Uprights of 2 x 2 in tube spaced 12 in", quote.MeetsWith},
		{"Certify each ambulance to the federal ambulance specification", quote.Meets},
		{"Each ambulance cot shall have a charger", quote.Unanswered},
		{"Our cot shall be mounted in the unit", quote.Unanswered},
		{"Breakers of the hand-reset kind", quote.MeetsWith},
		{"Breakers, hand-reset, that reset by themselves", quote.Unanswered},
		{"Rub rails with stainless screws and barrier tape between", quote.Meets},
		{"Rub rails with barrier tape between the doors", quote.Unanswered},
		{"Conversion warranted for seven years without limitation of mileage", quote.Excepted},
		{"Conversion warranted for 24 months without limitation of mileage", quote.Unanswered},
		{"Van cutaway chassis with gasoline engine", quote.Meets},
		{"Chassis of four-wheel-drive configuration", quote.MeetsWith},
		{"Cabinets of a horseshoe configuration", quote.Unanswered},
		{"Wires printed with number and function text", quote.Meets},
		{"Wires printed with number and color text", quote.Unanswered},
		{"AGM batteries, 500 Ah total", quote.Excepted},
		{"AGM batteries, 300 Ah total", quote.Unanswered}, // three of 105 Ah have as much
		{"Siren speakers, 150 W total", quote.Unanswered},
		{"Patient floor no higher than 33 in off the ground with the vehicle loaded", quote.Meets},
		{"Patient floor no higher than 30 in off the ground with the vehicle loaded", quote.Excepted},
		{"Patient floor no higher than 33 in off the ground with the springs dumped", quote.Unanswered},
		{"Full-height cabinets on the left wall", quote.Meets},
		{"Full-height cabinets on the right wall", quote.Unanswered},
		{"Full-height cabinets on the rear wall", quote.Unanswered},
		{"Weight verification: certified scale ticket, by axle and side", quote.Meets},
		{"Brake verification: certified scale ticket, by axle and side", quote.Unanswered},
		{"Litter capacity: five supine patients", quote.Excepted},
		{"Five recumbent seats", quote.Unanswered},
		{"Squad bench for 3", quote.Meets},
		{"Squad bench for four", quote.Excepted},
		{"Console for 2", quote.Unanswered},
		{"Fleet number on four sides", quote.Meets},
		{"Two 12 V plugs in the action area, one always hot", quote.Meets},
		{"Two 125 V plugs in the action area", quote.Unanswered},
		{"Cabinets with plywood or any other wood shall be rejected", quote.MeetsWith},
		{"Load manager with shedding; the system shall further comprise a voltmeter", quote.Meets},
		{"Load manager with shedding and a further voltmeter", quote.Unanswered},
		{"Tire pressure shown in the cab, inner duals not excepted", quote.MeetsWith},
		{"Child seat with 5 pt belts", quote.MeetsWith},
		{"Engine warranty: 5 years / 60,000 miles", quote.Unanswered},
		{"Upholstery compatible with hospital disinfectants", quote.Meets},
		{"Radio compatible with the County's network", quote.Unanswered},
		{"CO alarm: hard-wired, cab repeater: yes", quote.MeetsWith},
		{"Wood in cabinets: none", quote.MeetsWith},
		{"Squad bench: no", quote.MeetsWith},
		{"Siren: no", quote.Unanswered},
		{"Siren: no less than 100 W", quote.Meets},
		{"Fuel tank of 40 U.S. gallons", quote.Meets},
		{"Exhaust fitted for the hose of the County's stations", quote.MeetsWith},
		{"Exhaust fitted for the hose of the County's vacuum", quote.Unanswered},
	} {
		t.Run(c.line, func(t *testing.T) {
			_, list := answersTo(t, c.line)
			assert.Equal(t, c.want, list[0].Outcome, list[0].Read)
		})
	}
}
