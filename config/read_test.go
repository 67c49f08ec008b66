package config_test

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
)

func ExampleRead() {
	c, err := config.Read([]byte(small))
	fmt.Println(c.Title, len(c.Options), err)

	_, err = config.Read([]byte(strings.Replace(small, `"group": "lamps"`, `"group": "lights"`, 1)))
	for _, p := range err.(config.Problems) {
		fmt.Println(p)
	}
	// Output:
	// Small catalogue 2 <nil>
	// options[0] "flood" group: "lights" is not a group
	// groups[0] "lamps": has no options
}

func ExampleCatalogue_CheckUnit() {
	c, _ := config.Read([]byte(small))
	u := config.Unit{Chassis: "cut", Body: "mod"}
	u.Set(config.Pick{Option: "flood", Qty: 3})
	u.Set(config.Pick{Option: "winch", Qty: 1})
	for _, p := range c.CheckUnit(&u) {
		fmt.Println(p)
	}
	// Output:
	// picks[0] "flood": 3 is not a quantity from 1 to 2
	// picks[1]: option "winch" is not in this edition
}

func ExamplePlace() {
	c, _ := config.Read([]byte(small))
	// 4 in ahead of the rear wall, on the right, 30 in above the module floor.
	x, y, z := config.StationAt(&c.Chassis[0], &c.Bodies[0], config.ZoneModuleRear, -4, 20, 30)
	fmt.Println(x, "in behind the front axle,", y, "in right of the centerline,", z, "in above the ground")
	// Output: 201 in behind the front axle, 20 in right of the centerline, 62 in above the ground
}

