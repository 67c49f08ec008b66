package claims

import (
	"strings"
)

// saying is what people say in several words, and how it is read.
type saying struct {
	begins bool // only where a sentence begins
	from   []saidWord
	to     []string
}

// saidWord is one of the words of a saying, in any of some forms.
type saidWord struct {
	any     map[string]bool
	missing bool // it may be missing
	buyer   bool // the names of the purchaser stand there too
	one     bool // any one word stands there
}

// sayings are ways of building a sentence that tell of no thing in particular, one a line: the forms of a word
// parted by bars, "?" behind those that may be missing, "%" for the purchaser, "*" for any word, which "*" on the
// right stands for, as "^" does for the first; "=" stands for what begins a sentence.
var sayings = sayingsOf(`
i|we|you|they|that d|ll|ve|re >
give|get me|us >
just? make|be sure|certain that|it|its|they|the? >
= can|could you do|build|get|put|quote >
ask|asks|asking|look|looking for >
ought to > shall
= hi|hello|dear|hey * , >
= first|next|last|another thing|off|item|point :|, >
= prior to the? acceptance|delivery|shipment of? the|each? vehicle|unit|ambulance? ,? >
ones|one that|which >
,? the * of which|whom > with *
,? of which|whom the > with
,? whose * > with *
,? the * thereof > with *
pt > patient
supplemented|complemented|accompanied|joined by > and
over|for|along|through|throughout|down|across its|their|the full length > full length
continuous|unbroken|uninterrupted? over|for|along|through|throughout its|their|the full|whole|entire height > full height
over|for|along|through|throughout|across its|their|the full|whole|entire width > full width
running|run|runs|extending|extend|extends its|their|the full length > full length
on|around|about|along its|their all around > all around
run|runs|running|work|works|working|operate|operates|operating|operated|powered|fed|energized|driven|supplied from|by|through|via|on|with|off of? the|its|a|an? same? shore|shoreline cord|cable|plug > on shoreline
shore|shoreline cord|cable > shoreline
tied|wired|plugged|connected|hooked|cabled up? into|to|in the? shoreline > on shoreline
burn|burns|burning|burned regular|unleaded? gasoline > gasoline
burn|burns|burning|burned diesel fuel? > diesel
with|, one always|constantly|continuously hot|live|energized|powered > with live every time
before|less|without|excluding anything|everything|whatever|what is|goes|sits|stands? mounted|put|added? on|atop the roof > excluding roof equipment
being the? difference between|of its|the? gvwr and|less its|the? curb weight > less curb weight
being its|the? gvwr|rating less its|the? curb weight > less curb weight
driven|delivered|brought|transported|deliver|bring|drive it|unit|vehicle|ambulance? by? the? contractor|vendor|bidder|builder|dealer|manufacturer? to the|our|its|their|a? INN? INN? INN? INN? PLACE > delivered to the purchaser
furnished|provided|supplied|given|submitted|delivered to|with the %|owner|user with the? vehicle|unit|ambulance > furnished
furnished|provided|supplied|given|submitted to the % > ^
accessible|reached|reachable|placed|located behind > behind
at|upon|on delivery of? the|each? vehicle|unit|ambulance? >
our unit|truck|vehicle number > unit number
led heads in > led lights in
led heads across > led lights across
in|for|of the? back there > in back
for the? back > in back
emergency warning light|lights|lighting|lamp|lamps > warning lights
sounding|sounds|heard in|at > in
reads|reading|read # > #
`)

// where a purchaser is, and what may stand before the name of the place
const (
	buyersPlaces = "headquarters|hq|garage|yard|station|stations|shop|center|facility|office|division|base|quarters|" +
		"firehouse|house|building|premises|location|site|door|barn|department|agency"
	beforePlaces = "%|ems|fleet|services|service|medical|health|fire|rescue|central|main|maintenance|public|works|motor|" +
		"pool|location|premises|place|site|of|the|ordering|own|emergency|operations"
)

// sayingsOf are by their first words those that a text lists.
func sayingsOf(text string) map[string][]saying {
	out := map[string][]saying{}
	for _, line := range strings.Split(strings.TrimSpace(text), "\n") {
		line = strings.ReplaceAll(strings.ReplaceAll(line, "INN", beforePlaces), "PLACE", buyersPlaces)
		from, to, _ := strings.Cut(line, " >")
		s := saying{to: strings.Fields(to)}
		from, s.begins = strings.CutPrefix(from, "= ")
		for _, w := range strings.Fields(from) {
			x := saidWord{any: map[string]bool{}}
			w, x.missing = strings.CutSuffix(w, "?")
			for _, f := range strings.Split(w, "|") {
				switch f {
				case "%":
					x.buyer = true
				case "*":
					x.one = true
				default:
					x.any[f] = true
				}
			}
			s.from = append(s.from, x)
		}
		for i, x := range s.from {
			for f := range x.any {
				out[f] = append(out[f], s)
			}
			if !x.missing {
				break
			}
			s.from = s.from[i+1:]
		}
	}
	return out
}

// plainly reads what people say in one way.
func plainly(list []Token) []Token {
	out := make([]Token, 0, len(list))
	for i := 0; i < len(list); {
		n, to := 0, []string(nil)
		any := ""
		for _, s := range sayings[list[i].raw] {
			if s.begins && i > 0 && list[i-1].Kind != Stop {
				continue
			}
			if m, one := s.in(list[i:]); m > n {
				n, to, any = m, s.to, one
			}
		}
		if n == 0 {
			out = append(out, list[i])
			i++
			continue
		}
		for _, w := range to {
			t := Token{Kind: Word, raw: w, End: list[i+n-1].End}
			switch w {
			case "^":
				t.raw = list[i].raw
			case "*":
				t.raw = any
			case ",":
				t.Kind, t.End = Break, list[i].End
			case "#":
				t = list[i+n-1]
			}
			out = append(out, t)
		}
		i += n
	}
	return out
}

// in is how many tokens from the first a saying takes, 0 where it does not stand there, and the word that may be
// any.
func (s *saying) in(list []Token) (n int, any string) {
	for i := range s.from {
		x := &s.from[i]
		switch {
		case n < len(list) && x.stands(&list[n]):
			if x.one {
				any = list[n].raw
			}
			n++
		case !x.missing:
			return 0, ""
		}
	}
	return n, any
}

func (x *saidWord) stands(t *Token) bool {
	switch {
	case x.any["#"]:
		return t.Kind == Count && t.Num.Unit != ""
	case t.Kind == Stop, t.Kind == Count, t.Kind == Day:
		return false
	case x.one:
		return t.Kind == Word
	}
	return x.any[t.raw] || x.buyer && stem(t.raw) == purchaser
}
