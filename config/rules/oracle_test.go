package rules

import (
	"fmt"
	"math/rand"

	"boxwright/config"
)

// The oracle tries every unit of a small catalogue and reads rules straight
// from their meaning. It shares no code with the engine.

// world is a small random catalogue with limits, and all its ids.
type world struct {
	cat    *config.Catalogue
	limits map[[2]string][]config.Linear
	valid  []full // every unit that keeps rules and groups
}

// full is one complete unit.
type full struct {
	chassis, body string
	options       map[string]bool
}

func (f full) has(id string) bool { return f.chassis == id || f.body == id || f.options[id] }

func holds(cat *config.Catalogue, f full, c *config.Cond) bool {
	count := func(of []config.Cond) int {
		n := 0
		for i := range of {
			if holds(cat, f, &of[i]) {
				n++
			}
		}
		return n
	}
	switch {
	case c.Pick != "":
		return f.has(c.Pick)
	case c.All != nil:
		return count(c.All) == len(c.All)
	case c.Any != nil:
		return count(c.Any) > 0
	case c.Not != nil:
		return !holds(cat, f, c.Not)
	case c.AtLeast != nil:
		return count(c.AtLeast.Of) >= c.AtLeast.N
	case c.AtMost != nil:
		return count(c.AtMost.Of) <= c.AtMost.N
	case c.Chassis != nil:
		for i := range cat.Chassis {
			if cat.Chassis[i].ID == f.chassis {
				text, number, _ := cat.Chassis[i].Attr(c.Chassis.Attr)
				return c.Chassis.Holds(text, number)
			}
		}
	case c.Body != nil:
		for i := range cat.Bodies {
			if cat.Bodies[i].ID == f.body {
				text, number, _ := cat.Bodies[i].Attr(c.Body.Attr)
				return c.Body.Holds(text, number)
			}
		}
	}
	return false
}

func ruleHolds(cat *config.Catalogue, f full, r *config.Rule) bool {
	return r.If != nil && !holds(cat, f, r.If) || holds(cat, f, &r.Then)
}

// groupsHold checks how many of each group the unit has.
func groupsHold(cat *config.Catalogue, f full) bool {
	for _, g := range cat.Groups {
		n := 0
		for _, o := range cat.Options {
			if o.Group == g.ID && f.options[o.ID] {
				n++
			}
		}
		if g.Choose != config.ChooseAny && n > 1 || g.Choose == config.ChooseOne && n == 0 {
			return false
		}
	}
	return true
}

// enumerate fills valid.
func (w *world) enumerate() {
	w.valid = nil
	for _, ch := range w.cat.Chassis {
		for _, b := range w.cat.Bodies {
			for m := range 1 << len(w.cat.Options) {
				f := full{ch.ID, b.ID, map[string]bool{}}
				for i, o := range w.cat.Options {
					if m>>i&1 == 1 {
						f.options[o.ID] = true
					}
				}
				if !groupsHold(w.cat, f) {
					continue
				}
				ok := true
				for i := range w.cat.Rules {
					ok = ok && ruleHolds(w.cat, f, &w.cat.Rules[i])
				}
				if ok {
					w.valid = append(w.valid, f)
				}
			}
		}
	}
}

// keeps reports whether a full unit keeps the limits of its own chassis and
// body, with the quantities of the unit it completes.
func (w *world) keeps(f full, u *config.Unit) bool {
	for _, l := range w.limits[[2]string{f.chassis, f.body}] {
		if sum := total(l, f, u); sum > l.Limit+1e-9 {
			return false
		}
	}
	return true
}

func total(l config.Linear, f full, u *config.Unit) float64 {
	sum := l.Base
	for id, per := range l.Per {
		if f.has(id) {
			sum += per * float64(max(u.Qty(id), 1))
		}
	}
	return sum
}

