package leadtime_test

import (
	"encoding/json"
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boxwright/config"
	"boxwright/config/leadtime"
	"boxwright/config/quantity"
)

// withSlots gives the fixture weekly framing slots in January 2027, the first
// of them taken.
func withSlots(c *config.Catalogue) {
	for _, s := range []string{"2027-01-04", "2027-01-11", "2027-01-18", "2027-01-25", "2027-02-08"} {
		c.Plant.Slots = append(c.Plant.Slots, config.Slot{Start: day(s), Open: 1})
	}
	c.Plant.Slots[0].Open = 0
}

func codes(p *leadtime.Plan) []string {
	var out []string
	for _, f := range p.Findings {
		out = append(out, f.Code)
	}
	return out
}

func TestHoursBecomeDays(t *testing.T) {
	c := catalogue()
	tests := []struct {
		step   string
		picks  []string
		days   float64
		reason string
	}{
		{"cabinets", []string{"drawer"}, 8.0 / 16, "8 h by a crew of 2 in an 8 h day"},
		{"wiring", []string{"camera"}, 6.0 / 32 * 4 / 9, "6 h by a crew of 2 in two shifts, shared with the other step at that station as 4 likely days to 5"},
		{"finish", []string{"camera"}, 6.0 / 32 * 5 / 9, "the other share"},
		{"paint", []string{"extra-coat"}, 32.0 / 16 * 4 / 7, "shared with the primer as 4 to 3"},
		{"wiring", []string{"prewired"}, -16.0 / 32 * 4 / 9, "work saved"},
		{"interior", []string{"plain"}, 0, "no work at all"},
	}
	for _, test := range tests {
		t.Run(test.reason, func(t *testing.T) {
			before, after := schedule(t, c, unit()).Step(test.step), schedule(t, c, unit(test.picks...)).Step(test.step)
			assert.InDelta(t, test.days, after.Expected-before.Expected, 2e-6, "%s: %s", test.step, test.reason)
			assert.InDelta(t, after.Days.High-before.Days.High, after.Days.Low-before.Days.Low, 2e-6,
				"added work moves all three points")
		})
	}
	u := unit()
	u.Set(config.Pick{Option: "drawer", Qty: 3})
	step := schedule(t, c, u).Step("cabinets")
	require.Len(t, step.Added, 1)
	assert.Equal(t, leadtime.Added{ID: "drawer", Label: "Option drawer", Hours: 24, Days: 1.5}, step.Added[0])
	frame := schedule(t, c, unit()).Step("frame")
	assert.Equal(t, "module-152", frame.Added[0].ID, "the body's own work is named too")
}

func TestPlanDates(t *testing.T) {
	p := schedule(t, catalogue(), unit())
	require.Equal(t, "drawings", p.Steps[0].ID)
	assert.Equal(t, "2026-11-27", p.Steps[0].Start.String(), "work begins on the first working day after the order")
	assert.Equal(t, "2026-12-09", p.Steps[0].Finish.String(), "8.67 days cover nine working days")
	var total float64
	for _, id := range p.Critical {
		s := p.Step(id)
		assert.True(t, s.Critical)
		total += s.Expected
	}
	assert.InDelta(t, p.Analytic.EvenOddsDays, total, 1e-5)
	assert.Equal(t, []string{"chassis", "mount", "interior", "test", "deliver"}, p.Critical)
	assert.Contains(t, codes(p), "time.chassis-critical")
	even, _ := p.Figure("time.even-odds")
	nine, _ := p.Figure("time.nine-in-ten")
	c := leadtime.NewCalendar(&catalogue().Plant)
	assert.Equal(t, float64(c.Between(p.Order, p.EvenOdds)), even.Value)
	assert.Equal(t, float64(c.Between(p.Order, p.NineInTen)), nine.Value)
	assert.Empty(t, nine.Sense, "without a needed date there is no limit")
	assert.InDelta(t, .5, p.Chance(p.EvenOdds), .07)
	assert.InDelta(t, .9, p.Chance(p.NineInTen), .07)
	assert.GreaterOrEqual(t, p.Chance(p.NineInTen), .9)
	assert.Less(t, p.Chance(p.NineInTen.AddDays(-1)), .9)
	assert.Equal(t, p.NineInTen, p.At(.9))
	for i := range p.Spread {
		assert.Equal(t, p.Spread[i].Chance, p.Chance(p.Spread[i].On))
	}
}

