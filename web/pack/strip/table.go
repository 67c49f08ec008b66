package strip

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
)

// The layout below is that of Go 1.20 to 1.26; another magic is another layout.
// Source: runtime/symtab.go (pcHeader, moduledata, findfuncbucket),
// runtime/runtime2.go (_func) and internal/abi/symtab.go of the toolchain.
const (
	magic      = "\xf1\xff\xff\xff\x00\x00\x01\x08" // little endian, no padding, 1 byte per pc, 8 per pointer
	headerSize = 8 + 8*8
)

// Places in a function's record. Its pcdata follow, then its funcdata.
const (
	atEntry     = 0
	atName      = 4
	atArgs      = 8
	atDefer     = 12
	atPcsp      = 16
	atNpcdata   = 28
	atFuncID    = 40
	atFlag      = 41
	atNfuncdata = 43
	recordSize  = 44
)

// noFuncdata stands where a function has none of a kind.
const noFuncdata = ^uint32(0)

// Sound records have at most this many of each kind.
const (
	maxPcdata   = 8
	maxFuncdata = 16
)

// table is the function table inside the memory, cut into the parts that
// moduledata names. All of them are slices of the memory itself.
type table struct {
	names []byte // of functions, each ended by a zero
	units []byte // which files belong to which compilation unit
	files []byte // names of files
	pcs   []byte // tables from program counter to value
	index []byte // entry and place of each record
	funcs []byte // the index, then the records
	datas []byte // what funcdata point into
	find  []byte // from program counter to a place in the index, roughly
	count int    // of functions
	at    uint32 // address of index and funcs
}

// findTable looks for the table by its magic, and for the moduledata that
// points at every one of its parts.
func findTable(memory []byte) (*table, error) {
	for at := 0; ; at += len(magic) {
		i := bytes.Index(memory[at:], []byte(magic))
		if i < 0 {
			return nil, fmt.Errorf("the core has no function table of the known layout (%x)", magic)
		}
		at += i
		if t := tableAt(memory, at); t != nil {
			return t, nil
		}
	}
}

// Places in moduledata, in words of 8 bytes; a slice takes three.
const (
	wordNames   = 1
	wordUnits   = 4
	wordFiles   = 7
	wordPcs     = 10
	wordFuncs   = 13
	wordIndex   = 16
	wordFind    = 19
	wordDatas   = 40 // the last part but one, up to the find table
	wordEnd     = 41 // of the last part, the find table
	moduleWords = 42
)

// tableAt reads the table whose header is at the address, or gives nil when
// what is there is not one.
func tableAt(memory []byte, at int) *table {
	if at+headerSize > len(memory) {
		return nil
	}
	pointer := binary.LittleEndian.AppendUint64(nil, uint64(at))
	for m := 0; ; m++ {
		i := bytes.Index(memory[m:], pointer)
		if i < 0 {
			return nil
		}
		m += i
		if m+8*moduleWords > len(memory) {
			return nil
		}
		if t := newTable(memory, at, memory[m:][:8*moduleWords]); t != nil {
			return t
		}
	}
}

// newTable cuts the parts out, if header and moduledata agree on all of them.
func newTable(memory []byte, at int, module []byte) *table {
	agree := true
	cut := func(start, end uint64) []byte {
		if start > end || end > uint64(len(memory)) {
			agree = false
			return nil
		}
		return memory[start:end]
	}
	part := func(word, offset int, size uint64) []byte {
		start, n := u64(module, 8*word), u64(module, 8*(word+1))
		if start != uint64(at)+u64(memory, at+offset) || n != u64(module, 8*(word+2)) || n > uint64(len(memory)) {
			agree = false
			return nil
		}
		return cut(start, start+n*size)
	}
	t := &table{
		names: part(wordNames, 32, 1),
		units: part(wordUnits, 40, 4),
		files: part(wordFiles, 48, 1),
		pcs:   part(wordPcs, 56, 1),
		index: part(wordIndex, 64, 8),
		funcs: part(wordFuncs, 64, 1),
		datas: cut(u64(module, 8*wordDatas), u64(module, 8*wordFind)),
		at:    uint32(u64(module, 8*wordIndex)),
		find:  cut(u64(module, 8*wordFind), u64(module, 8*wordEnd)),
		count: len(part(wordIndex, 64, 8))/8 - 1, // the last entry only ends the one before
	}
	if !agree || t.count < 1 || u64(memory, at+8) != uint64(t.count) {
		return nil
	}
	return t
}

