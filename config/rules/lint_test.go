package rules

import (
	"encoding/json"
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
)

// plain is a small faultless catalogue that tests break in one way each.
func plain() *config.Catalogue {
	work := []config.Work{{Station: "doors", Hours: 1}}
	option := func(id, group string) config.Option {
		return config.Option{ID: id, Group: group, Label: id, Mass: &config.Mass{Lb: 1}, Work: work}
	}
	return &config.Catalogue{
		Chassis: []config.Chassis{{ID: "short", Label: "Short chassis", CabToAxleIn: 84},
			{ID: "long", Label: "Long chassis", CabToAxleIn: 108}},
		Bodies: []config.Body{{ID: "box", Label: "Box", Kind: "module", LengthIn: 150},
			{ID: "big-box", Label: "Big box", Kind: "module", LengthIn: 170}},
		Groups: []config.Group{{ID: "step", Choose: config.ChooseOne}, {ID: "lamp", Choose: config.ChooseAny}},
		Options: []config.Option{option("plain-step", "step"), option("wide-step", "step"), option("spot", "lamp"),
			option("flood", "lamp")},
		PriceBook: json.RawMessage(`{"prices":{"plain-step":"0.00","wide-step":"10.00","spot":"5.00","flood":"5.00"}}`),
	}
}

func rule(id string, when *config.Cond, then config.Cond) config.Rule {
	return config.Rule{ID: id, Kind: config.KindPlant, If: when, Then: then, Reason: "because of " + id}
}

func pick(id string) config.Cond   { return config.Cond{Pick: id} }
func no(c config.Cond) config.Cond { return config.Cond{Not: &c} }

func TestLintFindsPlantedFaults(t *testing.T) {
	spot, flood, wide, big := pick("spot"), pick("flood"), pick("wide-step"), pick("big-box")
	long := config.Cond{Chassis: &config.Test{Attr: "cab_to_axle_in", Op: ">", Number: 100}}
	for _, c := range []struct {
		reason string
		spoil  func(*config.Catalogue)
		codes  []string
		text   string // part of the first finding
	}{
		{"a sound catalogue has no finding", func(*config.Catalogue) {}, nil, ""},
		{"an option that two rules pull apart is dead", func(c *config.Catalogue) {
			c.Rules = []config.Rule{rule("a", &spot, flood), rule("b", &spot, no(flood))}
		}, []string{"catalogue.never"}, `rule "a", rule "b"`},
		{"a rule without a condition that demands a pick forces it", func(c *config.Catalogue) {
			c.Rules = []config.Rule{rule("a", nil, spot)}
		}, []string{"catalogue.always"}, `rule "a"`},
		{"two demands that exclude each other leave no unit", func(c *config.Catalogue) {
			c.Rules = []config.Rule{rule("idle", &flood, spot), rule("a", nil, spot), rule("b", nil, no(spot))}
		}, []string{"catalogue.nothing-possible"}, `rule "a", rule "b"`},
		{"a group nobody can satisfy leaves no unit", func(c *config.Catalogue) {
			c.Rules = []config.Rule{rule("a", nil, no(wide)), rule("b", nil, no(pick("plain-step")))}
		}, []string{"catalogue.nothing-possible"}, `rule "a", rule "b", group "step"`},
		{"a rule that says another one again", func(c *config.Catalogue) {
			c.Rules = []config.Rule{rule("a", &spot, flood),
				rule("b", &config.Cond{All: []config.Cond{spot, wide}}, flood)}
		}, []string{"catalogue.rule-redundant"}, `rule "a"`},
		{"a rule whose condition the attributes never meet", func(c *config.Catalogue) {
			c.Rules = []config.Rule{rule("a",
				&config.Cond{Chassis: &config.Test{Attr: "cab_to_axle_in", Op: ">", Number: 200}}, spot)}
		}, []string{"catalogue.rule-idle"}, "never come about"},
		{"a pair that no rule forbids but that leaves a group empty", func(c *config.Catalogue) {
			c.Rules = []config.Rule{rule("a", &wide, long), rule("b", &big, wide), rule("c", &spot, wide)}
		}, []string{}, ""},
		{"a pair whose every step is ruled out", func(c *config.Catalogue) {
			c.Rules = []config.Rule{rule("a", &wide, long), rule("b", &config.Cond{Pick: "plain-step"}, no(big))}
		}, []string{"catalogue.group-empty"}, "Short chassis with Big box"},
		{"an option without price, mass and work", func(c *config.Catalogue) {
			c.Options = append(c.Options, config.Option{ID: "horn", Group: "lamp", Label: "Horn"})
		}, []string{"catalogue.no-price", "catalogue.no-mass", "catalogue.no-work"}, "Horn has no price"},
		{"an option that takes mass off", func(c *config.Catalogue) {
			m := *c.Options[0].Mass
			m.Lb = -40
			c.Options[0].Mass = &m
		}, []string{"catalogue.mass-below-zero"}, "below zero: plain-step"},
		{"two of a choice of one that are standard", func(c *config.Catalogue) {
			c.Options[0].Standard, c.Options[1].Standard = true, true
		}, []string{"catalogue.standard-twice"}, "2 are standard"},
		{"a rule about an unknown option", func(c *config.Catalogue) {
			c.Rules = []config.Rule{rule("a", nil, pick("ghost"))}
		}, []string{"rules.condition"}, `"ghost"`},
		{"a condition that says nothing", func(c *config.Catalogue) {
			c.Rules = []config.Rule{rule("a", nil, config.Cond{})}
		}, []string{"rules.condition"}, "says nothing"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			cat := plain()
			c.spoil(cat)
			var codes []string
			found := Lint(cat)
			for _, f := range found {
				codes = append(codes, f.Code)
				assert.NotEmpty(t, f.Remedy)
				assert.NotEmpty(t, f.Where)
			}
			assert.ElementsMatch(t, c.codes, codes, "%+v", found)
			if c.text != "" && len(found) > 0 {
				assert.Contains(t, found[0].Text, c.text)
			}
		})
	}
}

