package app

import (
	"boxwright/config/rules"
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

// rehearse draws an area and, for the unit, judges every chassis and takes an
// option, on a copy of the state. Nothing of it is shown or kept.
func (a *App) rehearse(s *session.Session, area string) (*Reply, error) {
	p, _, err := a.load(s)
	if err != nil {
		return nil, err
	}
	there := *s.View
	there.Area, there.Asked = area, ""
	s.View = &there
	if area == "unit" {
		there.Chapter = session.ChapterChassis
		if p, _, err = a.load(s); err != nil {
			return nil, err
		}
		p.regions()
		s.Draft = s.Draft.Clone()
		for i := range p.Q.Edition.Cat.Options {
			o := &p.Q.Edition.Cat.Options[i]
			if s.Draft.Unit.Has(o.ID) {
				continue
			}
			if p.Q.Judge(o.ID); p.Q.State(o.ID) == rules.Open {
				there.Chapter = p.Q.Edition.Cat.GroupByID(o.Group).Chapter
				do(s, session.Act{Do: "pick", ID: o.ID, On: true})
				break
			}
		}
	}
	if p, _, err = a.load(s); err == nil {
		p.regions()
	}
	return &Reply{Rehearsed: true}, err
}