// function is what the runtime needs to know of one function.
type function struct {
	entry       uint32
	name        string
	args        uint32
	deferReturn uint32
	id, flag    byte
	pcsp        uint32   // place in table.pcs of the frame size, 0 for none
	pcdata      []uint32 // the same for other values by program counter
	funcdata    []uint32 // places of maps of pointers and the like
}

// read takes the records out of the table.
func (t *table) read() ([]function, error) {
	if len(t.names) < roomForNames {
		return nil, errors.New("it has no room for names")
	}
	list := make([]function, t.count)
	for i := range list {
		f, err := t.record(u32(t.index, 8*i+4))
		if err != nil {
			return nil, fmt.Errorf("function %d: %w", i, err)
		}
		if f.entry != u32(t.index, 8*i) {
			return nil, fmt.Errorf("function %d: index and record differ", i)
		}
		list[i] = f
	}
	return list, nil
}

func (t *table) record(at uint32) (function, error) {
	if at < uint32(len(t.index)-4) || uint64(at)+recordSize > uint64(len(t.funcs)) {
		return function{}, errors.New("its record lies outside the table")
	}
	r := t.funcs[at:]
	npc, nfunc := int(u32(r, atNpcdata)), int(r[atNfuncdata])
	if npc < 0 || npc > maxPcdata || nfunc > maxFuncdata || recordSize+4*(npc+nfunc) > len(r) {
		return function{}, errors.New("its record has no sound length")
	}
	name := u32(r, atName)
	if uint64(name) >= uint64(len(t.names)) {
		return function{}, errors.New("its name lies outside the table")
	}
	text, _, _ := bytes.Cut(t.names[name:], []byte{0})
	f := function{
		entry: u32(r, atEntry), name: string(text), args: u32(r, atArgs), deferReturn: u32(r, atDefer),
		pcsp: u32(r, atPcsp), id: r[atFuncID], flag: r[atFlag],
	}
	for i := range npc {
		f.pcdata = append(f.pcdata, u32(r, recordSize+4*i))
	}
	for i := range nfunc {
		f.funcdata = append(f.funcdata, u32(r, recordSize+4*(npc+i)))
	}
	for _, place := range append([]uint32{f.pcsp}, f.pcdata...) {
		if place != 0 && t.steps(place) == nil {
			return function{}, errors.New("one of its tables by program counter is broken")
		}
	}
	return f, nil
}

// steps is the table by program counter at a place: pairs of the change of the
// value and the change of the counter, as variable-length numbers, ended by a
// zero where a value would start. The first value may be unchanged.
func (t *table) steps(place uint32) []byte {
	if uint64(place) >= uint64(len(t.pcs)) {
		return nil
	}
	rest := t.pcs[place:]
	at := 0
	for first := true; ; first = false {
		if at >= len(rest) {
			return nil
		}
		if rest[at] == 0 && !first {
			return rest[:at+1]
		}
		for range 2 {
			_, n := binary.Uvarint(rest[at:])
			if n <= 0 {
				return nil
			}
			at += n
		}
	}
}

// highest is the highest value in the table by program counter at a place.
func (t *table) highest(place uint32) int {
	value, most := int64(-1), int64(-1)
	for steps := t.steps(place); len(steps) > 1; {
		change, n := binary.Varint(steps)
		_, m := binary.Uvarint(steps[n:])
		value += change
		most = max(most, value)
		steps = steps[n+m:]
	}
	return int(most)
}

func u32(b []byte, at int) uint32      { return binary.LittleEndian.Uint32(b[at:]) }
func u64(b []byte, at int) uint64      { return binary.LittleEndian.Uint64(b[at:]) }
func put32(b []byte, at int, v uint32) { binary.LittleEndian.PutUint32(b[at:], v) }
