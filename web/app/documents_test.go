package app

import (
	"encoding/json"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config/csv"
	"boxwright/config/seeds"
)

func (p *browser) unit() (u struct {
	Chassis string
	Picks   []struct{ Option string }
}) {
	var d struct{ Unit json.RawMessage }
	require.NoError(p.t, json.Unmarshal(p.req["draft"].(json.RawMessage), &d))
	require.NoError(p.t, json.Unmarshal(d.Unit, &u))
	return u
}

func county(t *testing.T) string {
	file, err := os.ReadFile("../../testdata/requirements/county.csv")
	require.NoError(t, err)
	return string(file)
}

func TestNeedsToProposals(t *testing.T) {
	p := openAt(t, "needs")
	s := p.do(set("needs.duty", "contaminated"), set("needs.crew", "5"), Act{Do: "find", Value: "powered cot"})
	assert.Contains(t, s.Regions["main"], `id="must-cot-power"`, "options are found by their words")
	s = p.do(Act{Do: "wish", ID: "cot-power", Value: "must"}, Act{Do: "propose"})
	require.Empty(t, s.Fault)
	for _, words := range []string{"lowest price", "most remaining payload", "earliest delivery", "gives up",
		"pairs of chassis and module"} { // a unit may be best by several
		assert.Contains(t, strings.ToLower(s.Regions["main"]), words)
	}
	s = p.do(Act{Do: "take-proposal", ID: "lightest"})
	assert.Contains(t, s.Say, "is showing now")
	assert.Empty(t, s.Pins, "nobody chose the unit that the page begins with")
	s = p.do(Act{Do: "take-proposal", ID: "cheapest"}, Act{Do: "take-proposal", ID: "lightest"})
	assert.Len(t, s.Pins, 2, "the units worked on before are set aside")
	u := p.unit()
	found := map[string]bool{}
	for _, x := range u.Picks {
		found[x.Option] = true
	}
	assert.True(t, found["cot-power"] && found["dp-contam"], "what was asked for is in")
	assert.Contains(t, strings.ToLower(s.Regions["main"]), "earliest delivery", "the others are still there")

	module, chassis := draftOf(t, s).Unit.Body, u.Chassis
	s = p.do(Act{Do: "go", ID: "unit"}, Act{Do: "chapter", ID: "module"})
	assert.Contains(t, s.Regions["main"], `id="keep-`+module+`"`, "the module of a proposal is filled in")
	for _, want := range []string{"With what was filled in: ", "With your choice of: "} {
		s = p.do(Act{Do: "chapter", ID: "chassis"}, Act{Do: "why", ID: "van-9500-148-gas"})
		assert.Contains(t, s.Regions["main"], want+p.app.memory.Edition.Cat.LabelOf(module),
			"and a reason says so, until it is kept")
		p.do(Act{Do: "why", ID: "van-9500-148-gas"}, Act{Do: "keep", ID: module})
	}
	assert.NotContains(t, p.do(Act{Do: "chapter", ID: "module"}).Regions["main"], `id="keep-`+module+`"`)
	assert.Contains(t, p.do(Act{Do: "chapter", ID: "chassis"}).Regions["main"], `id="keep-`+chassis+`"`,
		"the chassis is still filled in")
	p.do(Act{Do: "chassis", ID: chassis})
	assert.Nil(t, draftOf(t, p.do()).Unit.Proposed, "chosen by hand, it is an own choice")
	s = p.do(Act{Do: "go", ID: "needs"})
	s = p.do(set("needs.crew", "6"))
	assert.Contains(t, s.Regions["main"], "The needs have changed")

	s = p.do(Act{Do: "take-proposal", ID: "fastest"})
	assert.NotEmpty(t, s.Fault)
	assert.Equal(t, u.Chassis, p.unit().Chassis, "the unit stays")
	s = p.do(set("needs.duty", "pizza"))
	assert.Contains(t, s.Regions["main"], "not one of the words known")
}

