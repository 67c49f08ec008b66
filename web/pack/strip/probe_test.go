package strip_test

import (
	"bytes"
	"compress/gzip"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/web/pack/site"
	"boxwright/web/pack/strip"
)

// The probe panics, recovers, grows stacks and keeps the collector busy. It
// must say the same before and after, however it was compiled.
func TestTheStrippedProgramRunsAlike(t *testing.T) {
	node, err := exec.LookPath("node")
	if err != nil {
		t.Skip("node runs the programs of this test, and is not installed")
	}
	for _, c := range []struct {
		flag   string
		reason string
	}{
		{"-gcflags=", "with inlining, which has tables of its own"},
		{"-gcflags=all=-l", "without inlining"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			linked := compile(t, "./testdata/probe", c.flag)
			stripped, err := strip.Core(linked)
			require.NoError(t, err)
			want := run(t, node, linked)
			assert.Equal(t, want, run(t, node, stripped))
			assert.Contains(t, want, "nil pointer in a wrapper: true true", "the probe reaches what it is for")
			assert.Contains(t, want, "callers: 5")
			assert.Less(t, packed(t, stripped), packed(t, linked)*9/10)
			assert.True(t, bytes.Contains(linked, []byte(someName)))
			assert.False(t, bytes.Contains(stripped, []byte(someName)))
		})
	}
}

func TestStrippingTwiceChangesNothing(t *testing.T) {
	once, err := strip.Core(compile(t, "./testdata/probe", "-gcflags=all=-l"))
	require.NoError(t, err)
	twice, err := strip.Core(bytes.Clone(once))
	assert.Error(t, err, "the table is written when the module starts, so there is none to be understood")
	assert.True(t, bytes.Equal(once, twice))
}

// A table whose parts do not fit together is left alone: every byte of the
// memory stays, whichever part was bent.
func TestABentTableStays(t *testing.T) {
	linked := compile(t, "./testdata/probe", "-gcflags=all=-l")
	const head = "\xf1\xff\xff\xff\x00\x00\x01\x08"
	at := bytes.Index(linked, []byte(head))
	require.Positive(t, at)
	bent := bytes.Clone(linked)
	bent[at+8]++ // the number of functions
	got, err := strip.Core(bent)
	assert.Error(t, err)
	assert.True(t, bytes.Contains(got, []byte(someName)))
}

// someName is in the function table and nowhere else.
const someName = "main.tooDeep"

func compile(t *testing.T, pkg string, flags ...string) []byte {
	t.Helper()
	out := filepath.Join(t.TempDir(), "core.wasm")
	cmd := exec.Command("go", append(append([]string{"build", "-trimpath", "-ldflags=-s -w -buildid="}, flags...), "-o", out, pkg)...)
	cmd.Env = append(os.Environ(), site.WasmEnv...)
	said, err := cmd.CombinedOutput()
	require.NoError(t, err, "%s", said)
	data, err := os.ReadFile(out)
	require.NoError(t, err)
	return data
}

func run(t *testing.T, node string, module []byte) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "core.wasm")
	require.NoError(t, os.WriteFile(file, module, 0o600))
	root, err := exec.Command("go", "env", "GOROOT").Output()
	require.NoError(t, err)
	said, err := exec.Command(node, filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec_node.js"), file).CombinedOutput()
	require.NoError(t, err, "%s", said)
	return string(said)
}

func packed(t *testing.T, data []byte) int {
	t.Helper()
	var b bytes.Buffer
	w := gzip.NewWriter(&b)
	_, err := w.Write(data)
	require.NoError(t, err)
	require.NoError(t, w.Close())
	return b.Len()
}
