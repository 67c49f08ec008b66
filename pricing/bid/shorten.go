package bid

import (
	"cmp"
	"slices"
	"strings"
	"unicode"

	"boxwright/config/quantity"
	"boxwright/pricing/bid/claims"
	"boxwright/pricing/quote"
)

// Shortened is a line that is not answered, read without a few of its words. Whether they may be left out is for a
// person to say.
type Shortened struct {
	Left   [][2]int // where in the purchaser's words those left out stand, in order
	Meant  string   // the line without them, behind its heading where that is read with it
	Answer Answer   // to that
}

// Words are the words left out, as the purchaser wrote them.
func (s *Shortened) Words() []string {
	var out []string
	for _, at := range s.Left {
		out = append(out, s.Answer.Text[at[0]:at[1]])
	}
	return out
}

// Bounds of what is tried for one line.
const (
	mostLeftOut = 3  // words, each of another part that was not read
	mostTried   = 60 // readings
)

// Shorten looks for words without which a line is read and answered as a whole, one of each part that was not
// read, for those among some answers to a list that are open because of such parts.
func Shorten(q *quote.Quote, list []Answer, in quantity.System) []Shortened {
	j := judgeOf(q, in)
	heads := headsOf(q.Draft.Requirements)
	var out []Shortened
	for i := range list {
		a := &list[i]
		if a.Head || a.Outcome != quote.Unanswered || a.Unread == 0 || a.Term != "" || a.Pick != "" || a.Meant != "" {
			continue
		}
		key := line{a.Requirement, heads[a.At]}
		s, known := j.shortened[key]
		if !known {
			q.Edition.Rules.Pauses().Rest()
			s = j.shorten(a, key.head)
			j.shortened[key] = s
		}
		if s != nil {
			found := *s
			found.Answer.At = a.At
			out = append(out, found)
		}
	}
	clear(j.tried)
	return out
}

// headsOf is what stands above each line of a list.
func headsOf(list []quote.Requirement) []string {
	var above heading
	out := make([]string, len(list))
	for i, r := range list {
		out[i] = above.over(r)
	}
	return out
}

// shorten is nil where no words are found.
func (j *judge) shorten(of *Answer, head string) *Shortened {
	line := j.v.writtenLine(of.Text)
	tried := 0
	without := func(left []int) (*reading, string) {
		r := quote.Requirement{Text: line.without(left)}
		return under(func(text string) *reading {
			tried++
			if r, known := j.v.read[text]; known {
				return r
			}
			return j.v.readOnce(text)
		}, r, head)
	}
	s := new(Shortened)
	var left []int
	for read, _ := without(nil); len(read.unread) > 0; {
		part := line.unread(left, read)
		if len(left) == mostLeftOut {
			return nil
		}
		var next *reading
		out := -1
		for _, i := range line.mayLeave(part) {
			if tried >= mostTried {
				break
			}
			got, meant := without(append(slices.Clone(left), i))
			if len(got.claims) == 0 || got.term != "" || len(got.unread) > 0 && len(got.unread)+1 >= len(read.unread) ||
				line.words[i].known && line.asksFigure(left, i, got, part) {
				continue
			}
			a := Answer{Requirement: of.Requirement, Outcome: quote.Unanswered}
			j.judge(&a, got)
			switch {
			case len(got.unread) == 0 && a.Outcome == quote.Unanswered:
			case next == nil:
				next, out, s.Meant, s.Answer = got, i, meant, a
			case a.Outcome != s.Answer.Outcome || !slices.Equal(a.Takes, s.Answer.Takes) ||
				!slices.Equal(a.Read, s.Answer.Read):
				return nil // which of two things is asked for cannot be told
			}
		}
		if next == nil {
			return nil
		}
		left, read = append(left, out), next
	}
	slices.Sort(left)
	for _, i := range left {
		s.Left = append(s.Left, [2]int{line.words[i].from, line.words[i].to})
	}
	if len(left) == 0 || len(s.Meant) > quote.MaxRequirementText {
		return nil
	}
	return s
}

// writtenLine is a line in its words as they are written.
type writtenLine struct {
	text  string
	words []writtenWord
}

type writtenWord struct {
	from, to int  // in the text
	says     bool // it is not idle
	binds    bool // it may not be left out
	known    bool // something offered is described by it
}

// punctuation is what may stand around a word.
const punctuation = `,;:.()"'[]`

func (v *vocabulary) writtenLine(text string) *writtenLine {
	l := &writtenLine{text: text}
	tokens := claims.Read(text).Tokens
	counted := countedBy(tokens)
	conditional := false // a condition is being made
	before := ""
	for from := 0; from < len(text); {
		to := from + strings.IndexAny(text[from:]+" ", " \t")
		w := writtenWord{from: to - len(strings.TrimLeft(text[from:to], punctuation)), to: to}
		w.to = w.from + len(strings.TrimRight(text[w.from:to], punctuation))
		if word := text[w.from:w.to]; word != "" {
			low := strings.ToLower(word)
			conditional = conditional || conditions[low]
			w.binds = conditional || strings.ContainsFunc(word, unicode.IsDigit) || len(word) > 1 &&
				strings.ToUpper(word) == word
			var read []string
			for k, t := range tokens {
				if t.End <= w.from || t.End > w.to {
					continue
				}
				read = append(read, t.Word)
				w.known = w.known || v.with[t.Word] != nil
				named := articles[before] && t.Role&claims.Modifier == 0 // "with a stopwatch"
				denied := k > 0 && tokens[k-1].Kind == claims.Not
				whole := t.Word == moduleWord && t.Role&(claims.Located|claims.Modifier) == 0
				w.binds = w.binds || t.Kind != claims.Word || counted[t.Word] || named || denied || whole || v.binds(t.Word)
			}
			w.says = read != nil
			w.binds = w.binds || !slices.Equal(read, stems(word)) // it is part of a phrase
			conditional = conditional && w.to == to
			l.words, before = append(l.words, w), low
		}
		from = to + 1
	}
	return l
}

