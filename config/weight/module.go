package weight

import (
	"fmt"
	"math"
	"strconv"

	"boxwright/config"
	"boxwright/config/body"
	"boxwright/config/quantity"
)

// module builds the parts of a take-off. All lengths are inches.
type module struct {
	body                    *config.Body
	length, width, height   float64
	tube, wall, spacing     float64
	skin, roofSkin, sheet   float64
	core, post, insul, batt float64
	panel                   float64
	stitch                  bool
	top, bottom             float64 // z of roof skin and of the floor's underside
	sideDoors, rearLeaves   int
	sideDoorX, sideDoorW    float64 // of the first; width of each
	sideDoorH               float64
	rearLeafW, rearLeafH    float64
	rollUp                  bool
	parts                   []Part
	listed                  bool // list the parts; without, only the sums are wanted
	lb, mx, my, mz          float64
	joints, seams           float64 // inches of weld, before stitching
	bayLong, bayWide        float64 // actual spacing of uprights and bows
	baysLong, baysWide      int
}

func newModule(b *config.Body, s config.Shell) (*module, bool) {
	usual := func(v quantity.Length, otherwise float64) float64 {
		if v == 0 {
			return otherwise
		}
		return float64(v)
	}
	number := func(v, otherwise float64) float64 {
		if v == 0 {
			return otherwise
		}
		return v
	}
	m := &module{
		body: b, length: float64(b.LengthIn), width: float64(b.WidthIn), height: float64(b.HeightIn),
		tube: usual(s.FrameTubeIn, 2), wall: usual(s.TubeWallIn, 0.125), spacing: usual(s.FrameSpacingIn, 16),
		skin: usual(s.SideSkinIn, 0.125), roofSkin: usual(s.RoofSkinIn, 0.090), sheet: usual(s.FloorSheetIn, 0.125),
		core: number(s.FloorCoreLbFt2, 2.2), post: usual(s.CornerPostIn, 0.250), insul: usual(s.InsulationIn, 2),
		batt: number(s.InsulationLbFt3, 1.9), panel: number(s.LiningLbFt2, 1.1), stitch: s.Weld == "stitch",
		sideDoors: s.SideDoors, rearLeaves: s.RearDoors, rollUp: s.CompDoors == "roll-up",
	}
	d := body.DoorsOf(b)
	m.sideDoorW, m.sideDoorX = usual(s.SideDoorIn, float64(d.SideWidthIn)), float64(d.SideXIn)
	m.rearLeafW = float64(d.RearWidthIn) / float64(max(s.RearDoors, 1))
	between := func(v, lo, hi float64) bool { return v >= lo && v <= hi }
	ok := between(m.length, 24, 1000) && between(m.width, 24, 200) && between(m.height, 24, 200) &&
		between(m.tube, 0.5, 12) && between(m.wall, 0.01, 2) && between(m.spacing, 4, 200) &&
		between(m.skin, 0, 2) && between(m.roofSkin, 0, 2) && between(m.sheet, 0, 2) && between(m.core, 0, 100) &&
		between(m.post, 0, cornerLegIn) && between(m.insul, 0, 24) && between(m.batt, 0, 100) &&
		between(m.panel, 0, 100) &&
		m.sideDoors >= 0 && m.rearLeaves >= 0 &&
		between(m.sideDoorW, 12, 80) && between(m.rearLeafW, 12, 96) &&
		float64(m.sideDoors)*(m.sideDoorW+2*m.tube) < m.length && float64(m.rearLeaves)*m.rearLeafW < m.width
	if !ok {
		return nil, false
	}
	m.bottom = -(m.tube + m.sheet + boardIn)
	m.top = m.height + m.bottom
	m.sideDoorH = math.Min(float64(d.SideHeightIn), m.height-12)
	m.rearLeafH = math.Min(usual(s.RearDoorHIn, float64(d.RearHeightIn)), m.height-12)
	m.baysLong = int(math.Ceil(m.length / m.spacing))
	m.baysWide = int(math.Ceil(m.width / m.spacing))
	m.bayLong, m.bayWide = m.length/float64(m.baysLong), m.width/float64(m.baysWide)
	return m, true
}

