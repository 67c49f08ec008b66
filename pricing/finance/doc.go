// Package finance spreads money over time: level payments, present worth,
// equivalent yearly cost, yields, and the cost of a year of service.
//
// No float is used. Money is whole cents; quotients and powers on the way are
// carried to 36 decimals, and rounded to the cent or to a stated number of
// decimals only where a result is given.
package finance