func TestNeededBy(t *testing.T) {
	c := catalogue()
	u := unit("cot")
	u.NeededBy = day("2027-04-03") // a Saturday
	p := schedule(t, c, u)
	require.Contains(t, codes(p), "time.needed-by.missed")
	f := p.Findings[0]
	assert.Equal(t, config.Warn, f.Severity, "a date is the buyer's to move")
	assert.Equal(t, []string{"cot"}, f.Picks)
	assert.Equal(t, float64(leadtime.NewCalendar(&c.Plant).Between(u.OrderOn, day("2027-04-02"))), f.Figure.Limit,
		"what is needed by Saturday is delivered by Friday")
	assert.Less(t, f.Figure.Margin(), 0.0)
	assert.InDelta(t, 1-p.Chance(u.NeededBy), f.Figure.Chance, 1e-12)
	u.NeededBy = p.NineInTen
	assert.NotContains(t, codes(schedule(t, c, u)), "time.needed-by.missed", "exactly in time is in time")
	u.NeededBy = p.NineInTen.AddDays(-1)
	assert.Contains(t, codes(schedule(t, c, u)), "time.needed-by.missed", "a day earlier is not")
}

func TestPartsAndVan(t *testing.T) {
	c := catalogue()
	p := schedule(t, c, unit("cot", "pump"))
	assert.Equal(t, []string{"drawings", "parts:cot", "interior", "test", "deliver"}, p.Critical)
	assert.Contains(t, codes(p), "time.parts-critical")
	assert.Equal(t, []string{"chassis", "mount", "cabinets", "parts", "parts:cot", "parts:pump", "wiring"},
		p.Step("interior").After)
	delays := p.Delays()
	require.NotEmpty(t, delays)
	assert.Equal(t, "cot", delays[0].Option)
	assert.InDelta(t, p.Simulated.NineInTenDays-schedule(t, c, unit("pump")).Simulated.NineInTenDays, delays[0].AtNine,
		.8, "as planning without it says, within what fewer draws tell")
	for i := 1; i < len(delays); i++ {
		assert.LessOrEqual(t, delays[i].Days, delays[i-1].Days, "the worst first")
	}
	for _, d := range delays[1:] {
		assert.Equal(t, "pump", d.Option)
		assert.InDelta(t, 12.0/16, d.Days, .01, "12 h in the interior always tell; its part comes long before the "+
			"cot and never does")
	}

	u := unit("cot")
	u.Body = "van-body"
	p = schedule(t, c, u)
	assert.Nil(t, p.Step("frame"))
	assert.Equal(t, []string{"drawings"}, p.Step("wiring").After,
		"with doors, skin and frame gone, what they came after stands in")
	assert.Equal(t, []string{"parts", "parts:cot", "chassis"}, p.Step("finish").After,
		"a link to a skipped step falls away where others stay")
	u.Set(config.Pick{Option: "extra-coat", Qty: 1})
	p = schedule(t, c, u)
	assert.Contains(t, codes(p), "time.work-unplaced", "a van has no painting step in this plant")
}

// A part holds up the steps that need it, and through them what follows.
func TestPartsHoldUpTheStepsThatNeedThem(t *testing.T) {
	c := catalogue()
	p := schedule(t, c, unit("panel"))
	assert.Equal(t, []string{"drawings", "parts:panel"}, p.Step("cabinets").After,
		"the shop does not start on panels that have not come")
	assert.GreaterOrEqual(t, p.Step("cabinets").ES, p.Step("parts:panel").EF)
	assert.NotContains(t, p.Step("interior").After, "parts:panel", "what follows the shop waits for it already")
	assert.NotContains(t, p.Step("finish").After, "parts:panel", "what does not need the panels does not wait")
	assert.Equal(t, []string{"drawings", "parts:panel", "cabinets", "interior", "test", "deliver"}, p.Critical)
	assert.Equal(t, p.Step("cabinets").LS, p.Step("parts:panel").LF, "it may come as late as the shop may start")
	require.NotEmpty(t, p.Delays())
	assert.Equal(t, "panel", p.Delays()[0].Option)

	p = schedule(t, c, unit("harness"))
	for _, step := range []string{"wiring", "finish"} {
		assert.Contains(t, p.Step(step).After, "parts:harness", "a part can feed several steps")
	}
	u := unit("jig")
	u.Body = "van-body"
	p = schedule(t, c, u)
	assert.Contains(t, p.Step("interior").After, "parts:jig", "where no step that needs it is done, what waits for "+
		"parts does")
}

