package bid

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/bid/claims"
	"boxwright/pricing/quote"
)

// A purchaser speaks of an exterior compartment by where it is, "street side forward
// compartment", and asks for its inside height, width and depth.

// roomWords name a compartment without saying where it is, and roomPlaces say where.
var (
	roomWords  = wordSet("compartment outside storage dimension inside size every usable space measure interior")
	roomPlaces = wordSet("streetside curbside front forward rear middle center over wheel wheels low lower upper tall " +
		"transverse rearward rearmost forwardmost rescue")
)

func wordSet(text string) map[string]bool {
	out := map[string]bool{}
	for _, w := range strings.Fields(text) {
		for _, s := range stems(w) {
			out[s] = true
		}
	}
	return out
}

// The stems of words that say where a compartment is; that of "forward" is that of "ahead" too.
var forward, front, rear, wheel = stems("forward")[0], stems("front")[0], stems("rear")[0], stems("wheel")[0]

// roomClaim reads tokens as asking for the size of exterior compartments.
func roomClaim(words []string, list []claims.Number) (claim, bool) {
	if len(list) == 0 || !slices.Contains(words, compartmentWord) {
		return claim{}, false
	}
	c := claim{numbers: list, words: words, room: &roomAsk{}}
	for _, w := range measures(words, list) {
		switch {
		case roomPlaces[w]:
			c.room.place = append(c.room.place, w)
		case w == everyWord:
			c.room.every = true
		case !roomWords[w] && claims.DimensionOf(w) == "":
			return claim{}, false
		}
	}
	if len(c.room.place) == 0 && !c.room.every {
		return claim{}, false
	}
	c.room.place = placed(c.room.place)
	for _, n := range list {
		if n.Unit != quantity.Inch || roomSize(config.Compartment{}, n.Of) == nil {
			return claim{}, false
		}
		if n.Sense != "" {
			c.sense, c.stated, c.beyond = n.Sense, true, n.Beyond
		}
	}
	return c, c.stated
}

// compartmentWord and everyWord are the stems of those words.
var compartmentWord, everyWord = stems("compartment")[0], stems("every")[0]

// placed brings words of a place to one form: forward is the front, unless it is ahead of
// the wheels, which are always the rear ones.
func placed(words []string) []string {
	wheels := slices.Contains(words, wheel)
	var out []string
	for _, w := range words {
		switch {
		case w == forward && !wheels:
			w = front
		case wheels && w == rear:
			continue
		}
		out = append(out, w)
	}
	return out
}

// roomAsk is where the compartments are that a line asks for.
type roomAsk struct {
	place []string
	every bool // it speaks of each of them
}

// roomSize is a compartment's inside size in a dimension; nil where there is none of that
// name.
func roomSize(c config.Compartment, of string) *float64 {
	var v float64
	switch of {
	case "height":
		v = float64(c.HeightIn)
	case "width", "length":
		v = float64(c.WidthIn)
	case "depth":
		v = float64(c.DepthIn)
	default:
		return nil
	}
	return &v
}

// rooms are the exterior compartments of a unit where a line asks for them.
func rooms(q *quote.Quote, place []string) []config.Compartment {
	var out []config.Compartment
	for _, c := range q.Edition.Cat.CompartmentsOf(&q.Draft.Unit) {
		if c.Side == "inside" {
			continue
		}
		has := placed(stems(c.Label))
		if !slices.ContainsFunc(place, func(w string) bool { return !slices.Contains(has, w) }) {
			out = append(out, c)
		}
	}
	return out
}

// room answers a line that asks for the size of compartments. Of several that it may mean
// all have to do, or none.
func (j *judge) room(c *claim) part {
	p := part{outcome: quote.Unanswered, where: quote.SpaceSection.Place()}
	var asked []string
	for _, n := range c.numbers {
		asked = append(asked, n.Of+" "+senseWords(cmp.Or(n.Sense, c.sense), n.Beyond)+" "+show(j.in, n.Value, n.Unit))
	}
	p.read = "Compartment size inside, " + strings.Join(asked, ", ")
	list := rooms(j.q, c.room.place)
	if len(list) == 0 {
		return p
	}
	does, fails := 0, 0
	var said []string
	for _, r := range list {
		ok := true
		for _, n := range c.numbers {
			f := config.Figure{Value: *roomSize(r, n.Of), Limit: n.Value, Sense: cmp.Or(n.Sense, c.sense)}
			ok = ok && f.Met() && !(n.Beyond && f.Value == f.Limit)
		}
		if ok {
			does++
		} else {
			fails++
		}
		said = append(said, fmt.Sprintf("%s: %s high, %s wide, %s deep inside", r.Label,
			show(j.in, float64(r.HeightIn), inch), show(j.in, float64(r.WidthIn), inch),
			show(j.in, float64(r.DepthIn), inch)))
	}
	p.offered = strings.Join(said[:min(len(said), mostRooms)], "; ")
	switch {
	case fails == 0:
		p.outcome = quote.Meets
	case does == 0 || c.room.every:
		p.outcome = quote.Excepted
	}
	return p
}

// mostRooms is how many compartments an answer lists.
const mostRooms = 6
