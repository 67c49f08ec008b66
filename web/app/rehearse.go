package app

import (
	"boxwright/web/page/markup"
	"boxwright/web/session"
)

// A browser makes a part of the core ready when that part is first used, which
// takes several times as long as using it. While nobody waits the page asks for
// one area after another to be gone through, so that the first press of each
// kind is as quick as the next.

// rehearsal is the area to go through, when nothing else is asked.
func rehearsal(acts []session.Act) string {
	if len(acts) == 1 && acts[0].Do == "rehearse" {
		return acts[0].ID
	}
	return ""
}

// rehearse draws an area, after each of what it rehearses, on a copy of the state. Nothing
// of it is shown or kept. In slices it rests after each part that is made ready.
func (a *App) rehearse(s *session.Session, area string) (*Reply, error) {
	there := *s.View
	there.Area, there.Asked = area, ""
	s.View, s.Draft = &there, s.Draft.Clone()
	presses := areaOf(area).Rehearse
	if len(presses) == 0 {
		presses = []func(*session.Session){func(*session.Session) {}}
	}
	for _, press := range presses {
		press(s)
		if err := a.rehearsed(s, a.memory.Edition.Rules.Pauses().Rest); err != nil {
			return nil, err
		}
	}
	return &Reply{Rehearsed: true}, nil
}

// rehearsed draws what the session shows, and rests after each part of it.
func (a *App) rehearsed(s *session.Session, rest func()) error {
	s.Begin()
	if _, err := s.Work(); err != nil {
		return err
	}
	rest()
	p, _, err := a.load(s)
	if err != nil {
		return err
	}
	rest()
	drawn := p.draw()
	rest()
	drawn.Pieces()
	rest()
	p.draw = func() markup.Part { return nil } // only what stands around it is left
	p.regions()
	rest()
	return nil
}