func TestSlots(t *testing.T) {
	c := catalogue(withSlots)
	p := schedule(t, c, unit())
	assert.Equal(t, "2027-01-11", p.Slot.String(), "the first slot is taken, the second is open")
	assert.Equal(t, p.Slot, p.Step("frame").Start)
	late := unit()
	late.OrderOn = day("2027-01-06")
	assert.Equal(t, "2027-01-25", schedule(t, c, late).Slot.String(),
		"drawings are ready on the 19th, just after the slot on Martin Luther King's day, which opens that Tuesday")
	late.OrderOn = day("2027-02-01")
	p = schedule(t, c, late)
	assert.Contains(t, codes(p), "time.slot-beyond")
	late.OrderOn = day("2027-03-01")
	p = schedule(t, c, late)
	assert.Contains(t, codes(p), "time.slots-past")
	assert.True(t, p.Slot.IsZero())
	unmarked := catalogue(withSlots, func(c *config.Catalogue) { c.Plant.Activities[3].Source = "" })
	assert.Contains(t, codes(schedule(t, unmarked, unit())), "time.slots-unused")
	noParts := catalogue(func(c *config.Catalogue) { c.Plant.Activities[2].Source = "" })
	assert.Contains(t, codes(schedule(t, noParts, unit("cot"))), "time.parts-unplaced")
}

// LatestOrder is checked by planning again from that day and from the next.
func TestLatestOrder(t *testing.T) {
	for name, c := range map[string]*config.Catalogue{"free line": catalogue(), "slots": catalogue(withSlots)} {
		rapid.Check(t, func(t *rapid.T) {
			u := unit("cot")
			u.NeededBy = day("2027-04-01").AddDays(rapid.IntRange(0, 200).Draw(t, "needed"))
			p, err := leadtime.Schedule(c, u, leadtime.Simulation{Draws: 300, Seed: 5})
			require.NoError(t, err)
			require.False(t, p.LatestOrder.IsZero(), name)
			from := func(d config.Date) config.Date {
				again := u.Clone()
				again.OrderOn, again.NeededBy = d, config.Date{}
				q, err := leadtime.Schedule(c, &again, leadtime.Simulation{Draws: 300, Seed: 5})
				require.NoError(t, err)
				return q.NineInTen
			}
			assert.False(t, u.NeededBy.Before(from(p.LatestOrder)), "%s: ordered on %s", name, p.LatestOrder)
			next := leadtime.NewCalendar(&c.Plant).Add(p.LatestOrder, 1)
			assert.True(t, u.NeededBy.Before(from(next)), "%s: ordered on %s", name, next)
		})
	}
	never := catalogue(func(c *config.Catalogue) {
		c.Plant.Slots = []config.Slot{{Start: day("2035-01-02"), Open: 1}}
	})
	u := unit()
	u.NeededBy = day("2027-06-01")
	assert.True(t, schedule(t, never, u).LatestOrder.IsZero(), "no order is early enough for a slot in 2035")
}

