package app

import (
	"encoding/json"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/web/assets/catalogue"
	tour "boxwright/web/guide"
	"boxwright/web/session"
)

func (p *browser) view() *session.View {
	p.t.Helper()
	v := new(session.View)
	require.NoError(p.t, json.Unmarshal(p.req["view"].(json.RawMessage), v))
	return v
}

func (s *shown) steps(do string) (ids []string) {
	for _, x := range s.Do {
		if x.Do == do {
			ids = append(ids, x.ID)
		}
	}
	return ids
}

var next = regexp.MustCompile(` id="([^"]+)" data-next`)

// pointed is the one control that is marked as the next.
func (s *shown) pointed(t *testing.T) string {
	t.Helper()
	found := next.FindAllStringSubmatch(s.Regions["areas"]+s.Regions["main"], -1)
	require.Len(t, found, 1)
	return found[0][1]
}

// Each step goes on by what is true of the quote, and by nothing else.
func TestGuideGoesOnByWhatIsDone(t *testing.T) {
	p := open(t)
	s := p.do(Act{Do: "start"})
	require.Contains(t, s.Regions["main"], `id="guide-start"`)
	s = p.do(Act{Do: "guide", ID: "start"})
	require.Empty(t, s.Fault)
	assert.NotContains(t, s.Regions["main"], `id="guide-start"`)
	assert.Equal(t, "begin-cut-14500-158-gas", s.pointed(t))

	winch := Act{Do: "pick", ID: "fb-winch", On: true}
	for _, x := range []struct {
		reason  string
		act     Act
		step    int // that comes next
		pointed string
	}{
		{"another area is no chassis", Act{Do: "go", ID: "price"}, 1, "area-start"},
		{"another chassis is not the one", Act{Do: "new", ID: "cut-12500-138-gas"}, 1, "area-start"},
		{"the chassis", Act{Do: "new", ID: "cut-14500-158-gas"}, 2, "area-unit"},
		{"the area is on the way", Act{Do: "go", ID: "unit"}, 2, "chapter-seating"},
		{"so is the chapter", Act{Do: "chapter", ID: "seating"}, 2, "o-rest-four"},
		{"another belt is not the one", Act{Do: "pick", ID: "rest-six", On: true}, 2, "o-rest-four"},
		{"the belts", Act{Do: "pick", ID: "rest-four", On: true}, 3, "chapter-medical"},
		{"taken there", Act{Do: "guide", ID: "go"}, 3, "o-cot-power"},
		{"the cot", Act{Do: "pick", ID: "cot-power", On: true}, 4, "chapter-exterior"},
		{"taken there", Act{Do: "guide", ID: "go"}, 4, "o-fb-winch"},
		{"asked for, and ruled out", winch, 5, "chapter-chassis"},
		{"taken there", Act{Do: "guide", ID: "go"}, 5, "o-cut-14500-158-4x4"},
		{"a chassis that carries it", Act{Do: "chassis", ID: "cut-14500-158-4x4"}, 6, "chapter-exterior"},
		{"taken there", Act{Do: "guide", ID: "go"}, 6, "o-fb-winch"},
		{"now it fits", winch, 7, "area-weight"},
		{"taken there", Act{Do: "guide", ID: "go"}, 8, "area-delivery"},
		{"the figure is looked at", Act{Do: "guide", ID: "see"}, 8, "area-delivery"},
		{"the area", Act{Do: "go", ID: "delivery"}, 9, "area-price"},
		{"taken there", Act{Do: "guide", ID: "go"}, 9, "f-terms.deposit_percent"},
		{"no deposit at all", set("terms.deposit_percent", "lots"), 9, "f-terms.deposit_percent"},
		{"the deposit", set("terms.deposit_percent", "15"), 10, "area-quote"},
		{"taken there", Act{Do: "guide", ID: "go"}, 10, "copy-link"},
		{"the link", Act{Do: "copy-link", Value: "#q="}, 11, "print-quote"},
	} {
		t.Run(x.reason, func(t *testing.T) {
			s = p.do(x.act)
			require.Empty(t, s.Fault, x.reason)
			require.Equal(t, x.step, p.view().Guide, x.reason)
			require.Equal(t, x.pointed, s.pointed(t), x.reason)
			assert.Contains(t, s.Regions["main"], `id="guide"`, x.reason)
			assert.NotContains(t, s.Regions["main"], "{", "every name and figure is filled in: %s", x.reason)
		})
	}
	assert.NotContains(t, s.Regions["main"], "Missing:", "the paper names who buys and who sells")
	s = p.do(Act{Do: "print"})
	require.Contains(t, s.Regions["main"], `id="guide-own"`)
	require.NotContains(t, s.Regions["main"], "data-next")
	d := p.draft()
	guide := demoGuide(t)
	for _, id := range append(guide.Brings, "rest-four", "cot-power", "fb-winch") {
		assert.True(t, d.Unit.Has(id), "nothing chosen is gone: %s", id)
	}
	assert.Equal(t, []any{guide.Buyer, guide.Seats, guide.Patients},
		[]any{d.Terms.Buyer, d.Needs.Crew, d.Needs.Patients}, "what the county asks for")

	// A truck to be proud of: margins to spare, needs met, nothing that must be decided.
	q := p.quote()
	for _, code := range []string{"weight.front-axle", "weight.rear-axle", "weight.gross"} {
		f, _ := q.Figure(code)
		assert.Greater(t, f.Margin(), (f.High-f.Low)/2, "%s keeps more than it may be wrong by", code)
	}
	seats, _ := q.Figure("space.seats")
	assert.GreaterOrEqual(t, int(seats.Value), guide.Seats)
	for _, f := range q.Findings {
		assert.Equal(t, config.Note, f.Severity, "%s: %s", f.Where, f.Text)
	}
	assert.True(t, q.Price.SalesTax.Exempt)
	s = p.do(Act{Do: "guide", ID: "end"})
	require.NotContains(t, s.Regions["main"], `id="guide"`)
}

