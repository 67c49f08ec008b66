package weight

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
)

// judge turns figures that miss their limit, or may miss it, into findings.
func (l *loader) judge(s *Sheet) {
	for _, m := range l.measures() {
		if f, ok := s.Figure(m.code); ok {
			l.judgeFigure(&m, f, s)
		}
	}
	l.judgeTires(s)
	l.judgeRatings(s)
	l.judgeRoad(s)
	l.judgeWheels(s)
	l.judgeShell(s)
	l.judgeTrays(s)
	l.judgeOccupants()
}

func (l *loader) judgeFigure(m *measure, f config.Figure, s *Sheet) {
	if f.Sense == "" || f.Noted && f.Met() || l.coveredByAxle(f) {
		return
	}
	word, missed := "over", "over"
	if f.Sense == config.AtLeast {
		word, missed = "short", "short of"
	}
	by := math.Abs(f.Margin())
	finding := config.Finding{Where: m.label, Figure: &f, Basis: f.Basis}
	switch {
	case !f.Met():
		finding.Code, finding.Severity = m.code+"."+word, config.Warn
		if firm(f.Basis) {
			finding.Severity = config.Stop
		}
		source := f.Basis.Known(f.Source)
		finding.Text = fmt.Sprintf("%s is %s, %s %s the limit of %s (%s).", f.Label, show(f.Value, f.Unit),
			show(by, f.Unit), missed, show(f.Limit, f.Unit), source)
		if f.Chance < 0.995 {
			finding.Text += fmt.Sprintf(" Given how well the weights are known, the chance of missing it is %s.",
				percent(f.Chance))
		}
	case f.Sense == config.AtMost && f.High > f.Limit, f.Sense == config.AtLeast && f.Low < f.Limit:
		finding.Code, finding.Severity = m.code+".near", config.Warn
		kept := "below"
		if f.Sense == config.AtLeast {
			kept = "above"
		}
		finding.Text = fmt.Sprintf("%s: %s, %s %s the limit of %s. Its likely range is %s to %s: the chance of missing "+
			"the limit is %s.", f.Label, show(f.Value, f.Unit), show(by, f.Unit), kept, show(f.Limit, f.Unit),
			show(f.Low, f.Unit), show(f.High, f.Unit), percent(f.Chance))
	default:
		return
	}
	if f.Noted || f.Basis == config.FromMemory { // nobody read the limit
		finding.Severity = config.Note
	}
	finding.Remedy, finding.Picks = l.remedy(m, f, s)
	l.findings = append(l.findings, finding)
}

// coveredByAxle spares the reader a second finding where the tires carry more
// than the axle's own rating.
func (l *loader) coveredByAxle(f config.Figure) bool {
	switch f.Code {
	case "weight.front-tires":
		return l.ch.GAWRFrontLb > 0 && f.Limit >= float64(l.ch.GAWRFrontLb)
	case "weight.rear-tires":
		return l.ch.GAWRRearLb > 0 && f.Limit >= float64(l.ch.GAWRRearLb)
	}
	return false
}

// remedy says in words what would mend the figure, and names the options that
// weigh most on it.
func (l *loader) remedy(m *measure, f config.Figure, s *Sheet) (string, []string) {
	by := -f.Margin()
	take := "Take off at least " + show(by, f.Unit)
	if by <= 0 {
		by = f.High - f.Limit // of the likely range
		if f.Sense == config.AtLeast {
			by = f.Limit - f.Low
		}
		take = "To be sure, take off " + show(by, f.Unit)
	}
	wb := float64(l.ch.WheelbaseIn)
	at := func(x float64) (front, rear float64) { return Reactions(1, x, wb) }
	start, end := float64(l.ch.BodyStartIn), float64(l.ch.BodyStartIn+l.body.LengthIn)
	var says string
	switch m.code {
	case "weight.gross":
		says = take + " by leaving out options or loose equipment, or choose a chassis of higher GVWR."
	case "weight.payload":
		says = take + " of options that count in the curb weight, or choose a chassis of higher GVWR."
		if f.Met() {
			says = fmt.Sprintf("To be sure, leave %s more of options out.", show(by, f.Unit))
		}
	case "weight.front-axle", "weight.front-tires":
		bumper, _ := at(-float64(l.ch.FrontOverhangIn))
		wall, _ := at(start)
		back, _ := at(end)
		says = fmt.Sprintf("%s of the front axle. Each pound at the front bumper puts %.2f lb on it, at the module's "+
			"front wall %s lb, at its rear wall %s lb; 100 lb moved 24 in rearward takes %s off it.", take, bumper,
			quantity.Group(wall, 2), quantity.Group(back, 2), show(Shift(100, 24, wb), quantity.Pound))
	case "weight.rear-axle", "weight.rear-tires":
		_, wall := at(start)
		_, back := at(end)
		says = fmt.Sprintf("%s of the rear axle. Each pound at the module's rear wall puts %.2f lb on it, at its "+
			"front wall %s lb; 100 lb moved 24 in forward takes %s off it.", take, back, quantity.Group(wall, 2),
			show(Shift(100, 24, wb), quantity.Pound))
	case "weight.side":
		heavy, light := "right (curb)", "left (street)"
		if s.Gross.LeftLb > s.Gross.RightLb {
			heavy, light = light, heavy
		}
		track := float64(l.ch.TrackRearIn)
		says = fmt.Sprintf("Move loose equipment or options from the %s to the %s side: 100 lb moved 60 in across "+
			"changes the difference by %s.", heavy, light, show(2*100*60/track, quantity.Pound))
	case "weight.cg-height", "weight.ssf":
		says = "Carry heavy things lower, or leave out what is high up."
	case "weight.front-least":
		says = "Move load forward, or carry less behind the rear axle."
	case "weight.curb":
		says = take + " of options."
	case "weight.curb-front":
		says = take + " of options, those farthest forward first."
	case "weight.curb-rear":
		says = take + " of options, those farthest back first."
	case "weight.front-share":
		says = "Move load along the vehicle: rearward lowers the front share, forward raises it."
	case "weight.rear-share":
		says = "Move load along the vehicle: forward lowers the rear share, rearward raises it."
	case "weight.seats", "weight.patients":
		says = "Choose seating or cot options to suit."
	default:
		says = take + "."
	}
	return says, l.heaviest(m, f, s)
}

