package quote

import (
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/letters"
	"boxwright/pricing/money"
	"boxwright/pricing/quote"
	"boxwright/pricing/sign"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
	"boxwright/web/session"
)

// What is looked at before a quote goes out: what stops a signature also warns on a
// draft that is sent.

// readiness is the check list of a quote that is to go out, by the list of signers of a
// catalogue. Its stops are what a signature waits for.
func readiness(q *quote.Quote, cat *config.Catalogue, own sign.Standing, today config.Date) []assurance {
	d := q.Draft
	named := func(about, name, missing string) assurance {
		if strings.TrimSpace(name) == "" {
			return assurance{config.Stop, about, missing}
		}
		return assurance{"", about, letters.Isolate(name) + "."}
	}
	list := []assurance{
		named("Buyer", d.Buyer.Name, "not named. Fill in “Service or department” under “To”."),
	}
	if d.AsksBack() {
		list = append(list, assurance{"", "What it is", "changes asked for to a quote; its seller and number are added by " +
			"whoever answers."})
	} else {
		list = append(list, named("Seller", d.Seller.Name, "not named. Fill in “Distributor” under “From”."),
			named("Number", d.Number, "none. Fill in “Quote number” under “About”."))
	}
	until := q.Price.ValidUntil
	switch {
	case until.IsZero():
		list = append(list, assurance{config.Stop, "Price good through", "no day is set."})
	case !today.IsZero() && until.Before(today):
		list = append(list,
			assurance{config.Stop, "Price good through", until.Long() + ", which has passed. Date the " +
				"quote anew under “About”."})
	default:
		list = append(list, assurance{"", "Price good through", until.Long() + "."})
	}
	var fix, open, detail []string
	for _, f := range q.Findings {
		switch {
		case f.Severity == config.Stop:
			fix = append(fix, f.Where)
		case f.Severity == config.Warn:
			open = append(open, f.Where)
		case f.Code == quote.StillToBeNamed:
			detail = append(detail, strings.TrimSuffix(f.Text, "."))
		}
	}
	some := func(about string, state config.Severity, found []string, none string) {
		if len(found) == 0 {
			list = append(list, assurance{"", about, none})
			return
		}
		list = append(list, assurance{state, about, session.Clip(strings.Join(found, "; "), 600) + "."})
	}
	some(mustFix, config.Stop, fix, "nothing.")
	some(toCheck, config.Warn, open, "nothing.")
	if text := q.Misdeclared(); text != "" {
		list = append(list, assurance{config.Stop, "Declaration", session.Clip(text, 600)})
	}
	some("Still to be named", config.Warn, detail, "nothing.")
	memory := 0
	for _, v := range q.Verdicts {
		if v.Basis == config.FromMemory {
			memory++
		}
	}
	if memory > 0 {
		list = append(list,
			assurance{config.Warn, "From memory", strconv.Itoa(memory) + " clauses of the rule set were " +
				"not read in their text; the quote says so at each."})
	}
	if why := barred(q, cat, own); why != "" {
		list = append(list, assurance{config.Stop, "Approval", why})
	} else if own.Code == sign.Unknown {
		list = append(list, assurance{config.Warn, "Approval", "your key is on no list of signers here; buyers are " +
			"told that its owner is unknown."})
	}
	return list
}

// toSend is the check list of a draft where it is sent or printed; nil for a quote that is
// signed, which was checked then.
func toSend(p *Page) []assurance {
	t := p.Trust
	if t == nil || t.Signature != nil {
		return nil
	}
	return readiness(p.Q, p.Q.Edition.Cat, t.Own, t.Today)
}

// lacking names what of a check list is missing, and what is to be looked at.
func lacking(list []assurance) (missing, look []string) {
	for _, c := range list {
		switch c.state {
		case config.Stop:
			missing = append(missing, c.about)
		case config.Warn:
			if c.about == toCheck {
				c.about = strings.TrimSuffix(c.says, ".")
			}
			look = append(look, c.about)
		}
	}
	return missing, look
}

