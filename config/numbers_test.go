package config_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"math"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boxwright/config"
	"boxwright/config/body"
	"boxwright/config/leadtime"
	"boxwright/config/power"
	"boxwright/config/quantity"
	"boxwright/config/space"
	"boxwright/config/weight"
)

// numeric is an exported function that computes numbers from numbers, of how many, and
// which of them make sense. For any other it refuses: zeros, false or an error.
type numeric struct {
	name     string
	n        int
	call     func(v []float64) (out []float64, ok bool)
	sensible func(v []float64) bool
}

func numbers(v ...float64) ([]float64, bool) { return v, true }

// all asks each number to lie in a span.
func all(least, most float64) func([]float64) bool {
	return func(v []float64) bool {
		for _, x := range v {
			if !(x >= least && x <= most) {
				return false
			}
		}
		return true
	}
}

func erring(v float64, err error) ([]float64, bool) { return []float64{v}, err == nil }

var anything = func([]float64) bool { return true }

var numerics = []numeric{
	{"body.Ramp", 3, func(v []float64) ([]float64, bool) {
		a := body.Ramp(v[0], v[1], v[2])
		return []float64{a}, a < 90
	}, func(v []float64) bool { return v[0] > 0 && v[1] >= 0 && v[2] > 0 }},
	{"body.TurningFt", 3, func(v []float64) ([]float64, bool) {
		return numbers(float64(body.TurningFt(&config.Chassis{WheelbaseIn: quantity.Length(v[0]),
			TrackFrontIn: quantity.Length(v[1]), SteerDeg: v[2]})))
	}, func(v []float64) bool { return all(0, 1e6)(v[:1]) && all(1, 60)(v[2:]) }},
	{"body.HeadroomIn", 2, func(v []float64) ([]float64, bool) {
		return numbers(body.HeadroomIn(&config.Body{HeightIn: quantity.Length(v[0]),
			Shell: &config.Shell{FrameTubeIn: quantity.Length(v[1])}}))
	}, func(v []float64) bool { return all(0, 1e6)(v[:1]) }},
	{"body.Planes.RearOverhang", 2, func(v []float64) ([]float64, bool) {
		p := body.PlanesOf(&config.Chassis{WheelbaseIn: quantity.Length(v[0]), FrameEndIn: quantity.Length(v[1])},
			&config.Body{})
		return numbers(p.RearOverhang())
	}, func(v []float64) bool { return all(1, 1e6)(v[:1]) }},
	{"config.Catalogue.AboardLb", 1, func(v []float64) ([]float64, bool) {
		c := &config.Catalogue{Equipment: []config.Equipment{{ID: "bag", MassLb: quantity.Mass(v[0])}}}
		c.Prepare()
		return numbers(float64(c.AboardLb(&config.Duty{Aboard: []config.Aboard{{Equipment: "bag", Qty: 2}}})))
	}, all(0, 1e6)},
	{"config.Clean", 1, func(v []float64) ([]float64, bool) { return numbers(config.Clean(v[0])) }, all(0, 1e6)},
	{"config.Figure.Margin", 2, func(v []float64) ([]float64, bool) {
		return numbers(config.Figure{Value: v[0], Limit: v[1], Sense: config.AtMost}.Margin())
	}, all(-1e15, 1e15)},

	{"leadtime.Expected", 3, func(v []float64) ([]float64, bool) {
		return numbers(leadtime.Expected(config.Span{Low: v[0], Likely: v[1], High: v[2]}))
	}, func(v []float64) bool { return all(0, 1e6)(v) && v[0] <= v[1] && v[1] <= v[2] }},
	{"leadtime.Variance", 3, func(v []float64) ([]float64, bool) {
		return numbers(leadtime.Variance(config.Span{Low: v[0], Likely: v[1], High: v[2]}))
	}, func(v []float64) bool { return all(0, 1e6)(v) && v[0] <= v[1] && v[1] <= v[2] }},
	{"leadtime.NormalWithin", 1, func(v []float64) ([]float64, bool) { return numbers(leadtime.NormalWithin(v[0])) },
		func(v []float64) bool { return !math.IsNaN(v[0]) }},
	{"leadtime.NormalDeviate", 1, func(v []float64) ([]float64, bool) { return numbers(leadtime.NormalDeviate(v[0])) },
		func(v []float64) bool { return !math.IsNaN(v[0]) }},
	{"leadtime.Solution.At", 1, func(v []float64) ([]float64, bool) { return numbers(solution().At(v[0])) }, anything},

	{"quantity.Hundredths", 1, func(v []float64) ([]float64, bool) {
		return numbers(float64(quantity.Hundredths(v[0])))
	}, anything},
	{"power.Peukert", 4, func(v []float64) ([]float64, bool) {
		return erring(power.Peukert(quantity.Charge(v[0]), v[1], quantity.Current(v[2]), v[3]))
	}, func(v []float64) bool { return all(1e-3, 1e6)(v) && v[1] <= 1e4 && v[3] >= 1 && v[3] <= 1.6 }},
	{"power.NextFuse", 1, func(v []float64) ([]float64, bool) {
		f, ok := power.NextFuse(power.WiringOf(nil).Fuses, v[0])
		return []float64{f}, ok
	}, all(0, 500)},
	{"power.Wiring.Size", 2, func(v []float64) ([]float64, bool) {
		w := power.WiringOf(nil)
		g, _, ok := w.Size(v[0], v[1])
		return []float64{float64(g)}, ok
	}, all(0, 205500)},
	{"power.Wiring.SizeParallel", 2, func(v []float64) ([]float64, bool) {
		w := power.WiringOf(nil)
		g, n, _, ok := w.SizeParallel(v[0], v[1])
		return []float64{float64(g), float64(n)}, ok
	}, all(0, 3*205500)},
	{"power.AtVolts", 3, func(v []float64) ([]float64, bool) {
		return numbers(float64(power.AtVolts(quantity.Current(v[0]), "resistive", v[1], v[2])),
			float64(power.AtVolts(quantity.Current(v[0]), "power", v[1], v[2])),
			float64(power.AtVolts(quantity.Current(v[0]), "", v[1], v[2])))
	}, func(v []float64) bool { return all(0, 1e6)(v) && all(9, 16)(v[1:]) }},
	{"power.InverterAmps", 3, func(v []float64) ([]float64, bool) {
		return numbers(float64(power.InverterAmps(quantity.Power(v[0]), v[1], v[2])))
	}, func(v []float64) bool { return all(0, 1e6)(v[:1]) && all(9, 16)(v[1:2]) && all(0.01, 1)(v[2:]) }},
	{"power.AreaFor", 3, func(v []float64) ([]float64, bool) { return erring(power.AreaFor(v[0], v[1], v[2])) },
		func(v []float64) bool { return all(0, 1e5)(v[:2]) && all(1e-3, math.MaxFloat64)(v[2:]) }},
	{"power.DropByArea", 3, func(v []float64) ([]float64, bool) { return numbers(power.DropByArea(v[0], v[1], v[2])) },
		func(v []float64) bool { return all(0, 1e5)(v[:2]) && all(1, 1e8)(v[2:]) }},
	{"power.DropHot", 3, func(v []float64) ([]float64, bool) {
		d, ok := power.DropHot(v[0], v[1], power.Gauge(whole(v[2])), power.AWG)
		return []float64{d}, ok
	}, func(v []float64) bool { return all(0, 1e5)(v[:2]) && whole(v[2]) >= -3 && whole(v[2]) <= 18 }},

	{"quantity.Measure.In", 1, func(v []float64) ([]float64, bool) {
		feet, ok := quantity.Measure{Value: v[0], Unit: quantity.Mile}.In(quantity.Mile)
		return []float64{feet}, ok
	}, all(-math.MaxFloat64, math.MaxFloat64)},
	{"quantity.System.Between", 2, func(v []float64) ([]float64, bool) {
		return erring(quantity.US.Between("12.5", quantity.Inch, v[0], v[1]))
	}, func(v []float64) bool { return v[0] <= 12.5 && v[1] >= 12.5 }},

	{"space.Usable", 3, func(v []float64) ([]float64, bool) { return numbers(space.Usable(v[0], v[1], v[2])) },
		all(0, 1e6)},
	{"space.Inside", 3, func(v []float64) ([]float64, bool) {
		return numbers(float64(space.Inside(&config.Compartment{WidthIn: quantity.Length(v[0]),
			DepthIn: quantity.Length(v[1]), HeightIn: quantity.Length(v[2])})))
	}, all(0, 1e6)},
	{"space.Trim.Uneven", 3, func(v []float64) ([]float64, bool) {
		return numbers(space.Trim{LeftLb: quantity.Mass(v[0]), RightLb: quantity.Mass(v[1]),
			FrontLb:      quantity.Mass(v[2]),
			FrontLimitLb: 5000, RearLimitLb: 9000}.Uneven())
	}, anything},

	{"weight.Bridge", 2, func(v []float64) ([]float64, bool) { return numbers(weight.Bridge(v[0], whole(v[1]))) },
		func(v []float64) bool { return all(0.1, 1000)(v[:1]) && whole(v[1]) >= 2 && whole(v[1]) <= 100 }},
	{"weight.BridgeExact", 2, func(v []float64) ([]float64, bool) {
		return numbers(weight.BridgeExact(v[0], whole(v[1])))
	},
		func(v []float64) bool { return all(0.1, 1000)(v[:1]) && whole(v[1]) >= 2 && whole(v[1]) <= 100 }},
	{"weight.SheetLb", 3, func(v []float64) ([]float64, bool) { return numbers(weight.SheetLb(v[0], v[1], v[2])) },
		func(v []float64) bool { return all(0, 1)(v[:1]) && all(0, 100)(v[1:2]) && all(-1e8, 1e8)(v[2:]) }},
	{"weight.TubeLbFt", 4, func(v []float64) ([]float64, bool) {
		return numbers(weight.TubeLbFt(v[0], v[1], v[2], v[3]))
	},
		func(v []float64) bool { return all(0, 100)(v) && v[0] <= 1 }},
	{"weight.AngleLbFt", 3, func(v []float64) ([]float64, bool) { return numbers(weight.AngleLbFt(v[0], v[1], v[2])) },
		func(v []float64) bool { return all(0, 100)(v) && v[0] <= 1 && v[2] <= v[1] }},
	{"weight.FilletLbIn", 2, func(v []float64) ([]float64, bool) { return numbers(weight.FilletLbIn(v[0], v[1])) },
		func(v []float64) bool { return all(0, 100)(v) && v[0] <= 1 }},
	{"weight.Reactions", 3, func(v []float64) ([]float64, bool) { return numbers(weight.Reactions(v[0], v[1], v[2])) },
		func(v []float64) bool { return all(-1e9, 1e9)(v) && all(-1e5, 1e5)(v[1:2]) && all(1, 1e5)(v[2:]) }},
	{"weight.Shift", 3, func(v []float64) ([]float64, bool) { return numbers(weight.Shift(v[0], v[1], v[2])) },
		func(v []float64) bool { return all(-1e9, 1e9)(v) && all(-1e5, 1e5)(v[1:2]) && all(1, 1e5)(v[2:]) }},
	{"weight.Wheels", 3, func(v []float64) ([]float64, bool) { return numbers(weight.Wheels(v[0], v[1], v[2])) },
		func(v []float64) bool { return all(-1e9, 1e9)(v[:1]) && all(-1e14, 1e14)(v[1:2]) }},
	{"weight.TireCapacity", 1, func(v []float64) ([]float64, bool) {
		return numbers(weight.TireCapacity(config.Tires{Count: 4, LoadLb: quantity.Mass(v[0])}))
	}, all(0, 1e6)},
}