// possible reports whether some valid unit has all of with, none of without.
func (w *world) possible(u *config.Unit, with, without []string) bool {
	for _, f := range w.valid {
		ok := w.keeps(f, u)
		for _, id := range with {
			ok = ok && f.has(id)
		}
		for _, id := range without {
			ok = ok && !f.has(id)
		}
		if ok {
			return true
		}
	}
	return false
}

// deliberate picks of a unit.
func deliberate(u *config.Unit) []string {
	out := []string{u.Chassis, u.Body}
	for _, p := range u.Picks {
		if !p.Filled {
			out = append(out, p.Option)
		}
	}
	return out
}

// rivals of an id: the ids that choosing it replaces, itself among them.
func (w *world) rivals(id string) map[string]bool {
	out := map[string]bool{id: true}
	for i := range w.cat.Chassis {
		if w.cat.Chassis[i].ID == id {
			for j := range w.cat.Chassis {
				out[w.cat.Chassis[j].ID] = true
			}
		}
	}
	for i := range w.cat.Bodies {
		if w.cat.Bodies[i].ID == id {
			for j := range w.cat.Bodies {
				out[w.cat.Bodies[j].ID] = true
			}
		}
	}
	for _, o := range w.cat.Options {
		for _, g := range w.cat.Groups {
			if o.ID == id && o.Group == g.ID && g.Choose != config.ChooseAny {
				for _, p := range w.cat.Options {
					if p.Group == g.ID {
						out[p.ID] = true
					}
				}
			}
		}
	}
	return out
}

// state of an id, for a unit whose picks can stand together.
func (w *world) state(u *config.Unit, id string) State {
	var rest []string
	rivals := w.rivals(id)
	for _, p := range deliberate(u) {
		if !rivals[p] {
			rest = append(rest, p)
		}
	}
	switch {
	case !w.possible(u, append([]string{id}, rest...), nil):
		return RuledOut
	case !w.possible(u, rest, []string{id}):
		return Forced
	}
	return Open
}

// makeWorld draws a catalogue of at most 3 chassis, 2 bodies and 9 options.
func makeWorld(r *rand.Rand) *world {
	cat := &config.Catalogue{Format: config.CatalogueFormat, ID: "small", Title: "Small invented catalogue",
		Edition: "1"}
	types := []string{"I", "II", "III"}
	for i := range 1 + r.Intn(3) {
		cat.Chassis = append(cat.Chassis, config.Chassis{ID: fmt.Sprintf("chassis-%d", i), Type: types[r.Intn(3)]})
		cat.Chassis[i].WheelbaseIn = 130 + 10*1
		cat.Chassis[i].GVWRLb = 10000
		if r.Intn(2) == 0 {
			cat.Chassis[i].GVWRLb = 14000
		}
	}
	for i := range 1 + r.Intn(2) {
		cat.Bodies = append(cat.Bodies, config.Body{ID: fmt.Sprintf("body-%d", i), Kind: "module"})
		cat.Bodies[i].LengthIn = 120
		if r.Intn(2) == 0 {
			cat.Bodies[i].LengthIn = 150
		}
	}
	choose := []string{config.ChooseOne, config.ChooseAtMostOne, config.ChooseAny}
	for g := range 2 + r.Intn(2) {
		id := fmt.Sprintf("group-%d", g)
		cat.Groups = append(cat.Groups, config.Group{ID: id, Choose: choose[r.Intn(3)]})
		for i := range 1 + r.Intn(3) {
			cat.Options = append(cat.Options, config.Option{ID: fmt.Sprintf("option-%d-%d", g, i), Group: id, MaxQty: 3,
				Standard: r.Intn(3) == 0})
		}
	}
	w := &world{cat: cat}
	for i := range r.Intn(6) {
		rule := config.Rule{ID: fmt.Sprintf("rule-%d", i), Kind: config.KindPlant, Reason: fmt.Sprintf("reason %d", i),
			Then: w.cond(r, 2)}
		if r.Intn(3) > 0 {
			c := w.cond(r, 2)
			rule.If = &c
		}
		cat.Rules = append(cat.Rules, rule)
	}
	w.redrawLimits(r)
	w.enumerate()
	return w
}

