package app

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const takeBack = `id="told-undo"`

// The press that takes changes back undoes the last step, so it is offered while they are the
// last step, once, and where the press was.
func TestWhatIsToldCanBeTakenBack(t *testing.T) {
	told := func() *browser {
		p := openAt(t, "unit")
		p.do(Act{Do: "new", ID: "cab-17500-169-4x4-diesel", Value: "mod-153-72"}, Act{Do: "chapter", ID: "exterior"})
		require.Contains(t, p.do(Act{Do: "pick", ID: "fb-winch", On: true}).Regions["main"], takeBack)
		return p
	}
	for _, x := range []struct {
		name, reason string
		acts         []Act
		offered      int
	}{
		{"another area and back", "nothing was changed", []Act{{Do: "go", ID: "price"}, {Do: "go", ID: "unit"}}, 1},
		{"a search that finds it", "it stands in the row alone", []Act{{Do: "search", Value: "winch"}}, 1},
		{"a search that does not", "it stands above", []Act{{Do: "search", Value: "bench"}}, 1},
		{"a name typed", "the press would take back the name", []Act{set("title", "Rescue 12")}, 0},
		{"a note typed elsewhere", "the press would take back the note",
			[]Act{{Do: "go", ID: "quote"}, set("notes", "Seen in May."), {Do: "go", ID: "unit"}}, 0},
		{"undone", "nothing is left to take back", []Act{{Do: "restore", ID: "Undone", Value: "Winch"}}, 0},
	} {
		t.Run(x.name, func(t *testing.T) {
			s := told().do(x.acts...)
			require.Empty(t, s.Fault)
			assert.Equal(t, x.offered, strings.Count(s.Regions["main"], takeBack), x.reason)
		})
	}
}

// What an offer says it would change is what taking it is told to have changed.
func TestOffersCountAsIsTold(t *testing.T) {
	p := openAt(t, "unit")
	p.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"}, Act{Do: "chapter", ID: "exterior"})
	asked := p.do(Act{Do: "pick", ID: "fb-winch", On: true})
	card := asked.Regions["main"]
	assert.Contains(t, asked.Say, "See what is offered.")
	assert.Empty(t, asked.Notice, "where the reader is led to the offers, nothing is laid over them")
	offered := regexp.MustCompile(`on this chassis (\d+) things filled in would change`).FindStringSubmatch(card)
	require.NotNil(t, offered)
	assert.Contains(t, card, "This changes much of the unit: "+offered[1]+" things.")
	here := regexp.MustCompile(`id="offer-fb-winch-(\d)"[^>]*>Take it here`).FindStringSubmatch(card)
	require.NotNil(t, here)
	s := p.do(Act{Do: "offer", ID: "fb-winch", Value: here[1]})
	assert.Contains(t, s.Regions["main"], "This also changed "+offered[1]+" things")
}

// What a press does to credits and surcharges is told, so that the parts add up to the total.
func TestCreditsAreTold(t *testing.T) {
	p := openAt(t, "unit")
	p.do(Act{Do: "new", ID: "cab-17500-169-4x4-diesel", Value: "mod-153-72"}, Act{Do: "chapter", ID: "seating"},
		set("terms.buyer", "county"), Act{Do: "pick", ID: "cot-power", On: true}, Act{Do: "pick", ID: "mount-power", On: true})
	before := p.quote().Price.Total
	s := p.do(Act{Do: "pick", ID: "cpr-sliding", On: true})
	require.Contains(t, s.Regions["main"], takeBack)
	text := regexp.MustCompile(`<[^>]*>`).ReplaceAllString(s.Regions["main"], "")
	assert.Contains(t, text, "the total changes by "+p.quote().Price.Total.Sub(before).Signed()+
		" (Crew safety package credit −1,850.00 among it)")
}
