package app

import (
	"hash"
	"hash/fnv"
	"maps"
	"slices"
	"strconv"
)

// Most of the page stays as it is from one press to the next. A request names
// what the page shows; where that is what the core sent last, only the pieces
// that changed are sent. A core that was restarted knows no such name and sends
// all of them.

// shownRegions are the regions sent last, and their name.
type shownRegions struct {
	name    string
	regions map[string][]string
}

// changed leaves out the pieces of the regions that the page shows already, and
// names the whole.
func (a *App) changed(regions map[string][]string, shown string) (pieces map[string][]*string, name string) {
	before := a.shown.regions
	if shown == "" || shown != a.shown.name {
		before = nil
	}
	// What was sent before and what changed since name the whole.
	sum := nameOf{fnv.New64a()}
	if before != nil {
		sum.add(shown)
	}
	pieces = make(map[string][]*string, len(regions))
	for _, id := range slices.Sorted(maps.Keys(regions)) {
		list, had := regions[id], before[id]
		out := make([]*string, len(list))
		sum.add(id)
		sum.add(strconv.Itoa(len(list)))
		for i := range list {
			if len(had) != len(list) || had[i] != list[i] {
				out[i] = &list[i]
				sum.add(strconv.Itoa(i))
				sum.add(list[i])
			}
		}
		pieces[id] = out
	}
	a.shown = shownRegions{sum.String(), regions}
	return pieces, a.shown.name
}

// nameOf is a short name for texts, each ended by a byte that no text of ours has.
type nameOf struct{ hash.Hash64 }

func (n nameOf) add(text string) { n.Write(append([]byte(text), 0xff)) }

func (n nameOf) String() string { return strconv.FormatUint(n.Sum64(), 36) }
