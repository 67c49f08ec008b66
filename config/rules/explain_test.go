package rules

import (
	"math/rand"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/seeds"
)

// without is the world with some rules, groups' demands and limits left out:
// all but those that a reason names.
func (w *world) only(r Reason) *world {
	cat := *w.cat
	cat.Rules = nil
	for _, rule := range w.cat.Rules {
		if slices.ContainsFunc(r.Rules, func(c Cause) bool { return c.ID == rule.ID }) {
			cat.Rules = append(cat.Rules, rule)
		}
	}
	cat.Groups = slices.Clone(w.cat.Groups)
	for i := range cat.Groups {
		// Beside limits groups are background.
		if len(r.Limits) == 0 && !slices.Contains(r.Groups, cat.Groups[i].ID) {
			cat.Groups[i].Choose = config.ChooseAny
		}
	}
	out := &world{cat: &cat, limits: map[[2]string][]config.Linear{}}
	for pair, list := range w.limits {
		for _, l := range list {
			if slices.ContainsFunc(r.Limits, func(a Arithmetic) bool { return a.Code == l.Code }) {
				out.limits[pair] = append(out.limits[pair], l)
			}
		}
	}
	out.enumerate()
	return out
}

// members of a reason, each left out once.
func smaller(r Reason) []Reason {
	var out []Reason
	cut := func(edit func(*Reason)) {
		s := Reason{slices.Clone(r.Picks), slices.Clone(r.Rules), slices.Clone(r.Groups), slices.Clone(r.Limits)}
		edit(&s)
		out = append(out, s)
	}
	for i := range r.Picks {
		cut(func(s *Reason) { s.Picks = slices.Delete(s.Picks, i, i+1) })
	}
	for i := range r.Rules {
		cut(func(s *Reason) { s.Rules = slices.Delete(s.Rules, i, i+1) })
	}
	for i := range r.Groups {
		cut(func(s *Reason) { s.Groups = slices.Delete(s.Groups, i, i+1) })
	}
	for i := range r.Limits {
		cut(func(s *Reason) { s.Limits = slices.Delete(s.Limits, i, i+1) })
	}
	return out
}

// suffices reports whether the reason alone keeps a valid unit from having, or
// from lacking, the id. Limits of the pair asked about apply.
func (w *world) suffices(u *config.Unit, r Reason, with, without []string) bool {
	return !w.only(r).possible(u, append(slices.Clone(with), r.Picks...), without)
}

func TestWhyIsSufficientAndMinimal(t *testing.T) {
	asked, limited, several := 0, 0, 0
	for seed := range seeds.Each(500) {
		r := rand.New(rand.NewSource(seed))
		w := makeWorld(r)
		e, err := Compile(w.cat)
		require.NoError(t, err)
		for range 3 {
			u := w.drawUnit(r)
			limits := w.handLimits("")
			if !w.possible(&u, deliberate(&u), nil) {
				continue
			}
			for _, id := range e.IDs() {
				state := w.state(&u, id)
				reasons := e.Why(&u, limits, id)
				if state == Open {
					require.Empty(t, reasons, "seed %d: %s is open", seed, id)
					continue
				}
				require.NotEmpty(t, reasons, "seed %d: %s", seed, id)
				if len(reasons) > 1 {
					several++
				}
				pair := e.pairWith(&u, e.vars[id])
				with, without := []string{pair[0], pair[1], id}, []string(nil)
				if state == Forced {
					with, without = []string{pair[0], pair[1]}, []string{id}
					if e.vars[id] < e.firstOption() {
						continue // forced since the others are ruled out; asked there
					}
				}
				for _, reason := range reasons {
					asked++
					// Limits are those of one pair, so judge on it.
					onPair := reason
					if len(reason.Limits) > 0 {
						limited++
						onPair.Picks = append(slices.Clone(reason.Picks), pair[0], pair[1])
						require.Positive(t, len(reason.Limits[0].Code))
					} else {
						with = slices.DeleteFunc(slices.Clone(with), func(x string) bool { return x != id })
					}
					require.True(t, w.suffices(&u, onPair, with, without), "seed %d: %s %s: %+v", seed, id, state,
						reason)
					for _, s := range smaller(reason) {
						if len(s.Limits) > 0 {
							s.Picks = append(s.Picks, pair[0], pair[1])
						}
						require.False(t, w.suffices(&u, s, with, without), "seed %d: %s %s: %+v is not minimal: %+v",
							seed, id, state, reason, s)
					}
				}
			}
		}
	}
	require.Greater(t, asked, 1000)
	require.Greater(t, limited, 100)
	require.Greater(t, several, 50)
}
