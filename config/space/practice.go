package space

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"boxwright/config"
)

// What it counts for that a thing rides where practice has it, in pounds of
// imbalance: so much may the unit stand unevener for it. From experience with
// loading plans, no source; the rules themselves are the catalogue's.
const (
	misplaced  = 300  // inside instead of outside, or the other way round
	offHeight  = 60   // not low, not within reach, not high
	besideDirt = 60   // each clean thing beside each dirty one
	perLift    = 0.05 // for each pound, by the inch its floor stands above the module's
)

// The heights that low, within reach and high mean, in inches above the module's
// floor: the floor of the compartment at most, any part of it between, its top at
// least. Common practice, no source.
const (
	lowFloor  = 20
	reachFrom = 20
	reachTo   = 60
	highTop   = 40
)

// span is a compartment from its floor to its top, above the module's floor.
func span(c *config.Compartment) (floor, top float64) {
	z, h := float64(config.Clean(c.ZIn)), float64(config.Clean(c.HeightIn))
	return z - h/2, z + h/2
}

// withPatient reports whether a compartment is in the patient compartment.
func withPatient(c *config.Compartment) bool { return c.Side == config.StowInside }

// rightPlace reports whether a compartment is inside or outside as asked.
func rightPlace(s *config.Stowage, c *config.Compartment) bool {
	return s.Place == "" || withPatient(c) == (s.Place == config.StowInside)
}

// rightHeight reports whether it is as low or as high as asked. What rides outside
// is reached from the ground.
func rightHeight(s *config.Stowage, c *config.Compartment) bool {
	floor, top := span(c)
	switch s.Height {
	case config.StowLow:
		return floor <= lowFloor
	case config.StowReach:
		return !withPatient(c) || floor < reachTo && top > reachFrom
	case config.StowHigh:
		return top >= highTop
	}
	return true
}

// mayRide reports whether a compartment takes a thing: a mount what it is made for, any
// other what does not ride only where that is said.
func mayRide(e *config.Equipment, c *config.Compartment) bool {
	if c.Holds != nil {
		return holdsOf(c, e.ID) > 0
	}
	return e.Stow == nil || e.Stow.Needs == "" || slices.Contains(c.Takes, e.Stow.Needs)
}

// apart reports whether two things never share a compartment.
func apart(a, b *config.Equipment) bool {
	return a.Stow != nil && slices.Contains(a.Stow.Apart, b.ID) || b.Stow != nil && slices.Contains(b.Stow.Apart, a.ID)
}

// dirtBeside reports whether one is clean and the other dirty.
func dirtBeside(a, b *config.Equipment) bool {
	return a.Stow != nil && b.Stow != nil && a.Stow.Dirt != "" && b.Stow.Dirt != "" && a.Stow.Dirt != b.Stow.Dirt
}

// unfit is what it counts against a thing to ride in a compartment, whatever else
// rides there, in pounds of imbalance.
func unfit(e *config.Equipment, c *config.Compartment) float64 {
	if holdsOf(c, e.ID) > 0 {
		return -misplaced // made for it
	}
	floor, _ := span(c)
	v := perLift * float64(config.Clean(e.MassLb)) * max(floor, 0)
	if e.Stow == nil {
		return v
	}
	if !rightPlace(e.Stow, c) {
		v += misplaced
	}
	if !rightHeight(e.Stow, c) {
		v += offHeight
	}
	return v
}

// Practice is how a thing's place stands to what the catalogue says of it.
type Practice struct {
	Met  bool
	Text string // why it belongs there, or what is amiss
}

// PracticeOf says why a line of the carried equipment rides where it does, in words
// for the reader. What is not stowed has no text.
func PracticeOf(cat *config.Catalogue, u *config.Unit, line config.Carried) Practice {
	e := cat.EquipmentOf(u, line.Equipment)
	list := cat.Left(u, cat.CompartmentsOf(u))
	at := slices.IndexFunc(list, func(c config.Compartment) bool { return c.ID == line.Compartment })
	if e == nil || at < 0 {
		return Practice{Met: true}
	}
	if holdsOf(&list[at], e.ID) > 0 {
		return Practice{true, "This place is made for it."}
	}
	if e.Stow == nil {
		return Practice{true, "The catalogue does not say where it belongs; it is placed for balance."}
	}
	c, s := &list[at], e.Stow
	out := Practice{Met: true}
	say := func(format string, args ...any) { out.Text += fmt.Sprintf(format, args...) + " " }
	if why := broken(cat, u, e, c); why != "" {
		out.Met = false
		say("%s", why)
	}
	switch {
	case rightPlace(s, c):
	case !slices.ContainsFunc(list, func(c config.Compartment) bool { return rightPlace(s, &c) }):
		say("Belongs %s; this unit has no compartment there.", s.Place)
	case !slices.ContainsFunc(list, func(c config.Compartment) bool { return rightPlace(s, &c) && holds(&c, e) }):
		say("Belongs %s, but nothing there has room for it.", s.Place)
	default:
		out.Met = false
		say("Belongs %s, but rides elsewhere: no room there, to spare an axle, or stowed by hand.", s.Place)
	}
	asked := []string{}
	if s.Place != "" && rightPlace(s, c) {
		asked = append(asked, s.Place)
	}
	if word := cmp.Or(map[string]string{config.StowReach: "within reach"}[s.Height], s.Height); word != "" {
		if rightHeight(s, c) {
			asked = append(asked, word)
		} else {
			say("Better %s.", word)
		}
	}
	if s.Dirt != "" {
		asked = append(asked, s.Dirt)
	}
	if text := strings.Join(asked, ", "); text != "" {
		say("%s.", strings.ToUpper(text[:1])+text[1:])
	}
	if s.Needs != "" && mayRide(e, c) {
		say("This place is fitted for %s.", s.Needs)
	}
	out.Text = strings.TrimSpace(out.Text + s.Why)
	return out
}

// holds reports whether nothing rules out that a compartment holds a thing by itself.
func holds(c *config.Compartment, e *config.Equipment) bool {
	return cannotHold(hollow(c), boxOf(e)) == "" && mayRide(e, c) &&
		!overRated(config.Clean(e.MassLb), config.Clean(c.LimitLb))
}

// broken says which rule that is always held a thing in a compartment breaks; empty
// when none.
func broken(cat *config.Catalogue, u *config.Unit, e *config.Equipment, c *config.Compartment) string {
	if c.Holds != nil && !mayRide(e, c) {
		return "This place is made for something else."
	}
	if !mayRide(e, c) {
		return fmt.Sprintf("This place is not fitted for %s.", e.Stow.Needs)
	}
	for _, x := range u.Carried {
		if o := cat.EquipmentOf(u, x.Equipment); o != nil && x.Compartment == c.ID && apart(e, o) {
			return fmt.Sprintf("It never rides with this: %s.", o.Label)
		}
	}
	return ""
}

// judgePractice finds what rides where it must not.
func (s *Sheet) judgePractice(b *vehicle, use *Use) {
	for _, x := range use.Items {
		e := b.Cat.EquipmentOf(b.Unit, x.Equipment)
		if why := broken(b.Cat, b.Unit, e, &use.Compartment); why != "" {
			s.add(config.Finding{Code: "space.not-there", Severity: config.Warn, Basis: config.CommonPractice,
				Text:   fmt.Sprintf("%s in %s: %s", e.Label, use.Label, why),
				Remedy: "Stow it elsewhere, or take the suggestion."})
		}
	}
}
