package site

import (
	"bytes"
	"encoding/base64"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// sent is a host's answer to the worker.
type sent struct {
	Status int    `json:"status"`
	Type   string `json:"type"`
	Body   []byte `json:"body"`
}

// order is what testdata/worker.mjs is told to do.
type order struct {
	Core     map[string]string `json:"core"`
	Replies  []sent            `json:"replies"`
	Requests []string          `json:"requests"`
	Ends     bool              `json:"ends"` // the core is to end by itself after the last request
}

// heard is what the worker did.
type heard struct {
	Asked []string
	Said  []struct {
		Ready        bool
		Failed, Dead string
		Reply        string
	}
	Errors []string
}

// work runs the shipped worker under Node.
func work(t *testing.T, o order) heard {
	t.Helper()
	node, err := exec.LookPath("node")
	require.NoError(t, err, "Node is needed: apt-get install nodejs npm")
	dir := t.TempDir()
	data, err := json.Marshal(o)
	require.NoError(t, err)
	script, file := filepath.Join(dir, "worker.js"), filepath.Join(dir, "order.json")
	require.NoError(t, os.WriteFile(script, parts(t).Worker, 0o600))
	require.NoError(t, os.WriteFile(file, data, 0o600))
	cmd := exec.Command(node, filepath.Join("testdata", "worker.mjs"), script, file)
	cmd.Stderr = os.Stderr
	out, err := cmd.Output()
	require.NoError(t, err)
	var h heard
	require.NoError(t, json.Unmarshal(out, &h), "%s", out)
	return h
}

// module is the smallest module there is: enough to see that it was compiled.
var module = []byte("\x00asm\x01\x00\x00\x00")

func TestTheWorkerTakesWhatItCanUse(t *testing.T) {
	zipped, err := packed(module)
	require.NoError(t, err)
	stream := func(body []byte) sent { return sent{200, "application/octet-stream", body} }
	wasm := func(body []byte) sent { return sent{200, "application/wasm", body} }
	gone := sent{404, "text/html", []byte("<h1>Not found</h1>")}
	page := sent{200, "text/html", []byte("<h1>Sign in</h1>")}
	text := func(body []byte) string { return base64.StdEncoding.EncodeToString(body) }
	const bin, plain = "core.1.bin", "core.1.wasm"

	for _, x := range []struct {
		name    string
		core    map[string]string
		replies []sent
		asked   string
		fails   string // what is said; empty when it starts
	}{
		{"packed, as shipped", map[string]string{"packed": bin}, []sent{stream(zipped)}, bin + " default", ""},
		{"unpacked by the host on the way", map[string]string{"packed": bin}, []sent{stream(module)}, bin + " default", ""},
		{"of a type the host made up", map[string]string{"packed": bin}, []sent{{200, "text/plain", zipped}}, bin + " default", ""},
		{"cut short, then whole", map[string]string{"packed": bin}, []sent{stream(zipped[:len(zipped)-9]), stream(zipped)},
			bin + " default, " + bin + " reload", ""},
		{"cut short each time", map[string]string{"packed": bin},
			[]sent{stream(zipped[:len(zipped)-9]), stream(zipped[:9]), stream(zipped[:20])},
			bin + " default, " + bin + " reload, " + bin + " reload", "damaged"},
		{"nothing at all", map[string]string{"packed": bin}, []sent{stream([]byte{}), stream([]byte{}), stream([]byte{})},
			bin + " default, " + bin + " reload, " + bin + " reload", "nothing arrived"},
		{"another page in its place", map[string]string{"packed": bin}, []sent{page, page, page},
			bin + " default, " + bin + " reload, " + bin + " reload", "what arrived is not the program"},
		{"gone from the host", map[string]string{"packed": bin}, []sent{gone, gone, gone},
			bin + " default, " + bin + " reload, " + bin + " reload", "the host answers 404"},
		{"no network", map[string]string{"packed": bin}, nil, bin + " default, " + bin + " reload, " + bin + " reload", "no network"},
		{"kept unpacked", map[string]string{"packed": bin, "unpacked": plain}, []sent{wasm(module)}, plain + " default", ""},
		{"kept and damaged, then made anew", map[string]string{"packed": bin, "unpacked": plain}, []sent{wasm(module[:6]), wasm(module)},
			plain + " default, " + plain + " reload", ""},
		{"kept and damaged for good", map[string]string{"packed": bin, "unpacked": plain}, []sent{wasm(module[:6]), gone, stream(zipped)},
			plain + " default, " + plain + " reload, " + bin + " reload", ""},
		{"in the one file", map[string]string{"text": text(zipped)}, nil, "", ""},
		{"in the one file, cut short", map[string]string{"text": text(zipped[:15])}, nil, "", "damaged"},
	} {
		t.Run(x.name, func(t *testing.T) {
			h := work(t, order{Core: x.core, Replies: x.replies})
			require.Equal(t, x.asked, strings.Join(h.Asked, ", "))
			require.Equal(t, x.fails == "", h.Said[0].Ready)
			require.Contains(t, h.Said[0].Failed, x.fails)
		})
	}
}

// A core in which something panics says where, in the developer's console. It is
// linked as the shipped one is, but for its main function.
func TestAPanicSaysWhere(t *testing.T) {
	root, err := Root()
	require.NoError(t, err)
	broken, err := filepath.Abs(filepath.Join("testdata", "broken", "main.go"))
	require.NoError(t, err)
	overlay, err := json.Marshal(map[string]any{"Replace": map[string]string{filepath.Join(root, "wasm",
		"main.go"): broken}})
	require.NoError(t, err)
	dir := t.TempDir()
	file := filepath.Join(dir, "overlay.json")
	require.NoError(t, os.WriteFile(file, overlay, 0o600))
	wasm := filepath.Join(dir, "broken.wasm")
	require.NoError(t, BuildWasm(root, wasm, "", "-overlay="+file))
	data, err := os.ReadFile(wasm)
	require.NoError(t, err)
	core := map[string]string{"packed": "core.1.bin"}
	replies := []sent{{200, "application/octet-stream", data}}
	require.False(t, bytes.Equal(data, parts(t).Core), "the main function was put in")

	t.Run("recovered", func(t *testing.T) {
		h := work(t, order{Core: core, Replies: replies, Requests: []string{`{"v":1}`, `{"v":1}`}})
		require.Len(t, h.Said, 3)
		require.Contains(t, h.Said[2].Reply, "nil pointer", "it goes on answering")
		require.Len(t, h.Errors, 2, "one entry for each panic")
		require.Contains(t, h.Errors[0], "panic: runtime error: invalid memory address or nil pointer dereference")
		require.Contains(t, h.Errors[0], "boxwright/web/app.(*App).answer")
		require.Regexp(t, `web/app/app\.go:\d+`, h.Errors[0])
	})
	t.Run("unrecovered", func(t *testing.T) {
		h := work(t, order{Core: core, Replies: replies, Requests: []string{"end"}, Ends: true})
		require.NotEmpty(t, h.Said[len(h.Said)-1].Dead, "the page is told, to start another")
		require.Len(t, h.Errors, 1)
		require.Contains(t, h.Errors[0], "boxwright/web/app.(*App).answer")
	})
}
