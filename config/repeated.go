package config

import (
	"bytes"
	"fmt"
	"strconv"
)

// Repeated finds the first name that stands twice in one object of a text that DecodeStrict
// has taken; nil when there is none. The decoder takes the last value of such a name, or mixes
// two objects, without a word.
func Repeated(file []byte) *Problem {
	type level struct {
		names map[string]int // where each stands, in bytes; nil for a list
		name  string         // of the value being read
		n     int            // its position in a list
	}
	var open []level
	for i := 0; i < len(file); i++ {
		switch file[i] {
		case '{':
			open = append(open, level{names: map[string]int{}})
		case '[':
			open = append(open, level{})
		case '}', ']':
			open = open[:len(open)-1]
		case ',':
			open[len(open)-1].n++
		case '"':
			from := i
			for i++; file[i] != '"'; i++ {
				if file[i] == '\\' {
					i++
				}
			}
			if after := bytes.TrimLeft(file[i+1:], " \t\r\n"); len(after) == 0 || after[0] != ':' {
				continue
			}
			in, name := &open[len(open)-1], string(file[from+1:i])
			if first, twice := in.names[name]; twice {
				where := position(file, from)
				for k, l := range open[:len(open)-1] {
					before := " at "
					if l.names == nil {
						where += "[" + strconv.Itoa(l.n) + "]"
						continue
					} else if k > 0 {
						before = "."
					}
					where += before + l.name
				}
				return &Problem{"repeated", where, fmt.Sprintf("%q stands here a second time, and first in %s; "+
					"take one of the two out", name, position(file, first))}
			}
			in.names[name], in.name = from, name
		}
	}
	return nil
}
