package config

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"boxwright/config/quantity"
)

// Duty is a kind of work that units are built for, and what that asks of a unit. A unit
// is of the duty whose option it has.
type Duty struct {
	ID     string `json:"id"` // such as "rescue"
	Label  string `json:"label"`
	Option string `json:"option"`         // that makes a unit one of this duty
	Unit   string `json:"unit,omitempty"` // what documents call it; "ambulance" if empty

	Bodies  []string   `json:"bodies,omitempty"`  // it is built on these alone, and they are for no other duty
	Must    [][]string `json:"must"`              // options of each list of which it has at least one
	Never   []string   `json:"never,omitempty"`   // options that it cannot have
	Without []string   `json:"without,omitempty"` // groups that it has nothing of; see NoneByDuty
	Usual   []Fitting  `json:"usual,omitempty"`   // fitted unless asked otherwise, where they go with the rest

	RuleSets []string `json:"rule_sets,omitempty"` // base sets that may judge it, the usual one first; empty: any
	// what it counts as for the federal excise, one of pricing.Uses; "ask": the purchaser says
	Use string `json:"use,omitempty"`
	// of a patient of this kind, where it is not the usual one; 0: as the rules have it
	PatientLb quantity.Mass `json:"patient_lb,omitempty"`

	Says     []Said   `json:"says,omitempty"`     // words that its documents use in place of others
	Aboard   []Aboard `json:"aboard,omitempty"`   // equipment offered with one press
	Cautions []string `json:"cautions,omitempty"` // printed with its quote
}

// Said is a word and what a duty says in its place.
type Said struct {
	Word string `json:"word"`
	As   string `json:"as"`
}

// Aboard is loose equipment of a duty.
type Aboard struct {
	Equipment string `json:"equipment"`
	Qty       int    `json:"qty"`
	PerSeat   bool   `json:"per_seat,omitempty"` // of what people wear: no more than the unit has seats
}

// Fitting is an option that units of a duty usually have.
type Fitting struct {
	Option string `json:"option"`
	Qty    int    `json:"qty"`
}

// Trial is a line of the test sheet that an option brings.
type Trial struct {
	What      string `json:"what"`
	How       string `json:"how"`
	Expect    string `json:"expect"`
	Tolerance string `json:"tolerance"` // what is accepted
}

// Care is a line of the maintenance schedule that an option brings.
type Care struct {
	Months int    `json:"months"`
	Miles  int    `json:"miles,omitempty"` // 0: by months alone
	What   string `json:"what"`
}

// Tags of options that say that a unit has nothing of their group.
const (
	NoneTag    = "none"      // any unit may
	NoneByDuty = "duty-none" // only a unit whose duty is without the group, and that unit must
)

// IsNone reports whether an option only says that the unit has nothing of its group.
func (o *Option) IsNone() bool {
	return slices.Contains(o.Tags, NoneTag) || slices.Contains(o.Tags, NoneByDuty)
}

// LeavesOut reports whether having an option is to go without what its group is for: an
// open wall for cabinets.
func (o *Option) LeavesOut() bool { return o.IsNone() || o.Unseen == unseenNone }

// DutyByID returns the duty, or nil.
func (c *Catalogue) DutyByID(id string) *Duty {
	if i := slices.IndexFunc(c.Duties, func(d Duty) bool { return d.ID == id }); i >= 0 {
		return &c.Duties[i]
	}
	return nil
}

// DutyOf is the duty whose option a unit has; nil when it has none.
func (c *Catalogue) DutyOf(u *Unit) *Duty {
	for i := range c.Duties {
		if d := &c.Duties[i]; u.Has(d.Option) {
			return d
		}
	}
	return nil
}

// AboardLb is the weight of what units of a duty usually carry.
func (c *Catalogue) AboardLb(d *Duty) quantity.Mass {
	sum := quantity.Mass(0)
	for _, a := range d.Aboard {
		if e := c.EquipmentByID(a.Equipment); e != nil {
			sum += Clean(e.MassLb) * quantity.Mass(a.Qty)
		}
	}
	return sum
}

