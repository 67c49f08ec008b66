package propose_test

import (
	"math/rand"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/seeds"
	"boxwright/pricing/money"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
)

func TestProposals(t *testing.T) {
	ed := quotetest.Demo(t)
	for _, c := range []struct {
		reason string
		needs  quote.Needs
		budget string
		by     config.Date
		third  string // what the soonest is called
	}{
		{"nothing asked", quote.Needs{}, "", config.Date{}, "Earliest delivery"},
		{"advanced life support in snow, crew of six", quote.Needs{Duty: "als", Roads: "snow", Climate: "cold", Crew: 6, Must: []string{"rest-four", "cot-power"}, Like: []string{"sc-mast"}}, "400000", config.Date{Year: 2027, Month: 9, Day: 1}, "Earliest delivery"},
		{"a neonatal unit", quote.Needs{Duty: "neonatal", Crew: 4}, "", config.Date{}, "Better equipped"},
		{"two patients on gravel", quote.Needs{Duty: "multi", Roads: "gravel", Patients: 2}, "360000", config.Date{}, "Earliest delivery"},
		{"a Type I in snow and cold", quote.Needs{Duty: "als", Type: "I", Roads: "snow", Climate: "cold", Crew: 5,
			HeadroomIn: 72, HeightIn: 112, LoadingIn: 34}, "390000", config.Date{}, "Better equipped"},
		{"a diesel Type I", quote.Needs{Type: "I", Fuel: "diesel"}, "", config.Date{}, "Earliest delivery"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			d := quote.Begin(ed, "", "", quotetest.Today)
			d.Needs, d.Unit.NeededBy = c.needs, c.by
			if c.budget != "" {
				d.Terms.Budget, _ = money.ParseAmount(c.budget)
			}
			s := propose.Propose(ed, d)
			require.Len(t, s.Proposals, 3, c.reason)
			must, like := d.Needs.Wishes(ed.Cat)
			for i, p := range s.Proposals {
				t.Log(c.reason, "|", p.Title, "|", p.Quote.Chassis.Label, p.Quote.Body.Label, p.Quote.Total(),
					p.Quote.Plan.EvenOdds, p.Dropped, p.Misses, s.Gives(&p, quantity.US))
				assert.False(t, p.Quote.Stopped(), "%s: %s can be built", c.reason, p.Title)
				for _, id := range must {
					assert.True(t, p.Unit.Has(id), "%s: %s keeps %s", c.reason, p.Title, id)
				}
				for _, id := range like {
					assert.NotEqual(t, p.Unit.Has(id), contains(p.Dropped, id), "%s: %s says what it does without",
						c.reason, id)
				}
				seats, _ := p.Quote.Figure("space.seats")
				patients, _ := p.Quote.Figure("space.patients")
				assert.GreaterOrEqual(t, seats.Value, float64(c.needs.Crew), c.reason)
				assert.GreaterOrEqual(t, patients.Value, float64(c.needs.Patients), c.reason)
				if c.needs.Roads == "snow" {
					assert.Equal(t, "4x4", p.Quote.Chassis.Drive, c.reason)
				}
				for _, o := range s.Proposals {
					if len(o.Misses) > len(p.Misses) {
						continue // meeting the needs goes first
					}
					switch i {
					case 0:
						assert.LessOrEqual(t, p.Quote.Price.Total.Cmp(o.Quote.Price.Total), 0, "%s: the lowest price",
							c.reason)
					case 1:
						a, _ := p.Quote.Figure("weight.payload-left")
						b, _ := o.Quote.Figure("weight.payload-left")
						assert.GreaterOrEqual(t, a.Value, b.Value, "%s: the most margin", c.reason)
					case 2:
						assert.False(t, o.Quote.Plan.NineInTen.Before(p.Quote.Plan.NineInTen), "%s: the earliest",
							c.reason)
					}
				}
			}
			cheapest, third := &s.Proposals[0], &s.Proposals[2]
			assert.Equal(t, c.third, third.Title, c.reason)
			if c.third == "Better equipped" { // and comes on the same day
				assert.Equal(t, "earliest delivery", cheapest.Also, c.reason)
				assert.Contains(t, s.Gives(third, quantity.US)[0], " than the lowest price, which does without ", c.reason)
			}
			if len(must) == 0 {
				return // once is enough: the one with the most to look at
			}
			again := propose.Propose(ed, d)
			for i := range s.Proposals {
				assert.Equal(t, s.Proposals[i].Unit, again.Proposals[i].Unit, "%s: the same needs, the same answer",
					c.reason)
			}
		})
	}
}

