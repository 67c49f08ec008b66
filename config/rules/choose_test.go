package rules

import (
	"math/rand"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/seeds"
)

// asFull reads a unit as the oracle's complete unit.
func asFull(u *config.Unit) full {
	f := full{u.Chassis, u.Body, map[string]bool{}}
	for _, p := range u.Picks {
		f.options[p.Option] = true
	}
	return f
}

// stands reports whether the oracle takes a unit as complete and valid.
func (w *world) stands(u *config.Unit) bool {
	f := asFull(u)
	if !groupsHold(w.cat, f) || !w.keeps(f, u) {
		return false
	}
	for i := range w.cat.Rules {
		if !ruleHolds(w.cat, f, &w.cat.Rules[i]) {
			return false
		}
	}
	return true
}

func TestFillCompletesAndKeepsThePicks(t *testing.T) {
	done := 0
	for seed := range seeds.Each(1500) {
		r := rand.New(rand.NewSource(seed))
		w := makeWorld(r)
		e, err := Compile(w.cat)
		require.NoError(t, err)
		u := w.drawUnit(r)
		filled, changes, ok := e.Fill(&u, w.handLimits(""))
		require.Equal(t, w.possible(&u, deliberate(&u), nil), ok, "seed %d", seed)
		require.Subset(t, deliberate(&filled), deliberate(&u), "seed %d: a pick is lost", seed)
		if !ok {
			continue
		}
		done++
		require.True(t, w.stands(&filled), "seed %d: %+v", seed, filled)
		again, more, _ := e.Fill(&filled, w.handLimits(""))
		require.Equal(t, filled, again, "seed %d: filling a full unit changes nothing", seed)
		require.Empty(t, more, "seed %d", seed)
		for _, c := range changes {
			require.Equal(t, c.Added, filled.Has(c.Option), "seed %d: %+v", seed, c)
			if c.Cause == Needed { // and so it is, beside what else is in the unit
				less := filled.Clone()
				less.Drop(c.Option)
				require.False(t, w.stands(&less), "seed %d: %s is not needed", seed, c.Option)
			}
		}
		// Fills that fit stay.
		all := deliberate(&u)
		for _, p := range u.Picks {
			if p.Filled && w.possible(&u, append(slices.Clone(all), p.Option), nil) {
				all = append(all, p.Option)
				require.True(t, filled.Has(p.Option), "seed %d: %s fits and is gone", seed, p.Option)
			}
		}
	}
	require.Greater(t, done, 500)
}

// lightestMend tries every set of picks to give up.
func (w *world) lightestMend(u *config.Unit, soft, with []string, weigh func(string) int64) (int64, bool) {
	best, found := int64(0), false
	for m := range 1 << len(soft) {
		var weight int64
		keep := slices.Clone(with)
		for i, id := range soft {
			if m>>i&1 == 1 {
				weight += weigh(id)
			} else {
				keep = append(keep, id)
			}
		}
		if (!found || weight < best) && w.possible(u, keep, nil) {
			best, found = weight, true
		}
	}
	return best, found
}

func TestMendIsLightestAndStands(t *testing.T) {
	offered := 0
	for seed := range seeds.Each(800) {
		r := rand.New(rand.NewSource(seed))
		w := makeWorld(r)
		e, err := Compile(w.cat)
		require.NoError(t, err)
		u := w.drawUnit(r)
		weights := map[string]int64{}
		for _, id := range e.IDs() {
			weights[id] = int64(1 + r.Intn(20))
		}
		weigh := func(id string) int64 { return weights[id] }
		limits := w.handLimits("")
		for _, id := range append([]string{""}, e.IDs()...) {
			mends := e.Mend(&u, limits, id, weigh)
			var soft, with []string
			rivals := map[string]bool{}
			if id != "" {
				with, rivals = []string{id}, w.rivals(id)
			}
			for _, p := range deliberate(&u) {
				if !rivals[p] {
					soft = append(soft, p)
				}
			}
			// Quantities of what is given up count no more.
			least, possible := w.lightestMend(&u, soft, with, weigh)
			if id == "" && w.possible(&u, deliberate(&u), nil) {
				require.Empty(t, mends, "seed %d: nothing needs mending", seed)
				continue
			}
			require.Equal(t, possible, len(mends) > 0, "seed %d: %q beside %v", seed, id, deliberate(&u))
			for i, m := range mends {
				offered++
				if i == 0 {
					require.Equal(t, least, m.Weight, "seed %d: %q beside %v: %+v", seed, id, deliberate(&u), m)
				} else {
					require.GreaterOrEqual(t, m.Weight, mends[i-1].Weight, "seed %d", seed)
				}
				require.True(t, w.stands(&m.Unit), "seed %d: %q: %+v", seed, id, m)
				if id != "" {
					require.True(t, asFull(&m.Unit).has(id), "seed %d: %q: %+v", seed, id, m)
				}
				for _, p := range soft {
					require.NotEqual(t, slices.Contains(m.Drop, p), slices.Contains(deliberate(&m.Unit), p),
						"seed %d: %q %s: %+v", seed, id, p, m)
				}
			}
		}
	}
	require.Greater(t, offered, 3000)
}

func TestCompleteIsCheapest(t *testing.T) {
	proven := 0
	for seed := range seeds.Each(800) {
		r := rand.New(rand.NewSource(seed))
		w := makeWorld(r)
		e, err := Compile(w.cat)
		require.NoError(t, err)
		u := w.drawUnit(r)
		costs := map[string]int64{}
		for _, id := range e.IDs() {
			costs[id] = int64(r.Intn(100) - 10)
		}
		price := func(f full) int64 {
			var sum int64
			for id := range f.options {
				sum += costs[id] * int64(max(1, u.Qty(id)))
			}
			return sum
		}
		c := e.Complete(&u, w.handLimits(""), func(id string) int64 { return costs[id] }, 0)
		best, found := int64(0), false
		for _, f := range w.valid {
			has := w.keeps(f, &u)
			for _, id := range deliberate(&u) {
				has = has && f.has(id)
			}
			if has && (!found || price(f) < best) {
				best, found = price(f), true
			}
		}
		require.Equal(t, found, c.Found, "seed %d", seed)
		if found {
			proven++
			require.True(t, c.Proven(), "seed %d", seed)
			require.Equal(t, best, c.Cost, "seed %d", seed)
			require.True(t, w.stands(&c.Unit), "seed %d", seed)
			require.Equal(t, best, price(asFull(&c.Unit)), "seed %d", seed)
		}
	}
	require.Greater(t, proven, 300)
}