func TestHostileCatalogues(t *testing.T) {
	nested := strings.Repeat(`{"not": `, 40) + `{"pick": "step"}` + strings.Repeat(`}`, 40)
	for _, c := range []struct {
		reason    string
		old, new  string // a piece of the small catalogue and what takes its place; ‸ marks the fault
		code      string
		where     string // behind the line and column, where the fault is marked
		text      string // part of the sentence
		onlyFault bool
	}{
		{"cut short", `,
  "price_book": {}
}`, ``, "syntax", "the end of the file", "cut short", true},
		{"something behind the end", `"price_book": {}
}`, `"price_book": {}
} ‸{}`, "trailing", "", "one JSON value", true},
		{"no JSON: a comma too many", `"spec": "", "max_qty"`, `"spec": "",‸, "max_qty"`, "syntax", "", "not JSON", true},
		{"not a number, written out", `"wheelbase_in": 158`, `"wheelbase_in": ‸NaN`, "syntax", "", "not JSON", true},
		{"a number beyond what can be held", `"wheelbase_in": 158`, `"wheelbase_in": ‸1e999`, "type", "chassis[0].wheelbase_in", "1e999 is not a number", true},
		{"a field nobody knows", `"label": "Rear step"`, `"label": "Rear step", ‸"weight": 3`, "field", "options[1].weight", `no field "weight"`, true},
		{"a field that belongs elsewhere", `"reason": "A step`, `‸"label": "A step`, "field", "rules[0].label", "wrong place", true},
		{"a text where a number belongs", `"gvwr_lb": 14500`, `"gvwr_lb": ‸"14,500"`, "type", "chassis[0].gvwr_lb", "a text stands where a number belongs", true},
		{"a fraction where a whole number belongs", `"max_qty": 2`, `"max_qty": ‸1.5`, "type", "options[0].max_qty", "1.5 is not a whole number", true},
		{"a name twice in one object", `"gvwr_lb": 14500`, `"gvwr_lb": 14000, ‸"gvwr_lb": 14500`, "repeated", "chassis[0]", `"gvwr_lb" stands here a second time, and first in line `, true},
		{"a name twice, the two mixed", `"zone": "module-rear"}`, `"zone": "module-rear"}, ‸"mass" : {"tol_lb": 4}`, "repeated", "options[1]", `"mass" stands here a second time`, true},
		{"a price twice", `"price_book": {}`, `"price_book": {"prices": {"step\\": "1.00", "a": "step", ‸"step\\": "2.00"}}`, "repeated", "price_book.prices", `stands here a second time`, true},
		{"a list where an object belongs", `"mass": {"lb": 40, "zone": "module-rear"}`, `"mass": ‸[40]`, "type", "options[1].mass", "a list stands where an object belongs", true},
		{"null, which fits, and then a number that does not", `"mass": {"lb": 40, "zone": "module-rear"}`, `"mass": null, "parts": ‸3`, "type", "options[1].parts", "a number stands where an object belongs", true},
		{"an object where a list belongs", `"slots": []`, `"slots": ‸{}`, "type", "plant.slots", "an object stands where a list belongs", true},
		{"a day that does not exist", `"2026-11-01"`, `‸"2026-11-31"`, "field", "valid_from", "is not a date", true},
		{"another format", `boxwright-catalogue/1`, `boxwright-catalogue/2`, "format", "format", `this program reads begins with "boxwright-catalogue/1"`, true},
		{"another format with fields of its own", `"format": "boxwright-catalogue/1"`, `"format": "boxwright-catalogue/2", "roads": []`, "format", "format", `is "boxwright-catalogue/2"`, true},
		{"a table in the place of a catalogue", "{\n  \"format\"", "‸id,what,price\n\"format\"", "syntax", "", "is this the right file", true},
		{"no title", `"title": "Small catalogue"`, `"title": ""`, "missing", "id, title, edition", "needs a text", true},
		{"a place nobody stows in", `"height_in": 12}`, `"height_in": 12, "stow": {"place": "roof"}}`, "value", `equipment[0] "bag" stow place`, "is not one of inside, outside; it may be left out", true},
		{"kept apart from what is not there", `"height_in": 12}`, `"height_in": 12, "stow": {"apart": ["flare"]}}`, "unknown-id", `equipment[0] "bag" stow apart[0]`, "not equipment", true},
		{"a place that no compartment is", `"height_in": 12}`, `"height_in": 12, "stow": {"needs": "oxygen"}}`, "value", `equipment[0] "bag" stow needs`, "no compartment takes", true},
		{"an id with capitals", `"id": "bag"`, `"id": "Bag"`, "id", `equipment[0] "Bag"`, "small letters", true},
		{"an id that is empty", `"id": "bag"`, `"id": ""`, "id", `equipment[0] ""`, "small letters", true},
		{"an id that is too long", `"id": "bag"`, `"id": "b23456789-123456789-123456789-123456789-123456789"`, "id", `equipment[0] "b23456789-123456789-123456789-123456789-123456789"`, "1 to 48", true},
		{"an option twice", `"id": "step", "group"`, `"id": "flood", "group"`, "id", `options[1] "flood"`, "stands twice", false},
		{"an option named like a chassis", `"id": "flood", "group"`, `"id": "cut", "group"`, "id", `options[0] "cut"`, `already used by chassis[0] "cut"`, false},
		{"a chapter nobody wrote", `"chapter": "body", "choose": "any"`, `"chapter": "roof", "choose": "any"`, "unknown-id", `groups[0] "lamps" chapter`, "not a chapter", true},
		{"a way of choosing nobody knows", `"choose": "any"`, `"choose": "two"`, "value", `groups[0] "lamps" choose`, `"at-most-one"`, true},
		{"a group without options", `"group": "steps"`, `"group": "lamps"`, "empty-group", `groups[1] "steps"`, "no options", true},
		{"an option without a label", `"Rear step"`, `""`, "missing", `options[1] "step" label`, "needs a label", true},
		{"a negative wheelbase", `"wheelbase_in": 158`, `"wheelbase_in": -158`, "range", `chassis[0] "cut" wheelbase_in`, "outside 1 to", true},
		{"a wheelbase of zero", `"wheelbase_in": 158`, `"wheelbase_in": 0`, "range", `chassis[0] "cut" wheelbase_in`, "outside 1 to", true},
		{"a wheelbase left out", `"wheelbase_in": 158, `, ``, "range", `chassis[0] "cut" wheelbase_in`, "outside 1 to", true},
		{"three tires on an axle", `"count": 4`, `"count": 3`, "value", `chassis[0] "cut" tires count`, "not 2 or 4", true},
		{"a type of vehicle nobody builds", `"type": "III"`, `"type": "IV"`, "value", `chassis[0] "cut" type`, "III-AD", true},
		{"a module without its shell", `"shell": {"frame_spacing_in": 16, "side_doors": 1, "rear_doors": 2}, `, ``, "missing", `bodies[0] "mod" shell`, "taken off", true},
		{"a mass at no zone", `"lb": 40, "zone": "module-rear"`, `"lb": 40`, "value", `options[1] "step" mass zone`, "module-rear", true},
		{"a mass with a place beside the option's own", `"spec": "", "mass": {"lb": 40`, `"spec": "", "places": [{"kind": "step", "face": "rear", "length_in": 10, "width_in": 60, "height_in": 3}], "mass": {"lb": 40`, "twice", `options[1] "step" mass zone`, `write the zone "places"`, true},
		{"a mass with a place beside the option's compartment", `"spec": "", "mass": {"lb": 40`, `"spec": "", "compartments": [{"id": "box", "label": "Box", "side": "rear", "width_in": 20, "depth_in": 10, "height_in": 10}], "mass": {"lb": 40`, "twice", `options[1] "step" mass zone`, `write the zone "places"`, true},
		{"a mass with a place beside the option's seat", `"spec": "", "mass": {"lb": 40`, `"spec": "", "seats": [{"id": "jump", "label": "Jump seat", "kind": "folding", "x_in": 9, "y_in": 0, "z_in": 20}], "mass": {"lb": 40`, "twice", `options[1] "step" mass zone`, `write the zone "places"`, true},
		{"a mass where an option stands that stands nowhere", `"lb": 40, "zone": "module-rear"`, `"lb": 40, "zone": "places"`, "missing", `options[1] "step" mass zone`, "needs places", true},
		{"places heavier than their option", `"lb": 40, "zone": "module-rear"}`, `"lb": 40, "zone": "places"}, "places": [{"kind": "step", "face": "rear", "length_in": 10, "width_in": 60, "height_in": 3, "lb": 41}]`, "value", `options[1] "step" places`, "more than the option's 40 lb", true},
		{"a mass beyond any vehicle", `"lb": 40`, `"lb": 4e7`, "range", `options[1] "step" mass lb`, "outside", true},
		{"a negative current", `"scene_a": 12`, `"scene_a": -12`, "range", `options[0] "flood" load scene_a`, "outside 0 to", true},
		{"more of an option than there can be", `"max_qty": 2`, `"max_qty": 2000`, "range", `options[0] "flood" max_qty`, "outside 0 to 99", true},
		{"a compartment on no side", `"side": "street"`, `"side": "left"`, "value", `bodies[0] "mod" compartments[0] "s1" side`, "street, curb, rear, inside", true},
		{"a compartment of no depth", `"depth_in": 20`, `"depth_in": 0`, "range", `bodies[0] "mod" compartments[0] "s1" depth_in`, "outside 1 to", true},
		{"work at a station nobody has", `"station": "mount", "hours"`, `"station": "paint", "hours"`, "unknown-id", `chassis[0] "cut" work`, "not a station", true},
		{"a span turned round", `"low": 20, "likely": 30`, `"low": 50, "likely": 30`, "range", `chassis[0] "cut" arrive`, "low <= likely", true},
		{"a rule on an unknown id", `"then": {"pick": "flood"}`, `"then": {"pick": "flod"}`, "unknown-id", `rules[0] "lit-step" then`, `"flod" is no option`, true},
		{"a rule of no kind", `"kind": "plant"`, `"kind": "habit"`, "value", `rules[0] "lit-step" kind`, "physics, standard", true},
		{"a rule without a reason", `A step is lit.`, ` `, "missing", `rules[0] "lit-step" reason`, "customer can read", true},
		{"a condition that says nothing", `"then": {"pick": "flood"}`, `"then": {}`, "condition", `rules[0] "lit-step" then`, "this has 0", true},
		{"a condition that says two things", `"then": {"pick": "flood"}`, `"then": {"pick": "flood", "any": [{"pick": "step"}]}`, "condition", `rules[0] "lit-step" then`, "this has 2", true},
		{"conditions deeper than anybody reads", `"then": {"pick": "flood"}`, `"then": ` + nested, "depth", `rules[0] "lit-step" then` + strings.Repeat(" not", 25), "nested", true},
		{"a fault deep inside a condition", `"then": {"pick": "flood"}`, `"then": {"all": [{"pick": "flood"}, {"not": {"pick": "flod"}}]}`, "unknown-id", `rules[0] "lit-step" then all[1] not`, "flod", true},
		{"a count of more than there are", `"then": {"pick": "flood"}`, `"then": {"at_least": {"n": 2, "of": [{"pick": "flood"}]}}`, "range", `rules[0] "lit-step" then at_least`, "n is 2 but there are 1", true},
		{"an attribute nobody has", `"if": {"pick": "step"}`, `"if": {"chassis": {"attr": "color", "op": "=", "text": "red"}}`, "value", `rules[0] "lit-step" if chassis`, `no attribute "color"`, true},
		{"a number compared as a text", `"if": {"pick": "step"}`, `"if": {"chassis": {"attr": "gvwr_lb", "op": "=", "text": "14500"}}`, "value", `rules[0] "lit-step" if chassis`, "and a number", true},
		{"equipment of no mass", `"mass_lb": 22`, `"mass_lb": 0`, "range", `equipment[0] "bag"`, "above zero", true},
		{"an activity after itself", `"after": []`, `"after": ["mounting"]`, "order", `plant.activities[0] "mounting" after`, "earlier", true},
		{"a day of 25 hours", `"hours_per_day": 8`, `"hours_per_day": 25`, "range", `plant hours_per_day`, "outside 1 to 24", true},
		{"a closure that ends before it begins", `"shutdowns": []`, `"shutdowns": [{"first": "2027-07-12", "last": "2027-07-02", "label": "Summer"}]`, "order", `plant.shutdowns[0]`, "before it begins", true},
		{"a station without a crew", `"crew": 2`, `"crew": 0`, "range", `plant.stations[0] "mount" crew`, "outside 0.1", true},
	} {
		t.Run(c.reason, func(t *testing.T) {
			require.Equal(t, 1, strings.Count(small, c.old), "%s: the piece stands once", c.reason)
			file, where := strings.Replace(small, c.old, c.new, 1), c.where
			if before, after, marked := strings.Cut(file, "‸"); marked {
				file = before + after
				where = fmt.Sprintf("line %d, column %d", strings.Count(before, "\n")+1,
					len(before)-strings.LastIndexByte(before, '\n'))
				if c.where != "" {
					where += " at " + c.where
				}
			}
			cat, err := config.Read([]byte(file))
			assert.Nil(t, cat, c.reason)
			ps, ok := err.(config.Problems)
			if !assert.True(t, ok && len(ps) > 0, "%s: %v", c.reason, err) {
				return
			}
			if c.onlyFault {
				assert.Len(t, ps, 1, "%s: %v", c.reason, ps)
			}
			assert.Equal(t, "catalogue."+c.code, ps[0].Code, c.reason)
			assert.Equal(t, where, ps[0].Where, c.reason)
			assert.Contains(t, ps[0].Text, c.text, c.reason)
		})
	}
}

