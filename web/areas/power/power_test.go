package power

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config/quantity"
	"boxwright/pricing/quote/quotetest"
	"boxwright/web/page/pagetest"
)

func TestPowerPageHoldsWhatIsPostedAndWired(t *testing.T) {
	p := &Page{pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", false)}
	area := draw(p).String()
	f, _ := p.Q.Figure("power.remaining")
	assert.Contains(t, area, `class="plate-figure">`+p.Show(f.Value, f.Unit)+"<", "the tag's figure")
	assert.Contains(t, area, " · "+p.amps(p.Q.Power.Hot.HighIdleA)+" at high idle · ", "and what the alternator gives")
	for _, c := range p.Q.Power.Circuits {
		assert.Contains(t, area, "<b>"+c.Number+"</b> "+strings.ToUpper(c.Function), "every circuit with its marking")
	}
	bars := loadBars(p).String()
	for _, a := range []quantity.Current{p.Q.Power.Hot.IdleA, p.Q.Power.Hot.HighIdleA, p.Q.Power.Hot.ColdA} {
		assert.Contains(t, bars, p.amps(a), "every output of the alternator is drawn")
	}
}

func TestTheLoadBarsSayTheirNumbers(t *testing.T) {
	svg := loadBars(&Page{pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", true)}).String()
	_, said, _ := strings.Cut(svg, `aria-label="`)
	said, _, _ = strings.Cut(said, `"`)
	texts := regexp.MustCompile(`<text[^>]*>([^<]*)</text>`).FindAllStringSubmatch(svg, -1)
	require.NotEmpty(t, texts)
	for _, m := range texts {
		assert.Contains(t, said, m[1], "stands in the picture only")
	}
}

// What the picture is looked at for is said: which load passes which line.
func TestTheLoadBarsSayWhatTheyPass(t *testing.T) {
	p := &Page{pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", false)}
	said := func(a quantity.Current) string {
		p.Q.Power.Modes[1].LoadA = a
		return loadBars(p).String()
	}
	driving, hot := p.Q.Power.Modes[1].Label+": ", p.Q.Power.Hot
	assert.Contains(t, said(1), driving+p.amps(1)+"; ", "which passes none")
	for given, word := range map[quantity.Current]string{hot.IdleA: "low idle, hot", hot.HighIdleA: "high idle, hot",
		hot.ColdA: "nameplate, cold"} {
		assert.Contains(t, said(given+1), driving+p.amps(given+1)+", over "+word+"; ")
	}
}
