package power

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"

	"boxwright/config"
	"boxwright/config/quantity"
)

// Wiring is how circuits are sized. The zero value is not usable; start from
// WiringOf.
type Wiring struct {
	Areas       AreaTable
	Volts       float64           // nominal
	DropPct     float64           // of Volts, source to device and back; see config.WireDrop
	CriticalPct float64           // the same for critical circuits
	Ampacity    map[Gauge]float64 // A, of 125 C XLPE wire (SAE J1128 SXL, GXL, TXL; J1127 cable)
	Fuses       []float64         // standard sizes, A, smallest first
	// Parallel is how many conductors alike may share a circuit that no single one carries;
	// 1/0 and larger, see SizeParallel.
	Parallel int
}

// Margin of a fuse over its load, and of a wire over its fuse.
// Source: fuse, tensofuse.com and ukmotorfactors.co.uk; wire, "rated to carry
// 125 % of the maximum current for which the circuit is protected", public
// fire-apparatus specification after NFPA 1901 chapter 13.
const Margin125 = 1.25

// WiringOf is what a circuit schedule is made with under the assumptions, nil for the
// usual ones: automotive areas, 12 V, and the drop that is allowed (10 % and 3 % for
// critical circuits, use of both: hollandmarine.com, zrd.com). The ampacities of 125 C
// insulation and the fuse sizes are from memory: defaults, which never stop a unit.
func WiringOf(assume *config.Assumptions) Wiring {
	return Wiring{Areas: SAE, Volts: 12,
		DropPct: assume.Factor(config.WireDrop), CriticalPct: assume.Factor(config.CriticalDrop),
		Ampacity: map[Gauge]float64{18: 25, 16: 30, 14: 40, 12: 50, 10: 70, 8: 90, 6: 125, 4: 170, 2: 225, 1: 265,
			0: 305, -1: 355, -2: 410, -3: 475},
		Parallel: 3,
		Fuses: []float64{1, 2, 3, 5, 7.5, 10, 15, 20, 25, 30, 40, 50, 60, 70, 80, 100, 125, 150, 175, 200, 225, 250,
			300, 350, 400, 500},
	}
}

// Conductor is one run of the circuit schedule.
type Conductor struct {
	Number   string // marked with the function every 4 in
	Function string
	Option   string // id
	Amps     quantity.Current
	RunFt    float64 // one way
	Critical bool
	FuseA    float64
	Gauge    string  // of each conductor; empty when no size of the table serves
	Parallel int     // conductors side by side, of one length and one size; 1 mostly
	Table    string  // the area table it was sized by
	CarryA   float64 // that its conductors may carry together
	NeedCM   float64
	DropV    float64 // by area and K, the sizing law
	DropPct  float64 // of nominal
	LimitPct float64
	HotV     float64 // the same run at 75 C
	Decided  string  // "voltage drop" or "ampacity": what asked for the size
}

// Fuse is the rating of its fuse for a schedule, in amps: "7.5".
func (c *Conductor) Fuse() string { return strconv.FormatFloat(c.FuseA, 'f', -1, 64) }

// Wire is the conductor for a schedule: "8", or "2 x 1/0" of two side by side; empty
// when none fits.
func (c *Conductor) Wire() string {
	if c.Parallel > 1 {
		return fmt.Sprintf("%d x %s", c.Parallel, c.Gauge)
	}
	return c.Gauge
}

// NextFuse is the smallest standard size that is not below amps; false when
// the list ends before.
//
// Source: 125 % of the continuous load, taken up to the next standard size
// (tensofuse.com; ukmotorfactors.co.uk). Units: A. Valid: sizes rising, a current
// from 0 up; false for any other. Example: 62.5 A among 60, 80, 100: 80 A.
func NextFuse(sizes []float64, amps float64) (float64, bool) {
	i, _ := slices.BinarySearch(sizes, amps)
	if i == len(sizes) || !(amps >= 0) || !finite(sizes[i]) {
		return 0, false
	}
	return sizes[i], true
}

// Size is the thinnest conductor of the table whose area keeps the drop and
// whose ampacity is at least carry; decided says which of the two asked for
// it. False when no size of the table serves.
//
// Source: area by AreaFor; ampacity as given. Units: circular mils, A. Valid:
// any area and current from 0 up. Example: AWG, 14,931 CM alone: 8; with 100 A
// to carry and 90 A allowed in 8: 6, decided by ampacity.
func (w *Wiring) Size(needCM, carry float64) (g Gauge, decided string, ok bool) {
	if !(needCM >= 0 && carry >= 0) || !finite(needCM) || !finite(carry) {
		return 0, "", false
	}
	byDrop := ""
	for _, a := range w.Areas.Rows {
		if a.CircMil < needCM {
			continue
		}
		if byDrop == "" {
			byDrop = "voltage drop"
		}
		if w.Ampacity[a.Gauge] >= carry {
			return a.Gauge, byDrop, true
		}
		byDrop = "ampacity"
	}
	return 0, "", false
}