func TestOversizedCatalogues(t *testing.T) {
	for _, c := range []struct {
		reason string
		file   []byte
		code   string
	}{
		{"nothing at all", nil, "catalogue.syntax"},
		{"spaces", []byte("  \n "), "catalogue.syntax"},
		{"only null: an empty catalogue of no format", []byte("null"), "catalogue.format"},
		{"more bytes than are read", []byte(strings.Repeat(" ", config.MaxCatalogueBytes+1)), "catalogue.too-large"},
		{"brackets without end", []byte(strings.Repeat("[", 100000)), "catalogue.syntax"},
		{"objects without end in a field nobody reads", []byte(`{"price_book": ` + strings.Repeat(`{"a":`, 50000)), "catalogue.syntax"},
		{"more options than are read", []byte(strings.Replace(small, `"options": [`, `"options": [`+strings.Repeat(`{},`, config.MaxOptions), 1)), "catalogue.too-large"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			_, err := config.Read(c.file)
			ps, ok := err.(config.Problems)
			require.True(t, ok && len(ps) == 1, c.reason)
			assert.Equal(t, c.code, ps[0].Code, c.reason)
		})
	}
}

func TestEveryProblemIsReported(t *testing.T) {
	file := strings.NewReplacer(`"wheelbase_in": 158`, `"wheelbase_in": -1`, `"choose": "any"`, `"choose": "all"`,
		`"crew": 2`, `"crew": -2`).Replace(small)
	_, err := config.Read([]byte(file))
	assert.Len(t, err, 3)
	assert.EqualError(t, err, `groups[0] "lamps" choose: "all" is not "one", "at-most-one" or "any" (and 2 more)`)
	assert.EqualError(t, config.Problems{{Where: "here", Text: "is amiss"}}, "here: is amiss")
	assert.EqualError(t, config.Problems{}, "no problems", "an empty list of problems can be printed")
}

