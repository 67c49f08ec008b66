// Command probe does what leans on Go's function table and prints what came of
// it. The test compares the output of the program as linked with that of the
// program as stripped.
package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"hash/fnv"
	"reflect"
	"runtime"
	"runtime/debug"
	"strings"
)

func main() {
	for _, p := range []struct {
		name string
		do   func() string
	}{
		{"index out of range", func() string { return caught(func() { _ = []int{1, 2}[zero()+5] }) }},
		{"slice bounds", func() string { return caught(func() { _ = "text"[zero()+3 : zero()+1] }) }},
		{"nil map", func() string { return caught(func() { var m map[string]int; m["a"] = 1 }) }},
		{"nil pointer", func() string { return caught(func() { var p *tree; p.left = nil }) }},
		{"division by zero", func() string { return caught(func() { _ = 7 / zero() }) }},
		{"panic while panicking", twice},
		{"nil pointer in a wrapper", wrapper},
		{"deferred calls in order", order},
		{"recover only where it may", tooDeep},
		{"goexit", goexit},
		{"growing stacks", func() string { return fmt.Sprint(deep(5000)) }},
		{"goroutines and channels", pipeline},
		{"function made by reflect", madeFunc},
		{"collector under load", load},
		{"callers", callers},
	} {
		fmt.Println(p.name+":", p.do())
	}
}

//go:noinline
func zero() int { return 0 }

func caught(f func()) (text string) {
	defer func() { text = fmt.Sprint(recover()) }()
	f()
	return "no panic"
}

func twice() (text string) {
	defer func() { text += fmt.Sprint(recover()) }()
	defer func() {
		defer func() { text += fmt.Sprint(recover(), ", ") }()
		panic("second")
	}()
	panic("first")
}

type value struct{ n int }

func (v value) Number() int { return v.n }

var numbers = []interface{ Number() int }{(*value)(nil)}

// wrapper calls a method that takes a value through a nil pointer. The runtime
// takes the name of the wrapper apart for its message, so only the part of the
// message that holds no name is printed.
func wrapper() string {
	text := caught(func() { numbers[zero()].Number() })
	return fmt.Sprint(strings.HasPrefix(text, "value method "), strings.HasSuffix(text, " pointer"))
}

func order() (text string) {
	for i := range 5 {
		defer func() { text += fmt.Sprint(i) }()
	}
	defer func() { recover() }()
	if zero() == 0 {
		defer func() { text += "first " }()
	}
	panic("any")
}

func tooDeep() (text string) {
	defer func() { text = fmt.Sprint("outer got ", recover()) }()
	defer func() { func() { recover() }() }()
	panic("it")
}

func goexit() string {
	done := make(chan string)
	go func() {
		defer func() { done <- fmt.Sprint("ended, recovered ", recover()) }()
		runtime.Goexit()
	}()
	return <-done
}

//go:noinline
func deep(n int) int {
	var pad [8]int
	if n == 0 {
		return 0
	}
	pad[n%8] = n
	return deep(n-1) + pad[n%8]%3
}

func pipeline() string {
	in := make(chan int)
	go func() {
		for n := range 500 {
			in <- n
		}
		close(in)
	}()
	for range 3 {
		in = doubled(in)
	}
	sum := 0
	for n := range in {
		sum += n
	}
	return fmt.Sprint(sum)
}

func doubled(in chan int) chan int {
	out := make(chan int)
	go func() {
		for n := range in {
			out <- n*2 + 1
		}
		close(out)
	}()
	return out
}

type tree struct {
	left, right *tree
	note        string
}

func grow(depth int) *tree {
	if depth == 0 {
		return nil
	}
	return &tree{grow(depth - 1), grow(depth - 1), fmt.Sprint("node ", depth)}
}

func (t *tree) count() int {
	if t == nil {
		return 0
	}
	return 1 + t.left.count() + t.right.count()
}

// load keeps some memory, drops more, and lets the collector run while frames
// with pointers are on the stack and stacks grow and shrink.
func load() string {
	debug.SetGCPercent(10)
	kept := map[string]*tree{}
	sum := fnv.New64a()
	for i := range 1500 {
		t := grow(6)
		if i%100 == 0 {
			kept[fmt.Sprint(i)] = t
			runtime.GC()
			deep(500)
		}
		data, err := json.Marshal(map[string]any{"i": i, "n": t.count(), "t": t.left.right.note})
		if err != nil {
			return err.Error()
		}
		var back map[string]any
		if err := json.Unmarshal(data, &back); err != nil {
			return err.Error()
		}
		if i%10 == 0 {
			fmt.Fprint(sum, caught(func() { panic(errors.New(string(data))) }))
		}
	}
	total := 0
	for _, t := range kept {
		total += t.count()
	}
	return fmt.Sprint(total, sum.Sum64())
}

func madeFunc() string {
	swap := reflect.MakeFunc(reflect.TypeFor[func(string, int) (int, string)](), func(in []reflect.Value) []reflect.Value {
		runtime.GC()
		deep(2000)
		return []reflect.Value{in[1], in[0]}
	}).Interface().(func(string, int) (int, string))
	n, s := swap(strings.Repeat("ab", 3), 4)
	method := reflect.ValueOf(value{9}).Method(0).Interface().(func() int)
	runtime.GC()
	return fmt.Sprint(n, s, method())
}

// callers counts the frames of a known depth of calls.
func callers() string {
	return fmt.Sprint(nested(5) - nested(0))
}

//go:noinline
func nested(n int) int {
	if n > 0 {
		return nested(n-1) + zero()
	}
	frames, count := runtime.CallersFrames(pcs()), 0
	for more := true; more; count++ {
		_, more = frames.Next()
	}
	return count
}

func pcs() []uintptr {
	list := make([]uintptr, 100)
	return list[:runtime.Callers(0, list)]
}
