package view

import (
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/editions"
	"boxwright/pricing/quote"
	. "boxwright/web/view/markup"
)

// Keeper is what whoever keeps the catalogue sees: the edition in use, what was
// wrong with a file, and another edition beside it.
type Keeper struct {
	Refused  string           // name of the file or table that was not taken; empty when there is none
	Problems []config.Problem // what is wrong with it
	Linted   bool             // the edition that would be kept was gone through
	Findings []config.Finding // what that found
	Beside   *quote.Edition   // set beside the one in use, until it is taken into use
	Before   *quote.Edition   // the one that it took the place of
	Diff     *editions.Comparison
	Kept     []Kept // quotes kept in this browser, looked at so far
	More     bool   // others are still to be looked at
}

// Kept is what a change of editions means for a kept quote.
type Kept struct {
	ID, Name, Line string
	Touch          *editions.Touch // nil where the quote cannot be read
	Fault          string
	Moved          bool // it was moved to the new edition since
}

// mostShown bounds the rows of a table of changes.
const mostShown = 300

// Parts that this file is mostly made of.

func para(text string) Part  { return El("p", Text(text)) }
func aside(text string) Part { return El("span", Class("how"), Text(text)) }
func bold(text string) Part  { return El("b", Text(text)) }

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
	return action(do, id, "", label, Class(class), At("id", element))
}

// fileButton is a button that takes files for an act.
func fileButton(id, do, label, accept string, parts ...Part) Part {
	return Many(El("label", Class("button"), At("for", id), Text(label)),
		El("input", Class("hidden-text"), At("type", "file"), At("id", id), At("accept", accept), At("data-act", do), Many(parts...)))
}

// keeping is the catalogue's own part of the page, in the place of Needs.
func keeping(p *Page) Part {
	k := p.Keeper
	looked, id := "the edition in use", ""
	if k.Beside != nil {
		looked, id = "the edition beside it", "beside"
	}
	parts := []Part{
		heading("Catalogue", "For whoever keeps it: take it out as tables, bring edited tables in, check it, and see what another edition changes before it is used."),
		pressed(press("keeping", "", "Back to Needs", "", "keeping-back")),
		block("In use", editionLine(p.Q.Edition),
			pressed(press("tables-out", "options", "Options as a table", "", "out-options"), press("tables-out", "prices", "Prices as a table", "", "out-prices"), press("tables-out", "rules", "Rules as a table", "", "out-rules"),
				press("save-catalogue", "", "Save it as a file", "quiet", "save-catalogue")),
			El("p", Class("hint"), Text("The tables open in any spreadsheet. Edit cells, add and remove rows, save as CSV (UTF-8), and bring them in below, one alone or several together."))),
		block("Bring in a change",
			para("Nothing is used yet: what comes in is checked, set beside the edition in use and compared with it. Tables are taken into "+looked+"."),
			pressed(fileButton("f-tables", "tables-in", "Take in edited tables…", ".csv,.tsv,.txt,text/csv", Flag("multiple", true)),
				fileButton("f-beside", "set-beside", "Set another edition beside it…", ".json,application/json"),
				press("set-beside", "", "Set the built-in one beside it", "quiet", "beside-built-in"))),
	}
	if k.Refused != "" {
		parts = append(parts, part("refused", "Not taken: "+k.Refused, para(count(len(k.Problems), "fault", "faults")+". Nothing was changed."),
			El("ul", Class("findings"), Each(k.Problems, func(_ int, x config.Problem) Part {
				return El("li", Class("stop"), bold(x.Where+": "), Text(x.Text+"."))
			}))))
	}
	if k.Diff != nil {
		parts = append(parts, beside(p), keptQuotes(p), changedParts(p))
	}
	return Many(append(parts, linted(p, looked), block("Hand it out",
		para("One file that holds this page with "+looked+" built in. It opens from disk with the network off; no quote, key or cost sheet goes with it."),
		pressed(press("embed", id, "Save Boxwright with this catalogue", "", "embed"))))...)
}

