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

// finding keeps each figure on one line with its unit. Only what is drawn does: what is copied,
// exported or carried by a link has the sentence as it was written.
func finding(p *Page, f config.Finding) Part {
	words := map[config.Severity]string{config.Stop: "■ Must fix", config.Warn: "▲ Check", config.Note: "Note"}
	basis := ""
	if f.Clause != "" || f.Basis != config.Rating {
		basis = Known(f.Clause, f.Basis)
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
