package weight

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"boxwright/config/quantity"
)

// Stock is what the plant buys and cuts: all cuts of one section or sheet.
type Stock struct {
	Stock    string        `json:"stock"`
	Cuts     []Cut         `json:"cuts"` // longest first
	LengthFt float64       `json:"length_ft,omitempty"`
	AreaFt2  float64       `json:"area_ft2,omitempty"` // of blanks, before openings are cut out
	Bars     int           `json:"bars,omitempty"`     // of BarIn, when nothing is longer
	Sheets   int           `json:"sheets,omitempty"`   // of SheetIn by SheetWideIn, when nothing is larger
	Lb       quantity.Mass `json:"lb"`                 // as fitted
	BlankLb  quantity.Mass `json:"blank_lb"`           // as cut, before openings
}

// Cut is a number of pieces alike and what they are for.
type Cut struct {
	LengthIn quantity.Length `json:"length_in"`
	WidthIn  quantity.Length `json:"width_in,omitempty"`
	Count    int             `json:"count"`
	For      []string        `json:"for"`
	Lb       quantity.Mass   `json:"lb"` // of all pieces, as fitted
	BlankLb  quantity.Mass   `json:"blank_lb"`
}

// How tube and sheet are bought and sawn: common practice, no source.
const (
	BarIn       = 240.0
	SheetIn     = 240.0
	SheetWideIn = 96.0
	KerfIn      = 0.125
)

// CutList sorts the take-off's pieces by stock, alike ones together. What is
// bought by amount (board, batt, panels, coat, weld metal) has no stock and is not in it.
func (t *TakeOff) CutList() []Stock {
	if t == nil {
		return nil
	}
	var out []Stock
	for _, p := range t.Parts {
		if p.Stock == "" {
			continue
		}
		i := slices.IndexFunc(out, func(s Stock) bool { return s.Stock == p.Stock })
		if i < 0 {
			i = len(out)
			out = append(out, Stock{Stock: p.Stock})
		}
		out[i].add(p)
	}
	for i := range out {
		s := &out[i]
		slices.SortStableFunc(s.Cuts, func(a, b Cut) int {
			return cmp.Or(cmp.Compare(b.LengthIn, a.LengthIn), cmp.Compare(b.WidthIn, a.WidthIn))
		})
		if s.AreaFt2 == 0 {
			s.Bars = bars(s.Cuts)
		} else {
			s.Sheets = sheets(s.Cuts)
		}
	}
	slices.SortFunc(out, func(a, b Stock) int { return strings.Compare(a.Stock, b.Stock) })
	return out
}

func (s *Stock) add(p Part) {
	length, width, n := float64(p.LengthIn), float64(p.WidthIn), float64(p.Count)
	blank := p.Lb
	if width > 0 {
		s.AreaFt2 += length * width / 144 * n
		blank = p.BlankLb
	} else {
		s.LengthFt += length / 12 * n
	}
	s.Lb += p.Lb
	s.BlankLb += blank
	alike := func(c Cut) bool {
		return math.Abs(float64(c.LengthIn-p.LengthIn)) < 1e-3 && math.Abs(float64(c.WidthIn-p.WidthIn)) < 1e-3
	}
	i := slices.IndexFunc(s.Cuts, alike)
	if i < 0 {
		i = len(s.Cuts)
		s.Cuts = append(s.Cuts, Cut{LengthIn: p.LengthIn, WidthIn: p.WidthIn})
	}
	c := &s.Cuts[i]
	c.Count += p.Count
	c.Lb += p.Lb
	c.BlankLb += blank
	if !slices.Contains(c.For, p.Label) {
		c.For = append(c.For, p.Label)
	}
}

// bars counts how many bars the cuts need when each goes into the first bar
// that still takes it, longest first: an order that wastes little, not a proof
// of the least. Zero when a piece is longer than a bar.
func bars(cuts []Cut) int {
	var left []float64
	for _, c := range cuts {
		need := float64(c.LengthIn) + KerfIn
		if float64(c.LengthIn) > BarIn {
			return 0
		}
		for range c.Count {
			i := slices.IndexFunc(left, func(v float64) bool { return v+KerfIn >= need })
			if i < 0 {
				i = len(left)
				left = append(left, BarIn)
			}
			left[i] -= need
		}
	}
	return len(left)
}

// sheets counts how many sheets the blanks need when they are cut out of strips: the
// widest blank first, each into the first strip that takes it, turned where it goes, or else into a new strip of
// the first sheet that has room for one. As with bars, no proof of the least. Zero when a
// blank is larger than a sheet.
func sheets(cuts []Cut) int {
	type strip struct{ wide, left float64 }
	type blank struct{ long, wide float64 }
	var blanks []blank
	for _, c := range cuts {
		b := blank{float64(max(c.LengthIn, c.WidthIn)), float64(min(c.LengthIn, c.WidthIn))}
		if b.long > SheetIn || b.wide > SheetWideIn {
			return 0
		}
		for range c.Count {
			blanks = append(blanks, b)
		}
	}
	slices.SortFunc(blanks, func(a, b blank) int {
		return cmp.Or(cmp.Compare(b.wide, a.wide), cmp.Compare(b.long, a.long))
	})
	var strips []strip
	var room []float64 // left across each sheet; the last cut may fall beyond the edge
	for _, b := range blanks {
		along := func(s strip) float64 { // what the blank takes of a strip
			if b.long <= s.wide {
				return b.wide
			}
			return b.long
		}
		at := slices.IndexFunc(strips, func(s strip) bool { return s.wide >= b.wide && s.left >= along(s) })
		if at < 0 {
			sheet := slices.IndexFunc(room, func(v float64) bool { return v >= b.wide })
			if sheet < 0 {
				sheet = len(room)
				room = append(room, SheetWideIn)
			}
			room[sheet] -= b.wide + KerfIn
			at = len(strips)
			strips = append(strips, strip{b.wide, SheetIn})
		}
		strips[at].left -= along(strips[at]) + KerfIn
	}
	return len(room)
}