// heaviest names the options of the unit that push the figure most towards its
// limit, at most three.
func (l *loader) heaviest(m *measure, f config.Figure, s *Sheet) []string {
	top, bottom := m.sums(s.Items)
	push := m.gradient(top, bottom)
	sign := 1.0
	if f.Sense == config.AtLeast {
		sign = -1
	}
	if m.magnitude && s.Gross.LeftLb > s.Gross.RightLb {
		sign = -sign
	}
	by := map[string]float64{}
	for i := range s.Items {
		if it := &s.Items[i]; it.Option != "" {
			by[it.Option] += sign * push(it) * float64(it.Lb)
		}
	}
	var ids []string
	for id, v := range by {
		if v > 0 {
			ids = append(ids, id)
		}
	}
	slices.SortFunc(ids, func(a, b string) int { return cmp.Or(cmp.Compare(by[b], by[a]), strings.Compare(a, b)) })
	return ids[:min(len(ids), 3)]
}

func (l *loader) judgeTires(s *Sheet) {
	for _, f := range s.Figures {
		if f.Code != "weight.gawr-tires-front" && f.Code != "weight.gawr-tires-rear" {
			continue
		}
		l.findings = append(l.findings, config.Finding{
			Code: f.Code + ".short", Severity: config.Stop, Where: f.Label, Figure: &f, Basis: f.Basis,
			Text: fmt.Sprintf("The tires of this axle carry %s together, %s short of its rating of %s (49 CFR "+
				"571.120 S5.1.2).", lb(f.Value), lb(-f.Margin()), lb(f.Limit)),
			Remedy: "Fit tires of a higher load range, or rate the axle lower.",
		})
	}
}

// judgeRatings compares the chassis' ratings with each other.
func (l *loader) judgeRatings(s *Sheet) {
	gvwr, axles := float64(l.ch.GVWRLb), float64(l.ch.GAWRFrontLb+l.ch.GAWRRearLb)
	if gvwr > axles && axles > 0 && gvwr < mostLb {
		l.note(config.Warn, "weight.ratings.gvwr", "chassis "+l.ch.Label,
			fmt.Sprintf("Its GVWR of %s is more than its axle ratings together, %s; a GVWR should not exceed them "+
				"(NHTSA letter aiam0613).", lb(gvwr), lb(axles)), "Correct the catalogue.")
	}
}

// judgeRoad holds the load against the weight limits of the Interstate system.
// They bind only unusually heavy units, so they show only then.
func (l *loader) judgeRoad(s *Sheet) {
	over := func(code, label string, v quantity.Mass, limit float64, source string) {
		f := config.Figure{Code: code, Label: label, Unit: quantity.Pound, Value: float64(v), Low: float64(v),
			High: float64(v), Limit: limit, Sense: config.AtMost, Source: source, Basis: config.ReadInText, Chance: 1}
		if f.Met() {
			return
		}
		l.findings = append(l.findings, config.Finding{
			Code: code + ".over", Severity: config.Warn, Where: label, Figure: &f, Basis: f.Basis,
			Text: fmt.Sprintf("%s is %s, over the %s allowed on Interstate highways (%s).", label, lb(f.Value),
				lb(limit), source),
			Remedy: "Carry less, or ask the authority for a permit; emergency vehicles under 23 USC 127(r) are " +
				"defined by fire duty, so do not assume that an ambulance qualifies.",
		})
	}
	over("weight.road-axle", "Front axle, full load", s.Gross.FrontLb, singleAxleLb, "single-axle limit")
	over("weight.road-axle", "Rear axle, full load", s.Gross.RearLb, singleAxleLb, "single-axle limit")
	if b := Bridge(float64(l.ch.WheelbaseIn)/12, 2); b > 0 {
		over("weight.road-gross", "Gross weight, full load", s.Gross.TotalLb, b, "bridge formula, two axles")
	}
}

