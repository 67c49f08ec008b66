// Package power answers whether the 12 V system carries the unit: what each
// duty mode draws and what the hot alternator gives against it, what is left
// over for the tag the specification asks for, how long the batteries last,
// what the shore line and the inverter feed, and how every circuit is wired.
//
// Its figures are for quoting, not for wiring a vehicle: local code and
// licensed practice decide.
package power

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"boxwright/config"
	"boxwright/config/quantity"
)

// Sheet is the electrical load analysis of one unit.
type Sheet struct {
	config.Report
	Modes    []Mode      // in the order of duties
	Hot      Output      // what the alternator gives at 200 F under hood
	Shed     []ShedStep  // what goes first when the batteries carry the scene load
	Battery  Battery     // capacity and minutes
	Shore    Mains       // everything on 125 V against the inlet
	Inverter Mains       // what the inverter feeds away from the shore line
	Circuits []Conductor // the circuit schedule, by the usual Wiring

	keptWatts quantity.Power // at 125 V of what must run on when all else is shut off
	keptName  string
}

// Mode is one duty mode: its loads by item against its supply.
type Mode struct {
	Code  string // figure code, such as "power.scene"
	Label string
	Items []Item // chassis first, then allowances, then options by id
	LoadA quantity.Current
	Volts float64 // at which the currents of this mode are stated
	// SupplyA is the alternator's hot output in this mode; 0 when parked,
	// where the engine stands still.
	SupplyA    quantity.Current
	RemainingA quantity.Current // SupplyA - LoadA; negative when short; 0 when parked
}

// Item is one line of a mode.
type Item struct {
	ID    string // option id; empty for the chassis and for allowances
	Label string
	Amps  quantity.Current // for all of its quantity, at the mode's voltage
	Shed  int              // step in which it is shed, counted from 1; 0 never
	// Watts that the inverter feeds it with at 125 V; 0 of a plain 12 V load.
	Watts quantity.Power
	// OffA is the same current with the engine off, at the batteries' voltage and without
	// what only a running engine needs; of the scene mode alone.
	OffA quantity.Current
}

// Name is the label, with the inverter where that feeds it.
func (it *Item) Name() string {
	if it.Watts > 0 {
		return it.Label + ", through the inverter"
	}
	return it.Label
}

// Output of the alternator with 200 F under the hood, the condition of
// KKK-A-1822E 3.7.6 (sheet 33). The cold nameplate is shown beside it, since
// it can be far higher (its warning 2).
type Output struct {
	IdleA     quantity.Current
	HighIdleA quantity.Current
	ColdA     quantity.Current
}

// CodeMedical is the limit code by which a rule set asks for an allowance of
// medical load on scene, beside whatever the unit itself draws.
const CodeMedical = "power.medical-load"

// Caution is printed with every sheet.
const Caution = "Computed electrical figures are for quoting; they do not replace the test of the finished unit, the " +
	"applicable electrical code or licensed practice."

// duty says what a mode draws, from what it is fed, and at which voltage.
type duty struct {
	code, label string
	draw        func(*config.Load) quantity.Current
	inUse       func(*config.ACDuty) float64 // share of a 125 V load that the inverter feeds
	fed         bool                         // by the alternator
	volts       string                       // factor
}

// The scene mode is judged at high idle: KKK-A-1822E 3.7.6 rates the system at an engine speed not
// exceeding high idle and 3.7.6.3 asks for an automatic high idle. What the load does at low idle
// is the figure power.idle, which is only noted: with hot outputs as they are few alternators carry
// it. On the road the engine turns at least as fast as at high idle.
var duties = []duty{
	{"power.parked", "Parked on the shore line", func(l *config.Load) quantity.Current { return l.ParkedA },
		func(*config.ACDuty) float64 { return 0 }, false, config.ShoreVolts},
	{"power.driving", "Driving", func(l *config.Load) quantity.Current { return l.DrivingA },
		func(d *config.ACDuty) float64 { return d.Driving }, true, config.RunningVolts},
	{"power.responding", "Responding", func(l *config.Load) quantity.Current { return l.RespondingA },
		func(d *config.ACDuty) float64 { return d.Responding }, true, config.RunningVolts},
	{"power.scene", "On scene", func(l *config.Load) quantity.Current { return l.SceneA },
		func(d *config.ACDuty) float64 { return d.Scene }, true, config.RunningVolts},
}