// notNumeric are exported functions with a number among what they take or give that
// compute none from numbers, and why.
var notNumeric = map[string]string{
	"config.Unit.DetailLb": "it gives what was said",
	"config.Unit.TellLb":   "it keeps what was said; CheckUnit judges it",
	"body.FloorIn":         "adds up fields that are cleaned", "body.WallIn": "adds up fields that are cleaned",
	"body.TireSize": "takes a text; two digits and three at most", "body.Box.Center": "a mean of two sides",
	"body.Box.Volume": "of a box within the vehicle", "body.Box.Moved": "gives a box", "body.Box.Overlap": "compares boxes",
	"body.Collision.Least": "the least of three fields",
	"body.Model.WallFt":    "follows TurningFt; see its test",
	"body.Model.Headroom":  "a field", "body.Model.FrontalFt2": "multiplies the sizes of Overall",
	"body.Planes.Fuel": "reads fields", "body.Planes.Center": "a mean of places",
	"body.Planes.Station": "what it gives is refused where it is used, as of config.StationAt",
	"config.StationAt":    "what it gives is refused where it is used, or a wrong place would count as one",
	"config.Chassis.Attr": "reads a field", "config.Body.Attr": "reads a field", "config.ExistingRange": "a table",
	"config.Assumptions.Factor": "a table", "config.Unit.SetFactor": "keeps a value", "config.Unclean.Look": "gives none",
	"weight.Sheet.WheelDoubt": "of a sheet that was weighed; nothing where none was, see its own tests",
	"config.Test.Holds":       "compares", "leadtime.Plan.LatestOrderFor": "dates; see its own tests",
	"leadtime.Odds.At": "counts draws; see its own tests", "leadtime.Odds.Within": "counts draws; see its own tests",
	"leadtime.Plan.At": "dates; see its own tests", "leadtime.Plan.Chance": "takes a date",
	"quantity.System.Parse": "takes a text; see TestNoTextReadsAsEndless", "quantity.System.Show": "gives a text",
	"power.AreaTable.Area": "a table",
	"quantity.Group":       "gives a text", "quantity.Chance": "gives a text; see quantity.Hundredths", "weight.TakeOff.Section": "adds up parts",
	"weight.Reading.ResidualLb": "a difference of two fields",
}

