package standards

import (
	"strconv"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/standards"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// compliance is the unit held against the rule sets: what is not met first, and every
// clause of each set under a fold of its own.
func compliance(p *Page) Part {
	var missed []standards.Verdict
	var sets []Part
	for list := p.Q.Verdicts; len(list) > 0; {
		end := 1
		for end < len(list) && list[end].Set == list[0].Set {
			end++
		}
		set := list[:end]
		list = list[end:]
		for _, v := range set {
			if v.Outcome == standards.NotMet {
				missed = append(missed, v)
			}
		}
		name := page.SetName(set[0].Set)
		sets = append(sets, El("details", At("id", "clauses-"+set[0].Set),
			page.Summary("h3", name, Text(": "+page.VerdictTally(set))), clauseTable(p, name, set)))
	}
	return page.Block("Clause by clause", page.RemountNote(p.Page),
		El("p", El("b", Text("All together: "+page.VerdictTally(p.Q.Verdicts)+"."))),
		If(missed != nil, clauseTable(p, "Not met", missed)), Many(sets...))
}

func clauseTable(p *Page, caption string, list []standards.Verdict) Part {
	t := page.Table{Caption: caption, Class: "clauses cards",
		Heads: []string{"Clause", "Verdict", ">Figure", ">Margin"}}
	for _, v := range list {
		figure, margin := page.None(), page.None()
		if f := v.Figure; f != nil {
			figure = Many(Text(p.Show(f.Value, f.Unit)), page.AssumedSize(f))
			if f.Sense != "" {
				figure = Many(figure, El("span", Class("how"), Text(string(f.Sense)+" "+p.Show(f.Limit, f.Unit))))
				margin = Text(p.Signed(f.Margin(), f.Unit))
			}
		}
		source := v.Source
		if v.Edition != "" {
			source = v.Edition + ": " + source
		}
		source = v.Basis.Known(source)
		declared := ""
		if v.Outcome == standards.Declared && len(v.Picks) > 0 {
			declared = "with " + p.Q.Labels(v.Picks)
		}
		settled := ""
		if v.Settles != "" && v.Outcome != standards.Met && v.Outcome != standards.NotMet {
			settled = "Settled by " + v.Settles + "."
		}
		var notes []Part
		for _, text := range []string{v.Text, v.Note, declared, settled, source} {
			if text != "" {
				notes = append(notes, El("span", Class("how"), Text(text)))
			}
		}
		t.Rows = append(t.Rows, []Part{Many(El("b", Text(v.Title)), Many(notes...)),
			Many(page.VerdictMark(v), Text(" "+string(v.Outcome))), figure, margin})
	}
	return t.Draw()
}

// ownLimits lets the purchaser put a value of their own in the place of the
// rules': first where nobody could read the text, then on any other figure that
// some rule set limits.
func ownLimits(p *Page) Part {
	var soft, other []Part
	seen := map[string]bool{}
	q := p.Q
	bare := q.Draft.Unit // to see what the rules alone ask for
	bare.Own, bare.PayloadLb = nil, 0
	rules := standards.Assume(bare.RuleSet, q.Edition.Cat, &bare).Limits
	own := map[string]float64{}
	for _, o := range q.Draft.Unit.Own {
		own[o.Figure] = o.Value
	}
	if v := q.Draft.Unit.PayloadLb; v > 0 {
		own["weight.payload"] = float64(v)
	}
	for _, r := range []*config.Report{&q.Weight.Report, &q.Power.Report, &q.Space.Report} {
		for _, f := range r.Figures {
			if _, can := standards.SenseOf(f.Code); !can || seen[f.Code] {
				continue
			}
			seen[f.Code] = true
			part, isSoft := ownLimit(p, f, own, rules)
			if isSoft {
				soft = append(soft, part)
			} else {
				other = append(other, part)
			}
		}
	}
	return El("details", Class("block screen"), At("id", "own-limits"),
		page.Summary("h2", "The purchaser's own limits"),
		El("p", Class("lead"),
			Text("A value here replaces the rules' limit on the figure wherever that was not read in a "+
				"text. Blank = the rules' limit.")),
		If(len(soft) > 0, Many(El("h3", Text("Set, from memory, or common practice")),
			El("div", Class("fields"), Many(soft...)))),
		page.Inner("own-others", "Other figures that can be limited ("+strconv.Itoa(len(other))+")",
			El("div", Class("fields"), Many(other...))))
}

// ownLimit is the field for one figure, and whether it belongs to those that
// rest on memory or are the purchaser's already.
func ownLimit(p *Page, f config.Figure, own map[string]float64, rules map[string]config.Limit) (Part, bool) {
	value, given := "", false
	if v, has := own[f.Code]; has {
		value, given = p.Plain(v, f.Unit), true
	}
	sense, _ := standards.SenseOf(f.Code)
	hint := "Now " + p.Show(f.Value, f.Unit) + "; no limit in force"
	soft := given
	// What stands in the rules' text, whatever the purchaser has put before it.
	if l, ok := rules[f.Code]; ok {
		hint = "Now " + p.Show(f.Value, f.Unit) + "; the rules: " + string(l.Sense) + " " + p.Show(l.Value, f.Unit) +
			", " + l.Basis.Known(l.Source)
		soft = soft || l.Basis != config.ReadInText
	}
	unit := ""
	if f.Unit != quantity.Ratio && f.Unit != quantity.Count {
		unit = p.UnitName(f.Unit)
	}
	id := "own." + f.Code
	return Many(El("div", page.Number(p.Page, id, f.Label+", "+string(sense), value, unit, hint),
		If(given, page.Action("set", id, "", "Take the rules' again", Class("quiet"), At("id", "reset-"+f.Code),
			At("aria-label", "Take the rules' again: "+f.Label))))), soft
}
