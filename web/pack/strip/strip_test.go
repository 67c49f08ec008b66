package strip

import (
	"bytes"
	"encoding/binary"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestMemoryComesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var memory []byte
		for range rapid.IntRange(0, 6).Draw(t, "runs") {
			memory = append(memory, make([]byte, rapid.IntRange(0, 3*gap).Draw(t, "zeros"))...)
			memory = append(memory, rapid.SliceOfN(rapid.Byte(), 0, 50).Draw(t, "bytes")...)
		}
		back, err := readMemory(writeMemory(memory))
		require.NoError(t, err)
		assert.True(t, bytes.Equal(bytes.TrimRight(memory, "\x00"), back), "zeros at the end need no segment, all else is as it was")
	})
}

func TestOnlyLongGapsAreLeftOut(t *testing.T) {
	for _, c := range []struct {
		zeros    int
		segments byte
		reason   string
	}{
		{gap - 1, 1, "a short run of zeros packs better than a second address"},
		{gap, 2, "a long one is left out"},
	} {
		memory := append(append([]byte{1}, make([]byte, c.zeros)...), 1)
		assert.Equal(t, c.segments, writeMemory(memory)[0], c.reason)
	}
}

func TestSignedNumbersComeBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := int64(rapid.Int32().Draw(t, "v"))
		b := appendSigned(nil, v)
		got, n := signed(b)
		assert.Equal(t, v, got)
		assert.Equal(t, len(b), n)
	})
}

// small is a module with a memory of these bytes and nothing else.
func small(memory []byte) []byte {
	return joinSections([]section{{0, []byte("\x04note")}, {dataSection, writeMemory(memory)}})
}

func TestWhatIsNotUnderstoodStaysAsItIs(t *testing.T) {
	plain := small([]byte("memory without a table"))
	for _, c := range []struct {
		module []byte
		reason string
	}{
		{nil, "no bytes at all"},
		{[]byte("GIF89a"), "not a module"},
		{[]byte(header), "no data section"},
		{plain, "no function table"},
		{plain[:len(plain)-3], "cut off"},
		{append(bytes.Clone(plain), 5), "a section without a length"},
		{joinSections([]section{{dataSection, []byte{1, 1, 0}}}), "a passive data segment"},
		{joinSections([]section{{dataSection, []byte{1, 0, opI32Const, 0x7f, opEnd, 1, 9}}}), "a segment below zero"},
		{joinSections([]section{{dataSection, binary.AppendUvarint([]byte{1, 0, opI32Const, 0, opEnd}, 1<<40)}}), "a length past the end"},
		{small(append([]byte(magic), make([]byte, 20)...)), "a magic at the very end"},
		{small(bytes.Repeat([]byte(magic), 100)), "many magics, no table"},
	} {
		got, err := Core(bytes.Clone(c.module))
		assert.Error(t, err, c.reason)
		assert.Equal(t, c.module, got, c.reason)
	}
}

func FuzzCore(f *testing.F) {
	f.Add(small([]byte("memory without a table")))
	f.Add(small(bytes.Repeat([]byte(magic), 100)))
	f.Fuzz(func(t *testing.T, module []byte) {
		if out, err := Core(module); err != nil && len(module) == 0 {
			assert.Empty(t, out)
		}
	})
}

func TestStepsEndWhereTheRuntimeStops(t *testing.T) {
	for _, c := range []struct {
		pcs, want string
		reason    string
	}{
		{"\x02\x05\x00rest", "\x02\x05\x00", "one step"},
		{"\x00\x05\x00", "\x00\x05\x00", "the first value may be the one it starts with"},
		{"\x82\x01\x05\x04\x85\x01\x00", "\x82\x01\x05\x04\x85\x01\x00", "numbers of two bytes"},
		{"\x02\x05", "", "no end"},
		{"\x02\x85", "", "cut off in a number"},
		{"", "", "nothing there"},
	} {
		got := (&table{pcs: []byte(c.pcs)}).steps(0)
		assert.Equal(t, c.want, string(got), c.reason)
	}
}

func TestNamesTheRuntimeReadsKeepTheirForm(t *testing.T) {
	for name, want := range map[string]string{
		"runtime.gcBgMarkWorker": runtimeName,
		"reflect.makeFuncStub":   "reflect.makeFuncStub",
		"runtimes.f":             otherName,
		"main.(*value).Number":   otherName,
		"":                       otherName,
	} {
		assert.Equal(t, want, shortName(name), name)
	}
	room := len(runtimeName) + len(otherName) + 3
	for _, k := range keptNames {
		room += len(k) + 1
	}
	assert.LessOrEqual(t, room, roomForNames)
}

func TestAStartIsAddedOnlyWhereThereIsRoomForIt(t *testing.T) {
	types := section{typeSection, []byte("\x01\x60\x00\x00")}
	imports := section{importSection, []byte("\x02\x01m\x01f\x00\x00\x01m\x01g\x00\x00")}
	functions := section{functionSection, []byte("\x01\x00")}
	code := section{codeSection, []byte("\x01\x02\x00\x0b")}
	for _, c := range []struct {
		sections []section
		want     []section
		reason   string
	}{
		{[]section{types, imports, functions, code},
			[]section{{typeSection, []byte("\x02\x60\x00\x00\x60\x00\x00")}, imports, {functionSection, []byte("\x02\x00\x01")}, {startSection, []byte{3}}, {codeSection, []byte("\x02\x02\x00\x0b\x02\x00\x0b")}},
			"numbered after two imports and one function"},
		{[]section{types, functions, code},
			[]section{{typeSection, []byte("\x02\x60\x00\x00\x60\x00\x00")}, {functionSection, []byte("\x02\x00\x01")}, {startSection, []byte{1}}, {codeSection, []byte("\x02\x02\x00\x0b\x02\x00\x0b")}},
			"nothing imported"},
		{[]section{types, functions, {startSection, []byte{0}}, code}, nil, "it has a start already"},
		{[]section{types, {importSection, []byte("\x01\x01m\x01t\x02\x00\x01")}, functions, code}, nil, "a memory is imported"},
		{[]section{types, {importSection, []byte("\x02\x01m\x01f\x00\x00")}, functions, code}, nil, "imports are cut off"},
		{[]section{types, functions}, nil, "no code"},
	} {
		got, err := addStart(c.sections, []byte("\x00\x0b"))
		assert.Equal(t, c.want == nil, err != nil, c.reason)
		assert.Equal(t, c.want, got, c.reason)
	}
}
