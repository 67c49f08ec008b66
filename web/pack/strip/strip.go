// Package strip makes a linked Go core smaller to download by what nobody can
// see in a page: the names, files and lines that a stack trace would print. It
// runs on the host only, after the linker.
//
// A Go program carries a function table (runtime.pclntab) which serves two
// masters. The collector, panics and growing stacks look up frame sizes, maps
// of pointers and deferred calls in it; stack traces look up names, files and
// lines. The linker's -s and -w leave the second part in, and it is a sixth of
// the packed core. Core takes it out and leaves the first part as it is.
//
// The table's index is left out too: a few instructions that run when the
// module is set up count it up again.
//
// What still works: panic and recover, the text of a panic, runtime.Callers
// and the program counters it gives. What changes: every frame has one of two
// made-up names and the file "?", so a build that is to be debugged should not
// go through here.
//
// The layout of the table is private to the toolchain. Every part is checked
// against the others before anything is written; when one does not fit, as it
// may with another toolchain, the module keeps its table.
package strip

import (
	"errors"
	"fmt"
)

// Core gives the module without names, files and lines, and with its memory
// laid out for a packer. When the function table cannot be understood the
// error says why and the module given keeps it; a module that cannot be read
// at all comes back as it is.
func Core(module []byte) ([]byte, error) {
	sections, err := readSections(module)
	if err != nil {
		return module, err
	}
	data := find(sections, dataSection)
	if data == nil {
		return module, errors.New("the module has no data section")
	}
	memory, err := readMemory(data.body)
	if err != nil {
		return module, err
	}
	sections, err = blank(sections, memory)
	find(sections, dataSection).body = writeMemory(memory)
	return joinSections(sections), err
}

// blank takes out of the memory what only a stack trace reads, and what a
// start function can count up by itself.
func blank(sections []section, memory []byte) ([]section, error) {
	t, err := findTable(memory)
	if err != nil {
		return sections, err
	}
	functions, err := t.read()
	if err != nil {
		return sections, fmt.Errorf("the function table is not as expected: %w", err)
	}
	t.write(functions)
	first, last := functions[0].entry, u32(t.index, 8*t.count)
	for i, f := range functions {
		if f.entry != first+uint32(i) {
			return sections, nil // as it is will do
		}
	}
	started, err := addStart(sections, counting(t.at, t.at+u32(t.index, 4), first, last))
	if err != nil || last != first+uint32(t.count) {
		return sections, nil
	}
	t.leaveOut()
	return started, nil
}
