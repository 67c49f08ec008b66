package leadtime

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"boxwright/config"
)

// Network is a set of activities, each of which begins when those named in
// its After are finished. It knows nothing of plants or vehicles; times count
// in days from zero.
type Network struct {
	Activities []Activity
}

// Activity is one step of a network.
type Activity struct {
	ID    string
	After []string    // ids of activities that must be finished first
	Days  config.Span // three-point duration
	// Added is time that is certain: it moves all three points of Days, and
	// never below zero.
	Added     float64
	NotBefore float64 // earliest start, 0 for none
	Gate      *Gate   // set times at which it can start, nil for any
}

// Gate limits when an activity can start: at one of Starts, or at any time
// from Free on.
type Gate struct {
	Starts []float64 // ascending, all below Free
	Free   float64
}

// open is the first time at or after ready at which the gate lets one start.
func (g *Gate) open(ready float64) float64 {
	for _, s := range g.Starts {
		if ready <= s+tiny {
			return s
		}
	}
	return max(ready, g.Free)
}

// latest is the last time at or before t at which the gate lets one start.
func (g *Gate) latest(t float64) float64 {
	if t >= g.Free {
		return t
	}
	for _, s := range slices.Backward(g.Starts) {
		if s <= t+tiny {
			return s
		}
	}
	return t
}

// tiny is under a second of a working day: sums of durations that differ by
// less are the same moment.
const tiny = 1e-9

// Span is the duration with the added time in it.
func (a *Activity) Span() config.Span {
	return config.Span{Low: max(0, a.Days.Low+a.Added), Likely: max(0, a.Days.Likely+a.Added),
		High: max(0, a.Days.High+a.Added)}
}

// Expected is the mean of a three-point duration.
//
// Source: PERT, te = (a + 4m + b) / 6.
// Units: days in, days out.
// Valid: 0 <= low <= likely <= high <= 1e6; otherwise 0.
// Example: 4, 8 and 13 days give 8.17 days.
func Expected(s config.Span) float64 {
	if !threePoints(s) {
		return 0
	}
	return (s.Low + 4*s.Likely + s.High) / 6
}

func threePoints(s config.Span) bool {
	return 0 <= s.Low && s.Low <= s.Likely && s.Likely <= s.High && s.High <= 1e6
}

// Variance of a three-point duration.
//
// Source: PERT, ((b - a) / 6) squared.
// Units: days in, square days out.
// Valid: 0 <= low <= likely <= high <= 1e6; otherwise 0.
// Example: 4, 8 and 13 days give 2.25 square days.
func Variance(s config.Span) float64 {
	if !threePoints(s) {
		return 0
	}
	sixth := (s.High - s.Low) / 6
	return sixth * sixth
}

// Timing is when one activity runs at expected durations, in days from zero.
type Timing struct {
	Expected, Variance float64
	ES, EF             float64 // earliest start and finish
	LS, LF             float64 // latest start and finish that keep the end
	Float              float64 // LS - ES
	Wait               float64 // days it stands ready but may not start yet
	Critical           bool    // its end cannot be later; a gate can leave no float without that
}

// Solution is a network worked through at expected durations.
type Solution struct {
	Days     float64  // expected duration of the whole
	Variance float64  // of the activities along the critical path
	Timings  []Timing // in the order of the network's activities
	Path     []string // the critical path; of several, the one with the greatest variance
}

// At is the number of days within which the whole is done with the given
// chance, when only the critical path is looked at and its length taken as normally
// distributed. Where paths merge that is too hopeful: see Odds.
func (s *Solution) At(chance float64) float64 {
	return s.Days + NormalDeviate(chance)*math.Sqrt(s.Variance)
}

// compiled is a checked network with names resolved.
type compiled struct {
	acts  []Activity
	order []int   // positions such that predecessors come first
	pred  [][]int // by position
	succ  [][]int
}

