package quote

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/standards"
	"boxwright/pricing"
)

// Row is one line of a comparison: a heading, or a cell for each quote.
type Row struct {
	Label   string
	Heading bool
	Cells   []string
	Differs bool
}

// compared are the figures two buyers argue about, by code.
var compared = []struct{ code, label string }{
	{"weight.payload", "Payload (GVWR less curb weight)"},
	{"weight.payload-left", rowLeft},
	{"weight.curb", "Curb weight"},
	{"weight.front-axle", "Front axle, loaded"},
	{"weight.rear-axle", "Rear axle, loaded"},
	{"weight.ssf", "Rollover stability (T/2h)"},
	{"power.remaining", "Amps left, hot"},
	{"power.battery-minutes", "On battery"},
	{"space.seats", "Seats"},
	{"space.storage", "Storage inside"},
	{"space.headroom", "Headroom"},
	{"space.oxygen", "Oxygen"},
}

// Rival is a bid from elsewhere, typed in by hand.
type Rival struct {
	Name      string         `json:"name"`
	Price     pricing.Amount `json:"price,omitzero"`
	Date      config.Date    `json:"date,omitzero"` // of delivery, as promised
	PayloadLb quantity.Mass  `json:"payload_lb,omitempty"`
	Warranty  string         `json:"warranty,omitempty"`
	Notes     string         `json:"notes,omitempty"`
}

// Sent are the figures that a quote was sent with, where the quote cannot be computed to the
// same.
type Sent struct {
	Total            string // with its currency
	Even, Safe, Good config.Date
	LeftLb           float64 // payload left, loaded
	Chassis, Body    string
}

// Compare sets quotes side by side, in the order given, and rival bids after
// them; a nil quote has the figures it was sent with, where there are any, and else
// empty cells, and so have rivals where nothing is known
// of them. Figures come first, then every group in which the units differ or
// agree.
func Compare(quotes []*Quote, sent map[int]*Sent, rivals []Rival, in quantity.System) []Row {
	var rows []Row
	// addBeside adds a row; what stands beside a cell's text is no difference.
	addBeside := func(label string, cell, beside func(*Quote) string, bid func(*Rival) string) {
		r := Row{Label: label}
		first := ""
		for i, q := range quotes {
			text, more := "–", ""
			if q != nil {
				text, more = cell(q), beside(q)
			} else if s := sent[i]; s != nil {
				text = cmp.Or(s.cell(label, in), "–")
			}
			r.Cells = append(r.Cells, text+more)
			if i == 0 {
				first = text
			} else if text != first {
				r.Differs = true
			}
		}
		for i := range rivals {
			text := ""
			if bid != nil {
				text = bid(&rivals[i])
			}
			r.Differs = r.Differs || text != "" && text != first
			r.Cells = append(r.Cells, cmp.Or(text, "–"))
		}
		rows = append(rows, r)
	}
	add := func(label string, cell func(*Quote) string, bid func(*Rival) string) {
		addBeside(label, cell, func(*Quote) string { return "" }, bid)
	}
	heading := func(label string) { rows = append(rows, Row{Label: label, Heading: true, Differs: true}) }

	heading("What decides")
	add("Seller", func(q *Quote) string { return cmp.Or(q.Draft.Seller.Name, "–") }, nil)
	add("Quote number", func(q *Quote) string { return cmp.Or(q.Draft.Number, "–") }, nil)
	currency := ""
	if i := slices.IndexFunc(quotes, func(q *Quote) bool { return q != nil }); i >= 0 {
		currency = quotes[i].Price.Currency + " "
	}
	add(rowPrice, (*Quote).Total, func(r *Rival) string {
		if r.Price.IsZero() {
			return ""
		}
		return currency + r.Price.Show()
	})
	if slices.ContainsFunc(quotes, func(q *Quote) bool { return q != nil && q.Price.Units > 1 }) {
		add("Units", func(q *Quote) string {
			return cmp.Or(q.Price.EachWords(), "1 unit at "+q.Price.Total.Show())
		}, nil)
	}
	known := slices.DeleteFunc(slices.Clone(quotes), func(q *Quote) bool { return q == nil })
	if slices.ContainsFunc(known, func(q *Quote) bool { return !SameTax(known[0], q) }) {
		add("Price without sales tax", func(q *Quote) string { return q.Price.Currency + " " + q.Untaxed().Show() }, nil)
	}
	add("Sales tax", func(q *Quote) string { return q.Price.SalesTax.UnderHead() }, nil)
	add(rowLikely, func(q *Quote) string { return q.Plan.EvenOdds.Long() }, nil)
	add(rowSafe, func(q *Quote) string { return q.Plan.NineInTen.Long() }, nil)
	add(rowGood, func(q *Quote) string { return q.Price.ValidUntil.Long() }, nil)
	if rivals != nil {
		add("Delivery as promised", func(*Quote) string { return "–" }, func(r *Rival) string { return r.Date.Long() })
		add("Notes", func(*Quote) string { return "–" }, func(r *Rival) string { return r.Notes })
	}
	add("Rules", (*Quote).rules, nil)
	add("Warranty", (*Quote).warranty, func(r *Rival) string { return r.Warranty })
	heading("Figures")
	for _, c := range compared {
		addBeside(c.label, func(q *Quote) string {
			if f, ok := q.Figure(c.code); ok {
				return in.Show(f.Value, f.Unit)
			}
			return "–"
		}, func(q *Quote) string { // which some rules ask and others do not
			if f, _ := q.Figure(c.code); f.Sense != "" {
				return " (margin " + in.Show(f.Margin(), f.Unit) + ")"
			}
			return ""
		}, func(r *Rival) string {
			if c.code != "weight.payload" || r.PayloadLb == 0 {
				return ""
			}
			return in.Show(float64(r.PayloadLb), quantity.Pound)
		})
	}
	heading("Vehicle")
	add(rowChassis, func(q *Quote) string { return q.Chassis.Label }, nil)
	add("GVWR", func(q *Quote) string { return in.Show(float64(q.Chassis.GVWRLb), quantity.Pound) }, nil)
	add(rowModule, func(q *Quote) string { return q.Body.Label }, nil)
	i := slices.IndexFunc(quotes, func(q *Quote) bool { return q != nil })
	if i < 0 {
		return rows
	}
	cat := quotes[i].Edition.Cat
	for _, ch := range cat.Chapters {
		heading(ch.Label)
		for g := range cat.Groups {
			group := &cat.Groups[g]
			if group.Chapter != ch.ID {
				continue
			}
			add(group.Label, func(q *Quote) string { return q.InGroup(group.ID) }, nil)
		}
	}
	return rows
}

