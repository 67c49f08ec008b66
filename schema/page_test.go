package main

import (
	"os"
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The page is small because it leaves out what only the host needs.
func TestPageCarriesNothingOfTheSchemas(t *testing.T) {
	list := exec.Command("go", "list", "-deps", "boxwright/wasm")
	list.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	out, err := list.Output()
	require.NoError(t, err)
	deps := strings.Fields(string(out))
	require.Contains(t, deps, "boxwright/config")
	for pkg, reason := range map[string]string{
		"boxwright/schema":                         "host only",
		"github.com/invopop/jsonschema":            "349 KB for schemas that the page never writes",
		"github.com/santhosh-tekuri/jsonschema/v6": "550 KB; there the strict reader judges a catalogue",
		"go/parser": "reads doc comments",
		"net/http":  "the page makes no call",
	} {
		t.Run(pkg, func(t *testing.T) {
			assert.NotContains(t, deps, pkg, reason)
		})
	}
}
