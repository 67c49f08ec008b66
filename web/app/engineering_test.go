package app

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/leadtime"
	"boxwright/config/seeds"
	"boxwright/config/weight"
	"boxwright/pricing/link"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
	"boxwright/web/session"
)

func set(id, value string) Act { return Act{Do: "set", ID: id, Value: value} }

// draftOf reads the draft of a reply the way the next visit would.
func draftOf(t *testing.T, s shown) *quote.Draft {
	t.Helper()
	require.Empty(t, s.Fault)
	d, err := quote.ReadDraft(s.Draft)
	require.NoError(t, err)
	return d
}

func begun(t *testing.T) *browser {
	p := open(t)
	p.do(Act{Do: "new", ID: "cut-14500-158-gas"}, Act{Do: "go", ID: "weight"})
	return p
}

// The walk of the scale ticket: the finished unit weighs more than computed; it
// is entered, the margins move, and the next quote learns.
func TestScaleTicketMovesTheFigures(t *testing.T) {
	p := begun(t)
	before := p.do(Act{Do: "go", ID: "weight"})
	after := p.do(set("ticket.number", "A-17"), set("ticket.date", "2026-11-20"), set("ticket.total", "11,096"),
		set("ticket.front", "4,450"), set("ticket.rear", "6,646"), Act{Do: "add-ticket"})
	d := draftOf(t, after)
	require.Len(t, d.Tickets, 1)
	assert.Equal(t, 11096.0, float64(d.Tickets[0].TotalLb))
	assert.Contains(t, after.Regions["main"], "Readings against the model")
	assert.Contains(t, after.Regions["main"], "11,096 lb")
	assert.NotEqual(t, before.Regions["standing"], after.Regions["standing"], "the margins follow the ticket")

	// A pick changes the unit: the ticket becomes that of the unit as weighed.
	on := p.do(Act{Do: "pick", ID: "fb-push", On: true})
	if d = draftOf(t, on); assert.NotNil(t, d.Tickets[0].Unit, "it keeps the unit it weighed") {
		assert.False(t, d.Tickets[0].Unit.Has("fb-push"))
	}
	// And the next quote begins with what was learned.
	next := p.do(Act{Do: "new", ID: "cut-14000-158-gas"}, Act{Do: "go", ID: "weight"})
	d = draftOf(t, next)
	require.Len(t, d.Tickets, 1)
	assert.Equal(t, "cut-14500-158-gas", d.Tickets[0].Unit.Chassis)
	assert.Contains(t, next.Regions["main"], "Of an earlier unit")

	out := p.do(Act{Do: "drop-ticket", ID: "0"})
	assert.Empty(t, draftOf(t, out).Tickets)
	assert.Equal(t, 1, strings.Count(out.Regions["main"], "Enter a scale ticket"))
}

func TestATicketIsCheckedBeforeItCounts(t *testing.T) {
	for _, c := range []struct {
		reason, says string
		acts         []Act
	}{
		{"nothing was read", "no reading", nil},
		{"a slip of the pen", "do not add up", []Act{set("ticket.total", "11000"), set("ticket.front", "4600"), set("ticket.rear", "4400")}},
		{"wheels against their axle", "front wheels do not add up", []Act{set("ticket.front", "4600"), set("ticket.lf", "2300"), set("ticket.rf", "2000")}},
		{"a negative mass", "is too little: write 0 lb to 200,000 lb", []Act{set("ticket.total", "-5")}},
		{"words for a number", "is not a number", []Act{set("ticket.total", "heavy")}},
		{"not a condition", "the condition is", []Act{set("ticket.total", "11000"), set("ticket.condition", "wet")}},
		{"no day of the calendar", "is not a date", []Act{set("ticket.date", "2026-02-31")}},
	} {
		t.Run(c.reason, func(t *testing.T) {
			p := begun(t)
			s := p.do(append(c.acts, Act{Do: "add-ticket"})...)
			assert.Contains(t, s.Regions["main"], c.says, c.reason)
			assert.Empty(t, draftOf(t, s).Tickets, c.reason)
		})
	}
	p := begun(t)
	for range quote.MaxTickets + 1 {
		p.do(set("ticket.total", "11000"), Act{Do: "add-ticket"})
	}
	assert.Len(t, draftOf(t, p.do(Act{Do: "start"})).Tickets, quote.MaxTickets, "no more than can be held")
}

