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

// keeping is the catalogue's own part of the page, in the place of Needs.
func keeping(p *Page) Part {
	k := p.Keeper
	return Many(
		heading("Catalogue", "For whoever keeps it: take it out as tables, bring edited tables in, check it, and see what another edition changes before it is used."),
		El("p", Class("row-tools screen"), action("keeping", "", "", "Back to Needs", At("id", "keeping-back"))),
		inUse(p), refused(k), bringIn(k), linted(p), beside(p), keptQuotes(p), changedParts(p), handOut(k),
	)
}

func editionLine(ed *quote.Edition) Part {
	c := ed.Cat
	return Many(
		El("p", El("b", Text(c.Title)), Text(", edition "+c.Edition+", in force from "+c.ValidFrom.Long()+".")),
		El("p", Class("how"), Text("Content "+c.Hash()[:16]+" · "+count(len(c.Options), "option", "options")+" · "+count(len(c.Rules), "rule", "rules"))))
}

func inUse(p *Page) Part {
	table := func(name, label string) Part { return action("tables-out", name, "", label, At("id", "out-"+name)) }
	return block("In use", editionLine(p.Q.Edition),
		El("p", Class("hint"), Text("The tables open in any spreadsheet. Edit cells, add and remove rows, save as CSV, and bring them in below: alone or together.")),
		El("div", Class("row-tools"), table("options", "Options as a table"), table("prices", "Prices as a table"), table("rules", "Rules as a table"),
			action("save-catalogue", "", "", "Save it as a file", Class("quiet"), At("id", "save-catalogue"))))
}

// fileButton is a button that takes files for an act.
func fileButton(id, do, label, accept string, parts ...Part) Part {
	return Many(El("label", Class("button"), At("for", id), Text(label)),
		El("input", Class("hidden-text"), At("type", "file"), At("id", id), At("accept", accept), At("data-act", do), Many(parts...)))
}

func bringIn(k *Keeper) Part {
	into := "the edition in use"
	if k.Beside != nil {
		into = "the edition beside it, which holds what was brought in before"
	}
	return block("Bring in a change",
		El("p", Text("Nothing is used yet: what comes in is checked, set beside the edition in use and compared with it. Tables are taken into "+into+".")),
		El("div", Class("row-tools"),
			fileButton("f-tables", "tables-in", "Take in edited tables…", ".csv,.tsv,.txt,text/csv", Flag("multiple", true)),
			fileButton("f-beside", "set-beside", "Set another edition beside it…", ".json,application/json"),
			action("set-beside", "", "", "Set the built-in one beside it", Class("quiet"), At("id", "beside-built-in"))))
}

// refused lists what is wrong with the file that was not taken.
func refused(k *Keeper) Part {
	if k.Refused == "" {
		return nil
	}
	return El("section", Class("block"), At("id", "refused"), At("tabindex", "-1"), El("h2", Text("Not taken: "+k.Refused)),
		El("p", Text(count(len(k.Problems), "fault", "faults")+". Nothing was changed.")),
		El("ul", Class("findings"), Each(k.Problems, func(_ int, x config.Problem) Part {
			return El("li", Class("stop"), El("b", Text(x.Where+": ")), Text(x.Text+"."))
		})))
}

// linted is what going through the edition found.
func linted(p *Page) Part {
	k := p.Keeper
	which := "the edition in use"
	if k.Beside != nil {
		which = "the edition beside it"
	}
	var notes, rest []config.Finding
	for _, f := range k.Findings {
		f.Basis = "" // all of them are computed
		if f.Severity == config.Note {
			notes = append(notes, f)
		} else {
			rest = append(rest, f)
		}
	}
	return El("section", Class("block"), At("id", "lint"), At("tabindex", "-1"), El("h2", Text("Go through the rules")),
		El("p", Text("Looks for what can never be had, what is always in, rules that contradict each other or say nothing, groups that leave no choice, and what has no price, mass or work. It takes some seconds.")),
		El("div", Class("row-tools"), action("lint", "", "", "Go through "+which, At("id", "lint-now"))),
		When(k.Linted, func() Part {
			return Many(findings(p, rest, "Nothing that stands in the way was found."),
				If(len(notes) > 0, El("details", At("id", "lint-notes"), El("summary", Text(count(len(notes), "thing worth a look", "things worth a look"))), findings(p, notes, ""))))
		}))
}

