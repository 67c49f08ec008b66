package strip

import (
	"encoding/binary"
	"errors"
	"slices"
)

// Ids of the sections that a start function touches.
const (
	typeSection     = 1
	importSection   = 2
	functionSection = 3
	startSection    = 8
	elementSection  = 9
	codeSection     = 10
)

// addStart gives the module a function that runs when it is set up, before
// anything else in it.
func addStart(sections []section, body []byte) ([]section, error) {
	sections = slices.Clone(sections)
	types, imports := find(sections, typeSection), find(sections, importSection)
	functions, code := find(sections, functionSection), find(sections, codeSection)
	if types == nil || functions == nil || code == nil || find(sections, startSection) != nil {
		return nil, errors.New("the module lacks a section or starts by itself")
	}
	before, err := importedFunctions(imports)
	if err != nil {
		return nil, err
	}
	own, n := binary.Uvarint(functions.body)
	if n <= 0 {
		return nil, errCut
	}
	kind, n := binary.Uvarint(types.body)
	if n <= 0 {
		return nil, errCut
	}
	types.body = addItem(types.body, []byte{0x60, 0, 0}) // a function of nothing to nothing
	functions.body = addItem(functions.body, binary.AppendUvarint(nil, kind))
	code.body = addItem(code.body, append(binary.AppendUvarint(nil, uint64(len(body))), body...))
	at := slices.IndexFunc(sections, func(s section) bool { return s.id >= elementSection })
	return slices.Insert(sections, at, section{startSection, binary.AppendUvarint(nil, before+own)}), nil
}

// addItem appends to a vector: a count and that many items.
func addItem(vector, item []byte) []byte {
	count, n := binary.Uvarint(vector)
	return slices.Concat(binary.AppendUvarint(nil, count+1), vector[n:], item)
}

// importedFunctions counts the functions that come from outside; they are
// numbered before the module's own.
func importedFunctions(imports *section) (functions uint64, err error) {
	if imports == nil {
		return 0, nil
	}
	rest := imports.body
	number := func() (v uint64) {
		v, n := binary.Uvarint(rest)
		if n <= 0 {
			err = errCut
			return 0
		}
		rest = rest[n:]
		return v
	}
	count := number()
	for range count {
		for range 2 { // name of the module, name of the thing
			size := number()
			if size > uint64(len(rest)) {
				return 0, errCut
			}
			rest = rest[size:]
		}
		if err != nil || len(rest) == 0 || rest[0] != 0 {
			return 0, errors.New("something other than a function is imported")
		}
		rest = rest[1:]
		number() // its type
		functions++
	}
	return functions, err
}

// Instructions the counting function is made of.
const (
	opLoop     = 0x03
	opBranchIf = 0x0d
	opGet      = 0x20
	opSet      = 0x21
	opLoad     = 0x28
	opLoadByte = 0x2d
	opStore    = 0x36
	opLess     = 0x49
	opAdd      = 0x6a
	opSub      = 0x6b
	opShift    = 0x74
	typeI32    = 0x7f
	noResult   = 0x40
)

// leaveOut clears what a counting function writes.
func (t *table) leaveOut() {
	for i := range t.count {
		put32(t.funcs, int(u32(t.index, 8*i+4))+atEntry, 0)
		put32(t.index, 8*i, 0)
		put32(t.index, 8*i+4, 0)
	}
}

// counting is the body of a function that writes the index and the entry of
// every record. Both only count upwards, which packs badly, so they are left
// out of the file:
//
//	for entry := first; entry < last; entry++ {
//		index[i].entry, index[i].record = entry, record - index
//		record.entry = entry
//		record += its length, by its numbers of pcdata and funcdata
//	}
func counting(index, records, first, last uint32) []byte {
	const atIndex, atRecord, entry = 0, 1, 2 // local variables
	var b []byte
	constant := func(v uint32) { b = appendSigned(append(b, opI32Const), int64(int32(v))) }
	get := func(local byte) { b = append(b, opGet, local) }
	set := func(local byte) { b = append(b, opSet, local) }
	access := func(op byte, align, offset byte) { b = append(b, op, align, offset) }

	b = append(b, 1, 3, typeI32) // one group of three locals
	constant(index)
	set(atIndex)
	constant(records)
	set(atRecord)
	constant(first)
	set(entry)
	b = append(b, opLoop, noResult)
	get(atIndex)
	get(entry)
	access(opStore, 2, 0)
	get(atIndex)
	get(atRecord)
	constant(index)
	b = append(b, opSub)
	access(opStore, 2, 4)
	get(atRecord)
	get(entry)
	access(opStore, 2, atEntry)

	get(atRecord)
	constant(recordSize)
	b = append(b, opAdd)
	get(atRecord)
	access(opLoad, 2, atNpcdata)
	get(atRecord)
	access(opLoadByte, 0, atNfuncdata)
	b = append(b, opAdd)
	constant(2) // four bytes each
	b = append(b, opShift, opAdd)
	set(atRecord)

	get(atIndex)
	constant(8)
	b = append(b, opAdd)
	set(atIndex)
	get(entry)
	constant(1)
	b = append(b, opAdd)
	set(entry)
	get(entry)
	constant(last)
	b = append(b, opLess, opBranchIf, 0)
	return append(b, opEnd, opEnd)
}
