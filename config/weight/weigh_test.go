package weight

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boxwright/config"
	"boxwright/config/quantity"
)

func lbs(v float64) quantity.Mass  { return quantity.Mass(v) }
func in(v float64) quantity.Length { return quantity.Length(v) }

func figure(t require.TestingT, s *Sheet, code string) config.Figure {
	f, ok := s.Figure(code)
	require.True(t, ok, code)
	return f
}

func finding(s *Sheet, code string) *config.Finding {
	for i := range s.Findings {
		if s.Findings[i].Code == code {
			return &s.Findings[i]
		}
	}
	return nil
}

// Conservation: axles sum to the weight, wheels to axles and sides, items to
// the total, in every condition, to 0.001 lb.
func TestMassBalanceCloses(t *testing.T) {
	cat := prepared(t)
	rapid.Check(t, func(t *rapid.T) {
		s := Weigh(cat, randomUnit(t, cat), people(175))
		for _, c := range []Condition{s.Curb, s.Crewed, s.Gross} {
			w := c.Wheels
			require.Len(t, w, 4)
			close := func(a, b quantity.Mass, what string) {
				assert.InDelta(t, float64(a), float64(b), 0.001, c.Label+" "+what)
			}
			close(c.TotalLb, c.FrontLb+c.RearLb, "axles")
			close(c.TotalLb, c.LeftLb+c.RightLb, "sides")
			close(c.FrontLb, w[0].Lb+w[1].Lb, "front wheels")
			close(c.RearLb, w[2].Lb+w[3].Lb, "rear wheels")
			close(c.LeftLb, w[0].Lb+w[2].Lb, "left wheels")
			for _, x := range w {
				close(x.Lb, x.PerTireLb*quantity.Mass(x.Tires), "tires")
			}
		}
		var sum, front quantity.Mass
		for _, it := range s.Items {
			sum += it.Lb
			front += it.FrontLb
		}
		assert.InDelta(t, float64(sum), float64(s.Gross.TotalLb), 0.001)
		assert.InDelta(t, float64(front), float64(s.Gross.FrontLb), 0.001)
	})
}

// Statics cross-checked: the axle loads balance the items about two points
// other than the front axle.
func TestMomentsAboutTwoOtherPoints(t *testing.T) {
	cat := prepared(t)
	rapid.Check(t, func(t *rapid.T) {
		s := Weigh(cat, randomUnit(t, cat), people(175))
		wb := float64(cat.Chassis[0].WheelbaseIn)
		for _, point := range []float64{wb, -34, rapid.Float64Range(-500, 500).Draw(t, "point")} {
			items := 0.0
			for _, it := range s.Items {
				items += float64(it.Lb) * (float64(it.XIn) - point)
			}
			axles := float64(s.Gross.FrontLb)*(0-point) + float64(s.Gross.RearLb)*(wb-point)
			assert.InDelta(t, items, axles, 0.001*500, "about x = %v in", point)
		}
	})
}

// Monotonicity: more mass never lightens the whole; behind the front axle and
// ahead of the rear one it never lightens either axle.
func TestMoreMassIsNeverLighter(t *testing.T) {
	cat := prepared(t)
	wb := cat.Chassis[0].WheelbaseIn
	rapid.Check(t, func(t *rapid.T) {
		u := randomUnit(t, cat)
		u.Body = "module-168"
		before := Weigh(cat, u, people(175))
		heavier := fixture()
		more := lbs(rapid.Float64Range(0, 500).Draw(t, "more"))
		heavier.Bodies[0].Mass.Lb += more
		require.Empty(t, heavier.Prepare())
		after := Weigh(heavier, u, people(175))
		assert.InDelta(t, float64(more), float64(after.Gross.TotalLb-before.Gross.TotalLb), 1e-4)
		require.Less(t, float64(cat.Chassis[0].BodyStartIn+cat.Bodies[0].LengthIn/2), float64(wb))
		assert.GreaterOrEqual(t, after.Gross.FrontLb, before.Gross.FrontLb)
		assert.GreaterOrEqual(t, after.Gross.RearLb, before.Gross.RearLb)
	})
}

func TestConditionsNest(t *testing.T) {
	s := Weigh(prepared(t), typical(), people(175))
	assert.InDelta(t, 6*175, float64(s.Crewed.TotalLb-s.Curb.TotalLb), 1e-6,
		"two in the cab, an attendant, three on the bench")
	assert.InDelta(t, 175+132+2*60, float64(s.Gross.TotalLb-s.Crewed.TotalLb), 1e-6,
		"a patient, the cot and two tool boxes")
	assert.Equal(t, 6.0, figure(t, s, "weight.seats").Value)
	assert.Equal(t, 1.0, figure(t, s, "weight.patients").Value)
}

// The same unit gives the same bytes, and what it is weighed from is left as
// it was.
func TestSameInputSameBytes(t *testing.T) {
	cat, u, as := prepared(t), typical(), everyLimit()
	before, err := json.Marshal(u)
	require.NoError(t, err)
	tickets := []Ticket{{What: TicketUnit, TotalLb: 9600}}
	first, err := json.Marshal(Weigh(cat, u, as, tickets...))
	require.NoError(t, err)
	for range 5 {
		again, err := json.Marshal(Weigh(cat, u, as, tickets...))
		require.NoError(t, err)
		require.Equal(t, string(first), string(again))
	}
	after, err := json.Marshal(u)
	require.NoError(t, err)
	assert.Equal(t, string(before), string(after))
}
