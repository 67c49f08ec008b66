package quote

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/rules"
	"boxwright/config/standards"
)

// Ask is one thing the customer asked for, and how the unit answers it.
type Ask struct {
	ID     string // of AskIDs, the id of an option, "budget", "date", or "rule." with a set's id
	Label  string
	Wanted string // what was asked for: "at least 6", "diesel"
	Has    string // what the unit has, empty where the label says it all
	Missed string // by how much, in words; empty when it is met
	From   string // where it was asked for
	Must   bool   // else the customer would give way on it
	Said   bool   // the customer says which; the others are always the one or the other
}

// The asks that are wants whatever the customer says.
const (
	AskBudget = "budget"
	AskDate   = "date"
)

// Asks lists what the customer asked for in the order of the fields: budget and date
// first.
func (q *Quote) Asks(in quantity.System) []Ask {
	d := q.Draft
	var out []Ask
	if d.Terms.Budget.Sign() > 0 {
		a := Ask{ID: AskBudget, Label: "Budget", Wanted: "at most " + q.Book.Currency + " " + d.Terms.Budget.Show(),
			Has: q.Total() + ", " + q.Price.Basis(), From: "Needs"}
		if by := d.OverBudget(q.Price.Total); by.Sign() > 0 {
			a.Missed = by.Show() + " over"
		}
		out = append(out, a)
	}
	if by := d.Unit.NeededBy; !by.IsZero() {
		last := q.LastSafe()
		a := Ask{ID: AskDate, Label: "Delivery", Wanted: "by " + by.Long(), Has: last.Long() + " at 90 %",
			From: "Needs"}
		if n := d.LastOf(); n > 1 {
			a.Has += fmt.Sprintf(", the last of %d", n)
		}
		if by.Before(last) {
			a.Missed = Days(by.DaysUntil(last)) + " late"
		}
		out = append(out, a)
	}
	out = append(out, q.wordAsks()...)
	for _, x := range d.Needs.needsOn(q.Edition.Cat, &d.Unit) {
		out = append(out, q.ask(&x, in))
	}
	if len(out) > 0 {
		out = append(out, q.ruleAsks()...)
	}
	return out
}

// askRule begins the ids of the rule sets among the asks.
const askRule = "rule."

// ruleAsks are the standard in force and the rules of a state beside it, which are
// musts as far as their text was read. Their clauses have findings of their own.
func (q *Quote) ruleAsks() []Ask {
	sets, _ := standards.Split(q.Draft.Unit.RuleSet)
	var out []Ask
	for _, set := range sets {
		met, judged, broken := 0, 0, 0
		for _, v := range q.Verdicts {
			if v.Set != set.ID || v.Outcome != standards.Met && v.Outcome != standards.NotMet {
				continue
			}
			judged++
			switch {
			case v.Outcome == standards.Met:
				met++
			case v.Basis == config.ReadInText && !v.Mild:
				broken++
			}
		}
		if judged == 0 {
			continue
		}
		a := Ask{ID: askRule + set.ID, Label: "Rules", Wanted: set.Label, Must: true, From: "Needs",
			Has: fmt.Sprintf("%d of %d computed clauses", met, judged)}
		if rest := judged - met - broken; rest > 0 {
			a.Has += fmt.Sprintf("; %d to check", rest)
		}
		if broken == 1 {
			a.Missed = "1 clause not met"
		} else if broken > 0 {
			a.Missed = fmt.Sprintf("%d clauses not met", broken)
		}
		out = append(out, a)
	}
	return out
}

