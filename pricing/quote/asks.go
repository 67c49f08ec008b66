package quote

import (
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/body"
	"boxwright/config/quantity"
)

// Size is a need that is a number, and how a unit answers it.
type Size struct {
	ID, Label string
	Unit      string       // one of package quantity
	Sense     config.Sense // whether the number asked for is the least or the most
	Figure    string       // code of the figure that answers it
	From      float64      // what the field takes, other than nothing
	To        float64

	get  func(*Needs) float64
	set  func(*Needs, float64)
	base func(*config.Chassis, *config.Body, *body.Planes) float64 // the figure without options
	per  func(*config.Option, *body.Planes) float64                // what one of an option adds to it
}

// Asked is the number asked for; 0 when nothing is.
func (s *Size) Asked(n *Needs) float64 { return s.get(n) }

// Ask puts a number among the needs; 0 takes it out.
func (s *Size) Ask(n *Needs, v float64) { s.set(n, v) }

// sized is a size whose number stands in the given field of the needs; options add
// nothing to it where none is said to.
func sized[T ~int | ~float64](field func(*Needs) *T, s Size) Size {
	s.get = func(n *Needs) float64 { return float64(*field(n)) }
	s.set = func(n *Needs, v float64) { *field(n) = T(v) }
	if s.per == nil {
		s.per = func(*config.Option, *body.Planes) float64 { return 0 }
	}
	return s
}

// Sizes are the needs that are a number, in the order they are asked for.
var Sizes = []Size{
	sized(func(n *Needs) *int { return &n.Crew }, Size{
		ID: "crew", Label: "Seats", Unit: quantity.Count, Sense: config.AtLeast,
		Figure: "space.seats", From: 1, To: 20,
		base: func(c *config.Chassis, _ *config.Body, _ *body.Planes) float64 { return float64(len(c.CabSeats)) },
		per: func(o *config.Option, _ *body.Planes) float64 {
			return float64(len(o.Seats) - o.Cots() - len(o.TakesSeats))
		}}),
	sized(func(n *Needs) *int { return &n.Patients }, Size{
		ID: "patients", Label: "Patients on cots", Unit: quantity.Count, Sense: config.AtLeast,
		Figure: "space.patients", From: 1, To: 10,
		base: func(*config.Chassis, *config.Body, *body.Planes) float64 { return 0 },
		per:  func(o *config.Option, _ *body.Planes) float64 { return float64(o.Cots()) }}),
	sized(func(n *Needs) *quantity.Length { return &n.ModuleIn }, Size{
		ID: "module", Label: "Module length", Unit: quantity.Inch, Sense: config.AtLeast,
		Figure: "space.module-length", From: 60, To: 300,
		base: func(_ *config.Chassis, b *config.Body, _ *body.Planes) float64 { return float64(b.LengthIn) }}),
	sized(func(n *Needs) *quantity.Length { return &n.ModuleMostIn }, Size{
		ID: "module_most", Label: "Module length", Unit: quantity.Inch, Sense: config.AtMost,
		Figure: "space.module-length", From: 60, To: 300,
		base: func(_ *config.Chassis, b *config.Body, _ *body.Planes) float64 { return float64(b.LengthIn) }}),
	sized(func(n *Needs) *quantity.Length { return &n.HeadroomIn }, Size{
		ID: "headroom", Label: "Headroom", Unit: quantity.Inch, Sense: config.AtLeast,
		Figure: "space.headroom", From: 40, To: 100,
		base: func(_ *config.Chassis, b *config.Body, _ *body.Planes) float64 { return body.HeadroomIn(b) },
		per:  func(o *config.Option, _ *body.Planes) float64 { return -float64(o.HeadroomIn) }}),
	sized(func(n *Needs) *quantity.Length { return &n.HeightIn }, Size{
		ID: "height", Label: "Overall height", Unit: quantity.Inch, Sense: config.AtMost,
		Figure: "space.height-all", From: 60, To: 180,
		base: func(_ *config.Chassis, _ *config.Body, p *body.Planes) float64 { return float64(p.Bare().HeightIn) }}),
	sized(func(n *Needs) *quantity.Length { return &n.LengthIn }, Size{
		ID: "length", Label: "Overall length", Unit: quantity.Inch, Sense: config.AtMost,
		Figure: "space.length-all", From: 120, To: 600,
		base: func(_ *config.Chassis, _ *config.Body, p *body.Planes) float64 { return float64(p.Bare().LengthIn) },
		per: func(o *config.Option, p *body.Planes) float64 {
			r := p.Reach(o)
			return r.Ahead + r.Behind
		}}),
	sized(func(n *Needs) *quantity.Length { return &n.LoadingIn }, Size{
		ID: "loading", Label: "Loading height", Unit: quantity.Inch, Sense: config.AtMost,
		Figure: "space.loading-height", From: 15, To: 60,
		base: func(_ *config.Chassis, _ *config.Body, p *body.Planes) float64 { return float64(p.Bare().LoadingIn) },
		per:  func(o *config.Option, _ *body.Planes) float64 { return -float64(o.LowersIn) }}),
	sized(func(n *Needs) *quantity.Feet { return &n.TurningFt }, Size{
		ID: "turning", Label: "Turning circle", Unit: quantity.Foot, Sense: config.AtMost,
		Figure: "space.turning-circle", From: 30, To: 100,
		base: func(c *config.Chassis, _ *config.Body, _ *body.Planes) float64 { return float64(body.TurningFt(c)) }}),
}

