// Package catalogue is the Catalogue area: keeping the catalogue: tables, checks, editions.
package catalogue

import (
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/letters"
	"boxwright/config/quantity"
	"boxwright/pricing/editions"
	"boxwright/pricing/quote"
	"boxwright/pricing/sign"
	"boxwright/web/areas"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
	"boxwright/web/session"
)

// id of the area, for its own acts.
const id = "catalogue"

// Area is the value by which web/app knows the area.
var Area = areas.Area{
	ID:       id,
	Name:     "Catalogue",
	Section:  areas.Office,
	Gist:     func(p *page.Page) string { return "edition " + letters.Isolate(p.Q.Edition.Cat.Edition) },
	Words:    []*page.Term{page.EditionAndContent},
	Load:     load,
	Acts:     acts,
	Editions: deciding,
	Families: families,
}

// Page is what the area is drawn from.
type Page struct {
	*page.Page
	*Keeper
}

// Keeper is what whoever keeps the catalogue sees: the edition in use, what was
// wrong with a file, and another edition beside it.
type Keeper struct {
	InUse     *quote.Edition
	Refused   string           // name of the file or table that was not taken; empty when there is none
	Problems  []config.Problem // what is wrong with it
	Linted    bool             // the edition that would be kept was gone through
	Findings  []config.Finding // what that found
	Stopped   string           // where that was stopped, such as "rules, 120 of 479"
	Linting   bool             // that is under way
	Progress  string           // and has come so far
	Done, Of  int              // of what it looks at now; Of is 0 while that is not known
	Candidate *quote.Edition   // set beside the one in use, until it is taken into use
	Before    *quote.Edition   // the one that it took the place of
	Diff      *editions.Comparison
	Touched   []session.Touched // quotes kept in this browser, looked at so far
	More      bool              // others are still to be looked at
	OwnKey    string            // public half of the signing key in this browser; empty without
}

// mostShown bounds the rows of a table of changes.
const mostShown = 300

// Parts that this file is mostly made of.

func para(text string) Part { return El("p", Text(text)) }

func aside(text string) Part { return El("span", Class("how"), Text(text)) }

func pressed(parts ...Part) Part { return El("div", Class("row-tools"), Many(parts...)) }

// over is a text with others beneath it; empty ones are left out.
func over(top Part, under ...string) Part {
	parts := []Part{top}
	for _, u := range under {
		if u != "" {
			parts = append(parts, aside(u))
		}
	}
	return Many(parts...)
}

// part is a block that can be gone to.
func part(id, title string, parts ...Part) Part {
	return El("section", Class("block"), At("id", id), At("tabindex", "-1"), El("h2", Text(title)), Many(parts...))
}

// press is an action whose id is told.
func press(do, id, label, class, element string) Part {
	return page.Action(do, id, "", label, Class(class), At("id", element))
}

