// Package bid reads a purchaser's requirement list, matches it with the unit and
// answers it line by line.
package bid

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/csv"
	"boxwright/config/power"
	"boxwright/config/quantity"
	"boxwright/config/rules"
	"boxwright/config/space"
	"boxwright/config/standards"
	"boxwright/config/weight"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
)

// Answer is what the unit has to say to one requirement.
type Answer struct {
	quote.Requirement
	At      int           // position in the list
	Outcome quote.Outcome // Meets, MeetsWith, Excepted or ByHand
	ReadAs  string        // what the line was taken to ask for
	Offered string        // what the unit has, with its figure
	Takes   string        // id of the option, chassis or body that would meet it
	Matches []string      // ids it may be asking for, the likeliest first
	Sure    bool          // confirmed, or a figure
}

// mostMatches is how many readings of a line are offered to choose from, and
// mostTries how many options are tried to lift a figure.
const (
	mostMatches = 8
	mostTries   = 12
)

// ReadRequirements takes a pasted list apart: a table with a head that names its
// text, lines of a number and a text, or plain lines. The error is in words.
func ReadRequirements(text string) ([]quote.Requirement, error) {
	rows, err := csv.Read(text)
	if err != nil {
		return nil, err
	}
	no, what := -1, -1
	if len(rows) > 0 {
		for i, c := range rows[0] {
			switch strings.ToLower(strings.Trim(c, " .#:")) {
			case "no", "number", "item", "ref", "line", "id":
				no = i
			case "requirement", "requirements", "text", "description", "specification":
				what = i
			}
		}
	}
	var out []quote.Requirement
	add := func(no, text string) {
		if text = strings.Join(strings.Fields(text), " "); text != "" {
			out = append(out, quote.Requirement{No: clipped(strings.TrimSpace(no), quote.MaxNo),
				Text: clipped(text, quote.MaxText)})
		}
	}
	if what >= 0 {
		for _, r := range rows[1:] {
			if what < len(r) {
				n := ""
				if no >= 0 && no < len(r) {
					n = r[no]
				}
				add(n, r[what])
			}
		}
	} else {
		for _, line := range strings.Split(strings.TrimPrefix(text, "\ufeff"), "\n") {
			line = strings.TrimSpace(line)
			if cells, err := csv.Read(line); err == nil && len(cells) == 1 && len(cells[0]) == 2 &&
				numbered(cells[0][0]) {
				add(cells[0][0], cells[0][1])
			} else if n, rest, cut := strings.Cut(line, " "); cut &&
				strings.HasSuffix(strings.Trim(n, "0123456789"), ".") || cut && numbered(strings.TrimSuffix(n, ")")) &&
				strings.HasSuffix(n, ")") {
				add(strings.TrimRight(n, ".)"), rest)
			} else {
				add("", strings.Trim(line, `"`))
			}
		}
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("no line holds a text")
	}
	if len(out) > quote.MaxRequirements {
		return nil, fmt.Errorf("the list has %d lines; the most that is answered is %d", len(out),
			quote.MaxRequirements)
	}
	return out, nil
}

// numbered reports whether a cell is a number of a list, such as 12 or 3.4.
func numbered(s string) bool {
	return s != "" && len(s) < 8 && strings.Trim(s, "0123456789.") == "" && s[0] != '.'
}

func clipped(text string, most int) string {
	if len(text) > most {
		return strings.ToValidUTF8(text[:most], "")
	}
	return text
}

// Answers goes through the buyer's list line by line.
func Answers(q *quote.Quote, in quantity.System) []Answer {
	out := make([]Answer, len(q.Draft.Requirements))
	for i, r := range q.Draft.Requirements {
		out[i] = answer(q, r, in)
		out[i].At = i
	}
	return out
}

func answer(q *quote.Quote, r quote.Requirement, in quantity.System) Answer {
	a := Answer{Requirement: r, Outcome: quote.ByHand}
	line := read(r.Text)
	if g, v, ok := line.gaugeOf(); ok && r.Pick == "" {
		a.Sure = true
		hold(q, &a, &line, g, v, in)
	} else {
		v := vocabularyOf(q.Edition)
		list := v.matches(r.Text, &line, func(id string) bool { return holds(q, id) })
		for _, m := range list[:min(len(list), mostMatches)] {
			a.Matches = append(a.Matches, m.id)
		}
		id := r.Pick
		switch {
		case id == quote.NoPick || id == "" && (len(list) == 0 || list[0].score < sure):
			id = ""
		case id == "":
			id = list[0].id
		default:
			a.Sure = true
		}
		if id != "" && known(q, id) {
			offer(q, &a, id, in)
		}
	}
	if r.Verdict != "" {
		a.Outcome, a.Takes, a.Sure = r.Verdict, "", true
	}
	if r.Answer != "" {
		a.Offered = r.Answer
	}
	return a
}

