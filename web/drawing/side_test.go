package drawing

import (
	"regexp"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/pricing/quote/quotetest"
	"boxwright/web/page/pagetest"
)

// Each axle's load and rating stand beneath that axle in the side view.
func TestAxleLoadsStandBeneathTheirAxles(t *testing.T) {
	p := pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", true)
	p.Q.Weight.Gross.FrontLb, p.Q.Weight.Gross.RearLb = 4502, 8499
	c := *p.Q.Chassis
	c.GAWRFrontLb, c.GAWRRearLb = 5001, 9502
	p.Q.Chassis = &c
	svg := Side(p).String()
	for _, x := range []struct {
		name, label string
		at          float64
	}{
		{"front load", "4,502 lb", 0}, {"front rating", "of 5,001 lb", 0},
		{"rear load", "8,499 lb", float64(c.WheelbaseIn)}, {"rear rating", "of 9,502 lb", float64(c.WheelbaseIn)},
	} {
		t.Run(x.name, func(t *testing.T) {
			m := regexp.MustCompile(`<text class="[^"]*" x="([-0-9.]+)" y="[-0-9.]+">` + x.label +
				`</text>`).FindStringSubmatch(svg)
			require.NotNil(t, m, "it is lettered")
			is, err := strconv.ParseFloat(m[1], 64)
			require.NoError(t, err)
			assert.InDelta(t, x.at, is, float64(c.WheelbaseIn)/4)
		})
	}
	for _, words := range []string{"Front axle 4,502 lb of 5,001 lb", "rear axle 8,499 lb of 9,502 lb"} {
		assert.Contains(t, svg, words, "and the text alternative says the same")
	}
}
