package deflate

import "slices"

// bitWriter puts bits into bytes from the lowest up.
type bitWriter struct {
	out  []byte
	held uint64
	n    uint8
}

func (w *bitWriter) put(v uint16, n uint8) {
	w.held |= uint64(v) << w.n
	for w.n += n; w.n >= 8; w.n -= 8 {
		w.out = append(w.out, byte(w.held))
		w.held >>= 8
	}
}

func (w *bitWriter) flush() {
	if w.n > 0 {
		w.out = append(w.out, byte(w.held))
	}
	w.held, w.n = 0, 0
}

// write puts the block out: its head, the description of its codes, its items.
func (b *block) write(w *bitWriter, last bool) {
	litLen, distLen := lengths(b.count.lit[:], 15), lengths(b.count.dist[:], 15)
	if last {
		w.put(1, 1)
	} else {
		w.put(0, 1)
	}
	w.put(2, 2) // codes of its own
	describe(w, litLen, distLen)
	lit, dist := codes(litLen), codes(distLen)
	at := b.start
	for _, m := range b.items {
		if m.length == 1 {
			s := b.data[at]
			w.put(lit[s], litLen[s])
		} else {
			s := lengthCode[m.length]
			w.put(lit[s], litLen[s])
			w.put(m.length-lengthBase[s-endOfBlock-1], lengthExtra[s-endOfBlock-1])
			d := distanceCode(m.distance)
			w.put(dist[d], distLen[d])
			w.put(m.distance-distanceBase(d), distanceExtra[d])
		}
		at += int(m.length)
	}
	w.put(lit[endOfBlock], litLen[endOfBlock])
}

// The order in which lengths of the lengths' own codes are written.
// Source: RFC 1951, 3.2.7.
var order = [19]uint8{16, 17, 18, 0, 8, 7, 9, 6, 10, 5, 11, 4, 12, 3, 13, 2, 14, 1, 15}

// describe writes the lengths of all codes, runs of equal ones shortened.
func describe(w *bitWriter, lit, dist []uint8) {
	used := func(list []uint8, least int) []uint8 {
		n := len(list)
		for n > least && list[n-1] == 0 {
			n--
		}
		return list[:n]
	}
	lit, dist = used(lit, 257), used(dist, 1)
	runs := shortRuns(slices.Concat(lit, dist))
	count := make([]uint32, 19)
	for _, r := range runs {
		count[r.symbol]++
	}
	length := lengths(count, 7)
	code := codes(length)
	n := len(order)
	for n > 4 && length[order[n-1]] == 0 {
		n--
	}
	w.put(uint16(len(lit)-257), 5)
	w.put(uint16(len(dist)-1), 5)
	w.put(uint16(n-4), 4)
	for _, s := range order[:n] {
		w.put(uint16(length[s]), 3)
	}
	for _, r := range runs {
		w.put(code[r.symbol], length[r.symbol])
		w.put(r.extra, r.bits)
	}
}

// run is a length, or a repetition of one, with its extra bits.
type run struct {
	symbol uint8
	extra  uint16
	bits   uint8
}

func shortRuns(list []uint8) []run {
	var out []run
	for i := 0; i < len(list); {
		n := 1
		for i+n < len(list) && list[i+n] == list[i] {
			n++
		}
		i += n
		v := list[i-1]
		if v != 0 {
			out = append(out, run{symbol: v})
			n--
		}
		for n > 0 {
			switch {
			case v == 0 && n >= 11:
				k := min(n, 138)
				out = append(out, run{18, uint16(k - 11), 7})
				n -= k
			case v == 0 && n >= 3:
				out = append(out, run{17, uint16(n - 3), 3})
				n = 0
			case v != 0 && n >= 3:
				k := min(n, 6)
				out = append(out, run{16, uint16(k - 3), 2})
				n -= k
			default:
				out = append(out, run{symbol: v})
				n--
			}
		}
	}
	return out
}
