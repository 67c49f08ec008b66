package unit

import "boxwright/web/session"

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
