package drawing

import (
	"bytes"
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"boxwright/web/page"
)

// layerColors are the color numbers of layers: 7 is black on white and white on black,
// which outlines have, 8 gray, 1 red, 4 cyan, 5 blue, 6 magenta, 30 orange.
var layerColors = map[string]int{layerThin: 8, layerDoor: 8, layerHidden: 8, layerHub: 8, layerStore: 8,
	layerGlass: 4, layerLamp: 1, layerSeat: 5, layerCot: 30, layerMark: 6}

// dashed are kinds of lines by their dashes and, negative, gaps in inches.
var dashed = map[string][]float64{"CONTINUOUS": nil, "DASHED": {4, -2.5}}

// DXF writes views side by side as a drawing in true inches of the unit. Each view stands with
// its title under it; the ground of views from the side is one line.
func DXF(views ...View) []byte {
	var all []Shape
	x := 0.0
	for _, v := range views {
		left, right, low, _ := v.Bounds()
		for _, g := range v.Groups {
			all = append(all, moved(g.Shapes, x-left, 0, 1)...)
		}
		all = append(all, Shape{Layer: "title", Along: []Point{{x, low - 12}}, Text: v.Title, Size: 7, Set: fromLeft})
		x += right - left + 36
	}
	return dxf(all)
}

// moved are shapes made larger and put elsewhere.
func moved(list []Shape, du, dv, k float64) []Shape {
	out := slices.Clone(list)
	for i := range out {
		along := make([]Point, len(out[i].Along))
		for n, p := range out[i].Along {
			along[n] = Point{p.U*k + du, p.V*k + dv}
		}
		out[i].Along, out[i].Radius, out[i].Size = along, out[i].Radius*k, out[i].Size*k
	}
	return out
}

// dxf writes shapes in the exchange format that CAD programs read (ASCII, release 12), a
// layer for each kind of line.
func dxf(list []Shape) []byte {
	var b bytes.Buffer
	put := func(code int, value string) { b.WriteString(strconv.Itoa(code) + "\r\n" + value + "\r\n") }
	num := func(code int, v float64) { put(code, strconv.FormatFloat(v, 'f', 4, 64)) }
	at := func(code int, p Point) { num(code, p.U); num(code+10, p.V) }
	section := func(name string) { put(0, "SECTION"); put(2, name) }
	section("HEADER")
	put(9, "$ACADVER")
	put(1, "AC1009")
	put(9, "$INSUNITS")
	put(70, "1") // inches
	put(0, "ENDSEC")
	section("TABLES")
	put(0, "TABLE")
	put(2, "LTYPE")
	put(70, "2")
	for _, name := range []string{"CONTINUOUS", "DASHED"} {
		dashes := dashed[name]
		put(0, "LTYPE")
		put(2, name)
		put(70, "0")
		put(3, name)
		put(72, "65")
		put(73, strconv.Itoa(len(dashes)))
		total := 0.0
		for _, d := range dashes {
			total += math.Abs(d)
		}
		num(40, total)
		for _, d := range dashes {
			num(49, d)
		}
	}
	put(0, "ENDTAB")
	var layers []string
	for i := range list {
		if !slices.Contains(layers, list[i].Layer) {
			layers = append(layers, list[i].Layer)
		}
	}
	put(0, "TABLE")
	put(2, "LAYER")
	put(70, strconv.Itoa(len(layers)))
	for _, name := range layers {
		put(0, "LAYER")
		put(2, strings.ToUpper(name))
		put(70, "0")
		put(62, strconv.Itoa(cmp.Or(layerColors[name], 7)))
		if name == layerHidden {
			put(6, "DASHED")
		} else {
			put(6, "CONTINUOUS")
		}
	}
	put(0, "ENDTAB")
	put(0, "ENDSEC")
	section("ENTITIES")
	for i := range list {
		s := &list[i]
		entity := func(kind string) { put(0, kind); put(8, strings.ToUpper(s.Layer)) }
		switch {
		case s.Text != "":
			foot, size := s.foot()
			entity("TEXT")
			at(10, foot)
			num(40, size*0.72)
			put(1, oneLine(s.Text))
			if s.Set == upward {
				put(50, "90")
			}
			if s.Backward {
				put(71, "2")
			}
			if s.Set != fromLeft {
				put(72, "1")
				at(11, foot)
			}
		case s.Radius > 0:
			entity("CIRCLE")
			at(10, s.Along[0])
			num(40, s.Radius)
		case s.Layer == "head" || s.Layer == "bar-dark": // of three or four corners, filled
			entity("SOLID")
			n := len(s.Along)
			for k, corner := range []int{0, 1, n - 1, 2} {
				at(10+k, s.Along[corner])
			}
		default:
			entity("POLYLINE")
			put(66, "1")
			put(70, page.Either(s.Closed, "1", "0"))
			for _, p := range s.Along {
				entity("VERTEX")
				at(10, p)
			}
			entity("SEQEND")
		}
	}
	put(0, "ENDSEC")
	put(0, "EOF")
	return b.Bytes()
}

// oneLine keeps what the format can carry on one line; other letters go by their number.
func oneLine(text string) string {
	var b strings.Builder
	for _, r := range text {
		switch {
		case r == '×':
			b.WriteByte('x')
		case r == '“' || r == '”':
			b.WriteByte('"')
		case r == '’':
			b.WriteByte('\'')
		case r == '%', r == '^', r == '\\': // would begin a control code
			b.WriteRune(r)
			b.WriteByte(' ')
		case r >= ' ' && r <= '~':
			b.WriteRune(r)
		case r > '~' && r <= 0xFFFF:
			b.WriteString("\\U+" + strings.ToUpper(strconv.FormatInt(0x10000+int64(r), 16)[1:]))
		default:
			b.WriteByte('?')
		}
	}
	return b.String()
}
