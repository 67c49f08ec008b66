package bid_test

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config/csv"
	"boxwright/config/quantity"
	"boxwright/pricing/bid"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
)

func answersTo(t *testing.T, list ...string) (*quote.Quote, []bid.Answer) {
	ed := quotetest.Demo(t)
	d := quote.Begin(ed, "cut-14500-158-gas", "mod-146-72", quotetest.Today)
	var err error
	d.Requirements, err = bid.ReadRequirements(strings.Join(list, "\n"))
	require.NoError(t, err)
	q, err := quote.Compute(ed, d)
	require.NoError(t, err)
	return q, bid.Answers(q, quantity.US)
}

// Walk 4 of the design: forty lines pasted; thirty-six met, three met with
// picks, one exception with the figure offered.
func TestRequirementList(t *testing.T) {
	file, err := os.ReadFile("../../testdata/requirements/county.csv")
	require.NoError(t, err)
	q, list := answersTo(t, string(file))
	require.Len(t, list, 40)
	tally := map[quote.Outcome][]string{}
	for _, a := range list {
		t.Logf("%s | %s | %s | %s | %s | %s", a.No, a.Text, a.Outcome, a.ReadAs, a.Offered, a.Takes)
		tally[a.Outcome] = append(tally[a.Outcome], a.No)
	}
	assert.Len(t, tally[quote.Meets], 36)
	assert.Len(t, tally[quote.MeetsWith], 3)
	assert.Equal(t, []string{"40"}, tally[quote.Excepted])
	assert.Contains(t, list[39].Offered, "105.1 in", "the exception carries the figure offered")

	u, taken, refused := bid.TakeAnswers(q, list)
	assert.Equal(t, [2]int{3, 0}, [2]int{taken, refused})
	on := q.Draft.Clone()
	on.Unit = u
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

func TestAnswers(t *testing.T) {
	for _, c := range []struct {
		reason, line string
		want         quote.Outcome
		readAs       string // part of it
	}{
		{"a number in metric", "Payload not less than 900 kg", quote.Meets, "Payload"},
		{"a bare number of seats", "Six seats", quote.Meets, "seats"},
		{"too many seats", "12 seating positions", quote.Excepted, "seat"},
		{"oxygen that another supply gives", "Oxygen 6000 L", quote.MeetsWith, "Oxygen"},
		{"working days", "Delivery within 60 working days", quote.Excepted, "60 working days"},
		{"a date that holds", "Delivery by 2028-01-01", quote.Meets, "Jan 1, 2028"},
		{"a date in words", "Delivery no later than Jan 1, 2028", quote.Meets, "Jan 1, 2028"},
		{"a date in numbers, month first", "To be delivered by 1/31/2028.", quote.Meets, "Jan 31, 2028"},
		{"a date too early", "Delivery by December 15, 2026 at the station", quote.Excepted, "Dec 15, 2026"},
		{"money with its sign", "Total price not to exceed $250,000", quote.Excepted, "Price"},
		{"what nobody offers stays open", "Gold-plated door handles shaped as swans", quote.ByHand, ""},
		{"nor is a number met by a like name", "Alternator of at least 900 A", quote.ByHand, ""},
		{"at least, met by more", "Structural warranty at least 10 years", quote.Meets, "15 years"},
		{"what is not wanted is not read as wanted", "No side windows", quote.MeetsWith, "No side windows"},
		{"an empty number is no number", "Payload", quote.ByHand, ""},
		{"ruled out, with the reason", "Van rear step", quote.Excepted, "Van rear step"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			_, list := answersTo(t, c.line)
			a := list[0]
			assert.Equal(t, c.want, a.Outcome, "%s: %s read as %q, offered %q, takes %q", c.reason, c.line, a.ReadAs,
				a.Offered, a.Takes)
			assert.Contains(t, a.ReadAs, c.readAs, c.reason)
		})
	}
}

func TestReadRequirements(t *testing.T) {
	for _, c := range []struct {
		reason, text string
		want         []quote.Requirement
	}{
		{"plain lines keep their commas", "Payload at least 2,000 lb\n\nPowered cot", []quote.Requirement{{Text: "Payload at least 2,000 lb"}, {Text: "Powered cot"}}},
		{"numbered lines", "1. Powered cot\n2) Siren\n3.4. Camera", []quote.Requirement{{No: "1", Text: "Powered cot"}, {No: "2", Text: "Siren"}, {No: "3.4", Text: "Camera"}}},
		{"number and text in two cells", "1,Powered cot\n2,\"Siren, 100 W\"", []quote.Requirement{{No: "1", Text: "Powered cot"}, {No: "2", Text: "Siren, 100 W"}}},
		{"a table with a head, columns in any order", "Description;Ref\nPowered cot;A1", []quote.Requirement{{No: "A1", Text: "Powered cot"}}},
	} {
		t.Run(c.reason, func(t *testing.T) {
			got, err := bid.ReadRequirements(c.text)
			require.NoError(t, err, c.reason)
			assert.Equal(t, c.want, got, c.reason)
		})
	}
	_, err := bid.ReadRequirements(" \n ")
	assert.Error(t, err, "nothing to answer")
	_, err = bid.ReadRequirements(strings.Repeat("Siren\n", quote.MaxRequirements+1))
	assert.ErrorContains(t, err, "201")
}

func TestAnswersByHand(t *testing.T) {
	q, _ := answersTo(t, "Gold-plated swans", "Powered cot")
	d := q.Draft
	d.Requirements[0].Verdict, d.Requirements[0].Answer = quote.Excepted, "=1+1 none offered"
	d.Requirements[1].Pick = quote.NoPick
	list := bid.Answers(q, quantity.US)
	assert.Equal(t, quote.Excepted, list[0].Outcome)
	assert.Equal(t, quote.ByHand, list[1].Outcome, "a refused match stays open")
	assert.Contains(t, csv.Write(bid.AnswerRows(q, list)), `,'=1+1 none offered`, "no formula leaves the house")
}

func FuzzRequirements(f *testing.F) {
	ed := quotetest.Demo(f)
	d := quote.Begin(ed, "", "", quotetest.Today)
	q, err := quote.Compute(ed, d)
	require.NoError(f, err)
	for _, s := range []string{"No.,Requirement\n1,Payload 2000 lb", "1/0 in headroom", "oxygen 99999999999999999999 L",
		"price $", "\"", "delivery by 9999-99-99", "by 2027-06-01 delivery within 1e9 days"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 2000 {
			return
		}
		list, err := bid.ReadRequirements(text)
		if err != nil {
			return
		}
		q.Draft.Requirements = list[:min(len(list), 4)]
		if ps := q.Draft.Check(); len(ps) > 0 {
			t.Fatalf("what was read does not hold: %v", ps)
		}
		bid.Answers(q, quantity.Metric)
	})
}
