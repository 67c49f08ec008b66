// Package seeds makes tests go the same way each time. It gives those that draw at
// random their seeds, which follow -rapid.seed (RAPID_SEED in the environment), so one
// number repeats every random test: make test sets it to 1, make soak to another one each
// time. Only tests import this package.
package seeds

import (
	"cmp"
	"flag"
	"iter"
	"maps"
	"slices"

	_ "pgregory.net/rapid" // defines the flag
)

// First returns the first seed of a test, from 0: 0 when -rapid.seed is 1 or not set.
func First() int64 {
	seed := flag.Lookup("rapid.seed").Value.(flag.Getter).Get().(uint64)
	return int64((max(seed, 1) - 1) % (1 << 62))
}

// Fixed reports whether tests draw the same as in each make test. A walk at random is
// shorter then: going the same way tells no more the farther it goes, and make soak goes
// all of it on other seeds.
func Fixed() bool { return First() == 0 }

// Each returns n seeds that follow each other, beginning with First.
func Each(n int64) iter.Seq[int64] {
	return func(yield func(int64) bool) {
		first := First()
		for i := range n {
			if !yield(first + i) {
				return
			}
		}
	}
}

// InOrder goes through a map in the order of its keys: cases that share
// something, such as a page, then follow each other alike in every run.
func InOrder[K cmp.Ordered, V any](m map[K]V) iter.Seq2[K, V] {
	return func(yield func(K, V) bool) {
		for _, key := range slices.Sorted(maps.Keys(m)) {
			if !yield(key, m[key]) {
				return
			}
		}
	}
}