// incomplete words what a signature waits for; empty when nothing is missing.
func incomplete(list []assurance) string {
	var missing, said []string
	for _, c := range list {
		switch {
		case c.state != config.Stop:
		case c.about == mustFix:
			said = append(said, "Must fix: "+c.says)
		case c.about == "Declaration", c.about == "Approval":
			said = append(said, "Open: "+c.about+".")
		default:
			missing = append(missing, c.about)
		}
	}
	if missing != nil {
		said = append([]string{"Missing: " + strings.Join(missing, ", ") + "."}, said...)
	}
	return strings.Join(said, " ")
}

// The lines of a check list that name what stops the unit, and what else is to be looked at.
const (
	mustFix = "Must fix"
	toCheck = "To check"
)

// beforeSending says beside what sends the quote what is missing of it.
func beforeSending(p *Page) Part {
	list := toSend(p)
	missing, look := lacking(list)
	if len(missing)+len(look) == 0 {
		return nil
	}
	state, said := config.Warn, "It goes out as a draft. To check: "+strings.Join(look, "; ")+"."
	if len(missing) > 0 {
		state, said = config.Stop, "It goes out as a draft that is not complete. "+incomplete(list)
	}
	return El("p", Class("how"), At("id", "ready"), page.Mark(state), Text(" "+said))
}

// stopping says in one sentence what keeps a quote from being signed, whoever signs;
// empty when nothing does.
func stopping(s *session.Session, q *quote.Quote) string {
	if q.Draft.AsksBack() {
		return "It only asks for changes to a quote. Fill in “Distributor” under “From”, and it is a quote " +
			"of your own."
	}
	var missing []string
	for _, c := range readiness(q, s.Memory.Edition.Cat, sign.Standing{}, s.Req.Today) {
		if c.state == config.Stop {
			missing = append(missing, c.about+": "+c.says)
		}
	}
	return strings.Join(missing, " ")
}

// barred says why a signer may not sign a quote; empty when they may. Whoever is on no
// list may: the plant may list them later.
func barred(q *quote.Quote, cat *config.Catalogue, s sign.Standing) string {
	switch s.Code {
	case sign.Revoked:
		return "The key of " + s.Who() + " was revoked on " + s.Signer.Revoked.Long() +
			". Nothing can be signed with it: " +
			"make another, and have it put on the plant's list of signers."
	case sign.TooSoon, sign.Ended, sign.Left, sign.Ahead:
		return s.Words()
	}
	return over(q, cat, s)
}

// over says that the agreed discount is beyond what the signer may grant, and whose
// approval it needs; empty when it is not.
func over(q *quote.Quote, cat *config.Catalogue, s sign.Standing) string {
	if s.Signer == nil || s.Signer.MaxDiscount == nil {
		return ""
	}
	given := q.Price.AgreedDiscount()
	most := percent(*s.Signer.MaxDiscount)
	if given.Cmp(most) <= 0 {
		return ""
	}
	var may []string
	for i := range cat.Signers {
		x := &cat.Signers[i]
		if x.MaxDiscount != nil && given.Cmp(percent(*x.MaxDiscount)) > 0 {
			continue
		}
		if other := sign.Judge(cat, x.PublicKey(), q.Draft.Date, q.Draft.Date); other.Code == sign.Known {
			may = append(may, other.Who())
		}
	}
	who := "of somebody who may grant as much; nobody on the plant's list of signers may"
	if may != nil {
		who = "of " + strings.Join(may, ", or of ")
	}
	return "The agreed discount is " + given.Show() + "; " + s.Who() + ", may sign up to " + most.Show() +
		". It needs " +
		"the approval " + who + "."
}

// percent is a limit of the list of signers as prices have it.
func percent(v float64) money.Percent {
	p, err := money.ParsePercent(strconv.FormatFloat(v, 'f', -1, 64))
	if err != nil {
		return money.Percent{}
	}
	return p
}
