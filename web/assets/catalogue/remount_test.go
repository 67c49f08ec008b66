package catalogue_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/weight"
	"boxwright/pricing/quote"
	"boxwright/web/assets/catalogue"
)

// remount is a draft of an existing module on a chassis, complete.
func remount(ed *quote.Edition, chassis string, e config.Existing) *quote.Draft {
	d := quote.New(ed, chassis, "old-module", config.Date{Year: 2026, Month: 11, Day: 25})
	d.Unit.RuleSet, d.Unit.Existing = "own", &e
	d.Unit, _ = ed.For(&d.Unit).Rules.Start(&d.Unit, quote.Limits(ed, d))
	return d
}

// On every chassis but the vans an existing module of a length that suits it
// can be mounted, with nothing of it built anew unless somebody asks.
func TestEveryChassisTakesAnExistingModule(t *testing.T) {
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	for i := range ed.Cat.Chassis {
		ch := &ed.Cat.Chassis[i]
		usual := ed.Cat.BodyByID(ch.UsualBody)
		d := remount(ed, ch.ID, config.Existing{LengthIn: usual.LengthIn, HeadroomIn: usual.HeadroomIn,
			MassLb: quantity.Mass(30 * usual.LengthIn), XIn: usual.LengthIn / 2, ZIn: 30})
		q, err := quote.Compute(ed, d)
		require.NoError(t, err)
		if ch.Cab == "van" {
			assert.True(t, q.Stopped(), "a van takes no module")
			continue
		}
		for _, f := range q.Findings {
			assert.NotEqual(t, config.Stop, f.Severity, "%s: %s %s", ch.ID, f.Code, f.Text)
			assert.NotEqual(t, "time.work-unplaced", f.Code, f.Text)
		}
		for _, g := range ed.Cat.Groups {
			for _, m := range ed.Cat.Members(g.ID) {
				if o := &ed.Cat.Options[m]; o.Remount && g.Choose == config.ChooseOne {
					assert.True(t, d.Unit.Has(o.ID), "%s: %s stays as the module has it", ch.ID, g.Label)
				}
			}
		}
	}
}

// The measured length decides, not the usual one of the catalogue.
func TestRulesJudgeTheMeasuredModule(t *testing.T) {
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	for _, c := range []struct {
		length  quantity.Length
		chassis string
		fits    bool
		reason  string
	}{
		{153, "cut-14500-158-gas", true, "the usual length"},
		{130, "cut-14500-158-gas", false, "it would leave the frame ends bare"},
		{130, "cut-12500-138-gas", true, "short enough for the short frame"},
		{133, "cut-12500-138-gas", false, "an inch over what the short frame takes"},
		{0, "cut-12500-138-gas", false, "not measured: the usual 153 in stands for it"},
		{175, "med-19500-175-diesel", false, "too long for 106 in from cab to axle"},
		{170, "med-19500-175-diesel", true, "just short enough"},
		{150, "van-9500-148-gas", false, "a van takes no module"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			u := &config.Unit{Chassis: c.chassis, Body: "old-module", Existing: &config.Existing{LengthIn: c.length}}
			assert.Equal(t, c.fits, ed.For(u).Rules.AnswerWithin(u, nil, 0).Satisfiable, "%v in on %s: %s", c.length, c.chassis,
				c.reason)
		})
	}
}

func TestEveryRemountChoiceIsToBeHad(t *testing.T) {
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	u := &config.Unit{Chassis: "cut-14500-158-gas", Body: "old-module",
		Existing: &config.Existing{LengthIn: 146, MassLb: 4200}}
	e := ed.For(u).Rules
	a := e.AnswerWithin(u, nil, settle)
	for i := range ed.Cat.Options {
		if o := &ed.Cat.Options[i]; o.Remount || ed.Cat.GroupByID(o.Group).Chapter == "remount" {
			assert.Contains(t, []string{"open", "forced"}, string(a.State(o.ID)), o.ID)
			n := ed.Rules.AnswerWithin(unit("cut-14500-158-gas", "mod-146-72"), nil, 0)
			assert.Equal(t, "ruled-out", string(n.State(o.ID)), "%s is not for a new module", o.ID)
		}
	}
}

