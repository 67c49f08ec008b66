package quote_test

import (
	"cmp"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/csv"
	"boxwright/config/leadtime"
	"boxwright/config/quantity"
	"boxwright/pricing"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
	"boxwright/web/assets/catalogue"
)

func begun(t *testing.T, chassis string) *quote.Quote {
	ed := quotetest.Demo(t)
	q, err := quote.Compute(ed, quote.Begin(ed, chassis, "", quotetest.Today))
	require.NoError(t, err)
	return q
}

// A source is a name alone: how well it is known stands beside it, and what is shown says both
// once.
func TestSourcesSayNothingOfHowWellTheyAreKnown(t *testing.T) {
	bases := []config.Basis{config.ReadInText, config.FromMemory, config.CommonPractice}
	named := func(source string, b config.Basis) {
		t.Helper()
		for _, other := range bases {
			assert.NotContains(t, source, string(other))
		}
		if source != "" && b == config.FromMemory {
			assert.Equal(t, source+"; from memory", b.Known(source))
		}
	}
	for _, chassis := range []string{"cut-14500-158-gas", "med-26000-189-diesel"} {
		q := begun(t, chassis)
		for _, r := range []*config.Report{&q.Weight.Report, &q.Power.Report, &q.Space.Report} {
			for _, f := range r.Figures {
				named(f.Source, f.Basis)
			}
		}
		for _, v := range q.Verdicts {
			named(v.Source, v.Basis)
		}
		for _, l := range q.Assume.Limits {
			named(l.Source, l.Basis)
		}
		i := slices.IndexFunc(q.Checks(), func(c quote.Check) bool { return c.ID == "power.shore" })
		require.GreaterOrEqual(t, i, 0)
		assert.Equal(t, "125 V load, all at once", q.Checks()[i].What, "it is read, and held against nothing")
	}
}

// What two options ask to be looked after is one line.
func TestUpkeepSaysNothingTwice(t *testing.T) {
	q := begun(t, "cut-14500-158-gas")
	d := q.Draft.Clone()
	d.Unit.Set(config.Pick{Option: "rsq-cascade", Qty: 1})
	d.Unit.Set(config.Pick{Option: "df-scba-brackets", Qty: 1})
	q, err := quote.Compute(q.Edition, d)
	require.NoError(t, err)
	seen := map[quote.Task]bool{}
	for _, task := range q.Tasks(quantity.US) {
		assert.False(t, seen[task], task.What)
		seen[task] = true
	}
}

// What stays as the module has it saves the plan hours, and is no work on the order sheet.
func TestNoStationWorksLessThanNothing(t *testing.T) {
	ed := quotetest.Demo(t)
	d, ok := quote.BeginRemount(ed, "cut-14500-158-gas", quote.Begin(ed, "cut-14500-158-gas", "", quotetest.Today),
		quotetest.Today)
	require.True(t, ok)
	q, err := quote.Compute(ed, d)
	require.NoError(t, err)
	listed := 0
	for _, s := range q.Stations() {
		assert.GreaterOrEqual(t, s.Hours, 0.0, s.Label)
		for _, l := range s.Lines {
			assert.GreaterOrEqual(t, l.Hours, 0.0, l.Label)
			if l.Label == ed.Cat.LabelOf("street-kept") {
				listed++
			}
		}
	}
	assert.Equal(t, 1, listed, "it is on the sheet")
}

// Every hour of work that the plan counts stands on the order sheet once.
func TestStations(t *testing.T) {
	q := begun(t, "cut-14500-158-gas")
	sum, want := 0.0, 0.0
	seen := map[string]bool{}
	for _, s := range q.Stations() {
		sum += s.Hours
		for _, l := range s.Lines {
			seen[l.Label] = true
		}
		if s.ID != "" {
			assert.False(t, s.Finish.Before(s.Start), s.Label)
		}
	}
	for _, w := range append(q.Chassis.Work, q.Body.Work...) {
		want += float64(w.Hours)
	}
	for _, p := range q.Draft.Unit.Picks {
		o := q.Edition.Cat.OptionByID(p.Option)
		for _, w := range o.Work {
			want += float64(w.Hours) * float64(p.Qty)
		}
		assert.Equal(t, !o.IsNone(), seen[o.Label], "%s is on the sheet", o.Label)
	}
	assert.InDelta(t, want, sum, 1e-9)
	begins := ""
	for _, s := range q.Stations() {
		if s.ID != "" {
			assert.LessOrEqual(t, begins, s.Start.String(), "%s is read in the order of the work", s.Label)
			begins = s.Start.String()
		}
	}
	lead := q.LongLead()
	require.NotEmpty(t, lead)
	for i, s := range lead {
		if s.Option != "" {
			assert.Equal(t, q.Edition.Cat.LabelOf(s.Option), s.Label)
		}
		assert.LessOrEqual(t, s.Days.Likely, lead[max(i-1, 0)].Days.Likely, "%s: what takes longest is ordered first",
			s.Label)
	}
}

