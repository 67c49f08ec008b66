package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"
)

// layout writes a JSON value again with its order and numbers as they are:
// what open says yes to stands over several lines, an entry to a line; the rest
// on one line. A path is such as "chassis[].work" or "price_book.prices".
func layout(file []byte, open func(path string) bool) ([]byte, error) {
	w := &writer{in: json.NewDecoder(bytes.NewReader(file)), open: open}
	w.in.UseNumber()
	if err := w.value("", "\n"); err != nil {
		return nil, err
	}
	w.out.WriteByte('\n')
	return w.out.Bytes(), nil
}

type writer struct {
	in   *json.Decoder
	out  bytes.Buffer
	open func(path string) bool
}

// value copies the next value; line is a line end and the spaces before it.
func (w *writer) value(path, line string) error {
	token, err := w.in.Token()
	if err != nil {
		return err
	}
	begin, nested := token.(json.Delim)
	if !nested {
		return w.scalar(token)
	}
	w.out.WriteString(begin.String())
	inner, between := line+"  ", ","
	open := w.open(path)
	if !open {
		between = ", "
	}
	seen := map[string]bool{}
	n := 0
	for ; w.in.More(); n++ {
		if n > 0 {
			w.out.WriteString(between)
		}
		if open {
			w.out.WriteString(inner)
		}
		at := path + "[]"
		if begin == '{' {
			name, err := w.in.Token()
			if err != nil {
				return err
			}
			key := name.(string)
			at = strings.TrimPrefix(path+"."+key, ".")
			if seen[key] {
				return fmt.Errorf("%s stands twice; only the last would count", at)
			}
			seen[key] = true
			if err := w.scalar(key); err != nil {
				return err
			}
			w.out.WriteString(": ")
		}
		if err := w.value(at, inner); err != nil {
			return err
		}
	}
	end, err := w.in.Token()
	if err != nil {
		return err
	}
	if open && n > 0 {
		w.out.WriteString(line)
	}
	w.out.WriteString(end.(json.Delim).String())
	return nil
}

// scalar writes a text, number, truth value or null; characters such as < stay
// as they are.
func (w *writer) scalar(v any) error {
	e := json.NewEncoder(&w.out)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		return err
	}
	w.out.Truncate(w.out.Len() - 1) // the encoder's line end
	return nil
}
