package finance

import (
	"errors"
	"fmt"
	"slices"

	"github.com/shopspring/decimal"

	"boxwright/pricing/money"
)

// Lease is a lease-purchase or loan in level payments.
type Lease struct {
	Principal money.Amount  `json:"principal,omitzero"` // sum financed, above zero
	Rate      money.Percent `json:"rate,omitzero"`      // nominal a year, 0 to 60 %
	PerYear   int           `json:"per_year"`           // 12 monthly, 4 quarterly, 2 half-yearly, 1 yearly
	Periods   int           `json:"periods"`            // number of level payments, 1 to 600
	Advance   bool          `json:"advance,omitempty"`  // each payment at the beginning of its period
	Balloon   money.Amount  `json:"balloon,omitzero"`   // due at the end of the last period, 0 to the principal
	Label     string        `json:"label,omitempty"`    // for readers
	FirstDue  int           `json:"first_due,omitzero"` // months from delivery to the start of the first period
}

// Row is one payment of a schedule to the cent.
type Row struct {
	N         int          `json:"n"`      // 1 for the first; Periods+1 for a balloon
	Months    int          `json:"months"` // after delivery
	Payment   money.Amount `json:"payment"`
	Interest  money.Amount `json:"interest"`
	Principal money.Amount `json:"principal"`
	Balance   money.Amount `json:"balance"` // owed after the payment
}

// Schedule is what is owed, to the cent.
type Schedule struct {
	Payment  money.Amount `json:"payment"` // the level payment; the last one settles
	Rows     []Row        `json:"rows"`
	Paid     money.Amount `json:"paid"`     // all payments and the balloon
	Interest money.Amount `json:"interest"` // their part that is interest
}

// ErrTooSmall says that payments in whole cents cannot settle the sum evenly.
var ErrTooSmall = errors.New("finance: the sum is too small for that many payments in whole cents; take fewer")

const (
	maxPeriods = 600
	maxRate    = 60
)

// Check names what of the lease is out of range, or is nil.
func (l *Lease) Check() error {
	switch {
	case l.Principal.Sign() <= 0:
		return fmt.Errorf("finance: principal %s must be above zero", l.Principal.Show())
	case l.Rate.Sign() < 0 || l.Rate.Decimal().GreaterThan(decimal.NewFromInt(maxRate)):
		return fmt.Errorf("finance: rate %s is outside 0 to %d %% a year", l.Rate.Show(), maxRate)
	case !slices.Contains([]int{1, 2, 4, 12}, l.PerYear):
		return fmt.Errorf("finance: %d payments a year; choose 12, 4, 2 or 1", l.PerYear)
	case l.Periods < 1 || l.Periods > maxPeriods:
		return fmt.Errorf("finance: %d payments; choose 1 to %d", l.Periods, maxPeriods)
	case l.Balloon.Sign() < 0 || l.Balloon.Cmp(l.Principal) > 0:
		return fmt.Errorf("finance: balloon %s is outside 0 to the principal", l.Balloon.Show())
	case l.FirstDue < 0 || l.FirstDue > 120:
		return fmt.Errorf("finance: first period %d months after delivery; choose 0 to 120", l.FirstDue)
	}
	return nil
}

// period is the rate of one period, as a fraction.
func (l *Lease) period() decimal.Decimal {
	return l.Rate.Fraction().DivRound(decimal.NewFromInt(int64(l.PerYear)), places)
}

// Exact is the level payment before it is rounded to the cent.
//
// Source: level payment of an ordinary annuity, PMT = P r / (1 - (1+r)^-n); with
// a balloon B the sum repaid in level payments is P - B (1+r)^-n; in advance
// each is due a period earlier and so divided by 1+r.
// Units: dollars; r the fraction of one period.
// Valid: a lease that passes Check; 20 decimals can be relied on.
// Example: 200,000.00 at 7.5 % a year over 180 months is 1,854.02472000547625.
func (l *Lease) Exact() (decimal.Decimal, error) {
	if err := l.Check(); err != nil {
		return decimal.Decimal{}, err
	}
	p, b, r := l.Principal.Decimal(), l.Balloon.Decimal(), l.period()
	if r.IsZero() {
		return p.Sub(b).DivRound(decimal.NewFromInt(int64(l.Periods)), places), nil
	}
	g := growth(one.Add(r), l.Periods)
	payment := p.Mul(g).Sub(b).Mul(r).DivRound(g.Sub(one), places)
	if l.Advance {
		payment = payment.DivRound(one.Add(r), places)
	}
	return payment, nil
}

// Schedule is the lease to the cent: level payments rounded half up, interest
// of each period rounded half up, and a last level payment that settles, so
// that the principal is repaid to the cent and a balloon is exactly as agreed.
//
// Source: as Exact; interest on the balance before each payment, none on the first in
// advance; what the payment leaves over goes off the balance; each figure in whole cents.
// Units: dollars and cents; months after delivery.
// Valid: a lease that passes Check and whose last payment stays between zero
// and twice the level one; else ErrTooSmall.
// Example: 1,000.00 without interest in 3 yearly payments is 333.33, 333.33
// and 333.34.
func (l *Lease) Schedule() (*Schedule, error) {
	exact, err := l.Exact()
	if err != nil {
		return nil, err
	}
	s := &Schedule{Payment: money.HalfUp.Cent(exact)}
	if s.Payment.Sign() <= 0 && l.Balloon.Cmp(l.Principal) < 0 {
		return nil, ErrTooSmall
	}
	r, balance := l.period(), l.Principal
	// leave is what the last level payment leaves owing: zero, or what grows
	// into the balloon.
	leave := l.Balloon
	if l.Advance {
		leave = money.HalfUp.Cent(l.Balloon.Decimal().DivRound(one.Add(r), places))
	}
	step := 12 / l.PerYear
	for n := 1; n <= l.Periods; n++ {
		row := Row{N: n, Payment: s.Payment, Months: l.FirstDue + n*step}
		if l.Advance {
			row.Months -= step
		}
		if n > 1 || !l.Advance {
			row.Interest = money.HalfUp.Cent(balance.Decimal().Mul(r))
		}
		if n == l.Periods {
			row.Payment = balance.Add(row.Interest).Sub(leave)
			if row.Payment.Sign() < 0 || row.Payment.Cmp(s.Payment.Times(2)) > 0 {
				return nil, ErrTooSmall
			}
		}
		row.Principal = row.Payment.Sub(row.Interest)
		balance = balance.Sub(row.Principal)
		row.Balance = balance
		s.add(row)
	}
	if !l.Balloon.IsZero() {
		s.add(Row{N: l.Periods + 1, Months: l.FirstDue + l.Periods*step, Payment: l.Balloon,
			Interest: l.Balloon.Sub(balance), Principal: balance})
	}
	return s, nil
}

func (s *Schedule) add(r Row) {
	s.Rows = append(s.Rows, r)
	s.Paid, s.Interest = s.Paid.Add(r.Payment), s.Interest.Add(r.Interest)
}

// Effective is the yearly rate with interest on interest.
//
// Source: (1 + r)^m - 1.
// Units: percent, to four decimals, half up.
// Valid: a lease that passes Check.
// Example: 12 % in monthly periods is 12.6825 %.
func (l *Lease) Effective() (money.Percent, error) {
	if err := l.Check(); err != nil {
		return money.Percent{}, err
	}
	return percent(growth(one.Add(l.period()), l.PerYear).Sub(one)), nil
}