// SizeParallel is Size where a single conductor does not serve: two or more alike, of
// 1/0 or larger, share current and area evenly. It gives the fewest that serve.
//
// Source: conductors in parallel of 1/0 and larger, of one length, size and
// termination (NEC 310.10, from memory). Units: circular mils, A. Valid: as Size; up to
// w.Parallel conductors. Example: 500 A to carry and 475 A allowed in the largest: two
// of 1/0.
func (w *Wiring) SizeParallel(needCM, carry float64) (g Gauge, n int, decided string, ok bool) {
	if g, decided, ok = w.Size(needCM, carry); ok {
		return g, 1, decided, true
	}
	heavy := *w
	heavy.Areas.Rows = slices.DeleteFunc(slices.Clone(w.Areas.Rows), func(a Area) bool { return a.Gauge > 0 })
	for n = 2; n <= w.Parallel && n <= 9; n++ {
		if g, decided, ok = heavy.Size(needCM/float64(n), carry/float64(n)); ok {
			return g, n, decided, true
		}
	}
	return 0, 0, "", false
}

// Circuits makes the schedule of a unit, in order of wire number. A number
// belongs to its circuit for the whole edition of the catalogue, whatever else
// a unit holds: 101 is the catalogue's first circuit. Several runs of one option are
// told apart by a suffix, 101-1, 101-2.
func Circuits(cat *config.Catalogue, u *config.Unit, w Wiring) ([]Conductor, []config.Finding) {
	b := gather(cat, u, nil, new(config.Report))
	if b == nil {
		return nil, nil
	}
	return b.schedule(w)
}

const firstNumber = 101

func (b *vehicle) schedule(w Wiring) ([]Conductor, []config.Finding) {
	wired := slices.DeleteFunc(slices.Clone(b.Picks), func(p config.Picked) bool { return p.Circuit == nil })
	number := make(map[string]int, len(wired))
	for _, p := range wired {
		number[p.ID] = 0
	}
	next := firstNumber
	for i := range b.Cat.Options {
		o := &b.Cat.Options[i]
		if o.Circuit == nil {
			continue
		}
		if _, here := number[o.ID]; here {
			number[o.ID] = next
		}
		next++
	}
	slices.SortStableFunc(wired, func(p, q config.Picked) int { return cmp.Compare(number[p.ID], number[q.ID]) })
	var out []Conductor
	var findings []config.Finding
	for _, p := range wired {
		run, finding := w.run(p)
		if finding != nil {
			findings = append(findings, *finding)
		}
		runs := min(p.Qty, 99) * min(max(p.Circuit.Count, 1), 9)
		for i := range runs {
			run.Number = fmt.Sprint(number[p.ID])
			if runs > 1 {
				run.Number += fmt.Sprintf("-%d", i+1)
			}
			out = append(out, run)
		}
	}
	return out, findings
}

// run sizes one circuit: the fuse at 125 % of the load, the wire at 125 % of
// the fuse and thick enough for the drop.
func (w *Wiring) run(p config.Picked) (Conductor, *config.Finding) {
	c := Conductor{Function: p.Circuit.Function, Option: p.ID, Amps: config.Clean(p.Circuit.Amps),
		RunFt: config.Clean(p.Circuit.RunFt), Critical: p.Circuit.Critical,
		Table: w.Areas.Name, LimitPct: w.DropPct}
	if c.Critical {
		c.LimitPct = w.CriticalPct
	}
	warn := func(code, text, remedy string) (Conductor, *config.Finding) {
		return c, &config.Finding{Code: code, Severity: config.Warn, Where: "Power", Text: p.Label + ": " + text,
			Basis: config.FromMemory, Remedy: remedy, Picks: []string{p.ID}}
	}
	if c.Amps <= 0 || c.RunFt <= 0 {
		return warn("power.circuit-unsized", "the circuit states no current or no length, so it is not sized.",
			"State amps and run_ft in the catalogue.")
	}
	amps, trip := float64(c.Amps), 2*c.RunFt
	fuse, ok := NextFuse(w.Fuses, Margin125*amps)
	if !ok {
		return warn("power.no-fuse", fmt.Sprintf("no standard fuse carries %.1f A.", Margin125*amps),
			"Divide the circuit in two.")
	}
	c.FuseA = fuse
	need, err := AreaFor(amps, trip, w.Volts*c.LimitPct/100)
	if err != nil {
		return warn("power.circuit-unsized", err.Error()+".", "Correct the wiring defaults.")
	}
	c.NeedCM = need
	g, n, decided, ok := w.SizeParallel(need, Margin125*fuse)
	if !ok {
		return warn("power.no-conductor", fmt.Sprintf("no size of %s carries %.0f A over %.0f ft.", w.Areas.Name,
			Margin125*fuse, c.RunFt), "Divide the circuit in two, or shorten it.")
	}
	c.CarryA = float64(n) * w.Ampacity[g]
	area, _ := w.Areas.Area(g)
	c.Gauge, c.Parallel, c.Decided = g.String(), n, decided
	each := amps / float64(n)
	c.DropV = DropByArea(each, trip, area.CircMil)
	c.DropPct = 100 * c.DropV / w.Volts
	c.HotV, _ = DropHot(each, trip, g, w.Areas)
	return c, nil
}
