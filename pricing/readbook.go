package pricing

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/pricing/money"
)

// Limits on a price book, checked before and after decoding.
const (
	MaxBookBytes = 4 << 20
	maxEntries   = 500 // of any list in the book
	maxText      = 400 // bytes of any text in the book
	maxDays      = 3650

	// MaxUnits is the most units of one quote.
	MaxUnits = 500
)

// ReadBook decodes a price book strictly and checks it whole against its
// catalogue. The error, when there is one, is a config.Problems naming every
// fault and where it stands.
func ReadBook(raw json.RawMessage, cat *config.Catalogue) (*Book, error) {
	if len(raw) > MaxBookBytes {
		return nil, config.Problems{{Code: "book.too-large", Where: "price_book",
			Text: fmt.Sprintf("is %d bytes; the most that is read is %d", len(raw), MaxBookBytes)}}
	}
	if len(bytes.TrimSpace(raw)) == 0 {
		return nil, config.Problems{{Code: "book.missing", Where: "price_book",
			Text: "the catalogue has no price book; without it nothing can be priced"}}
	}
	b := new(Book)
	if p := Decode(raw, b); p != nil {
		where := p.Where
		if strings.HasPrefix(where, "line ") { // of the book, which nobody has as a file
			_, where, _ = strings.Cut(where, " at ")
		}
		p.Code, p.Where = "book."+p.Code, strings.TrimSpace("price_book "+where)
		return nil, config.Problems{*p}
	}
	k := &bookCheck{b: b, cat: cat}
	k.run()
	if len(k.ps) > 0 {
		return nil, k.ps
	}
	if b.ValidityDays == 0 {
		b.ValidityDays = 30
	}
	return b, nil
}

// bookCheck walks a book and gathers problems.
type bookCheck struct {
	b    *Book
	cat  *config.Catalogue
	keys map[string]bool // every price key the catalogue can ask for
	ps   config.Problems
}

func (k *bookCheck) add(code, where, format string, args ...any) {
	k.ps = append(k.ps, config.Problem{Code: "book." + code, Where: "price_book " + where,
		Text: fmt.Sprintf(format, args...)})
}

func (k *bookCheck) run() {
	b := k.b
	if len(b.Currency) != 3 || strings.Trim(b.Currency, "ABCDEFGHIJKLMNOPQRSTUVWXYZ") != "" {
		k.add("value", "currency", `%q is not three capital letters, such as "USD"`, b.Currency)
	}
	if !slices.Contains(money.Roundings, b.Rounding) {
		k.add("value", "rounding", `%q is not "half-up" or "half-even"`, b.Rounding)
	}
	if b.ValidityDays < 0 || b.ValidityDays > maxDays {
		k.add("range", "validity_days", "%d is outside 0 to %d", b.ValidityDays, maxDays)
	}
	for i, n := range b.Notes {
		k.text(fmt.Sprintf("notes[%d]", i), n, true)
	}
	k.size("notes", len(b.Notes))
	k.prices()
	k.editions()
	k.surcharges()
	k.credits()
	k.fleet()
	k.contracts()
	k.charges()
	k.bond()
	k.milestones()
	if g := k.cat.Guide; g != nil && g.Buyer != "" &&
		!slices.ContainsFunc(Buyers, func(b Buyer) bool { return b.ID == g.Buyer }) {
		k.ps = append(k.ps, config.Problem{Code: "book.value", Where: "guide buyer",
			Text: fmt.Sprintf("%.40q is not a kind of buyer known here", g.Buyer)})
	}
}

func (k *bookCheck) prices() {
	k.keys = map[string]bool{}
	need := func(where, key string, positive bool) {
		k.keys[key] = true
		a, ok := k.b.Prices[key]
		if !ok {
			k.add("missing-price", fmt.Sprintf("prices %q", key), "has no price, but %s needs one", where)
		} else if positive && a.Sign() < 0 {
			k.add("negative", fmt.Sprintf("prices %q", key), "%s is below zero; only an option may be a credit", a)
		}
	}
	for i, c := range k.cat.Chassis {
		need(fmt.Sprintf("chassis[%d] %q", i, c.ID), c.ID, true)
	}
	for i, c := range k.cat.Bodies {
		need(fmt.Sprintf("bodies[%d] %q", i, c.ID), c.ID, true)
	}
	for i := range k.cat.Options {
		o := &k.cat.Options[i]
		need(fmt.Sprintf("options[%d] %q", i, o.ID), KeyOf(o), false)
	}
	k.known("prices", k.b.Prices)
}

// known refuses prices that nothing in the catalogue can ask for: most often a
// misspelled id.
func (k *bookCheck) known(where string, prices map[string]Amount) {
	for _, key := range slices.Sorted(maps.Keys(prices)) {
		if !k.keys[key] {
			k.add("unknown-key", fmt.Sprintf("%s %q", where, key),
				"is no chassis, body or price key of an option in this catalogue")
		}
	}
}

