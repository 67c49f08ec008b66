package drawing

import (
	"bytes"
	"cmp"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// layerColors are the color numbers of layers: 7 is black on white and white on black,
// which outlines have, 8 gray, 1 red, 4 cyan, 5 blue, 6 magenta, 30 orange.
var layerColors = map[string]int{layerThin: 8, layerDoor: 8, layerHidden: 8, layerHub: 8, layerStore: 8,
	layerGlass: 4, layerLamp: 1, layerSeat: 5, layerCot: 30, layerMark: 6}

// dashed are kinds of lines by their dashes and, negative, gaps in inches.
var dashed = map[string][]float64{"CONTINUOUS": nil, "DASHED": {4, -2.5}}

// DXF writes views side by side as a drawing of the exchange format that CAD programs
// read (ASCII, release 12), in true inches, a layer for each kind of line. Each view
// stands with its title under it; the ground of views from the side is one line.
func DXF(views ...View) []byte {
	var b bytes.Buffer
	put := func(code int, value string) { b.WriteString(strconv.Itoa(code) + "\r\n" + value + "\r\n") }
	num := func(code int, v float64) { put(code, strconv.FormatFloat(v, 'f', 4, 64)) }
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
	put(0, "TABLE")
	put(2, "LAYER")
	put(70, strconv.Itoa(len(Layers)+1))
	for _, name := range append([]string{"title"}, Layers...) {
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
	x := 0.0
	for _, v := range views {
		left, right, low, _ := v.Bounds()
		dx := x - left
		for _, g := range v.Groups {
			for _, s := range g.Shapes {
				layer := strings.ToUpper(s.Layer)
				if s.Text != "" {
					size := s.size()
					put(0, "TEXT")
					put(8, layer)
					num(10, (s.Along[0].U+s.Along[1].U)/2+dx-size*perEm*float64(utf8.RuneCountInString(s.Text))/2)
					num(20, (s.Along[0].V+s.Along[1].V)/2-size*0.36)
					num(40, size*0.72)
					put(1, ascii(s.Text))
					if s.Backward {
						put(71, "2")
					}
					continue
				}
				if s.Radius > 0 {
					put(0, "CIRCLE")
					put(8, layer)
					num(10, s.Along[0].U+dx)
					num(20, s.Along[0].V)
					num(40, s.Radius)
					continue
				}
				put(0, "POLYLINE")
				put(8, layer)
				put(66, "1")
				put(70, map[bool]string{true: "1", false: "0"}[s.Closed])
				for _, p := range s.Along {
					put(0, "VERTEX")
					put(8, layer)
					num(10, p.U+dx)
					num(20, p.V)
				}
				put(0, "SEQEND")
				put(8, layer)
			}
		}
		put(0, "TEXT")
		put(8, "TITLE")
		num(10, x)
		num(20, low-12)
		num(40, 5)
		put(1, ascii(v.Title))
		x += right - left + 36
	}
	put(0, "ENDSEC")
	put(0, "EOF")
	return b.Bytes()
}

// ascii keeps what the format can carry on one line.
func ascii(text string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' || r > '~' {
			return '?'
		}
		return r
	}, text)
}
