package delivery

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/config"
	"boxwright/config/leadtime"
	"boxwright/pricing/quote/quotetest"
	"boxwright/web/page"
	"boxwright/web/page/pagetest"
	"boxwright/web/session"
)

func TestListsThatAreCutShort(t *testing.T) {
	ed := quotetest.Demo(t)
	p := &Page{Page: pagetest.Of(t, ed, "cut-14500-158-gas", false), View: &session.View{}, DelaysKnown: true}
	for _, l := range []pagetest.List{
		{Name: "what choices add to a step", Most: 4, Draw: func(n int) string {
			s := leadtime.Step{Label: "Weld"}
			for i := range n {
				s.Added = append(s.Added, leadtime.Added{Label: pagetest.Numbered(i), Hours: 2})
			}
			p.Q.Plan.Steps = []leadtime.Step{s}
			return steps(p).String()
		}, More: func(rest int) string { return " and " + strconv.Itoa(rest) + " more" }},
		{Name: "choices that delay", Most: 6, Draw: func(n int) string {
			p.Delays = nil
			for i := range n {
				ed.Cat.Options[i].Label = pagetest.Numbered(i)
				p.Delays = append(p.Delays, leadtime.Delay{Option: ed.Cat.Options[i].ID, Days: float64(90 - i)})
			}
			return delays(p).String()
		}},
	} {
		l.IsCutShort(t)
	}
}

// A date and the working days beside it say the same, so two dates never have the same days.
func TestWorkingDaysFitTheDate(t *testing.T) {
	p := pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", false)
	for _, days := range []float64{109.6, 110, 110.4} {
		p.Q.Plan.Simulated.EvenOddsDays = days
		assert.Contains(t, page.Dates(p, true).String(), "("+strconv.Itoa(int(math.Ceil(days)))+" working days)", days)
	}
}

// The slots of the framing line are told by the month for a year, with the unit's own among them;
// those after it are counted.
func TestSlotsAreToldByTheMonth(t *testing.T) {
	p := &Page{Page: pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", false), View: &session.View{}}
	open, last := 0, ""
	for _, s := range p.Q.Edition.Cat.Plant.Slots {
		if s.Open > 0 && !s.Start.Before(p.Q.Plan.Order) {
			open, last = open+s.Open, s.Start.Long()
		}
	}
	html := slots(p).String()
	rows := regexp.MustCompile(`<tr><th scope="row">([^<]*)</th><td class="num">(\d+)</td>`).FindAllStringSubmatch(html, -1)
	assert.Len(t, rows, slotMonths)
	for _, r := range rows {
		n, err := strconv.Atoi(r[2])
		assert.NoError(t, err)
		open -= n
	}
	assert.Positive(t, open, "the demonstration has slots for longer than a year")
	assert.Contains(t, html, "and "+strconv.Itoa(open)+" more open later, through "+last+".")
	mine := p.Q.Plan.Slot
	row := pagetest.RowOf(t, html, page.Held(mine.MonthName()+" "+strconv.Itoa(mine.Year)))
	assert.Contains(t, row[2], strconv.Itoa(mine.Day)+", this unit")
}

// Of the line's slots those are told that are open from the order on, each with how many where several are, and
// nothing is said of later ones where there are none.
func TestSlotsThatAreOpenAreTold(t *testing.T) {
	ed := quotetest.Demo(t)
	p := &Page{Page: pagetest.Of(t, ed, "cut-14500-158-gas", false), View: &session.View{}}
	order := p.Q.Plan.Order
	month := config.Date{Year: order.Year + 1, Month: 3, Day: 1}
	day := func(d int) config.Date { return month.AddDays(d - 1) }
	ed.Cat.Plant.Slots = []config.Slot{{Start: order.AddDays(-1), Open: 1}, {Start: day(2), Open: 1}, {Start: day(9)},
		{Start: day(16), Open: 3}}
	p.Q.Plan.Slot = day(2)
	html := slots(p).String()
	row := pagetest.RowOf(t, html, page.Held("Mar "+strconv.Itoa(month.Year)))
	assert.Equal(t, []string{page.Held("Mar " + strconv.Itoa(month.Year)), "4", page.Held("2, this unit, 16 (3)")}, row)
	assert.Equal(t, 2, strings.Count(html, "<tr>"), "the head, and no month without an open slot: "+html)
	assert.NotContains(t, html, "open later")
}

// A van is not framed: nobody reads slots that it does not take.
func TestAVanTakesNoSlot(t *testing.T) {
	p := &Page{Page: pagetest.Of(t, quotetest.Demo(t), "van-9500-148-gas", false), View: &session.View{}}
	assert.NotContains(t, draw(p).String(), "framing line")
}

// The longest chain is said to come out later only where its date is the later one.
func TestTheChainIsLaterByItsDate(t *testing.T) {
	p := pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", false)
	s := p.Q.Plan
	for days, later := range map[int]bool{0: false, 1: true} {
		s.TooHopefulAtEven, s.Analytic.EvenOdds = -.3, s.EvenOdds.AddDays(days)
		assert.Equal(t, later, strings.Contains(page.Dates(p, true).String(), "comes out later"), "by %d days", days)
	}
}

// Of the curve is told where it begins and ends and what is marked on it, not a list of days.
func TestTheCurveSaysWhatItShows(t *testing.T) {
	p := &Page{Page: pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", false), View: &session.View{}}
	s := p.Q.Plan
	p.Q.Draft.Unit.NeededBy = s.NineInTen.AddDays(1)
	for _, m := range regexp.MustCompile(`aria-label="([^"]*)"`).FindAllStringSubmatch(chanceChart(p).String(), -1) {
		assert.Regexp(t, `^The chance that it is delivered rises from \d+ % on .* to \d+ % on [^.]*\. Marked: [^.]*\.$`, m[1])
		for _, part := range []string{s.Spread[0].On.Long(), s.Spread[len(s.Spread)-1].On.Long(),
			"likely " + s.EvenOdds.Long(),
			"safe " + s.NineInTen.Long(), "80 % " + s.At(.8).Long(), "needed " + p.Q.Draft.Unit.NeededBy.Long() + " with"} {
			assert.Contains(t, m[1], part)
		}
	}
}
