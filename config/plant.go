package config

import "boxwright/config/quantity"

// Plant is the network of stations a unit passes through, and its calendar.
type Plant struct {
	Activities  []Activity     `json:"activities"`
	HoursPerDay float64        `json:"hours_per_day"` // of one shift
	Shutdowns   []Shutdown     `json:"shutdowns"`     // dated closures beside the holidays
	Slots       []Slot         `json:"slots"`         // limited starts of the framing line
	Stations    []PlantStation `json:"stations"`
	// Workdays are the days of the week that are worked, of Weekdays; Monday to Friday when
	// left out.
	Workdays []string `json:"workdays,omitempty"`
	// Holidays are the federal ones that the plant keeps, of FederalHolidays; all of them when
	// left out. What else it keeps stands among the shutdowns.
	Holidays []string `json:"holidays,omitempty"`
	// Factors are the plant's own values of what is assumed otherwise, as it has measured them.
	Factors []Assumed `json:"factors,omitempty"`
}

// Weekdays are the words for them, in the order of time.Weekday.
var Weekdays = []string{"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"}

// FederalHolidays are the words for them, see package leadtime, and NoHoliday, for a
// plant that keeps none.
var FederalHolidays = []string{"New Year's Day", "Martin Luther King Jr. Day", "Presidents' Day", "Memorial Day",
	"Juneteenth", "Independence Day", "Labor Day", "Columbus Day", "Veterans Day", "Thanksgiving Day",
	"Christmas Day", NoHoliday}

// NoHoliday alone says that every federal holiday is worked.
const NoHoliday = "none"

// PlantStation is a place in the plant with a number of bays and crews.
type PlantStation struct {
	ID     string  `json:"id"`
	Label  string  `json:"label"`
	Bays   int     `json:"bays"`
	Shifts float64 `json:"shifts"` // shifts worked a day, 1 or 2
	Crew   float64 `json:"crew"`   // persons working on one unit at once; hours divide by it
}

// Activity is a step of the network. Its base duration is in working days;
// option work at its station adds hours to it. A link in After to a step that
// this kind of body skips falls away.
type Activity struct {
	ID      string   `json:"id"`
	Label   string   `json:"label"`
	Station string   `json:"station,omitempty"` // empty for waiting, such as paint cure
	After   []string `json:"after"`             // activities that must be finished
	Days    Span     `json:"days"`
	Source  string   `json:"source,omitempty"` // one of the Source constants; empty for plain work
	// "module" or "van": kind of body that has this step; "new" or "existing": modules of that kind
	// alone
	Only string `json:"only,omitempty"`
}

// For reports whether a body goes through the step.
func (a *Activity) For(b *Body) bool {
	switch a.Only {
	case "new":
		return b.Kind == "module" && !b.Existing
	case "existing":
		return b.Existing
	}
	return a.Only == "" || a.Only == b.Kind
}

// What else decides when an activity can start, see Activity.Source.
const (
	SourceChassis = "chassis" // the chassis' arrival span replaces Days
	// Days is for ordinary parts; long-lead parts are ordered at the same time, and the last to
	// arrive decides
	SourceParts = "parts"
	// Days is how long a new order waits for the work ahead of it; no such step where that is 0
	SourceBacklog = "backlog"
	SourceSlot    = "slot" // the framing line's first step: it starts only in one of the plant's open slots
)

// Span is a three-point duration in working days: optimistic, most likely,
// pessimistic; 0 <= Low <= Likely <= High.
type Span struct {
	Low    float64 `json:"low"`
	Likely float64 `json:"likely"`
	High   float64 `json:"high"`
}

// Work is labor that a choice adds (or saves, when negative) at a station.
type Work struct {
	Station string         `json:"station"`
	Hours   quantity.Hours `json:"hours"`
}

// Shutdown closes the plant from First to Last, both included.
type Shutdown struct {
	First Date   `json:"first"`
	Last  Date   `json:"last"`
	Label string `json:"label"`
}

// Slot is a start date on the framing line and how many units it still takes.
type Slot struct {
	Start Date `json:"start"`
	Open  int  `json:"open"`
}
