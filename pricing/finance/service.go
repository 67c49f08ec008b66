package finance

import (
	"fmt"

	"github.com/shopspring/decimal"

	"boxwright/pricing/money"
)

// StructureYears is the usual term of the warranty on a module's structure,
// renewed when it is remounted. Common practice, no source: an editable
// default.
const StructureYears = 20

// Choice is one way of having a unit in service: keep the old one, buy a new
// one, or remount the module. All money is in today's money.
type Choice struct {
	ID       string        `json:"id"` // such as "keep", "new", "remount"
	Label    string        `json:"label"`
	Price    money.Amount  `json:"price,omitzero"`     // paid now; 0 for keeping
	TradeIn  money.Amount  `json:"trade_in,omitzero"`  // what the old unit brings now
	Years    int           `json:"years"`              // of service it gives, 1 to 40
	Yearly   money.Amount  `json:"yearly,omitzero"`    // upkeep in the first year, a maintenance plan included
	Aging    money.Percent `json:"ageing,omitzero"`    // by which upkeep rises each year beyond inflation
	Later    []Outlay      `json:"later,omitempty"`    // such as a transmission in year 4
	Residual money.Amount  `json:"residual,omitzero"`  // what it brings at the end
	Warranty int           `json:"warranty,omitempty"` // years left on the structure from now
}

// Outlay is a single cost at the end of a year of service.
type Outlay struct {
	Year   int          `json:"year"` // 1 is the first
	Amount money.Amount `json:"amount"`
	Label  string       `json:"label"`
}

// Rates are the yearly rates a comparison rests on; both are the purchaser's to
// set.
type Rates struct {
	Inflation money.Percent `json:"inflation,omitzero"`
	Discount  money.Percent `json:"discount,omitzero"` // what money costs, inflation included
}

// Service is a choice worked out.
type Service struct {
	Choice    Choice       `json:"choice"`
	Years     []ServiceRow `json:"years"` // row 0 is now
	Worth     money.Amount `json:"worth"` // of all of it, now
	PerYear   money.Amount `json:"per_year"`
	Uncovered int          `json:"uncovered"` // years of service beyond the structural warranty
	How       string       `json:"how"`
}

// ServiceRow is a year.
type ServiceRow struct {
	Year  int          `json:"year"`
	Paid  money.Amount `json:"paid"`  // in the money of that year, rounded to the cent; negative is income
	Worth money.Amount `json:"worth"` // the same, now
}

// Check names what of the choice is out of range, or is nil.
func (c *Choice) Check() error {
	if c.Years < 1 || c.Years > 40 {
		return fmt.Errorf("finance: %s: %d years of service; choose 1 to 40", c.Label, c.Years)
	}
	for _, x := range []struct {
		name string
		a    money.Amount
	}{{"price", c.Price}, {"trade-in", c.TradeIn}, {"yearly upkeep", c.Yearly}, {"residual", c.Residual}} {
		if x.a.Sign() < 0 {
			return fmt.Errorf("finance: %s: %s of %s is below zero", c.Label, x.name, x.a.Show())
		}
	}
	if c.Aging.Decimal().Abs().GreaterThan(decimal.NewFromInt(50)) {
		return fmt.Errorf("finance: %s: upkeep rising by %s a year is outside -50 to 50 %%", c.Label, c.Aging.Show())
	}
	if c.Warranty < 0 || c.Warranty > 100 {
		return fmt.Errorf("finance: %s: %d years of warranty; choose 0 to 100", c.Label, c.Warranty)
	}
	for _, o := range c.Later {
		if o.Year < 1 || o.Year > c.Years {
			return fmt.Errorf("finance: %s: %q in year %d is outside the %d years of service", c.Label, o.Label, o.Year,
				c.Years)
		}
	}
	return nil
}

// Check names what of the rates is out of range, or is nil.
func (r *Rates) Check() error {
	for _, p := range []money.Percent{r.Inflation, r.Discount} {
		if p.Decimal().LessThan(decimal.NewFromInt(-10)) || p.Decimal().GreaterThan(decimal.NewFromInt(30)) {
			return fmt.Errorf("finance: a yearly rate of %s is outside -10 to 30 %%", p.Show())
		}
	}
	return nil
}

