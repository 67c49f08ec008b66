package page

import (
	"slices"
	"strings"

	. "boxwright/web/page/markup"
)

// Term is a word of the trade, or of this page, that somebody may ask about. Its
// one definition stands wherever the word needs it: in the list of each area that
// names it, and beside the figures and fields in About.
type Term struct {
	Name, Text string
	Source     string // with how well it is known
	About      string // codes of figures and ids of fields
	Aside      bool   // it stands beside those alone, not in the list of its area
}

// Sources that stand more than once.
const (
	ByPage    = "How this page works"
	Practice  = "Common practice, no source"
	KKKE      = "KKK-A-1822E 3.7.6, sheet 33, read from the text"
	AIAM0613  = "49 CFR 567 as quoted in NHTSA interpretation aiam0613, read"
	NTEA      = "NTEA's net payload method, as printed in Roads & Bridges, read"
	Simulated = "Worked out many times from the shortest, likely and longest time of each step; " +
		"the times are the catalogue's"
)

// Words that more than one area lists.
var (
	Types = &Term{
		Name: "Type I, II, III",
		Text: "I is a module on a cab-chassis, II a van, III a module on a cutaway van. AD, additional " +
			"duty, is the heavier kind of I and III: more than 14,000 lb GVWR.",
		Source: "Bands of KKK-A-1822F: Type I and I-AD read in a published comparison, the others from " +
			"memory",
		About: "needs.type",
	}
	GVWR = &Term{
		Name: "GVWR",
		Text: "Gross vehicle weight rating: the most the vehicle may weigh with everything and " +
			"everybody aboard. The chassis maker states it and the final-stage manufacturer " +
			"certifies it. It may be less than the axle ratings together.",
		Source: AIAM0613,
		About:  "weight.gross",
	}
	GAWR = &Term{
		Name: "GAWR",
		Text: "Gross axle weight rating: the most that one axle may carry on the ground. The weakest " +
			"of axle, springs, brakes, wheels and tires decides it, so one stronger part does not " +
			"raise it.",
		Source: NTEA,
		About:  "weight.front-axle weight.rear-axle",
	}
	Payload = &Term{
		Name: "Payload",
		Text: "GVWR less curb weight: what is there for people, patients and equipment. Remaining " +
			"payload is what is left when all of those are aboard.",
		Source: NTEA + "; the least that KKK-A-1822F asks for, read in a published comparison",
		About:  "weight.payload weight.payload-left unit.payload_lb",
	}
	LikelyRange = &Term{
		Name: "Likely range",
		Text: "Every weight and its place has a tolerance, what the plant builds is off together, and one unit " +
			"differs from the next. If those factors are right, the range holds the true value 95 times in 100.",
		Source: ByPage,
	}
	HotIdle = &Term{
		Name: "Hot idle",
		Text: "A hot alternator on a slow engine gives far less than its nameplate says. Here the load " +
			"on scene meets what it gives at 200 F under the hood at low idle.",
		Source: KKKE + "; low idle in place of high idle is this page's own, stricter check",
		About:  "power.idle",
	}
	AmpsLeftHot = &Term{
		Name: "Amps left, hot",
		Text: "What the alternator gives at 200 F under the hood at high idle, less the load on scene with " +
			"everything that the unit has.",
		Source: KKKE,
		About:  ampsLeft,
	}
	HowKnown = &Term{
		Name: "Read, from memory, common practice",
		Text: "How well a limit is known. Read: in the standard itself or a quotation of it. From " +
			"memory and common practice: nobody here read it, so it is a default that you may " +
			"replace in Standards, and it never stops a unit.",
		Source: ByPage,
	}
	EvenOdds = &Term{
		Name:   "Likely date (50 %)",
		Text:   "Half of the time the unit is delivered by this day: a coin toss.",
		Source: Simulated,
	}
	NineInTen = &Term{
		Name:   "Safe date (90 %)",
		Text:   "Nine times in ten the unit is delivered by this day. This is the one to promise.",
		Source: Simulated,
		About:  "unit.needed_by",
	}
	PriceBook = &Term{
		Name: "Price book",
		Text: "The catalogue's list of prices from a given day on. The book in force on the day of the " +
			"quote counts, so a later rise does not touch it.",
		Source: ByPage,
		About:  "date",
	}
	Signature = &Term{
		Name: "Signature",
		Text: "A mark that only the holder of the key can make; if anything in the quote changes, it " +
			"no longer holds. The list of signers is the catalogue's: the keys that it knows.",
		Source: "Ed25519, an open standard",
	}
	EditionAndContent = &Term{
		Name: "Edition and content",
		Text: "A catalogue edition has a name and a fingerprint of everything in it. Two quotes with " +
			"one content were computed from the same data to the byte.",
		Source: "SHA-256 over the catalogue's canonical JSON",
	}
)

// StandingWords stand beside the figures that every area shows.
var StandingWords = []*Term{GAWR, Payload, LikelyRange, AmpsLeftHot, EvenOdds, NineInTen}

// WordsOf lists the words of an area, or of the figures beside it.
func WordsOf(id, title string, words []*Term) Part {
	var list []Part
	for _, t := range words {
		if !t.Aside {
			list = append(list, El("dt", Text(t.Name)), El("dd", Text(t.Text), t.from()))
		}
	}
	if list == nil {
		return nil
	}
	return El("details", Class("words screen"), At("id", "words-"+id),
		El("summary", Text(title)), El("dl", list...))
}

func (t *Term) from() Part { return El("span", Class("how"), Text(t.Source+".")) }

// help explains a figure or a field where it stands; nil where no word of it
// needs to be.
func help(p *Page, code string) Part {
	for _, t := range p.Glossary {
		if slices.Contains(strings.Fields(t.About), code) {
			return El("details", Class("help screen"), At("id", "help-"+code),
				El("summary", At("id", "ask-"+code), At("aria-label", "What is meant: "+t.Name),
					El("span", At("aria-hidden", "true"), Text("?"))),
				El("p", El("b", Text(t.Name+". ")), Text(t.Text), t.from()))
		}
	}
	return nil
}