// What an option asks for is printed wherever the option is, and asked for
// until it is said; an open question stops nothing.
func TestDetails(t *testing.T) {
	q := begun(t, "cut-14500-158-gas")
	asked := func(q *quote.Quote) (config.Finding, bool) {
		for _, f := range q.Findings {
			if f.Code == "rules.detail" {
				return f, true
			}
		}
		return config.Finding{}, false
	}
	printed := func(q *quote.Quote) string {
		text := csv.Write(q.Everything())
		for _, s := range q.Stations() {
			for _, l := range s.Lines {
				text += "\n" + l.Label + " " + l.Told
			}
		}
		for _, r := range quote.Compare([]*quote.Quote{q, q}, nil, nil, quantity.US) {
			text += "\n" + strings.Join(r.Cells, " ")
		}
		return text
	}
	f, found := asked(q)
	require.True(t, found)
	assert.Equal(t, config.Note, f.Severity)
	assert.Contains(t, f.Picks, "mrk-unit-number")
	assert.Equal(t, 2, strings.Count(printed(q), "Unit number: to be named"), "in the table and on the order sheet")
	for _, id := range f.Picks {
		q.Draft.Unit.Tell(id, "Medic 7 & <b>")
	}
	after, err := quote.Compute(q.Edition, q.Draft)
	require.NoError(t, err)
	_, found = asked(after)
	assert.False(t, found)
	assert.Equal(t, 2, strings.Count(printed(after), "Unit number: Medic 7 & <b>"))
	assert.Contains(t, printed(after), "Unit number on four sides (Medic 7 & <b>)", "quotes are compared by it too")
	assert.NotContains(t, printed(after), "to be named")

	moved, lost, _ := quote.Move(q.Edition, q.Draft)
	assert.Empty(t, lost)
	assert.Equal(t, q.Draft.Unit.Details, moved.Unit.Details)
	assert.Empty(t, propose.Basis(q.Draft, q.Edition.Cat).Unit.Details, "no proposal depends on it")
	for reason, wrong := range map[string][]config.Detail{
		"too long":     {{Option: "mrk-unit-number", Text: strings.Repeat("7", config.MaxDetail+1)}},
		"empty":        {{Option: "mrk-unit-number"}},
		"unknown":      {{Option: "mrk-none", Text: "7"}},
		"twice":        {{Option: "mrk-unit-number", Text: "7"}, {Option: "mrk-unit-number", Text: "8"}},
		"out of order": {{Option: "mrk-unit-number", Text: "7"}, {Option: "let-plain", Text: "8"}},
	} {
		t.Run(reason, func(t *testing.T) {
			q.Draft.Unit.Details = wrong
			_, err := quote.Compute(q.Edition, q.Draft)
			assert.ErrorContains(t, err, "details[", reason)
		})
	}
}

func TestChecks(t *testing.T) {
	for _, chassis := range []string{"cut-14500-158-gas", "van-9500-148-gas", "med-26000-189-diesel"} {
		q := begun(t, chassis)
		ids := map[string]bool{}
		for _, c := range q.Checks() {
			assert.False(t, ids[c.ID], "%s stands once", c.ID)
			ids[c.ID] = true
			assert.False(t, math.IsNaN(c.Low) || math.IsInf(c.Low, 0), c.ID)
			assert.LessOrEqual(t, c.Low, c.Want, c.ID)
			assert.GreaterOrEqual(t, c.High, c.Want, c.ID)
			v := c.Want
			q.Draft.Read(c.ID, &v)
		}
		require.Empty(t, q.Draft.Check(), "readings can be kept")
		for _, c := range q.Checks() {
			assert.True(t, c.Good(), "%s: what is expected is accepted", c.ID)
		}
		total := 1.04 * float64(q.Weight.Curb.TotalLb)
		q.Draft.Read("weigh.total", &total)
		assert.False(t, q.Checks()[0].Good(), "4 % too much is not")
		q.Draft.Read("weigh.total", nil)
		assert.Nil(t, q.Checks()[0].Reading)
	}
}