func known(q *quote.Quote, id string) bool {
	cat := q.Edition.Cat
	return cat.OptionByID(id) != nil || cat.ChassisByID(id) != nil || cat.BodyByID(id) != nil
}

// holds reports whether the unit has an option, or stands on a chassis or body.
func holds(q *quote.Quote, id string) bool {
	u := &q.Draft.Unit
	return u.Has(id) || u.Chassis == id || u.Body == id
}

// offer answers a line that asks for something the catalogue lists.
func offer(q *quote.Quote, a *Answer, id string, in quantity.System) {
	cat := q.Edition.Cat
	a.ReadAs = cat.LabelOf(id)
	if holds(q, id) {
		a.Outcome, a.Offered = quote.Meets, cat.LabelOf(id)
		return
	}
	if o := cat.OptionByID(id); o != nil {
		if a.Offered = q.InGroup(o.Group); a.Offered == "–" {
			a.Offered = "not in the unit"
		}
	} else if cat.ChassisByID(id) != nil {
		a.Offered = q.Chassis.Label
	} else {
		a.Offered = q.Body.Label
	}
	if q.State(id) != rules.RuledOut {
		a.Outcome, a.Takes = quote.MeetsWith, id
		return
	}
	a.Outcome = quote.Excepted
	if why := q.Edition.Rules.Why(&q.Draft.Unit, quote.Limits(q.Edition, q.Draft), id); len(why) > 0 {
		a.Offered += ". " + q.Words(why[0], in)
	}
}

// factOf is the figure a gauge reads.
func factOf(q *quote.Quote, g gauge) (config.Figure, bool) {
	fact := func(label string, v float64) (config.Figure, bool) {
		return config.Figure{Code: g.code, Label: label, Value: v, Unit: g.unit}, true
	}
	switch c := q.Chassis; g.code {
	case factGVWR:
		return fact("GVWR", float64(c.GVWRLb))
	case factGAWRFront:
		return fact("Front GAWR", float64(c.GAWRFrontLb))
	case factGAWRRear:
		return fact("Rear GAWR", float64(c.GAWRRearLb))
	case factWheelbase:
		return fact("Wheelbase", float64(c.WheelbaseIn))
	case factModule:
		return fact("Module length", float64(q.Body.LengthIn))
	case factPrice:
		return fact("Price", q.Price.Total.Float())
	}
	return q.Figure(g.code)
}

// hold answers a line that asks for a number.
func hold(q *quote.Quote, a *Answer, line *asked, g gauge, want float64, in quantity.System) {
	if g.code == factDelivery {
		due(q, a, line, want)
		return
	}
	f, ok := factOf(q, g)
	if !ok {
		return
	}
	sense := g.sense
	if line.sense != "" {
		sense = line.sense
	}
	show := func(v float64) string {
		if g.unit == currency {
			return q.Price.Currency + " " + quantity.Group(v, 2)
		}
		return strings.TrimSuffix(in.Show(v, f.Unit), " places")
	}
	f.Limit, f.Sense = want, sense
	a.ReadAs = f.Label + ", " + string(sense) + " " + show(want)
	a.Offered = f.Label + ": " + show(f.Value)
	// What is asked for to the unit and the figure as it is printed may differ by
	// less than a reader sees.
	if f.Met() || show(f.Value) == show(want) {
		a.Outcome = quote.Meets
		return
	}
	a.Outcome = quote.Excepted
	a.Offered += ", " + show(max(f.Margin(), -f.Margin())) + map[config.Sense]string{config.AtLeast: " short",
		config.AtMost: " over"}[sense]
	if id := lift(q, g.code, f); id != "" {
		a.Outcome, a.Takes = quote.MeetsWith, id
	}
}