var articles = map[string]bool{"a": true, "an": true, "the": true}

// conditions are words behind which stands in what state or case something is asked for.
var conditions = func() map[string]bool {
	out := map[string]bool{}
	for _, w := range strings.Fields("when whenever while if unless until during once where whichever") {
		out[w] = true
	}
	return out
}()

// countedBy are the words of what tokens count.
func countedBy(tokens []claims.Token) map[string]bool {
	out := map[string]bool{}
	for i, t := range tokens {
		if t.Kind != claims.Count || t.Num.Unit != "" {
			continue
		}
		if noun := t.Num.Noun(); noun != "" {
			out[noun] = true
		} else if i+1 < len(tokens) {
			out[tokens[i+1].Word] = true
		}
	}
	return out
}

// binds reports whether no line may do without a word: it names something offered or a figure, or says of what
// quality, place, dimension or number something is, or what is excepted.
func (v *vocabulary) binds(w string) bool {
	return v.titles[w] != nil && w != moduleWord || qualities[w] || colors[w] || oppositePlaces[w] || harder[w] ||
		lessens[w] || excepting[w] || claims.Dimension(w) || slices.ContainsFunc(gaugesByWord[w], func(i int) bool {
		return slices.ContainsFunc(readyGauges[i].names, func(name []string) bool { return len(name) == 1 && name[0] == w })
	})
}

// excepting are words of exceptions, of what is otherwise or upright, of an order in time, and of what the
// purchaser has.
var excepting = wordSet(`only except excluded but other instead modified different vertical horizontal off open
opened closed
first last later earlier newer latest existing already now present lifetime`)

// without is the line without some of its words.
func (l *writtenLine) without(left []int) string {
	var out strings.Builder
	from := 0
	for i, w := range l.words {
		if slices.Contains(left, i) {
			out.WriteString(strings.TrimRight(l.text[from:w.from], " \t"))
			from = w.to
		}
	}
	return strings.TrimSpace(out.String() + l.text[from:])
}

// pieces are the words that stand in each of the pieces of a reading of the line without some of its words.
func (l *writtenLine) pieces(left []int, read *reading) [][]int {
	short, at, end := l.without(left), make([]int, len(l.words)), 0
	for i, w := range l.words {
		at[i] = -1
		if k := strings.Index(short[end:], l.text[w.from:w.to]); k >= 0 && !slices.Contains(left, i) {
			at[i] = end + k
			end = at[i] + w.to - w.from
		}
	}
	out := make([][]int, len(read.pieces))
	end = 0
	for n, p := range read.pieces {
		k := strings.Index(short[end:], p.text)
		if k < 0 {
			continue // it stands in the heading
		}
		from := end + k
		end = from + len(p.text)
		for i := range at {
			if at[i] >= from && at[i] < end {
				out[n] = append(out[n], i)
			}
		}
	}
	return out
}

// unread are the words of the first pieces that were not read, up to one that was, without those that are all that
// a piece says.
func (l *writtenLine) unread(left []int, read *reading) []int {
	var out []int
	for n, words := range l.pieces(left, read) {
		if read.pieces[n].claim != unreadPiece {
			if out != nil {
				break
			}
			continue
		}
		words = slices.DeleteFunc(words, func(i int) bool { return !l.words[i].says })
		if len(words) > 1 || len(words) == 1 && l.isLabel(words[0]) {
			out = append(out, words...)
		}
	}
	return out
}

// isLabel reports whether a word stands before the line as a title of it: "Maneuverability. Overall length …"
func (l *writtenLine) isLabel(i int) bool {
	to := l.words[i].to
	return i == 0 && to+1 < len(l.text) && strings.IndexByte(".:", l.text[to]) >= 0
}

// mayLeave are the words of a part that may be left out: those first by which nothing offered is described, and of
// these the short ones.
func (l *writtenLine) mayLeave(part []int) []int {
	out := slices.DeleteFunc(slices.Clone(part), func(i int) bool { return l.words[i].binds })
	slices.SortStableFunc(out, func(a, b int) int {
		x, y := l.words[a], l.words[b]
		if x.known != y.known {
			return map[bool]int{true: 1, false: -1}[x.known]
		}
		return cmp.Compare(x.to-x.from, y.to-y.from)
	})
	return out
}

// asksFigure reports whether what stands in a part, without one more word, was read as asking for a figure. What a
// figure is measured of, or in which state, may not be left out.
func (l *writtenLine) asksFigure(left []int, out int, read *reading, part []int) bool {
	for n, words := range l.pieces(append(slices.Clone(left), out), read) {
		if c := read.pieces[n].claim; c >= 0 && read.claims[c].gauge != nil &&
			slices.ContainsFunc(words, func(i int) bool { return slices.Contains(part, i) }) {
			return true
		}
	}
	return false
}
