package e2e

import (
	"strconv"
	"strings"

	"github.com/stretchr/testify/require"

	"boxwright/web/e2e/drive"
)

// Margins, scale tickets, and what the next quote learns from them.
func init() {
	know(deeds, map[string]sentence{
		`note the margins`: func(s *story, _ []string) {
			for _, name := range margins {
				s.noted[name] = s.gauge(name)
			}
		},
		`enter scale ticket "…": "…" lb more than computed, "…" lb of it on the rear axle`: func(s *story, says []string) {
			s.area("weight")
			s.click("#fold-loads summary")
			curb := strings.Split(s.row(`[data-scroll="Three conditions"] tr`, "Curb, full fluids"), "\t")
			total := s.number(curb[1]) + s.number(says[1])
			rear := s.number(curb[3]) + s.number(says[2])
			s.click("#fold-ticket summary")
			s.typed(s.field("Number on the ticket"), says[0])
			s.typed(s.field("Total"), strconv.Itoa(total))
			s.typed(s.field("Front axle"), strconv.Itoa(total-rear))
			s.typed(s.field("Rear axle"), strconv.Itoa(rear))
			s.click("#add-ticket")
			require.NotContains(s.t, s.text("#main"), "The ticket is not entered")
		},
		`take scale ticket "…" out`: func(s *story, says []string) {
			s.area("weight")
			s.click(`[aria-label=` + drive.Quote("Take out ticket "+says[0]) + `]`)
		},
		`count scale ticket "…" here too`: func(s *story, says []string) {
			s.area("weight")
			s.click(`[aria-label=` + drive.Quote("Count it here too: ticket "+says[0]) + `]`)
		},
		`close the page and open it again`: func(s *story, _ []string) { s.must(s.Reload()) },
	})
	know(looked, map[string]sentence{
		`ticket "…" reads "…" lb more than computed`: func(s *story, says []string) {
			row := strings.Split(s.row(`[data-scroll="Readings against the model"] tr`, "Ticket "+says[0]+", total"),
				"\t")
			require.Equal(s.t, "+"+says[1]+" lb", row[3])
			require.Equal(s.t, s.number(row[1])-s.number(row[2]), s.number(says[1]))
		},
		// The scale itself may err by a little, so the masses take nearly all of it.
		`what is left of the payload fell by "…" lb, give or take "…"`: func(s *story, says []string) {
			require.InDelta(s.t, s.number(says[0]), s.noted["Remaining payload"]-s.gauge("Remaining payload"),
				float64(s.number(says[1])))
		},
		`the "…" margin fell by "…" lb, give or take "…"`: func(s *story, says []string) {
			require.InDelta(s.t, s.number(says[1]), s.noted[says[0]]-s.gauge(says[0]), float64(s.number(says[2])))
		},
		`the axle margins fell by as much together`: func(s *story, _ []string) {
			fell := map[string]int{}
			for _, name := range margins {
				fell[name] = s.noted[name] - s.gauge(name)
			}
			require.Positive(s.t, fell["Front axle"])
			require.Positive(s.t, fell["Rear axle"])
			require.InDelta(s.t, fell["Remaining payload"], fell["Front axle"]+fell["Rear axle"], 2,
				"each is shown in whole pounds")
			// The Weight area says so too.
			s.area("weight")
			for name, lb := range fell {
				cells := strings.Split(s.row(`[data-scroll="What the tickets moved, at full load"] tr`, name), "\t")
				require.InDelta(s.t, -lb, s.number(cells[3]), 1, name)
			}
		},
		`what is left of the payload is between "…" and "…" lb less than noted`: func(s *story, says []string) {
			s.between(strconv.Itoa(s.noted["Remaining payload"]-s.gauge("Remaining payload")), says)
		},
		`the margins are as noted`: func(s *story, _ []string) {
			for _, name := range margins {
				require.Equal(s.t, s.noted[name], s.gauge(name), name)
			}
		},
	})
}

// margins are the gauges of weight that stand beside every area.
var margins = []string{"Remaining payload", "Front axle", "Rear axle"}

// gauge is what a gauge beside every area shows, in pounds; below zero where
// a limit is passed.
func (s *story) gauge(name string) int {
	s.t.Helper()
	text := eval[string](s.window,
		`([...document.querySelectorAll("#standing .gauge .line")].find((g) => g.children[0].innerText === `+
			drive.Quote(name)+`) || { children: [0, { innerText: "" }] }).children[1].innerText`)
	require.NotEmpty(s.t, text, "there is a gauge %s", name)
	if strings.Contains(text, "over") || strings.Contains(text, "short") {
		return -s.number(text)
	}
	return s.number(text)
}
