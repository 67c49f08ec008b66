package quote

import (
	"strconv"
	"strings"

	"boxwright/config/quantity"
)

// Everything is the whole quote as one table: what it is, every figure with its
// limit, every option, price, weight, circuit, step and check.
func (q *Quote) Everything() [][]string {
	d, cat := q.Draft, q.Edition.Cat
	rows := [][]string{{"Section", "Item", "Detail", "Quantity", "Value", "Unit", "Limit", "Margin", "Source"}}
	add := func(cells ...string) {
		for len(cells) < len(rows[0]) {
			cells = append(cells, "")
		}
		rows = append(rows, cells)
	}
	num := func(v float64) string { return strconv.FormatFloat(v, 'f', 2, 64) }
	for _, r := range [][2]string{
		{"Number", d.Number}, {"Revision", strconv.Itoa(d.Rev)}, {"Date", d.Date.String()}, {"Unit", d.Title}, {"Buyer", d.Buyer.Name}, {"Seller", d.Seller.Name},
		{"Chassis", q.Chassis.Label}, {"Module", q.Body.Label}, {"Rules", q.Assume.Label}, {"Catalogue", cat.Title + ", edition " + cat.Edition}, {"Content", cat.Hash()},
		{"Likely date (50 %)", q.Plan.EvenOdds.String()}, {"Safe date (90 %)", q.Plan.NineInTen.String()}, {"Price good through", q.Price.ValidUntil.String()},
	} {
		add("Quote", r[0], r[1])
	}
	for _, r := range append(q.judged(), &q.Plan.Report) {
		for _, f := range r.Figures {
			limit, margin := "", ""
			if f.Sense != "" {
				limit, margin = string(f.Sense)+" "+num(f.Limit), num(f.Margin())
			}
			add("Figures", f.Label, f.Code, "", num(f.Value), f.Unit, limit, margin, f.Basis.Known(f.Source))
		}
	}
	for _, p := range d.Unit.Picks {
		if o := cat.OptionByID(p.Option); o != nil {
			add("Specification", o.Label, strings.TrimSpace(cat.Sentences(o)+" "+q.Told(o)), strconv.Itoa(p.Qty))
		}
	}
	for _, c := range d.Unit.Carried {
		add("Equipment", cat.CarriedLabel(&d.Unit, c.Equipment), c.Compartment, strconv.Itoa(c.Qty))
	}
	for _, v := range q.Verdicts {
		add("Compliance", v.Title, string(v.Outcome), v.Settles, "", "", "", "", v.Basis.Known(v.Source))
	}
	for _, l := range q.Price.Lines {
		add("Price", l.Label, l.How, l.Qty.String(), l.Amount.String(), q.Price.Currency, "", "", l.Source)
	}
	add("Price", "Total", "", strconv.Itoa(q.Price.Units), q.Price.Total.String(), q.Price.Currency)
	add("Price", "Of it", q.PriceWords())
	for _, x := range q.Price.Payments {
		add("Payments", x.Label, x.How, "", x.Amount.String(), q.Price.Currency)
	}
	for _, it := range q.Weight.Items {
		add("Weights", it.Label, "± "+num(float64(it.TolLb))+" lb; behind front axle "+num(float64(it.XIn))+" in",
			strconv.Itoa(it.Qty), num(float64(it.Lb)), quantity.Pound)
	}
	for _, c := range q.Power.Circuits {
		add("Circuits", c.Number+" "+c.Function, c.Wire()+" "+c.Table+", fuse "+num(c.FuseA)+" A, drop "+num(c.DropPct)+
			" %", "", num(float64(c.Amps)), quantity.Amp)
	}
	for _, s := range q.Plan.Steps {
		add("Schedule", s.Label, s.Start.String()+" to "+s.Finish.String(), "", num(s.Expected), quantity.Day)
	}
	for _, c := range q.Checks() {
		read := ""
		if c.Reading != nil {
			read = num(*c.Reading)
		}
		add("Test sheet", c.What, "read "+read, "", num(c.Want), c.Unit, num(c.Low)+" to "+num(c.High), "", c.Basis)
	}
	return rows
}
