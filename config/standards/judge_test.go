package standards

import (
	"math"
	"slices"
	"strings"
	"testing"

	"boxwright/config"
	"boxwright/config/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestOutcomes(t *testing.T) {
	cat := fixture(t)
	tested := on("t3")
	tested.Picks = []config.Pick{{Option: "tested", Qty: 1}}
	low := on("t3")
	low.Own = []config.OwnLimit{{Figure: "space.headroom", Value: 54}, {Figure: "weight.front-share", Value: 30}}
	for _, tt := range []struct {
		reason string
		unit   *config.Unit
		report *config.Report
		clause string
		want   Outcome
		basis  config.Basis
	}{
		{"by number", on("t3"), figure("space.headroom", 60), "kkk-headroom", Met, config.FromMemory},
		{"by number", on("t3"), figure("space.headroom", 59.9), "kkk-headroom", NotMet, config.FromMemory},
		{"the purchaser's own stands for a recalled one", low, figure("space.headroom", 55), "kkk-headroom", Met, config.Purchaser},
		{"a figure that nobody reported", on("t3"), nil, "kkk-headroom", NotJudged, config.FromMemory},
		{"a number nobody read is left open", on("t3"), figure("weight.front-share", 33), "kkk-front-share", NotJudged, config.Purchaser},
		{"until the purchaser gives one", low, figure("weight.front-share", 33), "kkk-front-share", Met, config.Purchaser},
		{"declared by an option", tested, nil, "kkk-flash", Declared, config.ReadInText},
		{"declared by nobody", on("t3"), nil, "kkk-flash", NotJudged, config.ReadInText},
		{"a computed figure fits no tag", on("t3"), figure("power.remaining", 60), "kkk-remaining-tag", NotJudged, config.ReadInText},
		{"superseded texts bind nobody", on("t3"), nil, "wa-light", DoesNotApply, ""},
		{"a bench that is too short", on("t3"), figure("space.bench", 60), "kkk-bench", NotMet, config.FromMemory},
		{"no bench in the unit", on("t3"), nil, "kkk-bench", DoesNotApply, ""},
		{"what is not ordered", on("t3"), nil, "kkk-front-compartment", DoesNotApply, ""},
		{"what is ordered, and too small", tested, figure("space.front-compartment", 99), "kkk-front-compartment", NotMet, config.ReadInText},
		{"what is ordered, and just large enough", tested, figure("space.front-compartment", 100), "kkk-front-compartment", Met, config.ReadInText},
		{"a flood light below 75 in", on("t3"), figure("space.flood-height", 74.9), "kkk-flood-height", NotMet, config.ReadInText},
		{"a wire that carries less than 125 % of its fuse", on("t3"), figure("power.wire-carry", 124), "kkk-wire-size", NotMet, config.FromMemory},
	} {
		t.Run(tt.reason, func(t *testing.T) {
			v := verdict(t, Judge(KKK+"+wa", tt.unit, cat, tt.report), tt.clause)
			assert.Equal(t, tt.want, v.Outcome, tt.reason)
			assert.Equal(t, tt.basis, v.Basis, tt.reason)
			if tt.want == NotJudged || tt.want == DoesNotApply {
				assert.NotEmpty(t, v.Note, "%s: say why", tt.reason)
			}
			if tt.want == NotJudged {
				assert.NotEmpty(t, v.Settles, "%s: say what settles it", tt.reason)
			}
			if strings.HasPrefix(v.Note, "No number is built in") {
				assert.Equal(t, named, v.Settles, "%s: no scale settles what has no number", tt.reason)
			}
		})
	}
}

// Every clause that no figure judges says which paper or test does.
func TestEveryClauseIsSettledSomehow(t *testing.T) {
	for _, s := range append(Sets(), always) {
		for _, c := range s.Clauses {
			if c.Figure == "" || c.Sense == "" && !strings.HasPrefix(c.Figure, "weight.") && c.Figure != "power.scene" {
				assert.NotEmpty(t, Settles(c.ID), c.ID)
			}
		}
	}
	for id := range settles {
		_, _, known := Lookup(id)
		assert.True(t, known, "%s is a clause", id)
	}
}

