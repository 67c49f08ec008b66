package leadtime

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
)

// Limits turns "delivered by the day at nine in ten" into limits that picks
// add up to, for this chassis and body. Each is implied: a unit that breaks
// one misses the day, so what they rule out is ruled out for certain. They do
// not rule out everything that misses it, since where paths merge the whole is
// later than each path alone; TooLate and the plan itself stay the judge. They
// do not depend on the unit's picks, so they can be reused until chassis, body,
// order date or day change.
//
// They hold because option hours move every draw of a step alike. Of each path
// through the network the nine-in-ten length without options, plus the days
// that options add along it, is at most the time left; likewise from the first
// open slot on, and from the arrival of each long-lead part on.
func (p *Plan) Limits(by config.Date) []config.Linear {
	bare := p.job.unit.Clone()
	bare.Picks = nil
	j, err := p.job.with(&bare)
	if err != nil {
		return nil
	}
	c, err := j.net.compile()
	if err != nil {
		return nil
	}
	l := &limiter{job: j, c: c, sim: p.sim, limit: float64(j.line.until(by))}
	l.rows = make([][]int32, len(c.acts))
	l.shifts()
	var roots, parts []int
	for _, i := range c.order {
		if len(c.pred[i]) == 0 {
			roots = append(roots, i)
		}
		if j.steps[i].Source == config.SourceParts {
			parts = append(parts, i)
		}
	}
	for _, i := range roots {
		for _, path := range c.paths(i) {
			l.path(path)
		}
	}
	if g := j.gated; g >= 0 && c.acts[g].Gate != nil {
		gate := c.acts[g].Gate
		for _, path := range c.paths(g) {
			l.afterSlot(path, gate.open(0))
		}
	}
	for _, i := range parts {
		l.parts(i)
	}
	return l.out
}

// mostPaths bounds the work on a network with very many paths; those left out
// only make the limits say less.
const mostPaths = 64

// paths lists ways from an activity to an end of the network.
func (c *compiled) paths(from int) [][]int {
	var out [][]int
	var walk func(path []int)
	walk = func(path []int) {
		if len(out) == mostPaths {
			return
		}
		next := c.succ[path[len(path)-1]]
		if len(next) == 0 {
			out = append(out, slices.Clone(path))
		}
		for _, i := range next {
			walk(append(path, i))
		}
	}
	walk([]int{from})
	return out
}

type limiter struct {
	job   *job
	c     *compiled
	sim   Simulation
	limit float64
	rows  [][]int32            // durations of each activity by draw, when asked for
	shift []map[string]float64 // by activity: days an option adds
	out   []config.Linear
}

// shifts works out what each option adds to each step.
func (l *limiter) shifts() {
	l.shift = make([]map[string]float64, len(l.c.acts))
	for i := range l.shift {
		l.shift[i] = map[string]float64{}
	}
	all := *l.job
	all.steps = slices.Clone(l.job.steps)
	all.net.Activities = slices.Clone(l.job.net.Activities)
	for i := range all.steps {
		all.steps[i].Added = nil
	}
	for k := range all.cat.Options {
		all.load(all.cat.Options[k].ID, "", 1, all.cat.Options[k].Work)
	}
	for i := range all.steps {
		for _, a := range all.steps[i].Added {
			l.shift[i][a.ID] += a.Days
		}
	}
}

// row is how long the activity takes in each draw without options. An
// activity that could be clipped at zero is taken to take no time and to gain
// none: what it truly takes is never less.
func (l *limiter) row(i int) []int32 {
	if l.rows[i] == nil {
		a := l.c.acts[i]
		if a.Days.Low+a.Added < 0 {
			a = Activity{ID: a.ID}
			clear(l.shift[i])
		}
		l.rows[i] = draws(&a, l.sim)
	}
	return l.rows[i]
}

// draws are the durations of one activity alone.
func draws(a *Activity, sim Simulation) []int32 {
	n := Network{Activities: []Activity{{ID: a.ID, Days: a.Days, Added: a.Added}}}
	c, _ := n.compile() // the activity stands in a network that compiles
	return c.play(sim, nil)
}

