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
		{"another area is no chassis", Act{Do: "go", ID: "price"}, 1, "area-needs"},
		{"another chassis is not the one", Act{Do: "new", ID: "cut-12500-138-gas"}, 1, "area-needs"},
		{"the chassis", Act{Do: "new", ID: "cut-14500-158-gas"}, 2, "area-unit"},
		{"the area is on the way", Act{Do: "go", ID: "unit"}, 2, "chapter-seating"},
		{"so is the chapter", Act{Do: "chapter", ID: "seating"}, 2, "o-rest-four"},
		{"another belt is not the one", Act{Do: "pick", ID: "rest-six", On: true}, 2, "o-rest-four"},
		{"the belts", Act{Do: "pick", ID: "rest-four", On: true}, 3, "chapter-medical"},
		{"taken there", Act{Do: "guide", ID: "go"}, 3, "o-cot-power"},
		{"the cot", Act{Do: "pick", ID: "cot-power", On: true}, 4, "chapter-exterior"},
		{"taken there", Act{Do: "guide", ID: "go"}, 4, "o-fb-winch"},
		{"asked for, and ruled out", winch, 5, "mend-fb-winch-0"},
		{"the answer was closed", Act{Do: "why", ID: "fb-winch"}, 5, "o-fb-winch"},
		{"taken there, it is open again", Act{Do: "guide", ID: "go"}, 5, "mend-fb-winch-0"},
		{"a way out", Act{Do: "mend", ID: "fb-winch", Value: "0"}, 6, "area-weight"},
		{"taken there", Act{Do: "guide", ID: "go"}, 7, "area-delivery"},
		{"the figure is looked at", Act{Do: "guide", ID: "see"}, 7, "area-delivery"},
		{"the area", Act{Do: "go", ID: "delivery"}, 8, "area-price"},
		{"taken there", Act{Do: "guide", ID: "go"}, 8, "f-terms.deposit_percent"},
		{"no deposit at all", set("terms.deposit_percent", "lots"), 8, "f-terms.deposit_percent"},
		{"the deposit", set("terms.deposit_percent", "15"), 9, "area-quote"},
		{"taken there", Act{Do: "guide", ID: "go"}, 9, "copy-link"},
		{"the link", Act{Do: "copy-link", Value: "#q="}, 10, "print-quote"},
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
	s = p.do(Act{Do: "print"})
	require.Contains(t, s.Regions["main"], `id="guide-own"`)
	require.NotContains(t, s.Regions["main"], "data-next")
	d := p.draft()
	gone := 0
	for _, id := range tour.Brings {
		if !d.Unit.Has(id) {
			gone++
		}
	}
	assert.Equal(t, 1, gone, "the way out took one of them, and no more")
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
	assert.Empty(t, p.draft().Buyer.Name)
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
	assert.Contains(t, s.Regions["main"], "2 of 10")

	// Another quote has no part in it.
	delete(p.req, "draft")
	s = p.do(Act{Do: "start"})
	assert.NotContains(t, s.Regions["main"], `id="guide"`)
	assert.NotContains(t, s.Regions["main"], `id="guide-on"`)
	assert.Contains(t, s.Regions["main"], `id="guide-again"`, "it can still be found")

	s = p.do(set("title", "Medic 4"))
	assert.NotContains(t, s.Regions["main"], `id="guide-start"`)
}

// With a catalogue that lacks any id the steps speak of there is no guide.
func TestGuideNeedsItsCatalogue(t *testing.T) {
	cat, err := config.Read(catalogue.Demo)
	require.NoError(t, err)
	require.True(t, tour.Has(cat))
	for _, id := range append([]string{"cut-14500-158-gas", "rest-four", "cot-power", "fb-winch", tour.From},
		tour.Brings...) {
		other := strings.ReplaceAll(string(catalogue.Demo), `"`+id+`"`, `"x`+id+`"`)
		p := open(t)
		s := p.do(Act{Do: "start"}, Act{Do: "load-catalogue", ID: "other.json", Value: other})
		require.Contains(t, string(s.Draft), `"title"`, id)
		assert.NotContains(t, s.Regions["main"], `id="guide`, id)
		s = p.do(Act{Do: "guide", ID: "start"})
		assert.NotEmpty(t, s.Fault, id)
		assert.NotContains(t, s.Regions["main"], `id="guide`, id)
	}
	// A guide that runs rests while another catalogue is in use.
	p := open(t)
	p.do(Act{Do: "start"}, Act{Do: "guide", ID: "start"})
	s := p.do(Act{Do: "load-catalogue", ID: "other.json",
		Value: strings.ReplaceAll(string(catalogue.Demo), `"fb-winch"`, `"other-winch"`)})
	require.Empty(t, s.Fault)
	assert.NotContains(t, s.Regions["main"], `id="guide"`)
	s = p.do(Act{Do: "demo-catalogue"})
	assert.Contains(t, s.Regions["main"], `id="guide"`)
}

// No number from outside takes the guide beyond its steps.
func TestGuideOfAForeignView(t *testing.T) {
	for _, n := range []string{"-5", "0", "11", "9000000000"} {
		p := open(t)
		p.do(Act{Do: "start"})
		p.req["view"] = json.RawMessage(`{"area":"needs","guide":` + n + `}`)
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
	for i := 1; i <= 11; i++ {
		p.req["view"] = json.RawMessage(`{"area":"needs","guide":` + strconv.Itoa(i) + `}`)
		if i == 1 {
			p.do(Act{Do: "new", ID: tour.From})
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
