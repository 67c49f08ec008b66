package config

import (
	"fmt"
	"maps"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
)

// ValidID reports whether x is 1 to 48 small letters, digits and hyphens and
// does not begin with a hyphen.
func ValidID(x string) bool {
	if x == "" || len(x) > 48 || x[0] == '-' {
		return false
	}
	for i := range len(x) {
		c := x[i]
		if c != '-' && (c < '0' || c > '9') && (c < 'a' || c > 'z') {
			return false
		}
	}
	return true
}

// checker walks a catalogue and gathers problems; its index is filled on the
// way and becomes the catalogue's.
type checker struct {
	c   *Catalogue
	ps  Problems
	all map[string]place // every id of a chassis, body or option, and where
}

// place is where something stands in the file.
type place struct {
	list string
	i    int
	id   string
}

func (p place) String() string { return at(p.list, p.i, p.id) }

func (k *checker) add(code, where, format string, args ...any) {
	k.ps = append(k.ps, Problem{"catalogue." + code, where, fmt.Sprintf(format, args...)})
}

func (c *Catalogue) check() Problems {
	k := &checker{c: c, all: map[string]place{}}
	if c.Format != CatalogueFormat {
		k.add("format", "format", "%s", formatFault(c.Format))
		return k.ps
	}
	if len(c.Options) > MaxOptions || len(c.Rules) > MaxRules {
		k.add("too-large", "the catalogue", "has %d options and %d rules; the most is %d and %d", len(c.Options),
			len(c.Rules), MaxOptions, MaxRules)
		return k.ps
	}
	if c.ID == "" || c.Title == "" || c.Edition == "" {
		k.add("missing", "id, title, edition", "each needs a text")
	}
	if len(c.Chassis) == 0 || len(c.Bodies) == 0 {
		k.add("missing", "chassis, bodies", "a catalogue offers at least one of each")
	}
	chapters := ids(k, "chapters", c.Chapters, func(x *Chapter) string { return x.ID }, false)
	k.index()
	for i := range c.Groups {
		g := &c.Groups[i]
		where := at("groups", i, g.ID)
		if _, ok := chapters[g.Chapter]; !ok {
			k.add("unknown-id", where+" chapter", "%q is not a chapter", g.Chapter)
		}
		if !slices.Contains([]string{ChooseOne, ChooseAtMostOne, ChooseAny}, g.Choose) {
			k.add("value", where+" choose", `%q is not "one", "at-most-one" or "any"`, g.Choose)
		}
	}
	for i := range c.Chassis {
		k.chassis(i)
	}
	for i := range c.Bodies {
		k.body(i)
	}
	for i := range c.Options {
		k.option(i)
	}
	for i := range c.Groups {
		if len(c.index.members[c.Groups[i].ID]) == 0 {
			k.add("empty-group", at("groups", i, c.Groups[i].ID), "has no options")
		}
	}
	k.duties()
	ids(k, "rules", c.Rules, func(x *Rule) string { return x.ID }, false)
	for i := range c.Rules {
		k.rule(i)
	}
	for i, e := range c.Equipment {
		for _, v := range []float64{float64(e.MassLb), float64(e.LengthIn), float64(e.WidthIn), float64(e.HeightIn)} {
			if !(v > 0 && v < 1e5) {
				k.add("range", at("equipment", i, e.ID), "mass and three sizes must each be above zero")
				break
			}
		}
	}
	k.traits()
	k.asked()
	k.stowage()
	k.guide()
	k.plant()
	k.usual()
	k.signers()
	return k.ps
}

// index finds things by id from now on.
func (k *checker) index() {
	c := k.c
	c.index = index{
		stations:  ids(k, "plant.stations", c.Plant.Stations, func(x *PlantStation) string { return x.ID }, false),
		chassis:   ids(k, "chassis", c.Chassis, func(x *Chassis) string { return x.ID }, true),
		bodies:    ids(k, "bodies", c.Bodies, func(x *Body) string { return x.ID }, true),
		groups:    ids(k, "groups", c.Groups, func(x *Group) string { return x.ID }, false),
		options:   ids(k, "options", c.Options, func(x *Option) string { return x.ID }, true),
		equipment: ids(k, "equipment", c.Equipment, func(x *Equipment) string { return x.ID }, false),
		members:   map[string][]int{},
		traits:    map[string][]int{},
	}
	for i := range c.Traits {
		for _, id := range c.Traits[i].Of {
			c.index.traits[id] = append(c.index.traits[id], i)
		}
	}
	for i := range c.Options {
		group := c.Options[i].Group
		c.index.members[group] = append(c.index.members[group], i)
	}
}