// The test sheet takes a unit that is built as ordered, a little heavier all over, and
// refuses one that is not: with a thing too many, batteries of half the capacity, a roof
// an inch lower, a load that does not run, a circuit with too thin a wire.
func TestTheTestSheetTellsGoodUnitsFromBad(t *testing.T) {
	const chassis = "cut-14500-158-gas"
	q := begun(t, chassis)
	built := float64(q.Weight.Curb.TotalLb - q.Chassis.CurbFrontLb - q.Chassis.CurbRearLb)
	other := func(ids ...string) *quote.Quote {
		d := quote.Begin(q.Edition, chassis, "", quotetest.Today)
		for _, id := range ids {
			d.Unit.Set(config.Pick{Option: id, Qty: 1})
		}
		o, err := quote.Compute(q.Edition, d)
		require.NoError(t, err)
		return o
	}
	winch := other("fb-winch")
	want := map[string]float64{}
	for _, c := range q.Checks() {
		want[c.ID] = c.Want
	}
	drop := ""
	for id := range want {
		if strings.HasPrefix(id, "drop.") && (drop == "" || id < drop) {
			drop = id
		}
	}
	for _, c := range []struct {
		name    string
		read    map[string]float64
		refused string
	}{
		{"as computed", map[string]float64{}, ""},
		{"2 % heavy", map[string]float64{"weigh.total": want["weigh.total"] + 0.02*built,
			"weigh.rear": want["weigh.rear"] + 0.016*built, "weigh.front": want["weigh.front"] + 0.004*built}, ""},
		{"batteries a tenth down", map[string]float64{"power.battery-minutes": 0.9 * want["power.battery-minutes"]}, ""},
		{"loads 5 % up", map[string]float64{"power.scene": 1.05 * want["power.scene"]}, ""},
		{"a winch bumper nobody ordered", map[string]float64{"weigh.front": float64(winch.Weight.Curb.FrontLb)},
			"weigh.front"},
		{"6 % heavy", map[string]float64{"weigh.total": want["weigh.total"] + 0.06*built}, "weigh.total"},
		{"half the batteries", map[string]float64{"power.battery-minutes": 0.5 * want["power.battery-minutes"]},
			"power.battery-minutes"},
		{"a load that does not run", map[string]float64{"power.scene": 0.8 * want["power.scene"]}, "power.scene"},
		{"an inch less headroom", map[string]float64{"space.headroom": want["space.headroom"] - 1}, "space.headroom"},
		{"an air horn on the roof", map[string]float64{"space.height-all": want["space.height-all"] + 5},
			"space.height-all"},
		{"flood lights below the belt", map[string]float64{"space.flood-height": 71}, "space.flood-height"},
		{"a floor two inches higher", map[string]float64{"space.loading-height": want["space.loading-height"] + 2},
			"space.loading-height"},
		{"a narrower rear doorway", map[string]float64{"space.rear-door": 43.5}, "space.rear-door"},
		{"too thin a wire", map[string]float64{drop: 3 * want[drop]}, drop},
	} {
		t.Run(c.name, func(t *testing.T) {
			q.Draft.Readings = nil
			for id, v := range want {
				if other, changed := c.read[id]; changed {
					v = other
				}
				q.Draft.Read(id, &v)
			}
			refused := ""
			for _, k := range q.Checks() {
				if !k.Good() {
					refused += k.ID
					t.Log(k.What, *k.Reading, "accepted", k.Low, k.High, k.Basis)
				}
			}
			assert.Equal(t, c.refused, refused)
		})
	}
}

