package app

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/pricing/quote"
	"boxwright/web/session"
)

// What had to be fixed and is fixed is told in words that make sense without the finding.
func TestWhatIsFixedIsToldInItsOwnWords(t *testing.T) {
	for code, says := range map[string]string{
		quote.ConflictCode + " Options that do not go together": "All options go together again.",
		quote.MustCode + " Not what was asked for":              "Every must is met.",
		"weight.front Front axle":                               "Fixed: Front axle.",
	} {
		t.Run(code, func(t *testing.T) {
			p := openAt(t, "unit")
			p.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"})
			heard := &session.Heard{Area: "unit", Broken: map[string]string{code: "missed."}}
			p.req["view"] = session.View{Area: "unit", Heard: heard}
			require.Contains(t, p.ask(Act{Do: "go", ID: "unit"}).Say, says)
		})
	}
}

// What a press changed is read out whole, what must be fixed first, and the rest of the
// answer does not speak over it.
func TestAPressIsReadOutWhole(t *testing.T) {
	p := open(t)
	p.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"})
	p.do(Act{Do: "go", ID: "unit"})
	rests := func(want string) {
		t.Helper()
		require.Equal(t, want, p.ask(Act{Do: "rest"}).Say)
		require.Empty(t, p.ask(Act{Do: "decide", Value: "1"}).Say)
	}
	for _, x := range []struct {
		name string
		act  Act
		says []string // in this order
		rest string
	}{
		{"a chapter", Act{Do: "chapter", ID: "exterior"}, []string{"Exterior and marking."}, ""},
		{"an option", Act{Do: "pick", ID: "rec-hitch", On: true}, []string{"Receiver hitch, 2 in is in.", "Price +", " to USD ",
			"Remaining payload "}, ""},
		{"what was undone", Act{Do: "restore", ID: "Undone", Value: "Receiver hitch. And more."}, []string{"Undone: Receiver hitch."}, ""},
		{"a new unit", Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"}, []string{
			"A new unit was begun on Cutaway 14,500 lb", "Remaining payload ", "Delivery ", "Price USD "}, ""},
		{"a list that grows", Act{Do: "add", ID: "lease", Button: "Add a lease"}, []string{"Done: Add a lease."}, ""},
		{"another bid", Act{Do: "add-rival", Button: "Add a bid"}, []string{"Another bid stands in the comparison."}, ""},
		{"a bid taken out", Act{Do: "drop-rival", ID: "0", Button: "Take out: Another bid"}, []string{
			"Done: Take out: Another bid."}, ""},
		{"a document", Act{Do: "paper", ID: "order", Button: "Build sheet"}, []string{"Quote."}, ""},
		{"another document", Act{Do: "paper", ID: "labels", Button: "Labels…"}, []string{"Done: Labels."}, ""},
		{"a file", Act{Do: "save-draft", Button: "Save it"}, []string{"Saved: ", ".json."}, ""},
		{"a search for what is asked for", Act{Do: "go", ID: "needs"}, []string{"Needs."}, ""},
		{"its results", Act{Do: "find", Value: "hitch"}, []string{" found for “hitch”."}, ""},
		{"back to the options", Act{Do: "go", ID: "unit"}, []string{"Unit. Exterior and marking."}, ""},
		{"a search", Act{Do: "search", Value: "hitch"}, []string{" found for “hitch”."}, ""},
		{"a field that cannot be taken", set("unit.payload_lb", "heavy"), []string{"Not taken: “heavy” is not a number"}, ""},
		{"a limit that is broken", set("unit.payload_lb", "4000"), []string{"Must fix: Payload, ", "short of the limit"}, ""},
		{"one that is kept again, by another chassis", Act{Do: "chassis", ID: "cut-14500-158-4x4"}, []string{"Fixed: Payload, ",
			"Cutaway 14,500 lb 4x4, 158 in wheelbase, gasoline is in.", " more changes.", "Price ", "Delivery "}, ""},
		{"a must that is not met", set("needs.fuel", "diesel"), []string{"Must fix: Not what was asked for: diesel (it is gasoline)."}, ""},
		{"every must met", set("needs.fuel", ""), []string{"Every must is met."}, ""},
		{"nothing", Act{Do: "restore"}, nil, ""},
	} {
		t.Run(x.name, func(t *testing.T) {
			s := p.ask(x.act)
			require.Empty(t, s.Fault)
			require.Equal(t, x.says == nil, s.Say == "", s.Say)
			rest := s.Say
			for _, part := range x.says {
				_, after, found := strings.Cut(rest, part)
				require.True(t, found, "%q in %q, in its turn", part, s.Say)
				rest = after
			}
			rests(x.rest)
		})
	}
}

// A check says what it is about, where its own words say "it".
func TestAChecksPlaceIsHeard(t *testing.T) {
	p := openAt(t, "unit")
	p.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"}, Act{Do: "chapter", ID: "exterior"})
	s := p.ask(Act{Do: "pick", ID: "fb-push", On: true})
	require.Contains(t, s.Say, "Check: Left front wheel end, full load: It carries ")
	require.Contains(t, s.Say, "Check: Front axle, full load: 4,")
	require.NotContains(t, s.Say, "full load: Front axle", "nothing is said twice")
}

