package quote

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"boxwright/config"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// notes are the footnotes of a paper: where each limit comes from. In the tables each is a
// word and a number; it stands in full at the foot of the section that has it first.
type notes struct {
	list []note
	told int   // how many of them stand at a foot
	met  []int // places in the list, since the last foot
}

type note struct{ text, under string }

// wordOf is what a limit rests on, as short as a column allows.
var wordOf = map[config.Basis]string{config.Rating: "rating", config.ReadInText: "text", config.FromMemory: "memory",
	config.CommonPractice: "practice", config.Purchaser: "purchaser", config.Computed: "computed"}

// knownBy says in a note how well its source is known.
var knownBy = map[config.Basis]string{config.ReadInText: "Read there.",
	config.FromMemory: "From memory; check the standard.", config.CommonPractice: "Common practice, no published source.",
	config.Purchaser: "Set by the purchaser.", config.Computed: "Computed."}

func (n *notes) mark(source string, basis config.Basis) Part {
	text := footnote(source, basis)
	i := slices.IndexFunc(n.list, func(x note) bool { return x.text == text })
	if i < 0 {
		i = len(n.list)
		n.list = append(n.list, note{text: text})
	}
	if !slices.Contains(n.met, i) {
		n.met = append(n.met, i)
	}
	return Many(Text(wordOf[basis]+" "), El("span", Class("soft"), Text("["+page.Whole(i+1)+"]")))
}

// footnote is a source in a full sentence.
func footnote(source string, basis config.Basis) string {
	if source == "" {
		return cmp.Or(knownBy[basis], string(basis))
	}
	if word, _, _ := strings.Cut(source, " "); !strings.Contains(word, ".") { // an address stays as it is
		first, size := utf8.DecodeRuneInString(source)
		source = string(unicode.ToUpper(first)) + source[size:]
	}
	return strings.TrimSpace(source + ". " + knownBy[basis])
}

// foot are the notes that a section has first, and where its others stand.
func (n *notes) foot(under string) Part {
	news := n.list[n.told:]
	for i := range news {
		news[i].under = under
	}
	slices.Sort(n.met)
	var elsewhere []string
	for i := 0; i < len(n.met) && n.met[i] < n.told; {
		at, from := n.list[n.met[i]].under, i
		for i < len(n.met) && n.met[i] < n.told && n.list[n.met[i]].under == at {
			i++
		}
		elsewhere = append(elsewhere, numbers(n.met[from:i])+" under "+at)
	}
	first := strconv.Itoa(n.told + 1)
	n.told, n.met = len(n.list), nil
	return Many(
		If(len(news) > 0, El("ol", Class("notes two-up"), At("start", first),
			Each(news, func(_ int, x note) Part { return El("li", Text(x.text)) }))),
		If(elsewhere != nil, El("p", Class("how notes"), Text("Notes: "+strings.Join(elsewhere, "; ")+"."))))
}

// numbers of notes, those that follow each other as "1 to 4".
func numbers(places []int) string {
	var out []string
	for i := 0; i < len(places); i++ {
		from := i
		for i+1 < len(places) && places[i+1] == places[i]+1 {
			i++
		}
		switch text := strconv.Itoa(places[from] + 1); {
		case i > from+1:
			out = append(out, text+" to "+strconv.Itoa(places[i]+1))
		case i == from+1:
			out = append(out, text, strconv.Itoa(places[i]+1))
		default:
			out = append(out, text)
		}
	}
	return strings.Join(out, ", ")
}