// The data of labels and forms: a van that is altered has another label than a module on
// a chassis; sums are those of the weigh-up by hand, and a scale goes before computing.
func TestLabelData(t *testing.T) {
	find := func(q *quote.Quote, label, what string) quote.LabelLine {
		for _, l := range q.LabelData() {
			for _, x := range l.Lines {
				if l.ID == label && strings.HasPrefix(x.What, what) {
					return x
				}
			}
		}
		return quote.LabelLine{}
	}
	ids := func(q *quote.Quote) (out []string) {
		for _, l := range q.LabelData() {
			out = append(out, l.ID)
			assert.NotEmpty(t, l.Source)
			for _, x := range l.Lines {
				assert.False(t, x.Blank && x.Text != "", x.What)
			}
		}
		return out
	}
	cut, van := begun(t, "cut-14500-158-gas"), begun(t, "van-9500-148-gas")
	assert.Equal(t, []string{"final-stage", "payload-sign", "payload-form"}, ids(cut))
	assert.Equal(t, []string{"alterer", "placard", "payload-sign", "payload-form"}, ids(van))
	assert.InDelta(t, 14500, find(cut, "final-stage", "GVWR").Value, 0)
	assert.InDelta(t, 9600, find(cut, "final-stage", "Rear GAWR").Value, 0)
	assert.Equal(t, "LT225/75R16 E, dual", find(cut, "final-stage", "Rear tires").Text)
	assert.True(t, find(cut, "final-stage", "Vehicle identification").Blank)
	assert.True(t, find(cut, "final-stage", "Rear rims").Blank, "beside the tires, 49 CFR 571.120 S5.3.2")
	assert.True(t, find(van, "alterer", "Front rims").Blank)
	assert.Equal(t, "LT245/75R16 E", find(van, "placard", "Rear tires").Text, "49 CFR 571.110 S4.3")
	assert.Equal(t, "80 psi", find(van, "placard", "Front tire pressure").Text)
	assert.InDelta(t, 9500-float64(van.Weight.Curb.TotalLb), find(van, "placard", "That weight").Value, 1e-6)
	left, _ := cut.Figure("weight.payload-left")
	assert.InDelta(t, left.Value, find(cut, "payload-form", "8. Left").Value, 1.5, "the form and the weigh-up agree")
	weighed := 11200.0
	cut.Draft.Read("weigh.total", &weighed)
	assert.InDelta(t, 3300, find(cut, "payload-sign", "Payload").Value, 0)
	assert.Contains(t, find(cut, "payload-form", "2. Curb").From, "scale")
}

// Who signs a form subtracts what is printed on it.
func TestPayloadFormAddsUpAsPrinted(t *testing.T) {
	for _, id := range []string{"cut-14500-158-gas", "van-9500-148-gas", "cab-17500-169-4x4-diesel"} {
		q := begun(t, id)
		for _, curb := range []float64{0, 8660.4, 8660.5} {
			if curb > 0 {
				q.Draft.Read("weigh.total", &curb)
			}
			for _, l := range q.LabelData() {
				if strings.HasPrefix(l.ID, "payload-") {
					addsUp(t, l, id)
				}
			}
		}
	}
}

func addsUp(t *testing.T, l quote.Label, unit string) {
	t.Helper()
	at := map[string]float64{}
	for _, x := range l.Lines {
		_, what, numbered := strings.Cut(x.What, ". ")
		if !numbered {
			what = x.What
		}
		what, _, _ = strings.Cut(what, ",")
		at[what] = math.Round(x.Value) // as printed
	}
	assert.InDelta(t, at["GVWR"]-at["Curb weight"], at["Payload"], 0, "%s of %s", l.ID, unit)
	assert.InDelta(t, at["Payload"]-at["Occupants and patients"]-at["Loose equipment"],
		at["Left"]+at["Cargo that may be added"], 0, "%s of %s", l.ID, unit)
	assert.InDelta(t, at["Payload"]-at["Payload asked for"], cmp.Or(at["Beyond it"], at["Payload"]), 0, unit)
}

func TestUpkeep(t *testing.T) {
	cut, diesel := begun(t, "cut-14500-158-gas"), begun(t, "cab-17500-169-4x4-diesel")
	words := func(q *quote.Quote) (all string) {
		last := 0
		for _, task := range q.Tasks(quantity.US) {
			assert.GreaterOrEqual(t, task.Months, last, "the most frequent first")
			last = task.Months
			all += task.What + "\n"
		}
		return all
	}
	assert.NotContains(t, words(cut), "Transfer case")
	assert.Contains(t, words(diesel), "Transfer case")
	assert.Contains(t, words(diesel), "regeneration")
	assert.Contains(t, words(cut), "psi (", "pressures are this unit's")
	assert.NotEmpty(t, cut.Service())
}

func TestEverything(t *testing.T) {
	q := begun(t, "")
	q.Draft.Title = `=HYPERLINK("x")`
	text := csv.Write(q.Everything())
	back, err := csv.Read(text)
	require.NoError(t, err)
	assert.Equal(t, q.Everything(), back, "the saved table reads back")
	assert.NotContains(t, strings.ReplaceAll(text, "'=HYPERLINK", ""), "=HYPERLINK", "no formula")
	assert.Contains(t, text, "Total,,1,"+q.Price.Total.String())
	assert.Contains(t, text, "\nWeights,")
	assert.NotContains(t, text, "Masses")
	assert.Contains(t, text, "Price,Of it,\"Includes sales tax of ", "what of the total is tax")
}

