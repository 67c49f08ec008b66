package bid_test

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config/quantity"
	"boxwright/pricing/bid"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
)

var edition *quote.Edition

// demo is the demonstration, opened once: its words are gathered at the first list.
func demo(t testing.TB) *quote.Edition {
	if edition == nil {
		edition = quotetest.Demo(t)
	}
	return edition
}

// stated is the unit that the answers of these tests are given against: the standard
// build on the cutaway that a new quote begins with.
func stated(t testing.TB) *quote.Draft {
	return quote.Begin(demo(t), "cut-14500-158-gas", "mod-146-72", quotetest.Today)
}

func answersTo(t testing.TB, list ...string) (*quote.Quote, []bid.Answer) {
	d := stated(t)
	var err error
	d.Requirements, _, err = bid.ReadRequirements(strings.Join(list, "\n"))
	require.NoError(t, err)
	q, err := quote.Compute(demo(t), d)
	require.NoError(t, err)
	return q, bid.Answers(q, quantity.US)
}

// Forty lines pasted; thirty-six comply, three comply with something added, one
// exception with the figure offered.
func TestRequirementList(t *testing.T) {
	file, err := os.ReadFile("../../testdata/requirements/county.csv")
	require.NoError(t, err)
	q, list := answersTo(t, string(file))
	require.Len(t, list, 40)
	tally := map[quote.Outcome][]string{}
	for _, a := range list {
		t.Logf("%s | %s | %s | %v | %s | %v", a.No, a.Text, a.Outcome.Words(), a.Read, a.Offered, a.Takes)
		tally[a.Outcome] = append(tally[a.Outcome], a.No)
	}
	assert.Len(t, tally[quote.Meets], 36)
	assert.Equal(t, []string{"10", "16", "17"}, tally[quote.MeetsWith])
	assert.Equal(t, []string{"40"}, tally[quote.Excepted])
	assert.Contains(t, list[39].Offered, "106.4 in", "the exception carries the figure offered")

	taken := bid.TakeAnswers(q, list)
	assert.Equal(t, 3, taken.Lines)
	assert.Empty(t, taken.Refused)
	on := q.Draft.Clone()
	on.Unit = taken.Unit
	after, err := quote.Compute(q.Edition, on)
	require.NoError(t, err)
	met := 0
	for _, a := range bid.Answers(after, quantity.US) {
		if a.Outcome == quote.Meets {
			met++
		}
	}
	assert.Equal(t, 39, met, "taken, the picks meet their lines and break no other")
}

// A line that was corrected is judged anew, and the others as they were; another unit answers
// all of them anew.
func TestOnlyWhatChangedIsJudged(t *testing.T) {
	q, before := answersTo(t, "Payload at least 3,000 lb", "Powered cot", "Headroom 70 in minimum")
	q.Draft.Requirements[1].Verdict = quote.Clarify
	q.Draft.Requirements[2].Meant = "headroom at least 80 in"
	after := bid.Answers(q, quantity.US)
	assert.Equal(t, before[0], after[0])
	assert.Equal(t, []quote.Outcome{quote.Meets, quote.Clarify, quote.Excepted},
		[]quote.Outcome{after[0].Outcome, after[1].Outcome, after[2].Outcome})
	assert.Equal(t, 2, bid.Judged(q, func() {
		q.Draft.Requirements[0].Text, q.Draft.Requirements[2].Meant = "Payload at least 2,000 lb", ""
		q.Draft.Requirements[2].Text = "Headroom 71 in minimum"
	}), "new lines")
	assert.Equal(t, 3, bid.Judged(q, func() { q.Draft.Unit.Drop("cot-manual") }), "another unit")
}

// Each of several things that a line asks for has an answer of its own, and the worst of them is
// that of the line.
func TestClaimsOfALine(t *testing.T) {
	for _, c := range []struct {
		line string
		want quote.Outcome
		each []string
	}{
		{"A sharps container, a trash bin and a glove holder", quote.MeetsWith,
			[]string{"Comply: A sharps container, a trash bin", "Comply with: a glove holder"}},
		{"A sharps container, a trash bin and a glove holder at the action area", quote.Unanswered,
			[]string{"Comply: A sharps container, a trash bin", "not read: a glove holder at the action area"}},
		{"LED dome lights, dimmable, with a timer at the side door", quote.MeetsWith,
			[]string{"Comply with: LED dome lights, dimmable", "Comply with: a timer at the side door"}},
		{"100 watt siren, two speakers on the bumper face, and a foot switch for the officer", quote.Unanswered,
			[]string{"Comply: 100 watt siren", "Comply: two speakers on the bumper face",
				"not read: a foot switch for the officer"}},
		{"Mud flaps, a push bumper and a siren of 400 W", quote.Excepted,
			[]string{"Comply: Mud flaps", "Comply with: a push bumper", "Comply: a siren", "Exception: of 400 W"}},
	} {
		t.Run(c.line, func(t *testing.T) {
			_, list := answersTo(t, c.line)
			assert.Equal(t, c.each, saidOfEach(&list[0]))
			assert.Equal(t, c.want, list[0].Outcome)
		})
	}
}

// saidOfEach is each of the claims of a line with its answer before it.
func saidOfEach(a *bid.Answer) []string {
	var out []string
	for _, p := range a.Claims() {
		said := "not read"
		if p.Read {
			said = p.Outcome.Words()
		}
		out = append(out, said+": "+p.Text)
	}
	return out
}
