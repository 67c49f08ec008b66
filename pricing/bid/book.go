package bid

import (
	"encoding/json"
	"errors"
	"slices"
	"strings"

	"boxwright/config/letters"
	"boxwright/pricing/bid/claims"
	"boxwright/pricing/bid/terms"
	"boxwright/pricing/quote"
)

// Book is what a seller keeps for the next list, on this device: standing answers to
// terms of the bid, and what was corrected in the lists of each purchaser.
type Book struct {
	Standing map[string]Own `json:"standing,omitempty"` // by term
	Lists    []Corrected    `json:"lists,omitempty"`    // the purchaser answered last first
}

// Own is what a person made of a line.
type Own struct {
	Pick    string        `json:"pick,omitempty"`
	Verdict quote.Outcome `json:"verdict,omitempty"`
	Answer  string        `json:"answer,omitempty"`
	Meant   string        `json:"meant,omitempty"`
	Asks    bool          `json:"asks,omitempty"` // looked like a heading and is a requirement
}

// Corrected are the lines of one purchaser, by how they are written.
type Corrected struct {
	Buyer string         `json:"buyer"`
	Lines map[string]Own `json:"lines"`
}

// Bounds of a book.
const (
	mostBuyers    = 30
	mostCorrected = 400
	mostBook      = 200 << 10 // bytes
)

// ReadBook reads a book. One that does not read is begun anew: it holds habits, no
// quote.
func ReadBook(text string) *Book {
	b := new(Book)
	if len(text) > 2*mostBook || json.Unmarshal([]byte(text), b) != nil {
		return new(Book)
	}
	return b
}

// Text is the book as it is kept. Purchasers of long ago go when it is too large.
func (b *Book) Text() string {
	for {
		data, err := json.Marshal(b)
		if err != nil {
			return ""
		}
		if len(data) <= mostBook || len(b.Lists) == 0 {
			return string(data)
		}
		b.Lists = b.Lists[:len(b.Lists)-1]
	}
}

// buyerKey names a purchaser however the name is spaced or capitalized.
func buyerKey(name string) string { return strings.ToLower(strings.Join(strings.Fields(name), " ")) }

// Learn keeps what a person made of a line for the purchaser's next list; nothing, when
// it is as the program has it.
func (b *Book) Learn(buyer string, r quote.Requirement, asks bool) {
	buyer = buyerKey(buyer)
	i := slices.IndexFunc(b.Lists, func(c Corrected) bool { return c.Buyer == buyer })
	c := Corrected{Buyer: buyer, Lines: map[string]Own{}}
	if i >= 0 {
		c = b.Lists[i]
		b.Lists = slices.Delete(b.Lists, i, i+1)
	}
	if c.Lines == nil {
		c.Lines = map[string]Own{}
	}
	key := claims.Key(r.Text)
	own := Own{r.Pick, r.Verdict, r.Answer, r.Meant, asks || c.Lines[key].Asks}
	if own == (Own{}) {
		delete(c.Lines, key)
	} else if _, known := c.Lines[key]; known || len(c.Lines) < mostCorrected {
		c.Lines[key] = own
	}
	b.Lists = slices.Insert(b.Lists, 0, c)
	b.Lists = b.Lists[:min(len(b.Lists), mostBuyers)]
}

// Stand makes an answer the standing one to a term; an empty one takes it back. The
// error is in words.
func (b *Book) Stand(term string, own Own) error {
	if len(own.Answer) > quote.MaxText {
		return errors.New(letters.TooLong(own.Answer, quote.MaxText))
	}
	if !terms.Known(term) || !slices.Contains([]quote.Outcome{quote.Unanswered, quote.Meets, quote.Excepted,
		quote.Clarify}, own.Verdict) {
		return errors.New("there is no such term, or no such answer")
	}
	own.Pick, own.Meant, own.Asks = "", "", false
	if b.Standing == nil {
		b.Standing = map[string]Own{}
	}
	if own == (Own{}) {
		delete(b.Standing, term)
	} else {
		b.Standing[term] = own
	}
	return nil
}

// Merge takes in what another book has and this one does not.
func (b *Book) Merge(other *Book) {
	for term, own := range other.Standing {
		if _, here := b.Standing[term]; !here {
			_ = b.Stand(term, own) // what is no answer to a known term is left
		}
	}
	for _, c := range other.Lists {
		i := slices.IndexFunc(b.Lists, func(d Corrected) bool { return d.Buyer == c.Buyer })
		if i < 0 {
			b.Lists = append(b.Lists, c)
			continue
		}
		for key, own := range c.Lines {
			if _, here := b.Lists[i].Lines[key]; !here && len(b.Lists[i].Lines) < mostCorrected {
				if b.Lists[i].Lines == nil {
					b.Lists[i].Lines = map[string]Own{}
				}
				b.Lists[i].Lines[key] = own
			}
		}
	}
	b.Lists = b.Lists[:min(len(b.Lists), mostBuyers)]
}

// Apply answers the lines of a list as they were answered before: those that the same
// purchaser wrote, and lines that are plainly a term of the bid and ask for nothing else.
// It says how many of each.
func (b *Book) Apply(ed *quote.Edition, list []quote.Requirement, buyer string) (corrected, standing int) {
	v := vocabularyOf(ed)
	i := slices.IndexFunc(b.Lists, func(c Corrected) bool { return c.Buyer == buyerKey(buyer) })
	for k := range list {
		r := &list[k]
		if i >= 0 {
			if own, known := b.Lists[i].Lines[claims.Key(r.Text)]; known {
				r.Pick, r.Verdict, r.Answer, r.Meant = own.Pick, own.Verdict, own.Answer, own.Meant
				r.Head = r.Head && !own.Asks
				corrected++
				continue
			}
		}
		if r.Head || r.Verdict != "" {
			continue
		}
		term, sure := terms.Of(r.Text)
		if own, known := b.Standing[term]; known && sure && len(v.readLine(r.Text).claims) == 0 {
			r.Verdict, r.Answer = own.Verdict, own.Answer
			standing++
		}
	}
	return corrected, standing
}