// UsualLoads are what a unit of a duty usually carries, not stowed yet.
func (c *Catalogue) UsualLoads(d *Duty, u *Unit) (list []Carried) {
	cab, module := c.SeatsOf(u)
	for _, a := range d.Aboard {
		list = append(list, Carried{Equipment: a.Equipment, Qty: a.forPeople(len(cab) + len(module))})
	}
	return list
}

// forPeople is how many are carried in a unit for so many people.
func (a *Aboard) forPeople(people int) int {
	if a.PerSeat {
		return min(a.Qty, max(people, 1))
	}
	return a.Qty
}

// UnusualLoads are the labels of what a unit carries that other duties have on their lists
// and its own has not. Foreign are those that no duty of the same use has.
func (c *Catalogue) UnusualLoads(d *Duty, u *Unit) (list, foreign []string) {
	carries := func(d *Duty, id string) bool {
		return slices.ContainsFunc(d.Aboard, func(a Aboard) bool { return a.Equipment == id })
	}
	var seen []string
	for _, x := range u.Carried {
		if slices.Contains(seen, x.Equipment) || carries(d, x.Equipment) {
			continue
		}
		seen = append(seen, x.Equipment)
		usual, alike := false, false
		for i := range c.Duties {
			if o := &c.Duties[i]; carries(o, x.Equipment) {
				usual, alike = true, alike || o.Use == d.Use
			}
		}
		if usual {
			list = append(list, c.CarriedLabel(u, x.Equipment))
		}
		if usual && !alike {
			foreign = append(foreign, c.CarriedLabel(u, x.Equipment))
		}
	}
	return list, foreign
}

// LoadsAfter are what a unit carries when it is made one of another duty: what is on the
// list of the duty it was of is replaced by that of the new one, and everything else stays,
// and so do other numbers of a thing than its list has. What people wear is counted for
// so many of them.
func (c *Catalogue) LoadsAfter(was, is *Duty, carried []Carried, people int) []Carried {
	if was == nil || is == nil || was.ID == is.ID || len(carried) == 0 {
		return carried
	}
	listed := map[string]int{}
	for _, a := range was.Aboard {
		listed[a.Equipment] = a.Qty
	}
	var list []Carried
	counted := map[string]int{}
	for _, x := range carried {
		if counted[x.Equipment] += x.Qty; listed[x.Equipment] == 0 {
			list = append(list, x)
		}
	}
	for _, a := range is.Aboard {
		if slices.ContainsFunc(list, func(x Carried) bool { return x.Equipment == a.Equipment }) {
			continue
		}
		qty := a.forPeople(people)
		if n := counted[a.Equipment]; n > 0 && n != listed[a.Equipment] {
			qty = n
		}
		list = append(list, Carried{Equipment: a.Equipment, Qty: qty})
	}
	slices.SortStableFunc(list, func(a, b Carried) int {
		return cmp.Or(cmp.Compare(a.Equipment, b.Equipment), cmp.Compare(a.Compartment, b.Compartment))
	})
	return list
}

// FitUsual fills a unit with what those of its duty usually have and it says nothing of.
func (c *Catalogue) FitUsual(u *Unit) {
	d := c.DutyOf(u)
	if d == nil {
		return
	}
	for _, f := range d.Usual {
		o := c.OptionByID(f.Option)
		taken := c.GroupByID(o.Group).Choose != ChooseAny && slices.ContainsFunc(c.Members(o.Group), func(m int) bool {
			return u.Has(c.Options[m].ID)
		})
		if !taken && !u.Has(o.ID) && !slices.Contains(u.LeftOut, o.ID) {
			u.Set(Pick{Option: o.ID, Qty: f.Qty, Filled: true})
		}
	}
}

// Usually reports whether units of the duty have an option unless asked otherwise; false
// without a duty.
func (d *Duty) Usually(option string) bool {
	return d != nil && slices.ContainsFunc(d.Usual, func(f Fitting) bool { return f.Option == option })
}