// due answers a line that asks for delivery by a day, or within days.
func due(q *quote.Quote, a *Answer, line *asked, within float64) {
	by := line.date
	if by.IsZero() {
		by = q.Draft.Unit.OrderOn.AddDays(int(within))
		if slices.Contains(line.words, "work") || slices.Contains(line.words, "busines") {
			a.Outcome = quote.Excepted
			if q.Plan.Simulated.NineInTenDays <= within {
				a.Outcome = quote.Meets
			}
			a.ReadAs = "Delivery within " + quantity.Group(within, 0) + " working days"
			a.Offered = quantity.Group(q.Plan.Simulated.NineInTenDays, 0) + " working days at nine in ten"
			return
		}
	}
	a.ReadAs = "Delivery by " + by.Long()
	a.Offered = "Delivery " + q.Plan.EvenOdds.Long() + " at even odds, " + q.Plan.NineInTen.Long() + " at nine in ten"
	a.Outcome = quote.Excepted
	if !by.Before(q.Plan.NineInTen) {
		a.Outcome = quote.Meets
	}
}

// lifts says which options can raise a figure.
var lifts = map[string]func(*config.Option) bool{
	"space.oxygen":          func(o *config.Option) bool { return o.Oxygen != nil },
	"space.seats":           func(o *config.Option) bool { return len(o.Seats) > o.Cots() },
	"space.patients":        func(o *config.Option) bool { return o.Cots() > 0 },
	"space.storage":         func(o *config.Option) bool { return o.StorageFt3 > 0 },
	"space.compartments":    func(o *config.Option) bool { return len(o.Compartments) > 0 },
	"power.battery-minutes": func(o *config.Option) bool { return o.Supply != nil && o.Supply.BatteryAh > 0 },
	"power.remaining":       func(o *config.Option) bool { return o.Supply != nil && o.Supply.HotIdleA > 0 },
}

// measured finds a figure of the draft's unit without asking the rules.
func measured(q *quote.Quote, code string) (config.Figure, bool) {
	u, cat := &q.Draft.Unit, q.Edition.Cat
	as := standards.Assume(u.RuleSet, cat, u)
	for _, r := range []*config.Report{&weight.WeighWith(cat, u, &as, nil).Report, &power.Budget(cat, u, &as).Report,
		&space.Measure(cat, u, &as).Report} {
		if f, ok := r.Figure(code); ok {
			return f, true
		}
	}
	return config.Figure{}, false
}

// lift finds an option that brings a figure to its limit; empty when none of
// those tried does.
func lift(q *quote.Quote, code string, want config.Figure) string {
	can := lifts[code]
	if can == nil {
		return ""
	}
	tries := 0
	for i := range q.Edition.Cat.Options {
		o := &q.Edition.Cat.Options[i]
		if !can(o) || holds(q, o.ID) || q.State(o.ID) == rules.RuledOut || tries == mostTries {
			continue
		}
		tries++
		full, _, ok := propose.Take(q.Edition, q.Draft, o.ID)
		if !ok {
			continue
		}
		with := *q
		d := *q.Draft
		d.Unit = full
		with.Draft = &d
		if f, ok := measured(&with, code); ok {
			f.Limit, f.Sense = want.Limit, want.Sense
			if f.Met() {
				return o.ID
			}
		}
	}
	return ""
}

// TakeAnswers puts into the unit what the lines would be met with: one of them,
// or all. It says how many could be taken and how many could not.
func TakeAnswers(q *quote.Quote, lines []Answer) (u config.Unit, taken, refused int) {
	on := q.Draft.Clone()
	ed := q.Edition
	for _, a := range lines {
		id := a.Takes
		if id == "" {
			continue
		}
		var full config.Unit
		ok := false
		if ed.Cat.OptionByID(id) != nil {
			full, _, ok = propose.Take(ed, on, id)
		} else {
			with := on.Clone()
			if ed.Cat.ChassisByID(id) != nil {
				with.Unit.Chassis = id
			} else {
				with.Unit.Body = id
			}
			full, _, ok = ed.Rules.Fill(&with.Unit, quote.Limits(ed, with))
		}
		if !ok {
			refused++
			continue
		}
		on.Unit = full
		taken++
	}
	return on.Unit, taken, refused
}

// AnswerRows is the list with its answers as a table to hand over.
func AnswerRows(q *quote.Quote, list []Answer) [][]string {
	rows := [][]string{{"No.", "Requirement", "Answer", "Read as", "Confirmed", "Offered"}}
	for i, a := range list {
		no := a.No
		if no == "" {
			no = strconv.Itoa(i + 1)
		}
		outcome := string(a.Outcome)
		if a.Outcome == quote.MeetsWith {
			outcome += " " + q.Edition.Cat.LabelOf(a.Takes)
		}
		rows = append(rows, []string{no, a.Text, outcome, a.ReadAs, map[bool]string{true: "yes", false: "no"}[a.Sure],
			a.Offered})
	}
	return rows
}
