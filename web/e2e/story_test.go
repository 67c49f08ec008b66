package e2e

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/web/e2e/drive"
)

// A story is a text a salesman can read. Each line is one sentence of those
// below, with its particulars in quotation marks; a line that begins with # is
// for the reader. A sentence nobody knows is a failure, and so is a story in
// which nothing is looked at.
func TestStories(t *testing.T) {
	t.Parallel()
	files, err := filepath.Glob(filepath.Join("stories", "*.txt"))
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(files), 2)
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txt"), func(t *testing.T) {
			t.Parallel()
			text, err := os.ReadFile(file)
			require.NoError(t, err)
			s := &story{t: t, people: map[string]*window{}, links: map[string]string{}, noted: map[string]int{}}
			for i, line := range strings.Split(string(text), "\n") {
				line = strings.TrimSpace(line)
				if line == "" || line[0] == '#' {
					continue
				}
				where := fmt.Sprintf("%s:%d: %s", file, i+1, line)
				t.Log(where) // shown when the story fails: the last line is where
				known, says, looks := read(line)
				require.NotNil(t, known, "%s: nobody knows this sentence", where)
				known(s, says)
				s.looked = s.looked || looks
			}
			require.True(t, s.looked, "the story looks at nothing")
		})
	}
}

func TestAStoryWithAnUnknownWordFails(t *testing.T) {
	t.Parallel()
	for _, line := range []string{"choos \"Powered cot\"", "choose Powered cot", "nothing stops the units",
		"press \"OK\""} {
		known, _, _ := read(line)
		require.Nil(t, known, line)
	}
	known, says, _ := read(`"Winch" is in`)
	require.NotNil(t, known)
	require.Equal(t, []string{"Winch"}, says)
}

// story is what has happened so far.
type story struct {
	*window
	t      *testing.T
	people map[string]*window // each at a window of their own
	links  map[string]string
	sheets string         // what was printed last
	saved  string         // text of the file saved last
	noted  map[string]int // figures noted down, in cents or pounds
	looked bool
}

type sentence func(s *story, says []string)

var particulars = regexp.MustCompile(`"([^"]*)"`)

// read finds the sentence of a line and what its quotation marks hold.
func read(line string) (known sentence, says []string, looks bool) {
	for _, m := range particulars.FindAllStringSubmatch(line, -1) {
		says = append(says, m[1])
	}
	form := particulars.ReplaceAllString(line, `"…"`)
	if f, ok := deeds[form]; ok {
		return f, says, false
	}
	return looked[form], says, true
}

// know adds the sentences of one topic; no sentence has two meanings.
func know(all, topic map[string]sentence) {
	for form, f := range topic {
		if deeds[form] != nil || looked[form] != nil {
			panic("two meanings of the sentence: " + form)
		}
		all[form] = f
	}
}

// at opens a form of the page, which is known once the tests run.
func at(f *form, screen drive.Screen) sentence {
	return func(s *story, _ []string) { s.window = open(s.t, *f, screen, "", engine(s.t)) }
}

// deeds are the sentences in which somebody does something.
var deeds = map[string]sentence{
	`on a laptop with the network off`:       at(&carried, drive.Desk),
	`on a laptop from the published address`: at(&folder, drive.Desk),
	`on a phone from the published address`:  at(&folder, drive.Phone),

	`begin on "…"`: func(s *story, says []string) {
		s.area("start")
		s.click("#begin-" + s.id(says[0]))
	},
	`choose the module "…"`: func(s *story, says []string) {
		s.area("unit")
		s.click("#chapter-module")
		if id := s.id(says[0]); !s.checked(id) {
			s.click("#o-" + id)
		}
	},
	`choose "…"`: func(s *story, says []string) {
		id := s.find(says[0])
		switch {
		case !s.checked(id):
			s.click("#o-" + id)
		case s.has("#keep-" + id):
			s.click("#keep-" + id)
		}
		if offer := "#offer-" + id + "-0"; !s.checked(id) && s.has(offer) {
			s.click(offer)
		}
		require.True(s.t, s.checked(id), "%s is in; the page says %q", says[0], s.text("#say"))
	},
	`take the way out "…"`: func(s *story, says []string) {
		id := eval[string](s.window, `([...document.querySelectorAll(".why button")].find((b) => b.textContent === `+
			drive.Quote(says[0])+`) || {}).id || ""`)
		require.NotEmpty(s.t, id, "it is offered among %s", s.text(".why"))
		s.click("#" + id)
	},
	`call the unit "…"`: func(s *story, says []string) { s.area("needs"); s.typed("#f-title", says[0]) },
	`the buyer is "…"`:  func(s *story, says []string) { s.area("quote"); s.typed(`#f-buyer\.name`, says[0]) },
	`the order is placed on "…"`: func(s *story, says []string) {
		s.area("quote")
		s.day("f-date", says[0])
		s.area("needs")
		s.day("f-unit.order_on", says[0])
	},
	`send the link "…"`: func(s *story, says []string) { s.links[says[0]] = s.link() },
	`open the link "…"`: func(s *story, says []string) {
		require.NotEmpty(s.t, s.links[says[0]], "the link was sent")
		s.must(s.Open(s.address + "#" + s.links[says[0]]))
		require.Empty(s.t, s.trouble())
	},
	`add the link "…" to the comparison`: func(s *story, says []string) {
		require.NotEmpty(s.t, s.links[says[0]], "the link was sent")
		s.area("compare")
		s.typed("#f-pin-link", s.links[says[0]])
		require.Empty(s.t, s.trouble())
	},
	`print the quote`: func(s *story, _ []string) {
		s.area("quote")
		require.True(s.t, s.has("#print-quote"))
		s.sheets = flat(strings.Join(s.paper(), " "))
	},
}

