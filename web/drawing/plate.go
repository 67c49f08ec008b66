package drawing

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"unicode/utf8"

	"boxwright/config/body"
	"boxwright/config/quantity"
	"boxwright/web/page"
)

// A plate is drawn in hundredths of an inch of its paper, y down; its shapes are held with
// up as more, as those of views are.
const (
	plateWide   = 1580.0
	plateLetter = 12.0 // size of lettering
	balloonR    = 9.5
	rowHigh     = 24.0 // of a row of dimensions or balloons
	barHigh     = 34.0
)

// Scales that a plate can have, one to so many, the largest first.
var Scales = []int{16, 20, 24, 32, 48}

// Line is a thing of a plate, under the number of its balloon.
type Line struct {
	N, Count    int    // no number where letters in the drawing tell the things apart
	Label, Size string // a size that the catalogue does not state begins with "~"
	Changed     bool   // against the quote before
}

// sight is a view on a plate with what is measured and numbered in it.
type sight struct {
	View
	parts  map[string]*body.Part // by the id of a group
	across []span                // dimensions below, each row of its own
	up     []span                // dimensions at the right
	number func(*body.Part) bool // what gets a balloon; nil: nothing
}

// span is a dimension from one coordinate of the view to another.
type span struct {
	from, to float64
	about    bool // not stated by the catalogue
}

// plate is a drawing in the making.
type plate struct {
	in      *page.Page
	shapes  []Shape
	boxes   [][4]float64 // left, top, right, bottom of every text and balloon
	list    []Line
	lines   map[*body.Part]int // of the list, by what they are about: it has one number in every sight
	changed func(*body.Part) bool
	k       float64 // plate units for an inch of the unit
}

// line goes through points given as x, y, x, y.
func (d *plate) line(layer string, at ...float64) {
	s := Shape{Layer: layer}
	for i := 0; i+1 < len(at); i += 2 {
		s.Along = append(s.Along, Point{at[i], -at[i+1]})
	}
	d.shapes = append(d.shapes, s)
}

// area is a closed line.
func (d *plate) area(layer string, at ...float64) {
	d.line(layer, at...)
	d.shapes[len(d.shapes)-1].Closed = true
}

func (d *plate) circle(layer string, x, y, r float64) {
	d.shapes = append(d.shapes, Shape{Layer: layer, Along: []Point{{x, -y}}, Radius: r})
}

// words are a text of a size with its foot at y: centered on x, or from x on, or upward.
func (d *plate) words(layer string, set setting, size, x, y float64, text string) {
	if text != "" {
		d.shapes = append(d.shapes, Shape{Layer: layer, Along: []Point{{x, -y}}, Text: text, Size: size, Set: set})
	}
}

// arrow has its point at x, y and comes from where dx and dy point to.
func (d *plate) arrow(x, y, dx, dy float64) {
	d.area("head", x, y, x+dx+dy/3, y+dy+dx/3, x+dx-dy/3, y+dy-dx/3)
}

// lettering of a plate: usual width of a letter in shares of its size.
const plateEm = 0.58

func wideOf(text string) float64 {
	return plateEm * plateLetter * float64(utf8.RuneCountInString(text))
}

// say writes a text centered on x with its foot at y.
func (d *plate) say(class string, x, y float64, text string) {
	half := wideOf(text) / 2
	d.boxes = append(d.boxes, [4]float64{x - half, y - plateLetter*0.8, x + half, y + 1})
	d.words(class, centered, plateLetter, x, y, text)
}

// fit chooses the largest scale at which rows of sights have room.
func fit(rows [][]sight, high float64) int {
	for _, scale := range Scales {
		k := 100 / float64(scale)
		total := barHigh
		ok := true
		for _, row := range rows {
			w, h := 0.0, 0.0
			for i := range row {
				sw, sh := row[i].room(k)
				w, h = w+sw, math.Max(h, sh)
			}
			total += h
			ok = ok && w <= plateWide
		}
		if ok && total <= high {
			return scale
		}
	}
	return Scales[len(Scales)-1]
}

// room that a sight takes with its dimensions, balloons and title.
func (s *sight) room(k float64) (wide, high float64) {
	left, right, low, top := s.Bounds()
	wide = math.Max((right-left)*k, wideOf(s.Title)) + 40 + 44*float64(len(s.up))
	high = (top-low)*k + 40 + rowHigh*float64(len(s.across))
	if s.number != nil {
		high += 4 * rowHigh
	}
	return wide, high
}

// draw puts rows of sights on the plate.
func (d *plate) draw(rows [][]sight, high float64) (scale int) {
	scale = fit(rows, high)
	d.k = 100 / float64(scale)
	y := 0.0
	for _, row := range rows {
		tall, wide := 0.0, 0.0
		for i := range row {
			w, h := row[i].room(d.k)
			tall, wide = math.Max(tall, h), wide+w
		}
		gap := math.Max(plateWide-wide, 0) / float64(len(row)+1)
		x := gap
		for i := range row {
			w, _ := row[i].room(d.k)
			d.sight(&row[i], x, y, tall)
			x += w + gap
		}
		y += tall
	}
	d.bar(high)
	return scale
}

