package session

import (
	"strconv"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/bid"
	"boxwright/pricing/quote"
)

// mostPrompt is how many lines of a purchaser's list are answered before the press is
// shown, and mostRead how many of a longer one are read before it is shown how far that
// is.
const (
	mostPrompt = 120
	mostRead   = 500
)

// Answered is the purchaser's list with its answers; nil while they are worked out, and
// then how many lines are read so far. What complying with a line does to the delivery
// comes a little later.
func (w *Worked) Answered(s *Session) (list []bid.Answer, read int) {
	d, seen := w.Quote.Draft, &s.View.List.Read
	if total := len(d.Requirements); total > mostPrompt && *seen < total {
		if s.Resting() {
			*seen = min(*seen+mostRead, total)
			bid.ReadAhead(w.Quote.Edition, d.Requirements[:*seen])
		}
		if *seen < total {
			s.Partial = true
			return nil, *seen
		}
	}
	list, there := w.Answers.For(s, w.listName(s),
		func() []bid.Answer { return bid.Answers(w.Quote, quantity.System(s.View.Metric)) })
	if !there {
		return nil, len(d.Requirements)
	}
	if dates, there := w.Dates.For(s, w.listName(s), func() []config.Date { return bid.Dates(w.Quote, list) }); there {
		list = bid.Dated(list, dates)
	}
	return list, len(d.Requirements)
}

// AnsweredNow is the list with its answers and dates, for what leaves the page.
func (w *Worked) AnsweredNow(s *Session) []bid.Answer {
	list := w.Judged(s)
	return bid.Dated(list, w.Dates.Now(w.listName(s), func() []config.Date { return bid.Dates(w.Quote, list) }))
}

// Judged is the list with its answers, before it is known what each does to the delivery.
func (w *Worked) Judged(s *Session) []bid.Answer {
	return w.Answers.Now(w.listName(s),
		func() []bid.Answer { return bid.Answers(w.Quote, quantity.System(s.View.Metric)) })
}

// Preview is what taking all that can be complied with would do; false while that is
// worked out, nil where nothing can be taken.
func (w *Worked) Preview(s *Session, list []bid.Answer) (*bid.Preview, bool) {
	return w.TakingAll.For(s, w.listName(s), func() *bid.Preview {
		return bid.PreviewAll(w.Quote, list, quantity.System(s.View.Metric))
	})
}

// Shortened are the open ones among the lines that the page shows, without words that were not read. They come after
// the answers, and with the press when a line is corrected.
func (w *Worked) Shortened(s *Session, shown []bid.Answer) []bid.Shortened {
	unit := *w.Quote.Draft
	unit.Requirements = nil
	about := Hashed(unit.Bytes()) + w.listName(s) + s.View.List.Show + strconv.Itoa(s.View.List.From)
	out, _ := w.Shorter.Next(s, about, func() []bid.Shortened {
		return bid.Shorten(w.Quote, shown, quantity.System(s.View.Metric))
	})
	return out
}

// listName names the list as it is answered, without what was corrected in it: a correction is
// answered with the press, since the other lines were judged before. A short list that the page
// shows already is answered again with each press; a long one comes after it when the unit
// changes.
func (w *Worked) listName(s *Session) string {
	d := *w.Quote.Draft
	asked := make([]quote.Requirement, len(d.Requirements))
	for i, r := range d.Requirements {
		asked[i] = quote.Requirement{No: r.No, Text: r.Text}
	}
	if d.Requirements = asked; len(asked) > mostPrompt {
		return Hashed(d.Bytes()) + strconv.FormatBool(s.View.Metric)
	}
	return Hashed([]byte(JSON(asked)), nil) + strconv.FormatBool(s.View.Metric)
}
