package costs

import (
	"slices"
	"sort"

	"github.com/shopspring/decimal"

	"boxwright/pricing"
	"boxwright/pricing/money"
)

// Margins are a price and its cost. Price, Cost and Margin leave out taxes,
// trade-in and bond: they are not the seller's.
type Margins struct {
	Lines     []LineMargin  `json:"lines"`
	Overheads []LineMargin  `json:"overheads"`
	Price     money.Amount  `json:"price"`
	Cost      money.Amount  `json:"cost"`
	Margin    money.Amount  `json:"margin"`
	Percent   money.Percent `json:"percent"`  // margin on the price
	Discount  money.Percent `json:"discount"` // agreed, on the units before it
	Roles     []Verdict     `json:"roles"`
}

// LineMargin is a line of the price with its cost.
type LineMargin struct {
	Label   string        `json:"label"`
	Code    string        `json:"code"`
	Item    int           `json:"item,omitempty"`
	Price   money.Amount  `json:"price"`
	Cost    money.Amount  `json:"cost"`
	Margin  money.Amount  `json:"margin"`
	Percent money.Percent `json:"percent"` // of the line's price; 0 where that is zero
	How     string        `json:"how"`
}

// Verdict says whether a role may agree to this price, and if not why.
type Verdict struct {
	Role Role   `json:"role"`
	May  bool   `json:"may"`
	Why  string `json:"why,omitempty"`
}

// Judge costs a price, line by line.
func Judge(c *Sheet, s *pricing.Sheet) *Margins {
	m := &Margins{}
	for _, l := range s.Lines {
		cost, how := c.cost(l)
		x := LineMargin{Label: l.Label, Code: l.Code, Item: l.Item, Price: l.Amount, Cost: cost, How: how}
		x.close()
		m.Lines = append(m.Lines, x)
		if !slices.Contains(outside, l.Code) {
			m.Price, m.Cost = m.Price.Add(x.Price), m.Cost.Add(x.Cost)
		}
	}
	for _, o := range c.Overheads {
		x := LineMargin{Label: o.Label, Code: "overhead", Cost: o.Amount.Times(s.Units), How: "for each unit"}
		x.close()
		m.Overheads = append(m.Overheads, x)
		m.Cost = m.Cost.Add(x.Cost)
	}
	m.Margin = m.Price.Sub(m.Cost)
	m.Percent = m.Margin.PercentOf(m.Price)
	m.Discount = s.AgreedDiscount()
	for _, r := range c.Roles {
		m.Roles = append(m.Roles, r.judge(m))
	}
	return m
}

func (x *LineMargin) close() {
	x.Margin = x.Price.Sub(x.Cost)
	x.Percent = x.Margin.PercentOf(x.Price)
}

// cost of a line, and how it is known.
func (c *Sheet) cost(l pricing.Line) (money.Amount, string) {
	if slices.Contains(listed, l.Code) {
		if each, ok := c.Costs[l.Source]; ok {
			return each.For(l.Qty, money.HalfUp), each.Show() + " each"
		}
		p := c.Shares[l.Code]
		return l.Amount.Share(p, money.HalfUp), p.Show() + " of the list price"
	}
	p, ok := c.Charges[l.Code]
	if !ok {
		p = Passed[l.Code]
	}
	return l.Amount.Share(p, money.HalfUp), p.Show() + " of the line"
}

func (r Role) judge(m *Margins) Verdict {
	switch {
	case m.Discount.Cmp(r.MaxDiscount) > 0:
		return Verdict{r, false, "the discount of " + m.Discount.Show() + " is above " + r.MaxDiscount.Show()}
	case m.Percent.Cmp(r.MinMargin) < 0:
		return Verdict{r, false, "the margin of " + m.Percent.Show() + " is below " + r.MinMargin.Show()}
	}
	return Verdict{Role: r, May: true}
}

// Step is a discount tried, and what it leaves.
type Step struct {
	Discount money.Percent `json:"discount"`
	Total    money.Amount  `json:"total"` // what the buyer pays
	Margin   money.Amount  `json:"margin"`
	Percent  money.Percent `json:"percent"` // margin on the price
	Lost     money.Percent `json:"lost"`    // of the margin without an agreed discount
	Roles    []string      `json:"roles"`   // labels of those who may agree
}

// Price prices the order anew with an agreed discount in percent.
type Price func(discount money.Percent) (*pricing.Sheet, error)

// Effect shows what discounts do to the margin, each priced anew.
func Effect(c *Sheet, price Price, discounts []money.Percent) ([]Step, error) {
	s, err := price(money.Percent{})
	if err != nil {
		return nil, err
	}
	full := Judge(c, s).Margin
	steps := make([]Step, len(discounts))
	for i, d := range discounts {
		if s, err = price(d); err != nil {
			return nil, err
		}
		m := Judge(c, s)
		steps[i] = Step{Discount: d, Total: s.Total, Margin: m.Margin, Percent: m.Percent,
			Lost: full.Sub(m.Margin).PercentOf(full)}
		for _, v := range m.Roles {
			if v.May {
				steps[i].Roles = append(steps[i].Roles, v.Role.Label)
			}
		}
	}
	return steps, nil
}

// Most is the largest agreed discount, in hundredths of a percent, that a role
// may grant on an order; false where even none is beyond it. A larger discount
// never gives a larger margin, so that halving the range finds it.
func Most(c *Sheet, role Role, price Price) (money.Percent, bool, error) {
	var failed error
	may := func(hundredths int) bool {
		s, err := price(money.PercentOf(decimal.New(int64(hundredths), -2)))
		if err != nil {
			failed = err
			return false
		}
		return role.judge(Judge(c, s)).May
	}
	first := sort.Search(10001, func(h int) bool { return !may(h) })
	if failed != nil {
		return money.Percent{}, false, failed
	}
	if first == 0 {
		return money.Percent{}, false, nil
	}
	return money.PercentOf(decimal.New(int64(first-1), -2)), true, nil
}
