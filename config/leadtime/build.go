package leadtime

import (
	"fmt"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
)

// Added is plant work that a choice puts on a step, or saves when negative.
type Added struct {
	ID    string         `json:"id"` // option, chassis or body
	Label string         `json:"label"`
	Hours quantity.Hours `json:"hours"`
	Days  float64        `json:"days"`
}

// job is the network of one unit in its plant, and where each activity of it
// comes from.
type job struct {
	cat   *config.Catalogue
	unit  *config.Unit
	line  *line
	slots []config.Slot // still to be had
	net   Network
	steps []Step // beside net.Activities
	notes []config.Finding
	// assume holds the factors that the plant or the unit sets.
	assume config.Assumptions

	gated   int       // position of the activity that waits for a slot, -1 for none
	slotted []slotted // ascending
}

// newJob makes the unit's network with the slots still to be had. What it
// cannot place becomes a note; what leaves no plan at all is the error, a
// config.Problems.
func newJob(cat *config.Catalogue, u *config.Unit, slots []config.Slot) (*job, error) {
	if u == nil {
		return nil, config.Problems{{Code: "time.nothing", Where: "the plan", Text: "needs a unit"}}
	}
	if y := u.OrderOn.Year; y < 1900 || y > 2190 {
		return nil, config.Problems{{Code: "time.no-order-date", Where: "order date",
			Text: "give the day the order is placed, such as 2026-11-25"}}
	}
	j := &job{cat: cat, unit: u, line: newLine(NewCalendar(&cat.Plant), u.OrderOn), slots: slots}
	j.assume.Set(cat.Plant.Factors, u.Factors)
	return j, j.build()
}

// with is the job of another unit ordered on the same day, which waits for the
// same bays.
func (j *job) with(u *config.Unit) (*job, error) {
	other := &job{cat: j.cat, unit: u, line: j.line, slots: j.slots, assume: j.assume}
	if !slices.Equal(u.Factors, j.unit.Factors) {
		other.assume = config.Assumptions{}
		other.assume.Set(j.cat.Plant.Factors, u.Factors)
	}
	err := other.build()
	for i := range other.net.Activities {
		a := &other.net.Activities[i]
		if k := slices.IndexFunc(j.net.Activities, func(b Activity) bool { return b.ID == a.ID }); k >= 0 {
			a.NotBefore = j.net.Activities[k].NotBefore
		}
	}
	return other, err
}

func (j *job) build() error {
	cat, u := j.cat, j.unit
	chassis, body := cat.ChassisByID(u.Chassis), cat.BodyOf(u)
	var ps config.Problems
	if chassis == nil {
		ps = append(ps, config.Problem{Code: "time.unknown-chassis", Where: "chassis",
			Text: fmt.Sprintf("%q is not in this edition; choose one of its %d chassis", u.Chassis, len(cat.Chassis))})
	}
	if body == nil {
		ps = append(ps, config.Problem{Code: "time.unknown-body", Where: "body",
			Text: fmt.Sprintf("%q is not in this edition; choose one of its %d bodies", u.Body, len(cat.Bodies))})
	}
	if len(cat.Plant.Activities) == 0 {
		ps = append(ps, config.Problem{Code: "time.no-network", Where: "plant.activities",
			Text: "there are none; a catalogue without a plant network gives no dates"})
	}
	if len(ps) > 0 {
		return ps
	}
	j.gated = -1
	j.place(chassis, body)
	if err := j.work(chassis, body); err != nil {
		return err
	}
	j.hold()
	return nil
}