// A declaration of a unit that misses a clause stops where the number was read, and is to
// be checked where it is from memory.
func TestADeclarationOfWhatIsNotMet(t *testing.T) {
	cat, u := fixture(t), on("t3")
	declared := []Verdict{{Set: KKK, Clause: "kkk-declaration", Outcome: Declared, Picks: []string{"papers"}}}
	short := *figure("space.headroom", 59)
	short.Figures[0].Unit = "in"
	missed := verdict(t, Judge(KKK, u, cat, &short), "kkk-headroom")
	require.Equal(t, NotMet, missed.Outcome)
	read := missed
	read.Basis = config.ReadInText
	for _, tt := range []struct {
		reason string
		list   []Verdict
		want   config.Severity
		found  bool
	}{
		{"declared and missed, from memory", append(declared, missed), config.Warn, true},
		{"declared and missed, as read", append(declared, missed, read), config.Stop, true},
		{"declared and met", append(declared, Verdict{Set: KKK, Outcome: Met}), "", false},
		{"missed and not declared", []Verdict{missed}, "", false},
		{"another set's clause", append(declared, Verdict{Set: Nevada, Outcome: NotMet, Figure: missed.Figure}), "", false},
	} {
		t.Run(tt.reason, func(t *testing.T) {
			i := slices.IndexFunc(Findings(tt.list), func(f config.Finding) bool { return f.Code == "standard.declared" })
			require.Equal(t, tt.found, i >= 0)
			if i >= 0 {
				f := Findings(tt.list)[i]
				assert.Equal(t, tt.want, f.Severity)
				assert.Equal(t, []string{"papers"}, f.Picks)
				assert.Contains(t, f.Text, "Headroom, 59.0 in, missed by 1.0 in (at least 60.0 in, from memory)")
			}
		})
	}
}

// Asking for less than a text that was read does not make the unit comply.
func TestOwnPayloadBelowTheText(t *testing.T) {
	cat, u := fixture(t), on("t3")
	u.PayloadLb = 1500
	vs := Judge(KKK, u, cat, figure("weight.payload", 1600))
	assert.Equal(t, NotMet, verdict(t, vs, "kkk-payload").Outcome)
	assert.Equal(t, 1750.0, verdict(t, vs, "kkk-payload").Figure.Limit)
	own := verdict(t, vs, "purchaser-weight.payload")
	assert.Equal(t, Met, own.Outcome)
	assert.Equal(t, 100.0, own.Figure.Margin())
	fs := Findings(vs)
	require.Len(t, fs, 1)
	assert.Equal(t, "standard.kkk-payload", fs[0].Code)
	assert.Equal(t, config.Warn, fs[0].Severity, "the purchaser knows; a decision is asked for, nothing is hidden")
}

func TestOccupantBelowFederal(t *testing.T) {
	u := on("t3")
	u.OccupantLb = 149
	assert.Equal(t, NotMet, verdict(t, Judge(KKK, u, fixture(t)), "cfr-567.4-occupant").Outcome)
	u.OccupantLb = 150
	assert.Equal(t, Met, verdict(t, Judge(KKK, u, fixture(t)), "cfr-567.4-occupant").Outcome)
}

func TestFindings(t *testing.T) {
	cat := fixture(t)
	short := figure("weight.payload", 1700)
	vs := Judge(KKK, on("t3"), cat, short, figure("space.headroom", 58))
	var got []string
	for _, f := range Findings(vs) {
		got = append(got, f.Code+" "+string(f.Severity))
		assert.NotEmpty(t, f.Remedy)
		assert.NotEmpty(t, f.Clause)
	}
	assert.Equal(t, []string{"standard.kkk-payload stop", "standard.kkk-headroom note"}, got,
		"what was read stops, what was recalled is a note")

	f := *verdict(t, vs, "kkk-payload").Figure
	short.Findings = []config.Finding{{Code: "weight.payload", Figure: &f}}
	for _, x := range Findings(vs, short) {
		assert.NotEqual(t, "standard.kkk-payload", x.Code, "the calculator has said it already")
	}
}

func TestSwitchingRejudges(t *testing.T) {
	cat, u := fixture(t), on("t2")
	r := figure("weight.payload", 1600)
	assert.Equal(t, Met, verdict(t, Judge(KKK, u, cat, r), "kkk-payload").Outcome)
	assert.Equal(t, NotMet, verdict(t, Judge(ASTM, u, cat, r), "f2020-payload").Outcome)
}