// wordAsks are duty, roads and climate, which ask for options. The customer says of each
// word whether it is a must: of those that options only suit, each is a would-like until
// then. A word that asks for nothing is left out.
func (q *Quote) wordAsks() []Ask {
	n := &q.Draft.Needs
	var out []Ask
	for i, w := range n.words() {
		if w == "" {
			continue
		}
		has, lacks := q.tagged(tagNeeded + w)
		drive := wordIDs[i] == "roads" && n.roadsDrive()
		a := Ask{ID: wordIDs[i], Label: wordLabels[i], Wanted: labelOf(wordLists[i], w), From: "Needs"}
		a.Said, a.Must = true, !n.IsWant(wordIDs[i])
		ask := "it needs"
		if len(has)+len(lacks) == 0 && !drive {
			has, lacks = q.tagged(tagSuits + w)
			a.Must, ask = n.isFirm(q.Edition.Cat, wordIDs[i]), "that suit it"
		}
		all := len(has) + len(lacks)
		if all > 0 {
			a.Has = fmt.Sprintf("%d of %d things %s", len(has), all, ask)
			if len(lacks) == 0 {
				a.Has = "all " + ask
			}
		} else if !drive {
			continue
		}
		switch rest := len(lacks) - 1; {
		case all == 1 && rest == 0 && q.Labels(lacks) == a.Wanted:
			a.Has, a.Missed = "", "not in the unit"
		case rest > 0:
			a.Missed = fmt.Sprintf("%s and %d more not in the unit", q.Labels(lacks[:1]), rest)
		case rest == 0:
			a.Missed = q.Labels(lacks) + " not in the unit"
		case drive && q.Chassis.Drive != n.drive():
			a.Missed = "not " + n.drive()
		}
		out = append(out, a)
	}
	return out
}

// tagged are the options of a tag that the unit has, and those that it has not.
func (q *Quote) tagged(tag string) (has, lacks []string) {
	for i := range q.Edition.Cat.Options {
		if o := &q.Edition.Cat.Options[i]; !slices.Contains(o.Tags, tag) {
			continue
		} else if q.Draft.Unit.Has(o.ID) {
			has = append(has, o.ID)
		} else {
			lacks = append(lacks, o.ID)
		}
	}
	return has, lacks
}

// Days counts calendar days in words.
func Days(n int) string {
	if n == 1 {
		return "1 day"
	}
	return strconv.Itoa(n) + " days"
}

func (q *Quote) ask(x *need, in quantity.System) Ask {
	d := q.Draft
	a := Ask{ID: x.id, Label: x.limit.Label, Must: !x.want, From: "Needs", Said: true}
	met := kept(&x.limit, &d.Unit)
	if i := slices.IndexFunc(Kinds, func(k Kind) bool { return k.ID == x.id }); i >= 0 {
		k := &Kinds[i]
		a.Wanted, a.Has = k.words(&d.Needs), k.is(q.Chassis)
		if k.ID == "drive" && d.Needs.Drive == "" {
			a.From, a.Said = "Roads: "+labelOf(RoadKinds, d.Needs.Roads), false
		}
		if !met {
			a.Missed = "not " + a.Wanted
		}
		return a
	}
	if s := SizeByID(x.id); s != nil {
		asked := s.get(&d.Needs)
		a.Wanted = string(s.Sense) + " " + in.Show(asked, s.Unit)
		f, ok := q.Figure(s.Figure)
		if a.Has = in.Show(f.Value, f.Unit); !ok {
			a.Has = "not stated in the catalogue"
		}
		if seated := Seated(q.Edition.Cat, &d.Unit); x.id == "crew" && seated != "" {
			a.Has += " (" + seated + ")"
		}
		if !met {
			a.Missed = a.Has
			if by := f.Value - asked; ok && s.Sense == config.AtMost {
				a.Missed = in.Show(by, s.Unit) + " over"
			} else if ok {
				a.Missed = in.Show(-by, s.Unit) + " short"
			}
		}
		return a
	}
	a.Wanted, a.Said = "in the unit", slices.Contains(d.Needs.Must, x.id) || slices.Contains(d.Needs.Like, x.id)
	if !a.Said {
		a.From = q.asksFor(x.id)
	}
	if !met {
		a.Missed = "not in the unit"
	}
	return a
}

// asksFor names the need that an option is asked for by.
func (q *Quote) asksFor(option string) string {
	o := q.Edition.Cat.OptionByID(option)
	n := &q.Draft.Needs
	for i, w := range n.words() {
		if w != "" && (slices.Contains(o.Tags, tagNeeded+w) || slices.Contains(o.Tags, tagSuits+w)) {
			return wordLabels[i] + ": " + labelOf(wordLists[i], w)
		}
	}
	return "Needs"
}

func labelOf(list []Need, id string) string {
	if i := slices.IndexFunc(list, func(n Need) bool { return n.ID == id }); i >= 0 {
		return list[i].Label
	}
	return id
}

// MustCode is the code of the finding that names the musts which are not met.
const MustCode = needCode + "must"

// WantCode is the code of the finding that names the wants which are not met.
const WantCode = needCode + "want"

