package app

import (
	"strings"

	"boxwright/web/session"
)

// said is what was done in a few words, for the list of earlier states.
func said(s *session.Session) string {
	if s.Notice != "" || len(s.Req.Acts) == 0 {
		return session.Clip(s.Notice, session.MaxSaid)
	}
	a := s.Req.Acts[len(s.Req.Acts)-1]
	switch cat := s.Memory.Edition.Cat; {
	case a.Said != "" && (a.Do == "set" || a.Do == "carry"):
		return session.Clip(a.Said, session.MaxSaid)
	case a.Do == "set":
		return strings.NewReplacer(".", ", ", "_", " ").Replace(session.Clip(a.ID, 60)) + ": " +
			session.Clip(a.Value, 60)
	case a.Do == "start":
		return "begun"
	case cat.OptionByID(a.ID) != nil || cat.ChassisByID(a.ID) != nil || cat.BodyByID(a.ID) != nil:
		return cat.LabelOf(a.ID)
	}
	return ""
}