func solution() *leadtime.Solution { return &leadtime.Solution{Days: 24, Variance: 5} }

// whole is a float for a parameter that is a whole number.
func whole(v float64) int {
	if !(math.Abs(v) <= 1e9) {
		return -1_000_000
	}
	return int(v)
}

var hostile = []float64{math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64, -math.MaxFloat64,
	math.SmallestNonzeroFloat64, 1e308, -1, 0, math.Copysign(0, -1), 0.5, 1, 1.2, 12.5, 14, 400, 1e7}

func (n *numeric) hold(t require.TestingT, v []float64) {
	out, ok := n.call(v)
	for _, x := range out {
		assert.False(t, math.IsNaN(x) || math.IsInf(x, 0), "%s(%v) = %v", n.name, v, out)
		if !n.sensible(v) && ok {
			assert.Zero(t, x, "%s(%v) = %v: senseless input has no result", n.name, v, out)
		}
	}
}

// No exported function of these packages gives a number that is none, or a result for
// input that makes no sense: all of hostile in every place, and random numbers.
func TestNumericFunctionsRefuseNonsense(t *testing.T) {
	for i := range numerics {
		n := &numerics[i]
		t.Run(n.name, func(t *testing.T) {
			v := make([]float64, n.n)
			var each func(k int)
			each = func(k int) {
				if k == n.n {
					n.hold(t, v)
					return
				}
				list := hostile
				if n.n == 4 {
					list = []float64{math.NaN(), math.Inf(1), -1, 0, 1, 1.2, 12.5, 1e308}
				}
				for _, x := range list {
					v[k] = x
					each(k + 1)
				}
			}
			each(0)
			rapid.Check(t, func(rt *rapid.T) {
				for k := range v {
					v[k] = rapid.OneOf(rapid.Float64(), rapid.Float64Range(-10, 100)).Draw(rt, strconv.Itoa(k))
				}
				n.hold(rt, v)
			})
		})
	}
}

