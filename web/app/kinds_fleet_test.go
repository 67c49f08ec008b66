package app

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/pricing/quote/quotetest"
)

// A fleet of unlike units: every document is drawn for every unit under its own name,
// the first page names all of them, and beginning one anew leaves the others.
func TestFleetOfUnlikeUnits(t *testing.T) {
	p := open(t)
	p.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"}, set("title", "Medic 1"),
		Act{Do: "add", ID: "item"}, set("title", "Van 2"))
	s := p.do(Act{Do: "new", ID: "van-9500-148-gas", Value: "van-60"})
	require.Empty(t, s.Fault)
	d := draftOf(t, s)
	require.Len(t, d.More, 1, "the other unit is still there")
	assert.Equal(t, "cut-14500-158-gas", d.More[0].Unit.Chassis)
	assert.Equal(t, "Van 2", d.Title)

	papers := papersOf(p)
	first := papers["quote"][:strings.Index(papers["quote"], "Cost")]
	for _, words := range []string{"1. Medic 1", "2. Van 2", "90 %", "axle margin"} {
		assert.Contains(t, first, words)
	}
	for id, title := range map[string]string{"order": "Order sheet", "test": "Test sheet", "labels": "Label data",
		"upkeep": "Maintenance schedule"} {
		assert.Contains(t, papers[id], title+": 1. Medic 1")
		assert.Contains(t, papers[id], title+": 2. Van 2")
		assert.Equal(t, 2, strings.Count(papers[id], title+": "), "each unit once")
	}
	for _, kind := range []string{" · kind 1 of 2 · build 1 unit", " · kind 2 of 2 · build 1 unit"} {
		assert.Contains(t, papers["order"], kind, "a page by itself says what is built by it")
	}
	assert.NotContains(t, papers["order"], "build 2 units")
	asked := p.do(Act{Do: "paper", ID: "bidspec"}).Regions["main"]
	for _, words := range []string{"kind 1 of 2", "kind 2 of 2", "a Type III", "a Type II "} {
		assert.Contains(t, asked, words, "each kind can be put out to bid")
	}
	assert.Contains(t, papers["quote"], "all is said of 1. Medic 1;")
	assert.Contains(t, papers["labels"], "Final-stage manufacturer")
	assert.Contains(t, papers["labels"], "Alterer")

	s = p.do(Act{Do: "paper", ID: "test"})
	ids := map[string]bool{}
	for _, m := range regexp.MustCompile(` id="(f-reading[^"]*)"`).FindAllStringSubmatch(s.Regions["main"], -1) {
		assert.False(t, ids[m[1]], "%s stands twice", m[1])
		ids[m[1]] = true
	}
	assert.NotEmpty(t, ids)
}

// Who reads a quote of two kinds sees both named, the day of the last unit and the figures of each
// kind, whichever the seller had before him.
func TestReaderOfAFleetSeesEveryKind(t *testing.T) {
	seller := open(t)
	s := seller.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"}, set("title", "Medic 1"),
		Act{Do: "add", ID: "item"}, set("title", "Medic 2"), set("item.1.units", "3"), Act{Do: "go", ID: "quote"})
	buyer := open(t)
	buyer.do(Act{Do: "start"})
	s = buyer.do(Act{Do: "open-link", Value: sentLink(t, s)})
	require.Empty(t, s.Fault)
	whole := textOf(s.Regions["main"])
	head, _, found := strings.Cut(whole, "What is in it")
	require.True(t, found)
	for _, words := range []string{"1. Medic 1; 2. Medic 2, 3 units", "First unit, likely (50 %)", "Last unit, safe (90 %)",
		"Remaining payload", "Together", "safe (90 %)"} {
		assert.Contains(t, head, words)
	}
	assert.NotContains(t, head, "Likely date (50 %)", "no date of one kind stands for all")
}

// Each unit of a fleet answers its own needs: an ambulance, a rescue and a hazardous
// materials unit stand on one quote that can be issued, and each keeps its own words.
func TestEachUnitOfAFleetHasItsNeeds(t *testing.T) {
	p := open(t)
	for i, x := range []struct{ name, duty, crew string }{{"Medic 1", "multi", "3"}, {"Rescue 2", "rescue", "4"},
		{"Hazmat 3", "hazmat", ""}} {
		if i > 0 {
			p.do(Act{Do: "add", ID: "item"})
		}
		p.do(set("title", x.name), set("needs.duty", x.duty), set("needs.crew", x.crew), Act{Do: "propose"})
		s := p.do(Act{Do: "take-proposal", ID: "cheapest"}, Act{Do: "carry-usual", ID: x.duty})
		require.Empty(t, s.Fault)
	}
	papers := papersOf(p)
	first := papers["quote"][:strings.Index(papers["quote"], "1 Price")]
	assert.NotContains(t, first, "cannot be issued", "the first is not held against what is asked of the last")
	assert.Contains(t, papers["quote"], "2. Rescue 2: This unit carries no patients")
	assert.Contains(t, papers["quote"], "3. Hazmat 3: Waste water is held on board")
	assert.Contains(t, papers["quote"], "Places for patients: each arrangement")
	assert.Equal(t, 3, strings.Count(papers["quote"], "Loads by compartment, tray and mount"))

	// A must that one of them breaks is told beside the others.
	s := p.do(Act{Do: "work-on", ID: "1"}, set("needs.height", "90"))
	assert.Contains(t, readable(s.Regions["standing"]), "Not what was asked for")
	s = p.do(Act{Do: "work-on", ID: "0"})
	d := draftOf(t, s)
	assert.Equal(t, "multi", d.Needs.Duty)
	assert.Zero(t, d.Needs.HeightIn)
	require.Len(t, d.More, 2)
	assert.Equal(t, "rescue", d.More[0].Needs.Duty)
	assert.EqualValues(t, 90, d.More[0].Needs.HeightIn)
	assert.Contains(t, readable(s.Regions["standing"]), "2. Rescue 2, ")
	assert.Contains(t, papersOf(p)["quote"], "cannot be issued")
}

