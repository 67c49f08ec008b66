// Package compare is the Compare area: quotes and other bids side by side.
package compare

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/letters"
	"boxwright/config/quantity"
	"boxwright/pricing/link"
	"boxwright/pricing/quote"
	"boxwright/pricing/sign"
	"boxwright/web/areas"
	"boxwright/web/drawing"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
	"boxwright/web/session"
)

// Area is the value by which web/app knows the area.
var Area = areas.Area{
	ID:       "compare",
	Name:     "Compare",
	Section:  areas.Offer,
	Gist:     gist,
	Words:    words,
	Load:     load,
	Acts:     acts,
	Fields:   fields,
	Families: families,
}

// Page is what the area is drawn from.
type Page struct {
	*page.Page
	Sights Part // the units from the same side; nil while they are drawn
	View   *session.View
	Others []Other      // what is set beside the unit
	Sent   *link.Frozen // the figures the unit was sent with, where the page computes others
	Link   string       // that the unit came with, where somebody sent it
	Draft  *quote.Draft // of the quote that is read, where the page computes none of its edition
}

func gist(p *page.Page) string {
	return "side by side"
}

func draw(p *Page) Part {
	columns := p.columns()
	lead := "Up to four quotes side by side: see what each change costs."
	if p.Reading {
		lead = "Up to four quotes side by side. Add another by its link, and see why it costs more or comes later."
	}
	return Many(
		page.Heading("Compare", lead),
		El("p", Class("on-paper"), Text("As of "+p.Today.Long()+".")),
		El("div", Class("row-tools screen"),
			If(!p.Reading, page.Action("pin", "", "", "Add to compare", Class("main"), At("id", "pin")))),
		El("div", Class("block screen"), El("div", Class("fields"),
			page.Field(p.Page, "pin-link", "Add a quote by its link", "",
				"Paste the whole link; it is checked before anything is shown")), namesOf(p, columns)),
		reasons(columns),
		comparison(p, columns),
		p.Sights,
		drawings(p, columns),
		differences(p, columns),
		rivals(p),
	)
}

// column is one quote of the comparison.
type column struct {
	q    *quote.Quote // nil where it could not be computed as it was sent
	sent *link.Frozen // the figures it was sent with, where q is nil and they are known
	d    *quote.Draft // nil where it could not be read
	link string       // it came with; empty for a quote that nobody sent
	at   string       // place among those set aside, or ownColumn
	name string       // unlike those of the others
	head Part         // stands under the name
}

const (
	ownColumn = "own"
	mostNamed = 60 // letters name a column
)

// columns are the quote in work and those set aside, the earlier ones first: by the day
// they are dated, and of one day those set aside before the one that was made of them.
// A reader has the quote that they read before those they add.
func (p *Page) columns() []column {
	var set []column
	for _, o := range p.Others {
		n := strconv.Itoa(o.At)
		if o.Sent != nil {
			set = append(set, column{sent: o.Sent, d: o.Draft, link: o.Link, at: n, name: sentTitle(o.Draft, o.Sent),
				head: El("span", Class("how"), Text(asSent(o.Sent)))})
			continue
		}
		if o.Q == nil {
			set = append(set, column{name: "not computed", at: n, head: Many(
				El("span", Class("tag out"), Text("not computed")), El("span", Class("how"), Text(o.Fault)))})
			continue
		}
		set = append(set, column{q: o.Q, d: o.Q.Draft, link: o.Link, at: n, name: titleOf(o.Q)})
	}
	where := "showing now"
	if p.Reading {
		where = "being read"
	}
	own := column{at: ownColumn, q: p.Q, d: p.Q.Draft, link: p.Link, name: titleOf(p.Q),
		head: El("span", Class("how screen"), Text(where))}
	if p.Sent != nil {
		own.q, own.sent = nil, p.Sent
		if p.Draft != nil {
			own.d, own.name = p.Draft, sentTitle(p.Draft, p.Sent)
		}
		own.head = Many(own.head, El("span", Class("how"), Text(asSent(p.Sent))))
	}
	if p.Reading {
		set = append([]column{own}, set...)
	} else {
		set = append(set, own)
	}
	dated := func(c column) config.Date {
		if c.d == nil {
			return config.Date{Year: 9999, Month: 12, Day: 31}
		}
		return c.d.Date
	}
	slices.SortStableFunc(set, func(a, b column) int {
		switch {
		case dated(a).Before(dated(b)):
			return -1
		case dated(b).Before(dated(a)):
			return 1
		}
		return 0
	})
	for i, c := range set {
		if name := p.named(&c); name != "" {
			set[i].name = letters.Isolate(name)
		}
	}
	p.shorten(set)
	p.distinguish(set)
	for i, c := range set {
		set[i].head = Many(c.head, If(c.at != ownColumn, El("span", Class("how screen"),
			If(!p.Reading, page.Action("swap", c.at, "", "", Class("quiet"), At("id", "swap-"+c.at),
				page.Named("Work on this", c.name))),
			page.Action("unpin", c.at, "", "", Class("quiet"), At("id", "unpin-"+c.at), page.Named("Take out", c.name)))))
	}
	return set
}

