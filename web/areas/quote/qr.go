package quote

import (
	"strconv"
	"strings"

	"rsc.io/qr/coding"

	. "boxwright/web/page/markup"
)

// A code is printed up to this version, 97 modules a side: at 2 in it is still
// read by the camera of a telephone.
const maxCode = 20

// quiet is the empty margin a reader needs, in modules (ISO/IEC 18004).
const quiet = 4

// qrCode draws the quote's link as one path, at error correction level M (about
// 15 % of it may be damaged); nil for what is too long for version 20.
func qrCode(p *Page) Part {
	d, side := code(wholeLink(p))
	if d == "" {
		return nil
	}
	size := strconv.Itoa(side + 2*quiet)
	return El("svg", At("class", "qr"), At("viewBox", "0 0 "+size+" "+size), At("role", "img"),
		At("aria-label", "QR code of the quote's link"), At("shape-rendering", "crispEdges"),
		El("rect", At("width", size), At("height", size), At("fill", "#fff")),
		El("path", At("fill", "#000"), At("d", d)))
}

// code gives the dark modules of the smallest code that holds a text, as runs
// from left to right, and how many modules a side has.
func code(text string) (path string, side int) {
	for v := coding.Version(coding.MinVersion); v <= maxCode; v++ {
		if coding.String(text).Check() != nil || bitsOf(text, v) > 8*v.DataBytes(coding.M) {
			continue
		}
		plan, err := coding.NewPlan(v, coding.M, 0)
		if err != nil {
			return "", 0
		}
		c, err := plan.Encode(coding.String(text))
		if err != nil {
			return "", 0
		}
		return runs(c), c.Size
	}
	return "", 0
}

func bitsOf(text string, v coding.Version) int { return coding.String(text).Bits(v) }

func runs(c *coding.Code) string {
	var d strings.Builder
	for y := range c.Size {
		for x := 0; x < c.Size; {
			if !c.Black(x, y) {
				x++
				continue
			}
			n := 1
			for x+n < c.Size && c.Black(x+n, y) {
				n++
			}
			d.WriteString("M" + strconv.Itoa(x+quiet) + " " + strconv.Itoa(y+quiet) + "h" + strconv.Itoa(n) + "v1h-" +
				strconv.Itoa(n) + "z")
			x += n
		}
	}
	return d.String()
}

// wholeLink is the quote's link with the address where buyers find the page; the
// link alone where no address is known.
func wholeLink(p *Page) string {
	base := p.View.Address
	if base == "" && !strings.HasPrefix(p.Base, "file:") {
		base = p.Base
	}
	if base == "" {
		return p.Link
	}
	return base + "#" + p.Link
}
