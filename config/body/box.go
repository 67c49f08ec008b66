package body

import "math"

// Box is the room that a part takes: x inches behind the front axle, y right of the
// centerline, z above the ground.
type Box struct{ X0, X1, Y0, Y1, Z0, Z1 float64 }

// Center of the box.
func (b Box) Center() (x, y, z float64) {
	return (b.X0 + b.X1) / 2, (b.Y0 + b.Y1) / 2, (b.Z0 + b.Z1) / 2
}

// Volume in cubic inches.
func (b Box) Volume() float64 { return (b.X1 - b.X0) * (b.Y1 - b.Y0) * (b.Z1 - b.Z0) }

// Mirrored is the box on the other side of the centerline.
func (b Box) Mirrored() Box {
	b.Y0, b.Y1 = -b.Y1, -b.Y0
	return b
}

// Moved is the box shifted along and across.
func (b Box) Moved(x, y float64) Box {
	b.X0, b.X1, b.Y0, b.Y1 = b.X0+x, b.X1+x, b.Y0+y, b.Y1+y
	return b
}

// Overlap is how far two boxes stand into each other along x, y and z; false where
// they do not.
func (b Box) Overlap(c Box) (x, y, z float64, ok bool) {
	x = math.Min(b.X1, c.X1) - math.Max(b.X0, c.X0)
	y = math.Min(b.Y1, c.Y1) - math.Max(b.Y0, c.Y0)
	z = math.Min(b.Z1, c.Z1) - math.Max(b.Z0, c.Z0)
	return x, y, z, x > 0 && y > 0 && z > 0
}

// about is a box around a center.
func about(x, y, z, length, width, height float64) Box {
	return Box{x - length/2, x + length/2, y - width/2, y + width/2, z - height/2, z + height/2}
}
