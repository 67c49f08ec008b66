package page

import (
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/pricing/quote"
	. "boxwright/web/page/markup"
)

// Findings lists what the checks have to say, what must be fixed first; ok is said when there is nothing.
func Findings(p *Page, list []config.Finding, ok string) Part {
	if len(list) == 0 {
		if ok == "" {
			return nil
		}
		return El("p", Mark(""), Text(" "+ok))
	}
	list = slices.Clone(list)
	slices.SortStableFunc(list, func(a, b config.Finding) int { return b.Severity.Rank() - a.Severity.Rank() })
	return El("ul", Class("findings"), Each(list, func(_ int, f config.Finding) Part { return finding(p, f) }))
}

// Found is Findings at the head of an area. On a phone it is one line that opens, so that the
// area's own first thing is seen beneath: it says what must be fixed and counts the rest.
func Found(p *Page, list []config.Finding, ok string) Part {
	if len(list) == 0 || len(list) == 1 && list[0].Code == quote.StillToBeNamed { // folded as it is
		return Findings(p, list, ok)
	}
	return El("details", Class("found"), At("id", "found"),
		El("summary", Class("notice", string(worst(list, []string{""}))), inOneLine(list)), Findings(p, list, ok))
}

// inOneLine says of findings where something must be fixed, one alone in its own words, and how many
// others there are.
func inOneLine(list []config.Finding) Part {
	var stops []config.Finding
	count := map[config.Severity]int{}
	for _, f := range list {
		if count[f.Severity]++; f.Severity == config.Stop {
			stops = append(stops, f)
		}
	}
	var must []string
	for _, f := range stops {
		if len(stops) > 1 && f.Where != "" {
			f.Text = f.Where
		}
		if !slices.Contains(must, f.Text) {
			must = append(must, f.Text)
		}
	}
	var rest []string
	if n := count[config.Warn]; n > 0 {
		rest = append(rest, Whole(n)+" to check")
	}
	if n := count[config.Note]; n > 0 {
		rest = append(rest, Count(n, "note", "notes"))
	}
	said := strings.Join(must, ", ")
	if rest != nil && said != "" {
		said = strings.TrimSuffix(said, ".") + ". "
	}
	return Many(
		If(must != nil, El("b", Text("■ Must fix: "))), Text(Held(said)),
		El("b", If(must == nil && count[config.Warn] > 0, Text("▲ ")), Text(strings.Join(rest, ", "))))
}

// finding keeps each figure on one line with its unit. Only what is drawn does: what is copied,
// exported or carried by a link has the sentence as it was written.
func finding(p *Page, f config.Finding) Part {
	words := map[config.Severity]string{config.Stop: "■ Must fix", config.Warn: "▲ Check", config.Note: "Note"}
	basis := ""
	if f.Clause != "" || f.Basis != config.Rating {
		basis = f.Basis.Known(f.Clause)
	}
	word := El("span", Class("word"), Text(words[f.Severity]))
	if f.Code == quote.StillToBeNamed && !p.Reading { // folded: the options are what the reader came for
		return El("li", Class(string(f.Severity)), El("details", At("id", "fold-naming"),
			El("summary", word, El("b", Text(" "+f.Where+": ")), Text(Count(len(f.Picks), "option", "options"))),
			naming(p, f.Picks), El("span", Class("remedy"), Text(" "+f.Remedy))))
	}
	return El("li", Class(string(f.Severity)), word,
		If(f.Where != "" && !strings.HasPrefix(f.Text, f.Where), El("b", Text(Held(Capital(f.Where)+": ")))),
		Text(Held(f.Text)),
		If(f.Remedy != "", El("span", Class("remedy"), Text(" "+Held(f.Remedy)))),
		If(basis != "", El("span", Class("basis"), Text(" "+Held(basis)))),
	)
}

// naming leads to where each option is that asks for a word of the customer.
func naming(p *Page, options []string) Part {
	return Each(options, func(i int, id string) Part {
		return Many(If(i > 0, Text("; ")), Action("name", id, "", p.Q.Edition.Cat.LabelOf(id), Class("quiet"),
			At("id", "name-"+id)), Text(" ("+p.Q.Edition.Cat.OptionByID(id).Asks+")"), If(i == len(options)-1, Text(".")))
	})
}

// Only picks the findings whose code begins with prefix.
func Only(list []config.Finding, prefix string) []config.Finding {
	var out []config.Finding
	for _, f := range list {
		if strings.HasPrefix(f.Code, prefix) {
			out = append(out, f)
		}
	}
	return out
}
