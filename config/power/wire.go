package power

import (
	"fmt"
	"strconv"
)

// Gauge is a conductor size by its number: 18 to 1, then 0 for 1/0, -1 for
// 2/0, -2 for 3/0 and -3 for 4/0.
type Gauge int

// String is the trade's writing: "10", "2/0".
func (g Gauge) String() string {
	if g <= 0 {
		return strconv.Itoa(1-int(g)) + "/0"
	}
	return strconv.Itoa(int(g))
}

// AreaTable is a named table of conductor areas. Trap: automotive conductors
// hold 5 to 12 % less copper than the same number by ASTM B258, and the size a
// voltage drop asks for can differ by one.
type AreaTable struct {
	Name string
	Rows []Area // thinnest first
}

// Area of one size in circular mils.
type Area struct {
	Gauge   Gauge
	CircMil float64
	Source  string
}

// The area tables.
var (
	// SAE areas are the minima of automotive cable.
	SAE = AreaTable{Name: "SAE J1127/J1128", Rows: []Area{
		{18, 1537, saeRecalled}, {16, 2336, saeRecalled}, {14, 3702, saeRecalled}, {12, 5833, saeRecalled}, {10, 9343, saeRecalled}, {8, 14810, saeRecalled},
		{6, 24538, saeRead}, {4, 37360, saeRead}, {2, 62450, saeRead}, {0, 98980, saeRead}, {-1, 125100, saeRead}, {-3, 205500, saeRead},
	}}
	// AWG areas are those of NEC chapter 9 table 8.
	AWG = AreaTable{Name: "AWG (NEC chapter 9 table 8)", Rows: []Area{
		{18, 1620, table8}, {16, 2580, table8}, {14, 4110, table8}, {12, 6530, table8}, {10, 10380, table8}, {8, 16510, table8}, {6, 26240, table8}, {4, 41740, table8},
		{2, 66360, table8}, {1, 83690, table8}, {0, 105600, table8}, {-1, 133100, table8}, {-2, 167800, table8}, {-3, 211600, table8},
	}}
)

const (
	saeRead     = "SAE minima as listed by batterycable.co"
	saeRecalled = "SAE J1127/J1128, from memory; agrees with the worked example of hollandmarine.com p52"
	table8      = "NEC chapter 9 table 8 (sfasoft.com/look/35/Conductor_Properties)"
)

// Area returns the area of a size, or false when the table has none.
func (t AreaTable) Area(g Gauge) (Area, bool) {
	for _, a := range t.Rows {
		if a.Gauge == g {
			return a, true
		}
	}
	return Area{}, false
}

// CopperK is the resistance of one circular-mil foot of copper, warm: at some 30 C.
// Source: ABYC E-11, recalled; the worked example V-4 agrees.
const CopperK = 10.75

// Spans of what a wire of a vehicle can be.
const mostAmps, mostFt, mostCircMil = 1e5, 1e5, 1e8

// AreaFor is the conductor area that keeps a voltage drop.
//
//	CM = K I L / E
//
// Source: ABYC E-11 (variables as defined on hollandmarine.com p52-53), K =
// 10.75. Units: I in A, L in ft of conductor out and back, E in V, CM in
// circular mils. Valid: I and L from 0 to 100,000, E from 0.001 V; otherwise an
// error. Example: 10 A, 21 ft, 0.36 V: 6,270.8.
func AreaFor(amps, roundTripFt, dropV float64) (float64, error) {
	if !(amps >= 0 && amps <= mostAmps && roundTripFt >= 0 && roundTripFt <= mostFt) {
		return 0, fmt.Errorf("%v A over %v ft: state a current and a length from 0 up", amps, roundTripFt)
	}
	if !(dropV >= 0.001) || !finite(dropV) {
		return 0, fmt.Errorf("%v V is no voltage drop: state one above zero", dropV)
	}
	return CopperK * amps * roundTripFt / dropV, nil
}

// DropByArea is the same law solved for the drop.
//
//	E = K I L / CM
//
// Source: ABYC E-11, see AreaFor. Units: A, ft out and back, circular mils, V.
// Valid: I and L from 0 to 100,000, an area from 1 circular mil; otherwise 0.
// Example: 20 A, 50 ft, 10,380: 1.036 V.
func DropByArea(amps, roundTripFt, circMil float64) float64 {
	if !(amps >= 0 && amps <= mostAmps && roundTripFt >= 0 && roundTripFt <= mostFt) ||
		!(circMil >= 1 && circMil <= mostCircMil) {
		return 0
	}
	return CopperK * amps * roundTripFt / circMil
}

// ohmsPerKft of stranded uncoated copper at 75 C, by size.
// Source: NEC chapter 9 table 8 (sfasoft.com/look/35/Conductor_Properties).
var ohmsPerKft = map[Gauge]float64{18: 7.95, 16: 4.99, 14: 3.14, 12: 1.98, 10: 1.24, 8: 0.778, 6: 0.491, 4: 0.308,
	2: 0.194, 1: 0.154, 0: 0.122, -1: 0.0967, -2: 0.0766, -3: 0.0608}

// DropHot is the drop in a stranded AWG conductor at 75 C, the warm end of what
// a loaded wire reaches; automotive areas are scaled to their copper.
//
//	E = I L R/1000 x (AWG area / area)
//
// Source: NEC chapter 9 table 8. Units: A, ft out and back, V. Valid: sizes of
// the table, I and L from 0 to 100,000; false for any other. Example: 20 A, 50 ft, AWG 10: 1.24 V.
func DropHot(amps, roundTripFt float64, g Gauge, t AreaTable) (float64, bool) {
	r, known := ohmsPerKft[g]
	a, has := t.Area(g)
	base, _ := AWG.Area(g)
	if !known || !has || !(a.CircMil >= 1) || !(amps >= 0 && amps <= mostAmps) || !(roundTripFt >= 0 &&
		roundTripFt <= mostFt) {
		return 0, false
	}
	return amps * roundTripFt * r / 1000 * base.CircMil / a.CircMil, true
}