// named is how somebody called a column; empty where nobody did.
func (p *Page) named(c *column) string {
	if c.at == ownColumn {
		return p.View.Names[""]
	}
	return p.View.Names[link.Name(c.link)]
}

// namesOf are the fields that name the columns, once there are two.
func namesOf(p *Page, columns []column) Part {
	if len(columns) < 2 {
		return nil
	}
	return El("details", At("id", "fold-columns"), El("summary", Text("Name the columns")),
		El("div", Class("fields"), Each(columns, func(i int, c column) Part {
			return If(c.d != nil, page.Field(p.Page, "column."+c.at, "Name of column "+strconv.Itoa(i+1), p.named(&c),
				"Blank = its unit name"))
		})))
}

// shorten calls a unit that nobody named by as much of its chassis' label as tells it from the
// others.
func (p *Page) shorten(set []column) {
	var full []string
	for _, c := range set {
		full = append(full, c.name)
	}
	for i := range set {
		c := &set[i]
		if c.d == nil || c.d.Title != "" || p.named(c) != "" {
			continue
		}
		parts := strings.Split(c.name, ", ")
		for n := range parts {
			short := strings.Join(parts[:n+1], ", ")
			if !slices.ContainsFunc(full, func(o string) bool { return o != full[i] && strings.HasPrefix(o, short) }) {
				c.name = short
				break
			}
		}
	}
}

// distinguish gives columns of one name their number and revision, and what else they
// differ by: the day, who signed, the price. Where all of that is the same, it counts them.
func (p *Page) distinguish(set []column) {
	differ := func(tell func(*column) string, always bool) {
		alike := map[string][]*column{}
		for i := range set {
			if c := &set[i]; c.d != nil {
				alike[c.name] = append(alike[c.name], c)
			}
		}
		for _, group := range alike {
			told := make([]string, len(group))
			for i, c := range group {
				told[i] = tell(c)
			}
			if len(group) < 2 || !always && len(slices.Compact(slices.Sorted(slices.Values(told)))) < 2 {
				continue
			}
			for i, c := range group {
				c.name += ", " + told[i]
			}
		}
	}
	differ(func(c *column) string { return page.Numbered(c.d) }, true)
	differ(func(c *column) string { return "dated " + c.d.Date.Long() }, false)
	differ(p.signedBy, false)
	differ(func(c *column) string { return c.figures().Total }, false)
	times := map[string]int{}
	for i := range set {
		c := &set[i]
		if times[c.name]++; c.d != nil && times[c.name] > 1 {
			c.name += " (" + strconv.Itoa(times[c.name]) + ")"
		}
	}
}

// signedBy says who signed a quote, as far as the list of signers in use knows them.
func (p *Page) signedBy(c *column) string {
	key, err := link.Signer(c.link)
	if c.link == "" || err != nil || key == nil {
		return "not signed"
	}
	standing := sign.Judge(p.Q.Edition.Cat, key, c.d.Date, p.Today)
	return "signed by " + cmp.Or(standing.Who(), "somebody unknown")
}

// reasons say, above the table, why each quote costs more or less than the first and
// arrives later or earlier.
func reasons(columns []column) Part {
	first, others := columns[0], columns[1:]
	return Each(others, func(i int, c column) Part {
		if c.q == nil || first.q == nil {
			return apart(i, first, c)
		}
		return El("p", Class("notice"), At("id", "why-"+strconv.Itoa(i)),
			El("b", El("bdi", Text(c.name)), Text(" beside "), El("bdi", Text(first.name)), Text(": ")),
			Text(quote.WhyPrice(first.q, c.q)+" "+quote.WhyDate(first.q, c.q)))
	})
}

