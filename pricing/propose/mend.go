package propose

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/power"
	"boxwright/config/quantity"
	"boxwright/config/rules"
	"boxwright/config/standards"
	"boxwright/config/weight"
	"boxwright/pricing/quote"
)

// MendWords is the label of a way out: what pressing it gives up.
func MendWords(q *quote.Quote, m *rules.Mend) string {
	var parts []string
	for _, id := range m.Drop {
		if other := m.Replace[id]; other != "" {
			parts = append(parts, q.Edition.Cat.LabelOf(other)+" instead of "+q.Edition.Cat.LabelOf(id))
		} else {
			parts = append(parts, "Give up "+q.Edition.Cat.LabelOf(id))
		}
	}
	if len(parts) == 0 {
		return "Take it"
	}
	return strings.Join(parts, "; ")
}

// MendEffect is the Effect of a way out, less what pressing it gives up, since
// its label says that.
func MendEffect(q *quote.Quote, w *Ways, m *rules.Mend, in quantity.System) Outcome {
	besides := slices.DeleteFunc(slices.Clone(m.Changes), func(c rules.Change) bool {
		return slices.Contains(m.Drop, c.Option)
	})
	return Effect(q, &m.Unit, besides, w.Decides(), in)
}

// Outcome is what another unit in place of the present one does, each part in words.
type Outcome struct {
	Risk     string // what it has little or nothing to spare of; empty where there is enough
	Price    string // what is added to the total
	Spare    []Spare
	Date     config.Date // likely delivery
	Later    string      // than the present one
	Weight   string      // what is added to the full load
	Exchange string      // what else goes and comes; empty where nothing does
}

// Spare is what a figure has to spare before and after.
type Spare struct{ Label, Words string }

// loads are the figures of which the one with the least to spare is told where no other
// is asked for.
var loads = []string{"weight.front-axle", "weight.rear-axle", "weight.gross"}

// scarcest is the code of the load with the least to spare.
func scarcest(figures []config.Figure) string {
	code, least := "", 0.0
	for _, f := range figures {
		if slices.Contains(loads, f.Code) && (code == "" || f.Margin() < least) {
			code, least = f.Code, f.Margin()
		}
	}
	return code
}

// Effect is the outcome of another unit in place of this one. What it has to spare is told
// of the figures named by their codes, or of the load with the least where none is.
func Effect(q *quote.Quote, u *config.Unit, changes []rules.Change, codes []string, in quantity.System) (o Outcome) {
	ed, d := q.Edition.For(u), *q.Draft
	d.Unit, d.Tickets = *u, quote.Weighed(d.Tickets, &q.Draft.Unit, u)
	o.Risk, _ = Risk(q, u, in)
	if s, err := quote.PriceAll(ed, &d); err == nil {
		o.Price = s.Total.Sub(q.Price.Total).Signed()
	}
	figures := slices.DeleteFunc(figuresOf(ed, &d), func(f config.Figure) bool { return f.Sense == "" })
	asked := func(f config.Figure) bool { return slices.Contains(codes, f.Code) }
	if !slices.ContainsFunc(figures, asked) {
		codes = []string{scarcest(figures)}
	}
	for _, is := range figures {
		was, known := q.Figure(is.Code)
		if known && is.Code == "weight.gross" {
			if o.Weight = in.Show(is.Value-was.Value, is.Unit); is.Value >= was.Value {
				o.Weight = "+" + o.Weight
			}
		}
		if known && asked(is) {
			name, _, _ := strings.Cut(is.Label, ",")
			o.Spare = append(o.Spare, Spare{name + " to spare", in.Show(was.Margin(), was.Unit) + " → " +
				in.Show(is.Margin(), is.Unit)})
		}
	}
	if plan, err := quote.NextPlan(ed, &d); err == nil {
		o.Date = plan.EvenOdds
		o.Later = later(q.Plan.EvenOdds.DaysUntil(o.Date))
	}
	if len(changes) > manyChanges {
		o.Exchange = fmt.Sprintf("This changes much of the unit: %d things. ", Things(q.Edition.Cat, changes))
	}
	o.Exchange += ChangeWords(q, changes)
	return o
}

// What a way out must say first: a margin that shows as none, or a chance of missing a limit
// of one in three and more. One in three lies far enough within what is uncertain that some
// tenths of a pound decide nothing.
const (
	noMargin = 0.5
	onlyJust = 1.0 / 3
)