// SizeByID returns the need of an id, or nil.
func SizeByID(id string) *Size {
	if i := slices.IndexFunc(Sizes, func(s Size) bool { return s.ID == id }); i >= 0 {
		return &Sizes[i]
	}
	return nil
}

// Kind is a need that names what the chassis must be.
type Kind struct {
	ID, Label string
	asked     func(*Needs) string
	suits     func(c *config.Chassis, asked string) bool
	is        func(*config.Chassis) string
}

// MediumDuty is asked for in the place of a type: a chassis of that class.
const MediumDuty = "medium"

// Kinds are the needs that name what the chassis must be.
var Kinds = []Kind{
	{"type", "Type", func(n *Needs) string { return n.Type },
		func(c *config.Chassis, asked string) bool {
			return c.Type == asked || c.Type == asked+"-AD" || asked == MediumDuty && c.Cab == MediumDuty
		},
		func(c *config.Chassis) string { return "Type " + c.Type }},
	{"fuel", "Fuel", func(n *Needs) string { return n.Fuel },
		func(c *config.Chassis, asked string) bool { return c.Fuel == asked },
		func(c *config.Chassis) string { return c.Fuel }},
	{"drive", "Drive", (*Needs).drive,
		func(c *config.Chassis, asked string) bool { return c.Drive == asked },
		func(c *config.Chassis) string { return c.Drive }},
}

// words is what is asked for of a kind: "Type I", "diesel".
func (k *Kind) words(n *Needs) string {
	if k.ID == "type" && n.Type == MediumDuty {
		return "medium-duty"
	}
	if k.ID == "type" {
		return "Type " + n.Type
	}
	return k.asked(n)
}

// isWant reports whether the buyer would give way on a kind. A drive that only the
// roads ask for is as firm as these.
func (k *Kind) isWant(n *Needs) bool {
	return n.IsWant(k.ID) || k.ID == "drive" && n.Drive == "" && n.IsWant("roads")
}

// AskIDs are the needs of which the buyer says whether they are musts or wants.
var AskIDs = append(append(slices.Clone(wordIDs), "type", "fuel", "drive"), sizeIDs()...)

func sizeIDs() []string {
	var out []string
	for i := range Sizes {
		out = append(out, Sizes[i].ID)
	}
	return out
}

// SetWant makes a need a want, or a must again.
func (n *Needs) SetWant(id string, want bool) { n.Wants = toggled(n.Wants, id, want) }

// IsMust reports whether a need holds a unit to it: by its id, an option's where that
// must be in.
func (n *Needs) IsMust(cat *config.Catalogue, id string) bool {
	if cat.OptionByID(id) != nil {
		must, _ := n.Wishes(cat)
		return slices.Contains(must, id)
	}
	return slices.Contains(AskIDs, id) && !n.IsWant(id)
}

// GiveWay makes a must a want: of an option that a word asks for, the word.
func (n *Needs) GiveWay(cat *config.Catalogue, id string) {
	is := func(x string) bool { return x == id }
	o := cat.OptionByID(id)
	switch {
	case id == "drive" && n.Drive == "":
		n.SetWant("roads", true)
	case o == nil:
		n.SetWant(id, true)
	default:
		if slices.ContainsFunc(n.Must, is) {
			n.Must = slices.DeleteFunc(slices.Clone(n.Must), is)
			if len(n.Like) < maxWishes {
				n.Like = append(slices.Clone(n.Like), id)
			}
		}
		n.loosenWords(cat, o)
	}
}