// usual checks what a new quote begins with.
func (k *checker) usual() {
	if s := k.c.Start; s != "" && k.c.ChassisByID(s) == nil {
		k.add("unknown-id", "start", "%q is not a chassis", s)
	}
	for i := range k.c.Chassis {
		if b := k.c.Chassis[i].UsualBody; b != "" && k.c.BodyByID(b) == nil {
			k.add("unknown-id", at("chassis", i, k.c.Chassis[i].ID)+" usual_body", "%q is not a body", b)
		}
	}
}

func at(list string, i int, id string) string { return fmt.Sprintf("%s[%d] %q", list, i, id) }

// ids checks the ids of a list and indexes them; shared ids live in the one
// name space that rules pick from.
func ids[T any](k *checker, list string, items []T, id func(*T) string, shared bool) map[string]int {
	m := make(map[string]int, len(items))
	for i := range items {
		x := id(&items[i])
		where := place{list, i, x}
		if !ValidID(x) {
			k.add("id", where.String(), "an id is 1 to 48 small letters, digits and hyphens, beginning with a letter "+
				"or digit")
		}
		if _, twice := m[x]; twice {
			k.add("id", where.String(), "this id stands twice in %s", list)
		}
		m[x] = i
		if shared {
			if other, taken := k.all[x]; taken {
				k.add("id", where.String(), "this id is already used by %s", other)
			}
			k.all[x] = where
		}
	}
	return m
}

// between checks named numbers that a computation divides by or builds on.
func (k *checker) between(where string, lo, hi float64, named map[string]float64) {
	for _, n := range slices.Sorted(maps.Keys(named)) {
		if v := named[n]; !(v >= lo && v <= hi) {
			k.outside(where+" "+n, v, lo, hi)
		}
	}
}

func (k *checker) outside(where string, v, least, most float64) {
	plain := func(v float64) string {
		if math.Abs(v) >= 1e15 {
			return strconv.FormatFloat(v, 'g', -1, 64) // hundreds of digits would push the limits out of the sentence
		}
		return strconv.FormatFloat(v, 'f', -1, 64)
	}
	k.add("range", where, "%s is outside %s to %s", plain(v), plain(least), plain(most))
}

func (k *checker) oneOf(where, value string, allowed ...string) {
	if !slices.Contains(allowed, value) {
		words := strings.Join(allowed, ", ")
		if left, ok := strings.CutPrefix(words, ", "); ok {
			words = left + "; it may be left out too"
		}
		k.add("value", where, "%q is not one of %s", value, words)
	}
}

func (k *checker) chassis(i int) {
	c := &k.c.Chassis[i]
	w := at("chassis", i, c.ID)
	k.attributes(w, chassisAttributes, reflect.ValueOf(c).Elem())
	k.attributes(w+" front_tires", tiresAttributes, reflect.ValueOf(c.FrontTires))
	k.attributes(w+" rear_tires", tiresAttributes, reflect.ValueOf(c.RearTires))
	for _, n := range []int{c.FrontTires.Count, c.RearTires.Count} {
		if n != 2 && n != 4 {
			k.add("value", w+" tires count", "%d is not 2 or 4", n)
		}
	}
	k.load(w, &c.Load)
	k.supply(w, &c.Supply)
	k.span(w+" arrive", c.Arrive)
	k.work(w, c.Work)
}

func (k *checker) body(i int) {
	b := &k.c.Bodies[i]
	w := at("bodies", i, b.ID)
	k.attributes(w, bodyAttributes, reflect.ValueOf(b).Elem())
	if b.Kind == "module" && b.Shell == nil && !b.Existing {
		k.add("missing", w+" shell", "a new module needs its shell, from which its mass is taken off")
	}
	if b.Shell != nil {
		k.oneOf(w+" shell comp_doors", b.Shell.CompDoors, CompDoors...)
	}
	k.mass(w+" mass", &b.Mass)
	if b.Mass.Zone == ZonePlaces {
		k.add("value", w+" mass zone", "a body has no places of its own; name the zone that its center counts from")
	}
	k.between(w+" doors", 0, 300, map[string]float64{"side_x_in": float64(b.Doors.SideXIn),
		"side_width_in": float64(b.Doors.SideWidthIn), "side_height_in": float64(b.Doors.SideHeightIn),
		"rear_width_in": float64(b.Doors.RearWidthIn), "rear_height_in": float64(b.Doors.RearHeightIn)})
	k.compartments(w, b.Compartments)
	k.work(w, b.Work)
}

