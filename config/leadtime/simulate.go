package leadtime

import (
	"hash/fnv"
	"math"
	"slices"
	"sync"
)

// Simulation says how many times a network is played through and from which
// seed. Draw number k of an activity depends on the seed, k and the
// activity's id alone, so two versions of a network are compared under the
// same luck: what is left of a difference is the change itself.
type Simulation struct {
	Draws int // 1 to 1,000,000
	Seed  uint64
}

// Standard is what plans are made with.
var Standard = Simulation{Draws: 10_000, Seed: 1}

// Odds is a network played through many times. Each duration is drawn from
// the beta distribution that PERT's three points stand for (mean (a+4m+b)/6),
// and where paths merge the later one decides in every single draw.
type Odds struct {
	Mean     float64   // days, over all draws
	Critical []float64 // by activity: share of draws in which the end waited for it

	finish []int32 // sorted, thousandths of a day
}

// Within is the share of draws finished in so many days.
func (o *Odds) Within(days float64) float64 {
	limit := int32(min(max(math.Floor(days*milli+0.5), -1), math.MaxInt32))
	n, _ := slices.BinarySearch(o.finish, limit+1)
	return float64(n) / float64(len(o.finish))
}

// At is the number of days within which the given share of the draws, from 0
// to 1, is finished.
func (o *Odds) At(chance float64) float64 {
	n := int(math.Ceil(min(max(chance, 0), 1)*float64(len(o.finish)) - tiny))
	return float64(o.finish[max(n, 1)-1]) / milli
}

// milli is the resolution of the simulation: a thousandth of a working day,
// half a minute. Whole numbers add up alike on every machine.
const milli = 1000

// Simulate plays the network through. The errors are those of Solve.
func (n *Network) Simulate(s Simulation) (*Odds, error) {
	c, err := n.compile()
	if err != nil {
		return nil, err
	}
	return c.simulate(s), nil
}

// block is how many draws are worked through at once, so that the rows of a
// plant's network stay in the processor's cache.
const block = 1000

func (c *compiled) simulate(s Simulation) *Odds {
	draws := min(max(s.Draws, 1), 1_000_000)
	o := &Odds{Critical: make([]float64, len(c.acts)), finish: make([]int32, draws)}
	steps := make([]drawn, len(c.acts))
	for i := range c.acts {
		steps[i] = newDrawn(&c.acts[i], s.Seed)
	}
	rows := make([]int32, len(c.acts)*block)
	row := func(i int) []int32 { return rows[i*block : (i+1)*block] }
	hits := make([]int, len(c.acts))
	var sum int64
	for first := 0; first < draws; first += block {
		n := min(block, draws-first)
		end := o.finish[first : first+n]
		for _, i := range c.order {
			out := row(i)[:n]
			for k := range out {
				out[k] = steps[i].notBefore
			}
			for _, p := range c.pred[i] {
				later(out, row(p))
			}
			if steps[i].gate != nil {
				steps[i].gate.hold(out)
			}
			steps[i].add(out, first)
			if len(c.succ[i]) == 0 {
				later(end, out)
			}
		}
		if first == 0 {
			for k := range end {
				c.trace(steps, rows, k, end[k], hits)
			}
			for i, h := range hits {
				o.Critical[i] = float64(h) / float64(n)
			}
		}
		for _, f := range end {
			sum += int64(f)
		}
	}
	o.Mean = float64(sum) / milli / float64(draws)
	sortDays(o.finish)
	return o
}

// later raises each of out to the value beside it.
func later(out, other []int32) {
	other = other[:len(out)]
	for k, v := range out {
		out[k] = max(v, other[k])
	}
}

// trace follows one draw back from its end and counts the activities that the
// end waited for. It stops where an activity waited for a gate or a date.
func (c *compiled) trace(steps []drawn, rows []int32, k int, end int32, hits []int) {
	i := -1
	for _, j := range c.order {
		if len(c.succ[j]) == 0 && rows[j*block+k] == end {
			i = j
			break
		}
	}
	for i >= 0 {
		hits[i]++
		ready, from := int32(-1), -1
		for _, p := range c.pred[i] {
			if f := rows[p*block+k]; f > ready {
				ready, from = f, p
			}
		}
		if ready < steps[i].notBefore || steps[i].gate != nil && steps[i].gate.open(ready) > ready {
			return
		}
		i = from
	}
}

// drawn is an activity made ready for drawing.
type drawn struct {
	low, added int32
	width      int64
	notBefore  int32
	stream     uint64
	quantile   []uint16 // of the duration between low and high; nil when certain
	gate       *drawnGate
}

type drawnGate struct {
	starts []int32
	free   int32
}

func (g *drawnGate) open(ready int32) int32 {
	for _, s := range g.starts {
		if ready <= s {
			return s
		}
	}
	return max(ready, g.free)
}

func (g *drawnGate) hold(ready []int32) {
	for k, r := range ready {
		ready[k] = g.open(r)
	}
}

