package pricing

import "boxwright/pricing/money"

// The number types of a price, from package money: no sum of a price and a
// rate compiles.
type (
	Amount   = money.Amount
	Percent  = money.Percent
	Quantity = money.Quantity
	Rounding = money.Rounding
)