func (k *checker) option(i int) {
	o := &k.c.Options[i]
	w := at("options", i, o.ID)
	if k.c.GroupByID(o.Group) == nil {
		k.add("unknown-id", w+" group", "%q is not a group", o.Group)
	}
	if o.Label == "" {
		k.add("missing", w+" label", "an option needs a label")
	}
	if len(o.Asks) > MaxDetail {
		k.add("too-long", w+" asks", "has %d bytes; the most is %d", len(o.Asks), MaxDetail)
	}
	k.between(w, 0, 99, map[string]float64{"max_qty": float64(o.MaxQty)})
	if o.Mass != nil {
		k.mass(w+" mass", o.Mass)
	}
	if o.Load != nil {
		k.load(w, o.Load)
	}
	if o.Supply != nil {
		k.supply(w, o.Supply)
	}
	if c := o.Circuit; c != nil {
		k.between(w+" circuit", 0, 1e4, map[string]float64{"amps": float64(c.Amps), "run_ft": c.RunFt})
		k.between(w+" circuit", 0, 9, map[string]float64{"count": float64(c.Count)})
	}
	k.between(w, 0, 20, map[string]float64{"lowers_in": float64(o.LowersIn)})
	k.places(w, o.Places)
	k.look(w, o)
	if o.Shell != nil {
		k.oneOf(w+" shell comp_doors", o.Shell.CompDoors, CompDoors...)
	}
	k.station(w, o)
	for i, s := range o.Seats {
		k.oneOf(fmt.Sprintf("%s seats[%d] along", w, i), s.Along, PlaceAlongs...)
	}
	for i, id := range o.TakesSeats {
		if k.c.SeatByID(id) == nil {
			k.add("unknown-id", fmt.Sprintf("%s takes_seats[%d]", w, i), "%q is no seat of any option", id)
		}
	}
	for i, slot := range o.Displaces {
		if !slices.ContainsFunc(k.c.Bodies, func(b Body) bool { return b.slot(slot) >= 0 }) {
			k.add("value", fmt.Sprintf("%s displaces[%d]", w, i), "no compartment of any body has the slot %q", slot)
		}
	}
	k.work(w, o.Work)
	if o.Parts != nil {
		k.span(w+" parts", *o.Parts)
	}
	k.compartments(w, o.Compartments)
	k.fitted(w, o)
}

func (k *checker) load(where string, l *Load) {
	where += " load"
	k.between(where, 0, 1e5, map[string]float64{"parked_a": float64(l.ParkedA), "driving_a": float64(l.DrivingA),
		"responding_a": float64(l.RespondingA), "scene_a": float64(l.SceneA), "ac_w": float64(l.ACW),
		"shed": float64(l.Shed), "engine_a": float64(l.EngineA)})
	k.oneOf(where+" behaves", l.Behaves, "", "resistive", "power")
	if l.AtV != 0 {
		k.between(where, 9, 16, map[string]float64{"at_v": l.AtV})
	}
	if d := l.ACDuty; d != nil {
		k.between(where+" ac_duty", 0, 1, map[string]float64{"driving": d.Driving, "responding": d.Responding,
			"scene": d.Scene})
	}
}

func (k *checker) supply(where string, s *Supply) {
	where += " supply"
	k.between(where, 0, 1e5, map[string]float64{"hot_idle_a": float64(s.HotIdleA),
		"hot_high_idle_a": float64(s.HotHighIdleA), "cold_a": float64(s.ColdA), "battery_ah": float64(s.BatteryAh),
		"shore_a": float64(s.ShoreA), "inverter_w": float64(s.InverterW), "charge_a": float64(s.ChargeA),
		"generator_w": float64(s.GeneratorW)})
	k.oneOf(where+" chemistry", s.Chemistry, "", "lead", "lithium")
	k.oneOf(where+" job", s.Job, "", "house", "starting")
	for _, name := range []string{"inverter_pct", "usable_pct"} {
		v := map[string]float64{"inverter_pct": s.InverterPct, "usable_pct": s.UsablePct}[name]
		if v != 0 {
			k.between(where, 1, 100, map[string]float64{name: v})
		}
	}
	if s.Exponent != 0 {
		k.between(where, 1, 1.6, map[string]float64{"exponent": s.Exponent})
	}
}

