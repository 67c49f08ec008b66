// Package order sorts lists of any kind with one piece of code.
//
// The sorts of package slices are compiled anew for every type of item, which
// in the page's core came to two dozen copies of 6 to 10 KB each. Here only
// the comparison is compiled again. Lists of numbers and texts have few types
// and stay with slices.Sort.
package order

import "sort"

// Sort puts the list into rising order, as compare tells it: below zero when a
// comes first, above zero when b does. Items that compare equal keep their
// order, so the same list always gives the same result.
func Sort[T any](list []T, compare func(a, b T) int) {
	sort.SliceStable(list, func(i, j int) bool { return compare(list[i], list[j]) < 0 })
}
