//go:build linux

package engines

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"time"
)

// miniBrowser is the path of WebKitGTK's own small browser.
func miniBrowser() string {
	found, _ := filepath.Glob("/usr/lib/*/webkit2gtk-4.*/MiniBrowser")
	if len(found) == 0 {
		return ""
	}
	return found[len(found)-1]
}

// webkit is a WebKitGTK browser on a screen of its own, spoken to in the W3C
// WebDriver protocol.
type webkit struct {
	home    string
	screen  *process
	driver  *process
	session string // address of the session
	shown   string // handle of the tab that is spoken to
	tabs    int    // opened so far
}

func startWebKit(width, height int) (Browser, error) {
	home, err := os.MkdirTemp("", "boxwright-webkit-")
	if err != nil {
		return nil, err
	}
	b := &webkit{home: home}
	if err := b.start(width, height); err != nil {
		b.Close()
		return nil, fmt.Errorf("starting WebKitGTK: %w", err)
	}
	return b, nil
}

func (b *webkit) start(width, height int) error {
	display, err := b.openScreen(width, height)
	if err != nil {
		return err
	}
	port, err := freePort()
	if err != nil {
		return err
	}
	env := []string{"DISPLAY=:" + display, "HOME=" + b.home, "XDG_RUNTIME_DIR=" + b.home,
		"XDG_DATA_HOME=" + b.home, "XDG_CACHE_HOME=" + b.home, "XDG_CONFIG_HOME=" + b.home,
		"JSC_useOMGJIT=0", // a page of a test is closed before wasm's best code pays
		"GDK_BACKEND=x11", "GSETTINGS_BACKEND=memory", "NO_AT_BRIDGE=1", "LIBGL_ALWAYS_SOFTWARE=1",
		"WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS=1", // its sandbox does not start as root; the page is our own
	}
	if b.driver, err = run(env, nil, "WebKitWebDriver", "--host=127.0.0.1", "--port="+port); err != nil {
		return err
	}
	address := "http://127.0.0.1:" + port
	if err := b.await(address + "/status"); err != nil {
		return err
	}
	options := map[string]any{"binary": miniBrowser(), "args": []string{
		"--automation", "--enable-write-console-messages-to-stdout=true", fmt.Sprintf("--geometry=%dx%d", width,
			height),
	}}
	always := map[string]any{"webkitgtk:browserOptions": options,
		"timeouts": map[string]int64{"script": patience.Milliseconds()}}
	var session struct {
		ID string `json:"sessionId"`
	}
	b.session = address
	if err := b.call("POST", "/session", map[string]any{"capabilities": map[string]any{"alwaysMatch": always}},
		&session); err != nil {
		return err
	}
	b.session = address + "/session/" + session.ID
	return b.call("GET", "/window", nil, &b.shown)
}

// openScreen starts an X server on a free display.
func (b *webkit) openScreen(width, height int) (string, error) {
	out, in, err := os.Pipe()
	if err != nil {
		return "", err
	}
	defer out.Close()
	size := fmt.Sprintf("%dx%dx24", width, height)
	b.screen, err = run(nil, []*os.File{in}, "Xvfb", "-displayfd", "3", "-screen", "0", size, "-nolisten", "tcp")
	in.Close()
	if err != nil {
		return "", err
	}
	number, err := bufio.NewReader(out).ReadString('\n')
	if err != nil {
		return "", fmt.Errorf("Xvfb found no free display: %w; it said %q", err, b.screen.said())
	}
	return strings.TrimSpace(number), nil
}

func freePort() (string, error) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return "", err
	}
	defer l.Close()
	return strconv.Itoa(l.Addr().(*net.TCPAddr).Port), nil
}

// await asks the driver until it answers.
func (b *webkit) await(address string) error {
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
		if reply, err := http.Get(address); err == nil {
			reply.Body.Close()
			return nil
		}
	}
	return fmt.Errorf("WebKitWebDriver does not answer; it said %q", b.driver.said())
}

var client = http.Client{Timeout: patience + 5*time.Second}