// Walk 6: a heavy module of another maker, weighed, is looked at on three
// chassis; the rear axle of one cannot carry it.
func TestMeasuredModuleOnThreeChassis(t *testing.T) {
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	d := remount(ed, "cab-16500-169-diesel", config.Existing{
		Maker: "Walk-through box of a neighboring county", Built: 2014, LengthIn: 150, WidthIn: 95, HeightIn: 75,
		HeadroomIn: 72,
		MassLb:     6150, TolLb: 60, Weighed: "on two supports, by the plant", XIn: 104, YIn: -1, ZIn: 31,
	})
	margin := map[string]float64{}
	for _, m := range quote.Mountings(ed, d, quantity.US) {
		if f, ok := m.Figures["weight.rear-axle"]; ok {
			margin[m.Chassis.ID] = f.Margin()
			if f.Margin() < 0 {
				assert.NotEmpty(t, m.Stops, m.Chassis.ID)
			}
			assert.False(t, m.Total.IsZero())
			assert.False(t, m.Even.IsZero())
		} else {
			assert.NotEmpty(t, m.Stops, "%s says why it takes no such module", m.Chassis.ID)
		}
	}
	assert.Less(t, margin["cab-14000-165-gas"], -200.0, "9,650 lb behind are too few")
	assert.Greater(t, margin["cab-16500-169-diesel"], 300.0, "12,000 lb carry it, equipment allowed for")
	assert.Greater(t, margin["cab-17500-169-4x4-diesel"], 600.0, "so do 12,500 lb, with more to spare")

	// The engine says the same beforehand, with the margin's own arithmetic.
	d.Unit.Picks = nil
	e := ed.For(&d.Unit).Rules
	a := e.AnswerWithin(&d.Unit, quote.Limits(ed, d), settle)
	assert.Equal(t, "ruled-out", string(a.State("cab-14000-165-gas")))
	assert.Equal(t, "open", string(a.State("cab-17500-169-4x4-diesel")))
	why, _ := e.WhyWithin(&d.Unit, quote.Limits(ed, d), "cab-14000-165-gas", 0)
	require.NotEmpty(t, why)
	assert.Contains(t, []string{"weight.rear-axle", "weight.gross"}, why[0].Limits[0].Code)
}

// The chassis with nothing chosen, and the measured module, weigh together what
// they weigh apart, and the module's pull on the rear axle is its lever's.
func TestMeasuredMassBalances(t *testing.T) {
	cat := read(t)
	u := unit("cut-14500-158-gas", "old-module")
	u.Existing = &config.Existing{LengthIn: 150, MassLb: 5000, TolLb: 50, XIn: 90, YIn: 2, ZIn: 30}
	ch := cat.ChassisByID(u.Chassis)
	with := weight.Weigh(cat, u, nil).Curb
	assert.InDelta(t, float64(ch.CurbFrontLb+ch.CurbRearLb)+5000, float64(with.TotalLb), 0.001)
	assert.InDelta(t, float64(ch.CurbRearLb)+5000.0*(59+90)/158, float64(with.RearLb), 0.001)
	aside := 5000.0*2 + float64(ch.CurbFrontLb+ch.CurbRearLb)*float64(ch.CGYIn)
	assert.InDelta(t, aside/float64(with.TotalLb), float64(with.YIn), 0.001)
}

func TestWhatIsGuessedOfAModuleIsSaid(t *testing.T) {
	cat := read(t)
	for _, c := range []struct {
		reason string
		e      *config.Existing
		want   []string
	}{
		{"nothing measured", nil, []string{"weight.existing.unmeasured", "weight.existing.center"}},
		{"weighed, its center unknown", &config.Existing{MassLb: 4400}, []string{"weight.existing.center"}},
		{"its center judged by eye", &config.Existing{MassLb: 4400, XIn: 70, Estimated: true}, []string{"weight.existing.center"}},
		{"weighed on two supports", &config.Existing{MassLb: 4400, XIn: 70}, nil},
	} {
		t.Run(c.reason, func(t *testing.T) {
			u := unit("cut-14500-158-gas", "old-module")
			u.Existing = c.e
			var said []string
			for _, f := range weight.Weigh(cat, u, nil).Findings {
				if f.Code == "weight.existing.unmeasured" || f.Code == "weight.existing.center" {
					said = append(said, f.Code)
					assert.Equal(t, config.Warn, f.Severity)
				}
			}
			assert.Equal(t, c.want, said, c.reason)
		})
	}
}