func TestTicketOfChassisAndChange(t *testing.T) {
	p := begun(t)
	p.do(set("ticket.what", "chassis"), set("ticket.total", "5700"), set("ticket.fuel", "50"), Act{Do: "add-ticket"})
	s := p.do(Act{Do: "pick", ID: "fb-push", On: true})
	d := draftOf(t, s)
	assert.Nil(t, d.Tickets[0].Unit, "options do not touch what the chassis weighed")
	assert.Equal(t, 0.5, d.Tickets[0].FuelPart)
	s = p.do(Act{Do: "drop-ticket", ID: "0", Value: "edit"}, Act{Do: "go", ID: "weight"})
	assert.Empty(t, draftOf(t, s).Tickets)
	assert.Contains(t, s.Regions["main"], `data-id="ticket.total" value="5,700"`, "it is back in the form")
}

// What other quotes kept in the browser were weighed at: counted for the same
// chassis and module, offered where one of them is the same, and no more.
func TestNextQuoteLearnsFromKeptTickets(t *testing.T) {
	p := begun(t)
	d := draftOf(t, p.do(set("ticket.number", "A-17"), set("ticket.total", "11096"), Act{Do: "add-ticket"}))
	kept := d.Lessons()
	require.Len(t, kept, 1)
	require.Equal(t, "cut-14500-158-gas", kept[0].Unit.Chassis)

	next := open(t)
	next.req["weighed"] = append(kept, kept[0]) // two kept quotes may hold the same
	s := next.do(Act{Do: "new", ID: "cut-14500-158-gas"}, Act{Do: "go", ID: "weight"})
	d = draftOf(t, s)
	assert.Equal(t, kept, d.Tickets)
	assert.Contains(t, s.Regions["standing"], "an earlier unit on the same chassis with the same module")
	assert.Contains(t, s.Regions["main"], "What the tickets moved")
	assert.NotContains(t, s.Regions["main"], "Earlier units that were weighed")
	body := d.Unit.Body

	// Taken out it is offered; counted again it is the same.
	s = next.do(Act{Do: "drop-ticket", ID: "0"})
	assert.Empty(t, draftOf(t, s).Tickets)
	assert.Contains(t, s.Regions["main"], "Earlier units that were weighed")
	s = next.do(Act{Do: "count-ticket", ID: "another"})
	assert.Empty(t, draftOf(t, s).Tickets)
	s = next.do(Act{Do: "count-ticket", ID: session.LessonsOf(kept)[0].ID})
	assert.Equal(t, kept, draftOf(t, s).Tickets)

	// Another module on the chassis: it stays where it was counted, else it is offered.
	s = next.do(Act{Do: "body", ID: "mod-153-72"})
	assert.Equal(t, kept, draftOf(t, s).Tickets)
	s = next.do(Act{Do: "drop-ticket", ID: "0"}, Act{Do: "body", ID: "mod-132-68"}, Act{Do: "go", ID: "weight"})
	assert.Empty(t, draftOf(t, s).Tickets)
	assert.Contains(t, s.Regions["main"], "an earlier unit on the same chassis with "+
		next.app.memory.Edition.Cat.LabelOf(body))
	// Back on the module it counts again; with neither in common it goes.
	s = next.do(Act{Do: "body", ID: body})
	assert.Equal(t, kept, draftOf(t, s).Tickets)
	s = next.do(Act{Do: "new", ID: "med-26000-189-diesel"}, Act{Do: "go", ID: "weight"})
	assert.Empty(t, draftOf(t, s).Tickets)
	assert.NotContains(t, s.Regions["main"], "Earlier units that were weighed")

	// What cannot be used of what the browser kept is left.
	wrong, gone := kept[0], kept[0]
	wrong.TotalLb = -1
	u := kept[0].Unit.Clone()
	u.Body = "gone"
	gone.Unit = &u
	for reason, weighed := range seeds.InOrder(map[string]any{"no list": "x",
		"a reading below zero": []weight.Ticket{wrong}, "a unit nobody knows": []weight.Ticket{gone}, "no unit": []weight.Ticket{{What: weight.TicketUnit, TotalLb: 11000}}, "nothing": nil}) {
		other := open(t)
		other.req["weighed"] = weighed
		assert.Empty(t, draftOf(t, other.do(Act{Do: "new", ID: "cut-14500-158-gas"})).Tickets, reason)
	}
}