// loosenWords makes wants of the words that make an option a must. Of a word that
// options only suit, the others of them stay musts by themselves.
func (n *Needs) loosenWords(cat *config.Catalogue, o *config.Option) {
	for i, w := range n.words() {
		switch {
		case w == "":
		case slices.Contains(o.Tags, tagNeeded+w):
			n.SetWant(wordIDs[i], true)
		case slices.Contains(o.Tags, tagSuits+w) && n.isFirm(cat, wordIDs[i]):
			n.SetFirm(wordIDs[i], false)
			for k := range cat.Options {
				x := &cat.Options[k]
				if x != o && slices.Contains(x.Tags, tagSuits+w) && !slices.Contains(n.Must, x.ID) &&
					len(n.Must) < maxWishes {
					n.Must = append(slices.Clone(n.Must), x.ID)
				}
			}
		}
	}
}

// CodeOfNeed is the code of the limit that a need gives.
func CodeOfNeed(cat *config.Catalogue, id string) string {
	if cat.OptionByID(id) != nil {
		return hasCode + id
	}
	return needCode + id
}

// NeedOfCode is the id of the need that gives a limit; false for other limits.
func NeedOfCode(code string) (id string, is bool) {
	if id, is = strings.CutPrefix(code, hasCode); is {
		return id, true
	}
	return strings.CutPrefix(code, needCode)
}

// needCode is the first part of the codes of limits and findings that needs give.
const needCode = "needs."

// hasCode is that of a need for an option, before the option's id.
const hasCode = needCode + "has."

// linear is a size as a limit on what options add up to. Above a roof the highest
// thing counts, not the sum: there the limit is on what stands out above the
// height asked for, of which there may be none.
func (s *Size) linear(cat *config.Catalogue, ch *config.Chassis, b *config.Body, n *Needs) config.Linear {
	at := body.PlanesOf(ch, b)
	asked := s.get(n)
	l := config.Linear{Code: needCode + s.ID, Label: s.Label, Unit: s.Unit, Per: map[string]float64{}}
	sign := 1.0
	if s.Sense == config.AtLeast {
		sign = -1
	}
	base := s.base(ch, b, &at)
	if s.ID == "turning" && base == 0 {
		base = s.To + 1 // the catalogue does not state it, so nothing can be promised
	}
	l.Base, l.Limit = sign*base, sign*asked
	above := s.ID == "height"
	if above {
		l.Base, l.Limit = max(0, base-asked), 0
	}
	for i := range cat.Options {
		o := &cat.Options[i]
		v := sign * s.per(o, &at)
		if above {
			v = max(0, at.Reach(o).Top-asked)
		}
		if v != 0 {
			l.Per[o.ID] = v
		}
	}
	return l
}

// need is one need as the engine takes it.
type need struct {
	id    string
	limit config.Linear
	want  bool
}

// needsOn are all needs as limits of a chassis with a body, whether or not they can
// be broken there.
func (n *Needs) needsOn(cat *config.Catalogue, u *config.Unit) []need {
	ch, body := cat.ChassisByID(u.Chassis), cat.BodyOf(u)
	if ch == nil || body == nil {
		return nil
	}
	var out []need
	for i := range Kinds {
		k := &Kinds[i]
		asked := k.asked(n)
		if asked == "" {
			continue
		}
		l := config.Linear{Code: needCode + k.ID, Label: k.Label}
		if !k.suits(ch, asked) {
			l.Base = 1
		}
		out = append(out, need{k.ID, l, k.isWant(n)})
	}
	for i := range Sizes {
		if s := &Sizes[i]; s.get(n) != 0 {
			out = append(out, need{s.ID, s.linear(cat, ch, body, n), n.IsWant(s.ID)})
		}
	}
	must, like := n.Wishes(cat)
	for k, ids := range [][]string{must, like} {
		for _, id := range ids {
			out = append(out, need{id, config.Linear{Code: hasCode + id, Label: cat.LabelOf(id),
				Per: map[string]float64{id: -1}, Limit: -1}, k == 1})
		}
	}
	return out
}

// kept reports whether the picks of a unit keep the limit.
func kept(l *config.Linear, u *config.Unit) bool {
	sum := l.Base
	for _, p := range u.Picks {
		sum += l.Per[p.Option] * float64(p.Qty)
	}
	return sum <= l.Limit+tinyOver
}

// tinyOver is what rounding may leave of a sum of inches.
const tinyOver = 1e-6

// fixed says of a limit whether no pick can break it, or none can keep it. Of a group
// at most one counts where only one can be had.
func fixed(cat *config.Catalogue, l *config.Linear) (always, never bool) {
	least, most := span(cat, l)
	return most <= l.Limit+tinyOver, least > l.Limit+tinyOver
}

