package app

import (
	"boxwright/config/rules"
	"boxwright/pricing/bid"
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

// rehearse draws an area and, for the unit, judges every chassis and takes an
// option, on a copy of the state. Nothing of it is shown or kept. In slices it rests
// after each part that is made ready.
func (a *App) rehearse(s *session.Session, area string) (*Reply, error) {
	rest := a.memory.Edition.Rules.Pauses().Rest
	there := *s.View
	there.Area, there.Asked = area, ""
	s.View = &there
	if area == "needs" { // where a purchaser's list is pasted
		bid.ReadAhead(a.memory.Edition, nil)
	}
	if area == "unit" {
		there.Chapter = session.ChapterChassis
		p, err := a.rehearsed(s, rest)
		if err != nil {
			return nil, err
		}
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
		rest()
	}
	_, err := a.rehearsed(s, rest)
	return &Reply{Rehearsed: true}, err
}

// rehearsed draws what the session shows, and rests after each part of it.
func (a *App) rehearsed(s *session.Session, rest func()) (*screen, error) {
	s.Begin()
	if _, err := s.Work(); err != nil {
		return nil, err
	}
	rest()
	p, _, err := a.load(s)
	if err != nil {
		return nil, err
	}
	rest()
	drawn := p.draw()
	rest()
	drawn.Pieces()
	rest()
	p.draw = func() markup.Part { return nil } // only what stands around it is left
	p.regions()
	return p, nil
}
