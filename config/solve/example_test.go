package solve_test

import (
	"fmt"

	"boxwright/config/solve"
)

func Example() {
	s := solve.New(3)
	a, b, c := solve.Pos(0), solve.Pos(1), solve.Pos(2)
	s.AddClause(a.Not(), b) // a needs b
	s.AddClause(b.Not(), c) // b needs c

	fmt.Println(s.Solve([]solve.Lit{a}, 0), s.Model(c))
	fmt.Println(s.Solve([]solve.Lit{a, c.Not()}, 0), len(s.Core()))
	// Output:
	// satisfiable true
	// unsatisfiable 2
}

// A limit is asked for by assuming its guard.
func ExampleSolver_AddLimit() {
	s := solve.New(2)
	a, b := solve.Pos(0), solve.Pos(1)
	most := s.AddLimit(solve.Limit{Max: 100, Groups: [][]solve.Choice{
		{{Lit: a, Cost: 60}, {Lit: a.Not()}},
		{{Lit: b, Cost: 50}, {Lit: b.Not()}},
	}})
	fmt.Println(s.Solve([]solve.Lit{a, b}, 0))
	fmt.Println(s.Solve([]solve.Lit{most, a, b}, 0))
	// Output:
	// satisfiable
	// unsatisfiable
}

func ExampleTable() {
	s := solve.New(3)
	red, blue, stripe := solve.Pos(0), solve.Pos(1), solve.Pos(2)
	s.AddClause(red, blue) // one color
	s.AddClause(red.Not(), blue.Not())
	s.AddClause(stripe.Not(), blue) // the stripe goes with blue only

	t := solve.NewTable(s, []int32{0, 0, -1}) // the colors replace each other
	verdicts, _ := t.Answer(solve.Query{Picks: []solve.Lit{red}})
	for _, v := range verdicts {
		fmt.Println(v&solve.CanHold != 0, v&solve.MustHold != 0)
	}
	// Output:
	// true false
	// true false
	// false false
}
