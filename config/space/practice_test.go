package space

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/config"
	"boxwright/config/quantity"
)

// practised is the fixture with rules for where its things belong.
func practised(t *testing.T, stow map[string]config.Stowage, takes map[string]string) *config.Catalogue {
	cat := fixture(t)
	for i := range cat.Equipment {
		if s, ok := stow[cat.Equipment[i].ID]; ok {
			cat.Equipment[i].Stow = &s
		}
	}
	for b := range cat.Bodies {
		for i := range cat.Bodies[b].Compartments {
			c := &cat.Bodies[b].Compartments[i]
			if what := takes[c.ID]; what != "" {
				c.Takes = []string{what}
			}
		}
	}
	return cat
}

func placeOf(list []config.Carried, id string) string {
	for _, c := range list {
		if c.Equipment == id {
			return c.Compartment
		}
	}
	return ""
}

// Things ride where the catalogue's rules have them, even where that is less even.
func TestSuggestFollowsPractice(t *testing.T) {
	sides := map[string]string{}
	cat := fixture(t)
	for _, c := range cat.CompartmentsOf(unit()) {
		sides[c.ID] = c.Side
	}
	for _, c := range []struct {
		name   string
		stow   config.Stowage
		inside bool
	}{
		{"with the patient", config.Stowage{Place: "inside", Height: "reach", Dirt: "clean"}, true},
		{"outside", config.Stowage{Place: "outside", Height: "low", Dirt: "dirty"}, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			cat := practised(t, map[string]config.Stowage{"bag": c.stow}, nil)
			u := unit()
			u.Carried = []config.Carried{carry("", 1, "bag")}
			u.Carried = Suggest(cat, u, scale(cat))
			at := placeOf(u.Carried, "bag")
			assert.NotEmpty(t, at)
			assert.Equal(t, c.inside, sides[at] == "inside", at)
			assert.True(t, PracticeOf(cat, u, u.Carried[0]).Met)
		})
	}
}

// What needs a fitted place rides nowhere else, and what is kept apart never shares
// one; by hand it can be done, and is found.
func TestWhatIsAlwaysHeld(t *testing.T) {
	cat := practised(t, map[string]config.Stowage{
		"bag": {Needs: "oxygen"}, "tools": {Apart: []string{"bag"}, Why: "Fire and oxygen."},
	}, map[string]string{"left-front": "oxygen"})
	u := unit()
	u.Carried = []config.Carried{carry("", 2, "bag"), carry("", 2, "tools")}
	got := Suggest(cat, u, scale(cat))
	for _, c := range got {
		if c.Equipment == "bag" {
			assert.Contains(t, []string{"left-front", ""}, c.Compartment)
		} else {
			assert.NotEqual(t, "left-front", c.Compartment)
		}
	}
	assert.Equal(t, "left-front", placeOf(got, "bag"))

	for _, c := range []struct {
		name    string
		carried []config.Carried
		says    string
	}{
		{"no place for it", []config.Carried{carry("left-rear", 1, "bag")}, "This place is not fitted for oxygen."},
		{"two that are kept apart", []config.Carried{carry("left-front", 1, "bag"), carry("left-front", 1, "tools")},
			"It never rides with this: "},
	} {
		t.Run(c.name, func(t *testing.T) {
			u := unit()
			u.Carried = c.carried
			p := PracticeOf(cat, u, u.Carried[0])
			assert.False(t, p.Met)
			assert.Contains(t, p.Text, c.says)
			found := 0
			for _, f := range Measure(cat, u, nil).Findings {
				if f.Code == "space.not-there" {
					found++
					assert.Equal(t, config.Warn, f.Severity)
				}
			}
			assert.Equal(t, len(c.carried), found, "each of them is told")
		})
	}
}

func TestPracticeSaysWhy(t *testing.T) {
	cat := practised(t, map[string]config.Stowage{
		"bag":    {Place: "outside", Dirt: "dirty", Why: "It comes back wet."},
		"ladder": {Place: "inside"},
	}, nil)
	for _, c := range []struct {
		name string
		line config.Carried
		met  bool
		says string
	}{
		{"as it should be", carry("left-front", 1, "bag"), true, "Outside, dirty. It comes back wet."},
		{"inside instead", carry("cabinet", 1, "bag"), false,
			"Belongs outside, but rides elsewhere: no room there, to spare an axle, or stowed by hand. Dirty. It comes back wet."},
		{"nothing there holds it", carry("left-front", 1, "ladder"), true, "Belongs inside, but nothing there has room for it."},
		{"not stowed", carry("", 1, "bag"), true, ""},
		{"of which nothing is said", carry("left-front", 1, "chair"), true,
			"The catalogue does not say where it belongs; it is placed for balance."},
	} {
		t.Run(c.name, func(t *testing.T) {
			u := unit()
			u.Carried = []config.Carried{c.line}
			assert.Equal(t, Practice{c.met, c.says}, PracticeOf(cat, u, c.line))
		})
	}
}

// What no place takes says why, beside it.
func TestWhatRidesNowhereSaysWhy(t *testing.T) {
	for _, c := range []struct {
		name, id string
		needs    string
		qty      int
		says     string
	}{
		{"too long", "ladder", "", 1, "No compartment of this unit holds it: it is 80.0 in by 14.0 in by 4.0 in and 25 lb."},
		{"no place fitted for it", "bag", "oxygen", 1, "Large enough, but made for something else: "},
		{"there is room", "bag", "", 1, ""},
		{"more than there is room for", "bag", "", 150, "Where it could go, what already rides there leaves no proven room: "},
	} {
		t.Run(c.name, func(t *testing.T) {
			cat := practised(t, map[string]config.Stowage{c.id: {Needs: c.needs}}, nil)
			u := unit()
			u.Carried = []config.Carried{carry("", c.qty, c.id)}
			if c.qty > 1 {
				u.Carried = Suggest(cat, u, scale(cat))
			}
			said := Unstowed(cat, u, quantity.US)[c.id]
			if c.says == "" {
				assert.Empty(t, said)
			}
			assert.Contains(t, said, c.says)
		})
	}
	cat, u := fixture(t), unit()
	u.Carried = Suggest(cat, u, scale(cat))
	assert.Empty(t, Unstowed(cat, u, quantity.US)["bag"], "none of it waits")
}
