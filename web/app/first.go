package app

import (
	"slices"
	"strings"

	"boxwright/pricing/quote"
	"boxwright/web/session"
)

// leftOpen stands in the first screen where something depends on the day.
const leftOpen = "…"

// firstDays are how many days after the catalogue comes into force the first
// screen is drawn for. What differs between them depends on the day; they lie on
// different sides of the edition's first day, holidays, plant closings, price
// increases and the last published slot.
var firstDays = []int{3, -30, 40, 133, 400, 761}

// FirstScreen draws the first screen for the catalogue in file; nil is the
// demonstration. What depends on the day is left open, since the page may be
// opened on any.
func FirstScreen(file []byte) (First, error) {
	a := New()
	if err := a.ensure(); err != nil {
		return nil, err
	}
	if file != nil {
		ed, err := quote.Accept(file)
		if err != nil {
			return nil, err
		}
		a.memory.Use(session.Held{Ed: ed, File: file})
	}
	drawn := map[string][]element{}
	for i, n := range firstDays {
		today := a.memory.Edition.Cat.ValidFrom.AddDays(n)
		p, _, err := a.load(a.session(&Request{V: Version, Today: today, Kept: true}))
		if err != nil {
			return nil, err
		}
		for id, pieces := range p.regions() {
			list := parse(strings.Join(pieces, ""))
			if i > 0 {
				list = common(drawn[id], list)
			}
			drawn[id] = list
		}
	}
	screen := First{}
	for id, list := range drawn {
		screen[id] = write(list)
	}
	return screen, nil
}

// putTogether gives the first screen to each file of the page that is to be made.
func putTogether(s *session.Session) {
	for i, step := range s.Steps {
		if step.Do != "embed" {
			continue
		}
		screen, err := FirstScreen([]byte(step.Text))
		if err != nil {
			s.Fault("The file was not put together: %s.", session.Sentence(err))
			s.Steps = slices.Delete(s.Steps, i, i+1)
			return
		}
		s.Steps[i].Screen = screen
	}
}

// element is a piece of markup: a text, or a tag with what stands in it.
type element struct {
	open, close string // of a text, close is empty
	inner       []element
}

// common is what two drawings share. What differs is left open: a text, the
// content of a field, or an element that is another one.
func common(a, b []element) []element {
	if len(a) != len(b) {
		return []element{{open: leftOpen}}
	}
	shared := make([]element, len(a))
	for i, x := range a {
		y := b[i]
		switch {
		case x.open == y.open && x.close == y.close:
			shared[i] = element{x.open, x.close, common(x.inner, y.inner)}
		case isTag(x.open) && withoutValue(x.open) == withoutValue(y.open):
			shared[i] = element{withoutValue(x.open), x.close, common(x.inner, y.inner)}
		case isTag(x.open):
			shared[i] = element{"<span>", "</span>", []element{{open: leftOpen}}}
		default:
			shared[i] = element{open: leftOpen}
		}
	}
	return shared
}

// parse reads well-formed markup, such as the view writes.
func parse(markup string) []element {
	list, _ := parseUntilEnd(markup)
	return list
}

// parseUntilEnd reads elements up to an end tag that belongs to none of them, and
// gives what follows from there.
func parseUntilEnd(markup string) ([]element, string) {
	var list []element
	for markup != "" && !strings.HasPrefix(markup, "</") {
		end := strings.IndexByte(markup, '<')
		if isTag(markup) {
			end = strings.IndexByte(markup, '>') + 1
		}
		if end <= 0 {
			end = len(markup)
		}
		x := element{open: markup[:end]}
		markup = markup[end:]
		if isTag(x.open) && !hasNoEnd(x.open) {
			x.inner, markup = parseUntilEnd(markup)
			end = strings.IndexByte(markup, '>') + 1
			x.close, markup = markup[:end], markup[end:]
		}
		list = append(list, x)
	}
	return list, markup
}

func isTag(markup string) bool { return strings.HasPrefix(markup, "<") }

// hasNoEnd tells the tags that stand alone.
func hasNoEnd(tag string) bool {
	name, _, _ := strings.Cut(strings.Trim(tag, "</>"), " ")
	return slices.Contains([]string{"input", "br", "hr", "img", "col", "wbr"}, name)
}

// write puts elements back together.
func write(list []element) string {
	var out strings.Builder
	for _, x := range list {
		out.WriteString(x.open + write(x.inner) + x.close)
	}
	return out.String()
}

// withoutValue is a tag whose field is empty.
func withoutValue(tag string) string {
	before, rest, found := strings.Cut(tag, ` value="`)
	if !found {
		return tag
	}
	_, after, _ := strings.Cut(rest, `"`)
	return before + ` value=""` + after
}
