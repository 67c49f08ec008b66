package deflate

import (
	"encoding/binary"
	"math/bits"
)

// Limits of the format.
const (
	minMatch = 3
	maxMatch = 258
	window   = 1 << 15
)

// depth is how many earlier places are compared for a match.
const depth = 600

// match says that the bytes here stood distance bytes earlier, for length bytes.
type match struct{ length, distance uint16 }

// finder finds matches by chains of places with the same four bytes. Three
// bytes alone are only worth a match close by, so the last place is enough.
type finder struct {
	data  []byte
	four  []int32 // last place with a hash of four bytes, -1 for none
	three []int32
	chain []int32 // the place before it in its chain, by place modulo window
}

const hashBits = 16

func newFinder(data []byte) *finder {
	f := &finder{data: data, four: make([]int32, 1<<hashBits), three: make([]int32, 1<<hashBits), chain: make([]int32, window)}
	for i := range f.four {
		f.four[i], f.three[i] = -1, -1
	}
	return f
}

// matches are those at every place of a stretch, at each by rising length and
// the smallest distance for it.
func (f *finder) matches(from, to int) [][]match {
	lists := make([][]match, to-from)
	store := make([]match, 0, 4*(to-from))
	for at := from; at < to; {
		start := len(store)
		store = f.at(at, min(maxMatch, to-at), store)
		lists[at-from] = store[start:len(store):len(store)]
		f.enter(at)
		at++
		// Inside a match of the greatest length there is nothing to gain.
		if n := len(store); n > start && store[n-1].length == maxMatch {
			for range maxMatch - 1 {
				f.enter(at)
				at++
			}
		}
	}
	return lists
}

func (f *finder) hash3(at int) uint32 {
	v := uint32(f.data[at]) | uint32(f.data[at+1])<<8 | uint32(f.data[at+2])<<16
	return v * 0x9e3779b1 >> (32 - hashBits)
}

func (f *finder) hash4(at int) uint32 {
	return binary.LittleEndian.Uint32(f.data[at:]) * 0x9e3779b1 >> (32 - hashBits)
}

// at appends the matches at a place, none longer than most.
func (f *finder) at(at, most int, list []match) []match {
	if most < minMatch || at+4 > len(f.data) {
		return list
	}
	best := minMatch - 1
	consider := func(place int) {
		if n := f.same(place, at, most); n > best {
			best = n
			list = append(list, match{uint16(n), uint16(at - place)})
		}
	}
	if place := int(f.three[f.hash3(at)]); place >= 0 && at-place <= window {
		consider(place)
	}
	place := int(f.four[f.hash4(at)])
	for tries := 0; place >= 0 && at-place <= window && best < most && tries < depth; tries++ {
		if f.data[place+best] == f.data[at+best] {
			consider(place)
		}
		next := int(f.chain[place%window])
		if next >= place {
			break // overwritten by a later place
		}
		place = next
	}
	return list
}

// same counts the equal bytes at two places.
func (f *finder) same(a, b, most int) int {
	n := 0
	for ; n+8 <= most; n += 8 {
		if x := binary.LittleEndian.Uint64(f.data[a+n:]) ^ binary.LittleEndian.Uint64(f.data[b+n:]); x != 0 {
			return n + bits.TrailingZeros64(x)/8
		}
	}
	for n < most && f.data[a+n] == f.data[b+n] {
		n++
	}
	return n
}

// enter makes a place known to those that follow.
func (f *finder) enter(at int) {
	if at+4 > len(f.data) {
		return
	}
	h := f.hash4(at)
	f.chain[at%window] = f.four[h]
	f.four[h] = int32(at)
	f.three[f.hash3(at)] = int32(at)
}
