package app

import (
	"cmp"
	"maps"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/pricing/quote"
	"boxwright/web/page"
	"boxwright/web/session"
)

// said is what was done in a few words, for the list of earlier states.
func said(s *session.Session) string {
	if s.Notice != "" || len(s.Req.Acts) == 0 {
		return session.Clip(s.Notice, session.MaxSaid)
	}
	a := s.Req.Acts[len(s.Req.Acts)-1]
	switch {
	case s.Spoken != "" && a.Do != "set":
		return short(s.Spoken)
	case a.Said == "" && a.Do == "set":
		return strings.NewReplacer(".", ", ", "_", " ").Replace(session.Clip(a.ID, 60)) + ": " +
			session.Clip(a.Value, 60)
	case a.Do == "start":
		return "begun"
	}
	return session.Clip(cmp.Or(a.Said, a.Button), session.MaxSaid)
}

// spoken is what is read out after an answer: of a press all that it changed, what must be
// fixed first; of the rest of an answer only what it found out, so that it does not speak
// over the press.
func (v *screen) spoken(s *session.Session) string {
	place := cmp.Or(v.Answer, v.name)
	was := cmp.Or(s.View.Heard, &session.Heard{})
	told := []string{s.Spoken, s.Notice}
	if v.Reading || v.foreign != nil {
		place = strings.TrimSuffix(v.title(), " – Boxwright")
	}
	stays := v.Answer == "" && was.Area == v.Area // an answer that was closed is nothing new
	defer func() { s.View.Heard.Place, s.View.Heard.Area = place, v.Area }()
	switch {
	case session.Resting(s.Req.Acts):
		if s.View.Heard == nil {
			s.View.Heard = was
		}
		told = nil
	case v.Reading || v.foreign != nil:
		s.View.Heard = &session.Heard{}
	case v.signedElsewhere():
		s.View.Heard = &session.Heard{}
		told = []string{s.Spoken, v.strip.Said(s.Notice)}
	default:
		told = v.changedSince(s)
	}
	for _, st := range s.Steps {
		if st.Do == "save" {
			told = append(told, "Saved: "+st.Name+".")
		}
	}
	if was.Area != v.Area && v.Answer != "" {
		told = append(told, v.name+".")
	}
	if place != was.Place && !stays {
		told = append(told, strings.TrimSuffix(place, ".")+".")
	}
	if all := strings.Fields(strings.Join(told, " ")); len(all) > 0 || !unanswered(s) {
		return strings.Join(all, " ")
	}
	return "Done: " + strings.TrimRight(said(s), ".…") + "."
}

// unanswered reports whether a button was pressed and nothing else will tell that it was: the
// browser is asked for nothing, and the reader is taken nowhere.
func unanswered(s *session.Session) bool {
	acts := s.Req.Acts
	return len(acts) == 1 && acts[0].Button != "" && len(s.Faults) == 0 && len(s.Steps) == 0
}

// mostBroken bounds what the view carries of each kind, and mostChecks what is read out of new ones.
const mostBroken, mostChecks = 20, 2

// changedSince is what of the unit is not as it was last read out, and notes how it is.
func (v *screen) changedSince(s *session.Session) []string {
	q := v.Q
	payload, _ := q.Figure("weight.payload-left")
	is := &session.Heard{Broken: map[string]string{}, Total: q.Price.Total, Likely: q.Plan.EvenOdds,
		Payload: v.Show(payload.Value, payload.Unit)}
	was := cmp.Or(s.View.Heard, &session.Heard{})
	var checks []string
	for _, f := range q.Findings {
		key := f.Code + " " + f.Where
		switch {
		case f.Severity == config.Stop && len(is.Broken) < mostBroken:
			is.Broken[key] = firstSentence(placed(&f))
		case f.Severity == config.Warn && len(is.Checks) < mostBroken:
			is.Checks = append(is.Checks, key)
			if !slices.Contains(was.Checks, key) {
				checks = append(checks, "Check: "+firstSentence(placed(&f)))
			}
		}
	}
	first := was.Likely.IsZero()
	s.View.Heard = is
	var told []string
	add := func(said bool, text string) {
		if said {
			told = append(told, text)
		}
	}
	for _, code := range slices.Sorted(maps.Keys(is.Broken)) {
		add(is.Broken[code] != was.Broken[code], "Must fix: "+is.Broken[code])
	}
	for _, code := range slices.Sorted(maps.Keys(was.Broken)) {
		_, where, _ := strings.Cut(code, " ")
		fixed := "Fixed: " + where + "."
		switch {
		case strings.HasPrefix(code, quote.MustCode+" "):
			fixed = "Every must is met."
		case strings.HasPrefix(code, quote.ConflictCode+" "):
			fixed = "All options go together again."
		}
		add(is.Broken[code] == "", fixed)
	}
	told = append(told, s.Spoken, s.Notice)
	if s.Telling {
		told = append(told, exchanged(q.Edition.Cat, s.View.Told)...)
	}
	by := is.Total.Sub(was.Total)
	add(!first && !by.IsZero(), "Price "+by.Signed()+" to "+q.Total()+".")
	if v.guided {
		told = append(told, v.guide.Instruction())
	}
	add(is.Payload != was.Payload, "Remaining payload "+is.Payload+".")
	add(is.Likely != was.Likely, "Delivery "+is.Likely.Long()+".")
	add(first, "Price "+q.Total()+".")
	if more := len(checks) - mostChecks; more > 0 {
		checks = append(checks[:mostChecks], page.Count(more, "more to check.", "more to check."))
	}
	return append(told, checks...)
}

// placed is what a finding says, with what it is about.
func placed(f *config.Finding) string {
	if f.Where == "" || strings.HasPrefix(f.Text, f.Where) {
		return f.Text
	}
	return page.Capital(f.Where) + ": " + f.Text
}

// firstSentence leaves the explanations to who reads on.
func firstSentence(text string) string { return short(text) + "." }

// short is the first sentence without its period.
func short(text string) string {
	first, _, _ := strings.Cut(strings.TrimSpace(text), ". ")
	return strings.TrimSuffix(first, ".")
}

// exchanged says what a press changed beyond itself: chassis and body by name, of the rest
// how much.
func exchanged(cat *config.Catalogue, t *session.Told) (told []string) {
	more := len(t.Changes) + len(t.Asked)
	for _, c := range t.Changes {
		if c.Line != "" {
			more-- // the notice counts it
		}
		if c.Line == "" && c.Instead != "" && cat.OptionByID(c.ID) == nil {
			told = append(told, "Exchanged: "+cat.LabelOf(c.ID)+" instead of "+cat.LabelOf(c.Instead)+".")
			more--
		}
	}
	if more > 0 {
		told = append(told, page.Count(more, "more change.", "more changes."))
	}
	return told
}