func TestCatalogueIsIndexed(t *testing.T) {
	c := readSmall(t)
	assert.Equal(t, "Cutaway", c.ChassisByID("cut").Label)
	assert.Equal(t, "Module", c.BodyByID("mod").Label)
	assert.Equal(t, "Lamps", c.GroupByID("lamps").Label)
	assert.Equal(t, "Flood lamps", c.OptionByID("flood").Label)
	assert.Equal(t, "Bag", c.EquipmentByID("bag").Label)
	assert.Nil(t, c.OptionByID("cut"), "a chassis is no option")
	assert.Equal(t, []int{1}, c.Members("steps"))
	assert.Empty(t, c.Members("no-such-group"))
	for id, label := range map[string]string{"cut": "Cutaway", "mod": "Module", "flood": "Flood lamps", "bag": "Bag",
		"ghost": "ghost"} {
		t.Run(id, func(t *testing.T) {
			assert.Equal(t, label, c.LabelOf(id))
		})
	}
}

func TestHashNamesTheContent(t *testing.T) {
	a := readSmall(t)
	assert.Len(t, a.Hash(), 64)
	var tight strings.Builder
	for _, line := range strings.Split(small, "\n") {
		tight.WriteString(strings.TrimSpace(line))
	}
	b, err := config.Read([]byte(tight.String()))
	require.NoError(t, err)
	assert.Equal(t, a.Hash(), b.Hash(), "line ends and spaces say nothing")
	written, err := json.Marshal(a)
	require.NoError(t, err)
	c, err := config.Read(written)
	require.NoError(t, err)
	assert.Equal(t, a.Hash(), c.Hash(), "a catalogue written and read is the same edition")
	for _, change := range [][2]string{{`"lb": 40`, `"lb": 41`},
		{`"price_book": {}`, `"price_book": {"currency": "USD"}`}, {"A step is lit", "A step must be lit"}} {
		d, err := config.Read([]byte(strings.Replace(small, change[0], change[1], 1)))
		require.NoError(t, err)
		assert.NotEqual(t, a.Hash(), d.Hash(), change[1])
	}
}

