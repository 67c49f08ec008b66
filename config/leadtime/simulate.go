package leadtime

import (
	"hash/fnv"
	"math"
	"slices"
	"sync"

	"boxwright/config"
)

// Simulation says how many times a network is played through and from which
// seed. Draw number k of an activity depends on the seed, k and the
// activity's id alone, so two versions of a network are compared under the
// same luck: what is left of a difference is the change itself.
type Simulation struct {
	Draws int // 1 to 1,000,000
	Seed  uint64
	// Together is the share of the delays that come together, 0 to 1: a supplier, a strike,
	// a labor market. It is the rank correlation of any two durations of one draw; each by
	// itself stays as it is.
	Together float64
}

// with is the simulation with the share of a unit's delays that come together.
func (s Simulation) with(together float64) Simulation { s.Together = together; return s }

// few is the same luck with at most so many draws.
func (s Simulation) few(draws int) Simulation { s.Draws = min(s.Draws, draws); return s }

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
	if !(days >= 0) {
		return 0
	}
	limit := int32(math.Round(min(days, never) * milli))
	n, _ := slices.BinarySearch(o.finish, limit+1)
	return float64(n) / float64(len(o.finish))
}

// At is the number of days within which the given share of the draws, from 0
// to 1, is finished.
func (o *Odds) At(chance float64) float64 {
	if !(chance >= 0) {
		chance = 0
	}
	n := int(math.Ceil(min(chance, 1)*float64(len(o.finish)) - tiny))
	return float64(o.finish[max(n, 1)-1]) / milli
}

// milli is the resolution of the simulation: a thousandth of a working day,
// half a minute. Whole numbers add up alike on every machine.
const milli = 1000

// block is how many draws are worked through at once, so that the rows of a
// plant's network stay in the processor's cache. It is a multiple of perWord.
const block = 170 * perWord

func (c *compiled) simulate(s Simulation) *Odds {
	critical := make([]float64, len(c.acts))
	o := c.odds(s, critical)
	o.Critical = critical
	return o
}

// odds plays the network through and fills critical, where that is not nil.
func (c *compiled) odds(s Simulation, critical []float64) *Odds {
	o := &Odds{finish: c.play(s, critical)}
	var sum int64
	for _, f := range o.finish {
		sum += int64(f)
	}
	o.Mean = float64(sum) / milli / float64(len(o.finish))
	sortDays(o.finish)
	return o
}

// play returns when each draw is finished, in the order of the draws. Where
// critical is not nil it gets each activity's share of the first block in
// which the end waited for it.
func (c *compiled) play(s Simulation, critical []float64) []int32 {
	finish := make([]int32, min(max(s.Draws, 1), 1_000_000))
	steps := make([]drawn, len(c.acts))
	for i := range c.acts {
		steps[i] = newDrawn(&c.acts[i])
	}
	order, pred := c.decisive(steps)
	own := ownWeight(s.Together)
	for _, i := range order {
		steps[i].prepare(&c.acts[i], s.Seed, own)
	}
	var common []uint32
	if own < blended {
		common = commonLuck(s.Seed, len(finish), blended-own)
	}
	length := min(block, len(finish))
	buffer := buffers.Get().(*[]int32)
	defer buffers.Put(buffer)
	if need := len(c.acts) * length; cap(*buffer) < need {
		*buffer = make([]int32, need)
	}
	rows := (*buffer)[:len(c.acts)*length]
	row := func(i int) []int32 { return rows[i*length : (i+1)*length] }
	for first := 0; first < len(finish); first += block {
		end := finish[first:min(first+block, len(finish))]
		for _, i := range order {
			out, d := row(i)[:len(end)], &steps[i]
			ready := out
			if len(pred[i]) == 1 && d.notBefore == 0 && d.gate == nil {
				ready = row(pred[i][0])
			} else {
				for k := range out {
					out[k] = d.notBefore
				}
				for _, p := range pred[i] {
					later(out, row(p))
				}
				if d.gate != nil {
					d.gate.hold(out)
				}
			}
			if common != nil {
				d.blend(out, ready, first/perWord, common[first:first+len(end)], own)
			} else {
				d.draw(out, ready, first/perWord)
			}
			if len(c.succ[i]) == 0 {
				later(end, out)
			}
		}
		if first == 0 && critical != nil {
			ends := slices.DeleteFunc(slices.Clone(order), func(i int) bool { return len(c.succ[i]) > 0 })
			hits := make([]int, len(steps))
			for k := range end {
				trace(steps, pred, rows, length, ends, k, end[k], hits)
			}
			for i, h := range hits {
				critical[i] = float64(h) / float64(len(end))
			}
		}
	}
	return finish
}