// A unit of which very much is to be named lists some of it and says how much more.
func TestWhatIsToBeNamedIsAList(t *testing.T) {
	file := regexp.MustCompile(`, "asks": "[^"]*"`).ReplaceAll(catalogue.Demo, nil)
	file = regexp.MustCompile(`(\{"id": "[^"]*", )("group": )`).ReplaceAll(file, []byte(`$1"asks": "a word", $2`))
	ed, err := quote.OpenEdition(file)
	require.NoError(t, err)
	q, err := quote.Compute(ed, quote.Begin(ed, "cut-14500-158-gas", "mod-146-72", quotetest.Today))
	require.NoError(t, err)
	i := slices.IndexFunc(q.Findings, func(f config.Finding) bool { return f.Code == quote.StillToBeNamed })
	f := q.Findings[i]
	require.Greater(t, len(f.Picks), 20)
	assert.Equal(t, 7, strings.Count(f.Text, "(a word)"))
	assert.True(t, strings.HasSuffix(f.Text, fmt.Sprintf("; and %d more.", len(f.Picks)-7)), f.Text)
}

// A unit as the plant builds it lacks nothing of standard; what is replaced by another is named
// with it, and what just goes without.
func TestWhatIsLeftOutOfStandard(t *testing.T) {
	q := begun(t, "cut-14500-158-gas")
	assert.Empty(t, q.LeftOut())
	cat, u := q.Edition.Cat, &q.Draft.Unit
	label := cat.LabelOf
	u.Drop("cot-manual")
	u.Set(config.Pick{Option: "cot-power", Qty: 1})
	u.Drop("rail-channel")
	u.Set(config.Pick{Option: "rail-none", Qty: 1})
	u.Drop("rec-rear-eyes")
	assert.ElementsMatch(t, []quote.Missing{{Label: label("cot-manual"), Instead: label("cot-power")},
		{Label: label("rail-channel")}, {Label: label("rec-rear-eyes")}}, q.LeftOut())
}

// What is usual for the duty is standard too: Needs says so when a proposal goes without it.
func TestWhatIsUsualForTheDutyIsMissed(t *testing.T) {
	ed := quotetest.Demo(t)
	d := quote.Begin(ed, "cab-14000-169-4x4-diesel", "mod-132-68", quotetest.Today)
	for _, id := range []string{"dp-multi", "arr-cot-litter", "df-hanging-litter"} {
		d.Unit.Set(config.Pick{Option: id, Qty: 1})
	}
	q, err := quote.Compute(ed, d)
	require.NoError(t, err)
	roster := quote.Missing{Label: ed.Cat.LabelOf("df-roster-board")}
	assert.Contains(t, q.LeftOut(), roster)
	assert.Contains(t, q.LeftOut(), quote.Missing{Label: ed.Cat.LabelOf("cfit-board-slots")})
	assert.Equal(t, "6 with 1 patient", quote.Seated(ed.Cat, &q.Draft.Unit))
	assert.Empty(t, quote.Seated(ed.Cat, &begun(t, "cut-14500-158-gas").Draft.Unit), "one patient takes no seat")

	d = q.Draft.Clone()
	d.Unit.Set(config.Pick{Option: "df-roster-board", Qty: 1})
	q, err = quote.Compute(ed, d)
	require.NoError(t, err)
	assert.NotContains(t, q.LeftOut(), roster)
}

// A chassis that is paid early is paid so many days early as the schedule has it.
func TestDaysEarlyFollowTheSchedule(t *testing.T) {
	ed := quotetest.Demo(t)
	q, err := quote.Compute(ed, quote.Begin(ed, "cut-14500-158-gas", "mod-146-72", quotetest.Today))
	require.NoError(t, err)
	days := map[string]int{}
	for _, p := range q.Book.Prepayments {
		days[p.At] = q.DaysEarly(&p)
	}
	assert.Equal(t, q.Plan.Order.DaysUntil(q.Plan.EvenOdds), days[pricing.AtOrder])
	i := slices.IndexFunc(q.Plan.Steps, func(s leadtime.Step) bool { return s.Source == config.SourceChassis })
	assert.Equal(t, q.Plan.Steps[i].Finish.DaysUntil(q.Plan.EvenOdds), days[pricing.AtArrival])
	assert.Less(t, days[pricing.AtArrival], days[pricing.AtOrder])
	q.Draft.Terms.PrepayDays = 90
	assert.Equal(t, 90, q.DaysEarly(&q.Book.Prepayments[0]), "as typed")
}
