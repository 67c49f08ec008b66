package bid

import (
	"fmt"

	"boxwright/config"
	"boxwright/pricing/quote"
)

// Dates is the day that nine in ten such units are delivered by when a line is complied
// with as it says, for each line by its place; the zero date for those that add nothing.
func Dates(q *quote.Quote, list []Answer) []config.Date {
	out := make([]config.Date, len(list))
	known := map[string]config.Date{}
	for i := range list {
		a := &list[i]
		if a.Outcome != quote.MeetsWith || len(a.Takes) == 0 {
			continue
		}
		key := fmt.Sprint(a.Takes)
		day, done := known[key]
		if !done {
			if len(known)%mostFresh == mostFresh-1 {
				q.Edition.Rules.Pauses().Rest()
			}
			day = dateWith(q, a.Takes)
			known[key] = day
		}
		out[i] = day
	}
	return out
}

// dateWith is the day of delivery when things are put into the unit, each in the place
// of its rivals.
func dateWith(q *quote.Quote, takes []Take) config.Date {
	cat := q.Edition.Cat
	u := q.Draft.Unit.Clone()
	for _, t := range takes {
		o := cat.OptionByID(t.ID)
		if o == nil {
			return config.Date{} // another chassis or body is another plan
		}
		if cat.GroupByID(o.Group).Choose != config.ChooseAny {
			for _, m := range cat.Members(o.Group) {
				u.Drop(cat.Options[m].ID)
			}
		}
		u.Set(config.Pick{Option: o.ID, Qty: max(t.Qty, 1)})
	}
	day, err := q.Plan.NineInTenOf(&u)
	if err != nil {
		return config.Date{}
	}
	return day
}

// Dated is a list with the dates of its lines.
func Dated(list []Answer, dates []config.Date) []Answer {
	out := make([]Answer, len(list))
	copy(out, list)
	for i := range min(len(out), len(dates)) {
		out[i].By = dates[i]
	}
	return out
}

// DateWords says what complying with a line does to the delivery; empty where that was
// not worked out.
func (a *Answer) DateWords(q *quote.Quote) string {
	switch was := q.Plan.NineInTen; {
	case a.By.IsZero():
		return ""
	case a.By == was:
		return "Delivery date unchanged."
	default:
		return "Delivery " + a.By.Long() + " in place of " + was.Long() + "."
	}
}
