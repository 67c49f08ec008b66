package expr_test

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boxwright/config"
	"boxwright/config/expr"
	"boxwright/web/assets/catalogue"
)

func ExampleRead() {
	c, err := expr.Read("all(winch, not step-fold, chassis.gvwr_lb >= 14500)")
	fmt.Println(c.All[0].Pick, c.All[1].Not.Pick, c.All[2].Chassis.Number, err)
	_, err = expr.Read("all(winch, not)")
	fmt.Println(err)
	_, err = expr.Read("at-least two of (a, b)")
	fmt.Println(err)
	// Output:
	// winch step-fold 14500 <nil>
	// <nil>
	// at character 10: a whole number belongs here, not "two of (a, b)"
}

func ExampleWrite() {
	fmt.Println(expr.Write(&config.Cond{AtMost: &config.Count{N: 1,
		Of: []config.Cond{{Pick: "cot-power"}, {Body: &config.Test{Attr: "kind", Op: "=", Text: "van"}}}}}))
	// Output: at-most 1 of (cot-power, body.kind = van)
}

func TestWhatIsRead(t *testing.T) {
	for _, c := range []struct{ reason, text, same string }{
		{"spaces and line ends do not count", " all ( a ,\n b )", "all(a, b)"},
		{"brackets around one", "not (a)", "not a"},
		{"a word is an id where nothing follows it", "any(not, all, any, at-least)", "any(not, all, any, at-least)"},
		{"no end of nots", "not not a", "not not a"},
		{"a list of nothing", "all()", "all()"},
		{"a text of several words", `body.kind != "a, b"`, `body.kind != "a, b"`},
		{"an id of digits", "at-least 2 of (2, 3)", "at-least 2 of (2, 3)"},
		{"below zero", "body.length_in > -2.5", "body.length_in > -2.5"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			got, err := expr.Read(c.text)
			require.NoError(t, err, c.reason)
			assert.Equal(t, c.same, expr.Write(&got), c.reason)
		})
	}
}

func TestWhatIsRefused(t *testing.T) {
	for _, c := range []struct{ reason, text, says string }{
		{"nothing", "  ", "at character 3: a condition"},
		{"a capital", "Winch", "at character 1: an id"},
		{"no comma", "all(a b)", `at character 7: "," or ")" belongs here, not "b)"`},
		{"not closed", "any(a, b", `at character 9: "," or ")" belongs here, not the end`},
		{"something behind", "a, b", "at character 2: the end"},
		{"no test", "chassis.cab", "at character 12: one of = != < <= > >="},
		{"no number", "chassis.gvwr_lb >= heavy", "at character 20: a number"},
		{"without bound", "chassis.gvwr_lb >= inf", "a number belongs here"},
		{"a quote not closed", `chassis.cab = "van`, "a text in double quotes"},
		{"brackets without end", strings.Repeat("not ", 1000) + "a", "at most 40 deep"},
		{"counted in characters, not bytes", `all(body.kind = "größe", ?)`, "at character 26"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			_, err := expr.Read(c.text)
			assert.ErrorContains(t, err, c.says, c.reason)
		})
	}
}

// Whatever a catalogue can say is read back as it was.
func TestRoundTrip(t *testing.T) {
	id := rapid.SampledFrom([]string{"a", "winch-front", "not", "all", "at-least", "of", "2", "chassis", "0-1"})
	attr := rapid.SampledFrom([]string{"cab", "gvwr_lb", "kind"})
	text := rapid.OneOf(rapid.SampledFrom([]string{"van", "I-AD", "", "4x4"}), rapid.String())
	var cond func(depth int) *rapid.Generator[config.Cond]
	cond = func(depth int) *rapid.Generator[config.Cond] {
		return rapid.Custom(func(t *rapid.T) config.Cond {
			most := 7
			if depth > 4 {
				most = 2
			}
			of := func() []config.Cond { return rapid.SliceOfN(cond(depth+1), 0, 3).Draw(t, "of") }
			count := func() *config.Count {
				return &config.Count{N: rapid.IntRange(0, 4).Draw(t, "n"), Of: of()}
			}
			check := func() *config.Test {
				x := &config.Test{Attr: attr.Draw(t, "attr"),
					Op: rapid.SampledFrom([]string{"=", "!=", "<", "<=", ">", ">="}).Draw(t, "op")}
				if x.Op == "=" || x.Op == "!=" {
					x.Text = strings.ToValidUTF8(text.Draw(t, "text"), "")
				} else {
					x.Number = rapid.Float64Range(-1e9, 1e9).Draw(t, "number")
				}
				return x
			}
			switch rapid.IntRange(0, most).Draw(t, "kind") {
			case 0:
				return config.Cond{Pick: id.Draw(t, "id")}
			case 1:
				return config.Cond{Chassis: check()}
			case 2:
				return config.Cond{Body: check()}
			case 3:
				return config.Cond{All: of()}
			case 4:
				return config.Cond{Any: of()}
			case 5:
				inner := cond(depth+1).Draw(t, "not")
				return config.Cond{Not: &inner}
			case 6:
				return config.Cond{AtLeast: count()}
			}
			return config.Cond{AtMost: count()}
		})
	}
	rapid.Check(t, func(t *rapid.T) {
		c := cond(0).Draw(t, "condition")
		got, err := expr.Read(expr.Write(&c))
		require.NoError(t, err, expr.Write(&c))
		require.Equal(t, c, got)
	})
}

func TestRulesOfTheDemonstration(t *testing.T) {
	cat, err := config.Read(catalogue.Demo)
	require.NoError(t, err)
	for i := range cat.Rules {
		r := &cat.Rules[i]
		for _, c := range []*config.Cond{r.If, &r.Then} {
			if c == nil {
				continue
			}
			got, err := expr.Read(expr.Write(c))
			require.NoError(t, err, r.ID)
			require.True(t, reflect.DeepEqual(*c, got), r.ID)
		}
	}
}

func FuzzRead(f *testing.F) {
	for _, seed := range []string{"all(a, not b)", "at-least 2 of (a, b)", `body.kind = "x\n"`, "((((", "not not not",
		"chassis.gvwr_lb >= 1e9", "at-most -1 of ()"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		c, err := expr.Read(text)
		if err != nil {
			return
		}
		again, err := expr.Read(expr.Write(&c))
		if err != nil || !reflect.DeepEqual(c, again) {
			t.Fatalf("%q was read as %q, which reads otherwise: %v", text, expr.Write(&c), err)
		}
	})
}