// In the areas that check, in Compare and in the Office each press says what came of it, and what
// takes long says so when it is there.
func TestPressesOfTheChecksAndTheOfficeAreHeard(t *testing.T) {
	p := open(t)
	p.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"})
	for _, x := range []struct {
		act  Act
		says string
		late string // when all is there
		goes string // where the focus goes
	}{
		{Act{Do: "go", ID: "unit"}, "Unit.", "", ""},
		{Act{Do: "pick", ID: "ss-power", On: true}, "Powered step at the side entry door is in.", "", ""},
		{Act{Do: "none", ID: "side-step"}, "Step at the side entry door: none.", "", ""},
		{Act{Do: "go", ID: "power"}, "Power.", "", ""},
		{set("wiring.areas", "awg"), "Circuits are sized by AWG", "", ""},
		{Act{Do: "units", Button: "Units: US"}, "Metric units.", "", ""},
		{Act{Do: "units", Button: "Units: metric"}, "US units.", "", ""},
		{set("assumed-space.litter-clearance", "60"), "Check: ", "", ""},
		{Act{Do: "go", ID: "space"}, "Space.", "", ""},
		{Act{Do: "go", ID: "delivery"}, "Delivery. At 80 %: ", "", ""},
		{set("unit.needed_by", "2028-06-01"), "The chance of delivery by Thu, Jun 1, 2028 is over 99 %.", "", ""},
		{set("chance", "95"), "At 95 %: ", "", ""},
		{set("chance", "0"), "Not taken: “0” is too few", "", ""},
		{Act{Do: "too-late", Button: "List the options that would be too late"}, "",
			"Every option that can still be added keeps the date.", ""},
		{Act{Do: "go", ID: "equipment"}, "Equipment.", "", ""},
		{Act{Do: "suggest", Button: "Suggest"}, "Everything aboard is stowed already.", "", ""},
		{Act{Do: "go", ID: "catalogue"}, "Catalogue.", "", ""},
		{Act{Do: "lint", Button: "Check the edition in use"}, "Checking.", "No open items were found.", "lint"},
		{Act{Do: "set-beside", Button: "Compare the built-in one"}, "has the same content as the edition in use", "", ""},
		{Act{Do: "drop-beside", Button: "Close the comparison"}, "The comparison is closed.", "", "f-tables"},
		{Act{Do: "go", ID: "seller"}, "Costs and keys.", "", ""},
		{Act{Do: "forget-costs", Button: "Remove"}, "The sealed cost sheet was removed from this device.", "", ""},
		{Act{Do: "go", ID: "compare"}, "Compare.", "", ""},
		{Act{Do: "pin", Button: "Add to compare"}, "Added to compare.", "", ""},
		{Act{Do: "unpin", ID: "0", Button: "Take out"}, "Taken out of Compare.", "", "pin"},
	} {
		t.Run(x.act.Do+" "+x.act.ID+x.act.Value, func(t *testing.T) {
			s := p.ask(x.act)
			require.Empty(t, s.Fault)
			require.Contains(t, s.Say, x.says)
			late, went := "", ""
			for _, d := range s.Do {
				if d.Do == "focus" {
					went = d.ID
				}
			}
			for next := s; next.Partial; late += next.Say {
				next = p.ask(Act{Do: "rest"})
			}
			require.Equal(t, x.goes, went)
			require.Equal(t, x.late, late, "once, when it is there")
		})
	}
}

// Papers can be had in large type.
func TestLargePrint(t *testing.T) {
	p := open(t)
	require.NotContains(t, p.do(Act{Do: "go", ID: "quote"}).Regions["main"], `class="paper large"`)
	large := p.do(Act{Do: "set", ID: "large", On: true}).Regions["main"]
	require.Contains(t, large, `class="paper large"`)
	require.Contains(t, large, `id="f-large" data-act="set" data-id="large" checked`)
}

// What takes long is read out when it is there: why a thing is not available, and proposals.
func TestLateAnswersAreReadOut(t *testing.T) {
	p := open(t)
	p.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"})
	p.do(Act{Do: "go", ID: "needs"})
	answered := func() (say, main string) {
		require.Empty(t, p.ask(Act{Do: "propose"}).Say)
		for {
			s := p.ask(Act{Do: "rest"})
			if say += s.Say; !s.Partial {
				return say, p.do(Act{Do: "rest"}).Regions["main"]
			}
		}
	}
	say, main := answered()
	require.Regexp(t, `^\d proposals?\. .*Lowest price.*: .*, USD [\d,.]+\.`, say)
	require.Contains(t, main, `data-leads="first-proposal"`)
	require.Empty(t, p.ask(Act{Do: "restore"}).Say, "once")

	p.do(set("needs.patients", "4"), set("needs.type", "II"), set("needs.fuel", "diesel"))
	say, main = answered()
	require.Regexp(t, `^No unit found has everything\. .* ways? to go on\.$`, say)
	require.Contains(t, main, `data-leads="give-ups"`, "who asked stands before what would have to go")
}