// looked are the sentences in which somebody looks at something.
var looked = map[string]sentence{
	`"…" is in`:     func(s *story, says []string) { require.True(s.t, s.checked(s.find(says[0])), says[0]) },
	`"…" is not in`: func(s *story, says []string) { require.False(s.t, s.checked(s.find(says[0])), says[0]) },
	`"…" is not available`: func(s *story, says []string) {
		id := s.find(says[0])
		require.Contains(s.t, s.text("#row-"+id), "Not available with this build")
		s.click("#ask-" + id)
	},
	`asking why says "…"`:      func(s *story, says []string) { require.Contains(s.t, flat(s.text(".why")), says[0]) },
	`nothing stops the unit`:   func(s *story, _ []string) { require.NotContains(s.t, s.text("#standing"), "■ Must fix") },
	`something stops the unit`: func(s *story, _ []string) { require.Contains(s.t, s.text("#standing"), "■ Must fix") },
	`the quote says "…"`:       func(s *story, says []string) { s.area("quote"); require.Contains(s.t, flat(s.text("#main")), says[0]) },
	`the comparison says "…"`: func(s *story, says []string) {
		s.area("compare")
		require.Contains(s.t, flat(s.text("#main")), says[0])
	},
	`the paper says "…"`: func(s *story, says []string) { require.Contains(s.t, s.sheets, says[0]) },
	`the paper does not say "…"`: func(s *story, says []string) {
		require.NotEmpty(s.t, s.sheets)
		require.NotContains(s.t, s.sheets, says[0])
	},
	`the paper says the price`: func(s *story, _ []string) {
		price := s.text(":is(#standing, .reading) .big")
		require.Regexp(s.t, `\d,\d{3}\.\d\d`, price)
		require.Contains(s.t, s.sheets, price)
	},
	`the other costs between "…" and "…" more`: func(s *story, says []string) {
		row := eval[[]string](s.window,
			`document.getElementById("difference-0").open = true, [...[...document.querySelectorAll("#difference-0 tr")].at(-1).cells].map((c) => c.innerText)`)
		s.between(row[len(row)-1], says)
	},
	`the other arrives between "…" and "…" days later`: func(s *story, says []string) {
		m := regexp.MustCompile(`arrives (\d+) calendar days later`).FindStringSubmatch(s.whole("#why-0"))
		require.NotNil(s.t, m, s.text("#why-0"))
		s.between(m[1], says)
	},
	`nothing runs off the screen`: func(s *story, _ []string) {
		require.LessOrEqual(s.t,
			eval[int](s.window, `document.scrollingElement.scrollWidth - document.documentElement.clientWidth`), 0)
	},
}

func init() { // a story of whoever keeps the catalogue, see catalogue_story_test.go
	maps.Copy(deeds, editionDeeds)
	maps.Copy(looked, editionLooks)
}

// find looks an option up by its name, as a person does: in the field for it.
func (s *story) find(name string) string {
	s.t.Helper()
	id := s.id(name)
	if !s.has("#f-search") {
		s.area("unit")
	}
	if !s.has("#row-" + id) {
		s.typed("#f-search", name)
	}
	require.True(s.t, s.has("#row-"+id), "%s is found", name)
	return id
}

// id is the id of what the catalogue calls by a name.
func (s *story) id(name string) string {
	s.t.Helper()
	for i := range demo.Options {
		if demo.Options[i].Label == name {
			return demo.Options[i].ID
		}
	}
	for _, c := range demo.Chassis {
		if c.Label == name {
			return c.ID
		}
	}
	for _, b := range demo.Bodies {
		if b.Label == name {
			return b.ID
		}
	}
	require.Fail(s.t, "the catalogue has nothing called "+name)
	return ""
}

// day sets a date field. Its parts stand in another order in each country, so
// the date is given whole.
func (s *story) day(id, date string) {
	s.t.Helper()
	eval[bool](s.window, `(() => { const f = document.getElementById(`+drive.Quote(id)+`); f.value = `+
		drive.Quote(date)+`; f.dispatchEvent(new Event("change", { bubbles: true })); return true; })()`)
	s.must(s.Settle())
	require.Contains(s.t, s.draft(), date)
}

// number is a figure as printed, in hundredths where it has them and in units
// where it has none.
func (s *story) number(text string) int {
	s.t.Helper()
	m := regexp.MustCompile(`[-−]?\d[\d,]*(\.\d\d)?`).FindString(text)
	v, err := strconv.Atoi(strings.NewReplacer(",", "", ".", "", "−", "-").Replace(m))
	require.NoError(s.t, err, "there is a number in %q", text)
	return v
}

// between reads a number as printed and holds it between two others.
func (s *story) between(text string, bounds []string) {
	s.t.Helper()
	number := func(text string) float64 {
		v, err := strconv.ParseFloat(strings.ReplaceAll(strings.TrimSpace(text), ",", ""), 64)
		require.NoError(s.t, err, text)
		return v
	}
	v := number(text)
	require.GreaterOrEqual(s.t, v, number(bounds[0]))
	require.LessOrEqual(s.t, v, number(bounds[1]))
}
