package page

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
)

// A gauge says how far a figure is from its limit, and on which side of it.
func TestAGaugeSaysOnWhichSideOfTheLimit(t *testing.T) {
	p := &Page{}
	for _, c := range []struct {
		name   string
		figure config.Figure
		says   string
		mark   config.Severity
		reason string
	}{
		{"under a most", config.Figure{Sense: config.AtMost, Value: 4600, Limit: 5000, Low: 4550, High: 4650, Basis: config.Rating}, "400 lb to spare", "", "it keeps its rating"},
		{"at a most", config.Figure{Sense: config.AtMost, Value: 5000, Limit: 5000, Low: 5000, High: 5000, Basis: config.Rating}, "0 lb to spare", "", "a limit may be used up"},
		{"over a most", config.Figure{Sense: config.AtMost, Value: 5120, Limit: 5000, Low: 5000, High: 5200, Basis: config.Rating}, "120 lb over", config.Stop, "an overload is never to spare"},
		{"above a least", config.Figure{Sense: config.AtLeast, Value: 2100, Limit: 1750, Low: 2000, High: 2200, Basis: config.Rating}, "350 lb to spare", "", "more payload than asked for"},
		{"below a least", config.Figure{Sense: config.AtLeast, Value: 1500, Limit: 1750, Low: 1400, High: 1600, Basis: config.Rating}, "250 lb short", config.Stop, "payload is missing, not over"},
		{"over a limit from memory", config.Figure{Sense: config.AtMost, Value: 5120, Limit: 5000, Low: 5000, High: 5200, Basis: config.FromMemory}, "120 lb over", config.Note, "what was not read stops nothing"},
		{"over what is only noted", config.Figure{Sense: config.AtMost, Value: 5120, Limit: 5000, Low: 5000, High: 5200, Basis: config.Rating, Noted: true}, "120 lb over", config.Note, "it is worth knowing, and no fault"},
		{"near what is only noted", config.Figure{Sense: config.AtMost, Value: 4990, Limit: 5000, Low: 4900, High: 5080, Basis: config.Rating, Noted: true}, "10 lb to spare", "", "it is kept"},
		{"near a most", config.Figure{Sense: config.AtMost, Value: 4990, Limit: 5000, Low: 4900, High: 5080, Basis: config.Rating}, "10 lb to spare", config.Warn, "its likely range crosses the limit"},
		{"near a least", config.Figure{Sense: config.AtLeast, Value: 1760, Limit: 1750, Low: 1700, High: 1820, Basis: config.Rating}, "10 lb to spare", config.Warn, "its likely range crosses the limit"},
		{"without a limit", config.Figure{Value: 4600, Low: 4500, High: 4700}, "4,600 lb", "", "only the value is known"},
	} {
		t.Run(c.name, func(t *testing.T) {
			c.figure.Unit = quantity.Pound
			html := gauge(p, c.figure, SeverityOf(c.figure), c.figure, "GAWR").String()
			said := regexp.MustCompile(`class="value">(.*?)</span></div>`).FindStringSubmatch(html)
			require.NotNil(t, said, html)
			text := regexp.MustCompile(`<[^>]*>`).ReplaceAllString(said[1], "")
			word := map[config.Severity]string{"": "OK", config.Warn: "check",
				config.Stop: "must fix", config.Note: "for your information"}[c.mark]
			assert.True(t, strings.HasSuffix(text, word+" "+c.says), "%q is to end with %q: %s", text, word+" "+c.says,
				c.reason)
			assert.Equal(t, c.mark, SeverityOf(c.figure), c.reason)
			whisker := c.figure.Sense != "" && c.figure.High > c.figure.Low
			assert.Equal(t, whisker, strings.Contains(html, ">likely "+Between(p, c.figure.Low, c.figure.High,
				quantity.Pound)+"<"),
				"what the bar draws is said")
			assert.Equal(t, whisker, strings.Contains(html, `class="range"`))
		})
	}
}

// What is left of the payload is in order only where the gross weight is.
func TestPayloadLeftIsJudgedAsTheGrossWeightIs(t *testing.T) {
	ed := quotetest.Demo(t)
	for _, c := range []struct {
		name    string
		chassis string
		picks   []string
		want    config.Severity
	}{
		{"much is left", "cab-17500-169-4x4-diesel", nil, ""},
		{"the likely range crosses the rating", "cab-14000-169-4x4-diesel", []string{"mount-power"}, config.Warn},
		{"over the rating", "cab-14000-169-4x4-diesel", []string{"cot-power", "mount-power"}, config.Stop},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := quote.Begin(ed, c.chassis, "mod-153-72", quotetest.Today)
			for _, id := range c.picks {
				d.Unit.Set(config.Pick{Option: id, Qty: 1})
			}
			q, err := quote.Compute(ed, d)
			require.NoError(t, err)
			gross, _ := q.Figure("weight.gross")
			left, _ := q.Figure("weight.payload-left")
			assert.Equal(t, c.want, SeverityOf(gross), "%+v", gross)
			assert.Equal(t, c.want, SeverityIn(q, left), "%+v", left)
		})
	}
}
