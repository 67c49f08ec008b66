package config_test

import (
	"encoding/json"
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
)

// What the tags of a field say is what the reader checks and what rules may test.
func TestAttributesAreCheckedAndTested(t *testing.T) {
	for _, thing := range []struct {
		list, condition string
		typ             reflect.Type
	}{
		{"chassis", "chassis", reflect.TypeFor[config.Chassis]()},
		{"bodies", "body", reflect.TypeFor[config.Body]()},
	} {
		attributes := config.Attributes(thing.typ)
		require.Greater(t, len(attributes), 5)
		for _, a := range attributes {
			t.Run(thing.list+" "+a.Name, func(t *testing.T) {
				if a.Numeric() || a.Words != nil {
					problem := readWith(t, func(c map[string]any) {
						bad := any("no-such-word")
						if a.Numeric() {
							bad = a.Most + 1
						}
						c[thing.list].([]any)[0].(map[string]any)[a.Name] = bad
					})
					require.Error(t, problem)
					assert.ErrorContains(t, problem, a.Name)
				}
				test := map[string]any{"attr": a.Name, "op": "=", "text": "x"}
				switch {
				case a.Words != nil:
					test["text"] = a.Words[0]
				case a.Numeric():
					test = map[string]any{"attr": a.Name, "op": ">", "number": 0}
				}
				problem := readWith(t, func(c map[string]any) {
					c["rules"].([]any)[0].(map[string]any)["if"] = map[string]any{thing.condition: test}
				})
				if a.Rules {
					assert.NoError(t, problem)
				} else {
					assert.ErrorContains(t, problem, "there is no attribute")
				}
			})
		}
	}
}

// readWith reads the small catalogue after a change.
func readWith(t *testing.T, change func(map[string]any)) error {
	var c map[string]any
	require.NoError(t, json.Unmarshal([]byte(small), &c))
	change(c)
	file, err := json.Marshal(c)
	require.NoError(t, err)
	_, err = config.Read(file)
	return err
}