func TestRequirementWalk(t *testing.T) {
	p := openAt(t, "needs")
	p.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"}, Act{Do: "paste-list", Value: county(t)})
	s := p.do(Act{Do: "rest"})
	assert.Contains(t, s.Regions["main"], "40 lines: 36 comply, 3 comply with additions, 1 exception.")
	p.ask(Act{Do: "preview-answers"})
	said := p.ask(Act{Do: "rest"}).Say
	s = p.do(Act{Do: "rest"})
	const meets = "Meets 3 more lines. Price USD +"
	assert.Contains(t, s.Regions["main"], meets, "what it costs is said before it is pressed")
	assert.Contains(t, said, meets, "and read out")
	s = p.do(Act{Do: "take-answer"})
	assert.Contains(t, s.Regions["main"], "40 lines: 39 comply, 1 exception.")
	assert.Contains(t, s.Regions["main"], "For line 17 of the list.", "what came in says which line asked for it")
	assert.NotContains(t, s.Regions["main"], "the unit that was taken", "no unit was taken")
	assert.Contains(t, s.Say, "Added for 3 of the lines.")
	assert.NotContains(t, s.Say, "3 more", "nothing is counted twice")
	s = p.do(Act{Do: "show-list", ID: "exceptions"})
	assert.NotContains(t, s.Regions["main"], "Powered cot, 130 lb</td>")
	p.do(Act{Do: "show-list"})
	s = p.do(set("req.39.verdict", "meets"), set("req.39.answer", "=cmd|1"))
	require.Equal(t, "keep-bids", s.Do[0].Do, "what was corrected is kept for the purchaser's next list")
	assert.Contains(t, s.Do[len(s.Do)-1].Text, "overall height not to exceed 104 in")
	s = p.do(Act{Do: "save-answers"})
	require.Equal(t, "save", s.Do[0].Do)
	rows, err := csv.Read(s.Do[0].Text)
	require.NoError(t, err)
	require.Len(t, rows, 41)
	assert.Equal(t, []string{"40", "Overall height not to exceed 104 in", "Comply"}, rows[40][:3])
	assert.Contains(t, s.Do[0].Text, "'=cmd|1", "no formula leaves the page")
	s = p.do(Act{Do: "paper", ID: "exceptions"})
	assert.Contains(t, s.Regions["main"], "Schedule of exceptions")

	s = p.do(Act{Do: "fill-sheet", ID: "county.csv", Value: county(t)})
	require.Equal(t, "save", s.Do[0].Do)
	assert.Contains(t, s.Do[0].Text, "Response,Offered", "the purchaser's own table, with two columns more")
	s = p.do(Act{Do: "fill-sheet", ID: "other.csv", Value: "No.,Requirement\n1,Something else"})
	assert.Contains(t, s.Fault, "choose the file that the list was taken from")

	s = p.do(Act{Do: "go", ID: "needs"}, Act{Do: "paste-list", Value: strings.Repeat("Siren\n", 1001)})
	assert.Contains(t, s.Regions["main"], "1001 lines", "a list that cannot be read says why")
	p.do(Act{Do: "paste-list", Value: "Gold-plated door handles shaped as swans"}, Act{Do: "rest"})
	s = p.do(Act{Do: "paste-list"})
	assert.Empty(t, s.Fault)
	assert.Contains(t, s.Say, "The list is read", "leaving the field has it read before its button is pressed")
	s = p.do(Act{Do: "save-answers"})
	assert.Contains(t, s.Fault, "1 of its lines are not answered yet", "what is open does not go out")
	s = p.do(Act{Do: "paper", ID: "response"})
	assert.Contains(t, s.Regions["main"], "The place for the signature appears when 1 more line is answered")
	assert.NotContains(t, s.Regions["main"], "Signature and date")
	s = p.do(set("req.0.verdict", "exception"))
	assert.Contains(t, s.Regions["main"], "Signature and date", "signed when nothing is open")
	p.do(Act{Do: "go", ID: "needs"})
	s = p.do(Act{Do: "clear-list"})
	assert.NotContains(t, s.Regions["main"], "40 lines")
	for _, id := range []string{"req.0.pick", "req.-1.pick", "req.x"} {
		s = p.do(set(id, "x"))
		assert.NotEmpty(t, s.Regions, "%s is answered, not feared", id)
	}
}

