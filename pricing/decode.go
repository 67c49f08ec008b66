package pricing

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"strings"

	"boxwright/config"
	"boxwright/pricing/money"
)

// Decode reads one JSON value strictly. A text that is no amount, percentage or
// quantity is named with its path in the value, such as "prices.winch-front".
func Decode(raw []byte, v any) *config.Problem {
	p := config.DecodeStrict(raw, v)
	if p == nil || p.Code != "field" {
		return p
	}
	var bad *money.FormError
	if errors.As(json.Unmarshal(raw, v), &bad) {
		return &config.Problem{Code: "form", Where: pathOf(raw, bad.Text), Text: bad.Error()}
	}
	return p
}

// pathOf finds the first value of a JSON text that begins so, and writes the
// names and positions that lead to it.
func pathOf(raw []byte, text string) string {
	text = strings.Trim(text, `"`)
	d := json.NewDecoder(bytes.NewReader(raw))
	d.UseNumber()
	type level struct {
		list bool
		n    int
		key  string
	}
	var stack []level
	for {
		t, err := d.Token()
		if err != nil {
			return "the value"
		}
		top := len(stack) - 1
		if delim, ok := t.(json.Delim); ok && (delim == ']' || delim == '}') {
			stack = stack[:top]
			continue
		}
		if top >= 0 {
			if s := &stack[top]; s.list {
				s.n++
			} else if s.n++; s.n%2 == 1 {
				s.key = t.(string)
				continue
			}
		}
		switch x := t.(type) {
		case json.Delim:
			stack = append(stack, level{list: x == '['})
			continue
		default:
			if !strings.HasPrefix(fmt.Sprint(x), text) {
				continue
			}
		}
		var b strings.Builder
		for i, s := range stack {
			switch {
			case s.list:
				fmt.Fprintf(&b, "[%d]", s.n-1)
			case i > 0:
				b.WriteString("." + s.key)
			default:
				b.WriteString(s.key)
			}
		}
		return b.String()
	}
}