// span is what the sum of a limit can be at the least and at the most, whatever the
// rules say.
func span(cat *config.Catalogue, l *config.Linear) (least, most float64) {
	least, most = l.Base, l.Base
	low, high := map[string]float64{}, map[string]float64{}
	for id, per := range l.Per {
		o := cat.OptionByID(id)
		sum := per * float64(max(o.MaxQty, 1))
		if cat.GroupByID(o.Group).Choose == config.ChooseAny {
			least, most = least+min(sum, 0), most+max(sum, 0)
			continue
		}
		low[o.Group], high[o.Group] = min(low[o.Group], sum), max(high[o.Group], sum)
	}
	for g := range low {
		least, most = least+low[g], most+high[g]
	}
	return least, most
}

// Most is the most of a count that a chassis with a body can have, whatever the rules
// say: seats, or patients.
func (s *Size) Most(cat *config.Catalogue, u *config.Unit) int {
	l := s.linear(cat, cat.ChassisByID(u.Chassis), cat.BodyOf(u), &Needs{Crew: 1, Patients: 1})
	least, _ := span(cat, &l)
	return int(-least)
}

// mustLimits are the musts as limits for the engine, less those that no pick can
// break. elsewhere asks about a chassis and body that the unit does not have: where
// these alone break a must, nothing else need be asked, and only says so.
func (n *Needs) mustLimits(cat *config.Catalogue, u *config.Unit, elsewhere bool) (out []config.Linear, only bool) {
	for _, x := range n.needsOn(cat, u) {
		if x.want {
			continue
		}
		always, never := fixed(cat, &x.limit)
		if never && elsewhere && len(x.limit.Per) == 0 {
			return []config.Linear{x.limit}, true
		}
		if !always {
			out = append(out, x.limit)
		}
	}
	return out, false
}

// Held lists the codes of the musts that a unit keeps.
func (n *Needs) Held(cat *config.Catalogue, u *config.Unit) []string {
	var out []string
	for _, x := range n.needsOn(cat, u) {
		if !x.want && kept(&x.limit, u) {
			out = append(out, x.limit.Code)
		}
	}
	return out
}

// Miss is a need that a unit does not keep.
type Miss struct {
	ID         string // of AskIDs, or of an option
	Want       bool
	Asked, Has float64 // of a need that is a number
	Never      bool    // chassis and body alone break it, whatever the picks
}

// Missed lists the needs that a unit does not keep, would-likes left out.
func (n *Needs) Missed(cat *config.Catalogue, u *config.Unit) []Miss {
	var out []Miss
	for _, x := range n.needsOn(cat, u) {
		if kept(&x.limit, u) || x.want && x.limit.Code == hasCode+x.id {
			continue
		}
		m := Miss{ID: x.id, Want: x.want}
		_, m.Never = fixed(cat, &x.limit)
		if s := SizeByID(x.id); s != nil {
			m.Asked, m.Has = s.get(n), s.of(cat, u)
		}
		out = append(out, m)
	}
	return out
}

// of is what a unit has of a size.
func (s *Size) of(cat *config.Catalogue, u *config.Unit) float64 {
	ch, b := cat.ChassisByID(u.Chassis), cat.BodyOf(u)
	at := body.PlanesOf(ch, b)
	v := s.base(ch, b, &at)
	for _, p := range u.Picks {
		o := cat.OptionByID(p.Option)
		v += s.per(o, &at) * float64(p.Qty)
		if s.ID == "height" {
			v = max(v, at.Reach(o).Top)
		}
	}
	return v
}

// Loosen asks no more of a need than a unit has.
func (n *Needs) Loosen(cat *config.Catalogue, u *config.Unit, id string) {
	switch {
	case slices.Contains(wordIDs, id):
		n.SetWant(id, true)
	case id == "type":
		n.Type = ""
	case id == "fuel":
		n.Fuel = ""
	case id == "drive":
		if n.Drive = ""; n.roadsDrive() {
			n.SetWant("roads", true)
		}
	case SizeByID(id) != nil:
		s := SizeByID(id)
		v := s.of(cat, u)
		if !(v >= s.From && v <= s.To) {
			v = 0
		}
		s.set(n, v)
	default:
		is := func(x string) bool { return x == id }
		if slices.ContainsFunc(n.Must, is) {
			n.Must = slices.DeleteFunc(slices.Clone(n.Must), is)
			return
		}
		if o := cat.OptionByID(id); o != nil { // asked for by a word
			n.loosenWords(cat, o)
		}
	}
}