func TestPlanLaws(t *testing.T) {
	options := []string{"camera", "cot", "drawer", "extra-coat", "pump", "plain"} // none saves time
	free, slots := catalogue(), catalogue(withSlots)
	sim := leadtime.Simulation{Draws: 200, Seed: 9}
	rapid.Check(t, func(t *rapid.T) {
		c := free
		if rapid.Bool().Draw(t, "slots") {
			c = slots
		}
		picks := rapid.SliceOfDistinct(rapid.SampledFrom(options), rapid.ID).Draw(t, "picks")
		u := unit(picks...)
		u.OrderOn = day("2026-10-01").AddDays(rapid.IntRange(0, 300).Draw(t, "day"))
		p, err := leadtime.Schedule(c, u, sim)
		require.NoError(t, err)
		assert.False(t, p.NineInTen.Before(p.EvenOdds))
		assert.False(t, p.EvenOdds.Before(u.OrderOn))

		later := u.Clone()
		later.OrderOn = u.OrderOn.AddDays(rapid.IntRange(1, 40).Draw(t, "later"))
		q, err := leadtime.Schedule(c, &later, sim)
		require.NoError(t, err)
		for _, chance := range []float64{.1, .5, .9} {
			assert.False(t, q.At(chance).Before(p.At(chance)), "a later order is never delivered earlier")
		}

		more := u.Clone()
		more.Set(config.Pick{Option: rapid.SampledFrom(options).Draw(t, "more"), Qty: 1})
		q, err = leadtime.Schedule(c, &more, sim)
		require.NoError(t, err)
		for _, chance := range []float64{.1, .5, .9} {
			assert.False(t, q.At(chance).Before(p.At(chance)), "one pick more is never delivered earlier")
		}
		for i := range p.Steps {
			s := &p.Steps[i]
			for _, before := range s.After {
				assert.GreaterOrEqual(t, s.ES, p.Step(before).EF-1e-5, "%s after %s", s.ID, before)
			}
			assert.GreaterOrEqual(t, s.LS, s.ES-1e-5)
		}
	})
}

// A unit that breaks one of the limits misses the day; tried over random units.
func TestLimitsRuleOutOnlyWhatIsLate(t *testing.T) {
	sim := leadtime.Simulation{Draws: 400, Seed: 4}
	options := []string{"camera", "cot", "drawer", "extra-coat", "harness", "jig", "panel", "plain", "prewired", "pump"}
	free, slots := catalogue(), catalogue(withSlots)
	bites := 0
	rapid.Check(t, func(t *rapid.T) {
		c := free
		if rapid.Bool().Draw(t, "slots") {
			c = slots
		}
		picks := rapid.SliceOfDistinct(rapid.SampledFrom(options), rapid.ID).Draw(t, "picks")
		u := unit(picks...)
		u.Body = rapid.SampledFrom([]string{"module-152", "van-body"}).Draw(t, "body")
		for i := range u.Picks {
			if u.Picks[i].Option == "drawer" {
				u.Picks[i].Qty = rapid.IntRange(1, 8).Draw(t, "drawers")
			}
		}
		p, err := leadtime.Schedule(c, u, sim)
		require.NoError(t, err)
		needed := p.NineInTen.AddDays(rapid.IntRange(-20, 10).Draw(t, "slack"))
		late := needed.Before(p.NineInTen)
		for _, l := range p.Limits(needed) {
			sum := l.Base
			for _, k := range u.Picks {
				sum += l.Per[k.Option] * float64(k.Qty)
			}
			if sum > l.Limit+1e-9 {
				bites++
				assert.True(t, late, "%s: %.3f > %.3f yet delivered %s for %s", l.Label, sum, l.Limit, p.NineInTen,
					needed)
			}
		}
	})
	least := 25
	if testing.Short() {
		least = 5 // a fifth of the units is drawn
	}
	assert.Greater(t, bites, least, "the limits do rule units out")
}

// TooLate against planning every option one by one.
func TestTooLate(t *testing.T) {
	for name, c := range map[string]*config.Catalogue{
		"free line": catalogue(),
		"slots":     catalogue(withSlots),
		"one of":    catalogue(func(c *config.Catalogue) { c.Groups[0].Choose = config.ChooseAtMostOne }),
	} {
		t.Run(name, func(t *testing.T) {
			u := unit("pump")
			p := schedule(t, c, u)
			for _, days := range []int{-20, -2, 0, 1, 2, 9, 40} {
				needed := p.NineInTen.AddDays(days)
				got := p.TooLate(needed)
				for i := range c.Options {
					o := &c.Options[i]
					if u.Has(o.ID) {
						assert.NotContains(t, got, o.ID)
						continue
					}
					other := u.Clone()
					if name == "one of" {
						other.Picks = nil
					}
					other.Set(config.Pick{Option: o.ID, Qty: 1})
					q := schedule(t, c, &other)
					late, is := got[o.ID]
					misses := needed.Before(q.NineInTen)
					if days >= 0 {
						assert.Equal(t, misses, is, "%s, %s, %d days: %s", name, o.ID, days, q.NineInTen)
					} else if q.Simulated.NineInTenDays > p.Simulated.NineInTenDays {
						assert.True(t, is, "%s, %s: what is late already is made later", name, o.ID)
					}
					if is {
						assert.True(t, misses)
						assert.InDelta(t, float64(leadtime.NewCalendar(&c.Plant).Between(needed, q.NineInTen)), late,
							1.01)
					}
				}
			}
		})
	}
}