func beside(p *Page) Part {
	k := p.Keeper
	if k.Diff == nil {
		return nil
	}
	if k.Beside == nil {
		return El("section", Class("block"), At("id", "beside"), At("tabindex", "-1"), El("h2", Text("The edition before")), editionLine(k.Before),
			El("p", Text("What the edition in use changed is listed below, and what that means for the quotes kept here.")),
			El("div", Class("row-tools"), action("drop-beside", "", "", "Put the comparison away", Class("quiet"), At("id", "drop-beside"))))
	}
	name := If(k.Beside.Cat.Edition == p.Q.Edition.Cat.Edition && k.Beside.Cat.Hash() != p.Q.Edition.Cat.Hash(),
		El("p", mark(config.Warn), Text(" It has the same name as the edition in use, though it is not the same. Give it a name of its own, so that readers of a quote can tell them apart.")))
	return El("section", Class("block"), At("id", "beside"), At("tabindex", "-1"), El("h2", Text("Beside it, not in use yet")), editionLine(k.Beside), name,
		El("div", Class("fields"),
			field(p, "edition.name", "Name of the edition", k.Beside.Cat.Edition, "Such as 2027-01"),
			day(p, "edition.from", "In force from", k.Beside.Cat.ValidFrom, "")),
		El("div", Class("row-tools"),
			action("use-beside", "", "", "Use this edition", Class("main"), At("id", "use-beside")),
			action("save-catalogue", "beside", "", "Save it as a file", At("id", "save-beside")),
			action("drop-beside", "", "", "Put it away", Class("quiet"), At("id", "drop-beside"))))
}

// keptQuotes says which of the quotes kept here the change touches.
func keptQuotes(p *Page) Part {
	k := p.Keeper
	if k.Diff == nil {
		return nil
	}
	touched := 0
	t := table{caption: "Kept quotes that the change touches", class: "kept", heads: []string{"Quote", "What changed of it", ">Price", ">Curb weight", "Delivery, even odds", "Fits", ""}}
	for i := range k.Kept {
		x := &k.Kept[i]
		if x.Touch == nil {
			t.rows = append(t.rows, []Part{quoteName(x), Text("It cannot be read: " + x.Fault), nil, nil, nil, nil, nil})
		} else if x.Moved || x.Touch.Touched() {
			touched++
			t.rows = append(t.rows, keptRow(p, x, i))
		}
	}
	said := count(touched, "kept quote is touched", "kept quotes are touched") + ", of " + strconv.Itoa(len(k.Kept)) + " looked at."
	if k.More {
		said = "Going through the kept quotes: " + strconv.Itoa(len(k.Kept)) + " looked at so far."
	}
	return El("section", Class("block"), At("id", "touched"), El("h2", Text("Quotes kept in this browser")), El("p", Text(said)), When(t.rows != nil, t.draw))
}

func quoteName(x *Kept) Part {
	return Many(El("b", Text(x.Name)), El("span", Class("how"), Text(x.Line)))
}

func keptRow(p *Page, x *Kept, i int) []Part {
	t := x.Touch
	var what []Part
	say := func(label string, list []string) {
		if list != nil {
			what = append(what, El("p", El("b", Text(label)), Text(strings.Join(list[:min(len(list), 6)], "; ")+map[bool]string{true: " and more"}[len(list) > 6])))
		}
	}
	say("Changed: ", t.Uses)
	say("No longer offered: ", t.Lost)
	var added, gone []string
	for _, c := range t.Changes {
		if c.Added {
			added = append(added, p.Keeper.Diff.To.Cat.LabelOf(c.Option))
		} else {
			gone = append(gone, p.Keeper.Diff.From.Cat.LabelOf(c.Option))
		}
	}
	say("Filled in anew: ", added)
	say("Gives way: ", gone)
	price, curb, when, fits := Text("–"), Text("–"), Text("–"), Text(t.Fault)
	if t.Is != nil {
		price, curb, when = Text(t.Is.Total), Text(p.show(t.Is.CurbLb, quantity.Pound)), Text(t.Is.Even.Long())
		fits = Many(mark(""), Text(" yes"))
		if t.Is.Stopped {
			fits = Many(mark(config.Stop), Text(" no"), El("ul", Class("small"), Each(t.Stops[:min(len(t.Stops), 4)], func(_ int, f config.Finding) Part { return El("li", Text(f.Text)) })))
		}
	}
	if t.Was != nil && t.Is != nil {
		by := t.Delta.Total.Show()
		if t.Delta.Total.Sign() > 0 {
			by = "+" + by
		}
		days := "the same day"
		if t.Delta.Days != 0 {
			days = count(max(t.Delta.Days, -t.Delta.Days), "day", "days") + map[bool]string{true: " later", false: " earlier"}[t.Delta.Days > 0]
		}
		was := func(text string) Part { return El("span", Class("how"), Text("was "+text)) }
		price = Many(El("b", Text(by)), was(t.Was.Total), El("span", Class("how"), Text("is "+t.Is.Total)))
		curb = Many(El("b", Text(p.signed(t.Is.CurbLb-t.Was.CurbLb, quantity.Pound))), El("span", Class("how"), Text("is "+p.show(t.Is.CurbLb, quantity.Pound))))
		when = Many(El("b", Text(days)), El("span", Class("how"), Text(t.Is.Even.Long())))
		if t.Was.Stopped && t.Is.Stopped {
			fits = Many(fits, El("span", Class("how"), Text("nor did it before")))
		}
	}
	var tool Part
	switch {
	case x.Moved:
		tool = El("span", Class("tag mine"), Text("moved"))
	case t.Signed:
		tool = Many(El("b", Text("Signed: it stays as it is.")), When(t.Frozen != nil, func() Part {
			return El("span", Class("how"), Text("Total "+t.Frozen.Total+", delivery at even odds "+t.Frozen.Even.Long()+", stands until "+t.Frozen.Until.Long()+". Beside it stands what a revision would come to."))
		}))
	case t.Is == nil:
	case p.Keeper.Beside == nil:
		tool = action("move-kept", x.ID, "", "Move it", At("id", "move-"+strconv.Itoa(i)), At("aria-label", "Move to the edition in use: "+x.Name))
	default:
		tool = El("span", Class("how"), Text("It can be moved once the edition is in use."))
	}
	return []Part{quoteName(x), Many(what...), price, curb, when, fits, tool}
}

