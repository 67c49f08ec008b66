package strip

import (
	"slices"
	"strings"
)

// The names that stay. The runtime reads the name of a function in these cases:
//   - a goroutine that starts in "runtime." is one of its own;
//   - a nil pointer in a method that takes a value panics with the name of the
//     wrapper taken apart, and ends the program when there is nothing to take
//     apart, so the name for all others has the form of a method;
//   - reflect's two stubs are known by name to the collector.
const (
	runtimeName = "runtime.f"
	otherName   = "core.(*T).f"
)

var keptNames = []string{"reflect.makeFuncStub", "reflect.methodValueCall"}

// roomForNames is enough for all names that stay.
const roomForNames = 100

// Kinds of pcdata and funcdata that only a stack trace, a trace of execution or
// a preempting signal reads; a page has none of these. Inlined calls are for
// recover too.
const (
	pcdataUnsafePoint   = 0
	pcdataInlTree       = 2
	pcdataArgLiveIndex  = 3
	funcdataInlTree     = 3
	funcdataArgInfo     = 5
	funcdataArgLiveInfo = 6
	funcdataWrapInfo    = 7
)

// write puts the functions back without what only a stack trace reads. Every
// part keeps its place, so that no address elsewhere changes, and what is no
// longer used becomes zero.
func (t *table) write(functions []function) {
	clear(t.units)
	clear(t.files)
	for i := range functions {
		t.forgetInlined(&functions[i])
		functions[i].trim()
	}
	place := t.nameFunctions(functions)
	t.packSteps(functions)

	at := u32(t.index, 4)
	clear(t.funcs[at:])
	for i, f := range functions {
		put32(t.index, 8*i+4, at)
		at += f.put(t.funcs[at:], place[shortName(f.name)])
	}
	t.coarsen()
}

// nameFunctions writes the names that stay and gives the place of each.
func (t *table) nameFunctions(functions []function) map[string]uint32 {
	clear(t.names)
	place := map[string]uint32{}
	end := 1 // place 0 is the empty name
	for _, f := range functions {
		name := shortName(f.name)
		if _, known := place[name]; !known {
			place[name] = uint32(end)
			end += copy(t.names[end:], name) + 1
		}
	}
	return place
}

func shortName(name string) string {
	switch {
	case slices.Contains(keptNames, name):
		return name
	case strings.HasPrefix(name, "runtime."):
		return runtimeName
	}
	return otherName
}

// An entry of the tree of calls that were inlined into a function.
const (
	inlinedSize  = 16
	inlinedName  = 4
	inlinedStart = 12 // line the inlined function starts at
)

// forgetInlined blanks the names and lines in the tree of inlined calls, and
// drops the tree of the runtime's own functions. Recover counts the frames
// between a panic and a deferred call, inlined ones too, so functions that may
// stand there keep the tree; the runtime defers nothing that recovers by way
// of an inlined call.
func (t *table) forgetInlined(f *function) {
	if len(f.pcdata) <= pcdataInlTree || len(f.funcdata) <= funcdataInlTree || f.funcdata[funcdataInlTree] == noFuncdata {
		return
	}
	at := f.funcdata[funcdataInlTree]
	size := inlinedSize * (t.highest(f.pcdata[pcdataInlTree]) + 1)
	if uint64(at)+uint64(size) > uint64(len(t.datas)) {
		return
	}
	tree := t.datas[at:][:size]
	if strings.HasPrefix(f.name, "runtime.") || strings.HasPrefix(f.name, "internal/runtime/") {
		clear(tree)
		f.pcdata[pcdataInlTree], f.funcdata[funcdataInlTree] = 0, noFuncdata
		return
	}
	for ; len(tree) > 0; tree = tree[inlinedSize:] {
		put32(tree, inlinedName, 0)
		put32(tree, inlinedStart, 0)
	}
}

// trim drops the kinds nobody reads, and the places of missing ones at the end.
func (f *function) trim() {
	for _, kind := range []int{pcdataUnsafePoint, pcdataArgLiveIndex} {
		if kind < len(f.pcdata) {
			f.pcdata[kind] = 0
		}
	}
	for n := len(f.pcdata); n > 0 && f.pcdata[n-1] == 0; n-- {
		f.pcdata = f.pcdata[:n-1]
	}
	for _, kind := range []int{funcdataArgInfo, funcdataArgLiveInfo, funcdataWrapInfo} {
		if kind < len(f.funcdata) {
			f.funcdata[kind] = noFuncdata
		}
	}
	for n := len(f.funcdata); n > 0 && f.funcdata[n-1] == noFuncdata; n-- {
		f.funcdata = f.funcdata[:n-1]
	}
}

// packSteps moves the tables by program counter that are still used together,
// in the order of first use.
func (t *table) packSteps(functions []function) {
	moved := map[uint32]uint32{0: 0}
	packed := []byte{0} // place 0 means none
	move := func(place *uint32) {
		to, known := moved[*place]
		if !known {
			to = uint32(len(packed))
			moved[*place] = to
			packed = append(packed, t.steps(*place)...)
		}
		*place = to
	}
	for i := range functions {
		move(&functions[i].pcsp)
		for j := range functions[i].pcdata {
			move(&functions[i].pcdata[j])
		}
	}
	clear(t.pcs)
	copy(t.pcs, packed)
}

// put writes the record and gives its length. File, line, unit and start line
// stay zero, which the runtime reads as "not known".
func (f *function) put(r []byte, name uint32) uint32 {
	put32(r, atEntry, f.entry)
	put32(r, atName, name)
	put32(r, atArgs, f.args)
	put32(r, atDefer, f.deferReturn)
	put32(r, atPcsp, f.pcsp)
	put32(r, atNpcdata, uint32(len(f.pcdata)))
	r[atFuncID], r[atFlag], r[atNfuncdata] = f.id, f.flag, byte(len(f.funcdata))
	at := recordSize
	for _, list := range [][]uint32{f.pcdata, f.funcdata} {
		for _, v := range list {
			put32(r, at, v)
			at += 4
		}
	}
	return uint32(at)
}

// A bucket of the find table: where in the index to start looking, then finer
// steps from there, one byte each.
const bucketSize = 4 + 16

// coarse is how many functions share one start of the search.
const coarse = 16

// coarsen lets the search in the index start a few functions earlier. It goes
// upwards from the start, so a lower one finds the same function, and equal
// numbers pack better than rising ones.
func (t *table) coarsen() {
	for at := 0; at+4 <= len(t.find); at += bucketSize {
		put32(t.find, at, u32(t.find, at)/coarse*coarse)
	}
}