// place lays out the steps that this kind of body has. A link to a step that it
// skips falls away; where no link is left, what the skipped steps come after
// stands in, so that nothing starts before its turn.
func (j *job) place(chassis *config.Chassis, body *config.Body) {
	acts := j.cat.Plant.Activities
	hands := map[string][]string{} // id to what stands for it in an After list
	skipped := map[string]bool{}
	feeds := map[string][]string{} // id to the parts that it waits for by name
	partsStep, queued := false, false
	j.steps = make([]Step, 0, len(acts)+len(j.unit.Picks)/4)
	j.net.Activities = make([]Activity, 0, cap(j.steps))
	for i := range acts {
		a := &acts[i]
		var after, instead []string
		for _, id := range a.After {
			if skipped[id] {
				instead = append(instead, hands[id]...)
			} else if parts, ok := hands[id]; ok {
				after = append(after, parts...)
			} else {
				after = append(after, id)
			}
		}
		if len(after) == 0 {
			after = instead
		}
		after = append(after, feeds[a.ID]...)
		queue := config.Span{}
		if a.Source == config.SourceBacklog {
			queue, queued = j.backlog(a.Days), true
		}
		if !a.For(body) || a.Source == config.SourceBacklog && queue.High == 0 {
			hands[a.ID], skipped[a.ID] = after, true
			continue
		}
		step := Step{ID: a.ID, Label: a.Label, Station: a.Station, Source: a.Source}
		days := a.Days
		switch a.Source {
		case config.SourceBacklog:
			days = queue
		case config.SourceChassis:
			days = scaled(chassis.Arrive, j.assume.Factor(config.ChassisWaitingPct)/100)
		case config.SourceParts:
			partsStep = true
			// The parts run beside the ordinary ones; all must have come before what
			// follows, but those that name the steps which wait for them.
			hands[a.ID] = []string{a.ID}
			for _, p := range j.unit.Picks {
				if o := j.cat.OptionByID(p.Option); o != nil && o.Parts != nil {
					id := a.ID + ":" + o.ID
					j.add(Step{ID: id, Label: a.Label + ": " + o.Label, Source: a.Source, Option: o.ID}, after,
						*o.Parts)
					named := waitsFor(acts, o, body)
					for _, step := range named {
						feeds[step] = append(feeds[step], id)
					}
					if named == nil {
						hands[a.ID] = append(hands[a.ID], id)
					}
				}
			}
		}
		j.add(step, after, days)
	}
	if !queued && j.assume.Factor(config.PlantBacklog) > 0 {
		j.note("time.backlog-unplaced", config.Warn, "work ahead", "The plant's network has no step that waits for the "+
			"work ahead of this order, so that is not in the dates.", "Give one activity of the plant the source "+
			"\"backlog\".", nil)
	}
	if !partsStep {
		var late []string
		for _, p := range j.unit.Picks {
			if o := j.cat.OptionByID(p.Option); o != nil && o.Parts != nil {
				late = append(late, o.ID)
			}
		}
		if len(late) > 0 {
			j.note("time.parts-unplaced", config.Warn, "parts", "The plant's network has no step that waits for "+
				"long-lead parts, so theirs are not in the dates.", "Give one activity of the plant the source "+
				"\"parts\".", late)
		}
	}
}

// backlog is how long the order waits for its place in the plant: as the catalogue has
// it, or where a number is set, that with the same doubt; of a catalogue without one
// three quarters to one and a half of it, common practice, no source.
func (j *job) backlog(s config.Span) config.Span {
	days := j.assume.Factor(config.PlantBacklog)
	switch {
	case days <= 0:
		return s
	case s.Likely > 0:
		return scaled(s, days/s.Likely)
	}
	return scaled(config.Span{Low: 0.75, Likely: 1, High: 1.5}, days)
}

// scaled is a span times as long, up to the longest that is worked with. One that is
// longer by itself stays as it is, and is refused.
func scaled(s config.Span, times float64) config.Span {
	if !(s.High <= maxDays) {
		return s
	}
	at := func(v float64) float64 { return min(v*times, maxDays) }
	return config.Span{Low: at(s.Low), Likely: at(s.Likely), High: at(s.High)}
}

// waitsFor lists the steps of this kind of body that an option names as waiting
// for its part; none where it names no such step.
func waitsFor(acts []config.Activity, o *config.Option, body *config.Body) []string {
	var out []string
	for i := range acts {
		if a := &acts[i]; slices.Contains(o.PartsFor, a.ID) && a.For(body) {
			out = append(out, a.ID)
		}
	}
	return out
}

func (j *job) add(s Step, after []string, days config.Span) {
	s.After = after
	j.steps = append(j.steps, s)
	j.net.Activities = append(j.net.Activities, Activity{ID: s.ID, After: after, Days: days})
}

// work adds the labor of chassis, body and picks. Hours become days by the
// station's crew, shifts and hours; where several steps are done at one
// station they share them in proportion to their likely time.
func (j *job) work(chassis *config.Chassis, body *config.Body) error {
	var ps config.Problems
	var lost []string
	load := func(id, label string, qty int, list []config.Work) {
		problems, unplaced := j.load(id, label, qty, list)
		ps = append(ps, problems...)
		if unplaced {
			lost = append(lost, id)
		}
	}
	load(chassis.ID, chassis.Label, 1, chassis.Work)
	load(body.ID, body.Label, 1, body.Work)
	for _, p := range j.unit.Picks {
		if o := j.cat.OptionByID(p.Option); o != nil {
			load(o.ID, o.Label, max(p.Qty, 0), o.Work)
		}
	}
	if len(ps) > 0 {
		return ps
	}
	if len(lost) > 0 {
		names := make([]string, len(lost))
		for i, id := range lost {
			names[i] = j.cat.LabelOf(id)
		}
		j.note("time.work-unplaced", config.Note, "plant work", "No step of this unit is done at the station of some "+
			"of the work, so that is not in the dates: "+strings.Join(names, "; ")+
			".", "Give the plant a step at that station for this kind of body.", lost)
	}
	return nil
}