// real is the discount rate after inflation, as a fraction.
func (r *Rates) real() decimal.Decimal {
	return one.Add(r.Discount.Fraction()).DivRound(one.Add(r.Inflation.Fraction()), places).Sub(one)
}

// flows lists a choice's costs in today's money, unrounded: now, then at the
// end of each year.
func (c *Choice) flows() []decimal.Decimal {
	list := make([]decimal.Decimal, c.Years+1)
	list[0] = c.Price.Sub(c.TradeIn).Decimal()
	upkeep := c.Yearly.Decimal()
	for y := 1; y <= c.Years; y++ {
		list[y] = upkeep
		upkeep = upkeep.Mul(one.Add(c.Aging.Fraction())).Round(places)
	}
	for _, o := range c.Later {
		list[o.Year] = list[o.Year].Add(o.Amount.Decimal())
	}
	list[c.Years] = list[c.Years].Sub(c.Residual.Decimal())
	return list
}

// CostPerYear works a choice out: what a year of service costs, in today's
// money, so that choices of unlike length can be compared.
//
// Source: equivalent annual cost, EAC = present worth / A(n,i), with i the
// discount rate after inflation, (1+d)/(1+f) - 1; then each choice is compared
// as if it were repeated for ever at prices that rise with inflation.
// Units: dollars; dollars a year in today's money; rates a year in percent.
// Upkeep and single outlays fall at the end of their year.
// Valid: what passes Check of the choice and of the rates.
// Example: 150,000 and 7,500 a year for 8 years at 5 % without inflation is
// 30,708.27 a year.
func CostPerYear(c Choice, r Rates) (*Service, error) {
	if err := c.Check(); err != nil {
		return nil, err
	}
	if err := r.Check(); err != nil {
		return nil, err
	}
	s := &Service{Choice: c, Uncovered: max(c.Years-c.Warranty, 0)}
	prices, discount := one, one // rise of prices since now, and fall of money's worth
	fall := one.DivRound(one.Add(r.Discount.Fraction()), places)
	rise := one.Add(r.Inflation.Fraction())
	var sum decimal.Decimal
	for y, today := range c.flows() {
		if y > 0 {
			prices, discount = prices.Mul(rise).Round(places), discount.Mul(fall).Round(places)
		}
		then := today.Mul(prices)
		now := then.Mul(discount)
		sum = sum.Add(now)
		s.Years = append(s.Years, ServiceRow{y, money.HalfUp.Cent(then), money.HalfUp.Cent(now)})
	}
	s.Worth = money.HalfUp.Cent(sum)
	s.PerYear = money.HalfUp.Cent(sum.DivRound(factor(r.real(), c.Years), places))
	s.How = fmt.Sprintf("%s now is worth the same as %s in each of %d years, in today's money, at %s inflation and "+
		"%s for money.", s.Worth.Show(), s.PerYear.Show(), c.Years, r.Inflation.Show(), r.Discount.Show())
	return s, nil
}

// BreakEven is the price at which a choice costs as much a year as another;
// below it the choice is the cheaper one. For a remount against a new unit it
// is the most the remount may cost. It is below zero when the choice would
// not even be worth having for nothing.
//
// Source: the equivalent annual cost is linear in the price, so that the price
// is EAC(other) x A(n,i) less the present worth of everything else.
// Units: dollars, cut to the cent below.
// Valid: as CostPerYear.
// Example: where both choices are alike it is the other's price.
func BreakEven(c, other Choice, r Rates) (money.Amount, error) {
	free := c
	free.Price = money.Amount{}
	for _, x := range []*Choice{&free, &other} {
		if err := x.Check(); err != nil {
			return money.Amount{}, err
		}
	}
	if err := r.Check(); err != nil {
		return money.Amount{}, err
	}
	i := r.real()
	aim := discounted(&other, i).Mul(factor(i, c.Years)).DivRound(factor(i, other.Years), places)
	return money.HalfUp.Cent(aim.Sub(discounted(&free, i)).Round(20).RoundFloor(2)), nil
}

// discounted is the present worth of a choice, in today's money at the rate
// after inflation.
func discounted(c *Choice, i decimal.Decimal) decimal.Decimal {
	v, sum := one.DivRound(one.Add(i), places), decimal.Zero
	list := c.flows()
	for y := len(list) - 1; y >= 0; y-- {
		sum = sum.Mul(v).Round(places).Add(list[y])
	}
	return sum
}
