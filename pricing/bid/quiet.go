package bid

import (
	"slices"
	"strings"
)

// quiet are words that say only that a thing is there and does what it does. A line may
// hold them of whatever the catalogue offers; words that ask for more, such as "meets",
// "tested", "withstands" or "removable", are not among them.
var quiet = func() map[string]bool {
	out := map[string]bool{}
	for _, w := range strings.Fields(`bear bearing accompany accompanied encompass house housed mode setup
arrangement capability provision package
scheme expect expected request requested wish wished want wanted going go goes get gets getting look looking constitute
incorporation devote devoted accept accommodate afford act activate activated actuate actuated add added affix affixed
apply applied arrange arranged arrangement assemble assembled assist attach attached bear bring brought cause circle
combine combined connect connected contain contained control controlled controls cover covered covering covers
deliver delivered deliver direct directed distribute distributed drive drives employ employed encircle ended engage
event events exit exits exiting extending facilitate feature featuring follow follows form formed function functions
gather generate handle handles holder incorporate incorporated incorporating indicate indicates indicated indication
indicator illuminate illuminated illuminates illumination lie lies link linked maintain maintained maintains manage
mount name named occupy offer offered operate operated operates operating operation opposed orient oriented output
perform performs piece pieces place plus possess prepare prepared present presented produce produced produces project
put receive received receives record recorded records replace replaced replaces represent respond rest rests result
return route routed selected selection separate separately serve served set sets share shared spread
staff start stay stays store stored storing structure structures supplement supplements supply support supported
supporting supports surround surrounded surrounding sustain take taken together total treat treated treats type
upholstered upholster utilize utilized utilizing work worked works working wrap wrapped yield crew member members
personnel people person safely convenient conveniently comfortable comfortably area space location place
joint joints protect protects protecting protected match matches matching facing faces faced aim aimed independent
independently tied tie ties product products job defect defects cause against additional underside underbody
american decal decals`) {
		for _, s := range stems("x " + w) {
			if s != "x" {
				out[s] = true
			}
		}
	}
	return out
}()

// loud are the words of a line that are not quiet, or are part of a name of several words
// that the line holds, as "mount" is of "cot mount"; all of them where no other is left.
func (v *vocabulary) loud(words []string) []string {
	var out []string
	for i, w := range words {
		if !quiet[w] || v.ofName(words, i) {
			out = append(out, w)
		}
	}
	if out == nil {
		return words
	}
	return out
}

// ofName reports whether a word stands in a line as part of a name of several words.
func (v *vocabulary) ofName(words []string, at int) bool {
	return slices.ContainsFunc(v.phrases[words[at]], func(name []string) bool {
		for from := max(0, at-len(name)+1); from <= at && from+len(name) <= len(words); from++ {
			if slices.Equal(words[from:from+len(name)], name) {
				return true
			}
		}
		return false
	})
}