// apart compares two quotes by the figures they carry, where not both can be computed as
// they were sent.
func apart(i int, first, c column) Part {
	if c.figures() == nil || first.figures() == nil {
		return nil
	}
	a, b := first.figures(), c.figures()
	when := "Both have the same likely date (50 %)."
	if n := a.Even.DaysUntil(b.Even); n > 0 {
		when = "Its likely date (50 %) is " + page.Count(n, "calendar day", "calendar days") + " later."
	} else if n < 0 {
		when = "Its likely date (50 %) is " + page.Count(-n, "calendar day", "calendar days") + " earlier."
	}
	return El("p", Class("notice"), At("id", "why-"+strconv.Itoa(i)),
		El("b", El("bdi", Text(c.name)), Text(" beside "), El("bdi", Text(first.name)), Text(": ")),
		Text("It was offered at "+b.Total+", beside "+a.Total+". "+when+" Why cannot be told line by line: at least one "+
			"of them stands as it was sent, and this page computes other figures for it."))
}

// figures are what a column comes to; nil where that is not known.
func (c *column) figures() *link.Frozen {
	if c.q != nil {
		return link.Freeze(c.q)
	}
	return c.sent
}

// asSent says under a quote's name where its figures come from.
func asSent(f *link.Frozen) string {
	return "as it was sent, with catalogue edition " + f.Edition + "; not recomputed"
}

func sentTitle(d *quote.Draft, f *link.Frozen) string {
	if d.Title != "" {
		return letters.Isolate(d.Title)
	}
	return f.Chassis
}

// Other is a quote pinned for comparison; Fault says why it could not be
// computed, or Sent what it was sent with.
type Other struct {
	Link  string
	At    int // place among those set aside
	Q     *quote.Quote
	Fault string

	Draft *quote.Draft // of one that stands as it was sent
	Sent  *link.Frozen // the figures it was sent with; nil where the page computes the same
}

// MaxRivals is how many other bids are set beside the quotes.
const MaxRivals = 3

// rivals are bids from elsewhere, typed in.
func rivals(p *Page) Part {
	cur := p.Q.Book.Currency
	return El("section", Class("block screen"), El("h2", Text("Other bids")),
		El("p", Class("lead"),
			Text("Bids typed in here stay on this device, out of every quote and link.")),
		Each(p.View.Rivals, func(i int, r quote.Rival) Part {
			id := "rival." + strconv.Itoa(i)
			payload := ""
			if r.PayloadLb > 0 {
				payload = p.Plain(float64(r.PayloadLb), quantity.Pound)
			}
			return El("div", Class("fields entry"),
				page.Field(p.Page, id+".name", "Bidder", r.Name, ""), page.Number(p.Page, id+".price", "Price",
					page.Blank(r.Price), cur, ""), page.Day(p.Page, id+".date", "Delivery promised", r.Date, ""),
				page.Number(p.Page, id+".payload", "Payload", payload, p.UnitName(quantity.Pound), ""),
				page.Field(p.Page, id+".warranty", "Warranty", r.Warranty, ""), page.Field(p.Page, id+".notes", "Notes",
					r.Notes, ""),
				El("div", Class("row-tools"), page.Action("drop-rival", strconv.Itoa(i), "", "Take out", Class("quiet"),
					At("id", "drop-"+id), At("aria-label", "Take out: "+r.Name))))
		}),
		If(len(p.View.Rivals) < MaxRivals,
			El("p", Class("row-tools"), page.Action("add-rival", "", "", "Add another bid", At("id", "add-rival")))))
}

// mostSights stand open beside each other; more would make the page long.
const mostSights = 3

