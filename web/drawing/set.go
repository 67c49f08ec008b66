package drawing

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/body"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// Plate is one sheet of the drawing set, without its frame.
type Plate struct {
	Title  string
	Scale  int     // one to so many; 0: nothing is drawn
	shapes []Shape // in hundredths of an inch of paper
	List   []Line
	Notes  []string
	boxes  [][4]float64
}

// plateHigh is the height of a plate's drawing in hundredths of an inch, with a list below.
const plateHigh = 690.0

// Set draws the plates of a unit, all but the cover. What stands otherwise than in the
// model before is clouded; nil where there is none.
func Set(p *page.Page, was *body.Model) []Plate {
	m := p.Q.Space.Model
	s := &set{p: p, m: m, was: was}
	out := s.outside()
	return append(out, s.inside()...)
}

// Drawing of a plate for the page; nil where nothing is drawn.
func (x *Plate) Drawing() Part {
	if x.Scale == 0 {
		return nil
	}
	return El("svg", Class("plate-drawing"), At("role", "img"), At("aria-label", x.Title+", to scale."),
		At("viewBox", "0 0 "+page.Coord(plateWide)+" "+page.Coord(plateHigh)), Many(paths(x.shapes)...))
}

// set is what the plates are drawn from.
type set struct {
	p      *page.Page
	m, was *body.Model
}

// plate draws rows of sights.
func (s *set) plate(title string, high float64, rows ...[]sight) Plate {
	d := &plate{in: s.p, changed: s.changed(), lines: map[*body.Part]int{}}
	scale := d.draw(rows, high)
	return Plate{Title: title, shapes: d.shapes, Scale: scale, List: d.list, boxes: d.boxes}
}

// changed tells the parts that the model before does not have, or has elsewhere or otherwise.
func (s *set) changed() func(*body.Part) bool {
	if s.was == nil {
		return nil
	}
	return func(p *body.Part) bool {
		if p.Option == "" {
			return false
		}
		for i := range s.was.Parts {
			q := &s.was.Parts[i]
			if q.Option == p.Option && q.Kind == p.Kind && q.Box == p.Box && q.Color == p.Color && q.Text == p.Text {
				return false
			}
		}
		return true
	}
}

// LeftOut are the things of options that a model had before and has no more, by label.
func LeftOut(m, was *body.Model) (list []string) {
	for i := range was.Parts {
		p := &was.Parts[i]
		stays := func(q body.Part) bool { return q.Option == p.Option && q.Kind == p.Kind }
		if p.Option != "" && !slices.ContainsFunc(m.Parts, stays) && !slices.Contains(list, p.Label) {
			list = append(list, p.Label)
		}
	}
	return list
}

// sight of a view; number says what gets a balloon.
func (s *set) sight(id string, number func(*body.Part) bool) sight {
	out := sight{View: ViewOf(s.m, id), parts: map[string]*body.Part{}, number: number}
	for i := range s.m.Parts {
		out.parts[s.m.Parts[i].ID] = &s.m.Parts[i]
	}
	return out
}

// side is a sight from a side, with its dimensions.
func (s *set) side(id string, number func(*body.Part) bool) sight {
	m, out := s.m, s.sight(id, number)
	o := m.Overall()
	left, right := m.Bumper, math.Max(m.Rear, m.FrameEnd)
	for i := range m.Parts {
		if p := &m.Parts[i]; p.Option != "" && (p.Kind == "bumper" || p.Kind == "step") {
			left, right = math.Min(left, p.X0), math.Max(right, p.X1)
		}
	}
	sign := 1.0
	if id == "curb" {
		sign = -1
	}
	add := func(from, to float64, about bool) {
		out.across = append(out.across, span{sign * from, sign * to, about})
	}
	add(0, m.RearAxle, false)
	add(m.Front, m.Rear, false)
	add(left, right, false)
	out.up = []span{{0, m.Floor, false}, {0, float64(o.HeightIn), false}}
	return out
}

// outsideThings are numbered on the outside: what is not a lamp, nor flat, nor the bare truck.
func outsideThings(p *body.Part) bool {
	switch p.Kind {
	case "lamp", "bar", "strip", body.KindWheel, body.KindWheelBox, body.KindFrame, body.KindFuel:
		return false
	}
	return !p.Flat && outward(p)
}

func insideThings(p *body.Part) bool {
	switch p.Kind {
	case body.KindWheelBox, "strip", "compartment":
		return false
	}
	return !outward(p) && !p.Flat
}

// controls are the consoles, panels, screens and outlets.
func controls(p *body.Part) bool {
	switch p.Kind {
	case "console", "panel", "screen", "outlet", "gas":
		return true
	}
	return false
}

func (s *set) outside() []Plate {
	m := s.m
	end := func(id string) sight {
		out := s.sight(id, func(p *body.Part) bool { // what is on this end, not what stands out at the sides
			return outsideThings(p) && (p.Face == id || p.Kind == "mirror")
		})
		bare, all := math.Max(m.Half, m.CabHalf), float64(m.Overall().WidthIn)/2
		out.across = []span{{-bare, bare, false}, {-all, all, false}}
		out.up = []span{{0, float64(m.Overall().HeightIn), false}}
		return out
	}
	roof := s.sight("roof", outsideThings)
	roof.across = []span{{m.Front, m.Rear, false}}
	roof.up = []span{{-m.Half, m.Half, false}}
	floor := s.sight("floor", insideThings)
	floor.across = []span{{m.Front + m.Wall, m.Rear - m.Wall, false}, {m.Front, m.Rear, false}}
	floor.up = []span{{-m.Half + m.Wall, m.Half - m.Wall, false}, {-m.Half, m.Half, false}}
	out := []Plate{
		s.plate("Street side", plateHigh, []sight{s.side("street", outsideThings)}),
		s.plate("Curb side", plateHigh, []sight{s.side("curb", outsideThings)}),
		s.plate("Front and rear", plateHigh, []sight{end("front"), end("rear")}),
		s.plate("Roof", plateHigh, []sight{roof}),
		s.plate("Floor", plateHigh, []sight{floor}),
	}
	if open := s.compartments(); open.Scale > 0 {
		return append(out, open)
	}
	out[len(out)-1].Notes = []string{"The unit has no outside compartments."}
	return out
}

