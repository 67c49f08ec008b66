package page

import (
	"boxwright/config"
	"boxwright/pricing"
	. "boxwright/web/page/markup"
)

// Rows keeps rows as they were drawn: a press changes few of them. The zero value
// has none.
type Rows struct {
	cat  *config.Catalogue
	book *pricing.Book
	rows map[any]Part
}

// mostRows bounds the memory that kept rows take.
const mostRows = 2000

// Row is the row under a key, which names all that it hangs on beside catalogue
// and price book.
func (r *Rows) Row(cat *config.Catalogue, book *pricing.Book, key any, draw func() Part) Part {
	if r.cat != cat || r.book != book || len(r.rows) == mostRows {
		r.cat, r.book, r.rows = cat, book, map[any]Part{}
	}
	row := r.rows[key]
	if row == nil {
		row = Written(draw())
		r.rows[key] = row
	}
	return row
}
