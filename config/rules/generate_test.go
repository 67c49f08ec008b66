package rules

import (
	"fmt"
	"math/rand"

	"boxwright/config"
)

// generated is an invented catalogue of a chosen size with weight-like limits,
// built around one unit that keeps everything: the planted one.
type generated struct {
	cat     *config.Catalogue
	planted config.Unit
	weights []config.Linear // without capacity
}

// generate draws a catalogue: of the options about three in five stand in
// groups of exactly one, and there are one and a half times as many rules as
// options. Each option has a mass at a station, giving a share on each of two
// axles, negative beyond them, a current, and a second mass-like figure.
func generate(options int, seed int64) *generated {
	r := rand.New(rand.NewSource(seed))
	g := &generated{cat: &config.Catalogue{ID: "generated", Title: "Generated", Edition: "1"}}
	for i := range 6 {
		g.cat.Chassis = append(g.cat.Chassis, config.Chassis{ID: fmt.Sprintf("c%d", i), Label: "chassis"})
		g.cat.Bodies = append(g.cat.Bodies, config.Body{ID: fmt.Sprintf("b%d", i), Label: "body"})
	}
	g.planted = config.Unit{Chassis: "c0", Body: "b0"}
	for n := 0; n < options; {
		id := fmt.Sprintf("g%d", len(g.cat.Groups))
		size, choose := 3+r.Intn(5), config.ChooseOne
		switch r.Intn(10) {
		case 0, 1, 2:
			choose = config.ChooseAny
		case 3:
			choose = config.ChooseAtMostOne
		}
		g.cat.Groups = append(g.cat.Groups, config.Group{ID: id, Choose: choose})
		in := r.Intn(size)
		for i := range min(size, options-n) {
			o := config.Option{ID: fmt.Sprintf("o%d", n), Group: id, Label: "option"}
			g.cat.Options = append(g.cat.Options, o)
			if choose == config.ChooseAny && r.Intn(3) == 0 || choose != config.ChooseAny && i == min(in, options-n-1) {
				g.planted.Set(config.Pick{Option: o.ID, Qty: 1})
			}
			if i == min(in, options-n-1) && choose != config.ChooseAny {
				g.cat.Options[len(g.cat.Options)-1].Standard = true
			}
			n++
			if n == options {
				break
			}
		}
	}
	g.drawRules(r)
	g.drawWeights(r)
	return g
}

func (g *generated) drawRules(r *rand.Rand) {
	f := asFull(&g.planted)
	n := len(g.cat.Options)
	// Rules concern options near each other, as in a real catalogue.
	near := func(at int) config.Cond {
		return config.Cond{Pick: g.cat.Options[(at+r.Intn(60)+n*30-30)%n].ID}
	}
	for len(g.cat.Rules) < n*3/2 {
		at := r.Intn(n)
		rule := config.Rule{ID: fmt.Sprintf("r%d", len(g.cat.Rules)), Kind: config.KindPlant, Reason: "invented"}
		when := near(at)
		switch r.Intn(6) {
		case 0, 1:
			c := near(at)
			rule.Then = config.Cond{Not: &c}
		case 2, 3:
			rule.Then = config.Cond{Any: []config.Cond{near(at), near(at), near(at)}}
		case 4:
			when = config.Cond{All: []config.Cond{near(at), near(at)}}
			c := near(at)
			rule.Then = config.Cond{Not: &c}
		case 5:
			when = config.Cond{Pick: fmt.Sprintf("%c%d", "cb"[r.Intn(2)], r.Intn(6))}
			c := near(at)
			rule.Then = config.Cond{Not: &c}
		}
		rule.If = &when
		if ruleHolds(g.cat, f, &rule) {
			g.cat.Rules = append(g.cat.Rules, rule)
		}
	}
}

func (g *generated) drawWeights(r *rand.Rand) {
	for _, code := range []string{"front", "rear", "gross", "amps"} {
		g.weights = append(g.weights, config.Linear{Code: code, Label: code, Unit: "lb", Per: map[string]float64{}})
	}
	for _, o := range g.cat.Options {
		mass := float64(5 + r.Intn(1200)/10)
		station := float64(r.Intn(280) - 40) // inches behind the front axle
		const wheelbase = 158.0
		g.weights[0].Per[o.ID] = mass * (1 - station/wheelbase)
		g.weights[1].Per[o.ID] = mass * station / wheelbase
		g.weights[2].Per[o.ID] = mass
		if r.Intn(2) == 0 {
			g.weights[3].Per[o.ID] = float64(r.Intn(200)) / 10
		}
	}
}

// limits leave each capacity at the planted unit's load times scale; other
// chassis and bodies carry a little more or less.
func (g *generated) limits(scale float64) *Limits {
	f := asFull(&g.planted)
	return &Limits{Key: fmt.Sprint(scale), For: func(chassis, body string) []config.Linear {
		out := make([]config.Linear, len(g.weights))
		for i, l := range g.weights {
			l.Limit = total(l, f, &g.planted) * scale
			l.Base = float64((int(chassis[1])*7+int(body[1])*3+i*5)%11-5) / 100 * l.Limit
			if chassis == "c0" && body == "b0" {
				l.Base = 0
			}
			out[i] = l
		}
		return out
	}}
}