// draw is what whoever keeps the catalogue sees.
func draw(p *Page) Part {
	k := p.Keeper
	looked, id := "the edition in use", ""
	if k.Candidate != nil {
		looked, id = "the other edition", "beside"
	}
	parts := []Part{
		page.Heading("Catalogue", "For the person who keeps it: save it as tables, bring edited tables in, "+
			"check it, and see what another edition changes before you use it."),
		page.Block("In use", page.EditionLine(p.InUse), signedBy(p.InUse.Cat, p.InUse.Cat),
			pressed(press("tables-out", "options", "Options as a table", "", "out-options"),
				press("tables-out", "prices", "Prices as a table", "", "out-prices"), press("tables-out", "rules",
					"Rules as a table", "", "out-rules"),
				press("save-catalogue", "", "Save it as a file", "quiet", "save-catalogue")),
			pressed(page.FileButton("f-catalogue", "load-catalogue", "Load a catalogue file…", ".json,application/json"),
				press("demo-catalogue", "", "Use the built-in one", "", "demo-catalogue")),
			El("p", Class("how"), Text(p.InUse.Cat.Notice)),
			El("p", Class("how"), Text("Quotes are saved as JSON files. "), page.Action("save-schema", "", "",
				"Save their schema", Class("quiet"), At("id", "save-schema"))),
			El("p", Class("hint"),
				Text("The tables open in any spreadsheet. Edit cells, add and remove rows, save as CSV (UTF-8), and "+
					"bring them in below, one alone or several together. Chassis, bodies, groups, plant and all else are "+
					"edited in the file."))),
		page.Block("Bring in a change",
			para("Nothing changes yet: what you bring in is checked and compared with the edition in use. "+
				"Edited tables replace those of "+looked+"."),
			pressed(page.FileButton("f-tables", "tables-in", "Open edited tables…", ".csv,.tsv,.txt,text/csv",
				Flag("multiple", true)),
				page.FileButton("f-beside", "set-beside", "Compare another edition…", ".json,application/json"),
				press("set-beside", "", "Compare the built-in one", "quiet", "beside-built-in"))),
	}
	if k.Refused != "" {
		parts = append(parts, part("refused", "Not taken: "+k.Refused,
			para(counted(k.Problems)+". Nothing was changed. Where a change needs "+
				"several tables, open them together."),
			El("ul", Class("findings"), Each(k.Problems, func(_ int, x config.Problem) Part {
				return El("li", Class("stop"), page.Bold(x.Where+": "), Text(x.Text+"."))
			}))))
	}
	if k.Diff != nil {
		parts = append(parts, candidate(p), keptQuotes(p), changedParts(p))
	}
	return Many(append(parts, linted(p, looked), signAsPlant(p, looked), page.Block("Share it",
		para("One file that holds this page with "+looked+" built in. It opens from disk with the network off; no "+
			"quote, key or cost sheet goes with it."),
		pressed(press("embed", id, "Save Boxwright with this catalogue", "", "embed"))))...)
}

// more is the code of what says how many faults are not listed.
const more = "table.more"

// counted says how many faults are listed, and no number where the list ends before they do.
func counted(list []config.Problem) string {
	if slices.ContainsFunc(list, func(p config.Problem) bool { return p.Code == more }) {
		return "The first faults are listed"
	}
	return page.Count(len(list), "fault", "faults")
}

// signAsPlant lets whoever keeps the catalogue sign it.
func signAsPlant(p *Page, looked string) Part {
	tools := para("It needs a signing key on this device: make one in Costs and keys, and keep it for the plant " +
		"alone.")
	if p.OwnKey != "" {
		tools = Many(El("div", Class("field"),
			El("label", At("for", "plant-pass"), Text("Passphrase of your signing key")),
			El("input", At("type", "password"), At("id", "plant-pass"), At("autocomplete", "off"))),
			pressed(El("button", At("type", "button"), At("id", "sign-catalogue"), At("data-act", "sign-catalogue"),
				At("data-secret", "plant-pass"), Text("Sign "+looked+" and save it"))),
			El("p", Class("hint"), Text("Your key: "), El("code", Text(p.OwnKey))))
	}
	return part("sign-plant", "Sign it as the plant",
		para("A signature covers everything in the catalogue and the list of signers: a file changed after signing "+
			"is refused. Build a page that takes only your catalogues with go run ./web/pack -plant KEY -catalogue "+
			"FILE."),
		tools)
}

// signedBy says which plant's key signed a catalogue, and whether that is the one of the
// edition in use.
func signedBy(now, cat *config.Catalogue) Part {
	key := plantOf(cat)
	if key == "" && plantOf(now) == "" {
		return nil
	}
	switch {
	case key == "":
		return El("p", page.Mark(config.Stop), Text(" No plant signed it; the edition in use is signed."))
	case key != plantOf(now) && plantOf(now) != "":
		return El("p", page.Mark(config.Stop), Text(" Signed with another key than the edition in use: "),
			El("code", Text(shortKey(key))), Text(". Ask the plant, over a line you trust."))
	}
	return El("p", page.Mark(""), Text(" Signed by the plant's key "), El("code", Text(shortKey(key))),
		Text("; unchanged since."))
}

// shortKey is what two people read to each other of a key.
func shortKey(text string) string { return sign.Short((&config.Signer{Key: text}).PublicKey()) }