// sight draws one view with its left top corner at x, y in a row so high.
func (d *plate) sight(s *sight, x, y, tall float64) {
	left, right, low, top := s.Bounds()
	foot := y + tall - 30 - rowHigh*float64(len(s.across))
	if s.number != nil {
		foot -= 2 * rowHigh
	}
	x += 20
	at := func(p Point) Point { return Point{x + (p.U-left)*d.k, foot - (p.V-low)*d.k} }
	for _, g := range s.Groups {
		d.shapes = append(d.shapes, placed(g.Shapes, at, d.k)...)
	}
	ends := frame2{at(Point{left, low}).U, at(Point{right, low}).U, foot, at(Point{left, top}).V}
	d.balloons(s, at, ends)
	below := foot
	if s.number != nil {
		below += 2 * rowHigh
	}
	for i, m := range s.across {
		d.measureAcross(at(Point{m.from, low}).U, at(Point{m.to, low}).U, foot+2, below+rowHigh*float64(i)+20,
			d.size(m))
	}
	for i, m := range s.up {
		d.measureUp(at(Point{left, m.from}).V, at(Point{left, m.to}).V, ends.u1+2, ends.u1+24+44*float64(i), d.size(m))
	}
	d.say("title", (ends.u0+ends.u1)/2, below+rowHigh*float64(len(s.across))+20, s.Title)
}

// placed are shapes on the plate.
func placed(list []Shape, at func(Point) Point, k float64) []Shape {
	out := slices.Clone(list)
	for i := range out {
		along := make([]Point, len(out[i].Along))
		for n, p := range out[i].Along {
			q := at(p)
			along[n] = Point{q.U, -q.V}
		}
		out[i].Along, out[i].Radius, out[i].Size = along, out[i].Radius*k, out[i].Size*k
	}
	return out
}

// size is a dimension in words.
func (d *plate) size(m span) string {
	return about(m.about) + d.in.Show(math.Abs(m.to-m.from), quantity.Inch)
}

// about marks what the catalogue does not state.
func about(yes bool) string {
	if yes {
		return "~"
	}
	return ""
}

// measureAcross draws a dimension with witness lines down from the view.
func (d *plate) measureAcross(from, to, edge, y float64, text string) {
	from, to = math.Min(from, to), math.Max(from, to)
	d.line("witness", from, edge, from, y+4)
	d.line("witness", to, edge, to, y+4)
	d.line("dim", from, y, to, y)
	d.arrow(from, y, 7, 0)
	d.arrow(to, y, -7, 0)
	x := (from + to) / 2
	if wideOf(text) > to-from-16 {
		x = to + 6 + wideOf(text)/2
	}
	d.say("size", x, y-3, text)
}

// measureUp draws an upright dimension with witness lines from the view.
func (d *plate) measureUp(from, to, edge, x float64, text string) {
	d.line("witness", edge, from, x+4, from)
	d.line("witness", edge, to, x+4, to)
	d.line("dim", x, from, x, to)
	d.arrow(x, from, 0, -7)
	d.arrow(x, to, 0, 7)
	mid, half := (from+to)/2, wideOf(text)/2
	if 2*half > math.Abs(to-from)-16 {
		mid = math.Min(from, to) - 6 - half // above it
	}
	d.boxes = append(d.boxes, [4]float64{x - 4 - plateLetter*0.8, mid - half, x - 3, mid + half})
	d.words("size", upward, plateLetter, x-4, mid, text)
}

// balloon is a number to be placed beside the view.
type balloon struct{ n, x, y, at float64 }

// balloons number the parts of a sight: those of its upper half above it, the others below.
func (d *plate) balloons(s *sight, at func(Point) Point, ends frame2) {
	var above, below []balloon
	seen := map[string]int{} // lines of this sight by what they say
	shown := map[int]bool{}
	for _, g := range s.Groups {
		p := s.parts[g.ID]
		if p == nil || len(g.Shapes) == 0 {
			continue
		}
		left, right, low, top := (&View{Groups: []Group{g}}).Bounds()
		a, b := at(Point{left, low}), at(Point{right, top})
		changed := d.changed != nil && d.changed(p)
		if changed {
			d.cloud(frame2{a.U - 6, b.U + 6, b.V - 6, a.V + 6})
		}
		if s.number == nil || !s.number(p) {
			continue
		}
		n, had := d.lines[p]
		if !had {
			n = d.listed(seen, p, changed)
		}
		if shown[n] {
			continue
		}
		shown[n] = true
		c := balloon{float64(n + 1), (a.U + b.U) / 2, (a.V + b.V) / 2, (a.U + b.U) / 2}
		if c.y < (ends.v0+ends.v1)/2 {
			above = append(above, c)
		} else {
			below = append(below, c)
		}
	}
	d.row(above, ends, ends.v1-rowHigh+6, -rowHigh)
	d.row(below, ends, ends.v0+rowHigh-6, rowHigh)
}