// buffers are for the rows of draws: each row is written before it is read, so
// they need not be cleared.
var buffers = sync.Pool{New: func() any { return new([]int32) }}

// decisive leaves out what cannot decide anything in any draw: a predecessor
// that at its latest is finished before another one at its earliest, and the
// activities that only such links lead on from. The draws are the same without
// them; a unit's many short-lead parts cost nothing.
func (c *compiled) decisive(steps []drawn) (order []int, pred [][]int) {
	soonest, latest := make([]int32, len(steps)), make([]int32, len(steps))
	pred = make([][]int, len(steps))
	keep := make([]bool, len(steps))
	for _, i := range c.order {
		d := &steps[i]
		soon, late := d.notBefore, d.notBefore
		for _, p := range c.pred[i] {
			soon, late = max(soon, soonest[p]), max(late, latest[p])
		}
		for _, p := range c.pred[i] {
			if latest[p] >= soon {
				pred[i] = append(pred[i], p)
			}
		}
		if d.gate != nil {
			soon, late = d.gate.open(soon), d.gate.open(late)
		}
		soonest[i], latest[i] = soon+d.low, late+d.high
		keep[i] = len(c.succ[i]) == 0
	}
	for _, i := range slices.Backward(c.order) {
		if !keep[i] {
			continue
		}
		order = append(order, i)
		for _, p := range pred[i] {
			keep[p] = true
		}
	}
	slices.Reverse(order)
	return order, pred
}

// later sets each value of out to the larger of itself and its counterpart in other.
func later(out, other []int32) {
	other = other[:len(out)]
	for k, v := range out {
		out[k] = max(v, other[k])
	}
}

// trace follows one draw back from its end and counts the activities that the
// end waited for. It stops where an activity waited for a gate or a date.
func trace(steps []drawn, pred [][]int, rows []int32, length int, ends []int, k int, end int32, hits []int) {
	i := ends[slices.IndexFunc(ends, func(j int) bool { return rows[j*length+k] == end })]
	for i >= 0 {
		hits[i]++
		ready, from := int32(-1), -1
		for _, p := range pred[i] {
			if f := rows[p*length+k]; f > ready {
				ready, from = f, p
			}
		}
		if ready < steps[i].notBefore || steps[i].gate != nil && steps[i].gate.open(ready) > ready {
			return
		}
		i = from
	}
}

// drawn is an activity made ready for drawing, in thousandths of a day.
type drawn struct {
	low, high int32 // shortest and longest it can take
	notBefore int32
	gate      *drawnGate
	stream    uint64
	added     int32          // on top of each duration
	duration  *[strata]int32 // one for each of strata equally likely draws, shared; nil when certain
	mixed     *[mixes]int32  // the same by a blend of own and common luck
}

type drawnGate struct {
	starts []int32
	free   int32
}

