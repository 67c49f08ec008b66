package bid_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config/quantity"
	"boxwright/pricing/bid"
	"boxwright/pricing/quote"
)

func TestShorten(t *testing.T) {
	for _, c := range []struct {
		reason, line string
		left         string // out of the line; empty where nothing may be
		want         quote.Outcome
	}{
		{"a verb", "Engine block heater, moored to the shoreline", "moored", quote.MeetsWith},
		{"one of two parts", "Engine block heater, moored to the shoreline; structure warranted, upon its pristine chassis, for " +
			"fifteen (15) years", "moored pristine", quote.MeetsWith},
		{"a title of the line", "Maneuverability. Overall length, less bumpers and steps, shall not exceed 20 feet",
			"Maneuverability", quote.Meets},
		{"what is an exception without it",
			"Structure warranted, upon its pristine chassis, for not less than twenty-five (25) years", "pristine",
			quote.Excepted},
		{"a quality", "Copper scene lights", "", ""},
		{"a place", "Lower scene lights", "", ""},
		{"what is counted", "Scene lights, four dazzlers", "", ""},
		{"each", "Each siren, 100 W", "", ""},
		{"a grade", "Insulation r-13", "", ""},
		{"a mark", "100 W siren QRS", "", ""},
		{"what is ruled out", "The engine shall not guzzle gasoline", "", ""},
		{"the module as a thing", "Two colors on the cab, white module", "", ""},
		{"one of two words that leave two things", "Hinged fixed rear step", "", ""},
		{"what is excepted", "Star of life on all sides but the roof", "", ""},
		{"a condition", "Charger 20 A on shore line, 10 A while driving", "", ""},
		{"all that a part says", "Siren with Bluetooth", "", ""},
		{"a thing in a place", "Clock with a stopwatch in the action area", "", ""},
		{"what a figure is measured with", "Overall width 96 in with mirrors extended", "", ""},
		{"the name of a figure", "Headroom of 72 in at the side door", "", ""},
		{"what the purchaser has", "Must accept our existing powered cot", "", ""},
	} {
		t.Run(c.reason, func(t *testing.T) {
			q, list := answersTo(t, c.line)
			require.Equal(t, quote.Unanswered, list[0].Outcome)
			short := bid.Shorten(q, list, quantity.US)
			if c.left == "" {
				require.Empty(t, short)
				return
			}
			require.Len(t, short, 1)
			s := &short[0]
			assert.Equal(t, c.left, strings.Join(s.Words(), " "))
			assert.Equal(t, c.want, s.Answer.Outcome)

			// With the press the line is read so, and answered so by the same judge.
			q.Draft.Requirements[0].Meant = s.Meant
			again := bid.Answers(q, quantity.US)[0]
			assert.Equal(t, s.Answer.Outcome, again.Outcome)
			assert.Equal(t, s.Answer.Takes, again.Takes)
			assert.Equal(t, s.Answer.Read, again.Read)
		})
	}
}

// A line that does not say all alone is shortened with its heading.
func TestShortenBeneathAHeading(t *testing.T) {
	q, list := answersTo(t, "BENCH", "8.1 Not over 96 in wide dangling")
	short := bid.Shorten(q, list, quantity.US)
	require.Len(t, short, 1)
	assert.Equal(t, "BENCH, Not over 96 in wide", short[0].Meant)
	assert.Equal(t, []string{"dangling"}, short[0].Words())
	assert.Equal(t, []string{"Squad bench, width, at most 96.0 in"}, short[0].Answer.Read, "not that of the unit")
}

// suggested is what becomes of the claims, or the lines, of a list that are left open, when words are left out.
type suggested struct {
	right, wrong int
	said         []string // of those answered falsely then
}

func suggestions(t testing.TB, name string) suggested {
	lines := toldLines(t, name)
	q, list := answersOf(t, lines)
	var out suggested
	for _, s := range bid.Shorten(q, list, quantity.US) {
		l := lines[s.Answer.At]
		count := func(got, want, of string) {
			if strings.Contains(want, got) {
				out.right++
				return
			}
			out.wrong++
			out.said = append(out.said, fmt.Sprintf("%s, not %s, without %q: %s", got, want, s.Words(), of))
		}
		if l.claims == nil {
			count(letters[s.Answer.Outcome], l.want, l.line)
			continue
		}
		was, spans := list[s.Answer.At], spansOf(s.Meant, s.Answer.Pieces)
		for i := range spans {
			spans[i] = [2]int{inLine(&s, spans[i][0]), inLine(&s, spans[i][1])}
		}
		for _, c := range l.claims {
			if got := l.says(c, s.Answer, spans); l.says(c, was, spansOf(l.line, was.Pieces)) == "h" && got != "h" {
				count(got, c.want, c.text+" of "+l.line)
			}
		}
	}
	return out
}

// inLine is where in a line a place of it without its words stands. What stands before a word left out goes with it.
func inLine(s *bid.Shortened, at int) int {
	for _, left := range s.Left {
		from := left[0]
		for from > 0 && s.Answer.Text[from-1] == ' ' {
			from--
		}
		if from <= at {
			at += left[1] - from
		}
	}
	return at
}

// Few of the traps would be answered falsely if whoever sees a word marked left it out.
func TestTrapsAreSeldomShortened(t *testing.T) {
	got := suggestions(t, "traps.tsv")
	assert.LessOrEqual(t, 100*got.wrong, 4*len(toldLines(t, "traps.tsv")), "%q", got.said)
}
