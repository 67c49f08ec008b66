package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// places gives the line of every value of a JSON file by its path, such as
// "options[12].mass.lb", and of every entry of a list by its id, such as
// `options "winch"`.
type places map[string]int

func placesOf(file []byte) places {
	w := &walker{file: file, in: json.NewDecoder(bytes.NewReader(file)), line: 1, found: places{}}
	_ = w.value("", "") // of a file cut short, what there is
	return w.found
}

type walker struct {
	file  []byte
	in    *json.Decoder
	at    int // bytes whose line ends are counted
	line  int
	found places
}

// value walks the next value; entry is what its id is to be found under.
func (w *walker) value(path, entry string) error {
	token, err := w.in.Token()
	if err != nil {
		return err
	}
	end := int(w.in.InputOffset())
	w.line += bytes.Count(w.file[w.at:end], []byte("\n"))
	w.at = end
	w.found[path] = w.line
	if id, ok := token.(string); ok && entry != "" {
		w.found[fmt.Sprintf("%s %q", entry, id)] = w.line
	}
	begin, nested := token.(json.Delim)
	if !nested {
		return nil
	}
	for i := 0; w.in.More(); i++ {
		below, id := fmt.Sprintf("%s[%d]", path, i), ""
		if begin == '{' {
			name, err := w.in.Token()
			if err != nil {
				return err
			}
			below = strings.TrimPrefix(path+"."+name.(string), ".")
			if list := strings.LastIndexByte(path, '['); name == "id" && list > 0 {
				id = path[:list]
			}
		}
		if err := w.value(below, id); err != nil {
			return err
		}
	}
	_, err = w.in.Token()
	return err
}

var (
	// One step of a place in words: a text between quotation marks, or a word.
	stepForm = regexp.MustCompile(`"(?:[^"\\]|\\.)*"|[^ "]+`)
	// What the lint names: an option "winch".
	thingForm = regexp.MustCompile(`^(option|rule|group|chassis|body) ("(?:[^"\\]|\\.)*")`)
	// What the strict decoder names: line 3, column 7 at mass.lb.
	cursorForm = regexp.MustCompile(`line (\d+), column \d+(?: at )?`)
)

var listOf = map[string]string{"option": "options", "rule": "rules", "group": "groups", "chassis": "chassis",
	"body": "bodies"}

// line is where a problem stands that is described by the place in words which
// the readers use; 0 when the file has no such place.
func (p places) line(where string) int {
	if m := thingForm.FindStringSubmatch(where); m != nil {
		return p[listOf[m[1]]+" "+m[2]]
	}
	if m := cursorForm.FindStringSubmatch(where); m != nil {
		n, _ := strconv.Atoi(m[1])
		return n
	}
	path, line := "", 0
	for _, step := range stepForm.FindAllString(where, -1) {
		if text, err := strconv.Unquote(step); err == nil {
			step = text
		}
		below := strings.TrimPrefix(path+"."+step, ".")
		n, known := p[below]
		if !known {
			continue // the id behind a position, or a field that is missing
		}
		path, line = below, n
	}
	return line
}