// behindWall tells what a wall is drawn with besides what is fixed to it.
const behindWall = "Dashed: compartments and wheel boxes behind the lining, and what lies in the middle of the room."

func (s *set) inside() []Plate {
	m := s.m
	wall := func(id string, from, to float64, number func(*body.Part) bool) sight {
		out := s.sight(id, number)
		out.across = []span{{from + m.Wall, to - m.Wall, false}}
		out.up = []span{{m.Floor, m.Ceiling, false}}
		return out
	}
	lights := func(id string) sight { return s.sight(id, nil) }
	ahead := s.plate("Lights and marking, street side and front", plateHigh, []sight{lights("street"), lights("front")})
	ahead.List = s.lights(config.FaceStreet, config.FaceFront, config.FaceRoof)
	behind := s.plate("Lights and marking, curb side and rear", plateHigh, []sight{lights("curb"), lights("rear")})
	behind.List = s.lights(config.FaceCurb, config.FaceRear, config.FaceUnder)
	side := func(title string, of sight) Plate {
		x := s.plate(title, plateHigh, []sight{of})
		if x.List == nil {
			x.Notes = append(x.Notes, "Nothing is fixed to this wall.")
		}
		x.Notes = append(x.Notes, behindWall)
		return x
	}
	out := []Plate{
		side("Inside, street-side wall", wall("street-wall", -m.Rear, -m.Front, insideThings)),
		side("Inside, curb-side wall", wall("curb-wall", m.Front, m.Rear, insideThings)),
		s.plate("Bulkhead and rear doors, inside", plateHigh, []sight{wall("bulkhead", -m.Half, m.Half, insideThings),
			wall("rear-inside", -m.Half, m.Half, insideThings)}),
	}
	out = append(out, s.plates("Consoles", wall("street-wall", -m.Rear, -m.Front, controls),
		s.sight("floor", controls))...)
	return append(out, ahead, behind)
}

// smallest scale at which a sheet is good to measure on, one to so many.
const smallest = 32

// plates draws sights beside each other, or on a sheet each where they would be too small.
func (s *set) plates(title string, list ...sight) (out []Plate) {
	if fit([][]sight{list}, plateHigh) <= smallest {
		return []Plate{s.plate(title, plateHigh, list)}
	}
	for i := range list {
		out = append(out, s.plate(title+", "+list[i].Title, plateHigh, list[i:i+1]))
	}
	return out
}

// compartments are drawn through their open doors, with what rides in them; on an empty
// plate where the unit has none outside.
func (s *set) compartments() Plate {
	var row []sight
	var list []Line
	for i, u := range s.p.Q.Space.Compartments {
		if u.Side == "inside" {
			continue
		}
		w, h := float64(u.WidthIn), float64(u.HeightIn)
		var open sheet
		open.rect(layerEdge, frame2{0, w, 0, h})
		for _, x := range u.Placed {
			open.rect(layerStore, frame2{x.At[0], x.At[0] + x.Size[0], x.At[2], x.At[2] + x.Size[2]})
		}
		row = append(row, sight{View: View{Title: Letter(i), Groups: []Group{{Shapes: open.shapes}}},
			across: []span{{0, w, false}}, up: []span{{0, h, false}}})
		d := &plate{in: s.p}
		deep := d.size(span{0, float64(u.DepthIn), false}) + " deep"
		if u.Gear != nil {
			deep += ", room left beside " + strings.Join(u.Gear, ", ")
		}
		list = append(list, Line{Count: 1, Label: Letter(i) + " " + u.Label, Size: deep})
	}
	if row == nil {
		return Plate{}
	}
	rows := [][]sight{row}
	if len(row) > 6 {
		rows = [][]sight{row[:len(row)/2], row[len(row)/2:]}
	}
	out := s.plate("Compartments open: room for loose equipment", plateHigh, rows...)
	out.List = list
	return out
}

// lights and marks on some faces are counted by what they are and their color.
func (s *set) lights(faces ...string) (list []Line) {
	seen := map[string]int{}
	for i := range s.m.Parts {
		p := &s.m.Parts[i]
		lamp := p.Kind == "lamp" || p.Kind == "bar" || p.Kind == "strip"
		if !lamp && !p.Flat || p.Option == "" || !slices.Contains(faces, p.Face) {
			continue
		}
		size := p.Text
		if p.Color != "" {
			size = p.Color
			if lamp {
				size = config.ColorNames[p.Color] + " " + p.Color
			}
			if p.Text != "" {
				size += ", “" + p.Text + "”"
			}
		}
		key := p.Option + "/" + p.Label + "/" + size
		if n, had := seen[key]; had {
			list[n].Count++
			continue
		}
		seen[key] = len(list)
		list = append(list, Line{Count: 1, Label: p.Label, Size: size})
	}
	return list
}

// ScaleWords of a plate, with what it is on paper half as large.
func (x *Plate) ScaleWords() string {
	if x.Scale == 0 {
		return "none"
	}
	return "1:" + strconv.Itoa(x.Scale) + "; half size 1:" + strconv.Itoa(2*x.Scale)
}