func editionLine(ed *quote.Edition) Part {
	c := ed.Cat
	return Many(
		El("p", bold(c.Title), Text(", edition "+c.Edition+", in force from "+c.ValidFrom.Long()+".")),
		El("p", Class("how"), Text("Content "+c.Hash()[:16]+" · "+count(len(c.Options), "option", "options")+" · "+count(len(c.Rules), "rule", "rules"))))
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
		found = findings(p, rest, "Nothing that stands in the way was found.")
	}
	if notes != nil {
		found = Many(found, El("details", At("id", "lint-notes"), El("summary", Text(count(len(notes), "thing worth a look", "things worth a look"))), findings(p, notes, "")))
	}
	return part("lint", "Go through the rules",
		para("Looks for what can never be had, what is always in, rules that contradict each other or say nothing, groups that leave no choice, and what has no price, mass or work. It takes some seconds."),
		pressed(press("lint", "", "Go through "+looked, "", "lint-now")), found)
}

// beside is the edition that is not in use yet, or the one before.
func beside(p *Page) Part {
	b := p.Keeper.Beside
	if b == nil {
		return part("beside", "The edition before", editionLine(p.Keeper.Before),
			para("What the edition in use changed is listed below, and what that means for the quotes kept here."),
			pressed(press("drop-beside", "", "Put the comparison away", "quiet", "drop-beside")))
	}
	var name Part
	if b.Cat.Edition == p.Q.Edition.Cat.Edition {
		name = El("p", mark(config.Warn), Text(" It is called like the edition in use, though it is not the same. Give it a name of its own, so that readers of a quote can tell them apart."))
	}
	return part("beside", "Beside it, not in use yet", editionLine(b), name,
		El("div", Class("fields"),
			field(p, "edition.name", "Name of the edition", b.Cat.Edition, "Such as 2027-01"),
			day(p, "edition.from", "In force from", b.Cat.ValidFrom, "")),
		pressed(press("use-beside", "", "Use this edition", "main", "use-beside"),
			press("save-catalogue", "beside", "Save it as a file", "", "save-beside"),
			press("drop-beside", "", "Put it away", "quiet", "drop-beside")))
}

// keptQuotes says which of the quotes kept here the change touches.
func keptQuotes(p *Page) Part {
	k := p.Keeper
	touched := 0
	t := table{caption: "Kept quotes that the change touches", class: "kept", heads: []string{"Quote", "What changed of it", ">Price", ">Curb weight", "Delivery, even odds", "Fits", ""}}
	for i := range k.Kept {
		x := &k.Kept[i]
		if x.Touch == nil {
			t.rows = append(t.rows, append([]Part{over(bold(x.Name), x.Line), Text("It cannot be read: " + x.Fault)}, make([]Part, 5)...))
		} else if x.Touch.Touched() {
			touched++
			t.rows = append(t.rows, keptRow(p, x, i))
		}
	}
	said := count(touched, "kept quote is touched", "kept quotes are touched") + ", of " + strconv.Itoa(len(k.Kept)) + " looked at."
	if k.More {
		said = "Going through the kept quotes: " + strconv.Itoa(len(k.Kept)) + " looked at so far."
	}
	return part("touched", "Quotes kept in this browser", para(said), When(t.rows != nil, t.draw))
}