// Lacks reports whether units of the duty have nothing of a group; false without a duty.
func (d *Duty) Lacks(group string) bool { return d != nil && slices.Contains(d.Without, group) }

// Offers reports whether units of a duty, or of none, can have something of a group.
func (c *Catalogue) Offers(d *Duty, group string) bool {
	g := c.GroupByID(group)
	return !d.Lacks(group) && (g == nil || len(g.Only) == 0 || d != nil && slices.Contains(g.Only, d.ID))
}

// IsVan reports whether a body is that of a van, which is converted as it stands.
func (c *Catalogue) IsVan(body string) bool {
	b := c.BodyByID(body)
	return b != nil && b.Kind == "van"
}

// BodiesFor are the bodies that a unit of a duty, or of none, may have on a chassis, the
// usual one of the chassis first: of all but existing modules, or that one alone which is
// named.
func (c *Catalogue) BodiesFor(ch *Chassis, d *Duty, named string) (list []string) {
	for i := range c.Bodies {
		b := &c.Bodies[i]
		asked := named == "" && !b.Existing || named == b.ID
		switch {
		case !asked || (b.Kind == "van") != (ch.Cab == "van") || !c.Carries(b.ID, d):
		case b.ID == ch.UsualBody:
			list = slices.Insert(list, 0, b.ID)
		default:
			list = append(list, b.ID)
		}
	}
	return list
}

// Carries reports whether a body is one that units of a duty, or of none, are built on.
func (c *Catalogue) Carries(body string, d *Duty) bool {
	if d != nil && d.Bodies != nil {
		return slices.Contains(d.Bodies, body)
	}
	return !slices.ContainsFunc(c.Duties, func(x Duty) bool { return slices.Contains(x.Bodies, body) })
}

// Say puts the duty's words in the place of the usual ones.
func (d *Duty) Say(text string) string {
	for _, s := range d.Says {
		text = strings.ReplaceAll(text, s.Word, s.As)
	}
	return text
}

// Saying is the catalogue in the words of a duty. It has the same content hash and shares
// everything else.
func (c *Catalogue) Saying(d *Duty) *Catalogue {
	m := *c
	m.Groups, m.Options = slices.Clone(c.Groups), slices.Clone(c.Options)
	for i := range m.Groups {
		g := &m.Groups[i]
		g.Label, g.Help = d.Say(g.Label), d.Say(g.Help)
	}
	for i := range m.Options {
		o := &m.Options[i]
		o.Label, o.Spec = d.Say(o.Label), d.Say(o.Spec)
		o.Compartments = slices.Clone(o.Compartments)
		for j := range o.Compartments {
			o.Compartments[j].Label = d.Say(o.Compartments[j].Label)
		}
	}
	m.Traits = slices.Clone(c.Traits)
	for i := range m.Traits {
		m.Traits[i].Says = d.Say(m.Traits[i].Says)
	}
	return &m
}

