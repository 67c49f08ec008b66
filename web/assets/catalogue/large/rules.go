package large

import (
	"fmt"

	"boxwright/config"
)

// planted is a unit that keeps every rule. On each chassis with its usual body
// there is one with what is standard; others take other options, so that each
// option is in one of them and none is ruled out for good.
type planted struct {
	chassis *config.Chassis
	body    *config.Body
	has     map[string]bool
}

// mostOthers is how many planted units are not the standard one.
const mostOthers = 24

func (g *grower) plant() {
	chassis := len(g.cat.Chassis)
	for i := range chassis + mostOthers {
		p := planted{chassis: &g.cat.Chassis[i%chassis], has: map[string]bool{}}
		p.body = g.cat.BodyByID(p.chassis.UsualBody)
		for _, a := range g.added {
			at := a.from + (i*7+a.from)%(a.until-a.from)
			for k := a.from; k < a.until; k++ {
				o := &g.cat.Options[k]
				other := k == at || a.choose == config.ChooseAny && g.rand.Intn(4) == 0
				if i < chassis && o.Standard || i >= chassis && other {
					p.has[o.ID] = true
				}
			}
		}
		g.planted = append(g.planted, p)
	}
}

// mostTries is how often a model is tried on other options before another takes
// its place.
const mostTries = 300

// rule adds a rule like its model between options of neighboring groups, if one is
// found that every planted unit keeps.
func (g *grower) rule(m *config.Rule) {
	for range mostTries {
		near := &nearby{g: g, at: g.rand.Intn(len(g.added)), group: map[string]int{}}
		r := config.Rule{ID: fmt.Sprintf("%s-%d", m.ID, 1000+len(g.cat.Rules)), Kind: m.Kind, Reason: m.Reason,
			Then: near.cond(m.Then)}
		if m.If != nil {
			c := near.cond(*m.If)
			r.If = &c
		}
		if near.picks == 0 {
			return // of chassis and body alone
		}
		if g.keep(&r) {
			g.cat.Rules = append(g.cat.Rules, r)
			return
		}
	}
}

func (g *grower) keep(r *config.Rule) bool {
	for i := range g.planted {
		p := &g.planted[i]
		if (r.If == nil || p.holds(r.If)) && !p.holds(&r.Then) {
			return false
		}
	}
	return true
}

// nearby puts options of groups that stand near each other in the place of those
// of a model: those of one group are of one group again.
type nearby struct {
	g     *grower
	at    int
	group map[string]int
	picks int
}

func (n *nearby) cond(c config.Cond) config.Cond {
	list := func(conds []config.Cond) (out []config.Cond) {
		for _, x := range conds {
			out = append(out, n.cond(x))
		}
		return out
	}
	if o := n.g.cat.OptionByID(c.Pick); o != nil {
		c.Pick = n.pick(o)
	}
	c.All, c.Any = list(c.All), list(c.Any)
	if c.Not != nil {
		x := n.cond(*c.Not)
		c.Not = &x
	}
	for _, count := range []**config.Count{&c.AtLeast, &c.AtMost} {
		if *count != nil {
			*count = &config.Count{N: (*count).N, Of: list((*count).Of)}
		}
	}
	return c
}

func (n *nearby) pick(o *config.Option) string {
	n.picks++
	g := n.g
	at, known := n.group[o.Group]
	if !known {
		at = (n.at + g.rand.Intn(12)) % len(g.added)
		n.group[o.Group] = at
	}
	a := g.added[at]
	return g.cat.Options[a.from+g.rand.Intn(a.until-a.from)].ID
}

func (p *planted) holds(c *config.Cond) bool {
	count := func(conds []config.Cond) (n int) {
		for i := range conds {
			if p.holds(&conds[i]) {
				n++
			}
		}
		return n
	}
	switch {
	case c.Pick != "":
		return p.has[c.Pick] || c.Pick == p.chassis.ID || c.Pick == p.body.ID
	case c.Not != nil:
		return !p.holds(c.Not)
	case c.All != nil:
		return count(c.All) == len(c.All)
	case c.Any != nil:
		return count(c.Any) > 0
	case c.AtLeast != nil:
		return count(c.AtLeast.Of) >= c.AtLeast.N
	case c.AtMost != nil:
		return count(c.AtMost.Of) <= c.AtMost.N
	case c.Chassis != nil:
		text, number, _ := p.chassis.Attr(c.Chassis.Attr)
		return c.Chassis.Holds(text, number)
	}
	text, number, _ := p.body.Attr(c.Body.Attr)
	return c.Body.Holds(text, number)
}
