package strip

import (
	"bytes"
	"encoding/binary"
	"fmt"
)

// tableSection is the id of the section that fills the table of functions.
const tableSection = 9

// firstFunction is the number that Go gives to the first function of a module.
const firstFunction = 0x1000

// Fold leaves out of a module what a loader can count up by itself, a tenth of
// what the packed core would weigh. The length stays, and so does every place;
// web/assets/unfold.js is the inverse.
//
//   - The table of functions holds one number after another: all but the first
//     become zero.
//   - Before a call the place to come back to is stored: the function's number
//     in the upper bits, the place within the function in the lower 16. Four of
//     its five bytes become a filler that stands in no other constant, and the
//     fifth says how much further on it is than the one before.
//
// The error says why nothing is left out. Whoever packs checks that unfold gives
// the module back.
func Fold(module []byte) ([]byte, error) {
	if _, err := readSections(module); err != nil {
		return nil, err
	}
	out := bytes.Clone(module)
	for at := len(header); at < len(out); {
		id := out[at]
		size, n := binary.Uvarint(out[at+1:])
		at += 1 + n
		var err error
		switch body := out[at:][:size]; id {
		case tableSection:
			err = foldTable(body)
		case codeSection:
			err = foldCode(body)
		}
		if err != nil {
			return nil, err
		}
		at += int(size)
	}
	return out, nil
}

// foldTable works on one segment of numbers that follow each other.
func foldTable(body []byte) error {
	if len(body) < 4 || body[0] != 1 || body[1] != 0 || body[2] != 0x41 {
		return fmt.Errorf("the table of functions has another form")
	}
	_, n := signed(body[3:])
	rest := body[3+n+1:] // behind the end of the constant
	count, n := binary.Uvarint(rest)
	rest = rest[n:]
	first, n := binary.Uvarint(rest)
	rest = rest[n:]
	for i := uint64(1); i < count; i++ {
		v, n := binary.Uvarint(rest)
		if n <= 0 || v != first+i {
			return fmt.Errorf("the table of functions is not in order")
		}
		clear(rest[:n])
		rest = rest[n:]
	}
	return nil
}

const (
	constant = 0x42 // i64.const
	store    = 0x37 // i64.store
	aligned  = 3
	filler   = 0x9d
)

func foldCode(body []byte) error {
	count, n := binary.Uvarint(body)
	rest := body[n:]
	for own := uint64(firstFunction); own < firstFunction+count; own++ {
		size, n := binary.Uvarint(rest)
		if n <= 0 || size > uint64(len(rest)-n) {
			return errCut
		}
		if err := foldPlaces(rest[n:][:size], own); err != nil {
			return err
		}
		rest = rest[n+int(size):]
	}
	return nil
}

// foldPlaces works on the places of one function.
func foldPlaces(code []byte, own uint64) error {
	before := uint64(0)
	for i := 0; i+8 <= len(code); i++ {
		if code[i] != constant || code[i+5] > 127 || code[i+6] != store || code[i+7] != aligned {
			continue
		}
		five := code[i+1 : i+6]
		if bytes.Count(five[:4], []byte{filler}) == 4 {
			return fmt.Errorf("a constant looks like one that is left out")
		}
		v, n := binary.Uvarint(five)
		place := v & 0xffff
		if n != 5 || v>>16 != own || place < before || place-before > 127 {
			continue
		}
		copy(five, []byte{filler, filler, filler, filler, byte(place - before)})
		before = place
		i += 7
	}
	return nil
}