// A ticket that came with somebody's link counts in that quote and teaches no
// other; one that is entered here does.
func TestWhatALinkBringsTeachesNothing(t *testing.T) {
	p := begun(t)
	s := p.do(set("ticket.total", "10800"), Act{Do: "add-ticket"}, Act{Do: "go", ID: "quote"})
	require.Len(t, s.Gist.Weighed, 1)
	q, err := quote.Compute(p.app.memory.Edition, draftOf(t, s))
	require.NoError(t, err)
	text, err := link.Encode(q)
	require.NoError(t, err)
	other := open(t)
	s = other.do(Act{Do: "open-link", Value: text})
	require.Len(t, draftOf(t, s).Tickets, 1)
	assert.Empty(t, s.Gist.Weighed)
	other.do(Act{Do: "own-copy"})
	s = other.do(set("ticket.total", "10810"), Act{Do: "add-ticket"})
	require.Len(t, s.Gist.Weighed, 1)
	assert.EqualValues(t, 10810, s.Gist.Weighed[0].TotalLb)
}

// A ticket put back into the form stays that of the unit it weighed.
func TestTicketOfAnEarlierUnitIsChanged(t *testing.T) {
	p := begun(t)
	p.do(set("ticket.total", "10800"), Act{Do: "add-ticket"}, Act{Do: "pick", ID: "fb-push", On: true})
	s := p.do(Act{Do: "drop-ticket", ID: "0", Value: "edit"}, Act{Do: "go", ID: "weight"})
	assert.Contains(t, s.Regions["main"], "Of an earlier unit")
	d := draftOf(t, p.do(set("ticket.total", "10810"), Act{Do: "add-ticket"}))
	require.NotNil(t, d.Tickets[0].Unit)
	assert.False(t, d.Tickets[0].Unit.Has("fb-push"))
}

func TestOwnLimits(t *testing.T) {
	p := begun(t)
	p.do(Act{Do: "go", ID: "standards"})
	s := p.do(set("own.space.headroom", "80"))
	assert.Equal(t, []config.OwnLimit{{Figure: "space.headroom", Value: 80}}, draftOf(t, s).Unit.Own)
	assert.Contains(t, s.Regions["main"], "set by the purchaser")
	assert.Contains(t, s.Regions["standing"], "Headroom", "the unit has less and it is said")
	s = p.do(Act{Do: "units"}, set("own.space.aisle", "508"))
	assert.InDelta(t, 20.0, draftOf(t, s).Unit.Own[0].Value, 1e-9, "typed in millimeters; kept sorted")
	s = p.do(set("own.space.headroom", ""), set("own.space.aisle", ""), set("own.weight.payload", "1000"))
	d := draftOf(t, s)
	assert.Empty(t, d.Unit.Own)
	assert.InDelta(t, 2204.62, float64(d.Unit.PayloadLb), 0.01)
	s = p.do(set("own.space.headroom", "-1"))
	assert.Contains(t, s.Regions["main"], "is too little: write 0 mm to")
	s = p.do(set("own.nothing", "1"))
	assert.Empty(t, draftOf(t, s).Unit.Own)
}