func (w *world) anyID(r *rand.Rand) string {
	n := r.Intn(len(w.cat.Chassis) + len(w.cat.Bodies) + 2*len(w.cat.Options))
	if n < len(w.cat.Chassis) {
		return w.cat.Chassis[n].ID
	}
	if n -= len(w.cat.Chassis); n < len(w.cat.Bodies) {
		return w.cat.Bodies[n].ID
	}
	return w.cat.Options[(n-len(w.cat.Bodies))%len(w.cat.Options)].ID
}

// cond draws a condition of every kind, a pick most often.
func (w *world) cond(r *rand.Rand, depth int) config.Cond {
	some := func() []config.Cond {
		out := []config.Cond{}
		for range 1 + r.Intn(4) {
			out = append(out, w.cond(r, depth-1))
		}
		return out
	}
	if depth == 0 || r.Intn(3) == 0 {
		return config.Cond{Pick: w.anyID(r)}
	}
	switch r.Intn(8) {
	case 0:
		return config.Cond{All: some()}
	case 1, 2:
		return config.Cond{Any: some()}
	case 3:
		c := w.cond(r, depth-1)
		return config.Cond{Not: &c}
	case 4:
		of := some()
		return config.Cond{AtLeast: &config.Count{N: r.Intn(len(of) + 1), Of: of}}
	case 5:
		of := some()
		return config.Cond{AtMost: &config.Count{N: r.Intn(len(of) + 1), Of: of}}
	case 6:
		return config.Cond{Chassis: &config.Test{Attr: "gvwr_lb", Op: ">", Number: 12000}}
	}
	return config.Cond{Body: &config.Test{Attr: "length_in", Op: "<=", Number: 130}}
}

// redrawLimits draws other limits for every chassis and body.
func (w *world) redrawLimits(r *rand.Rand) {
	w.limits = map[[2]string][]config.Linear{}
	n := r.Intn(3)
	for _, ch := range w.cat.Chassis {
		for _, b := range w.cat.Bodies {
			var list []config.Linear
			for i := range n {
				l := config.Linear{Code: fmt.Sprintf("limit-%d", i), Label: "Limit", Unit: "lb",
					Base: float64(r.Intn(10)), Per: map[string]float64{}, Limit: float64(5 + r.Intn(40))}
				for _, o := range w.cat.Options {
					if r.Intn(3) > 0 {
						l.Per[o.ID] = float64(r.Intn(100)-20) / 4
					}
				}
				list = append(list, l)
			}
			w.limits[[2]string{ch.ID, b.ID}] = list
		}
	}
}

func (w *world) handLimits(key string) *Limits {
	return &Limits{Key: key, For: func(c, b string) []config.Linear { return w.limits[[2]string{c, b}] }}
}

// drawUnit draws picks; consistent ones are likelier when few.
func (w *world) drawUnit(r *rand.Rand) config.Unit {
	u := config.Unit{Chassis: w.cat.Chassis[r.Intn(len(w.cat.Chassis))].ID,
		Body: w.cat.Bodies[r.Intn(len(w.cat.Bodies))].ID}
	for range r.Intn(4) {
		w.click(r, &u)
	}
	return u
}

// click adds, replaces or drops a pick.
func (w *world) click(r *rand.Rand, u *config.Unit) {
	id := w.cat.Options[r.Intn(len(w.cat.Options))].ID
	switch r.Intn(6) {
	case 0:
		u.Drop(id)
	case 1:
		u.Chassis = w.cat.Chassis[r.Intn(len(w.cat.Chassis))].ID
	default:
		u.Set(config.Pick{Option: id, Qty: 1 + r.Intn(2), Filled: r.Intn(4) == 0})
	}
}