// Who begins on a chassis has a unit of the kind that is asked for, on a body of that kind.
func TestBegunOnAChassisAUnitIsOfItsKind(t *testing.T) {
	for _, duty := range []string{"bls", "als", "critical", "neonatal", "multi", "rescue", "hazmat", "contaminated"} {
		t.Run(duty, func(t *testing.T) {
			p := open(t)
			s := p.do(set("needs.duty", duty), Act{Do: "new", ID: "cab-16500-169-diesel"})
			require.Empty(t, s.Fault)
			u := draftOf(t, s).Unit
			assert.Equal(t, "cab-16500-169-diesel", u.Chassis)
			d := quotetest.Demo(t).Cat.DutyOf(&u)
			require.NotNil(t, d)
			assert.Equal(t, duty, d.ID)
			text := readable(s.Regions["standing"])
			assert.NotContains(t, text, "Not what was asked for")
			assert.NotContains(t, text, "do not go together")
			s = p.do(Act{Do: "carry-usual", ID: duty})
			require.Empty(t, s.Fault)
			paper := papersOf(p)["quote"]
			assert.NotContains(t, paper, "cannot be issued")
			if duty == "multi" { // the cover says no payload that only one way to ride leaves
				assert.Regexp(t, `Remaining payload\s*[\d,]+ lb\s*[\d,]+ lb at the heaviest: Everybody seated`, paper)
			}
		})
	}
}

// A van has no module, no outside compartment and nothing welded by the plant, and the
// papers are those of who alters it.
func TestVanPapers(t *testing.T) {
	p := open(t)
	p.do(set("needs.type", "II"), set("needs.duty", "bls"), set("needs.crew", "3"), Act{Do: "propose"},
		Act{Do: "take-proposal", ID: "cheapest"})
	papers := papersOf(p)
	for id, paper := range papers {
		assert.NotRegexp(t,
			`(?i)outside compartment|exterior compartment door|Weld, [0-9]|weld seams|final-stage|underside of the module|drain mats`,
			paper, id)
	}
	assert.Contains(t, papers["labels"], "Alterer")
	assert.Contains(t, papers["quote"], "who alters it certifies it as altered")
	weight := readable(p.do(Act{Do: "go", ID: "weight"}).Regions["main"])
	assert.Contains(t, weight, "who alters it certifies it as altered")
	assert.NotContains(t, weight, "certifies the finished vehicle")
}

// What a purchaser buys for a remount is what is printed, 0 is a number of years, and
// measurements that contradict each other are asked about.
func TestRemountPapers(t *testing.T) {
	p := open(t)
	p.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"}, Act{Do: "add", ID: "item"},
		set("title", "Old box"))
	s := p.do(Act{Do: "remount"}, set("existing.height_in", "88"), set("existing.headroom_in", "71"),
		set("existing.mass_lb", "4600"), set("existing.warranty_years", "0"))
	require.Empty(t, s.Fault)
	assert.Len(t, draftOf(t, s).More, 1)
	s = p.do(Act{Do: "go", ID: "start"})
	assert.Contains(t, readable(s.Regions["main"]), "leaves 17.0 in for floor and roof")
	assert.Contains(t, s.Regions["main"], "Photographs wanted for the appraisal")
	assert.Contains(t, papersOf(p)["quote"], "0 years of structural warranty left")

	p.do(Act{Do: "pick", ID: "rm-dye", On: true}, Act{Do: "pick", ID: "rm-warranty", On: true},
		Act{Do: "pick", ID: "rm-allow-door", On: true},
		set("existing.height_in", "77"))
	quote := papersOf(p)["quote"]
	assert.NotContains(t, quote, "years of structural warranty left")
	assert.Contains(t, quote, "its structure warranted for 10 years from delivery")
	assert.Contains(t, quote, "Allowance: door rebuilt, each")
	assert.NotContains(t, quote, "for floor and roof; 3 to 12")
}