func TestWiringIsSizedAsAsked(t *testing.T) {
	p := begun(t)
	p.do(Act{Do: "go", ID: "power"})
	s := p.do(set("wiring.areas", "awg"), set("assumed-power.drop", "5"), set("assumed-power.drop-critical", "2"))
	assert.Equal(t, quote.Wiring{Areas: "awg"}, draftOf(t, s).Wiring)
	assert.Contains(t, s.Regions["main"], "conductor areas by AWG")
	assert.Contains(t, s.Regions["main"], "5 % allowed")
	assert.Contains(t, s.Regions["main"], "critical: 2 % allowed")
	s = p.do(set("assumed-power.drop", "0.1"), set("wiring.areas", "birmingham"))
	assert.Equal(t, "awg", draftOf(t, s).Wiring.Areas, "what cannot be taken changes nothing")
	assert.Contains(t, s.Regions["main"], "is too little: write 0.5 % to 20.0 %")
	s = p.do(set("wiring.areas", ""), set("assumed-power.drop", ""), set("assumed-power.drop-critical", ""))
	assert.NotContains(t, string(s.Draft), "wiring", "the usual way leaves no trace")
	assert.Contains(t, s.Regions["main"], "critical: 3 % allowed")
}

// An older quote that states its voltage drops beside the assumed factors has them there.
func TestDropsOfAnOlderQuoteAreAssumedFactors(t *testing.T) {
	p := begun(t)
	var old map[string]any
	require.NoError(t, json.Unmarshal(p.do(Act{Do: "start"}).Draft, &old))
	old["wiring"] = map[string]any{"areas": "awg", "drop_pct": 5, "critical_pct": 2}
	data, err := json.Marshal(old)
	require.NoError(t, err)
	d, err := quote.ReadDraft(data)
	require.NoError(t, err)
	assert.Equal(t, quote.Wiring{Areas: "awg"}, d.Wiring)
	assert.Equal(t, []config.Assumed{{Factor: config.WireDrop, Value: 5}, {Factor: config.CriticalDrop, Value: 2}},
		d.Unit.Factors)
	_, err = quote.Compute(quotetest.Demo(t), d)
	require.NoError(t, err)
	d.Unit.Factors[0].Value = 1e-9
	_, err = quote.Compute(quotetest.Demo(t), d)
	require.ErrorContains(t, err, "Voltage drop allowed in a circuit is 0.5 % to 20.0 %")
}

// What the dates rest on is set for the unit in Delivery: a year of work ahead of the
// order, chassis that take twice as long, delays that come together.
func TestDatesRestOnFactorsOfTheUnit(t *testing.T) {
	p, ed := begun(t), quotetest.Demo(t)
	plan := func(s shown) *leadtime.Plan {
		q, err := quote.Compute(ed, draftOf(t, s))
		require.NoError(t, err)
		return q.Plan
	}
	s := p.do(Act{Do: "go", ID: "delivery"})
	before := plan(s)
	assert.NotContains(t, s.Regions["main"], "Work ahead of this order</td>", "no such step without")
	s = p.do(set("assumed-time.backlog", "250"))
	require.Empty(t, s.Fault)
	assert.Contains(t, s.Regions["main"], "Work ahead of this order", "a step of the schedule")
	assert.Contains(t, s.Regions["main"], plan(s).NineInTen.Long())
	assert.Greater(t, before.NineInTen.DaysUntil(plan(s).NineInTen), 300, "a year later")
	s = p.do(set("assumed-time.backlog", ""), set("assumed-time.chassis", "300"))
	assert.Greater(t, before.NineInTen.DaysUntil(plan(s).NineInTen), 60, "the chassis decides")
	s = p.do(set("assumed-time.chassis", ""), set("assumed-time.together", "0"))
	assert.Less(t, plan(s).Simulated.NineInTenDays, before.Simulated.NineInTenDays, "each late by itself")
	s = p.do(set("assumed-time.together", "140"))
	assert.Contains(t, s.Regions["main"], "is too much: write 0.0 % to 100.0 %", "more than all is refused")
	assert.Len(t, draftOf(t, s).Unit.Factors, 1)
	s = p.do(set("assumed-time.together", ""))
	assert.Equal(t, before.NineInTen, plan(s).NineInTen)
}