// call sends a command and reads its value.
func (b *webkit) call(method, path string, body, value any) error {
	var data []byte
	if method == "POST" {
		if body == nil {
			body = struct{}{}
		}
		var err error
		if data, err = json.Marshal(body); err != nil {
			return err
		}
	}
	request, err := http.NewRequest(method, b.session+path, bytes.NewReader(data))
	if err != nil {
		return err
	}
	reply, err := client.Do(request)
	if err != nil {
		return err
	}
	defer reply.Body.Close()
	var answer struct{ Value json.RawMessage }
	if err := json.NewDecoder(reply.Body).Decode(&answer); err != nil {
		return fmt.Errorf("%s %s: %w", method, path, err)
	}
	if reply.StatusCode != http.StatusOK {
		return fmt.Errorf("%s %s: %s", method, path, answer.Value)
	}
	if value == nil {
		return nil
	}
	return json.Unmarshal(answer.Value, value)
}

// Faults are read from what the browser writes of its console.
func (b *webkit) Faults() []string {
	var out []string
	for _, line := range b.driver.said() {
		if strings.Contains(line, "CONSOLE") && strings.Contains(line, " ERROR ") {
			out = append(out, line)
		}
	}
	return out
}

func (b *webkit) Close() {
	for _, p := range []*process{b.driver, b.screen} {
		if p != nil {
			p.kill()
		}
	}
	os.RemoveAll(b.home)
}

// Open gives the window there is, then others: only what is on top takes presses.
func (b *webkit) Open() (Tab, error) {
	if b.tabs++; b.tabs == 1 {
		return &webkitTab{b, b.shown}, nil
	}
	var opened struct{ Handle string }
	if err := b.call("POST", "/window/new", map[string]string{"type": "tab"}, &opened); err != nil {
		return nil, err
	}
	return &webkitTab{b, opened.Handle}, nil
}

type webkitTab struct {
	browser *webkit
	handle  string
}

// call speaks to this tab.
func (t *webkitTab) call(method, path string, body, value any) error {
	if t.browser.shown != t.handle {
		if err := t.browser.call("POST", "/window", map[string]string{"handle": t.handle}, nil); err != nil {
			return err
		}
		t.browser.shown = t.handle
	}
	return t.browser.call(method, path, body, value)
}

func (t *webkitTab) Visit(address string) error {
	return t.call("POST", "/url", map[string]string{"url": address}, nil)
}

func (t *webkitTab) Reload() error { return t.call("POST", "/refresh", nil, nil) }

func (t *webkitTab) Back() error    { return t.call("POST", "/back", nil, nil) }
func (t *webkitTab) Forward() error { return t.call("POST", "/forward", nil, nil) }

func (t *webkitTab) Close() error {
	err := t.call("DELETE", "/window", nil, nil)
	t.browser.shown = "" // none, until another one is spoken to
	return err
}

func (t *webkitTab) Eval(expression string) (json.RawMessage, error) {
	script := `const done = arguments[arguments.length - 1];
		(async () => (` + expression + `))().then((v) => done([JSON.stringify(v ?? null), ""]), (e) => done(["", String(e)]))`
	var reply []string
	err := t.call("POST", "/execute/async", map[string]any{"script": script, "args": []any{}}, &reply)
	if err == nil && len(reply) != 2 {
		err = errors.New("the script gave no answer")
	}
	if err != nil {
		return nil, err
	}
	if reply[1] != "" {
		return nil, errors.New(reply[1])
	}
	return json.RawMessage(reply[0]), nil
}

func (t *webkitTab) Perform(selector string, input source) error {
	if selector != "" {
		var element map[string]string
		query := map[string]string{"using": "css selector", "value": selector}
		if err := t.call("POST", "/element", query, &element); err != nil {
			return err
		}
		input = input.toward(element)
	}
	return t.call("POST", "/actions", map[string]any{"actions": []source{input}}, nil)
}

// Paper is the text of the page under its print style: WebKitWebDriver has no
// command to print, so the style for paper takes the place of the one for the
// screen. A reload brings the screen back.
func (t *webkitTab) Paper() (string, error) {
	return Eval[string](t, `(() => {
		const turn = (rules) => {
			for (const rule of rules) {
				if (rule.media && /\bprint\b/.test(rule.media.mediaText)) rule.media.mediaText = "all";
				else if (rule.media && /\bscreen\b/.test(rule.media.mediaText)) rule.media.mediaText = "not all";
				if (rule.cssRules) turn(rule.cssRules);
			}
		};
		for (const sheet of document.styleSheets) turn(sheet.cssRules);
		return document.body.innerText;
	})()`)
}
