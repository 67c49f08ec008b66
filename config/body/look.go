package body

import (
	"cmp"
	"strings"

	"boxwright/config"
)

// dress gathers how the picked options change the look of the whole.
func (m *Model) dress(cat *config.Catalogue, u *config.Unit) {
	for _, p := range u.Picks {
		o := cat.OptionByID(p.Option)
		if o == nil || o.Look == nil || p.Qty == 0 {
			continue
		}
		l := o.Look
		m.Look.Glass, m.Look.Doors = cmp.Or(l.Glass, m.Look.Glass), cmp.Or(l.Doors, m.Look.Doors)
		m.Look.Cabinets, m.Look.Cot = cmp.Or(l.Cabinets, m.Look.Cabinets), cmp.Or(l.Cot, m.Look.Cot)
		m.Look.Wheels, m.Look.TallDoors = cmp.Or(l.Wheels, m.Look.Wheels), l.TallDoors || m.Look.TallDoors
		if l.Lamps != nil {
			m.Look.Lamps = l.Lamps
		}
		if l.Paint != nil {
			paint := *l.Paint
			paint.Colors = append([]string(nil), paint.Colors...)
			copy(paint.Colors, config.ColorsIn(u.Detail(o.ID)))
			m.Look.Paint = &paint
		}
	}
}

// said is what the customer typed to an option up to the first comma.
func (m *Model) said(o *config.Option) string {
	text, _, _ := strings.Cut(m.details(o.ID), ",")
	return strings.TrimSpace(text)
}

// color of the piece at a place in its row on a face.
func (m *Model) color(o *config.Option, at *config.Place, face string, n int) string {
	switch at.Color {
	case config.ColorWarn:
		if letters := m.Look.Lamps[face]; letters != "" {
			if all := len(letters); all%2 == 1 && at.Count > 1 {
				n += all/2 - at.Count/2 // the middle of the row is the pattern's
				if at.Count%2 == 0 && n >= all/2 {
					n++ // a row without a middle leaves that out
				}
				n += all * at.Count
			}
			return config.ColorOf(letters[n%len(letters)])
		}
		return ""
	case config.ColorAsks:
		if named := config.ColorsIn(m.details(o.ID)); len(named) > 0 {
			return named[0]
		}
		return ""
	}
	return at.Color
}

// mirroredFace is the face of a piece that may stand on the other side.
func mirroredFace(face string, other bool) string {
	if !other {
		return face
	}
	switch face {
	case config.FaceStreet:
		return config.FaceCurb
	case config.FaceCurb:
		return config.FaceStreet
	case config.FaceStreetWall:
		return config.FaceCurbWall
	case config.FaceCurbWall:
		return config.FaceStreetWall
	}
	return face
}