// Where nothing has everything the answer is what would have to go, with its figure
// and the cause, and the unit it offers is one that can be built and keeps the rest.
func TestGiveUps(t *testing.T) {
	ed := quotetest.Demo(t)
	county := quote.Needs{Type: "I", Drive: "4x4", Fuel: "diesel", ModuleIn: 153, ModuleMostIn: 153, HeadroomIn: 72,
		Crew: 6, Must: []string{"cot-power", "mount-power"}}
	for _, c := range []struct {
		name, reason string
		needs        quote.Needs
		budget       string
		by           config.Date
		ids          []string // of the first
		says         string
	}{
		{"twenty seats", "no body seats twenty", quote.Needs{Crew: 20}, "", config.Date{}, []string{"crew"},
			"With 6 seats instead of 20."},
		{"a low bay", "an inch too high for every Type I", quote.Needs{Type: "I", HeightIn: 100, Crew: 5}, "",
			config.Date{}, []string{"height"}, "Overall height of 102.4 in instead of 100.0 in."},
		{"a budget nothing keeps", "the budget is named, not the seats", quote.Needs{Crew: 4}, "125000", config.Date{},
			[]string{"budget"}, "(the unit, sales tax included), "},
		{"a date nothing keeps", "the date is named", county, "", config.Date{Year: 2027, Month: 4, Day: 28},
			[]string{"date"}, "16 days after your date."},
		{"a county's brief", "both wants go before a must", county, "330000", config.Date{Year: 2027, Month: 4, Day: 28},
			[]string{"budget", "date"}, "over your budget."},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := quote.Begin(ed, "", "", quotetest.Today)
			d.Needs, d.Unit.NeededBy = c.needs, c.by
			if c.budget != "" {
				d.Terms.Budget, _ = money.ParseAmount(c.budget)
			}
			s := propose.Propose(ed, d)
			giving := propose.GiveUps(&s)
			require.NotEmpty(t, giving.List, c.reason)
			assert.NotEmpty(t, giving.Cause, "the cause is named")
			assert.Equal(t, c.ids, giving.List[0].IDs, c.reason)
			assert.Contains(t, giving.List[0].Said(quantity.US), c.says, c.reason)
			for _, p := range s.Proposals {
				assert.Len(t, c.needs.Held(ed.For(&p.Unit).Cat, &p.Unit), held(ed, &c.needs, &p.Unit),
					"%s keeps every must", p.Title)
			}
			keeps := func(g propose.GiveUp) bool { return !slices.ContainsFunc(g.IDs, isMust) }
			for i, g := range giving.List {
				assert.False(t, i > 0 && keeps(g) && !keeps(giving.List[i-1]), "what keeps every must goes first")
				on := d.Clone()
				on.Unit, on.Needs, on.Terms.Budget, on.Unit.NeededBy = g.Unit, g.Needs, g.Budget, g.NeededBy
				q, err := quote.Compute(ed, on)
				require.NoError(t, err)
				assert.False(t, q.Stopped(), "%d: %s can be built, with the needs as they are then", i,
					g.Said(quantity.US))
				assert.True(t, q.Price.Total.Equal(g.Price), "%d: its price is that of its quote", i)
				assert.LessOrEqual(t, on.OverBudget(q.Price.Total).Sign(), 0, "%d: %s: within the raised budget", i,
					g.Said(quantity.US))
				assert.False(t, !g.NeededBy.IsZero() && g.NeededBy.Before(q.Plan.NineInTen), "%d: by the moved date", i)
			}
		})
	}
}

// isMust reports whether a need of TestGiveUps is a must.
func isMust(id string) bool { return id != quote.AskBudget && id != quote.AskDate }

// Whatever is asked for, something is offered that can be built.
func TestThereIsAlwaysSomethingToGiveUp(t *testing.T) {
	ed := quotetest.Demo(t)
	short := 0
	for seed := range seeds.Each(1) {
		r := rand.New(rand.NewSource(seed))
		some := func(list ...string) string { return list[r.Intn(len(list))] }
		for range 24 {
			d := quote.Begin(ed, "", "", quotetest.Today)
			n := &d.Needs
			n.Crew, n.Patients = r.Intn(13), r.Intn(4)
			n.Type, n.Fuel = some("", "I", "II", "III"), some("", "diesel", "gasoline")
			n.Drive, n.Duty = some("", "4x2", "4x4"), some("", "critical", "neonatal", "hazmat")
			n.SetFirm("duty", r.Intn(2) == 0)
			n.HeightIn = []quantity.Length{0, 90, 108}[r.Intn(3)]
			n.LoadingIn = []quantity.Length{0, 20}[r.Intn(2)]
			for range r.Intn(9) {
				if id := ed.Cat.Options[r.Intn(len(ed.Cat.Options))].ID; !slices.Contains(n.Must, id) {
					n.Must = append(n.Must, id)
				}
			}
			require.Empty(t, d.Check())
			s := propose.Propose(ed, d)
			if !s.Short {
				require.NotEmpty(t, s.Proposals, "%+v", n)
				continue
			}
			short++
			giving := propose.GiveUps(&s)
			require.NotEmpty(t, giving.List, "%+v", n)
			for _, g := range giving.List {
				on := d.Clone()
				on.Unit, on.Needs = g.Unit, g.Needs
				q, err := quote.Compute(ed, on)
				require.NoError(t, err)
				require.False(t, q.Stopped(), "%+v: %s", n, g.Said(quantity.US))
			}
		}
	}
	assert.Greater(t, short, 8)
}

