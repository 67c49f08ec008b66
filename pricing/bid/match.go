package bid

import (
	"cmp"
	"math"
	"slices"

	"boxwright/config"
	"boxwright/pricing/quote"
)

// described is something the catalogue offers with the words that describe it.
type described struct {
	id     string
	name   []string           // words of its label
	weight map[string]float64 // by word: 1 in its label, less where it stands further off
	nums   []measure
	not    bool // it is the lack of something
}

// vocabulary is what lines are matched against: how telling each word is, and
// everything offered.
type vocabulary struct {
	things []described
	idf    map[string]float64
	ranked map[string][]match // lines ranked before
}

func (v *vocabulary) telling(w string) float64 {
	if x, ok := v.idf[w]; ok {
		return x
	}
	return math.Log(1 + float64(len(v.things))) // nobody knows the word
}

// vocabularyKey names the vocabulary among what is kept with an edition.
type vocabularyKey struct{}

// vocabularyOf is the vocabulary of the edition, made when first asked for.
func vocabularyOf(ed *quote.Edition) *vocabulary {
	return ed.Once(vocabularyKey{}, func() any { return newVocabulary(ed.Cat) }).(*vocabulary)
}

func newVocabulary(cat *config.Catalogue) *vocabulary {
	v := &vocabulary{idf: map[string]float64{}, ranked: map[string][]match{}}
	add := func(id, label, near, far string) {
		d := described{id: id, weight: map[string]float64{}}
		for i, text := range []string{label, near, far} {
			a := read(text)
			for _, w := range a.words {
				d.weight[w] = max(d.weight[w], []float64{1, 0.7, 0.5}[i])
			}
			if i != 1 {
				d.nums = append(d.nums, a.nums...)
			}
			if i == 0 {
				d.name, d.not = a.words, a.not
			}
		}
		for w := range d.weight {
			v.idf[w]++
		}
		v.things = append(v.things, d)
	}
	for i := range cat.Chassis {
		c := &cat.Chassis[i]
		add(c.ID, c.Label+", Type "+c.Type+" "+c.Drive+" "+c.Fuel, "chassis "+c.Cab, c.Spec)
	}
	for i := range cat.Bodies {
		if b := &cat.Bodies[i]; !b.Existing {
			add(b.ID, b.Label, "module body "+b.Kind, b.Spec)
		}
	}
	for i := range cat.Options {
		o := &cat.Options[i]
		if !slices.Contains(o.Tags, "remount") { // what an existing module has already
			add(o.ID, o.Label, cat.GroupByID(o.Group).Label, o.Spec)
		}
	}
	for w, n := range v.idf {
		v.idf[w] = math.Log(1 + float64(len(v.things))/n)
	}
	return v
}

// match is how well something offered answers a line.
type match struct {
	id    string
	score float64 // 0 to 1
}

// Below sure a match is only suggested; matches within alike of the best are as
// good.
const (
	sure  = 0.5
	alike = 0.03
)

// matches ranks what is offered by a line, best first; of what is as good, what
// the unit has goes first.
func (v *vocabulary) matches(text string, a *asked, has func(id string) bool) []match {
	out, known := v.ranked[text]
	if !known {
		if len(v.ranked) >= 2*quote.MaxRequirements {
			clear(v.ranked)
		}
		out = v.rank(a)
		v.ranked[text] = out
	}
	for i := range out {
		if out[0].score-out[i].score > alike {
			break
		}
		if has(out[i].id) {
			m := match{out[i].id, out[0].score}
			return append([]match{m}, slices.Delete(slices.Clone(out), i, i+1)...)
		}
	}
	return out
}

// rank scores everything offered. What does not keep the numbers of the line
// can be suggested but is never sure.
func (v *vocabulary) rank(a *asked) []match {
	total := 0.0
	for _, w := range a.words {
		total += v.telling(w)
	}
	if total == 0 {
		return nil
	}
	var out []match
	for i := range v.things {
		d := &v.things[i]
		hit, name, named := 0.0, 0.0, 0.0
		for _, w := range a.words {
			hit += v.telling(w) * d.weight[w]
		}
		for _, w := range d.name {
			t := v.telling(w)
			name += t
			if slices.Contains(a.words, w) {
				named += t
			}
		}
		if hit == 0 {
			continue
		}
		score := hit / total
		if name > 0 {
			score = 0.7*score + 0.3*named/name
		}
		if a.not != d.not || !keeps(a, d.nums) {
			score = min(score, sure-alike)
		}
		if score > 0.15 {
			out = append(out, match{d.id, score})
		}
	}
	slices.SortStableFunc(out, func(x, y match) int { return cmp.Compare(y.score, x.score) })
	return out
}

// keeps reports whether every number of a line is found among those of a thing,
// as the line's sense has it.
func keeps(a *asked, nums []measure) bool {
	for _, m := range a.nums {
		if !slices.ContainsFunc(nums, func(n measure) bool {
			close := math.Abs(n.value-m.value) <= 0.01*m.value
			return n.unit == m.unit && (close || a.sense == config.AtLeast && n.value > m.value ||
				a.sense == config.AtMost && n.value < m.value)
		}) {
			return false
		}
	}
	return true
}
