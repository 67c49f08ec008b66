package app

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/pricing/quote"
)

var tags = regexp.MustCompile(`<[^>]*>`)

// readable is the text of a region.
func readable(html string) string {
	html = strings.NewReplacer("</tr>", "\n", "</p>", "\n", "</h1>", "\n", "</h2>", "\n", "</h3>", "\n", "</li>", "\n",
		"</td>", " | ", "</caption>", "\n", "</div>", "\n").Replace(html)
	return strings.NewReplacer("\u00a0", " ", "&amp;", "&", "&#39;", "'", "&quot;", `"`).Replace(tags.ReplaceAllString(html, ""))
}

// papersOf are all documents of the quote in work, as text.
func papersOf(p *browser) map[string]string {
	out := map[string]string{}
	for _, id := range []string{"quote", "order", "test", "labels", "upkeep"} {
		p.do(Act{Do: "paper", ID: id})
		s := p.do(Act{Do: "rest"})
		html := s.Regions["main"]
		if i := strings.Index(html, "<article"); i >= 0 {
			html = html[i:]
		}
		out[id] = readable(html)
	}
	return out
}

// Each kind of unit from its needs to the plant's papers: the presses a person makes, and
// what the papers say and never say.
func TestKindsFromNeedsToPapers(t *testing.T) {
	dir := os.Getenv("KINDS") // where the papers are left as text
	for _, k := range []struct {
		name string
		acts []Act               // the duty is the last but one
		has  map[string][]string // by paper
		not  string              // on none of the papers
	}{
		{"van", []Act{set("needs.type", "II"), set("needs.duty", "bls"), set("needs.crew", "3")},
			map[string][]string{"quote": {"Basic life support package. Built, marked"},
				"labels": {"Alterer's label"}, "upkeep": {"Partition, raised roof"}},
			`(?i)outside compartment|weld seams|final-stage|drain mats`},
		{"neonatal", []Act{set("needs.duty", "neonatal"), set("needs.crew", "4")},
			map[string][]string{"quote": {"Medical air at 10 L/min", "minutes on battery alone",
				"on the road, against its own inverter", "each figure rounded by itself",
				"GVWR against the sum of the axle ratings●OK met | 1,250 lb below | not above", "against 80 % of the inlet",
				"Most sound and vibration allowed at the incubator", "Two team seats facing the deck",
				"Overhead cabinets above the team seats",
				"Second inverter for the incubator"},
				"test":   {"cuts the 125 V power of:", "Sound and vibration at the incubator", "Incubator on the road, on battery and on shore"},
				"upkeep": {"Medical", "Incubator"}}, `Cab over-pressure`},
		{"medium-duty", []Act{set("needs.type", "medium"), set("needs.duty", "als"), set("needs.crew", "4")},
			map[string][]string{"quote": {"Medium-duty", "Advanced life support package. Built, marked"}},
			`Incubator|Slide-out`},
		{"critical", []Act{set("needs.duty", "critical"), set("needs.crew", "4")},
			map[string][]string{"quote": {"Ventilator bracket", "Rail for three infusion pumps",
				"W pure sine inverter"},
				"test": {"Ventilator, pumps and monitor on battery"}}, `Nets and straps in place`},
		{"multi-patient", []Act{set("needs.duty", "multi"), set("needs.crew", "3")},
			map[string][]string{"quote": {"Multi-patient package", "Two: ",
				"each arrangement at full load", ", chosen", "the worst", "Clear height over a patient"}, "test": {"Straps, oxygen and numbers"}},
			""},
		{"rescue", []Act{set("needs.duty", "rescue"), set("needs.crew", "4")},
			map[string][]string{"quote": {"Rescue body", "not judged as an ambulance", "NFPA 1900",
				"Telescoping light mast", "Slide-out tray, 600 lb, each × 2", "Slide-out tool wall", "Strut and jack rack",
				"Cribbing boxes", "Saw mounts and fuel bay", "Rope locker", "Basket litter slot", "Generator, 6 kW",
				"Tool board on a compartment door",
				"crew compartment", "and RESCUE in plain", "Stabilizing strut set"},
				"test": {"Light mast", "Slide-out trays", "Slide-out tool walls", "Tool boards on doors",
					"Scene lights: Two scene lights on each side", "Idles without the key; stops at the touch of the brake"},
				"labels": {"truck"}, "upkeep": {"Light mast"}},
			`(?i)patient compartment|cots?(\b|\d)|AMBULANCE in|multipurpose passenger|kkk-a-1822f|medical oxygen|suction`},
		{"hazardous materials", []Act{set("needs.duty", "hazmat"), set("needs.crew", "4")},
			map[string][]string{"quote": {"Hazardous materials body", "not judged as an ambulance", "Command desk",
				"Rear shower", "Bulkhead between clean", "Weather station", "Awning", "Sample locker",
				"Shower at 8 gal a minute lasts7.5 min", "Waste tanks, against all the water carried75 gal"}, "test": {"0.08 to 0.14", "7.5 min at 8 gal", "Scene lights: Two scene lights on each side"},
				"labels": {"truck"},
				"upkeep": {"Gas sensors", "Waste tank"}},
			`(?i)patient compartment|cots?(\b|\d)|AMBULANCE in|multipurpose passenger|kkk-a-1822f|Nets and straps|sharps|Squad bench|as delivered with the chassis`},
		{"contaminated patient", []Act{set("needs.duty", "contaminated"), set("needs.crew", "3")},
			map[string][]string{"quote": {"Contaminated-patient package", "Isolation by air holds only"},
				"test": {"Wash-down"}}, `Rear shower`},
	} {
		t.Run(k.name, func(t *testing.T) {
			p := open(t)
			p.do(k.acts...)
			s := p.do(Act{Do: "propose"})
			text := readable(s.Regions["main"])
			s = p.do(Act{Do: "take-proposal", ID: "cheapest"})
			require.Empty(t, s.Fault)
			s = p.do(Act{Do: "carry-usual", ID: k.acts[len(k.acts)-2].Value})
			require.Empty(t, s.Fault)
			unit := draftOf(t, s).Unit
			assert.NotEmpty(t, unit.Carried)
			for _, c := range unit.Carried {
				assert.NotEmpty(t, c.Compartment, "%s has its place", c.Equipment)
			}
			papers := papersOf(p)
			assert.NotContains(t, papers["quote"], "cannot be issued yet")
			for id, list := range k.has {
				for _, words := range list {
					assert.True(t, strings.Contains(papers[id], words), "%s: %s", id, words)
				}
			}
			for id, paper := range papers {
				text += "\n=========== " + id + "\n" + paper
				if k.not == "" {
					continue
				}
				if found := regexp.MustCompile(k.not).FindStringIndex(paper); found != nil {
					t.Errorf("%s says: %s", id, paper[max(0, found[0]-60):min(len(paper), found[1]+60)])
				}
			}
			if dir != "" {
				text = regexp.MustCompile(`\n\s*\n+`).ReplaceAllString(text, "\n")
				require.NoError(t, os.WriteFile(dir+"/"+k.name+".txt", []byte(text), 0o644))
			}
		})
	}
}