// underWay says how far going through the edition is.
func underWay(k *Keeper) Part {
	return Many(
		El("p", At("id", "lint-progress"), Text("Checking "+k.Progress+".")),
		If(k.Of > 0, El("progress", At("id", "lint-bar"), At("aria-labelledby", "lint-progress"),
			At("max", strconv.Itoa(k.Of)), At("value", strconv.Itoa(k.Done)))),
		pressed(press("stop-lint", "", "Stop", "", "lint-stop")))
}

// mostFindings bounds a list of what was found.
const mostFindings = 200

// findings lists the first of them, and how many more there are.
func findings(p *Page, list []config.Finding, none string) Part {
	rest := len(list) - mostFindings
	return Many(page.Findings(p.Page, list[:min(len(list), mostFindings)], none),
		When(rest > 0, func() Part {
			return para("and " + strconv.Itoa(rest) + " more. Correct some of these and check again.")
		}))
}

// linted is what going through the edition found.
func linted(p *Page, looked string) Part {
	k := p.Keeper
	var notes, rest []config.Finding
	for _, f := range k.Findings {
		f.Basis = "" // all of them are computed
		if f.Severity == config.Note {
			notes = append(notes, f)
		} else {
			rest = append(rest, f)
		}
	}
	var found Part
	if k.Linted {
		none := "No open items were found."
		if k.Stopped != "" {
			none = "No open items were found up to there."
		}
		p.Answer = none
		if len(rest) > 0 {
			p.Answer = page.Count(len(rest), "open item was found.", "open items were found.")
		}
		found = Many(If(k.Stopped != "", para("Stopped while checking "+k.Stopped+".")), findings(p, rest, none))
	}
	if notes != nil {
		found = Many(found,
			El("details", At("id", "lint-notes"),
				El("summary", Text(page.Count(len(notes), "thing worth a look", "things worth a look"))),
				findings(p, notes, "")))
	}
	return part("lint", "Check the rules",
		para("Looks for options nobody can choose, options that are always in, rules that contradict each other or say "+
			"nothing, groups that leave no choice, and what has no price, weight or work. It takes a few seconds."),
		When(k.Linting, func() Part { return underWay(k) }),
		If(!k.Linting, pressed(press("lint", "", "Check "+looked, "", "lint-now"))), found)
}

// candidate is the edition that is not in use yet, or the one before.
func candidate(p *Page) Part {
	b := p.Candidate
	if b == nil {
		return part("beside", "The edition before", page.EditionLine(p.Before),
			para("What the edition in use changed is listed below, and what that means for the quotes saved here."),
			pressed(press("drop-beside", "", "Close the comparison", "quiet", "drop-beside")))
	}
	use := "Use this edition"
	var name Part
	switch {
	case b.Cat.Hash() == p.Before.Cat.Hash():
		use = "Use this list of signers"
		name = para("It differs from the edition in use in who may sign alone. Quotes keep their figures.")
	case b.Cat.Edition == p.Before.Cat.Edition:
		name = El("p", page.Mark(config.Warn),
			Text(" It has the name of the edition in use but is not the same. Give it a name of its own, so "+
				"that readers of a quote can tell them apart."))
	}
	return part("beside", "The other edition, not in use yet", page.EditionLine(b), signedBy(p.Before.Cat, b.Cat),
		signers(p.Before.Cat, b.Cat), name,
		El("div", Class("fields"),
			page.Field(p.Page, "edition.name", "Name of the edition", b.Cat.Edition, "Such as 2027-01"),
			page.Day(p.Page, "edition.from", "Valid from", b.Cat.ValidFrom, "")),
		pressed(press("use-beside", "", use, "main", "use-beside"),
			press("save-catalogue", "beside", "Save this edition", "", "save-beside"),
			press("drop-beside", "", "Close this edition", "quiet", "drop-beside")))
}

