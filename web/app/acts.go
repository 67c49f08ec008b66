package app

import (
	"cmp"
	"maps"
	"slices"
	"strconv"
	"strings"

	"boxwright/config/letters"
	"boxwright/web/areas"
	"boxwright/web/guide"
	"boxwright/web/session"
)

// acts of the whole page, by the word in its markup. What an area can be asked to
// do stands with the area.
var acts = map[string]session.Do{
	"start":    started,
	"restore":  restore,
	"rehearse": func(*session.Session, session.Act) {}, // ignored when sent with other acts
	"go":       goArea,
	"units":    otherUnits,
	"theme":    setTheme,
	"print":    func(s *session.Session, _ session.Act) { s.Step(session.Step{Do: "print"}) },
	"rest":     func(*session.Session, session.Act) {},
	"decide":   func(s *session.Session, a session.Act) { s.Effort, _ = strconv.Atoi(a.Value) },
	"set":      setField,
	"guide":    guide.Act,
}

// actOf finds an act by its word, and reports whether it decides which edition of
// the catalogue the draft is taken with; nil when there is none of that word.
func actOf(word string) (do session.Do, edition bool) {
	if do = acts[word]; do != nil {
		return do, false
	}
	for _, a := range tabs {
		if do = a.Acts[word]; do != nil {
			return do, false
		}
		if do = a.Editions[word]; do != nil {
			return do, true
		}
	}
	return nil, false
}

// started takes up the quote that the page holds; ID says that it is another than before.
func started(s *session.Session, a session.Act) {
	s.View.Parts, s.View.Heard = nil, nil
	if a.ID != "" {
		name := cmp.Or(s.Draft.Title, s.Memory.Edition.Cat.LabelOf(s.Draft.Unit.Chassis))
		s.Spoken = "Another quote: " + letters.Isolate(name) + "."
		if len(s.Req.Draft) == 0 {
			s.Spoken = "A new quote: " + letters.Isolate(name) + "."
		}
		s.Step(session.Step{Do: "top"})
	}
}

// restore shows a state that the page had kept; ID says how it came there, and Value from what or to what.
func restore(s *session.Session, a session.Act) {
	if a.ID != "" {
		s.View.Told, s.Telling = nil, false
		s.Spoken = session.Clip(strings.TrimSuffix(a.ID+": "+letters.Calm(short(a.Value)), ": "), session.MaxSaid) + "."
	}
	if a.ID == "Put back" {
		s.Step(session.Step{Do: "focus", ID: "kept-quotes"})
	}
}

func goArea(s *session.Session, a session.Act) { s.GoTo(areaOf(a.ID).ID) }

func otherUnits(s *session.Session, _ session.Act) {
	s.View.Metric = !s.View.Metric
	s.Spoken = "US units."
	if s.View.Metric {
		s.Spoken = "Metric units."
	}
}

func setTheme(s *session.Session, a session.Act) {
	if slices.Contains([]string{"", "light", "dark", "contrast"}, a.Value) {
		s.View.Theme = a.Value
	}
}

// setField takes what was typed into a field of some area.
func setField(s *session.Session, a session.Act) {
	area, set := setterOf(a.ID)
	if set == nil {
		s.Fault("There is no field %q.", a.ID)
		return
	}
	a.Value = letters.Calm(a.Value)
	s.Set(a, set)
	if area.Joined && s.View.Wrong[a.ID] == "" {
		again(s, area)
	}
}

// again takes what the area's fields refused, where nothing stands against it any
// longer.
func again(s *session.Session, area *areas.Area) {
	for _, id := range slices.Sorted(maps.Keys(s.View.Wrong)) {
		if found, set := setterOf(id); found == area && set != nil {
			s.Set(session.Act{ID: id, Value: s.View.Typed[id]}, set)
		}
	}
}

// setterOf finds the area of a field and what sets it, by the id of its input; nil
// when there is none.
func setterOf(id string) (*areas.Area, session.Setter) {
	family, name, _ := strings.Cut(id, ".")
	for _, a := range tabs {
		if set := a.Fields[id]; set != nil {
			return a, set
		}
	}
	for _, a := range tabs {
		if setterOf := a.Families[family]; setterOf != nil {
			return a, setterOf(name)
		}
	}
	return nil, nil
}
