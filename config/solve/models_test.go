package solve

import (
	"bufio"
	"math/rand"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/go-air/gini"
	"github.com/go-air/gini/z"
	"github.com/stretchr/testify/require"

	"boxwright/config/seeds"
)

// The public product-line models, where they are at hand: feature models of
// the SoftVarE group's benchmark collection, MIT license,
// DOI 10.5281/zenodo.11652924. They are no part of this repository: BOXWRIGHT_MODELS
// names the folder with them.
var modelFolder = os.Getenv("BOXWRIGHT_MODELS")

// cnf is a problem as a list of clauses.
type cnf struct {
	vars    int
	clauses [][]Lit
}

// readModel reads a DIMACS file, with either line end and with or without a
// last one; the test is skipped, saying so, when the folder is not there.
func readModel(t testing.TB, name string) *cnf {
	t.Helper()
	file, err := os.ReadFile(filepath.Join(modelFolder, name+".dimacs"))
	if err != nil {
		t.Skipf("the public models are not at hand (%v); this check is left out", err)
	}
	p := new(cnf)
	var clause []Lit
	lines := bufio.NewScanner(strings.NewReader(string(file)))
	for lines.Scan() {
		fields := strings.Fields(lines.Text())
		switch {
		case len(fields) == 0 || fields[0] == "c":
		case fields[0] == "p":
			p.vars, err = strconv.Atoi(fields[2])
			require.NoError(t, err)
		default:
			for _, f := range fields {
				n, err := strconv.Atoi(f)
				require.NoError(t, err)
				switch {
				case n > 0:
					clause = append(clause, Pos(n-1))
				case n < 0:
					clause = append(clause, Neg(-n-1))
				default:
					p.clauses = append(p.clauses, clause)
					clause = nil
				}
			}
		}
	}
	return p
}

func (p *cnf) solver() *Solver {
	s := New(p.vars)
	for _, c := range p.clauses {
		s.AddClause(c...)
	}
	return s
}

func (p *cnf) table() *Table { return NewTable(p.solver(), noClasses(p.vars)) }

func noClasses(n int) []int32 {
	class := make([]int32, n)
	for i := range class {
		class[i] = -1
	}
	return class
}

func (p *cnf) gini() *gini.Gini {
	g := gini.NewV(p.vars + 8) // with no room to spare it overruns its trail
	for _, c := range p.clauses {
		for _, l := range c {
			g.Add(giniLit(l))
		}
		g.Add(0)
	}
	return g
}

func giniLit(l Lit) z.Lit {
	if l.Negative() {
		return z.Var(l.Var() + 1).Neg()
	}
	return z.Var(l.Var() + 1).Pos()
}

// Counts of variables that are true in every model (core) and in none (dead).
//
// Source of the rows marked "published": the collection's own statistics
// table for the same models. The others are what three independent solvers
// agreed on; the table is unusable there for files of DIMACS origin.
var publicCounts = []struct {
	model      string
	core, dead int
	source     string
}{
	{"routefinding", 43, 0, "published"},
	{"eshop", 50, 0, "published"},
	{"pcrichmond", 9, 0, "published"},
	{"axtls", 3, 381, "agreed by independent solvers"},
	{"finserv", 22, 0, "published"},
	{"ecos", 1, 35, "published"},
	{"automotive01", 100, 195, "published"},
	{"busybox", 12, 3939, "agreed by independent solvers"},
}

func TestCoreAndDeadOfPublicModels(t *testing.T) {
	for _, c := range publicCounts {
		t.Run(c.model, func(t *testing.T) {
			p := readModel(t, c.model)
			verdicts, r := p.table().Answer(Query{})
			require.Equal(t, Sat, r)
			core, dead := 0, 0
			for _, v := range verdicts {
				require.True(t, v.Decided())
				if v&MustHold != 0 {
					core++
				}
				if v&CannotHold != 0 {
					dead++
				}
			}
			require.Equal(t, c.core, core, "core, %s", c.source)
			require.Equal(t, c.dead, dead, "dead, %s", c.source)
		})
	}
}

// A session of clicks on each public model, every table held against gini, an
// independent solver, asked afresh for each literal it is asked about.
func TestPublicModelsAgreeWithGini(t *testing.T) {
	for _, c := range publicCounts {
		t.Run(c.model, func(t *testing.T) {
			p := readModel(t, c.model)
			if testing.Short() && p.vars > 1000 {
				t.Skip("long")
			}
			r := rand.New(rand.NewSource(seeds.First()))
			table, g := p.table(), p.gini()
			var picks []Lit
			for range 4 {
				verdicts, result := table.Answer(Query{Picks: picks})
				require.Equal(t, Sat, result)
				var open []Lit
				for v, verdict := range verdicts {
					if verdict == CanHold|CanFail {
						open = append(open, Pos(v), Neg(v))
					}
				}
				for range 150 { // a sample; each costs gini a search
					v := r.Intn(p.vars)
					for _, l := range []Lit{Pos(v), Neg(v)} {
						for _, q := range picks {
							if q.Var() != v {
								g.Assume(giniLit(q))
							}
						}
						g.Assume(giniLit(l))
						want := CanHold
						if g.Solve() != 1 {
							want = CannotHold
						}
						if l.Negative() {
							want <<= 2
						}
						require.NotZero(t, verdicts[v]&want, "%s: literal %d beside %v: %b", c.model, l, picks,
							verdicts[v])
					}
				}
				for len(open) > 0 {
					l := open[r.Intn(len(open))]
					picked := false
					for _, q := range picks {
						picked = picked || q.Var() == l.Var()
					}
					if !picked {
						picks = append(picks, l)
						break
					}
				}
			}
		})
	}
}