// What the reader has on the table stays: in a record of its own, or in Compare
// where the browser keeps nothing.
func TestGuideTakesNothingAway(t *testing.T) {
	p := open(t)
	s := p.do(Act{Do: "start"}, Act{Do: "guide", ID: "start"})
	assert.Empty(t, s.steps("new-quote"), "nothing was done yet")

	p = open(t)
	p.do(set("buyer.name", "Alder County"), set("seller.name", "Distributor"))
	s = p.do(Act{Do: "guide", ID: "start"})
	assert.Len(t, s.steps("new-quote"), 1)
	assert.Equal(t, demoGuide(t).Service, p.draft().Buyer.Name)
	assert.Equal(t, "Distributor", p.draft().Seller.Name)

	p = open(t)
	p.req["kept"] = false
	p.do(set("buyer.name", "Alder County"))
	s = p.do(Act{Do: "guide", ID: "start"})
	assert.Empty(t, s.steps("new-quote"))
	assert.Len(t, s.Pins, 1)
}

func TestGuideEndsAndGoesOn(t *testing.T) {
	p := open(t)
	p.do(Act{Do: "start"}, Act{Do: "guide", ID: "start"}, Act{Do: "guide", ID: "skip"})
	s := p.do(Act{Do: "guide", ID: "end"})
	assert.NotContains(t, s.Regions["main"], `id="guide"`)
	assert.NotContains(t, s.Regions["main"], `id="guide-start"`, "who declined is not asked again")
	require.Contains(t, s.Regions["main"], `id="guide-on"`)
	s = p.do(Act{Do: "guide", ID: "on"})
	assert.Contains(t, s.Regions["main"], "2 of 11")

	// Another quote has no part in it.
	delete(p.req, "draft")
	s = p.do(Act{Do: "start"})
	assert.NotContains(t, s.Regions["main"], `id="guide"`)
	assert.NotContains(t, s.Regions["main"], `id="guide-on"`)
	assert.Contains(t, s.Regions["main"], `id="guide-again"`, "it can still be found")

	s = p.do(set("title", "Medic 4"))
	assert.NotContains(t, s.Regions["main"], `id="guide-start"`)
}

func demoGuide(t *testing.T) *config.Guide {
	cat, err := config.Read(catalogue.Demo)
	require.NoError(t, err)
	require.True(t, tour.Has(cat))
	return cat.Guide
}

