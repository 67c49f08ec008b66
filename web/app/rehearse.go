package app

import (
	"boxwright/config/rules"
)

// A browser makes a part of the core ready when that part is first used, which
// takes several times as long as using it. While nobody waits the page asks for
// one area after another to be gone through, so that the first press of each
// kind is as quick as the next.

// rehearsal is the area to go through, when nothing else is asked.
func rehearsal(acts []Act) string {
	if len(acts) == 1 && acts[0].Do == "rehearse" {
		return acts[0].ID
	}
	return ""
}

// rehearse draws an area and, for the unit, takes an option, on a copy of the
// state. Nothing of it is shown or kept.
func (s *session) rehearse(area string) (*Reply, error) {
	p, err := s.screen()
	if err != nil {
		return nil, err
	}
	there := *s.view
	there.Area, there.Asked = area, ""
	s.view = &there
	if area == "unit" {
		s.draft = s.draft.Clone()
		for i := range p.Q.Edition.Cat.Options {
			o := &p.Q.Edition.Cat.Options[i]
			if !s.draft.Unit.Has(o.ID) && p.Q.Answer.Of(o.ID) == rules.Open {
				there.Chapter = p.Q.Edition.Cat.GroupByID(o.Group).Chapter
				pick(s, Act{ID: o.ID, On: true})
				break
			}
		}
	}
	if p, err = s.screen(); err == nil {
		p.regions()
	}
	return &Reply{Rehearsed: true}, err
}
