package site

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/web/app"
	"boxwright/web/assets/catalogue"
)

// conversation is what a page and the core say to each other, recorded while the
// core runs natively.
type conversation struct {
	t        *testing.T
	core     *app.App
	state    map[string]json.RawMessage // draft, view and pins of the last reply
	requests [][]byte
	replies  [][]byte
}

func (c *conversation) do(acts ...app.Act) {
	c.t.Helper()
	request := map[string]any{"v": app.Version, "acts": acts, "today": "2026-11-25", "base": "https://quotes.example/",
		"kept": true}
	for k, v := range c.state {
		request[k] = v
	}
	data, err := json.Marshal(request)
	require.NoError(c.t, err)
	c.say(data)
}

// say sends one request as it is.
func (c *conversation) say(request []byte) {
	c.t.Helper()
	require.NotContains(c.t, string(request), "\n")
	reply := c.core.Handle(request)
	c.requests, c.replies = append(c.requests, request), append(c.replies, reply)
	var r struct{ Draft, View, Pins json.RawMessage }
	require.NoError(c.t, json.Unmarshal(reply, &r))
	if r.Draft != nil {
		c.state = map[string]json.RawMessage{"draft": r.Draft, "view": r.View, "pins": r.Pins}
	}
}

// talk goes through everything the page can ask for: every area, every chapter,
// picks all over the catalogue, reasons, mends, fields, links and bad input.
func talk(t *testing.T) *conversation {
	cat, err := config.Read(catalogue.Demo)
	require.NoError(t, err)
	c := &conversation{t: t, core: app.New()}
	c.do(app.Act{Do: "start"})
	c.do(app.Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"})
	for i, g := range cat.Groups {
		if i%4 != 0 {
			continue
		}
		members := cat.Members(g.ID)
		id := cat.Options[members[i/4%len(members)]].ID
		c.do(app.Act{Do: "go", ID: "unit"}, app.Act{Do: "chapter", ID: g.Chapter},
			app.Act{Do: "pick", ID: id, On: true})
		if i%16 == 0 {
			c.do(app.Act{Do: "why", ID: id})
			c.do(app.Act{Do: "mend", ID: id, Value: "0"})
		}
	}
	for _, id := range []string{"fb-winch", "df-hydraulic-power", "van-9500-148-gas"} {
		c.do(app.Act{Do: "why", ID: id})
		c.do(app.Act{Do: "mend", ID: id, Value: "0"})
	}
	c.do(app.Act{Do: "set", ID: "title", Value: "Médic <7> & \u2028 \U0001F691"},
		app.Act{Do: "set", ID: "terms.discount_percent", Value: "1.5"}, app.Act{Do: "set", ID: "terms.trade_in",
			Value: "12,345.67"})
	c.do(app.Act{Do: "set", ID: "unit.occupant_lb", Value: "NaN"},
		app.Act{Do: "set", ID: "unit.payload_lb", Value: "1e308"}, app.Act{Do: "set", ID: "terms.units", Value: "-1"})
	for _, e := range cat.Equipment[:3] {
		c.do(app.Act{Do: "carry", ID: e.ID, Value: "2"})
	}
	c.do(app.Act{Do: "pin"})
	for _, metric := range []bool{false, true} {
		for _, area := range app.Areas() {
			c.do(app.Act{Do: "go", ID: area})
		}
		if !metric {
			c.do(app.Act{Do: "units"})
		}
	}
	for _, chassis := range cat.Chassis {
		c.do(app.Act{Do: "new", ID: chassis.ID})
		c.do(app.Act{Do: "decide", Value: "1"}, app.Act{Do: "complete"}, app.Act{Do: "go", ID: "weight"})
	}
	for _, bad := range []string{
		`{}`, `[]`, `nonsense`, `{"v":1,"acts":[{"do":"no such act"}]}`, `{"v":99}`,
		`{"v":1,"draft":{"format":"boxwright-quote/1"}}`,
		`{"v":1,"acts":[{"do":"pick","id":"no-such-thing","on":true}],"today":"2026-11-25"}`,
		`{"v":1,"acts":[{"do":"open-link","value":"q=AQAAAA"}],"today":"2026-11-25"}`,
		`{"v":1,"acts":[{"do":"open-link","value":"` + strings.Repeat("A", 20_000) + `"}],"today":"2026-11-25"}`,
		`{"v":1,"acts":[{"do":"load-catalogue","id":"a.json","value":"{\"format\":\"boxwright-catalogue/1\"}"}],"today":"2026-11-25"}`,
		`{"v":1,"acts":[],"today":"2026-02-30"}`, strings.Repeat("[", 50_000),
	} {
		c.say([]byte(bad))
	}
	return c
}

// The core gives the same bytes natively and as shipped; and there, too, one that was
// just started gives those of one that has answered everything before.
func TestSameBytesInWasm(t *testing.T) {
	c := talk(t)
	files := shipped(t)
	replies := files.ask(c.requests...)
	for i, native := range c.replies {
		same(t, i, c.requests[i], native, replies[i])
	}
	for _, i := range []int{len(c.requests) / 3, len(c.requests) * 2 / 3} {
		same(t, i, c.requests[i], decided(c.replies[i]), decided(files.ask(c.requests[i])[0]))
	}
}

// decided is a reply without its word of work under way, which a core may have done
// before.
func decided(reply []byte) []byte { return bytes.Replace(reply, []byte(`,"undecided":true`), nil, 1) }

// program is the shipped core on disk, with what runs it in Node.
type program struct {
	t            *testing.T
	node         string
	dir          string
	loader, core string
}

func shipped(t *testing.T) *program {
	t.Helper()
	node, err := exec.LookPath("node")
	require.NoError(t, err, "Node is needed: apt-get install nodejs npm")
	p := &program{t: t, node: node, dir: t.TempDir()}
	loader, err := Loader()
	require.NoError(t, err)
	p.loader, p.core = p.put("loader.js", loader), p.put("core.wasm", core(t))
	return p
}

func (p *program) put(name string, data []byte) string {
	p.t.Helper()
	path := filepath.Join(p.dir, name)
	require.NoError(p.t, os.WriteFile(path, data, 0o600))
	return path
}

// ask starts the core and gives its replies, one after another.
func (p *program) ask(requests ...[]byte) [][]byte {
	p.t.Helper()
	file := p.put("requests.txt", append(bytes.Join(requests, []byte("\n")), '\n'))
	cmd := exec.Command(p.node, "--stack-size=4096", filepath.Join("testdata", "ask.mjs"), p.loader, p.core, file)
	cmd.Stderr = os.Stderr
	out, err := cmd.Output()
	require.NoError(p.t, err)
	replies := bytes.Split(bytes.TrimSuffix(out, []byte("\n")), []byte("\n"))
	require.Len(p.t, replies, len(requests))
	return replies
}

// same shows where two long replies part.
func same(t *testing.T, i int, request, want, got []byte) {
	t.Helper()
	at := 0
	for at < min(len(want), len(got)) && want[at] == got[at] {
		at++
	}
	if at < max(len(want), len(got)) {
		t.Fatalf("the reply to request %d, %s, differs at byte %d:\nwant %s\ngot  %s", i, clipped(request, 0), at,
			clipped(want, at-60), clipped(got, at-60))
	}
}

func clipped(text []byte, from int) string {
	from = max(from, 0)
	return string(text[from:min(from+300, len(text))])
}