// sights are two or more units from the same side on one scale, with what not all of them
// have lit; nil where fewer are at hand.
func sights(p *Page, columns []column) Part {
	var views []drawing.View
	var names []string
	has := map[string]int{}
	wide := 0.0
	for _, c := range columns {
		if c.q == nil || c.q.Space.Model == nil {
			continue
		}
		v := drawing.ViewOf(c.q.Space.Model, p.View.Look)
		left, right, _, _ := v.Bounds()
		wide = max(wide, right-left)
		views, names = append(views, v), append(names, c.name)
		for _, x := range c.q.Draft.Unit.Picks {
			has[x.Option]++
		}
	}
	if len(views) < 2 {
		return nil
	}
	const title = "The same side, on one scale"
	block := func(parts ...Part) Part { return page.Block(title, parts...) }
	if len(views) > mostSights {
		block = func(parts ...Part) Part { return page.Fold("sights", title, parts...) }
	}
	return block(
		drawing.Looks(views[0].ID),
		El("div", Class("scaled"), Each(views, func(i int, v drawing.View) Part {
			v.Wide = wide
			var said []string
			for k := range v.Groups {
				g := &v.Groups[k]
				if g.Option == "" || has[g.Option] == len(views) {
					continue
				}
				g.Class = "differs"
				if !slices.Contains(said, g.Label) {
					said = append(said, g.Label)
				}
			}
			words := "Nothing is seen from here that the others have not."
			if len(said) > 0 {
				words = "Drawn with dashes, not on all of them: " + strings.Join(said, "; ") + "."
			}
			return El("div", El("h3", Text(names[i])), drawing.Picture(v, v.Title+". "+words, "", nil),
				El("p", Class("small"), Text(words)))
		})))
}

// drawings are the side views on one scale.
func drawings(p *Page, columns []column) Part {
	const margin = 84 // beside the vehicle, for dimensions
	other := *p.Page
	n := 0
	for _, c := range columns {
		if c.q != nil {
			other.Span = max(other.Span, drawing.Length(c.q)+margin)
			n++
		}
	}
	if n < 2 {
		return nil
	}
	return page.Fold("side-views", "Side views with loads and lengths, on one scale",
		El("div", Class("scaled"), Each(columns, func(_ int, c column) Part {
			if c.q == nil {
				return nil
			}
			other.Q = c.q
			return El("div", El("h3", Text(c.name)), drawing.Side(&other))
		})))
}

func titleOf(q *quote.Quote) string {
	if q.Draft.Title != "" {
		return letters.Isolate(q.Draft.Title)
	}
	return q.Chassis.Label
}

// mostAbreast columns have room on a phone.
const mostAbreast = 4

// comparison is a table of what decides, and beneath, folded, one of what each unit holds and
// what is the same.
func comparison(p *Page, columns []column) Part {
	var quotes []*quote.Quote
	var heads, under []Part
	var names []string
	sent := map[int]*quote.Sent{}
	for i, c := range columns {
		quotes, names, under = append(quotes, c.q), append(names, c.name), append(under, c.head)
		heads = append(heads, If(c.d != nil, El("b", El("bdi", Text(page.Held(c.name))))))
		if f := c.sent; f != nil {
			sent[i] = &quote.Sent{Total: f.Total, Even: f.Even, Safe: f.Safe, Good: f.Until, LeftLb: f.Payload,
				Chassis: f.Chassis, Body: f.Body}
		}
	}
	rows := quote.Compare(quotes, sent, p.View.Rivals, p.System())
	for _, r := range p.View.Rivals {
		names, heads = append(names, r.Name), append(heads, El("b", Text(r.Name)))
		under = append(under, El("span", Class("how"), Text("as typed in")))
	}
	chapters := slices.IndexFunc(rows, func(r quote.Row) bool {
		is := func(c config.Chapter) bool { return c.Label == r.Label }
		return r.Heading && slices.ContainsFunc(p.Q.Edition.Cat.Chapters, is)
	})
	if chapters < 0 {
		chapters = len(rows)
	}
	differs := func(r quote.Row) bool { return r.Differs }
	body, _ := rowsOf(rows[:chapters], names, differs)
	options, n := rowsOf(rows[chapters:], names, differs)
	same, alike := rowsOf(rows, names, func(r quote.Row) bool { return !r.Differs })
	alikeWords := page.Count(alike, "line is the same", "lines are the same")
	if len(body)+len(options) == 0 {
		none := "Nothing differs."
		if len(names) == 1 {
			none, alikeWords = "Nothing to compare it with yet.", "What is compared"
		}
		body = append(body, El("tr", El("td", At("colspan", strconv.Itoa(len(heads)+1)), Text(none))))
	}
	row := func(tag string, cells []Part, more ...Part) Part {
		return El("tr", append(more, El("td"), Each(cells, func(i int, c Part) Part {
			return El(tag, If(tag == "th", At("scope", "col")), If(tag == "td", At("data-head", names[i])), c)
		}))...)
	}
	table := func(caption string, body []Part, head ...Part) Part {
		return El("table", Class("compare"), El("caption", Text(caption)), El("thead", head...), El("tbody", body...))
	}
	short, wrap := row("th", page.Texts(names...)), "scroll"
	if len(names) <= mostAbreast {
		wrap = "scroll abreast"
	}
	return Many(
		El("div", Class("block", wrap), At("data-scroll", "Comparison"),
			table("Comparison; ≠ marks what differs", body, row("th", heads), row("td", under, Class("under")))),
		If(len(options) > 0, page.Fold("options", "Options: "+page.Count(n, "line differs", "lines differ"),
			El("div", Class(wrap), At("data-scroll", "Options"), table("Options; ≠ marks what differs", options, short)))),
		If(alike > 0, page.Fold("same", alikeWords,
			El("div", El("div", Class(wrap), At("data-scroll", "The same"), table("The same", same, short))))))
}

