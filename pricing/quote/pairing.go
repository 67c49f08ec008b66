package quote

import (
	"cmp"
	"slices"
	"strings"
)

// Pairs gives, for each unit of a later issue, the place that the same unit has in the earlier
// one; -1 for a unit that is new. A unit has no number of its own: it is known by its name
// and by what it is made of, wherever it stands on the quote. The one unit of each of two
// issues is always the same one.
func Pairs(from, to *Draft) []int {
	a, b := from.Items(), to.Items()
	out := make([]int, len(b))
	if len(a) == 1 && len(b) == 1 {
		return out
	}
	type pair struct {
		was, is int
		alike   float64
	}
	var list []pair
	for i := range a {
		had := options(&a[i])
		for k := range b {
			if alike := likeness(&a[i], &b[k], had); alike > 0 {
				list = append(list, pair{i, k, alike})
			}
		}
	}
	slices.SortStableFunc(list, func(x, y pair) int {
		return cmp.Or(cmp.Compare(y.alike, x.alike), cmp.Compare(max(x.was-x.is, x.is-x.was), max(y.was-y.is, y.is-y.was)))
	})
	for k := range out {
		out[k] = -1
	}
	for _, p := range list {
		if out[p.is] < 0 && !slices.Contains(out, p.was) {
			out[p.is] = p.was
		}
	}
	return out
}

// likeness is how surely two units of two issues are the same: by name first, then by chassis
// and body, then by the share of options that both have. 0 is another unit.
func likeness(a, b *Item, had map[string]bool) float64 {
	alike, name, other := 0.0, strings.TrimSpace(a.Label), strings.TrimSpace(b.Label)
	if name != "" && name == other {
		alike += 4
	}
	if a.Unit.Chassis == b.Unit.Chassis {
		alike++
	}
	if a.Unit.Body == b.Unit.Body {
		alike++
	}
	if alike == 0 {
		return 0
	}
	if name == other {
		alike += .5 // to have no name is a likeness too, among those that are alike
	}
	both := 0
	has := options(b)
	for id := range has {
		if had[id] {
			both++
		}
	}
	return alike + float64(both)/float64(max(1, len(had)+len(has)-both))
}

func options(it *Item) map[string]bool {
	out := make(map[string]bool, len(it.Unit.Picks))
	for _, p := range it.Unit.Picks {
		out[p.Option] = true
	}
	return out
}

// Gone are the places of an earlier issue's units that a later one does not have, by its Pairs.
func Gone(from *Draft, pairs []int) (out []int) {
	for i := range len(from.More) + 1 {
		if !slices.Contains(pairs, i) {
			out = append(out, i)
		}
	}
	return out
}