const ratedAt = "alternator output at 200 F under hood, high idle (condition of KKK-A-1822E 3.7.6)"

// spread is the half width of the likely range of a sum of loads, which vary
// independently.
func (b *vehicle) spread(items []Item) float64 {
	sum, share := 0.0, b.Assume.Factor(config.DrawSpread)/100
	for _, it := range items {
		sum += sq(share * float64(it.Amps))
	}
	return math.Sqrt(sum)
}

// outputSpread is the half width of the likely range of a hot output.
func (b *vehicle) outputSpread(amps float64) float64 {
	return amps * b.Assume.Factor(config.OutputSpread) / 100
}

// chanceAbove is the chance that a normal quantity is above zero, rounded to a
// millionth; half is the half width of the range that holds it 95 times in 100.
func chanceAbove(mean, half float64) float64 {
	if !(half > 0) {
		if mean > 0 {
			return 1
		}
		return 0
	}
	return math.Round(1e6*math.Erfc(-mean*1.959963984540054/half/math.Sqrt2)/2) / 1e6
}

func volts(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) + " V" }

// Budget computes the sheet. Currents in amperes, positive drawn; it never
// fails: what cannot be computed is a finding, and a number that is negative
// or not a number counts as zero and is named.
func Budget(cat *config.Catalogue, u *config.Unit, assume *config.Assumptions) *Sheet {
	s := new(Sheet)
	b := gather(cat, u, assume, &s.Report)
	if b == nil {
		return s
	}
	s.Hot = b.output()
	s.modes(b)
	s.numberShedding()
	s.medical(b)
	s.idle(b)
	s.battery(b)
	s.charger(b)
	s.mains(b)
	s.circuits(b)
	return s
}

// modes sums the loads of each duty mode and holds them against the supply.
func (s *Sheet) modes(b *vehicle) {
	for _, d := range duties {
		m := Mode{Code: d.code, Label: d.label, Items: b.items(d), Volts: b.Assume.Factor(d.volts)}
		for _, it := range m.Items {
			m.LoadA += it.Amps
		}
		spread := b.spread(m.Items)
		f := config.Figure{Code: d.code, Label: d.label + ", 12 V load at " + volts(m.Volts), Value: float64(m.LoadA),
			Unit: quantity.Amp}
		f.Low, f.High = f.Value-spread, f.Value+spread
		if d.fed {
			m.SupplyA = s.Hot.HighIdleA
			m.RemainingA = m.SupplyA - m.LoadA
			f.Limit, f.Sense, f.Source, f.Basis = float64(m.SupplyA), config.AtMost, ratedAt, config.Rating
			f.Chance = chanceAbove(f.Value-f.Limit, math.Hypot(spread, b.outputSpread(f.Limit)))
		}
		b.Assume.Bind(&f)
		s.Modes = append(s.Modes, m)
		s.Figures = append(s.Figures, f)
		if !f.Met() {
			s.add(config.Finding{Code: d.code, Severity: f.Basis.Severity(), Figure: &f, Basis: f.Basis,
				Text: fmt.Sprintf("%s, the unit draws %.1f A; the most that may be drawn is %.1f A.", d.label,
					f.Value, f.Limit),
				Remedy: "Choose a larger alternator, or fewer or lighter loads.", Picks: heaviest(m.Items)})
		} else if d.fed && d.code != "power.scene" && f.High > f.Limit { // of the scene, what remains tells
			s.near(&f, fmt.Sprintf("%s, the unit draws %.1f A of the %.1f A that the hot alternator gives", d.label,
				f.Value,
				f.Limit), m.Items)
		}
	}
	scene, _ := s.Figure("power.scene")
	left := config.Figure{Code: "power.remaining", Label: "Generating capacity remaining at 200 F, total load as built",
		Unit: quantity.Amp, Value: float64(s.Hot.HighIdleA) - scene.Value}
	spread := math.Hypot(scene.High-scene.Value, b.outputSpread(float64(s.Hot.HighIdleA)))
	left.Low, left.High = left.Value-spread, left.Value+spread
	b.Assume.Bind(&left)
	s.Figures = append(s.Figures, left)
	if !left.Met() {
		s.add(config.Finding{Code: left.Code, Severity: left.Basis.Severity(), Figure: &left, Basis: left.Basis,
			Text:   fmt.Sprintf("%.1f A remain; %.1f A are asked for.", left.Value, left.Limit),
			Remedy: "Choose a larger alternator or fewer loads."})
		return
	}
	least := left
	if least.Sense == "" {
		least.Sense, least.Source, least.Basis = config.AtLeast, ratedAt, config.Rating
	}
	if least.Chance = chanceAbove(least.Limit-least.Value, spread); least.Met() && least.Low < least.Limit {
		said := fmt.Sprintf("On scene %.1f A of what the hot alternator gives remain", least.Value)
		if least.Limit > 0 {
			said += fmt.Sprintf("; %.1f A are asked for", least.Limit)
		}
		s.near(&least, said, s.Modes[len(s.Modes)-1].Items)
	}
}