func FuzzNumericFunctions(f *testing.F) {
	f.Add(uint8(0), 1.0, 2.0, 3.0, 1.2)
	f.Fuzz(func(t *testing.T, which uint8, a, b, c, d float64) {
		n := &numerics[int(which)%len(numerics)]
		n.hold(t, []float64{a, b, c, d}[:n.n])
	})
}

// Every exported function with a number among its parameters and results stands in one
// of the two tables.
func TestEveryNumericFunctionIsInTheTable(t *testing.T) {
	known := map[string]bool{}
	for _, n := range numerics {
		known[n.name] = true
	}
	seen := map[string]bool{}
	types := numberTypes(t)
	require.True(t, types["Mass"] && types["Feet"] && types["Volume"], "%v", types)
	require.NoError(t, eachFile(func(_ string, file *ast.File) {
		for _, x := range file.Decls {
			fn, ok := x.(*ast.FuncDecl)
			if !ok || !fn.Name.IsExported() || !takesNumbers(fn, types) {
				continue
			}
			name := file.Name.Name + "." + fn.Name.Name
			if fn.Recv != nil {
				name = file.Name.Name + "." + typeName(fn.Recv.List[0].Type) + "." + fn.Name.Name
			}
			seen[name] = true
			_, excused := notNumeric[name]
			assert.True(t, known[name] || excused, "%s computes numbers and is not tried with nonsense", name)
		}
	}))
	for name := range known {
		assert.True(t, seen[name], "%s is tried and is no exported function with numbers", name)
	}
	for name := range notNumeric {
		assert.True(t, seen[name], "%s is excused and does not exist", name)
	}
}

