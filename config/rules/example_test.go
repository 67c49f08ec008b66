package rules_test

import (
	"fmt"

	"boxwright/config"
	"boxwright/config/rules"
)

// steps is an invented catalogue of two groups and two rules.
func steps() *config.Catalogue {
	winch := config.Cond{Pick: "winch"}
	return &config.Catalogue{
		Chassis: []config.Chassis{{ID: "cutaway", Label: "Cutaway 14,500 lb"},
			{ID: "medium", Label: "Medium 19,500 lb"}},
		Bodies: []config.Body{{ID: "box-150", Label: "Module 150 in"}},
		Groups: []config.Group{{ID: "bumper", Choose: config.ChooseOne}, {ID: "front", Choose: config.ChooseAny}},
		Options: []config.Option{
			{ID: "bumper-plain", Group: "bumper", Label: "Plain bumper", Standard: true},
			{ID: "bumper-heavy", Group: "bumper", Label: "Heavy bumper"},
			{ID: "winch", Group: "front", Label: "Winch"},
			{ID: "lamp", Group: "front", Label: "Lamp bar"},
		},
		Rules: []config.Rule{
			{ID: "winch-bumper", Kind: config.KindPlant, If: &winch, Then: config.Cond{Pick: "bumper-heavy"}, Reason: "A winch needs the heavy bumper."},
		},
	}
}

// frontAxle has 120 lb left on the cutaway and plenty on the medium chassis.
func frontAxle() *rules.Limits {
	return &rules.Limits{For: func(chassis, body string) []config.Linear {
		l := config.Linear{Code: "weight.front-axle", Label: "Front axle", Unit: "lb", Base: 4900, Limit: 5020,
			Per: map[string]float64{"bumper-plain": 20, "bumper-heavy": 60, "winch": 90, "lamp": 30}}
		if chassis == "medium" {
			l.Limit = 8000
		}
		return []config.Linear{l}
	}}
}

func Example() {
	engine, err := rules.Compile(steps())
	if err != nil {
		fmt.Println(err)
		return
	}
	unit := config.Unit{Chassis: "cutaway", Body: "box-150", Picks: []config.Pick{{Option: "lamp", Qty: 1}}}

	answer := engine.AnswerWithin(&unit, frontAxle(), engine.Budget)
	for _, id := range engine.IDs() {
		fmt.Println(id, answer.State(id))
	}
	// Output:
	// cutaway open
	// medium open
	// box-150 forced
	// bumper-plain open
	// bumper-heavy open
	// winch ruled-out
	// lamp open
}

func ExampleEngine_WhyWithin() {
	engine, _ := rules.Compile(steps())
	unit := config.Unit{Chassis: "cutaway", Body: "box-150"}
	reasons, _ := engine.WhyWithin(&unit, frontAxle(), "winch", 0)
	fmt.Println(reasons[0].Rules[0].Text)
	a := reasons[0].Limits[0]
	fmt.Printf("%s: %g + %g for this + %g for what it needs = %g %s, %g over %g\n", a.Label, a.Base, a.Asked, a.Rest,
		a.Total, a.Unit, a.Over, a.Limit)
	// Output:
	// A winch needs the heavy bumper.
	// Front axle: 4900 + 90 for this + 60 for what it needs = 5050 lb, 30 over 5020
}

func ExampleEngine_MendWithin() {
	engine, _ := rules.Compile(steps())
	unit := config.Unit{Chassis: "cutaway", Body: "box-150", Picks: []config.Pick{{Option: "lamp", Qty: 1}}}
	mends, _ := engine.MendWithin(&unit, frontAxle(), "winch", nil, 0)
	for _, mend := range mends {
		fmt.Println("give up", mend.Drop, "for", mend.Replace["cutaway"], "and have")
		for _, p := range mend.Unit.Picks {
			fmt.Println(" ", p.Option)
		}
	}
	// Output:
	// give up [cutaway] for medium and have
	//   bumper-heavy
	//   lamp
	//   winch
}

func ExampleEngine_Fill() {
	engine, _ := rules.Compile(steps())
	unit := config.Unit{Chassis: "medium", Body: "box-150", Picks: []config.Pick{
		{Option: "bumper-plain", Qty: 1, Filled: true}, // chosen by the program before
		{Option: "winch", Qty: 1},
	}}
	_, changes, ok := engine.Fill(&unit, frontAxle())
	fmt.Println(ok)
	for _, c := range changes {
		fmt.Println(c.Option, c.Added, c.Cause, c.By)
	}
	// Output:
	// true
	// bumper-plain false gives-way [winch]
	// bumper-heavy true chosen [winch]
}

func ExampleEngine_Complete() {
	engine, _ := rules.Compile(steps())
	unit := config.Unit{Chassis: "medium", Body: "box-150", Picks: []config.Pick{{Option: "winch", Qty: 1}}}
	cents := map[string]int64{"bumper-plain": 0, "bumper-heavy": 120000, "winch": 340000, "lamp": 50000}
	best := engine.Complete(&unit, nil, func(id string) int64 { return cents[id] }, 0)
	fmt.Println(best.Cost, best.Proven())
	// Output: 460000 true
}

func ExampleLint() {
	cat := steps()
	lamp := config.Cond{Pick: "lamp"}
	plain := config.Cond{Pick: "bumper-plain"}
	cat.Rules = append(cat.Rules,
		config.Rule{ID: "lamp-bumper", Kind: config.KindPlant, If: &lamp, Then: config.Cond{Pick: "winch"},
			Reason: "The lamp bar sits on the winch."},
		config.Rule{ID: "lamp-light", Kind: config.KindPlant, If: &lamp, Then: plain,
			Reason: "The lamp bar needs the plain bumper."})
	for _, f := range rules.Lint(cat) {
		if f.Severity == config.Stop {
			fmt.Println(f.Where, f.Text)
		}
	}
	// Output:
	// option "lamp" Lamp bar can be in no unit: rule "winch-bumper", rule "lamp-bumper", rule "lamp-light", group "bumper".
}
