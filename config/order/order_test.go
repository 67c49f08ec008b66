package order_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"boxwright/config/order"
)

type item struct {
	key, at int
}

func byKey(a, b item) int { return a.key - b.key }

func TestSortIsTheStableSortOfSlices(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		keys := rapid.SliceOfN(rapid.IntRange(0, 9), 0, 80).Draw(t, "keys")
		var list []item
		for at, key := range keys {
			list = append(list, item{key, at})
		}
		want := slices.Clone(list)
		slices.SortStableFunc(want, byKey)
		order.Sort(list, byKey)
		assert.Equal(t, want, list)
	})
}

func TestSortTakesWhatHasNothingToSort(t *testing.T) {
	order.Sort(nil, byKey)
	one := []item{{1, 0}}
	order.Sort(one, byKey)
	assert.Equal(t, []item{{1, 0}}, one)
}

func ExampleSort() {
	load := []struct {
		part string
		lb   float64
	}{{"cot", 125}, {"bench", 310}, {"chair", 48}}
	order.Sort(load, func(a, b struct {
		part string
		lb   float64
	}) int {
		return strings.Compare(a.part, b.part)
	})
	fmt.Println(load)
	// Output: [{bench 310} {chair 48} {cot 125}]
}

func BenchmarkSort(b *testing.B) {
	list := make([]item, 300)
	for b.Loop() {
		for i := range list {
			list[i] = item{i * 7919 % 300, i}
		}
		order.Sort(list, byKey)
	}
}