// unmet are the findings of needs that the unit does not keep: one of the musts, which
// stops it, and one of the wants that are a number or a kind. Would-likes are no
// findings; budget and date have findings of their own.
func (q *Quote) unmet() []config.Finding {
	must := config.Finding{Code: MustCode, Severity: config.Stop, Where: "Not what was asked for",
		Basis: config.Purchaser, Remedy: "Press Propose in Needs, or say there what is no must."}
	want := config.Finding{Code: WantCode, Severity: config.Note, Where: "Wanted, and not met",
		Basis: config.Purchaser, Remedy: "Needs shows each beside what the unit has."}
	var musts, wants []string
	words, of := []string{}, map[string][]string{} // what a word asks for is said once, with its parts
	for _, a := range q.Asks(quantity.US) {
		option := q.Edition.Cat.OptionByID(a.ID) != nil
		if a.Missed == "" || a.ID == AskBudget || a.ID == AskDate || option && !a.Must ||
			slices.Contains(wordIDs, a.ID) || // what a word asks for is said one by one,
			strings.HasPrefix(a.ID, askRule) { // and each clause by its check
			continue
		}
		said := a.Missed
		switch {
		case option:
			must.Picks = append(must.Picks, a.ID)
			if a.From != "Needs" {
				if of[a.From] == nil {
					words = append(words, a.From)
				}
				of[a.From] = append(of[a.From], a.Label)
				continue
			}
			said = a.Label + " (not in the unit)"
		case slices.ContainsFunc(Kinds, func(k Kind) bool { return k.ID == a.ID }):
			said = a.Wanted + " (it is " + a.Has + ")"
		default:
			said = a.Label + " " + a.Wanted + " (" + a.Missed + ")"
		}
		if a.From != "Needs" {
			said += " for " + a.From
		}
		if a.Must {
			musts = append(musts, said)
		} else {
			wants = append(wants, said)
		}
	}
	for _, w := range words {
		what := ": " + strings.Join(of[w], "; ")
		if strings.HasSuffix(w, what) { // it asks for one thing of its own name
			what = ""
		}
		musts = append(musts, w+" (not in the unit"+what+")")
	}
	var out []config.Finding
	if musts != nil {
		must.Text = strings.Join(musts, "; ") + "."
		out = append(out, must)
	}
	if wants != nil {
		want.Text = strings.Join(wants, "; ") + "."
		out = append(out, want)
	}
	return out
}

// LabelOfNeed names a need by the code of its limit or finding.
func (q *Quote) LabelOfNeed(code string) string {
	id := strings.TrimPrefix(code, needCode)
	for _, a := range q.Asks(quantity.US) {
		if a.ID == id || hasCode+a.ID == code {
			if a.Wanted == "in the unit" {
				return a.Label
			}
			if strings.HasPrefix(a.Wanted, a.Label) {
				return a.Wanted // "Type I"
			}
			return a.Label + " " + a.Wanted
		}
	}
	return id
}

// withThis stands for what is looked at: an option that is asked about, or the picks of a finding.
const withThis = "; with this "

// needSum words the limit of a need that cannot be kept.
func (q *Quote) needSum(a *rules.Arithmetic, in quantity.System) string {
	id := strings.TrimPrefix(a.Code, needCode)
	if option, is := strings.CutPrefix(a.Code, hasCode); is {
		return q.Edition.Cat.LabelOf(option) + " is a must of the customer and would have to go."
	}
	for i := range Kinds {
		if k := &Kinds[i]; k.ID == id {
			return "The customer asked for " + k.words(&q.Draft.Needs) + "."
		}
	}
	s := SizeByID(id)
	if s == nil {
		return a.Label + "."
	}
	asked := s.get(&q.Draft.Needs)
	switch {
	case s.ID == "height":
		return fmt.Sprintf("Overall height: %s over the %s that the customer's bay allows.", in.Show(a.Over, s.Unit),
			in.Show(asked, s.Unit))
	case s.Sense == config.AtLeast:
		return fmt.Sprintf("%s: the customer asked for %s"+withThis+"no more than %s can be had.", s.Label,
			in.Show(asked, s.Unit), in.Show(-a.Total, s.Unit))
	}
	return fmt.Sprintf("%s: the customer asked for at most %s"+withThis+"it comes to %s.", s.Label,
		in.Show(asked, s.Unit), in.Show(a.Total, s.Unit))
}