func toMilli(days float64) int32 { return int32(math.Round(days * milli)) }

func newDrawn(a *Activity, seed uint64) drawn {
	d := drawn{low: toMilli(a.Days.Low), added: toMilli(a.Added), notBefore: toMilli(a.NotBefore)}
	if a.Gate != nil {
		d.gate = &drawnGate{free: toMilli(a.Gate.Free)}
		for _, s := range a.Gate.Starts {
			d.gate.starts = append(d.gate.starts, toMilli(s))
		}
	}
	if d.width = int64(toMilli(a.Days.High) - d.low); d.width > 0 {
		h := fnv.New64a()
		h.Write([]byte(a.ID))
		d.stream = mix(h.Sum64() ^ mix(seed))
		d.quantile = betaQuantiles((a.Days.Likely - a.Days.Low) / (a.Days.High - a.Days.Low))
	}
	return d
}

// perWord is how many draws one 64-bit random word serves: ten bits each.
const perWord = 6

// add puts a drawn duration, never below zero, on top of each start. Draw k
// always uses the same bits, whichever block it falls into.
func (d *drawn) add(out []int32, first int) {
	if d.quantile == nil {
		certain := max(0, d.low+d.added)
		for k := range out {
			out[k] += certain
		}
		return
	}
	q := d.quantile[:strata]
	word := uint64(first / perWord)
	bits, left := mix(d.stream+word*golden), perWord
	for range first % perWord {
		bits >>= 10
		left--
	}
	for k := range out {
		if left == 0 {
			word++
			bits, left = mix(d.stream+word*golden), perWord
		}
		out[k] += max(0, d.low+d.added+int32(d.width*int64(q[bits%strata])>>16))
		bits >>= 10
		left--
	}
}

// golden is the step between the words of a stream.
const golden = 0x9e3779b97f4a7c15

// mix is the output function of the SplitMix64 generator: it turns a counter
// into 64 bits that pass for random.
//
// Source: Steele, Lea, Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014.
// Units: none.
// Valid: any value.
// Example: the counter 0x9e3779b97f4a7c15 gives 0xe220a8397b1dcdaf, the first word from seed 0.
func mix(z uint64) uint64 {
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// strata is the resolution of a draw: a duration takes the middle of one of
// so many equally likely slices of its distribution.
const strata = 1024

// shapes is how finely the likeliest point is divided for the tables; between
// two of them the quantiles are interpolated, which keeps the mean exact.
const shapes = 16

// betaQuantiles is the table of the beta distribution between 0 and 1 (as
// 0 to 65,535) whose likeliest point is mode: alpha = 1 + 4 mode,
// beta = 5 - 4 mode.
func betaQuantiles(mode float64) []uint16 {
	tables := betaTables()
	at := min(max(mode, 0), 1) * shapes
	i := min(int(at), shapes-1)
	t := at - float64(i)
	out := make([]uint16, strata)
	for k := range out {
		out[k] = uint16(math.Round(tables[i][k] + t*(tables[i+1][k]-tables[i][k])))
	}
	return out
}

// betaTables holds the quantiles for modes 0, 1/16 ... 1, as 0 to 65,535. They
// are constants, worked out when first needed.
var betaTables = sync.OnceValue(func() *[shapes + 1][strata]float64 {
	t := new([shapes + 1][strata]float64)
	for i := range t {
		if i > shapes/2 { // the mirror image of a shape already there
			for k := range t[i] {
				t[i][k] = 65535 - t[shapes-i][strata-1-k]
			}
			continue
		}
		betaTable(float64(i)/shapes, &t[i])
	}
	return t
})

// betaTable integrates the density x^(4 mode) (1-x)^(4-4 mode) by the midpoint
// rule and inverts the sum by linear interpolation.
func betaTable(mode float64, out *[strata]float64) {
	const cells = 2048
	var upTo [cells + 1]float64
	for j := range cells {
		x := (float64(j) + 0.5) / cells
		upTo[j+1] = upTo[j] + math.Pow(x, 4*mode)*math.Pow(1-x, 4-4*mode)
	}
	j := 0
	for k := range out {
		target := (float64(k) + 0.5) / strata * upTo[cells]
		for upTo[j+1] < target {
			j++
		}
		x := (float64(j) + (target-upTo[j])/(upTo[j+1]-upTo[j])) / cells
		// Whole numbers, so that machines whose powers differ in the last
		// bit draw the same durations.
		out[k] = math.Round(x * 65535)
	}
}

// sortDays sorts by counting, which for a plan's few hundred thousand
// possible values is quicker than comparing.
func sortDays(v []int32) {
	lo, hi := slices.Min(v), slices.Max(v)
	if int64(hi)-int64(lo) > 1<<19 {
		slices.Sort(v)
		return
	}
	count := make([]int32, hi-lo+1)
	for _, x := range v {
		count[x-lo]++
	}
	k := 0
	for x, n := range count {
		for range n {
			v[k] = lo + int32(x)
			k++
		}
	}
}
