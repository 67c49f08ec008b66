package drawing

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"boxwright/config/quantity"
	"boxwright/config/space"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// Fronts draws each loaded compartment as seen through its door, to one scale,
// in the arrangement that was found.
func Fronts(p *page.Page) Part {
	const scale = 3
	return El("div", Class("fronts"), Each(p.Q.Space.Compartments, func(i int, u space.Use) Part {
		if len(u.Placed) == 0 {
			return nil
		}
		w, h := float64(u.WidthIn), float64(u.HeightIn)
		parts := []Part{page.Rect("store", 0, 0, w, h)}
		numbers := map[string]int{}
		var names []string
		things := slices.Clone(u.Placed)
		// The farthest is drawn first, so that what stands before it covers it.
		slices.SortStableFunc(things, func(a, b space.Placed) int { return cmp.Compare(b.At[1], a.At[1]) })
		for _, x := range things {
			if numbers[x.Equipment] == 0 {
				numbers[x.Equipment] = len(names) + 1
				names = append(names, strconv.Itoa(len(names)+1)+" "+p.Q.Edition.Cat.LabelOf(x.Equipment))
			}
			left, top := x.At[0], h-x.At[2]-x.Size[2]
			parts = append(parts, page.Rect("item", left, top, x.Size[0], x.Size[2]),
				page.Label("mid", left+x.Size[0]/2, top+x.Size[2]/2+1.5, strconv.Itoa(numbers[x.Equipment])))
		}
		legend := Letter(i) + " " + u.Label + ", " + p.Show(float64(u.MassLb), quantity.Pound) + ": " +
			strings.Join(names, "; ")
		return El("figure",
			El("svg", Class("drawing front"), At("role", "img"),
				At("aria-label", "Through the door of compartment "+legend), At("width", page.Coord(scale*w+6)),
				At("height", page.Coord(scale*h+6)), At("viewBox", page.Coord(-1)+" "+page.Coord(-1)+" "+
					page.Coord(w+2)+" "+page.Coord(h+2)), Many(parts...)),
			El("figcaption", Class("legend"), Text(legend)))
	}))
}