// signers says who may sign by the other list, before it is used; nil where it is the
// same.
func signers(now, other *config.Catalogue) Part {
	if now.RosterHash() == other.RosterHash() {
		return nil
	}
	t := page.Table{Caption: "Who may sign: what changes", Class: "cards",
		Heads: []string{"Who", "What changes", "Key", "May sign"}}
	for _, c := range editions.Signers(now, other) {
		s := &c.Signer
		state := map[editions.SignerHow]config.Severity{editions.SignerAdded: config.Warn,
			editions.SignerReinstated: config.Stop}[c.How]
		may := "from " + s.From.Long()
		if !s.Until.IsZero() {
			may += " until " + s.Until.Long()
		}
		if !s.Revoked.IsZero() {
			may = "revoked on " + s.Revoked.Long()
		}
		if s.MaxDiscount != nil {
			may += ", discounts up to " + strconv.FormatFloat(*s.MaxDiscount, 'f', -1, 64) + " %"
		}
		t.Rows = append(t.Rows, []Part{over(page.Bold(s.Name), s.Role), Many(page.Mark(state), Text(" "+string(c.How))),
			El("code", Text(sign.Short(s.PublicKey()))), Text(may)})
	}
	older := If(!now.SignersOn.IsZero() && other.SignersOn.Before(now.SignersOn), El("p", page.Mark(config.Stop),
		Text(" This list is older than the one in use. Take an older one only if you know why.")))
	return El("div", At("id", "signers"), If(t.Rows != nil, t.Draw()), older,
		para("Whoever is on the list can sign quotes in the plant's name. Compare the keys with the plant, over a line "+
			"you trust, before you use it."),
		para("List in use: "+rosterName(now)+". The other: "+rosterName(other)+"."))
}

// rosterName is how a list of signers is told from others.
func rosterName(cat *config.Catalogue) string {
	of := "of no date"
	if !cat.SignersOn.IsZero() {
		of = "of " + cat.SignersOn.Long()
	}
	return page.Count(len(cat.Signers), "signer", "signers") + ", " + of + ", content " + cat.RosterHash()[:16]
}

// keptQuotes says which of the quotes kept here the change touches.
func keptQuotes(p *Page) Part {
	k := p.Keeper
	touched := 0
	t := page.Table{Caption: "Saved quotes that the change touches", Class: "kept",
		Heads: []string{"Quote", "What changed of it", ">Price", ">Curb weight", "Likely date (50 %)", "Fits", ""}}
	for i := range k.Touched {
		x := &k.Touched[i]
		if x.Touch == nil {
			t.Rows = append(t.Rows,
				append([]Part{over(page.Bold(x.Name), x.Line), Text("It cannot be read: " + x.Fault)},
					make([]Part, 5)...))
		} else if x.Touch.Touched() {
			touched++
			t.Rows = append(t.Rows, keptRow(p, x, i))
		}
	}
	said := page.Count(touched, "saved quote is touched", "saved quotes are touched") + ", of " +
		strconv.Itoa(len(k.Touched)) + " looked at."
	if k.More {
		said = "Going through the saved quotes: " + strconv.Itoa(len(k.Touched)) + " looked at so far."
	}
	return part("touched", "Quotes saved on this device", para(said), When(t.Rows != nil, t.Draw))
}

func keptRow(p *Page, x *session.Touched, i int) []Part {
	t, diff := x.Touch, p.Diff
	var what []Part
	say := func(label string, list []string) {
		if list != nil {
			const most = 6
			more := ""
			if len(list) > most {
				list, more = list[:most], "; and more"
			}
			what = append(what, El("p", page.Bold(label), Text(strings.Join(list, "; ")+more)))
		}
	}
	say("Changed: ", t.Uses)
	say("No longer offered: ", t.Lost)
	var added, gone []string
	for _, c := range t.Changes {
		if c.Added {
			added = append(added, diff.To.Cat.LabelOf(c.Option))
		} else {
			gone = append(gone, diff.From.Cat.LabelOf(c.Option))
		}
	}
	say("Filled in anew: ", added)
	say("Removed: ", gone)
	row := []Part{over(page.Bold(x.Name), x.Line), Many(what...), nil, nil, nil, Text(t.Fault), nil}
	if after := t.Now; after != nil {
		price, curb, when, was := after.Total, p.Show(after.CurbLb, quantity.Pound), after.Even.Long(), ""
		fits := Many(page.Mark(""), Text(" yes"))
		if after.Stopped {
			said := []string{}
			for _, f := range t.Stops[:min(len(t.Stops), 4)] {
				said = append(said, f.Text)
			}
			if t.Was != nil && t.Was.Stopped {
				said = append(said, "Nor did it before.")
			}
			fits = over(Many(page.Mark(config.Stop), Text(" no")), said...)
		}
		if t.Was != nil {
			was = "was " + t.Was.Total
			price, curb, when = t.Delta.Total.Signed(), p.Signed(after.CurbLb-t.Was.CurbLb, quantity.Pound),
				inDays(t.Delta.Days)
		}
		row[2] = over(page.Bold(price), was, "is "+after.Total)
		row[3] = over(page.Bold(curb), "is "+p.Show(after.CurbLb, quantity.Pound))
		row[4] = over(page.Bold(when), "is "+after.Even.Long())
		row[5] = fits
	}
	switch f := t.Frozen; {
	case x.Moved:
		row[6] = El("span", Class("tag mine"), Text("moved"))
	case f != nil:
		row[6] = over(page.Bold("Signed: it stays as signed."),
			"Total "+f.Total+", "+f.Dates()+", price good through "+f.Until.Long()+
				". The row shows what a revision would come to.")
	case t.Signed || t.Now == nil:
	case p.Candidate == nil:
		row[6] = page.Action("move-kept", x.ID, "", "Move", At("id", "move-"+strconv.Itoa(i)),
			At("aria-label", "Move to the edition in use: "+x.Name))
	default:
		row[6] = aside("It can be moved once the edition is in use.")
	}
	return row
}

