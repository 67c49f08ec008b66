package bid_test

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/pricing/bid"
	"boxwright/pricing/quote"
	"boxwright/web/assets/catalogue"
)

// How a thing is mounted, fastened, worked and fed is read where the catalogue says so of it; the
// opposite of it, and what nothing says, is left open.
func TestTraits(t *testing.T) {
	for _, c := range []struct {
		line string
		want quote.Outcome
	}{
		{"Attendant's chair shall spin through a full circle", quote.Meets},
		{"Attendant seat, rotates 360 degrees, locks every 90 degrees, anchored to the floor frame", quote.Meets},
		{"Attendant seat rotates 360 degrees and locks every 45 degrees", quote.Unanswered},
		{"Attendant seat bolted to the plywood floor", quote.Unanswered},
		{"Warning lights on the sides, surface mounted", quote.Meets},
		{"Warning lights on the sides, flush mounted", quote.Unanswered},
		{"Eight ceiling lights, LED, flush mounted, controlled from the action area console", quote.Meets},
		{"Eight ceiling lights, LED, surface mounted", quote.Unanswered},
		{"Eight ceiling lights, LED, switched from the cab", quote.Unanswered},
		{"Loading lights above the rear doors that come on when the rear doors are opened", quote.Meets},
		{"Loading lights above the rear doors that come on with the side door", quote.Unanswered},
		{"Ground lights under the skirts all around that operate in park", quote.MeetsWith},
		{"Ground lights under the skirts all around that operate in reverse", quote.Unanswered},
		{"CO detector, hard wired, powered at all times", quote.MeetsWith},
		{"CO detector, wired through the battery switch", quote.Unanswered},
		{"Duplex outlets in the action area, flush mounted in the wall", quote.Meets},
		{"Duplex outlets in the action area, surface mounted", quote.Unanswered},
		{"Flush mounted", quote.Unanswered},
	} {
		t.Run(c.line, func(t *testing.T) {
			_, list := answersTo(t, c.line)
			if c.want == quote.Unanswered {
				assert.NotContains(t, []quote.Outcome{quote.Meets, quote.MeetsWith, quote.Excepted}, list[0].Outcome)
				return
			}
			assert.Equal(t, c.want, list[0].Outcome, "read as %q", list[0].Read)
		})
	}
}

func TestLintOfTraits(t *testing.T) {
	var cat map[string]any
	require.NoError(t, json.Unmarshal(catalogue.Demo, &cat))
	trait := func(id, kind string, asked []string, of ...string) any {
		return map[string]any{"id": id, "kind": kind, "asked": asked, "of": of}
	}
	cat["traits"] = []any{trait("unknown", "finish", []string{"blued"}, "no-such-thing"),
		trait("idle", "opening", []string{"shall be provided"}, "sc-side"),
		trait("sunk", "mounting", []string{"sunk/recessed mounted?"}, "sc-brow"),
		trait("set-in", "mounting", []string{"recessed"}, "sc-mast"),
		trait("proud", "mounting", []string{"proud"}, "sc-side")}
	file, err := json.Marshal(cat)
	require.NoError(t, err)
	ed, err := quote.OpenEdition(file)
	require.NoError(t, err)
	codes := map[string]string{}
	for _, f := range bid.Lint(ed) {
		codes[f.Code] += f.Where
	}
	for code, where := range map[string]string{"unknown": "unknown", "idle": "idle", "mixed": "set-in",
		"other": "sc-side"} {
		assert.Contains(t, codes["catalogue.trait-"+code], where)
	}
}

// What a thing has on one side is not had on the other.
func TestOpposites(t *testing.T) {
	_, list := answersTo(t, "1. Strip light over the counter", "2. Strip light under the counter",
		"3. Rear doors with gas springs", "4. Automatic tire chains worked from the rear", "5. All amber warning lights, five to the rear")
	assert.Equal(t, quote.Meets, list[0].Outcome)
	for _, a := range list[1:] {
		assert.Equal(t, quote.Unanswered, a.Outcome, "%s read as %q", a.Text, a.Read)
	}
}