func TestPapers(t *testing.T) {
	p := open(t)
	p.do(set("number", "Q-7"), Act{Do: "go", ID: "quote"})
	for id, words := range seeds.InOrder(map[string][]string{
		"quote": {"Specification", "Weights", "Annex: the price line by line", "Acceptance", "GVWR of the chassis."},
		"order": {"Long lead", "Cut list", "Circuit schedule", "Framing jigs", "Off with the master disconnect.",
			"Scene load with the engine off, at battery voltage, shedding in this order"},
		"test":   {"Weigh: full fluids", "Whole unit", "Find in order"},
		"labels": {"Final-stage manufacturer", "not a label", "14,500 lb (6,577 kg)", "computed; to be weighed"},
		"upkeep": {"Tire pressures, cold", "common practice, no source"},
		"wrong":  {"Specification"},
	}) {
		s := p.do(Act{Do: "paper", ID: id})
		for _, w := range words {
			assert.Contains(t, s.Regions["main"], w, id)
		}
		if id == "order" || id == "test" || id == "labels" {
			_, paper, _ := strings.Cut(s.Regions["main"], "<article")
			assert.NotContains(t, paper, "USD", "the plant's papers carry no price")
		}
	}
	circuit := regexp.MustCompile(`USB CAB[^%]*`).FindString(textOf(p.do(Act{Do: "paper", ID: "order"}).Regions["main"]))
	assert.Regexp(t, `\s7\.5\s`, circuit, "there is no fuse of 8 A")
	s := p.do(Act{Do: "paper", ID: "test"}, set("reading.weigh.total", "25000"), set("reading.works.belts", "1"))
	assert.Contains(t, s.Regions["main"], "2 readings entered, 1 outside what is accepted.")
	s = p.do(Act{Do: "paper", ID: "labels"})
	assert.Contains(t, s.Regions["main"], "scale, as entered on the test sheet", "what was weighed goes first")
	s = p.do(Act{Do: "paper", ID: "test"}, set("reading.weigh.total", "heavy"))
	assert.Contains(t, s.Regions["main"], "heavy", "what could not be taken stays")
	s = p.do(set("reading.weigh.total", ""), set("reading.nothing", "1"))
	assert.Contains(t, s.Regions["main"], "1 reading entered, 0 outside")
	s = p.do(Act{Do: "save-table"})
	assert.Equal(t, "Q-7-everything.csv", s.Do[0].Name)
}

func TestWhatOptionsAsk(t *testing.T) {
	p := open(t)
	s := p.do(Act{Do: "new", ID: "cut-14500-158-gas"}, Act{Do: "go", ID: "unit"}, Act{Do: "chapter", ID: "exterior"})
	assert.Contains(t, s.Regions["main"], `id="f-detail.let-plain"`, "asked beside the option chosen")
	assert.NotContains(t, s.Regions["main"], `id="f-detail.let-gilt"`, "and beside no other")
	s = p.do(set("detail.let-plain", ` Larkspur <i>County</i> EMS `))
	require.Empty(t, s.Fault)
	assert.Contains(t, s.Regions["main"], `value="Larkspur &lt;i&gt;County&lt;/i&gt; EMS"`)
	assert.Contains(t, s.Regions["main"], `id="rel-let-plain"`, "who says something means to have it")
	s = p.do(set("detail.let-plain", strings.Repeat("x", 121)))
	assert.Contains(t, s.Regions["main"], "is too long by 1 letter;", "the reason stands beneath what was typed")
	assert.Equal(t, "Larkspur <i>County</i> EMS", draftOf(t, s).Unit.Detail("let-plain"), "the earlier text stays")
	p.do(set("detail.let-plain", "Larkspur County EMS, gold"), Act{Do: "pick", ID: "let-gilt", On: true})
	s = p.do(Act{Do: "pick", ID: "let-plain", On: true})
	assert.Contains(t, s.Regions["main"], "Larkspur County EMS, gold", "what was said comes back with its option")
	for _, paper := range []string{"quote", "order"} {
		s = p.do(Act{Do: "paper", ID: paper})
		assert.Contains(t, s.Regions["main"], "Name as it is to read, and its color: Larkspur County EMS, gold.", paper)
		assert.Contains(t, s.Regions["main"], "Unit number: to be named.", paper)
	}
	order := readable(p.do(Act{Do: "paper", ID: "order"}).Regions["main"])
	asks := regexp.MustCompile(`Ask the customer before the work begins:[^.]*\.`).FindString(order)
	assert.Contains(t, asks, "Unit number", "the plant reads on top what it has to be told")
	assert.NotContains(t, asks, "Name as it is to read", "what was told is not asked for again")
	s = open(t).do(Act{Do: "open-link", Value: sentLink(t, s)})
	require.Empty(t, s.Fault)
	assert.Equal(t, "Larkspur County EMS, gold", draftOf(t, s).Unit.Detail("let-plain"), "the link carries it")
	s = p.do(set("detail.let-plain", ""))
	assert.NotContains(t, string(s.Draft), "details", "what is taken back leaves nothing behind")
	s = p.do(set("detail.fb-winch", "x"), set("detail.nothing", "y"))
	assert.NotContains(t, string(s.Draft), "details", "nothing is said to what the unit does not have")
}