// AllRules are the rules of the catalogue and those that its duties and groups make.
func (c *Catalogue) AllRules() []Rule {
	if len(c.Duties) == 0 {
		return c.Rules
	}
	out := slices.Clone(c.Rules)
	add := func(id string, when, then Cond, reason string, args ...any) {
		out = append(out, Rule{ID: id, Kind: KindPlant, If: &when, Then: then, Reason: fmt.Sprintf(reason, args...)})
	}
	for i := range c.Duties {
		c.rulesOf(&c.Duties[i], add)
	}
	for i := range c.Bodies {
		b := &c.Bodies[i]
		if of := c.optionsWhere(func(d *Duty) bool { return slices.Contains(d.Bodies, b.ID) }); of != nil {
			add("duty-body-"+b.ID, Cond{Pick: b.ID}, oneOf(of), "%s is for %s only.", b.Label, c.labels(of, " and "))
		}
	}
	for i := range c.Groups {
		g := &c.Groups[i]
		if g.Only != nil {
			has := func(d *Duty) bool { return slices.Contains(g.Only, d.ID) }
			of := c.optionsWhere(has)
			add("duty-group-"+g.ID, oneOf(c.idsOf(g.ID)), oneOf(of), "%s: for %s only.", g.Label, c.labels(of, " and "))
			if on := c.bodiesWhere(has); on != nil {
				add("duty-group-on-"+g.ID, oneOf(c.idsOf(g.ID)), oneOf(on), "%s: only on %s.", g.Label,
					c.labels(on, " and "))
			}
		}
		for _, id := range c.idsOf(g.ID) {
			if slices.Contains(c.OptionByID(id).Tags, NoneByDuty) {
				lacks := func(d *Duty) bool { return d.Lacks(g.ID) }
				of := c.optionsWhere(lacks)
				add("duty-has-"+g.ID, Cond{Pick: id}, oneOf(of), "Only a unit for %s is without it.",
					c.labels(of, " or "))
				if on := c.bodiesWhere(lacks); on != nil {
					add("duty-has-on-"+g.ID, Cond{Pick: id}, oneOf(on), "Only %s is without it.", c.labels(on, " or "))
				}
			}
		}
	}
	return out
}

func (c *Catalogue) rulesOf(d *Duty, add func(id string, when, then Cond, reason string, args ...any)) {
	is, name := Cond{Pick: d.Option}, "duty-"+d.ID
	if d.Bodies != nil {
		add(name+"-body", is, oneOf(d.Bodies), "%s is built on %s.", d.Label, c.labels(d.Bodies, " or "))
	}
	for i, list := range d.Must {
		add(fmt.Sprintf("%s-must-%d", name, i+1), is, oneOf(list), "%s is never built without: %s.", d.Label,
			c.labels(list, " or "))
	}
	for _, id := range d.Never {
		add(name+"-never-"+id, is, Cond{Not: &Cond{Pick: id}}, "%s: not for %s.", c.LabelOf(id),
			strings.ToLower(d.Label))
	}
	for _, g := range d.Without {
		var have []Cond
		for _, id := range c.idsOf(g) {
			if slices.Contains(c.OptionByID(id).Tags, NoneByDuty) {
				have = nil
				add(name+"-none-"+g, is, Cond{Pick: id}, "A unit for %s has nothing of the group %s.",
					strings.ToLower(d.Label), c.GroupByID(g).Label)
				break
			}
			have = append(have, Cond{Pick: id})
		}
		if have != nil {
			add(name+"-without-"+g, is, Cond{AtMost: &Count{0, have}}, "A unit for %s has nothing of the group %s.",
				strings.ToLower(d.Label), c.GroupByID(g).Label)
		}
	}
}

// oneOf holds where at least one of the ids is in the unit.
func oneOf(ids []string) Cond {
	if len(ids) == 1 {
		return Cond{Pick: ids[0]}
	}
	var c Cond
	for _, id := range ids {
		c.Any = append(c.Any, Cond{Pick: id})
	}
	return c
}

func (c *Catalogue) idsOf(group string) []string {
	var out []string
	for _, m := range c.Members(group) {
		out = append(out, c.Options[m].ID)
	}
	return out
}

// optionsWhere are the options that make a unit one of the duties that a test takes.
func (c *Catalogue) optionsWhere(takes func(*Duty) bool) []string {
	var out []string
	for i := range c.Duties {
		if d := &c.Duties[i]; takes(d) {
			out = append(out, d.Option)
		}
	}
	return out
}

// bodiesWhere are the bodies of the duties that a test takes; nil where one of these is
// built on any. A body is known before an option is, so that a rule by it costs nothing.
func (c *Catalogue) bodiesWhere(takes func(*Duty) bool) []string {
	var out []string
	for i := range c.Duties {
		d := &c.Duties[i]
		if !takes(d) {
			continue
		}
		if d.Bodies == nil {
			return nil
		}
		out = append(out, d.Bodies...)
	}
	return out
}

