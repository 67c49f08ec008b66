package quote

import (
	"fmt"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boxwright/config"
	"boxwright/config/leadtime"
	"boxwright/pricing"
	"boxwright/pricing/money"
	"boxwright/web/assets/catalogue"
)

var demo = sync.OnceValue(func() *Edition {
	ed, err := OpenEdition(catalogue.Demo)
	if err != nil {
		panic(err)
	}
	return ed
})

var today = config.Date{Year: 2026, Month: 11, Day: 25}

// fleetOf is a draft of one unit on each chassis, the first in work.
func fleetOf(chassis ...string) *Draft {
	d := Begin(demo(), chassis[0], "", today)
	for _, c := range chassis[1:] {
		d.Duplicate()
		d.Unit = Begin(demo(), c, "", today).Unit
	}
	d.WorkOn(0)
	return d
}

// Whatever is added, taken off and worked on: no unit is lost or doubled, and
// their order hangs on nothing but what was added and taken off.
func TestItemsKeepTheirOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := New(demo(), "", "", today)
		d.Title = "0"
		want := []string{"0"}
		at := 0
		for step := range rapid.IntRange(1, 30).Draw(t, "steps") {
			switch rapid.IntRange(0, 3).Draw(t, "act") {
			case 0:
				if d.Duplicate() {
					at++
					d.Title = fmt.Sprint(step + 1)
					want = append(want[:at], append([]string{d.Title}, want[at:]...)...)
				}
			case 1:
				at = rapid.IntRange(0, len(want)-1).Draw(t, "at")
				d.WorkOn(at)
			case 2:
				k := rapid.IntRange(0, len(want)-1).Draw(t, "at")
				d.Remove(k)
				if len(want) > 1 {
					want = append(want[:k:k], want[k+1:]...)
				}
			default:
				d.WorkOn(rapid.SampledFrom([]int{-1, len(want)}).Draw(t, "nowhere"))
			}
			at = d.At
			var got []string
			for _, it := range d.Items() {
				got = append(got, it.Label)
			}
			require.Equal(t, want, got)
			require.Equal(t, want[d.At], d.Title)
			require.Empty(t, d.Check())
			data, err := d.Bytes()
			require.NoError(t, err)
			again, err := ReadDraft(data)
			require.NoError(t, err)
			require.Equal(t, got[d.At], again.Title)
			require.Len(t, again.More, len(d.More))
		}
	})
}

// The shares of the units add up to the total, and so do the lines; which unit
// is in work changes neither price nor dates.
func TestFleetIsPricedAndDatedAsOne(t *testing.T) {
	ed := demo()
	d := fleetOf("cut-14500-158-gas", "cut-14000-158-gas", "med-19500-175-diesel")
	d.More[0].Units = 2
	d.Terms.DiscountPercent, _ = money.ParsePercent("1.5")
	d.Terms.FreightMiles, _ = money.ParseQuantity("300")
	var totals, dates []string
	for at := range d.Items() {
		c := d.Clone()
		c.WorkOn(at)
		q, err := Compute(ed, c)
		require.NoError(t, err)
		var lines, shares pricing.Amount
		for _, l := range q.Price.Lines {
			lines = lines.Add(l.Amount)
		}
		for _, s := range q.Price.Shares {
			shares = shares.Add(s.Amount)
		}
		require.True(t, lines.Equal(q.Price.Total))
		require.True(t, shares.Equal(q.Price.Total))
		require.Len(t, q.Price.Shares, 4)
		text := ""
		for _, x := range q.Deliveries() {
			text += fmt.Sprintln(x.Item, x.N, x.Alike, x.Plan.EvenOdds, x.Plan.NineInTen, x.Plan.Slot)
		}
		totals, dates = append(totals, q.Total()), append(dates, text)
		i := 0
		for q.Deliveries()[i].Item != at {
			i++
		}
		assert.Equal(t, q.Plan.NineInTen, q.Deliveries()[i].Plan.NineInTen,
			"the unit in work is dated as in the list of all")
	}
	for i := range totals {
		assert.Equal(t, totals[0], totals[i])
		assert.Equal(t, dates[0], dates[i])
	}
	plans, err := leadtime.Fleet(ed.Cat, []*config.Unit{&d.Unit, &d.More[0].Unit, &d.More[0].Unit, &d.More[1].Unit},
		Luck(4))
	require.NoError(t, err)
	text := ""
	for _, p := range plans {
		text += p.NineInTen.String()
	}
	q, err := Compute(ed, d)
	require.NoError(t, err)
	got := ""
	for _, x := range q.Deliveries() {
		got += x.Plan.NineInTen.String()
	}
	assert.Equal(t, text, got)
}