func TestRivals(t *testing.T) {
	p := open(t)
	s := p.do(Act{Do: "go", ID: "compare"}, Act{Do: "pin"}, Act{Do: "add-rival"},
		set("rival.0.name", "Northern <b>Coach"), set("rival.0.price", "301,500"), set("rival.0.date", "5/1/2027"),
		set("rival.0.payload", "3100"), set("rival.0.warranty", "3 years"))
	require.Empty(t, s.Fault)
	for _, words := range []string{"Northern &lt;b&gt;Coach", "USD 301,500.00", "Sat, May 1, 2027", "3,100\u00a0lb",
		"3 years", "the unit showing now is USD"} {
		assert.Contains(t, s.Regions["main"], words)
	}
	assert.NotContains(t, s.Regions["main"], "<b>Coach")
	s = p.do(set("rival.0.price", "cheap"), set("rival.9.name", "x"))
	assert.Contains(t, s.Regions["main"], "USD 301,500.00", "the earlier value stays")
	s = p.do(Act{Do: "add-rival"}, Act{Do: "add-rival"}, Act{Do: "add-rival"}, Act{Do: "drop-rival", ID: "0"},
		Act{Do: "drop-rival", ID: "7"})
	assert.NotContains(t, s.Regions["main"], "Northern")
	assert.NotContains(t, string(p.req["draft"].(json.RawMessage)), "Another bid", "bids are part of no quote")
}

// Whoever compares names the columns. The name goes with the unit that is added, and is part
// of no quote.
func TestColumnsAreNamed(t *testing.T) {
	p := open(t)
	heads := func(acts ...Act) []string {
		main := p.do(acts...).Regions["main"]
		head, _, _ := strings.Cut(main, "</thead>")
		var names []string
		for _, m := range regexp.MustCompile(`<th scope="col"[^>]*><b><bdi>([^<]*)<`).FindAllStringSubmatch(head, -1) {
			names = append(names, m[1])
		}
		return names
	}
	p.do(Act{Do: "go", ID: "compare"}, set("column.own", "Low bid"), Act{Do: "pin"}, Act{Do: "pick", ID: "fb-push", On: true})
	title := heads()[1]
	assert.Equal(t, []string{"Low bid", title}, heads(), "what was added keeps its name, and the changed unit needs another")
	assert.Equal(t, []string{"Low bid", "With bumper"}, heads(set("column.own", "With bumper")))
	assert.Equal(t, []string{"Low &lt;b&gt;", "With bumper"}, heads(set("column.0", "Low <b>")))
	assert.Equal(t, []string{"With bumper", "Low &lt;b&gt;"}, heads(Act{Do: "swap", ID: "0"}))
	assert.NotContains(t, string(p.req["draft"].(json.RawMessage)), "Low")
	assert.Empty(t, heads(set("column.7", "x"))[2:])
	assert.Equal(t, title, heads(set("column.0", ""))[0], "a blank one is called by its title")
}

// What leans further than is usual is said on the page of the weights, with what would mend it:
// the unit for several patients carries its litter and cabinets on one side.
func TestALeanIsSaidOnPaper(t *testing.T) {
	p := open(t)
	text := textOf(p.do(set("needs.duty", "multi"), set("needs.crew", "3"), Act{Do: "propose"},
		Act{Do: "take-proposal", ID: "cheapest"}, Act{Do: "carry-usual", ID: "multi"},
		Act{Do: "go", ID: "quote"}).Regions["main"])
	_, weights, known := strings.Cut(text, "3 Weights")
	require.True(t, known)
	weights, _, _ = strings.Cut(weights, "4 Electrical")
	assert.Regexp(t, `Left-right difference, of gross, left side heavy is 5\.\d.%, .* over the limit of 5\.0.% \(`,
		weights)
	assert.Contains(t, weights, "Move loose equipment or options from the left (street) to the right (curb) side")
}