// factors checks values set for assumed numbers.
func (k *checker) factors(where string, list []Assumed) {
	for i, a := range list {
		if text := FactorFault(a); text != "" {
			k.add("range", fmt.Sprintf("%s[%d]", where, i), "%s", text)
		}
	}
}

func (k *checker) mass(where string, m *Mass) {
	k.between(where, -2e4, 5e4, map[string]float64{"lb": float64(m.Lb)})
	k.between(where, 0, 1e4, map[string]float64{"tol_lb": float64(m.TolLb)})
	k.between(where, -1e3, 1e3, map[string]float64{"x_in": float64(m.XIn), "y_in": float64(m.YIn),
		"z_in": float64(m.ZIn)})
	if m.Lb != 0 && !m.Derived {
		k.oneOf(where+" zone", m.Zone, Zones...)
	}
}

func (k *checker) compartments(where string, list []Compartment) {
	for i, c := range list {
		w := fmt.Sprintf("%s compartments[%d] %q", where, i, c.ID)
		k.oneOf(w+" side", c.Side, "street", "curb", "rear", "inside")
		k.oneOf(w+" along", c.Along, PlaceAlongs...)
		k.oneOf(w+" wall", c.Wall, "", FaceStreetWall, FaceCurbWall)
		k.between(w, 1, 400, map[string]float64{"width_in": float64(c.WidthIn), "depth_in": float64(c.DepthIn),
			"height_in": float64(c.HeightIn)})
		k.between(w, -400, 400, map[string]float64{"x_in": float64(c.XIn), "y_in": float64(c.YIn),
			"z_in": float64(c.ZIn)})
		k.between(w, 0, 1e4, map[string]float64{"limit_lb": float64(c.LimitLb)})
	}
}

// stations names those of the plant.
func (k *checker) stations() string {
	var list []string
	for _, s := range k.c.Plant.Stations {
		list = append(list, s.ID)
	}
	return strings.Join(list, ", ")
}

func (k *checker) work(where string, list []Work) {
	for _, x := range list {
		if _, ok := k.c.index.stations[x.Station]; !ok {
			k.add("unknown-id", where+" work", "%q is not a station of the plant: %s", x.Station, k.stations())
		}
		if math.IsNaN(float64(x.Hours)) || math.Abs(float64(x.Hours)) > 1e4 {
			k.add("range", where+" work", "%v hours is out of range", x.Hours)
		}
	}
}

func (k *checker) span(where string, s Span) {
	if !(0 <= s.Low && s.Low <= s.Likely && s.Likely <= s.High && s.High <= 2000) {
		k.add("range", where, "a span needs 0 <= low <= likely <= high <= 2000, not %v, %v, %v", s.Low, s.Likely,
			s.High)
	}
}

func (k *checker) rule(i int) {
	r := &k.c.Rules[i]
	w := at("rules", i, r.ID)
	k.oneOf(w+" kind", r.Kind, RuleKinds...)
	if strings.TrimSpace(r.Reason) == "" {
		k.add("missing", w+" reason", "a rule needs a reason the customer can read")
	}
	if r.If != nil {
		k.cond(w+" if", r.If, 0)
	}
	k.cond(w+" then", &r.Then, 0)
}

func (k *checker) cond(where string, c *Cond, depth int) {
	if depth > maxCondDepth {
		k.add("depth", where, "conditions are nested more than %d deep", maxCondDepth)
		return
	}
	set := 0
	list := func(name string, conds []Cond) {
		set++
		for i := range conds {
			k.cond(fmt.Sprintf("%s %s[%d]", where, name, i), &conds[i], depth+1)
		}
	}
	if c.Pick != "" {
		set++
		if _, ok := k.all[c.Pick]; !ok {
			k.add("unknown-id", where, "%q is no option, chassis or body", c.Pick)
		}
	}
	if c.All != nil {
		list("all", c.All)
	}
	if c.Any != nil {
		list("any", c.Any)
	}
	if c.Not != nil {
		set++
		k.cond(where+" not", c.Not, depth+1)
	}
	count := func(name string, n *Count) {
		if n == nil {
			return
		}
		list(name, n.Of)
		if n.N < 0 || n.N > len(n.Of) {
			k.add("range", where+" "+name, "n is %d but there are %d conditions", n.N, len(n.Of))
		}
	}
	count("at_least", c.AtLeast)
	count("at_most", c.AtMost)
	if c.Chassis != nil {
		set++
		k.test(where+" chassis", c.Chassis, chassisAttributes)
	}
	if c.Body != nil {
		set++
		k.test(where+" body", c.Body, bodyAttributes)
	}
	if set != 1 {
		k.add("condition", where, "a condition has exactly one of pick, all, any, not, at_least, at_most, chassis, "+
			"body; this has %d", set)
	}
}