func TestHostileQuestions(t *testing.T) {
	cat := fixture(t)
	nan := figure("weight.payload", math.NaN())
	assert.Equal(t, NotMet, verdict(t, Judge(KKK, on("t3"), cat, nan), "kkk-payload").Outcome,
		"what is no number keeps no limit")
	for _, vs := range [][]Verdict{
		Judge(KKK, nil, cat), Judge(KKK, on("t3"), nil), Judge(KKK, on("gone"), cat), Judge("moon", on("t3"), cat),
		Judge("", on("t3"), cat, nil),
		Judge(strings.Repeat("+", 1<<16), on("t3"), cat),
	} {
		assert.NotEmpty(t, vs)
		assert.NotPanics(t, func() { Findings(vs, nil) })
	}
	last := Judge("moon", on("t3"), cat)
	assert.Equal(t, NotJudged, last[len(last)-1].Outcome)
	assert.Contains(t, last[len(last)-1].Note, "moon")
}

// The tables themselves: every clause can be cited, judged and traced.
func TestTablesAreSound(t *testing.T) {
	known := map[string]bool{}
	all := append([]Set{federal()}, Sets()...)
	for _, s := range all {
		require.NotEmpty(t, s.Label)
		for _, c := range s.Clauses {
			assert.False(t, known[c.ID], "%s stands twice", c.ID)
			known[c.ID] = true
			assert.NotEmpty(t, c.Title, c.ID)
			assert.NotEmpty(t, c.Text, c.ID)
			assert.NotEmpty(t, c.Rows, c.ID)
			assert.False(t, c.Sense != "" && c.Figure == "", "%s has a sense and no figure", c.ID)
			assert.Equal(t, c.Sense != "", c.Unit != "", "%s: a number has a unit", c.ID)
			for i, r := range c.Rows {
				assert.NotEmpty(t, r.Source, c.ID)
				assert.NotEmpty(t, r.Basis, c.ID)
				assert.False(t, c.Sense != "" && r.Value == 0 && !r.Open && c.ID != "nhtsa-gvwr-gawr",
					"%s row %d has no number and is not open", c.ID, i)
				if i > 0 {
					assert.False(t, c.Rows[i-1].From.Before(r.From), "%s: newest first", c.ID)
				}
			}
		}
	}
	assert.Equal(t, KKK, Default())
	_, ok := Find(Default())
	assert.True(t, ok)
}

// Section 1e of the reference: the state numbers that were read.
func TestStateTexts(t *testing.T) {
	for clause, want := range map[string]struct {
		value float64
		unit  string
	}{
		"in-width-most": {96, quantity.Inch}, "in-width-least": {75, quantity.Inch}, "in-height": {110, quantity.Inch}, "in-wheelbase": {123, quantity.Inch},
		"nv-volume": {300, quantity.CubicFoot}, "nv-headroom": {60, quantity.Inch}, "nv-storage": {35, quantity.CubicFoot}, "nv-bench": {72, quantity.Inch}, "nv-bench-width": {22, quantity.Inch}, "nv-walkway": {18, quantity.Inch},
		"ca-la-headroom": {60, quantity.Inch}, "ca-la-aisle": {12, quantity.Inch}, "ca-la-length": {113, quantity.Inch},
		"ca-la-seat-cot": {12, quantity.Inch}, "ca-la-cot-door": {12, quantity.Inch},
		"wa-length": {112, quantity.Inch}, "wa-aisle": {9, quantity.Inch}, "wa-headroom": {53, quantity.Inch}, "ny-headroom": {54, quantity.Inch},
	} {
		t.Run(clause, func(t *testing.T) {
			found := false
			for _, s := range Sets() {
				for _, c := range s.Clauses {
					if c.ID == clause {
						found = true
						assert.Equal(t, want.value, c.Rows[0].Value, clause)
						assert.Equal(t, want.unit, c.Unit, clause)
						assert.Equal(t, config.ReadInText, c.Rows[0].Basis, clause)
						assert.True(t, s.AddOn, clause)
					}
				}
			}
			assert.True(t, found, clause)
		})
	}
}

func BenchmarkJudge(b *testing.B) {
	cat, u := fixture(b), on("t3")
	r := figure("weight.payload", 1800)
	for b.Loop() {
		Judge(KKK+"+nv", u, cat, r)
	}
}

// What is not judged because nothing declares it says what would, or that the catalogue has nothing.
func TestWhatWouldDeclareAClauseIsNamed(t *testing.T) {
	list := Judge(KKK, on("t3"), fixture(t))
	assert.Equal(t, "Nothing in the unit declares it; Tested body would.", verdict(t, list, "kkk-flash").Note)
	assert.Equal(t, "No option of this catalogue declares it: ask the plant.", verdict(t, list, "amd-002").Note)
}