// sum adds up a path draw by draw.
func (l *limiter) sum(path []int) []int32 {
	total := slices.Clone(l.row(path[0]))
	for _, i := range path[1:] {
		for k, d := range l.row(i) {
			total[k] += d
		}
	}
	return total
}

func (l *limiter) per(path []int) map[string]float64 {
	per := map[string]float64{}
	for _, i := range path {
		for id, days := range l.shift[i] {
			per[id] += days
		}
	}
	return per
}

func nineInTen(total []int32) float64 {
	o := Odds{finish: total}
	sortDays(o.finish)
	return o.At(.9)
}

func (l *limiter) path(path []int) {
	l.add(nineInTen(l.sum(path)), l.per(path), path, "")
}

func (l *limiter) afterSlot(path []int, slot float64) {
	l.add(slot+nineInTen(l.sum(path)), l.per(path), path, "")
}

// way is a path from a part's arrival to the end, with what comes before its
// order.
type way struct {
	path []int
	row  []int32            // its length by draw
	per  map[string]float64 // what options add along it
}

// parts bounds each option that has a long-lead part: what comes before its
// order, its arrival, and the longest way from there to the end. Other options
// count only with what they add on that way, which holds without the part too.
func (l *limiter) parts(i int) {
	var before []int // the longest way in, by expected time
	for at := i; len(l.c.pred[at]) > 0; {
		at = slices.MaxFunc(l.c.pred[at], func(a, b int) int {
			return cmp.Compare(Expected(l.c.acts[a].Span()), Expected(l.c.acts[b].Span()))
		})
		before = append(before, at)
	}
	ways := map[string]*way{} // by the steps that wait
	body := l.job.cat.BodyOf(l.job.unit)
	for k := range l.job.cat.Options {
		o := &l.job.cat.Options[k]
		if o.Parts == nil || o.MaxQty > 1 { // two of it would count the wait twice
			continue
		}
		named := waitsFor(l.job.cat.Plant.Activities, o, body)
		key := strings.Join(named, " ")
		if ways[key] == nil {
			ways[key] = l.way(before, i, named)
		}
		w := ways[key]
		total := draws(&Activity{ID: l.job.steps[i].ID + ":" + o.ID, Days: *o.Parts}, l.sim)
		for n := range w.row {
			total[n] += w.row[n]
		}
		own := make(map[string]float64, len(w.per)+1)
		for id, days := range w.per {
			own[id] = days
		}
		own[o.ID] += nineInTen(total)
		l.add(0, own, w.path, o.ID)
	}
}

// way is the longest one on from the parts step, or from any of the named steps
// that wait for the part in its place.
func (l *limiter) way(before []int, parts int, named []string) *way {
	var paths [][]int
	if named == nil {
		for _, path := range l.c.paths(parts) {
			paths = append(paths, path[1:])
		}
	}
	for k := range l.job.steps {
		if slices.Contains(named, l.job.steps[k].ID) {
			paths = append(paths, l.c.paths(k)...)
		}
	}
	best, longest := new(way), -1.0
	for _, path := range paths {
		path = append(slices.Clone(before), path...)
		if len(path) == 0 {
			continue
		}
		row := l.sum(path)
		if length := nineInTen(slices.Clone(row)); length > longest {
			best.path, best.row, longest = path, row, length
		}
	}
	best.per = l.per(best.path)
	return best
}

// add keeps a limit that options could break.
func (l *limiter) add(base float64, per map[string]float64, path []int, part string) {
	most := base
	for id, days := range per {
		if days == 0 {
			delete(per, id)
			continue
		}
		if o := l.job.cat.OptionByID(id); days > 0 {
			most += days * float64(max(o.MaxQty, 1))
		}
	}
	// Each step is rounded to a thousandth of a day; the limit must not bite
	// because of that.
	slack := float64(len(path)+2) / milli
	if most-slack <= l.limit {
		return
	}
	label := "Days on the way through " + l.job.steps[path[0]].Label
	if part != "" {
		label = fmt.Sprintf("Days until %s has come and is fitted", l.job.cat.LabelOf(part))
	}
	l.out = append(l.out, config.Linear{Code: "time.nine-in-ten", Label: label, Unit: quantity.Day,
		Base: round(base - slack), Per: per, Limit: l.limit})
}