func TestStrangeUnitsAreNamed(t *testing.T) {
	c := readSmall(t)
	for _, x := range []struct {
		reason string
		unit   config.Unit
		codes  []string
	}{
		{"nothing chosen", config.Unit{}, []string{"unit.unknown-chassis", "unit.unknown-body"}},
		{"as the catalogue has it", config.Unit{Chassis: "cut", Body: "mod", Picks: []config.Pick{{Option: "flood", Qty: 2}, {Option: "step", Qty: 1}}}, nil},
		{"none of an option", config.Unit{Chassis: "cut", Body: "mod", Picks: []config.Pick{{Option: "step"}}}, []string{"unit.quantity"}},
		{"picks out of order", config.Unit{Chassis: "cut", Body: "mod", Picks: []config.Pick{{Option: "step", Qty: 1}, {Option: "flood", Qty: 1}}}, []string{"unit.order"}},
		{"a pick twice", config.Unit{Chassis: "cut", Body: "mod", Picks: []config.Pick{{Option: "step", Qty: 1}, {Option: "step", Qty: 1}}}, []string{"unit.order"}},
		{"equipment nobody knows, fewer than none", config.Unit{Chassis: "cut", Body: "mod", Carried: []config.Carried{{Equipment: "boat", Qty: -1}}}, []string{"unit.unknown-equipment", "unit.quantity"}},
		{"a limit on no figure", config.Unit{Chassis: "cut", Body: "mod", Own: []config.OwnLimit{{Value: 3}}}, []string{"unit.range"}},
		{"people of less than no mass", config.Unit{Chassis: "cut", Body: "mod", OccupantLb: -150}, []string{"unit.range"}},
	} {
		t.Run(x.reason, func(t *testing.T) {
			var codes []string
			for _, p := range c.CheckUnit(&x.unit) {
				codes = append(codes, p.Code)
				assert.NotEmpty(t, p.Where, x.reason)
			}
			assert.Equal(t, x.codes, codes, x.reason)
		})
	}
}