// A proposal for another kind carries what that kind does, and what the purchaser counted
// beyond the old list; a unit made another kind otherwise keeps what it carried until
// somebody says what now rides: the page names what only other kinds carry.
func TestAnotherKindAsksWhatRides(t *testing.T) {
	p := open(t)
	p.do(set("needs.duty", "bls"))
	p.do(Act{Do: "propose"})
	p.do(Act{Do: "take-proposal", ID: "cheapest"})
	p.do(Act{Do: "carry-usual", ID: "bls"}, Act{Do: "carry", ID: "eq-extinguisher", Value: "3"},
		Act{Do: "carry", ID: "eq-cones", Value: "1"})
	p.do(set("needs.duty", "rescue"))
	p.do(Act{Do: "propose"})
	s := p.do(Act{Do: "take-proposal", ID: "cheapest"})
	require.Empty(t, s.Fault)
	card := readable(s.Regions["main"])
	assert.Regexp(t, `Taken aboard: [^.]*2 × Battery spreader-cutter`, card, "the card says what rides now")
	assert.Regexp(t, `Taken off: [^.]*1 × Stair chair`, card)
	aboard := counted(p.draft())
	assert.Equal(t, 0, aboard["eq-stair-chair"])
	assert.Equal(t, 2, aboard["eq-spreader"])
	assert.Equal(t, 3, aboard["eq-extinguisher"], "as the purchaser counted")
	assert.Equal(t, 1, aboard["eq-cones"], "as the purchaser counted")
	assert.Equal(t, 2, aboard["eq-turnout"], "a set for each who rides")
	assert.NotContains(t, readable(s.Regions["standing"]), "of other kinds of unit than rescue")
	assert.NotContains(t, p.do(Act{Do: "go", ID: "needs"}).Regions["main"], "The needs have changed")

	s = p.do(Act{Do: "carry", ID: "eq-stair-chair", Value: "1"})
	assert.Contains(t, readable(s.Regions["standing"]), "of other kinds of unit than rescue")
	s = p.do(Act{Do: "go", ID: "equipment"})
	assert.Regexp(t, `not on the usual list for rescue: [^.]*Stair chair`, readable(s.Regions["main"]))
	s = p.do(Act{Do: "carry-usual", ID: "rescue"})
	require.Empty(t, s.Fault)
	assert.NotContains(t, readable(s.Regions["standing"]), "of other kinds of unit")
	assert.NotContains(t, readable(s.Regions["main"]), "not on the usual list")
	aboard = counted(draftOf(t, s))
	assert.Zero(t, aboard["eq-stair-chair"])
	assert.Equal(t, 2, aboard["eq-turnout"], "a set for each who rides")
	s = p.do(Act{Do: "pick", ID: "crew-three", On: true}, Act{Do: "carry-usual", ID: "rescue"})
	assert.Equal(t, 4, counted(draftOf(t, s))["eq-turnout"], "and no more than the lockers are for")
}

// counted is how many of each thing a unit carries, wherever they ride.
func counted(d *quote.Draft) map[string]int {
	out := map[string]int{}
	for _, c := range d.Unit.Carried {
		out[c.Equipment] += c.Qty
	}
	return out
}
