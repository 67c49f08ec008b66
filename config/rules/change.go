package rules

import "boxwright/config"

// Change is one difference that completing a unit makes.
type Change struct {
	Option string
	Added  bool // else it was taken out
	Cause  FillCause
	// By names deliberate picks and fills that it follows from, where any do. Of
	// several causes it names one, which depends on what the engine was asked before.
	By []string
}

// FillCause says why the program chose.
type FillCause string

// Standard is what the plant fits unless told otherwise. Needed follows from other
// choices. Chosen is one of a group that needs one and whose standard option does
// not fit. GivesWay was filled in before and no longer fits.
const (
	Standard FillCause = "standard"
	Needed   FillCause = "needed"
	Chosen   FillCause = "chosen"
	GivesWay FillCause = "gives-way"
)

// Changes lists what of the fills differs between a unit and one in its place, less what
// a deliberate pick of the same group replaces. It tells causes as filling does, but by
// the groups alone, without asking what each follows from.
func (e *Engine) Changes(was, is *config.Unit) []Change {
	replaced := func(group string) bool {
		if e.cat.GroupByID(group).Choose == config.ChooseAny {
			return false
		}
		for _, m := range e.cat.Members(group) {
			if p := is.Find(e.cat.Options[m].ID); p != nil && !p.Filled {
				return true
			}
		}
		return false
	}
	var out []Change
	for i := range e.cat.Options {
		o := &e.cat.Options[i]
		switch {
		case was.Filled(o.ID) && !is.Has(o.ID) && !replaced(o.Group):
			out = append(out, Change{Option: o.ID, Cause: GivesWay})
		case is.Filled(o.ID) && !was.Has(o.ID):
			out = append(out, Change{Option: o.ID, Added: true, Cause: e.causeOf(o)})
		}
	}
	return out
}

// causeOf is why an option is filled in, as far as its group tells.
func (e *Engine) causeOf(o *config.Option) FillCause {
	switch {
	case o.Standard:
		return Standard
	case e.cat.GroupByID(o.Group).Choose == config.ChooseOne:
		return Chosen
	}
	return Needed
}
