package unit

import (
	"slices"

	"boxwright/config/letters"
	"boxwright/web/session"
)

// acts are what the area can be asked to do, by the word in its markup.
var acts = map[string]session.Do{
	"chapter":  toChapter,
	"search":   func(s *session.Session, a session.Act) { s.View.Search = session.Clip(a.Value, 80) },
	"pick":     pick,
	"release":  release,
	"keep":     keep,
	"qty":      setQty,
	"chassis":  setChassis,
	"body":     setBody,
	"complete": complete,
	"none":     none,
	"group":    toggleGroup,
	"why":      ask,
	"mend":     mend,
	"offer":    takeOffer,
	"yield":    giveWay,
	"look":     look,
	"part":     find,
	"name":     toName,
	"save-dxf": saveDXF,
	"save-svg": saveSVG,
}

// families are fields by the part of their id before the point.
var families = map[string]session.SetterByName{
	"detail":  detailField,
	"weighed": weighedField,
}

func toChapter(s *session.Session, a session.Act) {
	s.View.Chapter, s.View.Asked, s.View.Search, s.View.Look = a.ID, "", "", ""
	s.View.Fresh, s.View.Opened = nil, nil
}

// toggleGroup shows the options of a group of a large chapter, or its line again.
func toggleGroup(s *session.Session, a session.Act) {
	cat := s.Memory.Edition.Cat
	g := cat.GroupByID(a.ID)
	if g == nil {
		s.Fault("There is no group %q in this edition.", a.ID)
		return
	}
	if i := slices.Index(s.View.Opened, g.ID); i >= 0 {
		s.View.Opened = slices.Delete(s.View.Opened, i, i+1)
		s.View.Asked, s.View.Told = "", nil
		s.Spoken = letters.Isolate(g.Label) + " is closed."
		return
	}
	open(s, g.ID)
	s.Spoken = letters.Isolate(g.Label) + " is open: choose " + choices[g.Choose] + "."
}

// open shows the options of a group where the chapter is so large that it may be a line.
func open(s *session.Session, group string) {
	if !slices.Contains(s.View.Opened, group) && len(s.View.Opened) < mostInSight {
		s.View.Opened = append(s.View.Opened, group)
	}
}