func TestHostilePlants(t *testing.T) {
	tests := []struct {
		code   string
		change func(c *config.Catalogue, u *config.Unit)
		reason string
	}{
		{"time.no-network", func(c *config.Catalogue, u *config.Unit) { c.Plant = config.Plant{} }, "a zero plant"},
		{"time.unknown-chassis", func(c *config.Catalogue, u *config.Unit) { u.Chassis = "?" }, "an unknown chassis"},
		{"time.unknown-body", func(c *config.Catalogue, u *config.Unit) { u.Body = "?" }, "an unknown body"},
		{"time.no-order-date", func(c *config.Catalogue, u *config.Unit) { u.OrderOn = config.Date{} },
			"no order date"},
		{"time.no-order-date", func(c *config.Catalogue, u *config.Unit) {
			u.OrderOn = config.Date{Year: 9999, Month: 1, Day: 1}
		}, "a date beyond the calendar"},
		{"time.circle", func(c *config.Catalogue, u *config.Unit) { c.Plant.Activities[0].After = []string{"deliver"} },
			"a circle"},
		{"time.unknown-id", func(c *config.Catalogue, u *config.Unit) {
			c.Plant.Activities[0].After = []string{"nowhere"}
		}, "an unknown predecessor"},
		{"time.span", func(c *config.Catalogue, u *config.Unit) { c.Plant.Activities[0].Days.Likely = math.NaN() },
			"a duration that is no number"},
		{"time.span", func(c *config.Catalogue, u *config.Unit) { c.Chassis[0].Arrive.High = math.Inf(1) },
			"a chassis that never arrives"},
		{"time.station", func(c *config.Catalogue, u *config.Unit) { c.Plant.Stations[1].Crew = 0 },
			"nobody at the station"},
		{"time.station", func(c *config.Catalogue, u *config.Unit) { c.Plant.HoursPerDay = math.NaN() },
			"no hours in the day"},
		{"time.station", func(c *config.Catalogue, u *config.Unit) { c.Plant.Stations = nil }, "no stations"},
		{"time.span", func(c *config.Catalogue, u *config.Unit) {
			c.Bodies[0].Work = []config.Work{{Station: "framing", Hours: quantity.Hours(math.NaN())}}
		}, "hours that are no number"},
	}
	for _, test := range tests {
		t.Run(test.reason, func(t *testing.T) {
			c, u := catalogue(), unit("camera")
			test.change(c, u)
			_, err := leadtime.Schedule(c, u, leadtime.Standard)
			var ps config.Problems
			require.True(t, errors.As(err, &ps), "%s: %v", test.reason, err)
			assert.Equal(t, test.code, ps[0].Code, test.reason)
			assert.NotEmpty(t, ps[0].Where, test.reason)
		})
	}
	_, err := leadtime.Schedule(nil, unit(), leadtime.Standard)
	assert.Error(t, err)
	_, err = leadtime.Schedule(catalogue(), nil, leadtime.Standard)
	assert.Error(t, err)

	c, u := catalogue(), unit()
	c.Plant.Shutdowns = []config.Shutdown{{First: day("2026-12-01"), Last: day("2199-12-31"), Label: "Closed for good"}}
	p := schedule(t, c, u)
	assert.Contains(t, codes(p), "time.calendar-end")
	u = unit("camera")
	u.Set(config.Pick{Option: "unknown", Qty: 1})
	u.Set(config.Pick{Option: "drawer", Qty: -4})
	u.NeededBy = config.Date{Year: -5, Month: 40, Day: 99}
	p = schedule(t, catalogue(), u)
	assert.Empty(t, p.Step("cabinets").Added, "a negative quantity adds no work")
	_, err = json.Marshal(p)
	assert.NoError(t, err, "no figure is infinite or no number")
}
