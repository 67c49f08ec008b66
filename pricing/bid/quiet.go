package bid

import "slices"

// quiet are the fillers: words that say only that a thing is there and does what it does.
// A line may hold them of whatever the catalogue offers. Whatever says more, such as "meets",
// "removable", "covered", "separate" or "indicator", is not among them: it is true of a thing
// because the catalogue says so, or it is not read.
var quiet = wordSet(`accept accommodate activate activated activation actuated add added additional afford affix affixed apply
applied area arrange arranged attach attached bring brought capability connect connected constitute contain contained
deliver delivered employ employed expect expected feature featuring get gets getting go goes going house housed
incorporate incorporated incorporating incorporation location look looking occupy offer offered operate operated
operates operating orient oriented perform performs person place placed plus possess present presented
produce produced produces put receive received request requested safely serve served stay stays supply support supported
take taken utilize utilized utilizing wanted wish wished work worked works working yield comfortably conveniently
show showing showed accompany accompanying accompanied positively route routed upon joined join too whenever
remaining span spanning spans terminate terminates terminating coming
facing store stored hit out itself set bear bearing wherever they permitted furthermore moreover additionally
plain corresponding ordering designated pertinent relevant associated aforesaid requisite sufficient sufficiently ample
adequate adequately reliable reliably dependable sturdy neat tidy convenient handy practical effective effectively
satisfactory reasonable arrangement arrangements form format fashion nature provision provisions
insist call calls called state stated deem deemed tell tells told bring
comprising simply merely really even still instance occasion
regard respect event matter occupied general hereby hereinabove described enumerated referenced`)

// loud are the words of a line that are not quiet, or are part of a name of several words
// that the line holds, as "work" is of "work surface"; all of them where no other is left.
func (v *vocabulary) loud(words []string) []string {
	out := make([]string, 0, len(words))
	for i, w := range words {
		if !quiet[w] || v.ofName(words, i) {
			out = append(out, w)
		}
	}
	if len(out) == 0 {
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