// A single unit is dated by the light draws; they agree with the many within
// two working days.
func TestLightDrawsAgree(t *testing.T) {
	ed := demo()
	cal := leadtime.NewCalendar(&ed.Cat.Plant)
	for _, c := range ed.Cat.Chassis {
		d := Begin(ed, c.ID, "", today)
		q, err := Compute(ed, d)
		require.NoError(t, err)
		full, err := leadtime.Schedule(ed.Cat, &d.Unit, leadtime.Simulation{Draws: 10_000, Seed: 1})
		require.NoError(t, err)
		assert.InDelta(t, 0, cal.Between(full.EvenOdds, q.Plan.EvenOdds), 2, c.ID)
		assert.InDelta(t, 0, cal.Between(full.NineInTen, q.Plan.NineInTen), 2, c.ID)
	}
}

func TestFleetsThatAreNotRead(t *testing.T) {
	for _, c := range []struct {
		reason string
		change func(*Draft)
	}{
		{"too many kinds of unit", func(d *Draft) {
			for range MaxItems {
				d.More = append(d.More, d.More[0])
			}
		}},
		{"a place that is none", func(d *Draft) { d.At = 2 }},
		{"a place below zero", func(d *Draft) { d.At = -1 }},
		{"a count below zero", func(d *Draft) { d.More[0].Units = -1 }},
		{"more units than a quote holds", func(d *Draft) { d.More[0].Units = pricing.MaxUnits }},
		{"a label without end", func(d *Draft) { d.More[0].Label = strings.Repeat("x", 401) }},
	} {
		t.Run(c.reason, func(t *testing.T) {
			d := fleetOf("", "")
			c.change(d)
			data, err := d.Bytes()
			require.NoError(t, err)
			_, err = ReadDraft(data)
			assert.Error(t, err, c.reason)
		})
	}
	d := fleetOf("", "")
	d.More[0].Unit.Chassis = "ghost"
	_, err := Compute(demo(), d)
	assert.Error(t, err, "a unit that the edition does not know")
}

// The book in force on the day is at hand for every price that is shown.
func TestBookOfTheDay(t *testing.T) {
	d := Begin(demo(), "cut-14500-158-gas", "", config.Date{Year: 2027, Month: 2, Day: 1})
	q, err := Compute(demo(), d)
	require.NoError(t, err)
	for _, l := range q.Price.Lines {
		if l.ID != "" {
			assert.Equal(t, l.Price.String(), pricing.PriceOf(q.Book, demo().Cat, l.ID).String(), l.ID)
		}
	}
	assert.Equal(t, "53200.00", pricing.PriceOf(q.Book, demo().Cat, "cut-14500-158-gas").String())
}

func BenchmarkFleetOfTen(b *testing.B) {
	d := fleetOf("cut-14500-158-gas", "cut-14000-158-gas")
	d.Terms.Units, d.More[0].Units = 5, 5
	for b.Loop() {
		q, err := Compute(demo(), d)
		if err != nil {
			b.Fatal(err)
		}
		q.Deliveries()
	}
}

// Units without a name are told apart by what they are for, where chassis and body do not.
func TestNamesTellUnitsApart(t *testing.T) {
	d := fleetOf("cut-14500-158-gas", "cut-14500-158-gas", "van-9500-148-gas")
	q, err := Compute(demo(), d)
	require.NoError(t, err)
	usual := "Cutaway 14,500 lb, 158 in wheelbase, gasoline, "
	assert.True(t, strings.HasPrefix(q.NameOf(0), "1. "+usual), q.NameOf(0))
	d.Unit.Set(config.Pick{Option: "dp-multi", Qty: 1})
	q, err = Compute(demo(), d)
	require.NoError(t, err)
	assert.True(t, strings.HasPrefix(q.NameOf(0), "1. Multi-patient transport, "+usual), q.NameOf(0))
	assert.True(t, strings.HasPrefix(q.NameOf(2), "3. Van"), q.NameOf(2))
	d.Title = "Medic 1"
	q, err = Compute(demo(), d)
	require.NoError(t, err)
	assert.Equal(t, "1. Medic 1", q.NameOf(0))
}
