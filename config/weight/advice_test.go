package weight

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/quantity"
)

// Advice moves load away from where there is too much of it. Shares by hand, by
// moments about the front axle: wheelbase 158 in, bumper 34 in ahead of the axle,
// module from 52 to 220 in behind it.
func TestAdviceOnOverloads(t *testing.T) {
	lean := func(y float64) func(*config.Catalogue) {
		return func(c *config.Catalogue) {
			c.OptionByID("winch").Mass.YIn = in(y)
			// from where they stand to the centerline
			c.OptionByID("bench").Mass.YIn, c.OptionByID("curb-box").Mass.YIn = -34, -36
		}
	}
	for _, c := range []struct {
		name, code, reason string
		spoil              func(*config.Catalogue)
		limit              *config.Limit // of weight.side
		says               []string
		first              string // pick named first
	}{
		{"front axle", "weight.front-axle.over", "what hangs ahead of the axle loads it with more than its weight",
			func(c *config.Catalogue) { c.Chassis[0].GAWRFrontLb = 4100 }, nil,
			[]string{"lb of the front axle", "at the front bumper puts 1.22 lb", "front wall 0.67 lb",
				"rear wall −0.39 lb", "24 in rearward takes 15 lb off"}, "winch"},
		{"rear axle", "weight.rear-axle.over", "what hangs behind the axle loads it with more than its weight",
			func(c *config.Catalogue) { c.Chassis[0].GAWRRearLb = 5500 }, nil,
			[]string{"lb of the rear axle", "rear wall puts 1.39 lb", "front wall 0.33 lb",
				"24 in forward takes 15 lb off"}, "bench"},
		{"right side heavy", "weight.side.over", "load goes from the heavy side to the light one", lean(40),
			&config.Limit{Value: 1, Sense: config.AtMost, Source: "test", Basis: config.ReadInText},
			[]string{"from the right (curb) to the left (street) side"}, "winch"},
		{"left side heavy", "weight.side.over", "load goes from the heavy side to the light one", lean(-40),
			&config.Limit{Value: 1, Sense: config.AtMost, Source: "test", Basis: config.ReadInText},
			[]string{"from the left (street) to the right (curb) side"}, "winch"},
	} {
		t.Run(c.name, func(t *testing.T) {
			cat := fixture()
			require.Empty(t, cat.Prepare())
			cat.OptionByID("winch").Mass.Lb = 400
			c.spoil(cat)
			require.Empty(t, cat.Prepare())
			u, as := typical(), people(175)
			u.Carried = nil
			u.Set(config.Pick{Option: "winch", Qty: 1})
			if c.limit != nil {
				as.Limits["weight.side"] = *c.limit
			}
			f := finding(Weigh(cat, u, as), c.code)
			require.NotNil(t, f, c.reason)
			for _, words := range c.says {
				assert.Contains(t, f.Remedy, words, c.reason)
			}
			require.NotEmpty(t, f.Picks)
			assert.Equal(t, c.first, f.Picks[0], "what weighs most on it is named first")
			assert.LessOrEqual(t, len(f.Picks), 3)
		})
	}
}

// Where a limit is kept and may yet be missed, what has to come off is what the likely
// range has beyond the limit, and not what it has on the safe side.
func TestToBeSureIsWhatTheRangeHasBeyondTheLimit(t *testing.T) {
	const name = "weight."
	limit := func(code string, v float64, sense config.Sense) func(*config.Catalogue, *config.Assumptions) {
		return func(_ *config.Catalogue, as *config.Assumptions) {
			as.Limits[name+code] = config.Limit{Value: v, Sense: sense, Basis: config.Purchaser}
		}
	}
	s := Weigh(prepared(t), typical(), people(175))
	gross, left := figure(t, s, name+"gross"), figure(t, s, name+"payload-left")
	payload := figure(t, s, name+"payload")
	for _, c := range []struct {
		code, says string
		beyond     float64
		set        func(*config.Catalogue, *config.Assumptions)
	}{
		{"gross", "To be sure, take off ", gross.High - (gross.Value + 4), func(c *config.Catalogue, _ *config.Assumptions) {
			c.Chassis[0].GVWRLb = lbs(gross.Value + 4)
		}},
		{"payload-left", "To be sure, take off ", left.Value - 4 - left.Low, limit("payload-left", left.Value-4, config.AtLeast)},
		{"payload", "To be sure, leave ", payload.Value - 4 - payload.Low, limit("payload", payload.Value-4, config.AtLeast)},
	} {
		t.Run(c.code, func(t *testing.T) {
			cat, as := prepared(t), people(175)
			c.set(cat, as)
			f := finding(Weigh(cat, typical(), as), name+c.code+".near")
			require.NotNil(t, f)
			assert.Contains(t, f.Remedy, c.says+show(c.beyond, quantity.Pound))
		})
	}
}

// What a remount still rests on is said with its figures: 3,160 lb on a
// wheelbase of 158 in is 20 lb on the front axle for each inch.
func TestWhatARemountRestsOn(t *testing.T) {
	for _, c := range []struct {
		name, reason string
		existing     *config.Existing
		unmeasured   string // words of the finding; empty: there is none
		center       string
	}{
		{"nothing measured", "both are guesses", nil,
			"the usual 3,160 lb, give or take 300 lb, is counted",
			"each 1.0 in it really lies further forward puts 20 lb more on the front axle"},
		{"weighed, center not found", "the center is a guess still", &config.Existing{MassLb: 4740}, "",
			"puts 30 lb more on the front axle"},
		{"weighed, center judged", "a judged center is a guess", &config.Existing{MassLb: 4740, XIn: 80,
			Estimated: true}, "", "puts 30 lb more on the front axle"},
		{"all measured", "nothing is left to guess", &config.Existing{MassLb: 4740, XIn: 80}, "", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			cat := fixture()
			cat.Bodies[0].Existing = true
			cat.Bodies[0].Shell = nil
			cat.Bodies[0].Mass = config.Mass{Lb: 3160, TolLb: 300, Zone: config.ZoneModuleMid, ZIn: 30}
			require.Empty(t, cat.Prepare())
			u := &config.Unit{Chassis: "cutaway", Body: "module-168", Existing: c.existing}
			s := Weigh(cat, u, people(175))
			for code, words := range map[string]string{"weight.existing.unmeasured": c.unmeasured,
				"weight.existing.center": c.center} {
				f := finding(s, code)
				if words == "" {
					assert.Nil(t, f, c.reason)
					continue
				}
				require.NotNil(t, f, "%s: %s", code, c.reason)
				assert.Equal(t, config.Warn, f.Severity)
				assert.Contains(t, f.Text, words, c.reason)
			}
		})
	}
}