func newGate(g *Gate) *drawnGate {
	d := &drawnGate{free: toMilli(g.Free)}
	for _, s := range g.Starts {
		d.starts = append(d.starts, toMilli(s))
	}
	return d
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

func newDrawn(a *Activity) drawn {
	added := toMilli(a.Added)
	d := drawn{low: max(0, toMilli(a.Days.Low)+added), high: max(0, toMilli(a.Days.High)+added),
		notBefore: toMilli(a.NotBefore)}
	if a.Gate != nil {
		d.gate = newGate(a.Gate)
	}
	return d
}

// prepare finds the table of durations. Added time moves every entry alike, so
// more work makes each single draw longer or leaves it.
func (d *drawn) prepare(a *Activity, seed uint64, own uint32) {
	if d.low == d.high {
		return
	}
	d.stream = streamOf(a.ID, seed)
	d.duration, d.added = durations(a.Days), toMilli(a.Added)
	if own < blended {
		d.mixed = mixedDurations(a.Days, own)
	}
	if toMilli(a.Days.Low)+d.added >= 0 {
		return
	}
	if d.mixed != nil {
		table := new([mixes]int32)
		clip(table[:], d.mixed[:], d.added)
		d.mixed, d.added = table, 0
		return
	}
	table := new([strata]int32)
	clip(table[:], d.duration[:], d.added)
	d.duration, d.added = table, 0
}

// clip adds to each entry of a table what is added, down to nothing.
func clip(to, from []int32, added int32) {
	for k, t := range from {
		to[k] = max(0, t+added)
	}
}

// streamOf is where the luck of an id begins.
func streamOf(id string, seed uint64) uint64 {
	h := fnv.New64a()
	h.Write([]byte(id))
	return mix(h.Sum64() ^ mix(seed))
}

// durations is the table of a span: the middle of each of strata equally likely
// slices. Plans are made again and again of the same few spans, so the tables
// made last are kept.
func durations(s config.Span) *[strata]int32 {
	tables.Lock()
	defer tables.Unlock()
	if t := tables.bySpan[s]; t != nil {
		return t
	}
	t := new([strata]int32)
	low, width := toMilli(s.Low), int64(toMilli(s.High)-toMilli(s.Low))
	for k, q := range betaQuantiles((s.Likely - s.Low) / (s.High - s.Low)) {
		t[k] = low + int32(width*int64(q)>>16)
	}
	if tables.bySpan == nil || len(tables.bySpan) == mostTables {
		tables.bySpan = map[config.Span]*[strata]int32{}
	}
	tables.bySpan[s] = t
	return t
}

// mostTables bounds the memory that the kept tables take, 4 KB each, mixed ones 8 KB.
const mostTables = 256

var tables struct {
	sync.Mutex
	bySpan map[config.Span]*[strata]int32
}

// perWord is how many draws one 64-bit random word serves: ten bits each.
const perWord = 6

// draw puts a drawn duration on top of each start. Six draws at a time use one
// word of the stream, the first of them that numbered word.
func (d *drawn) draw(out, ready []int32, word int) {
	ready = ready[:len(out)]
	if d.duration == nil {
		for k, r := range ready {
			out[k] = r + d.low
		}
		return
	}
	t, added := d.duration, d.added
	at := d.stream + uint64(word)*golden
	for len(out) >= perWord {
		bits := mix(at)
		at += golden
		o, r := (*[perWord]int32)(out), (*[perWord]int32)(ready)
		o[0] = r[0] + added + t[bits%strata]
		o[1] = r[1] + added + t[bits>>10%strata]
		o[2] = r[2] + added + t[bits>>20%strata]
		o[3] = r[3] + added + t[bits>>30%strata]
		o[4] = r[4] + added + t[bits>>40%strata]
		o[5] = r[5] + added + t[bits>>50%strata]
		out, ready = out[perWord:], ready[perWord:]
	}
	bits := mix(at)
	for k, r := range ready {
		out[k] = r + added + t[bits%strata]
		bits >>= 10
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
	at := int32(math.Round(min(max(mode, 0), 1) * shapes * 4096))
	i := min(at/4096, shapes-1)
	t := at - i*4096
	a, b := &tables[i], &tables[i+1]
	out := make([]uint16, strata)
	for k := range out {
		out[k] = uint16((a[k]*(4096-t) + b[k]*t + 2048) / 4096)
	}
	return out
}

// betaTables holds the quantiles for modes 0, 1/16 ... 1, as 0 to 65,535. They
// are constants, worked out when first needed; whole numbers, so that machines
// whose powers differ in the last bit draw the same durations.
var betaTables = sync.OnceValue(func() *[shapes + 1][strata]int32 {
	t := new([shapes + 1][strata]int32)
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
func betaTable(mode float64, out *[strata]int32) {
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
		out[k] = int32(math.Round(x * 65535))
	}
}

// sortDays sorts by the lower and then the upper half of each value's digits,
// which is quicker than comparing: a plan's many draws lie close together.
func sortDays(v []int32) {
	const bits = 11
	lo, hi := slices.Min(v), slices.Max(v)
	if int64(hi)-int64(lo) >= 1<<(2*bits) {
		slices.Sort(v)
		return
	}
	from, to := v, make([]int32, len(v))
	for shift := 0; shift < 2*bits; shift += bits {
		var next [1 << bits]int32 // by digits: where the next such value goes
		for _, x := range from {
			next[(x-lo)>>shift&(1<<bits-1)]++
		}
		at := int32(0)
		for d, n := range next {
			next[d] = at
			at += n
		}
		for _, x := range from {
			d := (x - lo) >> shift & (1<<bits - 1)
			to[next[d]] = x
			next[d]++
		}
		from, to = to, from
	}
}