// near says of a limit that is kept how likely it is missed, given how well the loads
// and the alternator are known.
func (s *Sheet) near(f *config.Figure, said string, items []Item) {
	severity := config.Warn
	if f.Basis == config.FromMemory {
		severity = config.Note // nobody read the limit
	}
	s.add(config.Finding{Code: f.Code + ".near", Severity: severity, Figure: f, Basis: f.Basis,
		Text: fmt.Sprintf("%s. The likely range is %.1f A to %.1f A: the chance of missing it is %s.", said, f.Low,
			f.High, quantity.Chance(f.Chance)),
		Remedy: "Choose a larger alternator, or fewer or lighter loads.", Picks: heaviest(items)})
}

// medical shows the allowance that the rule set adds on scene.
func (s *Sheet) medical(b *vehicle) {
	l, asked := b.Assume.Limits[CodeMedical]
	if !asked {
		return
	}
	a := float64(config.Clean(quantity.Current(l.Value)))
	s.Figures = append(s.Figures, config.Figure{Code: CodeMedical, Label: "Medical load counted on scene", Value: a,
		Low: a, High: a, Unit: quantity.Amp,
		Limit: l.Value, Sense: config.AtLeast, Source: l.Source, Basis: l.Basis})
}

// idle holds the scene load against the output at low idle: what happens
// when the automatic high idle is off.
func (s *Sheet) idle(b *vehicle) {
	scene, _ := s.Figure("power.scene")
	f := config.Figure{Code: "power.idle", Label: "On scene at low idle, 12 V load", Value: scene.Value,
		Low: scene.Low, High: scene.High, Unit: quantity.Amp,
		Limit: float64(s.Hot.IdleA), Sense: config.AtMost, Source: "alternator output at 200 F under hood, low idle",
		Basis: config.Rating, Noted: true}
	f.Chance = chanceAbove(f.Value-f.Limit, math.Hypot(f.High-f.Value, b.outputSpread(f.Limit)))
	s.Figures = append(s.Figures, f)
	if !f.Met() {
		s.add(config.Finding{Code: f.Code, Severity: config.Note, Figure: &f, Basis: f.Basis,
			Text: fmt.Sprintf("At low idle the alternator gives %.0f A hot and the scene load is %.1f A: without "+
				"high idle the batteries discharge at %.1f A.", f.Limit, f.Value, -f.Margin()),
			Remedy: "Keep the automatic high idle, choose an alternator with more output at low idle, or shed loads on scene."})
	}
}

func (s *Sheet) add(f config.Finding) {
	f.Where = "Power"
	s.Findings = append(s.Findings, f)
}

// heaviest names the options that draw most, up to three.
func heaviest(items []Item) []string {
	var out []string
	for range 3 {
		best := -1
		for i, it := range items {
			if it.ID == "" || it.Amps <= 0 || slices.Contains(out, it.ID) {
				continue
			}
			if best < 0 || it.Amps > items[best].Amps {
				best = i
			}
		}
		if best < 0 {
			break
		}
		out = append(out, items[best].ID)
	}
	return out
}