func (k *bookCheck) editions() {
	k.size("editions", len(k.b.Editions))
	seen := map[string]bool{}
	for i, e := range k.b.Editions {
		w := k.entry("editions", i, e.ID, seen)
		if e.From.IsZero() {
			k.add("missing", w+" from", "an edition needs the day it begins")
		}
		if i > 0 && !e.From.Before(k.b.Editions[i-1].From) {
			k.add("order", w+" from", "editions stand newest first, each on a day of its own")
		}
		k.text(w+" reason", e.Reason, true)
		k.known(w+" prices", e.Prices)
		for _, key := range slices.Sorted(maps.Keys(e.Prices)) {
			if e.Prices[key].Sign() < 0 && (k.cat.ChassisByID(key) != nil || k.cat.BodyByID(key) != nil) {
				k.add("negative", fmt.Sprintf("%s prices %q", w, key),
					"%s is below zero; only an option may be a credit", e.Prices[key])
			}
		}
	}
}

func (k *bookCheck) surcharges() {
	k.size("surcharges", len(k.b.Surcharges))
	seen := map[string]bool{}
	for i, s := range k.b.Surcharges {
		w := k.entry("surcharges", i, s.ID, seen)
		k.text(w+" label", s.Label, true)
		k.text(w+" reason", s.Reason, true)
		k.dates(w, s.From, s.Until)
		switch {
		case s.Percent.IsZero() == s.Amount.IsZero():
			k.add("value", w, "a surcharge has either a percentage or an amount")
		case s.Percent.Sign() < 0 || s.Amount.Sign() < 0:
			k.add("negative", w, "a surcharge is above zero; for a price that falls write an edition")
		case !s.Percent.IsZero() && (s.On == "") == (len(s.Keys) == 0):
			k.add("value", w, `a percentage needs either "on" or "keys"`)
		case !s.Amount.IsZero() && s.On != "":
			k.add("value", w+" on", `a plain amount is for a whole unit, or for each of "keys"; it takes no scope`)
		}
		if s.On != "" {
			k.scope(w+" on", s.On)
		}
		k.size(w+" keys", len(s.Keys))
		for _, key := range s.Keys {
			if !k.keys[key] {
				k.add("unknown-key", w+" keys", "%q is no chassis, body or price key of an option in this catalogue",
					key)
			}
		}
	}
}

func (k *bookCheck) credits() {
	k.size("credits", len(k.b.Credits))
	seen := map[string]bool{}
	all := map[string]bool{}
	for _, c := range k.b.Credits {
		all[c.ID] = true
	}
	for i, c := range k.b.Credits {
		w := k.entry("credits", i, c.ID, seen)
		k.text(w+" label", c.Label, true)
		k.text(w+" reason", c.Reason, false)
		if c.Amount.Sign() <= 0 {
			k.add("range", w+" amount", "%s must be above zero; it is taken off the price", c.Amount)
		}
		k.size(w+" when", len(c.When))
		if len(c.When) == 0 {
			k.add("missing", w+" when", "a credit names the options that earn it")
		}
		for _, id := range c.When {
			if k.cat.OptionByID(id) == nil && k.cat.ChassisByID(id) == nil && k.cat.BodyByID(id) == nil {
				k.add("unknown-key", w+" when", "%q is no option, chassis or body of this catalogue", id)
			}
		}
		for _, id := range c.Ousts {
			if !all[id] || id == c.ID {
				k.add("unknown-key", w+" ousts", "%q is no other credit of this book", id)
			}
		}
	}
}

func (k *bookCheck) fleet() {
	f := k.b.FleetBreaks
	if f == nil {
		return
	}
	k.scope("fleet_breaks on", f.On)
	k.text("fleet_breaks reason", f.Reason, true)
	k.size("fleet_breaks breaks", len(f.Breaks))
	for i, x := range f.Breaks {
		w := fmt.Sprintf("fleet_breaks breaks[%d]", i)
		k.rebate(w+" percent", x.Percent)
		if x.Units < 2 || x.Units > MaxUnits {
			k.add("range", w+" units", "%d is outside 2 to %d", x.Units, MaxUnits)
		}
		if i > 0 && x.Units <= f.Breaks[i-1].Units {
			k.add("order", w+" units", "breaks stand from few units to many")
		}
	}
}

func (k *bookCheck) contracts() {
	k.size("contracts", len(k.b.Contracts))
	seen := map[string]bool{}
	for i, c := range k.b.Contracts {
		w := k.entry("contracts", i, c.ID, seen)
		k.text(w+" label", c.Label, true)
		k.text(w+" reason", c.Reason, true)
		k.dates(w, c.From, c.Until)
		k.rebate(w+" fee", c.Fee)
		k.size(w+" discounts", len(c.Discounts))
		for j, d := range c.Discounts {
			wd := fmt.Sprintf("%s discounts[%d]", w, j)
			k.scope(wd+" on", d.On)
			k.rebate(wd+" percent", d.Percent)
			for _, e := range c.Discounts[:j] {
				if overlap(d.On, e.On) {
					k.add("value", wd+" on", "%q overlaps %q; a price takes one discount of a contract", d.On, e.On)
				}
			}
		}
	}
}

