package e2e

import (
	"math"
	"regexp"
	"strconv"
	"strings"

	"github.com/stretchr/testify/require"

	"boxwright/config/quantity"
	"boxwright/web/e2e/drive"
)

// An existing module on another chassis, and what a year of it costs.
func init() {
	know(deeds, map[string]sentence{
		`begin a remount`:             func(s *story, _ []string) { s.area("start"); s.click("#begin-remount") },
		`look at it on every chassis`: func(s *story, _ []string) { s.area("start"); s.click("#mountings") },
		`mount it on "…"`: func(s *story, says []string) {
			s.click("#mount-on-" + s.id(says[0]))
			require.Contains(s.t, s.mounting(says[0])[0], "showing now")
		},
		`set it beside a new unit`: func(s *story, _ []string) { s.area("start"); s.click("#remount-years") },
	})
	know(looked, map[string]sentence{
		`"…" carries it, with "…" lb or more left on the rear axle`: func(s *story, says []string) {
			cells := s.mounting(says[0])
			require.NotContains(s.t, cells[0], "cannot carry it")
			require.GreaterOrEqual(s.t, s.number(cells[2]), s.number(says[1]))
			for _, c := range cells[1:4] {
				require.Positive(s.t, s.number(c), "front axle, rear axle, GVWR: %q", cells)
			}
		},
		// The front axle is within its rating; the rear axle is not.
		`"…" cannot carry it, by the rear axle`: func(s *story, says []string) {
			cells := s.mounting(says[0])
			require.Contains(s.t, cells[0], "cannot carry it")
			require.False(s.t, s.has("#mount-on-"+s.id(says[0])), "it is not offered")
			require.Positive(s.t, s.number(cells[1]), "front axle")
			require.Negative(s.t, s.number(cells[2]), "rear axle")
			m := regexp.MustCompile(regexp.QuoteMeta(says[0]) +
				`:[^:]*? Rear axle, full load is ([\d,]+) lb, ([\d,]+) lb over the limit of ([\d,]+) lb \(rear GAWR of the chassis\)\.`).FindStringSubmatch(flat(s.text("#main")))
			require.NotNil(s.t, m, "it says why: %s", flat(s.text("#main")))
			require.Equal(s.t, -s.number(cells[2]), s.number(m[2]))
			require.InDelta(s.t, s.number(m[1])-s.number(m[3]), s.number(m[2]), 1)
			require.Equal(s.t, demo.ChassisByID(s.id(says[0])).GAWRRearLb, quantity.Mass(s.number(m[3])))
		},
		// Source of the factor: capital recovery, r/(1-(1+r)^-n), at the rate that is
		// left of what money costs after inflation.
		`a year of "…" costs its price spread over "…" years`: func(s *story, says []string) {
			m := regexp.MustCompile(regexp.QuoteMeta(says[0]) +
				`: ([\d,.]+) now is worth the same as ([\d,.]+) in each of (\d+) years, in today's money, at ([\d.]+) % inflation and ([\d.]+) % for money`).FindStringSubmatch(flat(s.text("#main")))
			require.NotNil(s.t, m, "the page says how it came about")
			require.Equal(s.t, says[1], m[3])
			var v [5]float64
			for i := range v {
				f, err := strconv.ParseFloat(strings.ReplaceAll(m[i+1], ",", ""), 64)
				s.must(err)
				v[i] = f
			}
			price, year, years := v[0], v[1], v[2]
			r := (1+v[4]/100)/(1+v[3]/100) - 1
			require.InDelta(s.t, price*r/(1-math.Pow(1+r, -years)), year, 0.006)
			require.Equal(s.t, s.number(m[2]), s.year(says[0]), "the table says the same")
		},
		`a year of "…" costs less than a year of "…"`: func(s *story, says []string) {
			require.Less(s.t, s.year(says[0]), s.year(says[1]))
			require.Contains(s.t, s.row(`[data-scroll^="Cost of a year"] tr`, says[0]+" least"), "least")
		},
	})
}

// mounting is the row of a chassis in the table of all.
func (s *story) mounting(chassis string) []string {
	s.t.Helper()
	return strings.Split(s.row(`[data-scroll="The module on every chassis"] tr`, chassis), "\t")
}

// year is what a year of one way costs, in cents.
func (s *story) year(way string) int {
	s.t.Helper()
	text := eval[string](s.window,
		`([...document.querySelectorAll('[data-scroll^="Cost of a year"] tbody tr')].find((r) => r.cells[0].innerText.startsWith(`+drive.Quote(way)+`)) || { cells: [0, { innerText: "" }] }).cells[1].innerText`)
	return s.number(text)
}
