package deflate

import "math"

// block is a run of bytes with codes of its own.
type block struct {
	data       []byte // all of it
	start, end int
	matches    [][]match // at start and after
	items      []match   // the way through; a literal has length 1
	count      counts
}

// counts is how often each symbol is used: literals with lengths, distances.
type counts struct {
	lit  [286]uint32
	dist [30]uint32
}

const endOfBlock = 256

// add counts an item at a place.
func (c *counts) add(m match, literal byte) {
	if m.length == 1 {
		c.lit[literal]++
		return
	}
	c.lit[lengthCode[m.length]]++
	c.dist[distanceCode(m.distance)]++
}

// bits is about what the items counted take, with the description of their codes.
func (c *counts) bits() float64 {
	sum := entropy(c.lit[:]) + entropy(c.dist[:])
	for i, n := range c.lit {
		if n > 0 {
			sum += describing
			if i > endOfBlock {
				sum += float64(n) * float64(lengthExtra[i-endOfBlock-1])
			}
		}
	}
	for i, n := range c.dist {
		if n > 0 {
			sum += describing + float64(n)*float64(distanceExtra[i])
		}
	}
	return sum + 60
}

// describing is about how many bits the code of one more symbol takes.
const describing = 3.5

func entropy(count []uint32) float64 {
	total, sum := 0.0, 0.0
	for _, n := range count {
		if n > 0 {
			total += float64(n)
			sum -= float64(n) * math.Log2(float64(n))
		}
	}
	if total > 0 {
		sum += total * math.Log2(total)
	}
	return sum
}

// passes is how often the way through a block is looked for anew.
const passes = 5

// split cuts a stretch where its bytes change in kind, and finds the way
// through each block.
func split(data []byte, start int, matches [][]match) []*block {
	whole := &block{data: data, start: start, end: start + len(matches), matches: matches}
	whole.greedy()
	whole.shorten()
	blocks := whole.cut()
	for _, b := range blocks {
		for range passes {
			b.shorten()
		}
	}
	return blocks
}

// greedy takes the longest match everywhere, to have something to count.
func (b *block) greedy() {
	b.items, b.count = b.items[:0], counts{}
	for at := b.start; at < b.end; {
		m := match{length: 1}
		if list := b.matches[at-b.start]; len(list) > 0 {
			m = list[len(list)-1]
		}
		b.take(m, at)
		at += int(m.length)
	}
	b.count.lit[endOfBlock]++
}

func (b *block) take(m match, at int) {
	b.items = append(b.items, m)
	b.count.add(m, b.data[at])
}

// piece is the smallest block thought of, in bytes.
const piece = 4096

// cut divides the block into small pieces, then joins neighbours for as long
// as the joint is cheaper than the two.
func (b *block) cut() []*block {
	var parts []*block
	at := b.start
	for _, m := range b.items {
		if n := len(parts); n == 0 || at-parts[n-1].start >= piece {
			parts = append(parts, &block{data: b.data, start: at})
		}
		parts[len(parts)-1].take(m, at)
		at += int(m.length)
	}
	if len(parts) == 0 {
		return []*block{b} // no bytes at all
	}
	gains := make([]float64, len(parts)) // of joining a part with the next
	gain := func(i int) float64 {
		if i+1 >= len(parts) {
			return math.Inf(-1)
		}
		joint := parts[i].count
		joint.join(&parts[i+1].count)
		return parts[i].count.bits() + parts[i+1].count.bits() - joint.bits()
	}
	for i := range parts {
		gains[i] = gain(i)
	}
	for {
		best := 0
		for i, g := range gains {
			if g > gains[best] {
				best = i
			}
		}
		if !(gains[best] > 0) {
			break
		}
		parts[best].count.join(&parts[best+1].count)
		parts = append(parts[:best+1], parts[best+2:]...)
		gains = append(gains[:best+1], gains[best+2:]...)
		gains[best] = gain(best)
		if best > 0 {
			gains[best-1] = gain(best - 1)
		}
	}
	for i, p := range parts {
		p.end = b.end
		if i+1 < len(parts) {
			p.end = parts[i+1].start
		}
		p.matches = b.matches[p.start-b.start : p.end-b.start]
		p.count.lit[endOfBlock]++
	}
	return parts
}

func (c *counts) join(other *counts) {
	for i, n := range other.lit {
		c.lit[i] += n
	}
	for i, n := range other.dist {
		c.dist[i] += n
	}
}

// shorten finds the cheapest way through under what the symbols of the way
// before would cost, from the end backwards.
func (b *block) shorten() {
	price := newPrices(&b.count)
	n := b.end - b.start
	cost := make([]float32, n+1) // from here to the end
	step := make([]match, n)
	for i := n - 1; i >= 0; i-- {
		best, how := price.literal[b.data[b.start+i]]+cost[i+1], match{length: 1}
		length := uint16(minMatch)
		for _, m := range b.matches[i] {
			far := price.distance[distanceCode(m.distance)]
			for ; length <= m.length && i+int(length) <= n; length++ {
				if c := far + price.length[length] + cost[i+int(length)]; c < best {
					best, how = c, match{length, m.distance}
				}
			}
		}
		cost[i], step[i] = best, how
	}
	b.items, b.count = b.items[:0], counts{}
	for i := 0; i < n; i += int(step[i].length) {
		b.take(step[i], b.start+i)
	}
	b.count.lit[endOfBlock]++
}

// prices are bits.
type prices struct {
	literal  [256]float32
	length   [maxMatch + 1]float32
	distance [30]float32
}

func newPrices(c *counts) *prices {
	p := new(prices)
	lit, dist := bitsOf(c.lit[:]), bitsOf(c.dist[:])
	copy(p.literal[:], lit)
	for n := minMatch; n <= maxMatch; n++ {
		code := lengthCode[n]
		p.length[n] = lit[code] + float32(lengthExtra[code-endOfBlock-1])
	}
	for i := range p.distance {
		p.distance[i] = dist[i] + float32(distanceExtra[i])
	}
	return p
}

// bitsOf is what each symbol costs by how often it was used; one that was not
// used costs as if it had been, a little less than once.
func bitsOf(count []uint32) []float32 {
	total := 0.0
	for _, n := range count {
		total += float64(n)
	}
	out := make([]float32, len(count))
	for i, n := range count {
		out[i] = float32(math.Log2(max(total, 2)) - math.Log2(max(float64(n), 0.7)))
	}
	return out
}
