//go:build linux

package engines

import (
	"context"
	"encoding/base64"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"sync"

	"github.com/coder/websocket"
	"github.com/coder/websocket/wsjson"
)

// preferences make a Firefox that reaches nothing but this machine, and shows
// the page alone.
const preferences = `
user_pref("network.proxy.type", 1);
user_pref("network.proxy.http", "127.0.0.1");
user_pref("network.proxy.http_port", 9);
user_pref("network.proxy.ssl", "127.0.0.1");
user_pref("network.proxy.ssl_port", 9);
user_pref("datareporting.policy.dataSubmissionEnabled", false);
user_pref("browser.aboutwelcome.enabled", false);
user_pref("browser.shell.checkDefaultBrowser", false);
`

func firefoxPath() string {
	for _, name := range []string{"firefox-esr", "firefox"} {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	return ""
}

// firefox is a Firefox that is spoken to in WebDriver BiDi.
type firefox struct {
	process *process
	profile string
	conn    *websocket.Conn

	mu      sync.Mutex
	last    int
	waiting map[int]chan bidiMessage
	faults  []string
}

// bidiMessage is what comes back: an answer has an id, an event a method.
type bidiMessage struct {
	ID      int             `json:"id"`
	Type    string          `json:"type"`
	Result  json.RawMessage `json:"result"`
	Error   string          `json:"error"`
	Message string          `json:"message"`
	Method  string          `json:"method"`
	Params  json.RawMessage `json:"params"`
}

func startFirefox(width, height int) (Browser, error) {
	profile, err := os.MkdirTemp("", "boxwright-firefox-")
	if err != nil {
		return nil, err
	}
	b := &firefox{profile: profile, waiting: map[int]chan bidiMessage{}}
	if err := b.start(width, height); err != nil {
		b.Close()
		return nil, fmt.Errorf("starting Firefox: %w", err)
	}
	return b, nil
}

func (b *firefox) start(width, height int) (err error) {
	if err := os.WriteFile(filepath.Join(b.profile, "user.js"), []byte(preferences), 0o600); err != nil {
		return err
	}
	env := []string{"HOME=" + b.profile, "MOZ_HEADLESS=1", "MOZ_CRASHREPORTER_DISABLE=1",
		"MOZ_HEADLESS_WIDTH=" + strconv.Itoa(width), "MOZ_HEADLESS_HEIGHT=" + strconv.Itoa(height)}
	b.process, err = run(env, nil, firefoxPath(), "--no-remote", "--profile", b.profile, "--remote-debugging-port", "0",
		"about:blank")
	if err != nil {
		return err
	}
	address, err := b.process.await("WebDriver BiDi listening on ")
	if err != nil {
		return err
	}
	ctx, cancel := context.WithTimeout(context.Background(), patience)
	defer cancel()
	if b.conn, _, err = websocket.Dial(ctx, strings.TrimSpace(address)+"/session", nil); err != nil {
		return err
	}
	b.conn.SetReadLimit(-1) // a printed page is sent in one piece
	go b.listen()
	if err := b.call("session.new", map[string]any{"capabilities": map[string]any{}}, nil); err != nil {
		return err
	}
	return b.call("session.subscribe", map[string]any{"events": []string{"log.entryAdded"}}, nil)
}

// listen hands on every answer and notes every fault, until the connection ends.
func (b *firefox) listen() {
	for {
		var m bidiMessage
		if err := wsjson.Read(context.Background(), b.conn, &m); err != nil {
			b.mu.Lock()
			for id, answer := range b.waiting {
				answer <- bidiMessage{Error: "connection lost", Message: err.Error()}
				delete(b.waiting, id)
			}
			b.mu.Unlock()
			return
		}
		b.mu.Lock()
		if m.Method == "log.entryAdded" {
			var entry struct{ Level, Text string }
			if json.Unmarshal(m.Params, &entry) == nil && entry.Level == "error" {
				b.faults = append(b.faults, entry.Text)
			}
		} else if answer, ok := b.waiting[m.ID]; ok {
			answer <- m
			delete(b.waiting, m.ID)
		}
		b.mu.Unlock()
	}
}

// call sends a command and reads its result.
func (b *firefox) call(method string, params, result any) error {
	answer := make(chan bidiMessage, 1)
	b.mu.Lock()
	b.last++
	id := b.last
	b.waiting[id] = answer
	b.mu.Unlock()
	ctx, cancel := context.WithTimeout(context.Background(), patience)
	defer cancel()
	if err := wsjson.Write(ctx, b.conn, map[string]any{"id": id, "method": method, "params": params}); err != nil {
		return fmt.Errorf("%s: %w", method, err)
	}
	select {
	case <-ctx.Done():
		return fmt.Errorf("%s: no answer within %s", method, patience)
	case m := <-answer:
		if m.Error != "" {
			return fmt.Errorf("%s: %s: %s", method, m.Error, m.Message)
		}
		if result == nil {
			return nil
		}
		return json.Unmarshal(m.Result, result)
	}
}

func (b *firefox) Faults() []string {
	b.mu.Lock()
	defer b.mu.Unlock()
	return append([]string(nil), b.faults...)
}

func (b *firefox) Close() {
	if b.conn != nil {
		b.conn.CloseNow()
	}
	if b.process != nil {
		b.process.kill()
	}
	os.RemoveAll(b.profile)
}

func (b *firefox) Open() (Tab, error) {
	t := &firefoxTab{firefox: b}
	if err := b.call("browsingContext.create", map[string]any{"type": "tab"}, &t); err != nil {
		return nil, err
	}
	return t, nil
}

type firefoxTab struct {
	*firefox
	Context string `json:"context"`
}

func (t *firefoxTab) Visit(address string) error {
	return t.call("browsingContext.navigate", map[string]any{"context": t.Context, "url": address, "wait": "complete"},
		nil)
}

func (t *firefoxTab) Reload() error {
	return t.call("browsingContext.reload", map[string]any{"context": t.Context, "wait": "complete"}, nil)
}

func (t *firefoxTab) Back() error    { return t.traverse(-1) }
func (t *firefoxTab) Forward() error { return t.traverse(1) }

func (t *firefoxTab) traverse(by int) error {
	return t.call("browsingContext.traverseHistory", map[string]any{"context": t.Context, "delta": by}, nil)
}

func (t *firefoxTab) Close() error {
	return t.call("browsingContext.close", map[string]any{"context": t.Context}, nil)
}

func (t *firefoxTab) Eval(expression string) (json.RawMessage, error) {
	var reply struct {
		Result           struct{ Value string }
		ExceptionDetails struct{ Text string }
	}
	err := t.call("script.evaluate", map[string]any{
		"expression":   `(async () => JSON.stringify((await (` + expression + `)) ?? null))()`,
		"target":       map[string]string{"context": t.Context},
		"awaitPromise": true,
	}, &reply)
	if err == nil && reply.ExceptionDetails.Text != "" {
		err = errors.New(reply.ExceptionDetails.Text)
	}
	return json.RawMessage(reply.Result.Value), err
}

func (t *firefoxTab) Perform(selector string, input source) error {
	if err := t.call("browsingContext.activate", map[string]any{"context": t.Context}, nil); err != nil {
		return err
	}
	if selector != "" {
		var found struct {
			Nodes []struct {
				SharedID string `json:"sharedId"`
			}
		}
		locator := map[string]string{"type": "css", "value": selector}
		query := map[string]any{"context": t.Context, "locator": locator, "maxNodeCount": 1}
		if err := t.call("browsingContext.locateNodes", query, &found); err != nil {
			return err
		}
		if len(found.Nodes) == 0 {
			return fmt.Errorf("there is no %s", selector)
		}
		node := map[string]string{"sharedId": found.Nodes[0].SharedID}
		input = input.toward(map[string]any{"type": "element", "element": node})
	}
	return t.call("input.performActions", map[string]any{"context": t.Context, "actions": []source{input}}, nil)
}

// Paper prints the page as the page's own style says, and reads the PDF with an
// independent reader.
func (t *firefoxTab) Paper() (string, error) {
	var reply struct{ Data string }
	if err := t.call("browsingContext.print", map[string]any{"context": t.Context, "background": true},
		&reply); err != nil {
		return "", err
	}
	pdf, err := base64.StdEncoding.DecodeString(reply.Data)
	if err != nil {
		return "", err
	}
	read := exec.Command("pdftotext", "-layout", "-", "-")
	read.Stdin = strings.NewReader(string(pdf))
	text, err := read.Output()
	return string(text), err
}
