package page

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/web/page/markup"
)

func TestTheLastMonthIsReadInFull(t *testing.T) {
	begin := []month{{config.Date{Year: 2027, Month: 4, Day: 1}, 50}, {config.Date{Year: 2027, Month: 5, Day: 1}, 72}}
	x := func(day float64) float64 { return 4 * day }
	for name, width := range map[string]float64{"with room after it": 330, "at the edge": 290} {
		t.Run(name, func(t *testing.T) {
			drawn := markup.Many(monthNames(begin, x, 10, 7.4, width)...).String()
			ends := strings.Contains(drawn, `class="small end" x="290.0"`)
			require.Equal(t, width == 290, ends, drawn)
		})
	}
}