// changedParts lists what the editions have otherwise.
func changedParts(p *Page) Part {
	d := p.Keeper.Diff
	if d == nil {
		return nil
	}
	if d.Same() {
		return block("What changes", El("p", mark(""), Text(" Nothing: the two have the same content.")))
	}
	var out []Part
	add := func(t table) {
		if rest := len(t.rows) - mostShown; rest > 0 {
			t.rows = append(t.rows[:mostShown], append([]Part{Text("and " + count(rest, "more", "more"))}, make([]Part, len(t.heads)-1)...))
		}
		if t.rows != nil {
			out = append(out, t.draw())
		}
	}
	t := table{caption: "Prices: " + strconv.Itoa(len(d.Prices)), heads: []string{"What", "From", ">Was", ">Is", ">Difference", ">Percent"}}
	for i := range d.Prices {
		x := &d.Prices[i]
		was, is, by := "–", "–", string(editions.Changed)
		if x.From != nil {
			was = x.From.Show()
		} else {
			by = string(editions.Added)
		}
		if x.To != nil {
			is = x.To.Show()
		} else {
			by = string(editions.Removed)
		}
		if x.From != nil && x.To != nil {
			by = x.By().Show()
		}
		on := "the first day"
		if !x.On.IsZero() {
			on = x.On.Long()
		}
		t.rows = append(t.rows, []Part{withID(x.Label, x.Key), Text(on), Text(was), Text(is), Text(by), Text(x.Percent())})
	}
	add(t)
	t = table{caption: "Rules: " + strconv.Itoa(len(d.Rules)), heads: []string{"Rule", "How", "What a customer reads", "Was", "Is"}}
	for i := range d.Rules {
		r := &d.Rules[i]
		reason := Many(Text(r.Reason), If(r.Was != "", El("span", Class("how"), Text("was: "+r.Was))))
		t.rows = append(t.rows, []Part{withID("", r.ID), Text(string(r.How)), reason, El("code", Text(r.From)), El("code", Text(r.To))})
	}
	add(t)
	for _, part := range d.Parts {
		t := table{caption: part.Name + ": " + strconv.Itoa(len(part.Things)), heads: []string{"What", "How", "Field, was, is"}}
		for _, x := range part.Things {
			t.rows = append(t.rows, []Part{withID(x.Label, x.ID), Text(string(x.How)), El("ul", Each(x.Fields, func(_ int, f editions.Field) Part {
				return El("li", El("b", Text(f.Name+": ")), Text(orDash(f.From)+" → "+orDash(f.To)))
			}))})
		}
		add(t)
	}
	return block("What changes", out...)
}

// withID is a label with the id beneath it.
func withID(label, id string) Part {
	return Many(Text(label), If(id != "" && id != label, El("span", Class("how"), Text(id))))
}

// handOut makes a page of one's own.
func handOut(k *Keeper) Part {
	id := map[bool]string{true: "beside"}[k.Beside != nil]
	return block("Hand it out",
		El("p", Text("One file that holds this page with "+map[bool]string{true: "the edition beside it", false: "the edition in use"}[k.Beside != nil]+" built in. It opens from disk with the network off; no quote, key or cost sheet goes with it.")),
		El("div", Class("row-tools"), action("embed", id, "", "Save Boxwright with this catalogue", At("id", "embed"))))
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
	said, press := "It is kept as it is until you move it. What is shown here is what it would be with the edition in use; nothing can be changed before.", "Move it to the edition in use"
	if e.As != nil {
		said = "It is signed and stands as it was signed: total " + e.As.Total + ", delivery at even odds " + e.As.Even.Long() + ", stands until " + e.As.Until.Long() + ". What is shown here is what a revision would come to with the edition in use."
		press = "Make a revision with the edition in use"
	}
	return El("section", Class("block"), At("id", "elsewhere"), El("h2", Text("Made with another edition of the catalogue: "+e.Edition)),
		El("p", Text(said)), El("div", Class("row-tools screen"), action("move-here", "", "", press, Class("main"), At("id", "move-here"))))
}