func inDays(n int) string {
	switch {
	case n > 0:
		return page.Count(n, "day", "days") + " later"
	case n < 0:
		return page.Count(-n, "day", "days") + " earlier"
	}
	return "the same day"
}

// changedParts lists what the editions have otherwise.
func changedParts(p *Page) Part {
	d := p.Diff
	prices := page.Table{Caption: "Prices", Class: "cards",
		Heads: []string{"What", "From", ">Was", ">Is", ">Difference", ">Percent"}}
	for i := range d.Prices {
		x := &d.Prices[i]
		cells := []string{"the first day", "–", "–", string(x.How()), x.Percent()}
		if !x.On.IsZero() {
			cells[0] = x.On.Long()
		}
		if x.From != nil {
			cells[1] = x.From.Show()
		}
		if x.To != nil {
			cells[2] = x.To.Show()
		}
		if x.How() == editions.Changed {
			cells[3] = x.By().Show()
		}
		label := x.Label
		if x.To != nil && x.To.Sign() < 0 && (x.From == nil || x.From.Sign() >= 0) {
			label += " (a credit: below zero)"
		}
		prices.Rows = append(prices.Rows, append([]Part{over(Text(label), x.Key)}, page.Texts(cells...)...))
	}
	rules := page.Table{Caption: "Rules", Class: "cards", Heads: []string{"Rule", "How", "What a customer reads", "Was",
		"Is"}}
	for i := range d.Rules {
		r := &d.Rules[i]
		was := r.Was
		if was != "" {
			was = "was: " + was
		}
		rules.Rows = append(rules.Rows, []Part{Text(r.ID), Text(string(r.How)), over(Text(r.Reason), was),
			El("code", Text(r.From)), El("code", Text(r.To))})
	}
	all := []page.Table{prices, rules}
	for _, part := range d.Parts {
		t := page.Table{Caption: part.Name, Heads: []string{"What", "How", "Field, was, is"}}
		for _, x := range part.Things {
			t.Rows = append(t.Rows, []Part{over(Text(x.Label), x.ID), Text(string(x.How)),
				Each(x.Fields, func(_ int, f editions.Field) Part {
					return El("p", page.Bold(f.Name+": "), Text(page.OrDash(f.From)+" → "+page.OrDash(f.To)))
				})})
		}
		all = append(all, t)
	}
	var out []Part
	for _, t := range all {
		if t.Rows == nil {
			continue
		}
		t.Caption += ": " + strconv.Itoa(len(t.Rows))
		if rest := len(t.Rows) - mostShown; rest > 0 {
			t.Rows = append(t.Rows[:mostShown],
				append([]Part{Text("and " + strconv.Itoa(rest) + " more")}, make([]Part, len(t.Heads)-1)...))
		}
		t.Class = "kept"
		out = append(out, t.Draw())
	}
	return page.Block("What changes", out...)
}
