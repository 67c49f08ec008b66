package link

import "errors"

// coder writes bits into as few bytes as their odds allow, or reads them back.
// One walk over the data serves both ways: every method takes the value to be
// written and gives the value that was written or read.
type coder struct {
	reading         bool
	data            []byte // written so far, or still to be read
	low, high, code uint32
	bad             bool // what was read is no number that could have been written
}

var errPacked = errors.New("its data are too short, too long or of another kind")

func newWriter() *coder { return &coder{high: ^uint32(0)} }

func newReader(data []byte) *coder {
	c := &coder{reading: true, data: data, high: ^uint32(0)}
	for range 4 {
		c.code = c.code<<8 | c.next()
	}
	return c
}

// next reads a byte; zeros follow the end.
func (c *coder) next() uint32 {
	if len(c.data) == 0 {
		return 0
	}
	b := c.data[0]
	c.data = c.data[1:]
	return uint32(b)
}

// bit codes one bit of which the chance, in 1/65536, that it is 1 is known.
func (c *coder) bit(chance, bit uint32) uint32 {
	mid := c.low + uint32(uint64(c.high-c.low)*uint64(chance)>>16)
	if c.reading {
		bit = 0
		if c.code <= mid {
			bit = 1
		}
	}
	if bit == 1 {
		c.high = mid
	} else {
		c.low = mid + 1
	}
	for (c.low^c.high)>>24 == 0 {
		if c.reading {
			c.code = c.code<<8 | c.next()
		} else {
			c.data = append(c.data, byte(c.high>>24))
		}
		c.low, c.high = c.low<<8, c.high<<8|0xff
	}
	return bit
}

// odds is an adaptive bit probability; the zero value is 50 %.
type odds struct{ ones, all uint32 }

// flip codes a bit and adapts the odds.
func (c *coder) flip(o *odds, set bool) bool {
	bit := uint32(0)
	if set {
		bit = 1
	}
	bit = c.bit((o.ones*8+4)*65536/(o.all*8+8), bit)
	o.ones, o.all = o.ones+bit, o.all+1
	if o.all > 250 {
		o.ones, o.all = o.ones/2, o.all/2
	}
	return bit == 1
}

// below codes a number from 0 to n-1, all alike likely.
func (c *coder) below(n, v int) int {
	width := 0
	for 1<<width < n {
		width++
	}
	out := 0
	for k := width - 1; k >= 0; k-- {
		out = out<<1 | int(c.bit(1<<15, uint32(v>>k)&1))
	}
	if out >= n {
		c.bad = true
		return 0
	}
	return out
}

// sizes are the odds of a number of which small ones are likely.
type sizes struct {
	width [24]odds
	top   [24]odds
}

// number codes a number from 0 to below 2^23: its width, then its bits.
func (c *coder) number(s *sizes, v int) int {
	width := 0
	for width < len(s.width)-1 && c.flip(&s.width[width], (v+1)>>(width+1) > 0) {
		width++
	}
	out := 1
	for k := width - 1; k >= 0; k-- {
		bit := (v+1)>>k&1 == 1
		if k == width-1 {
			bit = c.flip(&s.top[width], bit)
		} else {
			bit = c.bit(1<<15, uint32((v+1)>>k)&1) == 1
		}
		out <<= 1
		if bit {
			out++
		}
	}
	return out - 1
}

// finish returns the bytes written. The reader reads zeros past the end, so the
// shortest number between low and high will do.
func (c *coder) finish() []byte {
	for shift := 32; c.low > 0 && shift >= 0; shift -= 8 {
		step := uint64(1) << shift
		cut := (uint64(c.low) + step - 1) / step * step
		if cut > uint64(c.high) {
			continue
		}
		for k := 24; k >= shift; k -= 8 {
			c.data = append(c.data, byte(cut>>k))
		}
		break
	}
	return c.data
}

// ended reports whether what was read was all there is, and could be read.
func (c *coder) ended() bool { return !c.bad && len(c.data) == 0 }
