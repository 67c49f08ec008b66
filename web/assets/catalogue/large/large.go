// Package large grows the demonstration catalogue to any size, so that what a
// large catalogue costs can be measured. Host only: nothing of it is shipped.
package large

import (
	"encoding/json"
	"fmt"
	"math/rand"

	"boxwright/config"
	"boxwright/web/assets/catalogue"
)

// mostInChapter is how many options a chapter takes before another is begun.
const mostInChapter = 320

// File is the demonstration catalogue grown to so many options, and twice as many
// rules. The options added stand in groups of their own, and options, groups and
// rules are each modeled on one of the demonstration: so are their weights, loads,
// circuits, work, lead times, prices and texts. The same arguments give the same
// bytes.
func File(options int, seed int64) ([]byte, error) {
	cat, err := config.Read(catalogue.Demo)
	if err != nil {
		return nil, err
	}
	demo := len(cat.Options)
	if options <= demo {
		return nil, fmt.Errorf("%d options are no more than the %d of the demonstration", options, demo)
	}
	g := &grower{rand: rand.New(rand.NewSource(seed)), cat: cat, standard: float64(demo) / float64(options) / 10}
	if err := json.Unmarshal(cat.PriceBook, &g.book); err != nil {
		return nil, err
	}
	if err := json.Unmarshal(g.book["prices"], &g.prices); err != nil {
		return nil, err
	}
	cat.ID, cat.Title = fmt.Sprintf("grown-%d", options), fmt.Sprintf("Demonstration grown to %d options", options)
	cat.Signers = nil
	g.models = modelGroups(cat)
	for len(cat.Options) < options {
		g.group(options - len(cat.Options))
	}
	g.plant()
	for models := cat.Rules; len(cat.Rules) < 2*options; {
		g.rule(&models[g.rand.Intn(len(models))])
	}
	if g.book["prices"], err = json.Marshal(g.prices); err != nil {
		return nil, err
	}
	if cat.PriceBook, err = json.Marshal(g.book); err != nil {
		return nil, err
	}
	return json.Marshal(cat)
}

type grower struct {
	rand     *rand.Rand
	cat      *config.Catalogue
	standard float64 // how much of its model something standard takes
	book     map[string]json.RawMessage
	prices   map[string]string
	models   []model
	chapter  map[string]string // where groups of a chapter of the demonstration go now
	in       map[string]int    // options by chapter
	added    []added
	planted  []planted
}

// model is a group of the demonstration with its options.
type model struct {
	group   config.Group
	options []config.Option
}

// added is a group that was added, by where its options stand in the catalogue.
type added struct {
	choose      string
	from, until int
}

// modelGroups are the groups of the demonstration, without those of a remount.
func modelGroups(cat *config.Catalogue) (out []model) {
	for _, g := range cat.Groups {
		if g.Chapter == "remount" {
			continue
		}
		m := model{group: g}
		for _, i := range cat.Members(g.ID) {
			if o := cat.Options[i]; !o.Remount {
				m.options = append(m.options, o)
			}
		}
		out = append(out, m)
	}
	return out
}

// group adds a group of up to so many options, somewhat larger than its model.
func (g *grower) group(most int) {
	m := &g.models[g.rand.Intn(len(g.models))]
	n := min(most, len(m.options)+g.rand.Intn(2*len(m.options)))
	x := m.group
	x.ID = fmt.Sprintf("%s-%d", x.ID, 1000+len(g.cat.Groups))
	x.Label = fmt.Sprintf("%s, set %d", x.Label, 1+len(g.cat.Groups))
	x.Chapter = g.room(x.Chapter, n)
	g.cat.Groups = append(g.cat.Groups, x)
	a := added{choose: x.Choose, from: len(g.cat.Options), until: len(g.cat.Options) + n}
	standard := -1
	if x.Choose == config.ChooseOne {
		standard = g.rand.Intn(n)
	}
	for i := range n {
		g.option(&m.options[i%len(m.options)], x.ID, i == standard)
	}
	g.added = append(g.added, a)
}

// room is the chapter for more options of one of the demonstration.
func (g *grower) room(chapter string, options int) string {
	if g.chapter == nil {
		g.chapter, g.in = map[string]string{}, map[string]int{}
		for i := range g.cat.Options {
			c := g.cat.GroupByID(g.cat.Options[i].Group).Chapter
			g.chapter[c] = c
			g.in[c]++
		}
	}
	to := g.chapter[chapter]
	if g.in[to]+options > mostInChapter {
		for _, c := range g.cat.Chapters {
			if c.ID == chapter {
				n := len(g.cat.Chapters) + 1
				to = fmt.Sprintf("%s-%d", chapter, n)
				g.cat.Chapters = append(g.cat.Chapters, config.Chapter{ID: to, Label: fmt.Sprintf("%s %d", c.Label, n)})
				g.chapter[chapter] = to
				break
			}
		}
	}
	g.in[to] += options
	return to
}

// Words that tell the options made of one model apart.
var finishes = []string{"aluminum", "stainless", "black", "white", "street side", "curb side", "long", "short", "heavy",
	"light", "coated", "bare"}

// option adds an option like its model. What is standard adds little, however many
// groups there are, so that a unit as the plant builds it stays within its limits.
func (g *grower) option(m *config.Option, group string, standard bool) {
	n := len(g.cat.Options) + 1
	finish := finishes[g.rand.Intn(len(finishes))]
	o := config.Option{
		ID: fmt.Sprintf("%s-%d", m.ID, 1000+n), Group: group, Standard: standard,
		Label: fmt.Sprintf("%s, %s, no. %d", m.Label, finish, n), Spec: m.Spec + " Version " + finish +
			".", MaxQty: m.MaxQty, Asks: m.Asks,
	}
	scale := 0.5 + g.rand.Float64()
	if standard {
		scale *= g.standard
	} else {
		o.Parts, o.PartsFor = m.Parts, m.PartsFor
	}
	if m.Mass != nil {
		x := *m.Mass
		x.Lb, x.TolLb = tenth(x.Lb, scale), tenth(x.TolLb, scale)
		if x.Zone == config.ZonePlaces { // its places stay with the model: two things never share one
			x.Zone, x.XIn, x.YIn, x.ZIn = config.ZoneModuleMid, 0, 0, 30
		}
		o.Mass = &x
	}
	if m.Load != nil {
		x := *m.Load
		x.ParkedA, x.DrivingA, x.RespondingA, x.SceneA = tenth(x.ParkedA, scale), tenth(x.DrivingA, scale),
			tenth(x.RespondingA, scale), tenth(x.SceneA, scale)
		x.ACW = tenth(x.ACW, scale)
		o.Load = &x
	}
	o.Circuit = m.Circuit
	for _, w := range m.Work {
		w.Hours = tenth(w.Hours, scale)
		o.Work = append(o.Work, w)
	}
	g.cat.Options = append(g.cat.Options, o)
	var price float64
	fmt.Sscan(g.prices[m.ID], &price) //nolint:errcheck // one without a price costs nothing
	g.prices[o.ID] = fmt.Sprintf("%d.00", int(price*scale))
}

func tenth[T ~float64](x T, scale float64) T { return T(float64(int(float64(x)*scale*10)) / 10) }
