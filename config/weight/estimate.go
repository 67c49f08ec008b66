package weight

import "math"

// likely is how many standard deviations hold the middle 95 in 100 of a normal
// distribution: every tolerance is read as the half width of that range, and
// every likely range is given with the same odds.
const likely = 1.959963984540054

// estimate is how well the masses are known, and together with what: pieces of
// one thing err together, different things independently. Each thing has one
// error in units of its own standard deviation; tickets add rows that take
// variance away.
type estimate struct {
	keys map[string]int
	// taken holds the rows of inverse(chol(S)) A of the least-squares
	// correction; the variance of c is |c|^2 - sum (row . c)^2.
	taken [][]float64
	errs  []float64 // by which tickets moved each thing, in standard deviations
}

func newEstimate(items []Item) *estimate {
	e := &estimate{keys: make(map[string]int, len(items))}
	e.know(items)
	return e
}

// know gives each item the place of its thing among the errors.
func (e *estimate) know(items []Item) {
	for i := range items {
		name := thing(&items[i])
		k, ok := e.keys[name]
		if !ok {
			k = len(e.keys)
			e.keys[name] = k
		}
		items[i].key = k
	}
}

func thing(it *Item) string { return string(it.Kind) + "/" + it.ID }

// spread is the gradient over items the estimate knows, in units of the things'
// standard deviations.
func (e *estimate) spread(items []Item, perLb func(*Item) float64) []float64 {
	c := make([]float64, len(e.keys))
	for i := range items {
		c[items[i].key] += perLb(&items[i]) * items[i].err
	}
	return c
}

// sigma is the standard deviation of a sum with the given weight per pound.
func (e *estimate) sigma(items []Item, perLb func(*Item) float64) float64 {
	c := e.spread(items, perLb)
	v := dot(c, c)
	for _, row := range e.taken {
		d := dot(row, c)
		v -= d * d
	}
	return math.Sqrt(math.Max(v, 0))
}

// chanceAbove is the probability that a normal quantity exceeds limit.
//
// Source: normal distribution function by the complementary error function.
func chanceAbove(mean, sd, limit float64) float64 {
	if !(sd > 0) {
		if mean > limit {
			return 1
		}
		return 0
	}
	return math.Erfc((limit-mean)/(sd*math.Sqrt2)) / 2
}

func dot(a, b []float64) float64 {
	s := 0.0
	for i := range min(len(a), len(b)) {
		s += a[i] * b[i]
	}
	return s
}