// inch writes an outside size as the stock list does: 2, 1.5.
func inch(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

func (m *module) tubeStock(w, h float64) string {
	return fmt.Sprintf("%s x %s x %.3f in tube, 6061", inch(w), inch(h), m.wall)
}

func sheetStock(t float64) string { return fmt.Sprintf("%.3f in sheet, 5052", t) }

// add counts a mass and reports whether its part is to be listed too.
func (m *module) add(lb, x, y, z float64) bool {
	m.lb += lb
	m.mx += lb * x
	m.my += lb * y
	m.mz += lb * z
	return m.listed
}

// tubes adds count pieces of w x h tube and the welds at both ends of each.
func (m *module) tubes(section, label string, w, h, length float64, count int, x, y, z float64) {
	if count <= 0 || length <= 0 {
		return
	}
	m.joints += 2 * 2 * (w + h) * float64(count)
	lb := TubeLbFt(Density6061, w, h, m.wall) * length / 12 * float64(count)
	if m.add(lb, x, y, z) {
		m.parts = append(m.parts, Part{
			Section: section, Label: label, Stock: m.tubeStock(w, h), LengthIn: quantity.Length(length), Count: count,
			Lb: quantity.Mass(lb), XIn: quantity.Length(x), YIn: quantity.Length(y), ZIn: quantity.Length(z),
		})
	}
}

// sheets adds count pieces of sheet, each less an opening.
func (m *module) sheets(section, label string, t, length, width, opening float64, count int, x, y, z float64) {
	if count <= 0 || length <= 0 || width <= 0 || t == 0 {
		return
	}
	opening = math.Min(opening, length*width)
	lb := SheetLb(Density5052, t, length*width-opening) * float64(count)
	if m.add(lb, x, y, z) {
		m.parts = append(m.parts, Part{
			Section: section, Label: label, Stock: sheetStock(t), LengthIn: quantity.Length(length),
			WidthIn: quantity.Length(width), Count: count,
			Lb: quantity.Mass(lb), BlankLb: quantity.Mass(SheetLb(Density5052, t, length*width) * float64(count)),
			XIn: quantity.Length(x), YIn: quantity.Length(y), ZIn: quantity.Length(z),
		})
	}
}

func (m *module) bulk(section, label string, amount float64, per string, lb, x, y, z float64) {
	if amount == 0 || lb == 0 {
		return
	}
	if m.add(lb, x, y, z) {
		m.parts = append(m.parts, Part{
			Section: section, Label: label, Amount: amount, Per: per, Lb: quantity.Mass(lb),
			XIn: quantity.Length(x), YIn: quantity.Length(y), ZIn: quantity.Length(z),
		})
	}
}

// doorX is where the i-th side door is centered: the only one in its place, more
// spread along the side.
func (m *module) doorX(i int) float64 {
	if m.sideDoors == 1 {
		return math.Min(m.sideDoorX+m.sideDoorW/2, m.length-m.sideDoorW/2)
	}
	return (float64(i) + 0.5) * m.length / float64(m.sideDoors)
}

// patch is an area of wall and its center; an opening has a negative area.
type patch struct{ area, x, y, z float64 }

func join(ps ...patch) patch {
	var s patch
	for _, p := range ps {
		s.area += p.area
		s.x += p.area * p.x
		s.y += p.area * p.y
		s.z += p.area * p.z
	}
	if s.area != 0 {
		s.x, s.y, s.z = s.x/s.area, s.y/s.area, s.z/s.area
	}
	return s
}

// walls are the four sides, openings of doors and exterior compartments out.
func (m *module) walls() (street, curb, front, rear patch) {
	mid := (m.top + m.bottom) / 2
	half := m.width / 2
	sill := m.bottom + m.tube
	street = patch{m.length * m.height, m.length / 2, -half, mid}
	curb = patch{m.length * m.height, m.length / 2, half, mid}
	front = patch{m.width * m.height, 0, 0, mid}
	rear = patch{m.width * m.height, m.length, 0, mid}
	for i := range m.sideDoors {
		curb = join(curb, patch{-m.sideDoorW * m.sideDoorH, m.doorX(i), half, sill + m.sideDoorH/2})
	}
	if m.rearLeaves > 0 {
		rear = join(rear, patch{-float64(m.rearLeaves) * m.rearLeafW * m.rearLeafH, m.length, 0, sill + m.rearLeafH/2})
	}
	for _, c := range m.body.Compartments {
		// Only what stands in the wall opens it; the rest hangs below the floor.
		low := math.Max(float64(c.ZIn-c.HeightIn/2), m.bottom)
		high := math.Min(float64(c.ZIn+c.HeightIn/2), m.top)
		tall, z := math.Max(high-low, 0), (low+high)/2
		switch face := float64(c.WidthIn) * tall; c.Side {
		case "street":
			street = join(street, patch{-face, float64(c.XIn), -half, z})
		case "curb":
			curb = join(curb, patch{-face, float64(c.XIn), half, z})
		case "rear":
			rear = join(rear, patch{-float64(c.DepthIn) * tall, m.length, float64(c.YIn), z})
		}
	}
	for _, p := range []*patch{&street, &curb, &front, &rear} {
		p.area = math.Max(p.area, 0) // more openings than wall leave no wall
	}
	return street, curb, front, rear
}

func (m *module) frame() {
	const s = SectionFrame
	t := m.tube
	half, mid := m.width/2, (m.top+m.bottom)/2
	long, wide, high := m.length-2*t, m.width-2*t, m.height-2*t
	under, roof := m.bottom+t/2, m.top-t/2

	if leg, w := cornerLegIn, m.post; w > 0 {
		lb := 4 * AngleLbFt(Density6061, leg, w) * m.height / 12
		if m.add(lb, m.length/2, 0, mid) {
			m.parts = append(m.parts, Part{
				Section: s, Label: "Corner posts", Stock: fmt.Sprintf("%s x %s x %.3f in corner extrusion, 6061",
					inch(leg), inch(leg), w),
				LengthIn: quantity.Length(m.height), Count: 4, Lb: quantity.Mass(lb),
				XIn: quantity.Length(m.length / 2), ZIn: quantity.Length(mid),
			})
		}
	}
	m.tubes(s, "Floor rails", t, t, long, 2, m.length/2, 0, under)
	m.tubes(s, "Floor cross members", t, t, wide, m.baysLong+1, m.length/2, 0, under)
	m.tubes(s, "Roof side rails", t, t, long, 2, m.length/2, 0, roof)
	m.tubes(s, "Roof end rails", t, t, wide, 2, m.length/2, 0, roof)
	m.tubes(s, "Roof bows", t, t, wide, m.baysLong-1, m.length/2, 0, roof)
	m.tubes(s, "Roof purlins", t/2, t, m.bayLong-t, 2*m.baysLong, m.length/2, 0, roof)

	lost := int(m.sideDoorW / m.bayLong) // uprights a side door takes the place of
	uprights := m.baysLong - 1
	m.tubes(s, "Street side uprights", t, t, high, uprights, m.length/2, t/2-half, mid)
	m.tubes(s, "Curb side uprights", t, t, high, max(uprights-lost*m.sideDoors, 0), m.length/2, half-t/2, mid)
	for i := range m.sideDoors {
		m.tubes(s, "Side door jambs", t, t, high, 2, m.doorX(i), half-t/2, mid)
		m.tubes(s, "Side door header", t, t, m.sideDoorW, 1, m.doorX(i), half-t/2, m.bottom+t+m.sideDoorH+t/2)
	}
	m.tubes(s, "Front wall uprights", t, t, high, m.baysWide-1, t/2, 0, mid)
	opening := float64(m.rearLeaves) * m.rearLeafW
	m.tubes(s, "Rear wall uprights", t, t, high, max(m.baysWide-1-int(opening/m.bayWide), 0), m.length-t/2, 0, mid)
	if m.rearLeaves > 0 {
		m.tubes(s, "Rear door jambs", t, t, high, 2, m.length-t/2, 0, mid)
		m.tubes(s, "Rear door header", t, t, opening, 1, m.length-t/2, 0, m.bottom+t+m.rearLeafH+t/2)
	}
	// Two rows of 1 x 2 girts between uprights.
	m.tubes(s, "Street side girts", t/2, t, m.bayLong-t, 2*m.baysLong, m.length/2, t/2-half, mid)
	m.tubes(s, "Curb side girts", t/2, t, m.bayLong-t, 2*max(m.baysLong-(lost+1)*m.sideDoors, 0), m.length/2, half-t/2,
		mid)
	m.tubes(s, "Front wall girts", t/2, t, m.bayWide-t, 2*m.baysWide, t/2, 0, mid)
}

func (m *module) skins() {
	const s = SectionSkins
	street, curb, front, rear := m.walls()
	side := func(label string, p patch, length float64) {
		m.sheets(s, label, m.skin, length, m.height, length*m.height-p.area, 1, p.x, p.y, p.z)
		m.seams += 2 * (length + m.height)
	}
	side("Street side skin", street, m.length)
	side("Curb side skin", curb, m.length)
	side("Front skin", front, m.width)
	side("Rear skin", rear, m.width)
	m.sheets(s, "Roof skin", m.roofSkin, m.length, m.width, 0, 1, m.length/2, 0, m.top)
	m.seams += 2 * (m.length + m.width)
}

func (m *module) doors() {
	sill := m.bottom + m.tube
	half := m.width / 2
	for i := range m.sideDoors {
		m.door("Side entry door", m.sideDoorW, m.sideDoorH, 1, m.doorX(i), half-doorWallIn/2, sill+m.sideDoorH/2)
	}
	m.door("Rear door leaf", m.rearLeafW, m.rearLeafH, m.rearLeaves, m.length-doorWallIn/2, 0, sill+m.rearLeafH/2)
}

// door is a 2 in leaf: skin, inner pan, a frame of 1 x 2 in tube, insulation
// and fittings.
func (m *module) door(label string, w, h float64, count int, x, y, z float64) {
	if count <= 0 {
		return
	}
	const s = SectionDoors
	n := float64(count)
	m.sheets(s, label+", skin", m.skin, h, w, 0, count, x, y, z)
	m.sheets(s, label+", pan", doorPanIn, h, w, 0, count, x, y, z)
	m.tubes(s, label+", stiles", 1, 2, h, 2*count, x, y, z)
	m.tubes(s, label+", rails", 1, 2, w-2, 2*count, x, y, z)
	volume := w * h * math.Min(m.insul, doorWallIn) / 1728 * n
	m.bulk(s, label+", insulation", volume, "ft3", volume*m.batt, x, y, z)
	m.bulk(s, label+", hinges and seal", n, "leaf", doorHingesLb*n, x, y, z)
}

func (m *module) floor() {
	const s = SectionFloor
	area := m.length * m.width / 144
	m.sheets(s, "Floor sheet", m.sheet, m.length, m.width, 0, 1, m.length/2, 0, m.bottom+m.tube+m.sheet/2)
	m.bulk(s, "Sub-floor board", area, "ft2", area*m.core, m.length/2, 0, -boardIn/2)
	m.seams += 2 * (m.length + m.width)
}

// insulation fills walls and roof; nothing is taken off for the frame it is
// fitted round, which leaves it a few pounds on the heavy side.
func (m *module) insulation() {
	street, curb, front, rear := m.walls()
	p := join(street, curb, front, rear, patch{m.length * m.width, m.length / 2, 0, m.top - m.tube/2})
	volume := p.area * m.insul / 1728
	m.bulk(SectionInsulation, "Wall and roof insulation", volume, "ft3", volume*m.batt, p.x, p.y, p.z)
}

func (m *module) lining() {
	street, curb, front, rear := m.walls()
	p := join(street, curb, front, rear)
	area := p.area / 144
	m.bulk(SectionLining, "Inside wall panels", area, "ft2", area*m.panel, p.x, p.y, p.z)
}

// compartments are those of the body, with what options add to them: boxes of sheet with a
// door for the outside ones, cabinets by their volume inside.
func (m *module) compartments() {
	const s = SectionCompartments
	for _, c := range m.body.Compartments {
		w, d, h := float64(c.WidthIn), float64(c.DepthIn), float64(c.HeightIn)
		x, y, z := float64(c.XIn), float64(c.YIn), float64(c.ZIn)
		if !(w > 0 && d > 0 && h > 0) || !finite(w, d, h, x, y, z) {
			continue
		}
		if c.Side == "inside" {
			volume := w * d * h / 1728
			m.bulk(s, c.Label, volume, "ft3", volume*cabinetLbFt3, x, y, z)
			continue
		}
		across, deep := w, d
		if c.Side == "rear" {
			across, deep = d, w
		}
		m.sheets(s, c.Label+", back", boxSheetIn, across, h, 0, 1, x, y, z)
		m.sheets(s, c.Label+", ends", boxSheetIn, deep, h, 0, 2, x, y, z)
		m.sheets(s, c.Label+", top and bottom", boxSheetIn, across, deep, 0, 2, x, y, z)
		m.hatch(c.Label, across, h, x, y, z)
		m.seams += 4*across + 4*deep + 4*h
	}
}

// hatch is the door of an outside compartment: skin and pan with hinge, latch and seal,
// or slats in tracks.
func (m *module) hatch(label string, w, h, x, y, z float64) {
	const s = SectionCompartments
	if m.rollUp {
		area := w * h / 144
		m.bulk(s, label+", roll-up door", area, "ft2", area*rollCurtainLb, x, y, z)
		m.bulk(s, label+", tracks, barrel and spring", 1, "set", rollTracksLb, x, y, z+h/4)
		return
	}
	m.sheets(s, label+", door", m.skin, w, h, 0, 1, x, y, z)
	m.sheets(s, label+", door pan", doorPanIn, w, h, 0, 1, x, y, z)
	m.bulk(s, label+", hinge, latch and seal", 1, "set", hatchFitsLb, x, y, z)
}

// mounting is what the module stands on its frame with, and what closes it below: sills,
// mounts, wheel boxes and skirts.
func (m *module) mounting() {
	const s = SectionMounting
	low := m.bottom - sillHighIn/2
	m.tubes(s, "Sills on the frame", sillWideIn, sillHighIn, m.length, 2, m.length/2, 0, low)
	each := 4.0
	if m.length > shortBodyIn {
		each = 5
	}
	m.bulk(s, "Body mounts", 2*each, "mounts", 2*each*mountLb, m.length/2, 0, low)
	x := wheelAlong * m.length
	m.sheets(s, "Wheel box, top", boxSheetIn, wheelBoxLongIn, wheelBoxWideIn, 0, 2, x, 0, wheelBoxHighIn+m.bottom)
	m.sheets(s, "Wheel box, inner side", boxSheetIn, wheelBoxLongIn, wheelBoxHighIn, 0, 2, x, 0, wheelBoxHighIn/2+
		m.bottom)
	m.sheets(s, "Wheel box, ends", boxSheetIn, wheelBoxWideIn, wheelBoxHighIn, 0, 4, x, 0, wheelBoxHighIn/2+m.bottom)
	m.sheets(s, "Skirts, sides", m.skin, m.length, skirtIn, wheelBoxLongIn*skirtIn, 2, m.length/2, 0,
		m.bottom-skirtIn/2)
	m.sheets(s, "Skirt, rear", m.skin, m.width, skirtIn, 0, 1, m.length, 0, m.bottom-skirtIn/2)
}

// harness of the module: looms, panels and grounds, as long as the module.
func (m *module) harness() {
	m.bulk(SectionHarness, "12 V and 125 V harness and panels", m.length, "in of module",
		harnessLb+harnessLbIn*m.length, 0.4*m.length, 0, m.top-20)
}

// welds are filler by length: frame joints always all round, skin seams
// continuous or in stitches.
func (m *module) welds() {
	mid := (m.top + m.bottom) / 2
	per := FilletLbIn(Density6061, weldLegIn)
	m.bulk(SectionWelds, "Frame joints, all round", m.joints, "in of weld", m.joints*per, m.length/2, 0, mid)
	label, length := "Skin seams, continuous", m.seams
	if m.stitch {
		label, length = "Skin seams, 1 in stitches every 4 in", m.seams*stitchShare
	}
	m.bulk(SectionWelds, label, length, "in of weld", length*per, m.length/2, 0, mid)
}
