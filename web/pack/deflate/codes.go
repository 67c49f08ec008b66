package deflate

import "math/bits"

// Extra bits of length codes 257 to 285 and of distance codes.
// Source: RFC 1951, 3.2.5.
var (
	lengthExtra   = [29]uint8{0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 2, 2, 2, 2, 3, 3, 3, 3, 4, 4, 4, 4, 5, 5, 5, 5, 0}
	distanceExtra = [30]uint8{0, 0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 5, 5, 6, 6, 7, 7, 8, 8, 9, 9, 10, 10, 11, 11, 12, 12, 13, 13}
)

// The least length of each code and the code of each length.
var lengthBase, lengthCode = lengthCodes()

func lengthCodes() (base [29]uint16, code [maxMatch + 1]uint16) {
	length := uint16(minMatch)
	for i, extra := range lengthExtra {
		if i == len(lengthExtra)-1 {
			length = maxMatch // has a code of its own
		}
		base[i] = length
		for range 1 << extra {
			if length <= maxMatch {
				code[length] = uint16(endOfBlock + 1 + i)
			}
			length++
		}
	}
	return base, code
}

// distanceCode is two codes for every power of two.
func distanceCode(distance uint16) int {
	d := distance - 1
	if d < 4 {
		return int(d)
	}
	top := bits.Len16(d) - 1
	return 2*top + int(d>>(top-1)&1)
}

// distanceBase is the least distance of a code.
func distanceBase(code int) uint16 {
	if code < 4 {
		return uint16(code) + 1
	}
	return uint16(2+code&1)<<distanceExtra[code] + 1
}