// rowsOf are the rows of a table that are shown, each under its heading, and how many they are. What
// is the same in each column is said once.
func rowsOf(rows []quote.Row, names []string, shown func(quote.Row) bool) (body []Part, n int) {
	heading := Many()
	for _, r := range rows {
		if r.Heading {
			heading = El("tr", El("th", At("scope", "rowgroup"), At("colspan", strconv.Itoa(len(names)+1)), Text(r.Label)))
			continue
		}
		if !shown(r) {
			continue
		}
		body, heading = append(body, heading), Many()
		n++
		cells := Each(r.Cells, func(i int, c string) Part { return El("td", At("data-head", names[i]), Text(page.Held(c))) })
		if len(names) > 1 && len(slices.Compact(slices.Clone(r.Cells))) == 1 {
			cells = El("td", At("colspan", strconv.Itoa(len(names))), Text(page.Held(r.Cells[0])))
		}
		body = append(body, El("tr", If(r.Differs, Class("differs")), El("th", At("scope", "row"), Text(r.Label)), cells))
	}
	return body, n
}

// differences explains, line by line, what separates each quote from the first.
func differences(p *Page, columns []column) Part {
	var out []Part
	first := columns[0]
	for i, c := range columns[1:] {
		if c.q == nil || first.q == nil {
			continue
		}
		d := quote.Difference(first.q, c.q)
		t := page.Table{Caption: "From " + first.name + " to " + c.name, Class: "cards",
			Heads: []string{"Line", ">" + first.name, ">" + c.name, ">Difference"}}
		for _, l := range d.Lines {
			t.Rows = append(t.Rows, page.Texts(l.Label, l.From.Show(), l.To.Show(), l.By.Show()))
		}
		t.Sums = append(t.Sums, page.Texts("Total", first.q.Price.Total.Show(), c.q.Price.Total.Show(), d.Total.Show()))
		out = append(out, El("details", Class("block"), At("id", "difference-"+strconv.Itoa(i)),
			page.Summary("h2", "Why the price differs: "+c.name), t.Draw()))
	}
	for _, r := range p.View.Rivals {
		if p.Sent != nil {
			break // ours is not computed as it was sent
		}
		var said []string
		if !r.Price.IsZero() {
			by, than := p.Q.Price.Total.Sub(r.Price), "more"
			if by.Sign() < 0 {
				by, than = r.Price.Sub(p.Q.Price.Total), "less"
			}
			said = append(said, "the unit showing now is "+p.Q.Price.Currency+" "+by.Show()+" "+than)
		}
		if !r.Date.IsZero() {
			days, side := r.Date.DaysUntil(p.Q.Plan.NineInTen), "before"
			if days < 0 {
				days, side = -days, "after"
			}
			said = append(said, "promised "+page.Count(days, "day", "days")+" "+side+" ours at 90 %")
		}
		if f, ok := p.Q.Figure("weight.payload"); ok && r.PayloadLb > 0 {
			said = append(said, "our payload less theirs is "+p.Signed(f.Value-float64(r.PayloadLb), quantity.Pound))
		}
		if said != nil {
			out = append(out, El("p", El("b", Text(r.Name+": ")), Text(strings.Join(said, "; ")+".")))
		}
	}
	return Many(out...)
}