func TestStowing(t *testing.T) {
	p := begun(t)
	ids := []string{}
	require.NoError(t, p.app.ensure())
	for _, e := range p.app.memory.Edition.Cat.Equipment {
		ids = append(ids, e.ID)
	}
	a, b := ids[0], ids[1]
	s := p.do(Act{Do: "carry", ID: a, Value: "3"}, Act{Do: "carry", ID: b, Value: "1"}, Act{Do: "go", ID: "equipment"})
	place := p.app.memory.Edition.Cat.CompartmentsOf(&draftOf(t, s).Unit)[0].ID
	s = p.do(Act{Do: "stow", ID: a + "/", Value: place}, Act{Do: "take-out", ID: a + "/" + place})
	lines := map[config.Carried]bool{}
	for _, c := range draftOf(t, s).Unit.Carried {
		lines[c] = true
	}
	assert.True(t, lines[config.Carried{Equipment: a, Compartment: place, Qty: 2}] &&
		lines[config.Carried{Equipment: a, Qty: 1}], "one of three was taken out: %v", lines)

	s = p.do(Act{Do: "suggest"})
	for _, c := range draftOf(t, s).Unit.Carried {
		assert.NotEmpty(t, c.Compartment, "everything has found a place")
	}
	assert.Contains(t, s.Say, "Stowed 2 of 2")
	assert.Contains(t, s.Regions["main"], "an arrangement was found")
	assert.Contains(t, s.Regions["main"], "Through the door of compartment")

	s = p.do(Act{Do: "carry", ID: a, Value: "1"})
	held := 0
	for _, c := range draftOf(t, s).Unit.Carried {
		if c.Equipment == a {
			held += c.Qty
		}
	}
	assert.Equal(t, 1, held, "fewer are carried")
	s = p.do(Act{Do: "take-out"})
	for _, c := range draftOf(t, s).Unit.Carried {
		assert.Empty(t, c.Compartment)
	}
	s = p.do(Act{Do: "carry", ID: a, Value: "0"}, Act{Do: "carry", ID: b, Value: "x"})
	assert.Len(t, draftOf(t, s).Unit.Carried, 1, "nonsense leaves what was")
}

// What comes from outside is bounded before it is used.
func TestHostileTicketsAndWiring(t *testing.T) {
	p := begun(t)
	var d map[string]any
	require.NoError(t, json.Unmarshal(p.do(Act{Do: "start"}).Draft, &d))
	ticket := func(more map[string]any) []any {
		m := map[string]any{"what": "unit", "total_lb": 11000}
		for k, v := range more {
			m[k] = v
		}
		return []any{m}
	}
	for name, change := range seeds.InOrder(map[string]map[string]any{
		"negative mass":   {"tickets": ticket(map[string]any{"front_lb": -1})},
		"huge mass":       {"tickets": ticket(map[string]any{"front_lb": 1e300})},
		"long number":     {"tickets": ticket(map[string]any{"number": strings.Repeat("9", 61)})},
		"unknown vehicle": {"tickets": ticket(map[string]any{"what": "boat"})},
		"overfull tank":   {"tickets": ticket(map[string]any{"fuel_part": 2})},
		"no reading":      {"tickets": []any{map[string]any{"what": "unit"}}},
		"wiring":          {"wiring": map[string]any{"areas": "x"}},
	}) {
		bad := map[string]any{}
		for k, v := range d {
			bad[k] = v
		}
		for k, v := range change {
			bad[k] = v
		}
		data, err := json.Marshal(bad)
		require.NoError(t, err)
		_, err = quote.ReadDraft(data)
		assert.Error(t, err, name)
	}
}

func TestTicketsTravelInTheLink(t *testing.T) {
	p := begun(t)
	s := p.do(set("ticket.total", "11,050"), Act{Do: "add-ticket"}, set("wiring.areas", "awg"),
		Act{Do: "go", ID: "quote"})
	other := open(t)
	d := draftOf(t, other.do(Act{Do: "start"}, Act{Do: "open-link", Value: sentLink(t, s)}))
	require.Len(t, d.Tickets, 1)
	assert.Equal(t, 11050.0, float64(d.Tickets[0].TotalLb))
	assert.Equal(t, "awg", d.Wiring.Areas)
}