// numberTypes are the names of all types of the packages below that are floating-point
// numbers.
func numberTypes(t *testing.T) map[string]bool {
	t.Helper()
	out := map[string]bool{"float64": true, "float32": true, "Gauge": true}
	require.NoError(t, eachFile(func(_ string, file *ast.File) {
		for _, d := range file.Decls {
			g, ok := d.(*ast.GenDecl)
			if !ok {
				continue
			}
			for _, s := range g.Specs {
				if x, ok := s.(*ast.TypeSpec); ok && typeName(x.Type) == "float64" {
					out[x.Name.Name] = true
				}
			}
		}
	}))
	return out
}

// eachFile visits the packages below, less their tests.
func eachFile(visit func(path string, file *ast.File)) error {
	return filepath.WalkDir(".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		if err == nil {
			visit(path, file)
		}
		return err
	})
}

// takesNumbers reports whether a function takes or gives numbers, or gives a number of a
// thing that holds some.
func takesNumbers(fn *ast.FuncDecl, numbers map[string]bool) bool {
	gives := false
	if r := fn.Type.Results; r != nil {
		for _, field := range r.List {
			gives = gives || numbers[typeName(field.Type)]
		}
	}
	if gives {
		return true
	}
	for _, l := range []*ast.FieldList{fn.Type.Params, fn.Type.TypeParams} {
		if l == nil {
			continue
		}
		for _, field := range l.List {
			if numbers[typeName(field.Type)] {
				return true
			}
		}
	}
	return false
}

// typeName of a plain, qualified, pointed-to or listed type.
func typeName(e ast.Expr) string {
	switch x := e.(type) {
	case *ast.Ident:
		return x.Name
	case *ast.SelectorExpr:
		return x.Sel.Name
	case *ast.StarExpr:
		return typeName(x.X)
	case *ast.ArrayType:
		return typeName(x.Elt)
	case *ast.Ellipsis:
		return typeName(x.Elt)
	case *ast.UnaryExpr:
		return typeName(x.X)
	}
	return ""
}

// A number as it is typed is finite, or refused.
func TestNoTextReadsAsEndless(t *testing.T) {
	texts := []string{"1e308", "1e309", "-1e308", "1e999 lb", "Inf", "-Infinity", "NaN", "nan lb", "0x1p1023",
		strings.Repeat("9", 400), "9." + strings.Repeat("9", 400), "1" + strings.Repeat("0", 400) + " kg", "1e-999"}
	units := []string{quantity.Pound, quantity.Inch, quantity.Ratio, quantity.Percent, quantity.Amp, quantity.Dollar,
		quantity.Day, quantity.Minute}
	for _, text := range texts {
		for _, unit := range units {
			for _, s := range []quantity.System{quantity.US, quantity.Metric} {
				v, err := s.Parse(text, unit)
				assert.False(t, math.IsNaN(v) || math.IsInf(v, 0), "%q", text)
				if err != nil {
					assert.Zero(t, v, "%q", text)
				}
			}
		}
	}
	for _, v := range hostile {
		for _, s := range []quantity.System{quantity.US, quantity.Metric} {
			shown := s.Show(v, quantity.Pound)
			assert.NotContains(t, shown, "Inf")
			assert.NotContains(t, shown, "NaN")
			assert.Less(t, len(shown), 40)
		}
	}
}