func (n *Network) compile() (*compiled, error) {
	var ps config.Problems
	add := func(code string, i int, text string, args ...any) {
		ps = append(ps, config.Problem{Code: "time." + code,
			Where: fmt.Sprintf("activities[%d] %q", i, n.Activities[i].ID), Text: fmt.Sprintf(text, args...)})
	}
	if len(n.Activities) == 0 {
		return nil, config.Problems{{Code: "time.empty", Where: "activities",
			Text: "there are none; a plan needs at least one step"}}
	}
	at := make(map[string]int, len(n.Activities))
	for i := range n.Activities {
		if j, twice := at[n.Activities[i].ID]; twice {
			add("id", i, "this id already belongs to activities[%d]", j)
		}
		at[n.Activities[i].ID] = i
	}
	c := &compiled{acts: n.Activities, pred: make([][]int, len(n.Activities)), succ: make([][]int, len(n.Activities))}
	total := 0.0
	for i := range n.Activities {
		a := &n.Activities[i]
		d := a.Days
		total += d.High + math.Abs(a.Added)
		if !(0 <= d.Low && d.Low <= d.Likely && d.Likely <= d.High && d.High <= maxDays) {
			add("span", i, "a duration needs 0 <= low <= likely <= high <= %d days, not %v, %v, %v", maxDays, d.Low,
				d.Likely, d.High)
		}
		if !(math.Abs(a.Added) <= maxDays) {
			add("span", i, "%v added days are outside %d to %d", a.Added, -maxDays, maxDays)
		}
		if !(a.NotBefore >= 0 && a.NotBefore <= maxTotal) {
			add("span", i, "an earliest start of %v days is outside 0 to %d", a.NotBefore, maxTotal)
		}
		if g := a.Gate; g != nil && !(slices.IsSorted(g.Starts) && g.Free >= 0 && g.Free <= never &&
			(len(g.Starts) == 0 || g.Starts[0] >= 0 && g.Starts[len(g.Starts)-1] < g.Free)) {
			add("gate", i, "a gate's starts must ascend from 0 and lie before its free time")
		}
		for _, before := range a.After {
			j, ok := at[before]
			if !ok {
				add("unknown-id", i, "comes after %q, which is not in the network", before)
				continue
			}
			if !slices.Contains(c.pred[i], j) {
				c.pred[i] = append(c.pred[i], j)
				c.succ[j] = append(c.succ[j], i)
			}
		}
	}
	if len(ps) == 0 && total > maxTotal {
		ps = config.Problems{{Code: "time.too-long", Where: "activities",
			Text: fmt.Sprintf("the longest durations sum to %.0f days; at most %d are worked through", total,
				maxTotal)}}
	}
	if len(ps) > 0 {
		return nil, ps
	}
	if circle := c.sort(); len(circle) > 0 {
		names := make([]string, 0, len(circle)+1)
		for _, i := range append(circle, circle[0]) {
			names = append(names, n.Activities[i].ID)
		}
		add("circle", circle[0], "waits for itself: %s; take one of these links out", strings.Join(names, " after "))
		return nil, ps
	}
	return c, nil
}

// Bounds of one duration and of all together, and a time after every end: sums
// of them in thousandths of a day stay exact.
const (
	maxDays  = 2_000
	maxTotal = 20_000
	never    = 200_000
)

// sort orders the activities, first come first served, and returns a circle
// when there is one.
func (c *compiled) sort() []int {
	left := make([]int, len(c.acts))
	for i := range c.acts {
		if left[i] = len(c.pred[i]); left[i] == 0 {
			c.order = append(c.order, i)
		}
	}
	for k := 0; k < len(c.order); k++ {
		for _, j := range c.succ[c.order[k]] {
			if left[j]--; left[j] == 0 {
				c.order = append(c.order, j)
			}
		}
	}
	if len(c.order) == len(c.acts) {
		return nil
	}
	// Every activity left over has a predecessor left over, so walking back
	// must come round.
	i := slices.IndexFunc(left, func(n int) bool { return n > 0 })
	seen := map[int]int{}
	var walk []int
	for {
		if k, been := seen[i]; been {
			return walk[k:]
		}
		seen[i] = len(walk)
		walk = append(walk, i)
		i = c.pred[i][slices.IndexFunc(c.pred[i], func(p int) bool { return left[p] > 0 })]
	}
}

func (c *compiled) solve() *Solution {
	s := &Solution{Timings: make([]Timing, len(c.acts))}
	t := s.Timings
	// from and spread follow the critical path back: which predecessor an
	// activity waited for, and the variance gathered up to its end.
	from, spread := make([]int, len(c.acts)), make([]float64, len(c.acts))
	last := -1
	for _, i := range c.order {
		a := &c.acts[i]
		span := a.Span()
		t[i].Expected, t[i].Variance = Expected(span), Variance(span)
		ready := 0.0
		for _, p := range c.pred[i] {
			ready = max(ready, t[p].EF)
		}
		t[i].ES = max(ready, a.NotBefore)
		if a.Gate != nil {
			t[i].ES = a.Gate.open(t[i].ES)
		}
		t[i].Wait = t[i].ES - ready
		t[i].EF = t[i].ES + t[i].Expected
		from[i], spread[i] = -1, 0
		for _, p := range c.pred[i] {
			if t[p].EF >= t[i].ES-tiny && (from[i] < 0 || spread[p] > spread[i]) {
				from[i], spread[i] = p, spread[p]
			}
		}
		spread[i] += t[i].Variance
		s.Days = max(s.Days, t[i].EF)
	}
	for _, i := range slices.Backward(c.order) {
		a := &c.acts[i]
		t[i].LF = s.Days
		for _, j := range c.succ[i] {
			t[i].LF = min(t[i].LF, t[j].LS)
		}
		t[i].LS = t[i].LF - t[i].Expected
		t[i].Critical = t[i].LF-t[i].EF < tiny
		if a.Gate != nil {
			t[i].LS = max(t[i].ES, a.Gate.latest(t[i].LS))
			t[i].LF = t[i].LS + t[i].Expected
		}
		t[i].Float = t[i].LS - t[i].ES
		if t[i].Float < tiny {
			t[i].Float = 0
		}
	}
	for i := range t {
		if t[i].EF >= s.Days-tiny && (last < 0 || spread[i] > spread[last]) {
			last = i
		}
	}
	s.Variance = spread[last]
	for i := last; i >= 0; i = from[i] {
		s.Path = append(s.Path, c.acts[i].ID)
	}
	slices.Reverse(s.Path)
	return s
}
