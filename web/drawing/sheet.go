package drawing

import (
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	. "boxwright/web/page/markup"
)

// Sheet is a plate in its frame, with what is written around it.
type Sheet struct {
	Plate
	N, Total  int
	Note      string
	Revisions [][3]string // number, date, what
	Cells     [][2]string // of the title block: label and value
	Chapters  []Chapter   // the schedule of choices, on the cover
}

// Chapter of the schedule of choices.
type Chapter struct {
	Label string
	Items [][2]string // group and choice
}

// Approvals are what may be ticked on a sheet, and Lines what is written in by hand.
var (
	Approvals = []string{"Approved", "Approved as noted"}
	Lines     = []string{"Signature", "Date"}
)

// A sheet is 17 by 11 in, its frame 0.35 in within.
const (
	sheetWide, sheetHigh = 1700.0, 1100.0
	frameAt, frameEnd    = 35.0, 1665.0
	footAt, footEnd      = 938.0, 1065.0
	bodyAt, bodyLeft     = 50.0, 60.0
)

// Number that a line has in the drawing, with a space after it; empty where letters in the
// drawing tell the lines apart.
func (l *Line) Number() string {
	if l.N == 0 {
		return ""
	}
	return strconv.Itoa(l.N) + " "
}

// Words of a line in a plate's list, after its number.
func (l *Line) Words() string {
	if l.Count > 1 {
		return l.Label + " (" + strconv.Itoa(l.Count) + " shown)"
	}
	return l.Label
}

// framed is a sheet with its frame, in hundredths of an inch of paper.
func (x *Sheet) framed() []Shape {
	d := &plate{shapes: moved(x.shapes, bodyLeft, -bodyAt, 1)}
	d.area("frame", frameAt, frameAt, frameEnd, frameAt, frameEnd, footEnd, frameAt, footEnd)
	d.line("frame", frameAt, footAt, frameEnd, footAt)
	var list []entry
	for i := range x.List {
		l := &x.List[i]
		text := l.Number() + l.Words() + " " + l.Size
		if l.Changed {
			text += " changed"
		}
		list = append(list, entry{text: text})
	}
	for _, t := range x.Notes {
		list = append(list, entry{text: t})
	}
	for _, c := range x.Chapters {
		list = append(list, entry{text: c.Label, bold: true})
		for _, item := range c.Items {
			list = append(list, entry{text: item[0] + ": " + item[1]})
		}
	}
	top := bodyAt
	if x.Scale > 0 {
		top += plateHigh + 5
	}
	d.flow(list, frame2{bodyLeft, frameEnd - 25, top, footAt - 10}, 4)
	x.foot(d)
	return d.shapes
}

// foot are notes, revisions, lines to approve on, and the title block.
func (x *Sheet) foot(d *plate) {
	const revisions, approval, title, row = 305.0, 565.0, 775.0, 42.0
	for _, u := range []float64{revisions, approval, title} {
		d.line("rule", u, footAt, u, footEnd)
	}
	d.flow([]entry{{"Notes", true}, {x.Note, false}}, frame2{frameAt + 8, revisions - 8, footAt + 2, footEnd - 2}, 1)
	d.words("bold", fromLeft, 10, revisions+8, footAt+13, "Revisions")
	for i, r := range append([][3]string{{"Rev.", "Date", "What"}}, x.Revisions...) {
		for k, u := range []float64{8, 40, 150} {
			d.words("note", fromLeft, 9, revisions+u, footAt+28+13*float64(i), r[k])
		}
	}
	for i, t := range Approvals {
		y := footAt + 10 + 16*float64(i)
		d.area("rule", approval+8, y, approval+19, y, approval+19, y+11, approval+8, y+11)
		d.words("note", fromLeft, 10, approval+26, y+9, t)
	}
	for i, t := range Lines {
		y := footAt + 76 + 36*float64(i)
		d.line("rule", approval+8, y, title-8, y)
		d.words("note", fromLeft, 8, approval+8, y+9, t)
	}
	wide := (frameEnd - title) / 4
	for i, c := range x.Cells {
		col, span := float64(i%4), 1.0
		y := footAt + row*float64(i/4)
		if i >= 6 { // the last two are long, and take two columns each
			col, span, y = 2, 2, footAt+row*float64(i-5)
		}
		u := title + wide*col
		d.words("note", fromLeft, 8, u+6, y+11, c[0])
		d.flow([]entry{{c[1], true}}, frame2{u + 6, u + wide*span - 6, y + 12, y + row - 2}, 1)
	}
}

// entry is a text in a column; a bold one heads others.
type entry struct {
	text string
	bold bool
}

// flow writes texts into columns, y down, as large as they all have room, 11 hundredths of
// an inch at most and 5 at least; what has none even then is left to the page's own list.
func (d *plate) flow(list []entry, f frame2, columns int) {
	const largest, least = 11.0, 5.0
	wide := f.wide() / float64(columns)
	for size := largest; ; size -= 0.5 {
		pitch := size * 1.22
		rows := int(math.Max(f.high()/pitch, 1))
		letters := int((wide - 10) / (size * plateEm))
		var lines []entry
		for _, e := range list {
			if e.bold && len(list) > 2 && len(lines)%rows == rows-1 {
				lines = append(lines, entry{}) // a heading does not end a column
			}
			for _, t := range wrapped(e.text, letters) {
				lines = append(lines, entry{t, e.bold})
			}
		}
		if len(lines) > rows*columns {
			if size > least {
				continue
			}
			lines = append(lines[:rows*columns-1], entry{text: "and more"})
		}
		for i, l := range lines {
			layer := "note"
			if l.bold {
				layer = "bold"
			}
			d.words(layer, fromLeft, size, f.u0+wide*float64(i/rows), f.v0+pitch*(float64(i%rows)+0.85), l.text)
		}
		return
	}
}

// wrapped breaks a text into lines of so many letters, within a word where it is longer.
func wrapped(text string, letters int) (lines []string) {
	line := ""
	for _, w := range strings.Fields(text) {
		for r := []rune(w); len(r) > letters; w, r = string(r[letters:]), r[letters:] {
			if line != "" {
				lines, line = append(lines, line), ""
			}
			lines = append(lines, string(r[:letters]))
		}
		if line != "" && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(w) > letters {
			lines, line = append(lines, line), ""
		}
		if line != "" {
			line += " "
		}
		line += w
	}
	return append(lines, line)
}

// SheetsSVG writes sheets below each other, of 17 by 11 in each.
func SheetsSVG(sheets ...Sheet) string {
	var parts []Part
	for i := range sheets {
		all := moved(sheets[i].framed(), 0, -sheetHigh*float64(i), 1)
		parts = append(parts, El("g", El("title", Text(sheets[i].Title)), Many(paths(all)...)))
	}
	return file(sheetWide, sheetHigh*float64(len(sheets)), 0, 0, 100, styled(2.5), parts)
}

// coverScale is that of a sheet with no drawing, one to so many.
const coverScale = 24

// SheetsDXF writes sheets below each other in true inches of the unit, so that each is as
// many times as large as its paper as its scale says.
func SheetsDXF(sheets ...Sheet) []byte {
	var all []Shape
	foot := 0.0
	for i := range sheets {
		k := coverScale / 100.0
		if sheets[i].Scale > 0 {
			k = float64(sheets[i].Scale) / 100
		}
		all = append(all, moved(sheets[i].framed(), 0, foot, k)...)
		foot -= 1.05 * sheetHigh * k
	}
	return dxf(all)
}