func (k *bookCheck) charges() {
	k.size("prepayments", len(k.b.Prepayments))
	seen := map[string]bool{}
	for i, p := range k.b.Prepayments {
		w := k.entry("prepayments", i, p.ID, seen)
		k.text(w+" label", p.Label, true)
		k.text(w+" reason", p.Reason, true)
		k.rebate(w+" percent", p.Percent)
		if p.At != AtOrder && p.At != AtArrival {
			k.add("value", w+" at", "%q is neither %q nor %q", p.At, AtOrder, AtArrival)
		}
	}
	for _, x := range []struct {
		where string
		a     Amount
	}{{"freight per_mile", k.b.Freight.PerMile}, {"freight minimum", k.b.Freight.Minimum}, {"training per_day",
		k.b.Training.PerDay}} {
		if x.a.Sign() < 0 {
			k.add("negative", x.where, "%s is below zero", x.a)
		}
	}
	k.size("fees", len(k.b.Fees))
	seen = map[string]bool{}
	for i, f := range k.b.Fees {
		w := k.entry("fees", i, f.ID, seen)
		k.text(w+" label", f.Label, true)
		k.text(w+" reason", f.Reason, true)
		if f.Amount.Sign() < 0 {
			k.add("negative", w+" amount", "%s is below zero", f.Amount)
		}
		if f.Per != PerUnit && f.Per != PerOrder {
			k.add("value", w+" per", `%q is not "unit" or "order"`, f.Per)
		}
	}
	k.rebate("tax rate", k.b.Tax.Rate)
	k.text("tax label", k.b.Tax.Label, false)
	k.text("tax reason", k.b.Tax.Reason, false)
	for i, id := range k.b.Tax.ExemptBuyers {
		if !slices.ContainsFunc(Buyers, func(b Buyer) bool { return b.ID == id }) {
			k.add("value", fmt.Sprintf("tax exempt_buyers[%d]", i), "%.40q is not a kind of buyer known here", id)
		}
	}
}

func (k *bookCheck) bond() {
	k.size("bond", len(k.b.Bond))
	for i, s := range k.b.Bond {
		w := fmt.Sprintf("bond[%d]", i)
		k.rebate(w+" percent", s.Percent)
		if i == 0 && !s.Over.IsZero() {
			k.add("order", w+" over", `the first step is over "0"`)
		}
		if i > 0 && s.Over.Cmp(k.b.Bond[i-1].Over) <= 0 {
			k.add("order", w+" over", "steps stand from low to high")
		}
	}
}

func (k *bookCheck) milestones() {
	k.size("milestones", len(k.b.Milestones))
	checkMilestones(k.add, k.b.Milestones)
}

// entry checks the id of a list's entry and names its place.
func (k *bookCheck) entry(list string, i int, id string, seen map[string]bool) string {
	w := fmt.Sprintf("%s[%d] %q", list, i, id)
	if !config.ValidID(id) {
		k.add("id", w, "an id is 1 to 48 small letters, digits and hyphens, beginning with a letter or digit")
	}
	if seen[id] {
		k.add("id", w, "this id stands twice in %s", list)
	}
	seen[id] = true
	return w
}

func (k *bookCheck) text(where, s string, needed bool) {
	if len(s) > maxText {
		k.add("too-long", where, "is %d bytes; the most is %d", len(s), maxText)
	}
	if needed && strings.TrimSpace(s) == "" {
		k.add("missing", where, "needs a text the customer can read")
	}
}

func (k *bookCheck) size(where string, n int) {
	if n > maxEntries {
		k.add("too-large", where, "has %d entries; the most is %d", n, maxEntries)
	}
}

func (k *bookCheck) scope(where string, s Scope) {
	if !slices.Contains(Scopes, s) {
		k.add("value", where, `%q is not one of "chassis", "body", "options", "build", "unit"`, s)
	}
}

// rebate checks a percentage from zero to the whole.
func (k *bookCheck) rebate(where string, p Percent) {
	if p.Sign() < 0 || p.Cmp(hundred) > 0 {
		k.add("range", where, "%s is outside 0 to 100 %%", p)
	}
}

func (k *bookCheck) dates(where string, from, until config.Date) {
	if from.IsZero() {
		k.add("missing", where+" from", "needs the day it begins")
	}
	if !until.IsZero() && until.Before(from) {
		k.add("order", where+" until", "ends before it begins")
	}
}
