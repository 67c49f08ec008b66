package app

import (
	"slices"
	"strconv"
	"strings"

	"boxwright/web/guide"
	"boxwright/web/session"
)

// acts of the whole page, by the word in its markup. What an area can be asked to
// do stands with the area.
var acts = map[string]session.Do{
	"start":    func(*session.Session, session.Act) {},
	"restore":  func(*session.Session, session.Act) {},
	"rehearse": func(*session.Session, session.Act) {}, // ignored when sent with other acts
	"go":       goArea,
	"units":    func(s *session.Session, _ session.Act) { s.View.Metric = !s.View.Metric },
	"theme":    setTheme,
	"print":    func(s *session.Session, _ session.Act) { s.Step(session.Step{Do: "print"}) },
	"settle":   func(s *session.Session, a session.Act) { s.Effort, _ = strconv.Atoi(a.Value) },
	"set":      setField,
	"guide":    guide.Act,
}

// actOf finds an act by its word, and reports whether it decides which edition of
// the catalogue the draft is taken with; nil when there is none of that word.
func actOf(word string) (do session.Do, edition bool) {
	if do = acts[word]; do != nil {
		return do, false
	}
	for a := range all {
		if do = a.Acts[word]; do != nil {
			return do, false
		}
		if do = a.Editions[word]; do != nil {
			return do, true
		}
	}
	return nil, false
}

func goArea(s *session.Session, a session.Act) { s.GoTo(areaOf(a.ID).ID) }

func setTheme(s *session.Session, a session.Act) {
	if slices.Contains([]string{"", "light", "dark", "contrast"}, a.Value) {
		s.View.Theme = a.Value
	}
}

// setField takes what was typed into a field of some area.
func setField(s *session.Session, a session.Act) {
	if set := setterOf(a.ID); set != nil {
		s.Set(a, set)
	} else {
		s.Fault("There is no field %q.", a.ID)
	}
}

// setterOf finds what sets a field, by the id of its input; nil when there is none.
func setterOf(id string) session.Setter {
	family, name, _ := strings.Cut(id, ".")
	for a := range all {
		if set := a.Fields[id]; set != nil {
			return set
		}
	}
	for a := range all {
		if of := a.Families[family]; of != nil {
			return of(name)
		}
	}
	return nil
}