// rules names the rules in force and how many of their clauses are not met, and not judged.
func (q *Quote) rules() string {
	missed, open := 0, 0
	for i := range q.Verdicts {
		switch q.Verdicts[i].Outcome {
		case standards.NotMet:
			missed++
		case standards.NotJudged:
			open++
		}
	}
	text := q.Assume.Label + ", no clause missed"
	if missed > 0 {
		text = fmt.Sprintf("%s, %d %s not met", q.Assume.Label, missed, plural(missed, "clause", "clauses"))
	}
	if open > 0 {
		text += fmt.Sprintf(", %d not judged", open)
	}
	return text
}

// warranty names what is promised of how long things last.
func (q *Quote) warranty() string {
	text := ""
	for _, o := range q.Service() {
		if g := q.Edition.Cat.GroupByID(o.Group); strings.Contains(strings.ToLower(g.Label), "warranty") {
			if text != "" {
				text += "; "
			}
			text += g.Label + ": " + o.Label
		}
	}
	return cmp.Or(text, "–")
}

// InGroup names what a unit holds of a group.
func (q *Quote) InGroup(group string) string {
	text := ""
	for _, m := range q.Edition.Cat.Members(group) {
		o := &q.Edition.Cat.Options[m]
		n := q.Draft.Unit.Qty(o.ID)
		if n == 0 {
			continue
		}
		if text != "" {
			text += "; "
		}
		text += o.Label
		if n > 1 {
			text += " × " + quantity.Group(float64(n), 0)
		}
		if said := q.Draft.Unit.Detail(o.ID); said != "" {
			text += " (" + said + ")"
		}
	}
	if text == "" {
		return "–"
	}
	return text
}

// Rows that are known of a quote that was sent.
const (
	rowPrice   = "Price"
	rowLikely  = "Likely date (50 %)"
	rowSafe    = "Safe date (90 %)"
	rowGood    = "Price good through"
	rowLeft    = "Remaining payload"
	rowChassis = "Chassis"
	rowModule  = "Module"
)

// cell is what is known for a row; empty when nothing is.
func (s *Sent) cell(row string, in quantity.System) string {
	day := func(d config.Date) string {
		if d.IsZero() {
			return ""
		}
		return d.Long()
	}
	switch row {
	case rowPrice:
		return s.Total
	case rowLikely:
		return day(s.Even)
	case rowSafe:
		return day(s.Safe)
	case rowGood:
		return day(s.Good)
	case rowLeft:
		return in.Show(s.LeftLb, quantity.Pound)
	case rowChassis:
		return s.Chassis
	case rowModule:
		return s.Body
	}
	return ""
}

// Delta is what separates one quote from another.
type Delta struct {
	Lines []DeltaLine // in the order of the two price sheets
	Total pricing.Amount
	Days  int // calendar days by which the other arrives later at 50 %
}

// DeltaLine is one line of the price that differs.
type DeltaLine struct {
	Label    string
	From, To pricing.Amount
	By       pricing.Amount
}

// Difference explains the price of one quote by that of another: the lines'
// differences add up to the totals' difference, to the cent.
func Difference(from, to *Quote) Delta {
	type sums struct{ from, to pricing.Amount }
	byKey := map[string]*sums{}
	var order []string
	labels := map[string]string{}
	take := func(lines []pricing.Line, add func(*sums, pricing.Amount)) {
		for _, l := range lines {
			key := l.Code + " " + l.ID
			if l.ID == "" {
				key = l.Code + " " + l.Label
			}
			if byKey[key] == nil {
				byKey[key] = &sums{}
				order = append(order, key)
				labels[key] = Titled(to.Edition.Cat, l.ID, l.Label)
			}
			add(byKey[key], l.Amount)
		}
	}
	take(from.Price.Lines, func(s *sums, a pricing.Amount) { s.from = s.from.Add(a) })
	take(to.Price.Lines, func(s *sums, a pricing.Amount) { s.to = s.to.Add(a) })
	isTax := func(key string) int {
		if strings.HasPrefix(key, pricing.LineTax+" ") {
			return 1
		}
		return 0
	}
	slices.SortStableFunc(order, func(a, b string) int { return isTax(a) - isTax(b) }) // behind what it is a share of
	d := Delta{Total: to.Price.Total.Sub(from.Price.Total), Days: from.Plan.EvenOdds.DaysUntil(to.Plan.EvenOdds)}
	for _, key := range order {
		s := byKey[key]
		if by := s.to.Sub(s.from); !by.IsZero() {
			d.Lines = append(d.Lines, DeltaLine{Label: labels[key], From: s.from, To: s.to, By: by})
		}
	}
	return d
}