func (k *checker) test(where string, t *Test, attributes []Attribute) {
	k.oneOf(where+" op", t.Op, "=", "!=", "<", "<=", ">", ">=")
	i := slices.IndexFunc(attributes, func(a Attribute) bool { return a.Name == t.Attr && a.Rules })
	if i < 0 {
		var known []string
		for _, a := range attributes {
			if a.Rules {
				known = append(known, a.Name)
			}
		}
		k.add("value", where, "there is no attribute %q; rules test %s", t.Attr, strings.Join(known, ", "))
	} else if attributes[i].Words != nil && (t.Op == "=" || t.Op == "!=") {
		k.oneOf(where+" "+t.Attr, t.Text, attributes[i].Words...)
	} else if numeric := attributes[i].Numeric(); numeric == (t.Op == "=" || t.Op == "!=") {
		k.add("value", where, "%s takes %s", t.Attr,
			map[bool]string{true: "<, <=, > or >= and a number", false: "= or != and a text"}[numeric])
	}
}

func (k *checker) plant() {
	p := &k.c.Plant
	acts := ids(k, "plant.activities", p.Activities, func(a *Activity) string { return a.ID }, false)
	k.between("plant", 1, 24, map[string]float64{"hours_per_day": p.HoursPerDay})
	for i := range p.Activities {
		a := &p.Activities[i]
		w := at("plant.activities", i, a.ID)
		k.span(w+" days", a.Days)
		k.oneOf(w+" source", a.Source, "", SourceChassis, SourceParts, SourceBacklog, SourceSlot)
		k.oneOf(w+" only", a.Only, "", "module", "van", "new", "existing")
		if _, ok := k.c.index.stations[a.Station]; a.Station != "" && !ok {
			k.add("unknown-id", w+" station", "%q is not a station of the plant: %s", a.Station, k.stations())
		}
		for _, before := range a.After {
			// Naming only earlier activities keeps the network free of circles.
			if j, ok := acts[before]; !ok || j >= i {
				k.add("order", w+" after", "%q must be an activity that stands earlier in the list", before)
			}
		}
	}
	arrive := slices.IndexFunc(p.Activities, func(a Activity) bool { return a.Source == SourceParts })
	for i := range k.c.Options {
		o := &k.c.Options[i]
		w := at("options", i, o.ID) + " parts_for"
		if len(o.PartsFor) > 0 && o.Parts == nil {
			k.add("missing", w,
				"names steps that wait for a part, but the option has no parts that take time to arrive")
		}
		for _, id := range o.PartsFor {
			// Behind the step where parts arrive nothing can come round to it.
			if j, ok := acts[id]; !ok || j <= arrive {
				k.add("order", w, "%q must be an activity of the plant that stands after the one where parts arrive",
					id)
			}
		}
	}
	for i, s := range p.Stations {
		k.between(at("plant.stations", i, s.ID), 0.1, 100,
			map[string]float64{"bays": float64(s.Bays), "shifts": s.Shifts, "crew": s.Crew})
	}
	for i, d := range p.Workdays {
		k.oneOf(fmt.Sprintf("plant.workdays[%d]", i), d, Weekdays...)
	}
	for i, h := range p.Holidays {
		k.oneOf(fmt.Sprintf("plant.holidays[%d]", i), h, FederalHolidays...)
	}
	k.factors("plant.factors", p.Factors)
	for i, s := range p.Shutdowns {
		if s.Last.Before(s.First) {
			k.add("order", fmt.Sprintf("plant.shutdowns[%d]", i), "ends before it begins")
		}
	}
}
