// Package pricing turns a unit and a price book into a price whose every line
// says how it came about. All arithmetic is exact decimal; a fraction of a cent
// is rounded only where a line is formed, by the rounding the book names.
//
// The steps, in this order, each on what the ones before it left:
//
//	of each unit   list prices of the edition in force; dated surcharges;
//	               package credits; contract; quantity break; agreed percentage
//	of the order   agreed amount; chassis prepayment; contract fee; freight;
//	               training; fees; extras; federal excise; trade-in; sales tax;
//	               performance bond
//
// A percentage of a unit is rounded for one unit, so that all units alike cost
// the same. The lines add up to the total; payments and the shares of single
// units are split from it by largest remainder.
//
// What the seller pays, and the margin, live in package costs, which nothing
// here knows.
package pricing