func TestDemoCatalogueHasNoFaultyRules(t *testing.T) {
	for _, f := range Lint(demo(t)) {
		require.Equal(t, config.Note, f.Severity, "%s: %s", f.Where, f.Text)
		require.NotContains(t, f.Code, "rule-", "%s: %s", f.Where, f.Text)
	}
}

func TestLintOfNothing(t *testing.T) {
	for _, cat := range []*config.Catalogue{nil, {}} {
		found := Lint(cat)
		require.NotEmpty(t, found)
		require.Equal(t, config.Stop, found[0].Severity)
	}
}

func lintWithin(t *testing.T, cat *config.Catalogue, limits *Limits) []config.Finding {
	e, err := Compile(cat)
	require.NoError(t, err)
	l := &Linter{e: e}
	l.within(limits)
	l.Go(0)
	return l.out
}

func TestLintWithinLimits(t *testing.T) {
	cat := plain()
	per := map[string]float64{"plain-step": 10, "wide-step": 25, "spot": 20, "flood": 60}
	limits := &Limits{For: func(chassis, body string) []config.Linear {
		room := 50.0
		if chassis == "short" && body == "big-box" {
			room = 9 // not even the plain step
		}
		return []config.Linear{{Code: "weight.rear-axle", Per: per, Limit: room}}
	}}
	found := lintWithin(t, cat, limits)
	require.Len(t, found, 2, "%+v", found)
	assert.Equal(t, "catalogue.pair-overloaded", found[0].Code)
	assert.Equal(t, []string{"short", "big-box"}, found[0].Picks)
	assert.Equal(t, "catalogue.never-within-limits", found[1].Code)
	assert.Equal(t, []string{"flood"}, found[1].Picks)
}

func TestEveryDemoOptionFitsSomewhere(t *testing.T) {
	cat := demo(t)
	require.Empty(t, lintWithin(t, cat, demoLimits(cat, &config.Unit{}, 1)))
}

// However many things stand in one place, the lint ends, tells of the first, and says
// that it left some open.
func TestLintTellsOfTheFirstOfManyThingsInOnePlace(t *testing.T) {
	cat := demo(t)
	cat.Chassis, cat.Bodies = cat.Chassis[:1], cat.Bodies[:1]
	cat.Rules, cat.Duties = nil, nil
	any := slices.IndexFunc(cat.Groups, func(g config.Group) bool { return g.Choose == config.ChooseAny })
	for i := range 40 {
		o := config.Option{ID: fmt.Sprintf("crowd-%d", i), Group: cat.Groups[any].ID, Label: fmt.Sprintf("Light %d", i)}
		o.Places = []config.Place{{Kind: "lamp", Face: config.FaceStreet, XIn: 40, ZIn: 60, LengthIn: 9, WidthIn: 4,
			HeightIn: 7, OutIn: 4}}
		cat.Options = append(cat.Options, o)
	}
	l := NewLinter(cat, nil)
	l.phases = []phase{{"what stands in one place", l.shapes}, {"what is left open", l.tellOpen}}
	require.True(t, l.Go(0))
	codes := map[string]int{}
	for _, f := range l.Findings() {
		codes[f.Code]++
	}
	require.Equal(t, map[string]int{"catalogue.collision": mostClashes, "catalogue.left-open": 1}, codes)
}