// listed is the line of a part that had none: one of the same words, which then counts one more,
// or a new one.
func (d *plate) listed(seen map[string]int, p *body.Part, changed bool) int {
	key := p.Option + "/" + p.Kind + "/" + p.Label + "/" + d.sizeOf(p)
	n, had := seen[key]
	if had {
		d.list[n].Count++
	} else {
		n = len(d.list)
		seen[key] = n
		d.list = append(d.list, Line{N: n + 1, Count: 1, Label: p.Label, Size: d.sizeOf(p), Changed: changed})
	}
	d.lines[p] = n
	return n
}

// row sets balloons side by side at y, and every other one in a second row where one row
// would put them far from what they number.
func (d *plate) row(list []balloon, ends frame2, y, second float64) {
	slices.SortStableFunc(list, func(a, b balloon) int { return cmp.Compare(a.x, b.x) })
	const room, far = 2*balloonR + 2, 2.5 * balloonR
	rows := 1.0
	if spaced(list, ends, room) > far {
		rows = 2
		spaced(list, ends, room/rows)
	}
	for i, b := range list {
		y := y
		if rows == 2 && i%2 == 1 {
			y += second
		}
		foot := y - math.Copysign(balloonR, second)
		d.line("leader", b.at, foot, b.x, b.y)
		d.circle("dot", b.x, b.y, 1.6)
		d.circle("balloon", b.at, y, balloonR)
		d.boxes = append(d.boxes, [4]float64{b.at - balloonR, y - balloonR, b.at + balloonR, y + balloonR})
		d.words("number", centered, plateLetter-1, b.at, y+4, strconv.Itoa(int(b.n)))
	}
}

// spaced puts balloons above what they number, so far apart at least, and tells how far aside the
// farthest of them is.
func spaced(list []balloon, ends frame2, apart float64) (aside float64) {
	for i := range list {
		list[i].at = list[i].x
		if i > 0 {
			list[i].at = math.Max(list[i].at, list[i-1].at+apart)
		}
	}
	for i := len(list) - 1; i >= 0; i-- {
		limit := ends.u1
		if i < len(list)-1 {
			limit = list[i+1].at - apart
		}
		list[i].at = math.Min(list[i].at, limit)
		aside = math.Max(aside, math.Abs(list[i].at-list[i].x))
	}
	return aside
}

// sizeOf a part, along by across by high.
func (d *plate) sizeOf(p *body.Part) string {
	in := func(v float64) string { return d.in.Plain(v, quantity.Inch) }
	return about(p.About) + in(p.X1-p.X0) + " × " + in(p.Y1-p.Y0) + " × " + in(p.Z1-p.Z0) + " " +
		d.in.UnitName(quantity.Inch)
}

// cloud rings what changed against the quote before with scallops.
func (d *plate) cloud(f frame2) {
	const step = 12.0
	var p pen
	side := func(u0, v0, u1, v1 float64) {
		n := math.Max(1, math.Round(math.Hypot(u1-u0, v1-v0)/step))
		du, dv := (u1-u0)/n, (v0-v1)/n // up as more
		a := math.Atan2(dv, du)
		for i := 0.5; i < n; i++ {
			p.arc(Point{u0 + du*i, dv*i - v0}, math.Hypot(du, dv)/2, a+math.Pi, a)
		}
	}
	side(f.u0, f.v0, f.u1, f.v0)
	side(f.u1, f.v0, f.u1, f.v1)
	side(f.u1, f.v1, f.u0, f.v1)
	side(f.u0, f.v1, f.u0, f.v0)
	d.shapes = append(d.shapes, Shape{Layer: "cloud", Along: p.points})
}

// bar is what the scale can be measured by: sixty inches of the unit.
func (d *plate) bar(high float64) {
	y := high - 8
	for i := range 5 {
		x := 4 + float64(i)*12*d.k
		d.area([]string{"bar-dark", "bar-light"}[i%2], x, y-6, x+12*d.k, y-6, x+12*d.k, y, x, y)
	}
	for i := range 6 {
		x := 4 + float64(i)*12*d.k
		text := strconv.Itoa(i * 12)
		d.boxes = append(d.boxes, [4]float64{x - 2, y - 20, x + wideOf(text), y - 8})
		d.words("size", fromLeft, plateLetter, x, y-9, text)
	}
	d.words("size", fromLeft, plateLetter, 12+60*d.k+14, y, "in of the unit")
}
