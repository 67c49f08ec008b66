package bid

import (
	"fmt"
	"strings"

	"boxwright/pricing/bid/intake"
	"boxwright/pricing/quote"
)

// ReadRequirements takes a purchaser's list apart. What said tells of how it was
// taken: which columns, how many headings, what was left out. The error is in words.
func ReadRequirements(text string) (list []quote.Requirement, said string, err error) {
	from, err := intake.Read(text)
	if err != nil {
		return nil, "", err
	}
	heads := 0
	for _, l := range from.Lines {
		if len(l.Text) > quote.MaxRequirementText {
			return nil, "", fmt.Errorf("the line %q … has %d bytes; the most that is read is %d. Part it into "+
				"several lines",
				strings.ToValidUTF8(l.Text[:60], ""), len(l.Text), quote.MaxRequirementText)
		}
		if l.Head {
			heads++
		}
		if len(l.No) > quote.MaxNo { // no number: a text that stood where numbers stand
			l.No, l.Text = "", l.No+" "+l.Text
		}
		list = append(list, quote.Requirement{No: l.No, Text: l.Text, Head: l.Head, Row: l.Row})
	}
	if len(list) > quote.MaxRequirements {
		return nil, "", fmt.Errorf("the list has %d lines; the most that is answered is %d", len(list),
			quote.MaxRequirements)
	}
	said = count(len(list)-heads, "line", "lines")
	if heads > 0 {
		said += " and " + count(heads, "heading", "headings")
	}
	if from.Columns != "" {
		said += ", " + from.Columns
	}
	if from.Left > 0 {
		said += "; " + count(from.Left, "page number or form line", "page numbers and form lines") + " left out"
	}
	return list, said, nil
}

// count words a number of things.
func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprint(n) + " " + many
}

// Tally counts the answers of each kind.
func Tally(list []Answer) string {
	var said []string
	for _, o := range []struct {
		outcome   quote.Outcome
		one, many string
	}{{quote.Meets, "comply", "comply"}, {quote.MeetsWith, "comply with additions", "comply with additions"},
		{quote.Excepted, "exception", "exceptions"}, {quote.Clarify, "clarification", "clarifications"},
		{quote.Unanswered, "not answered yet", "not answered yet"}} {
		n := 0
		for _, a := range list {
			if a.Outcome == o.outcome && !a.Head {
				n++
			}
		}
		if n > 0 || o.outcome == quote.Meets {
			said = append(said, count(n, o.one, o.many))
		}
	}
	return strings.Join(said, ", ")
}

// Open counts the lines that are not answered yet.
func Open(list []Answer) int {
	n := 0
	for _, a := range list {
		if !a.Head && a.Outcome == quote.Unanswered {
			n++
		}
	}
	return n
}

// OpenNumbers are the numbers of the lines that are not answered yet.
func OpenNumbers(list []Answer) []string {
	var out []string
	for i := range list {
		if a := &list[i]; !a.Head && a.Outcome == quote.Unanswered {
			out = append(out, a.NoOf())
		}
	}
	return out
}

// Lines counts the lines that ask for something.
func Lines(list []Answer) int {
	n := 0
	for _, a := range list {
		if !a.Head {
			n++
		}
	}
	return n
}