func keptRow(p *Page, x *Kept, i int) []Part {
	t, diff := x.Touch, p.Keeper.Diff
	var what []Part
	say := func(label string, list []string) {
		if list != nil {
			const most = 6
			more := ""
			if len(list) > most {
				list, more = list[:most], "; and more"
			}
			what = append(what, El("p", bold(label), Text(strings.Join(list, "; ")+more)))
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
	say("Gives way: ", gone)
	row := []Part{over(bold(x.Name), x.Line), Many(what...), nil, nil, nil, Text(t.Fault), nil}
	if is := t.Is; is != nil {
		price, curb, when, was := is.Total, p.show(is.CurbLb, quantity.Pound), is.Even.Long(), ""
		fits := Many(mark(""), Text(" yes"))
		if is.Stopped {
			said := []string{}
			for _, f := range t.Stops[:min(len(t.Stops), 4)] {
				said = append(said, f.Text)
			}
			if t.Was != nil && t.Was.Stopped {
				said = append(said, "Nor did it before.")
			}
			fits = over(Many(mark(config.Stop), Text(" no")), said...)
		}
		if t.Was != nil {
			was = "was " + t.Was.Total
			price, curb, when = t.Delta.Total.Show(), p.signed(is.CurbLb-t.Was.CurbLb, quantity.Pound), inDays(t.Delta.Days)
			if t.Delta.Total.Sign() > 0 {
				price = "+" + price
			}
		}
		row[2] = over(bold(price), was, "is "+is.Total)
		row[3] = over(bold(curb), "is "+p.show(is.CurbLb, quantity.Pound))
		row[4] = over(bold(when), "is "+is.Even.Long())
		row[5] = fits
	}
	switch f := t.Frozen; {
	case x.Moved:
		row[6] = El("span", Class("tag mine"), Text("moved"))
	case f != nil:
		row[6] = over(bold("Signed: it stays as it is."), "Total "+f.Total+", delivery at even odds "+f.Even.Long()+", stands until "+f.Until.Long()+". The row tells what a revision would come to.")
	case t.Signed || t.Is == nil:
	case p.Keeper.Beside == nil:
		row[6] = action("move-kept", x.ID, "", "Move it", At("id", "move-"+strconv.Itoa(i)), At("aria-label", "Move to the edition in use: "+x.Name))
	default:
		row[6] = aside("It can be moved once the edition is in use.")
	}
	return row
}

func inDays(n int) string {
	switch {
	case n > 0:
		return count(n, "day", "days") + " later"
	case n < 0:
		return count(-n, "day", "days") + " earlier"
	}
	return "the same day"
}

// changedParts lists what the editions have otherwise.
func changedParts(p *Page) Part {
	d := p.Keeper.Diff
	prices := table{caption: "Prices", class: "cards", heads: []string{"What", "From", ">Was", ">Is", ">Difference", ">Percent"}}
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
		prices.rows = append(prices.rows, append([]Part{over(Text(x.Label), x.Key)}, texts(cells...)...))
	}
	rules := table{caption: "Rules", class: "cards", heads: []string{"Rule", "How", "What a customer reads", "Was", "Is"}}
	for i := range d.Rules {
		r := &d.Rules[i]
		was := r.Was
		if was != "" {
			was = "was: " + was
		}
		rules.rows = append(rules.rows, []Part{Text(r.ID), Text(string(r.How)), over(Text(r.Reason), was), El("code", Text(r.From)), El("code", Text(r.To))})
	}
	all := []table{prices, rules}
	for _, part := range d.Parts {
		t := table{caption: part.Name, heads: []string{"What", "How", "Field, was, is"}}
		for _, x := range part.Things {
			t.rows = append(t.rows, []Part{over(Text(x.Label), x.ID), Text(string(x.How)), Each(x.Fields, func(_ int, f editions.Field) Part {
				return El("p", bold(f.Name+": "), Text(orDash(f.From)+" → "+orDash(f.To)))
			})})
		}
		all = append(all, t)
	}
	var out []Part
	for _, t := range all {
		if t.rows == nil {
			continue
		}
		t.caption += ": " + strconv.Itoa(len(t.rows))
		if rest := len(t.rows) - mostShown; rest > 0 {
			t.rows = append(t.rows[:mostShown], append([]Part{Text("and " + strconv.Itoa(rest) + " more")}, make([]Part, len(t.heads)-1)...))
		}
		t.class = "kept"
		out = append(out, t.draw())
	}
	return block("What changes", out...)
}

// Elsewhere is a quote of another edition, which is kept as it is. What the page
// shows is what it would be with the edition in use.
type Elsewhere struct {
	Edition string // as a reader knows it, or the beginning of its hash
	As      *Issued
}

// elsewhere stands above every area while such a quote is open.
func elsewhere(p *Page) Part {
	e := p.Elsewhere
	if e == nil {
		return nil
	}
	said, label := "It is kept as it is until you move it. What is shown here is what it would be with the edition in use; nothing can be changed before.", "Move it to the edition in use"
	if e.As != nil {
		said = "It is signed and stands as it was signed: total " + e.As.Total + ", delivery at even odds " + e.As.Even.Long() + ", stands until " + e.As.Until.Long() + ". What is shown here is what a revision would come to with the edition in use."
		label = "Make a revision with the edition in use"
	}
	return part("elsewhere", "Made with another edition of the catalogue: "+e.Edition, para(said), pressed(press("move-here", "", label, "main", "move-here")))
}
