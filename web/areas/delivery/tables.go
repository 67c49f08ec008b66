package delivery

import "boxwright/web/session"

// acts are what the area can be asked to do, by the word in its markup.
var acts = map[string]session.Do{
	"too-late": func(s *session.Session, a session.Act) { s.View.Late = !s.View.Late },
}

// fields are set by the id of their input.
var fields = map[string]session.Setter{
	"chance": setChance,
}

// families are fields by the part of their id before the point.
var families = map[string]session.SetterByName{
	"assumed-time": session.Factors("time"),
}