// judgeWheels looks at each wheel end. How a frame shares a sideways moment
// between the axles is an assumption, so this never stops a unit.
func (l *loader) judgeWheels(s *Sheet) {
	for i, w := range s.Gross.Wheels {
		limit, source := float64(w.RatedLb), "load of the tires there"
		gawr := float64(l.ch.GAWRFrontLb)
		if i >= 2 {
			gawr = float64(l.ch.GAWRRearLb)
		}
		if half := gawr / 2; half > 0 && (limit <= 0 || half < limit) {
			limit, source = half, "half the GAWR"
		}
		axle := float64(w.Lb + s.Gross.Wheels[i^1].Lb)
		if limit <= 0 || math.Round(float64(w.Lb)-limit) <= 0 || axle > 2*limit {
			continue // kept to the pound, or the whole axle is over and says so
		}
		doubt := float64(s.WheelDoubt()[i])
		f := config.Figure{Code: "weight.wheel", Label: wheelEnds[i] + " wheel end, full load", Unit: quantity.Pound,
			Value: float64(w.Lb), Low: float64(w.Lb) - doubt, High: float64(w.Lb) + doubt, Limit: limit,
			Sense: config.AtMost, Source: source, Basis: config.CommonPractice}
		l.findings = append(l.findings, config.Finding{
			Code: "weight.wheel.over", Severity: config.Warn, Where: f.Label, Figure: &f, Basis: f.Basis,
			Text: fmt.Sprintf("It carries %s, %s over %s of %s.", lb(f.Value), lb(-f.Margin()), source, lb(limit)),
			Remedy: fmt.Sprintf("Move load to the other side: 100 lb over this axle moved 60 in across takes %s off "+
				"this wheel end.", lb(100*60/float64(l.ch.TrackRearIn))),
		})
	}
}

// wheelEnds in the order of Condition.Wheels.
var wheelEnds = [4]string{"Left front", "Right front", "Left rear", "Right rear"}

// judgeShell tells when construction options act on each other: each is
// weighed by its change of the module as it comes, so that limits stay sums.
func (l *loader) judgeShell(s *Sheet) {
	if s.TakeOff == nil {
		return
	}
	counted := 0.0
	for _, it := range s.Items {
		if it.shell {
			counted += float64(it.Lb)
		}
	}
	if d := float64(s.TakeOff.Lb) - counted; math.Abs(d) > 1 && s.Correction == nil {
		l.note(config.Note, "weight.shell.together", "module shell",
			fmt.Sprintf("The construction options act on each other: the cut list's module weighs %s more than the "+
				"sum counted here.", lb(d)), "Nothing to do when this is small beside the shell's own tolerance.")
	}
}

// judgeTrays warns of trays and drawers that would carry more than the unit may.
func (l *loader) judgeTrays(s *Sheet) {
	list := l.cat.CompartmentsOf(l.u)
	trays := map[string]bool{}
	var rated, carried quantity.Mass
	l.cat.Pieces(l.u, list, func(at int, o *config.Option) {
		if at >= 0 && o.Fitted.RatedLb > 0 {
			rated += config.Clean(o.Fitted.RatedLb)
			trays[list[at].ID] = true
		}
	})
	for _, c := range l.u.Carried {
		if e := l.cat.EquipmentOf(l.u, c.Equipment); e != nil && trays[c.Compartment] {
			carried += config.Clean(e.MassLb) * quantity.Mass(min(max(c.Qty, 0), 999))
		}
	}
	gross, known := s.Figure("weight.gross")
	if left := gross.Margin(); known && left > 0 && float64(rated-carried) > left {
		l.note(config.Note, "weight.trays", "trays and drawers",
			fmt.Sprintf("They are rated %s together and carry %s here, but only %s of payload remain.",
				lb(float64(rated)), lb(float64(carried)), lb(left)),
			"Load them no further than the remaining payload and both axles allow, and weigh the unit loaded.")
	}
}

// judgeOccupants warns of a person lighter than certification counts.
func (l *loader) judgeOccupants() {
	if l.occupantLb < 150 {
		l.note(config.Warn, "weight.occupant.light", "people",
			fmt.Sprintf("People count %s each here; the certified GVWR must allow 150 lb for each designated seating "+
				"position (49 CFR 567.4(g)(3)).", lb(l.occupantLb)), "Count at least 150 lb.")
	}
}

// show writes a number for a sentence; a few pounds keep their tenths, so that
// nothing is said to be over by 0 lb.
func show(v float64, unit string) string {
	if unit == quantity.Pound && math.Abs(v) < 10 {
		if v > 0 && v < 0.05 {
			return "under 0.1 lb"
		}
		return quantity.Group(v, 1) + " lb"
	}
	return quantity.US.Show(v, unit)
}

// percent writes a chance for a sentence, never as certain when it is not.
func percent(chance float64) string {
	switch {
	case chance > 0 && chance < 0.001:
		return "under 0.1 %"
	case chance > 0.999 && chance < 1:
		return "over 99.9 %"
	case chance > 0.01 && chance < 0.99:
		return quantity.Chance(chance)
	}
	return fmt.Sprintf("%.1f %%", 100*chance)
}