// A catalogue brings its own guided quote, or has none.
func TestGuideIsOfItsCatalogue(t *testing.T) {
	all := map[string]json.RawMessage{}
	require.NoError(t, json.Unmarshal(catalogue.Demo, &all))
	delete(all, "guide")
	without, err := json.Marshal(all)
	require.NoError(t, err)
	p := open(t)
	s := p.do(Act{Do: "start"}, Act{Do: "load-catalogue", ID: "other.json", Value: string(without)})
	require.Contains(t, string(s.Draft), `"title"`)
	assert.NotContains(t, s.Regions["main"], `id="guide`)
	s = p.do(Act{Do: "guide", ID: "start"})
	assert.NotEmpty(t, s.Fault)
	assert.NotContains(t, s.Regions["main"], `id="guide`)

	all["guide"] = json.RawMessage(`{"title": "Our first quote", "offer": "a van in a minute", "from": "cut-14500-158-gas",
		"steps": [{"begin": "van-9500-148-gas", "do": "Begin on “{it}”.", "because": "It is the least."},
		{"open": "quote", "do": "Open Quote.", "because": "That is all."}]}`)
	own, err := json.Marshal(all)
	require.NoError(t, err)
	p = open(t)
	s = p.do(Act{Do: "start"}, Act{Do: "load-catalogue", ID: "own.json", Value: string(own)})
	require.Empty(t, s.Fault)
	assert.Contains(t, s.Regions["main"], "Show me: a van in a minute")
	s = p.do(Act{Do: "guide", ID: "start"})
	assert.Contains(t, s.Regions["main"], "1 of 2: Begin on “Van")
	s = p.do(Act{Do: "new", ID: "van-9500-148-gas"}, Act{Do: "go", ID: "quote"})
	assert.Contains(t, s.Regions["main"], `id="guide-own"`)

	// A guide that runs rests while another catalogue is in use.
	p = open(t)
	p.do(Act{Do: "start"}, Act{Do: "guide", ID: "start"})
	s = p.do(Act{Do: "load-catalogue", ID: "other.json", Value: string(without)})
	require.Empty(t, s.Fault)
	assert.NotContains(t, s.Regions["main"], `id="guide"`)
	s = p.do(Act{Do: "demo-catalogue"})
	assert.Contains(t, s.Regions["main"], `id="guide"`)
}

// No number from outside takes the guide beyond its steps.
func TestGuideOfAForeignView(t *testing.T) {
	for _, n := range []string{"-5", "0", "12", "9000000000"} {
		p := open(t)
		p.do(Act{Do: "start"})
		p.req["view"] = json.RawMessage(`{"area":"start","guide":` + n + `}`)
		for _, id := range []string{"go", "see", "skip", "on", "nonsense", "end"} {
			s := p.do(Act{Do: "guide", ID: id})
			require.Empty(t, s.Fault, n+" "+id)
			require.NotEmpty(t, s.Regions["main"])
		}
	}
}

// Two minutes: reading at 238 words a minute, a usual rate for grown readers of
// English, and 2.7 seconds to think of, reach and press a control, as the
// keystroke-level model has it. Both from memory.
func TestGuideIsReadInTwoMinutes(t *testing.T) {
	p := open(t)
	p.do(Act{Do: "start"}, Act{Do: "guide", ID: "start"}, Act{Do: "new", ID: "cut-14500-158-gas"},
		Act{Do: "guide", ID: "skip"})
	words, presses := 0, 0
	strip := regexp.MustCompile(`<section class="guide screen" id="guide"[^>]*><p><b>(.*?)</b></p><p class="small">(.*?)</p>`)
	for i := 1; i <= 12; i++ {
		p.req["view"] = json.RawMessage(`{"area":"start","guide":` + strconv.Itoa(i) + `}`)
		if i == 1 {
			p.do(Act{Do: "new", ID: demoGuide(t).From})
		}
		text := strip.FindStringSubmatch(p.do(Act{Do: "restore"}).Regions["main"])
		require.Len(t, text, 3, "step %d", i)
		words += len(strings.Fields(text[1] + " " + text[2]))
		presses++
		if !strings.Contains(text[1], "pen ") { // taken there, and then the thing itself
			presses++
		}
	}
	assert.Less(t, float64(words)/238*60+2.7*float64(presses), 120.0, "%d words, %d presses", words, presses)
}

// Where a step's press changed more than itself, the strip leads there, since on a narrow
// screen it stands in view in the place of what was told.
func TestGuideLeadsToWhatElseChanged(t *testing.T) {
	p := open(t)
	p.do(Act{Do: "start"}, Act{Do: "guide", ID: "start"}, Act{Do: "new", ID: "cut-14500-158-gas"},
		Act{Do: "go", ID: "unit"},
		Act{Do: "chassis", ID: "cut-14500-158-4x4"})
	s := p.do(Act{Do: "chapter", ID: "exterior"}, Act{Do: "pick", ID: "fb-winch", On: true})
	require.Contains(t, s.Regions["main"], `id="told"`)
	assert.Contains(t, s.Regions["main"], "See what else changed (2)")
	s = p.do(Act{Do: "guide", ID: "told"})
	assert.Equal(t, []string{"told"}, s.steps("focus"))
	s = p.do(Act{Do: "go", ID: "weight"})
	assert.NotContains(t, s.Regions["main"], "See what else changed")
}
