package config

import (
	"fmt"
	"slices"
	"strings"
)

// Guide is the guided quote of a catalogue: it walks a newcomer through the page on
// one real unit, step by step.
type Guide struct {
	Title    string `json:"title"`              // of the quote that is begun
	Offer    string `json:"offer"`              // what it builds, for the button that begins it
	From     string `json:"from"`               // chassis that quote stands on before the first step
	Buyer    string `json:"buyer,omitempty"`    // kind of buyer, as the terms name it
	Seats    int    `json:"seats,omitempty"`    // people asked for
	Patients int    `json:"patients,omitempty"` // on cots, asked for
	Service  string `json:"service,omitempty"`  // name of the buyer
	Dealer   string `json:"dealer,omitempty"`   // name of the seller, where the reader has none
	Number   string `json:"number,omitempty"`   // of the quote
	// options that the buyer always has: they come in with the first step
	Brings []string    `json:"brings,omitempty"`
	Steps  []GuideStep `json:"steps"`
}

// GuideStep is one thing to do; exactly one of Begin to Press says what. It is over
// when the quote shows that it was done, whoever did it. In Do and Because, {it} is
// what the catalogue calls the chassis or the option, {chapter} where the option
// stands, {front} and {rear} what the axles have to spare, with the chance of being
// over in parentheses, {even} and {nine} the two delivery dates.
type GuideStep struct {
	Begin   string `json:"begin,omitempty"`   // chassis to begin a unit on
	Chassis string `json:"chassis,omitempty"` // to move the unit to
	Pick    string `json:"pick,omitempty"`    // option to choose
	Ask     string `json:"ask,omitempty"`     // option to try: asking is enough where it cannot be had
	Open    string `json:"open,omitempty"`    // one of GuideAreas to open
	Deposit bool   `json:"deposit,omitempty"` // a deposit is to be typed in
	Press   string `json:"press,omitempty"`   // one of GuidePresses

	Look    string `json:"look,omitempty"` // code of a figure to look at first, in the area before
	Do      string `json:"do"`
	Because string `json:"because"`
}

// What a step can open and press.
var (
	GuideAreas = []string{"start", "needs", "equipment", "standards", "unit", "weight", "power", "space", "delivery",
		"price", "compare", "quote", "catalogue", "seller"}
	GuidePresses = []string{"copy-link", "print"}
)

const maxGuideSteps = 30

// guide checks the guided quote.
func (k *checker) guide() {
	g := k.c.Guide
	if g == nil {
		return
	}
	chassis := func(where, id string) {
		if id != "" && k.c.ChassisByID(id) == nil {
			k.add("unknown-id", where, "%q is not a chassis", id)
		}
	}
	option := func(where, id string) {
		if id != "" && k.c.OptionByID(id) == nil {
			k.add("unknown-id", where, "%q is not an option", id)
		}
	}
	if strings.TrimSpace(g.Title) == "" || strings.TrimSpace(g.Offer) == "" {
		k.add("missing", "guide title, offer", "needs a text")
	}
	if g.From == "" {
		k.add("missing", "guide from", "names the chassis the quote stands on before the first step")
	}
	chassis("guide from", g.From)
	for i, id := range g.Brings {
		option(fmt.Sprintf("guide brings[%d]", i), id)
	}
	if g.Seats < 0 || g.Seats > 20 || g.Patients < 0 || g.Patients > 10 {
		k.add("range", "guide seats, patients", "are 0 to 20 people and 0 to 10 patients")
	}
	if len(g.Service) > 400 || len(g.Dealer) > 400 || len(g.Number) > 60 {
		k.add("range", "guide service, dealer, number", "are longer than 400, 400 and 60 characters")
	}
	if len(g.Steps) == 0 || len(g.Steps) > maxGuideSteps || g.Steps[0].Begin == "" {
		k.add("value", "guide steps", "are 1 to %d, and the first begins a unit on a chassis", maxGuideSteps)
	}
	for i := range g.Steps {
		s, where := &g.Steps[i], fmt.Sprintf("guide steps[%d]", i)
		chassis(where+" begin", s.Begin)
		chassis(where+" chassis", s.Chassis)
		option(where+" pick", s.Pick)
		option(where+" ask", s.Ask)
		k.oneOf(where+" open", s.Open, append([]string{""}, GuideAreas...)...)
		k.oneOf(where+" press", s.Press, append([]string{""}, GuidePresses...)...)
		said := []string{s.Begin, s.Chassis, s.Pick, s.Ask, s.Open, s.Press,
			map[bool]string{true: "deposit"}[s.Deposit]}
		if n := len(slices.DeleteFunc(said, func(t string) bool { return t == "" })); n != 1 {
			k.add("value", where, "says %d things to do; a step is one of begin, chassis, pick, ask, open, "+
				"deposit, press", n)
		}
		if strings.TrimSpace(s.Do) == "" || strings.TrimSpace(s.Because) == "" {
			k.add("missing", where+" do, because", "needs a text")
		}
	}
}
