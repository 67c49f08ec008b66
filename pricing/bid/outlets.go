package bid

import (
	"maps"
	"slices"
	"strconv"
	"strings"

	"boxwright/config/quantity"
	"boxwright/pricing/bid/claims"
	"boxwright/pricing/quote"
)

// outletKind is a kind of outlet that lines ask for by their number.
type outletKind struct {
	label string
	words []string // all of which a line and a thing hold
	ports bool     // counted by their ports, of which one outlet may have several
	volts float64  // that a thing's sentence names; 0 of none
	not   string   // a word that tells another kind
	more  string   // words that may stand beside
}

// told reports whether words tell of this kind.
func (k *outletKind) told(words []string) bool {
	lacks := func(w string) bool { return !slices.Contains(words, w) }
	return !slices.ContainsFunc(k.words, lacks) && (k.not == "" || lacks(k.not))
}

var outletKinds = []outletKind{
	{"Duplex receptacles, 125 V", stems("duplex"), false, 0, "", "hospitalgrade ac power total"},
	{"Oxygen outlets", stems("oxygen outlet"), false, 0, "", "quick connect wall piped total"},
	{"USB ports", stems("usb"), true, 0, "", "port outlet charge charger total"},
	{"12 V outlets", stems("outlet"), false, 12, "usb", "dc power point total"},
}

// outletClaim reads tokens as asking for a number of outlets, all of the unit's or those of
// a place.
func outletClaim(words []string, list []claims.Number) (claim, bool) {
	if len(list) == 0 || slices.Contains(words, everyWord) { // how many places there are is not known
		return claim{}, false
	}
	for k := range outletKinds {
		kind := &outletKinds[k]
		if !kind.told(words) {
			continue
		}
		c := claim{words: words, numbers: list, outlets: kind, sense: atLeast}
		volts := kind.volts == 0
		for _, n := range list {
			switch {
			case n.Unit == quantity.Volt &&
				(n.Value == kind.volts || kind.volts == 0 && claims.SameVolts(n.Value, 125)):
				volts = true
			case n.Unit == "" && c.want == 0 && n.Value >= 1 && n.Sense != atMost && kind.counts(n):
				c.want = n.Value
				if n.Beyond {
					c.want++
				}
			default:
				return claim{}, false
			}
		}
		return c, volts && c.want > 0
	}
	return claim{}, false
}

// counts reports whether a number counts outlets, and not what is named beside them.
func (k *outletKind) counts(n claims.Number) bool {
	return slices.ContainsFunc(n.Near, func(w string) bool {
		return slices.Contains(k.words, w) || w == outletWord || w == portWord
	})
}

var outletWord = stems("outlet")[0]

// counted is the word by which a thing's sentence tells how many it has.
func (k *outletKind) counted() string {
	if k.ports {
		return portWord
	}
	return k.words[len(k.words)-1]
}

var portWord = stems("port")[0]

// outletsOf counts the outlets of a kind in a thing.
func (p *profile) outletsOf(k *outletKind) int {
	if !k.told(slices.Concat(p.label, p.spec)) {
		return 0
	}
	volts, count := k.volts == 0, 0.0
	for _, n := range p.numbers {
		volts = volts || n.Unit == quantity.Volt && n.Value == k.volts
		if n.Unit == "" && (count == 0 || k.ports && n.Value > count) && slices.Contains(n.Near, k.counted()) {
			count = n.Value
		}
	}
	if !volts {
		return 0
	}
	return max(int(count), 1)
}

// portsOfOutlet is how many ports an outlet has at most, where a line counts the outlets.
const portsOfOutlet = 2

// count answers a line that asks for a number of outlets, by what the unit has at that
// place.
func (j *judge) count(c *claim) part {
	k := c.outlets
	p := part{outcome: quote.Unanswered, read: k.label + ", at least " + strconv.Itoa(int(c.want)),
		where: quote.SpecificationSection.Place()}
	beside := wordSet(k.more)
	for _, w := range k.words {
		beside[w] = true
	}
	at := func(o *profile) bool {
		return !slices.ContainsFunc(c.words, func(w string) bool { return !beside[w] && !quiet[w] && !o.words[w] })
	}
	want := int(c.want)
	if k.ports && !slices.Contains(c.words, portWord) {
		want *= portsOfOutlet
	}
	has, most, unsure := 0, 0, false
	var said []string
	more := map[string]int{} // outlets of things that could be added there
	for i := range j.v.list {
		o := &j.v.list[i]
		n := o.outletsOf(k)
		if n == 0 || o.kept {
			continue
		}
		if qty := j.q.Draft.Unit.Qty(o.id); qty > 0 && at(o) {
			has += n * qty
			said = append(said, j.q.Edition.Cat.LabelOf(o.id))
		} else if qty > 0 && slices.Contains(c.words, patientRoom) && !o.words[cabWord] {
			unsure = true // they may be in it, though nothing says so
		} else if qty == 0 && at(o) {
			more[o.id] = n
		}
		most += n * o.most
	}
	p.offered = k.label + ": " + strconv.Itoa(has)
	if said != nil {
		p.offered += " (" + strings.Join(said, "; ") + ")"
	}
	add := ""
	for _, id := range slices.Sorted(maps.Keys(more)) {
		if has+more[id] >= want && j.had(id) && (add == "" || j.price(id) < j.price(add)) {
			add = id
		}
	}
	switch {
	case has >= want:
		p.outcome = quote.Meets
	case unsure:
	case add != "":
		p.outcome, p.take = quote.MeetsWith, Take{add, 0}
	case most < int(c.want):
		p.outcome = quote.Excepted
		p.nearest = strconv.Itoa(most) + " with all that is offered"
	}
	return p
}