// held is how many musts the needs have on a unit.
func held(ed *quote.Edition, n *quote.Needs, u *config.Unit) int {
	missed := 0
	for _, m := range n.Missed(ed.For(u).Cat, u) {
		if !m.Want {
			missed++
		}
	}
	return len(n.Held(ed.For(u).Cat, u)) + missed
}

func contains(list []string, id string) bool {
	for _, x := range list {
		if x == id {
			return true
		}
	}
	return false
}

func BenchmarkPropose(b *testing.B) {
	ed := quotetest.Demo(b)
	d := quote.Begin(ed, "", "", quotetest.Today)
	d.Needs = quote.Needs{Duty: "als", Climate: "cold", Crew: 5}
	for b.Loop() {
		propose.Propose(ed, d)
	}
}

// What would have to go for a county's brief that cannot be met.
func BenchmarkGiveUps(b *testing.B) {
	ed := quotetest.Demo(b)
	d := quote.Begin(ed, "", "", quotetest.Today)
	d.Needs = quote.Needs{Type: "I", Drive: "4x4", Fuel: "diesel", ModuleIn: 153, ModuleMostIn: 153, HeadroomIn: 72,
		Crew: 6, Must: []string{"cot-power", "mount-power"}}
	d.Unit.NeededBy, d.Terms.Budget = config.Date{Year: 2027, Month: 4, Day: 28}, money.Dollars(330_000)
	s := propose.Propose(ed, d)
	steps := 0
	ed.Rules.Pauses().Begin(10_000, func() { steps += 10_000 })
	defer ed.Rules.Pauses().End()
	for b.Loop() {
		propose.GiveUps(&s)
	}
	b.ReportMetric(float64(steps)/float64(b.N), "steps/op")
}

// No unit of another kind is offered, and of two that give up the same the second says what
// it differs by.
func TestGiveUpsDiffer(t *testing.T) {
	ed := quotetest.Demo(t)
	for _, c := range []struct {
		name  string
		needs quote.Needs
		cents int64
	}{
		{"a rescue unit under a budget", quote.Needs{Duty: "rescue", Roads: "snow", Crew: 5}, 230_000_00},
		{"twenty seats", quote.Needs{Crew: 20}, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := quote.Begin(ed, "", "", quotetest.Today)
			d.Needs, d.Terms.Budget = c.needs, money.Cents(c.cents)
			s := propose.Propose(ed, d)
			list := propose.GiveUps(&s).List
			require.NotEmpty(t, list)
			said := map[string]bool{}
			for _, g := range list {
				words := g.Said(quantity.US)
				assert.False(t, said[words], "%s stands twice", words)
				said[words] = true
				if duty := ed.Cat.DutyByID(c.needs.Duty); duty != nil && duty.Option != "" {
					assert.True(t, g.Unit.Has(duty.Option), "%s is of another kind", words)
				}
			}
		})
	}
}

// Of seats that a second patient takes it is said how many there are without that patient.
func TestSeatsThatAPatientTakes(t *testing.T) {
	ed := quotetest.Demo(t)
	d := quote.Begin(ed, "", "", quotetest.Today)
	d.Needs = quote.Needs{Type: "I", Drive: "4x4", Patients: 2, Crew: 6}
	s := propose.Propose(ed, d)
	giving := propose.GiveUps(&s)
	assert.Equal(t, "The musts cannot stand together; nearest comes a unit that misses the number of patients.",
		giving.Cause)
	said := ""
	for _, g := range giving.List {
		said += g.Said(quantity.US) + "\n"
	}
	assert.Contains(t, said, "With 4 seats instead of 6 (7 with 1 patient).")
}

// Where nothing of the kind can be had, such as a rescue unit out of an ambulance's module,
// it is said in words that a customer understands.
func TestAnotherKindOfUnitIsCalledThat(t *testing.T) {
	ed := quotetest.Demo(t)
	d := quote.Begin(ed, "", "", quotetest.Today)
	d.Needs = quote.Needs{Duty: "rescue"}
	i := slices.IndexFunc(ed.Cat.Bodies, func(b config.Body) bool { return b.Existing })
	d.Unit.Body = ed.Cat.Bodies[i].ID
	s := propose.Propose(ed, d)
	list := propose.GiveUps(&s).List
	require.NotEmpty(t, list)
	assert.Contains(t, list[0].Said(quantity.US), "Another kind of unit instead of: Rescue.")
	assert.Equal(t, "Take another kind of unit instead of: Rescue", list[0].Press(quantity.US))
}

// What the customer asked for stands in the draft that proposals depend on as it was said:
// what words suit is no would-like of the customer's own.
func TestNoNeedIsWrittenByTheProgram(t *testing.T) {
	ed := quotetest.Demo(t)
	d := quote.Begin(ed, "", "", quotetest.Today)
	d.Needs = quote.Needs{Duty: "critical", Climate: "cold", Like: []string{"sc-mast"}}
	must, like := d.Needs.Wishes(ed.Cat)
	require.NotEmpty(t, must)
	require.Greater(t, len(like), 1)
	assert.Equal(t, d.Needs, propose.Basis(d, ed.Cat).Needs)
}