func TestStationsAreCountedFromTheirZone(t *testing.T) {
	c := readSmall(t)
	for _, x := range []struct {
		zone    string
		x, y, z float64
		reason  string
	}{
		{config.ZoneChassis, 10, 5, 7, "as it stands"},
		{config.ZoneBumper, 10 - 31, 5, 7, "the bumper is ahead of the axle"},
		{config.ZoneRearAxle, 10 + 158, 5, 7, "a wheelbase behind"},
		{config.ZoneModule, 10 + 59, 5, 7 + 32, "from the front wall and the floor"},
		{config.ZoneModuleMid, 10 + 59 + 73, 5, 7 + 32, "half the module further"},
		{config.ZoneModuleRear, 10 + 59 + 146, 5, 7 + 32, "the whole module further"},
		{"attic", 10, 5, 7, "an unknown zone counts from the front axle"},
	} {
		t.Run(x.reason, func(t *testing.T) {
			px, py, pz := config.StationAt(&c.Chassis[0], &c.Bodies[0], x.zone, 10, 5, 7)
			assert.Equal(t, [3]float64{x.x, x.y, x.z}, [3]float64{float64(px), float64(py), float64(pz)}, "%s: %s",
				x.zone,
				x.reason)
		})
	}
}

func FuzzRead(f *testing.F) {
	f.Add([]byte(small))
	f.Add([]byte(`{"options": [{"mass": {"lb": "5"}}]}`))
	f.Add([]byte(`{"plant": {"slots": [{"start": "2027-02-30"}]}}`))
	f.Fuzz(func(t *testing.T, file []byte) {
		c, err := config.Read(file)
		if err != nil {
			ps, ok := err.(config.Problems)
			if !ok || len(ps) == 0 || ps[0].Code == "" || ps[0].Where == "" || ps[0].Text == "" {
				t.Fatalf("a refusal says what and where: %#v", err)
			}
			return
		}
		if c.Hash() == "" {
			t.Fatal("a catalogue that was read has a hash")
		}
	})
}

func TestFieldsOfAnEmbeddedStructAreKnown(t *testing.T) {
	type inner struct {
		Lb float64 `json:"lb"`
	}
	type outer struct {
		inner
		N int `json:"n"`
	}
	var v outer
	p := config.DecodeStrict([]byte(`{"lb": 2, "n": "3"}`), &v)
	require.NotNil(t, p)
	assert.Equal(t, "line 1, column 16 at n", p.Where)
}