func (c *Catalogue) labels(ids []string, last string) string {
	text := ""
	for i, id := range ids {
		switch {
		case i == 0:
		case i == len(ids)-1:
			text += last
		default:
			text += ", "
		}
		text += c.LabelOf(id)
	}
	return text
}

// duties checks the table of duties and what refers to it.
func (k *checker) duties() {
	c := k.c
	seen := ids(k, "duties", c.Duties, func(d *Duty) string { return d.ID }, false)
	for i := range c.Duties {
		d := &c.Duties[i]
		where := at("duties", i, d.ID)
		option := func(field string, list ...string) {
			for _, id := range list {
				if c.OptionByID(id) == nil {
					k.add("unknown-id", where+" "+field, "%q is not an option", id)
				}
			}
		}
		if d.Label == "" {
			k.add("missing", where+" label", "needs a text")
		}
		if d.Option != "" {
			option("option", d.Option)
			if o := c.OptionByID(d.Option); o != nil && !slices.Contains(o.Tags, "needed-"+d.ID) {
				k.add("value", where+" option", "%q is not tagged %q, so that needs would not ask for it", d.Option,
					"needed-"+d.ID)
			}
		} else {
			k.add("missing", where+" option", "a duty names the option that makes a unit one of it")
		}
		if len(d.Must) == 0 {
			k.add("missing", where+" must", "a duty names what none of its units is built without")
		}
		for n, list := range d.Must {
			if len(list) == 0 {
				k.add("missing", fmt.Sprintf("%s must[%d]", where, n), "names no option")
			}
			option("must", list...)
		}
		option("never", d.Never...)
		for _, id := range d.Bodies {
			if c.BodyByID(id) == nil {
				k.add("unknown-id", where+" bodies", "%q is not a body", id)
			}
		}
		for _, g := range d.Without {
			k.without(where+" without", g)
		}
		for _, f := range d.Usual {
			k.fitting(where+" usual", f)
		}
		for _, a := range d.Aboard {
			if c.EquipmentByID(a.Equipment) == nil || a.Qty < 1 || a.Qty > 99 {
				k.add("value", where+" aboard", "%q is not equipment, or is not carried 1 to 99 times", a.Equipment)
			}
		}
		k.between(where, 0, 1000, map[string]float64{"patient_lb": float64(d.PatientLb)})
		for _, s := range d.Says {
			if s.Word == "" || s.As == "" {
				k.add("missing", where+" says", "a word and what is said in its place each need a text")
			}
		}
	}
	for i := range c.Groups {
		for _, id := range c.Groups[i].Only {
			if _, ok := seen[id]; !ok {
				k.add("unknown-id", at("groups", i, c.Groups[i].ID)+" only", "%q is not a duty", id)
			}
		}
	}
}

// fitting checks something that units of a duty usually have. Of a group with a standard
// option that one would come back in its place.
func (k *checker) fitting(where string, f Fitting) {
	o := k.c.OptionByID(f.Option)
	switch {
	case o == nil:
		k.add("unknown-id", where, "%q is not an option", f.Option)
	case f.Qty < 1 || f.Qty > max(o.MaxQty, 1):
		k.add("value", where, "%q is fitted 1 to %d times, not %d", f.Option, max(o.MaxQty, 1), f.Qty)
	case o.Standard || k.c.GroupByID(o.Group) != nil && k.c.GroupByID(o.Group).Choose == ChooseOne:
		k.add("value", where, "%q is of a group that every unit has one of: name it under must", f.Option)
	}
}

// without checks that a unit can have nothing of a group.
func (k *checker) without(where, group string) {
	g := k.c.GroupByID(group)
	if g == nil {
		k.add("unknown-id", where, "%q is not a group", group)
		return
	}
	none := slices.ContainsFunc(k.c.Members(group), func(m int) bool {
		return slices.Contains(k.c.Options[m].Tags, NoneByDuty)
	})
	if g.Choose == ChooseOne && !none {
		k.add("value", where, "one of %q must be had: give it an option tagged %q", group, NoneByDuty)
	}
}