// peril is the chance, in percent, of missing a limit of which a customer has to hear before
// taking a thing: where the margin is less than what is uncertain in the figure itself. It is
// zero where there is enough.
func peril(f *config.Figure) int {
	if f.Sense == "" || f.Noted || f.Basis == config.FromMemory || f.Basis == config.CommonPractice {
		return 0
	}
	within := f.Sense == config.AtMost && f.High <= f.Limit || f.Sense == config.AtLeast && f.Low >= f.Limit
	chance := f.Chance
	switch {
	case f.Margin() < noMargin: // as likely as not, where no chance is known
		chance = max(chance, 0.5)
	case within && chance <= sure:
		return 0
	}
	return max(int(math.Round(100*chance)), 1)
}

// Risk names what a unit would have next to nothing to spare of, or miss more often than
// a customer would take, and how near it comes; and the greatest chance of it, in percent.
// It is empty where the unit has enough of everything. What the present unit keeps no
// better is not told; what it misses is, where this unit keeps it with nothing to spare.
func Risk(q *quote.Quote, u *config.Unit, in quantity.System) (text string, worst int) {
	ed := q.Edition.For(u)
	on := &quote.Draft{Unit: *u, Tickets: quote.Weighed(q.Draft.Tickets, &q.Draft.Unit, u)}
	var least, little []string
	for _, f := range figuresOf(ed, on) {
		was, known := q.Figure(f.Code)
		percent := peril(&f)
		if percent == 0 || known && was.Margin() <= f.Margin() && (was.Met() || !f.Met()) {
			continue
		}
		if float64(percent) >= 100*onlyJust {
			least = append(least, near(&f, in))
		} else {
			little = append(little, near(&f, in))
		}
		worst = max(worst, percent)
	}
	if least != nil {
		text = "Only just: " + strings.Join(least, "; ") + ". "
	}
	if little != nil {
		text += "Little to spare: " + strings.Join(little, "; ") + ". "
	}
	return text, worst
}

// near words how near a figure comes to its limit.
func near(f *config.Figure, in quantity.System) string {
	if !f.Met() {
		return f.Label + ": missed by " + in.Show(-f.Margin(), f.Unit)
	}
	text := f.Label + ": " + in.Show(f.Margin(), f.Unit) + " to spare"
	if f.Chance < 0.005 { // which would show as none
		return text
	}
	side := "over"
	if f.Sense == config.AtLeast {
		side = "short"
	}
	return fmt.Sprintf("%s, and a chance of %s of being %s", text, quantity.Chance(f.Chance), side)
}

// figuresOf are the figures of weight and power of a draft's unit.
func figuresOf(ed *quote.Edition, d *quote.Draft) []config.Figure {
	as := standards.Assume(d.Unit.RuleSet, ed.Cat, &d.Unit)
	return slices.Concat(weight.Weigh(ed.Cat, &d.Unit, &as, d.Tickets...).Figures,
		power.Budget(ed.Cat, &d.Unit, &as).Figures)
}

// later words a move of the delivery by calendar days.
func later(days int) string {
	word := "later"
	switch {
	case days == 0:
		return "as now"
	case days < 0:
		word, days = "earlier", -days
	}
	if days == 1 {
		return "1 day " + word
	}
	return fmt.Sprintf("%d days %s", days, word)
}

// Things counts what changes: what takes the place of another of its group is one thing with it.
func Things(cat *config.Catalogue, changes []rules.Change) int {
	n, out := len(changes), map[string]int{}
	only := func(c rules.Change) string { // the group, where only one of it can be had
		o := cat.OptionByID(c.Option)
		if o == nil || cat.GroupByID(o.Group).Choose == config.ChooseAny {
			return ""
		}
		return o.Group
	}
	for _, c := range changes {
		if g := only(c); g != "" && !c.Added {
			out[g]++
		}
	}
	for _, c := range changes {
		if g := only(c); c.Added && out[g] > 0 {
			out[g]--
			n--
		}
	}
	return n
}

// ChangeWords names what completing the unit added and took out.
func ChangeWords(q *quote.Quote, changes []rules.Change) string {
	const named = 5
	text := ""
	for _, side := range []struct {
		added bool
		words string
	}{{false, "Removed: "}, {true, "Added: "}} {
		var names []string
		for _, c := range changes {
			if c.Added == side.added {
				names = append(names, q.Edition.Cat.LabelOf(c.Option))
			}
		}
		if len(names) == 0 {
			continue
		}
		more := ""
		if len(names) > named {
			more = fmt.Sprintf(" and %d more", len(names)-named)
			names = names[:named]
		}
		text += side.words + strings.Join(names, "; ") + more + ". "
	}
	return strings.TrimSpace(text)
}
