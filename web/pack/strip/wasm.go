package strip

import (
	"encoding/binary"
	"errors"
	"fmt"
)

// header is the magic and version of a WebAssembly module.
const header = "\x00asm\x01\x00\x00\x00"

// dataSection is the id of the section that holds the initial memory.
const dataSection = 11

// section is one section of a module: its id and its bytes without the length.
type section struct {
	id   byte
	body []byte
}

var errCut = errors.New("the module ends in the middle of a number or a section")

// readSections takes a module apart.
func readSections(module []byte) ([]section, error) {
	if len(module) < len(header) || string(module[:len(header)]) != header {
		return nil, errors.New("this is not a WebAssembly module of version 1")
	}
	var sections []section
	for rest := module[len(header):]; len(rest) > 0; {
		id := rest[0]
		size, n := binary.Uvarint(rest[1:])
		if n <= 0 || size > uint64(len(rest)-1-n) {
			return nil, errCut
		}
		body := rest[1+n:][:size]
		sections = append(sections, section{id, body})
		rest = rest[1+n+int(size):]
	}
	return sections, nil
}

// joinSections is the inverse of readSections.
func joinSections(sections []section) []byte {
	module := []byte(header)
	for _, s := range sections {
		module = append(module, s.id)
		module = binary.AppendUvarint(module, uint64(len(s.body)))
		module = append(module, s.body...)
	}
	return module
}

// find is the first section with the id, nil for none.
func find(sections []section, id byte) *section {
	for i := range sections {
		if sections[i].id == id {
			return &sections[i]
		}
	}
	return nil
}

// Opcodes of the expression that says where a data segment goes.
const (
	opI32Const = 0x41
	opEnd      = 0x0b
)

// maxMemory bounds the memory a module may ask to have filled.
const maxMemory = 1 << 30

// readMemory lays the data segments out as the memory they make at the start,
// from address 0 to the last byte that is set.
func readMemory(body []byte) ([]byte, error) {
	count, n := binary.Uvarint(body)
	if n <= 0 {
		return nil, errCut
	}
	body = body[n:]
	var memory []byte
	for range count {
		if len(body) < 2 || body[0] != 0 || body[1] != opI32Const {
			return nil, errors.New("a data segment is not of the plain kind the Go linker writes")
		}
		at, n := signed(body[2:])
		if n == 0 || len(body) < 2+n+1 || body[2+n] != opEnd {
			return nil, errCut
		}
		body = body[2+n+1:]
		size, n := binary.Uvarint(body)
		if n <= 0 || size > uint64(len(body)-n) {
			return nil, errCut
		}
		end := at + int64(size)
		if at < 0 || end > maxMemory {
			return nil, fmt.Errorf("a data segment lies at %d to %d, outside the memory", at, end)
		}
		if end > int64(len(memory)) {
			memory = append(memory, make([]byte, end-int64(len(memory)))...)
		}
		copy(memory[at:], body[n:][:size])
		body = body[n+int(size):]
	}
	return memory, nil
}

// gap is the shortest run of zeros left out between two segments. The linker
// leaves out runs of 8, which makes the module smaller and its gzip larger:
// zeros pack to nearly nothing, the address of one more segment does not.
const gap = 1024

// writeMemory is the inverse of readMemory.
func writeMemory(memory []byte) []byte {
	var segments []byte
	count := uint64(0)
	for at := 0; at < len(memory); {
		if memory[at] == 0 {
			at++
			continue
		}
		end, zeros := at, 0 // end is just behind the last byte that is not zero
		for i := at; i < len(memory) && zeros < gap; i++ {
			if memory[i] == 0 {
				zeros++
			} else {
				end, zeros = i+1, 0
			}
		}
		count++
		segments = append(segments, 0, opI32Const)
		segments = appendSigned(segments, int64(at))
		segments = append(segments, opEnd)
		segments = binary.AppendUvarint(segments, uint64(end-at))
		segments = append(segments, memory[at:end]...)
		at = end
	}
	return append(binary.AppendUvarint(nil, count), segments...)
}

// signed reads a signed LEB128 number of at most 32 bits; n is 0 when there
// is none.
func signed(b []byte) (v int64, n int) {
	for shift := 0; n < len(b) && n < 5; shift += 7 {
		c := b[n]
		n++
		v |= int64(c&0x7f) << shift
		if c&0x80 == 0 {
			if c&0x40 != 0 {
				v -= 1 << (shift + 7)
			}
			return v, n
		}
	}
	return 0, 0
}

func appendSigned(b []byte, v int64) []byte {
	for {
		c := byte(v & 0x7f)
		v >>= 7
		if v == 0 && c&0x40 == 0 || v == -1 && c&0x40 != 0 {
			return append(b, c)
		}
		b = append(b, c|0x80)
	}
}
