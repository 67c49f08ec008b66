package drawing

import (
	"regexp"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
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

// The letters of compartments cover neither the unit's number nor its belt.
func TestLettersKeepOffWhatIsMarked(t *testing.T) {
	p := pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", true)
	svg := Side(p).String()
	o := outlineOf(p.Q)
	street := ViewOf(o.model, "street")
	_, _, _, high := street.Bounds()
	base := max(o.top+18, high+2)
	marks := 0
	for _, part := range o.model.Parts {
		if part.Face != config.FaceStreet || part.Kind != "lettering" && part.Kind != "strip" && part.Kind != "band" {
			continue
		}
		marks++
		for _, m := range regexp.MustCompile(`x="([-0-9.]+)" y="([-0-9.]+)">([A-Z](?: [0-9,]+)?)</text>`).FindAllStringSubmatch(svg, -1) {
			x, err := strconv.ParseFloat(m[1], 64)
			require.NoError(t, err)
			y, err := strconv.ParseFloat(m[2], 64)
			require.NoError(t, err)
			half := perLetter * float64(len(m[3])) / 2
			over := x-half < part.X1 && x+half > part.X0 && y-lettering+1 < base-part.Z0 && y+1 > base-part.Z1
			assert.False(t, over, "%s stands on %s", m[3], part.Label)
		}
	}
	assert.Positive(t, marks)
}