// load adds the hours of one choice to the steps at their stations. Unplaced
// says that this unit has no step at one of them.
func (j *job) load(id, label string, qty int, list []config.Work) (ps config.Problems, unplaced bool) {
	for _, w := range list {
		hours := w.Hours * quantity.Hours(qty)
		if hours == 0 {
			continue
		}
		var steps []int
		likely := 0.0
		for i := range j.steps {
			if j.steps[i].Station == w.Station && w.Station != "" {
				steps = append(steps, i)
				likely += j.net.Activities[i].Days.Likely
			}
		}
		if len(steps) == 0 {
			unplaced = true
			continue
		}
		rate := j.hoursPerDay(w.Station)
		if !(rate > 0 && rate <= 24*1e4) {
			ps = append(ps, config.Problem{Code: "time.station", Where: fmt.Sprintf("plant station %q", w.Station),
				Text: fmt.Sprintf("works %v hours a day on a unit; crew, shifts and hours per day must each be "+
					"above zero", rate)})
			continue
		}
		for _, i := range steps {
			share := 1 / float64(len(steps))
			if likely > 0 {
				share = j.net.Activities[i].Days.Likely / likely
			}
			if share == 0 {
				continue
			}
			days := float64(hours) / rate * share
			j.net.Activities[i].Added += days
			j.steps[i].Added = append(j.steps[i].Added, Added{id, label, quantity.Hours(round(float64(hours) * share)),
				round(days)})
		}
	}
	return ps, unplaced
}

// hoursPerDay is the labor a station puts into one unit on a working day.
func (j *job) hoursPerDay(station string) float64 {
	for i := range j.cat.Plant.Stations {
		if s := &j.cat.Plant.Stations[i]; s.ID == station {
			return s.Crew * s.Shifts * j.cat.Plant.HoursPerDay
		}
	}
	return 0
}

// hold closes the framing line outside its published starts. A slot on a day
// that is not worked opens on the next one that is. After the last published
// slot, full or not, the line is assumed free.
func (j *job) hold() {
	for i := range j.steps {
		if j.steps[i].Source == config.SourceSlot {
			j.gated = i
			break
		}
	}
	if len(j.slots) == 0 {
		return
	}
	if j.gated < 0 {
		marked := slices.ContainsFunc(j.cat.Plant.Activities, func(a config.Activity) bool {
			return a.Source == config.SourceSlot
		})
		if !marked {
			j.note("time.slots-unused", config.Warn, "slots", "The plant publishes slots of its framing line, but "+
				"none of its steps is marked as the one that takes them.",
				"Give the first framing step the source \"slot\".", nil)
		}
		return
	}
	for _, s := range j.slots {
		if !s.Start.IsZero() {
			j.slotted = append(j.slotted, slotted{j.line.until(s.Start.AddDays(-1)), s.Open > 0})
		}
	}
	slices.SortStableFunc(j.slotted, func(a, b slotted) int { return a.at - b.at })
	g := j.gate(0)
	if g == nil {
		j.note("time.slots-past", config.Warn, "slots", "Every published slot of the framing line lies before this "+
			"order, so its start is not held to one.", "Ask the plant for its next open slots.", nil)
	}
	j.net.Activities[j.gated].Gate = g
}

// slotted is a slot by the working days that lie before it from the order on.
type slotted struct {
	at   int
	open bool
}

// gate is the framing line's slots as seen by an order placed so many working
// days later, or nil when all lie before it.
func (j *job) gate(later int) *Gate {
	if len(j.slotted) == 0 || j.slotted[len(j.slotted)-1].at < later {
		return nil
	}
	g := &Gate{Free: float64(j.slotted[len(j.slotted)-1].at - later + 1)}
	for _, s := range j.slotted {
		at := float64(s.at - later)
		if s.open && at >= 0 && (len(g.Starts) == 0 || g.Starts[len(g.Starts)-1] < at) {
			g.Starts = append(g.Starts, at)
		}
	}
	return g
}

func (j *job) note(code string, severity config.Severity, where, text, remedy string, picks []string) {
	j.notes = append(j.notes, config.Finding{Code: code, Severity: severity, Where: where, Text: text, Remedy: remedy,
		Picks: picks})
}
