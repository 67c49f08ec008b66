//go:build linux

package engines

import (
	"encoding/json"
	"errors"
	"fmt"
	"os/exec"
	"strings"
	"time"
)

// patience is how long anything may take before it is called broken. It is long,
// since on a busy machine a browser takes a minute to start. Nothing is asserted
// about speed here.
const patience = 2 * time.Minute

// Engine is a kind of browser that can be started.
type Engine struct {
	Name  string
	Start func(width, height int) (Browser, error)
}

// Engines are the browsers beside Chromium that the page has to work in.
var Engines = []Engine{
	{Name: "firefox", Start: startFirefox},
	{Name: "webkit", Start: startWebKit},
}

// Browser is a running browser with an empty profile of its own.
type Browser interface {
	// Open opens a tab and shows it.
	Open() (Tab, error)
	// Faults are the errors of scripts and the refusals of the security policy
	// so far, in all tabs.
	Faults() []string
	// Close ends every process of the browser and removes its profile.
	Close()
}

// Tab is one page of a browser.
type Tab interface {
	// Visit goes to an address and waits until its document is loaded.
	Visit(address string) error
	// Reload loads the document anew, as the reload key does.
	Reload() error
	// Back goes back, as the browser's own button does, and Forward on again.
	Back() error
	Forward() error
	// Eval gives the value of a JavaScript expression as JSON. It waits for a promise.
	Eval(expression string) (json.RawMessage, error)
	// Perform carries out actions of a pointer or of keys. A pointer moves to the
	// first element of the selector, where one is given.
	Perform(selector string, input source) error
	// Close closes the tab.
	Close() error
	// Paper is the text of the page as it prints, with a form feed after each sheet.
	Paper() (string, error)
}

// source is an input device with what it does, in the words of WebDriver.
type source struct {
	Type       string            `json:"type"`
	ID         string            `json:"id"`
	Parameters map[string]string `json:"parameters,omitempty"`
	Actions    []action          `json:"actions"`
}

type action struct {
	Type   string `json:"type"`
	X      *int   `json:"x,omitempty"`
	Y      *int   `json:"y,omitempty"`
	Button *int   `json:"button,omitempty"`
	Origin any    `json:"origin,omitempty"` // the element, as the protocol names it
	Value  string `json:"value,omitempty"`
}

// mouse is a press of the main button in the middle of an element.
func mouse() source {
	zero := new(int)
	return source{Type: "pointer", ID: "mouse", Parameters: map[string]string{"pointerType": "mouse"},
		Actions: []action{
			{Type: "pointerMove", X: zero, Y: zero},
			{Type: "pointerDown", Button: zero},
			{Type: "pointerUp", Button: zero},
		}}
}

// toward gives every movement of the device its element.
func (s source) toward(element any) source {
	for i := range s.Actions {
		if s.Actions[i].Type == "pointerMove" {
			s.Actions[i].Origin = element
		}
	}
	return s
}

// Keys that have no character, as WebDriver numbers them.
const (
	controlKey = "\uE009"
	tabKey     = "\uE004"
)

// keys presses and releases one key after another. The first is held while the
// others are pressed if it is the control key.
func keys(text string) source {
	var actions []action
	held := strings.HasPrefix(text, controlKey)
	if held {
		actions = append(actions, action{Type: "keyDown", Value: controlKey})
		text = strings.TrimPrefix(text, controlKey)
	}
	for _, r := range text {
		actions = append(actions, action{Type: "keyDown", Value: string(r)}, action{Type: "keyUp", Value: string(r)})
	}
	if held {
		actions = append(actions, action{Type: "keyUp", Value: controlKey})
	}
	return source{Type: "key", ID: "keys", Actions: actions}
}

// Eval gives the value of a JavaScript expression in a tab. It waits for a promise.
func Eval[T any](t Tab, expression string) (T, error) {
	var v T
	data, err := t.Eval(expression)
	if err == nil {
		err = json.Unmarshal(data, &v)
	}
	if err != nil {
		return v, fmt.Errorf("%.200s: %w", expression, err)
	}
	return v, nil
}

// Until waits for a JavaScript condition. When it does not come about, the error
// tells what the page says instead.
func Until(t Tab, condition string) error {
	asked := `new Promise((done) => {
		const end = Date.now() + 5000;
		const ask = async () => {
			let is = false;
			try { is = !!(` + condition + `); } catch {}
			if (is || Date.now() > end) done(is); else setTimeout(ask, 10);
		};
		ask();
	})`
	var last error
	for end := time.Now().Add(patience); time.Now().Before(end); {
		// A document that gives way to another one takes the question with it: ask again.
		is, err := Eval[bool](t, asked)
		if is {
			return nil
		}
		if last = err; err != nil {
			time.Sleep(50 * time.Millisecond)
		}
	}
	said, _ := Eval[string](t, `["trouble", "say", "bar"].map((id) => document.getElementById(id)?.textContent).concat(
		JSON.stringify(window.__seen)).join(" | ")`)
	return errors.Join(fmt.Errorf("waited %s in vain until %.300s; the page says %q", patience, condition, said), last)
}

// counting notes from now on what the page asks its worker and what came back,
// so that a press meets a page that is done with the one before. It changes nothing.
const counting = `(() => {
	const seen = window.__seen = { asked: 0, answered: 0, more: false };
	const plain = Worker.prototype.postMessage;
	const known = new WeakSet();
	Worker.prototype.postMessage = function (message, ...rest) {
		if (!known.has(this)) {
			known.add(this);
			this.addEventListener("message", ({ data }) => {
				if (data.id === undefined) return;
				seen.answered = data.id;
				seen.more = data.reply.includes('"partial":true');
			});
		}
		if (message.request !== undefined) seen.asked = message.id;
		return plain.call(this, message, ...rest);
	};
	return true;
})()`

const settled = `__seen.asked === __seen.answered && !__seen.more`

// Ready waits until the core has drawn the page, which names it in the window's
// title, and counts from then on.
func Ready(t Tab) error {
	if err := Until(t, `document.title !== "Boxwright"`); err != nil {
		return fmt.Errorf("the page did not start: %w", err)
	}
	_, err := Eval[bool](t, counting)
	return err
}

// Click waits for the element, brings it into view and presses the mouse on it.
// A thing that something else covers cannot be clicked.
func Click(t Tab, selector string) error {
	q := quote(selector)
	if err := Until(t, settled+` && document.querySelector(`+q+`)`); err != nil {
		return err
	}
	covered, err := Eval[string](t, `(() => {
		const el = document.querySelector(`+q+`);
		el.scrollIntoView({ block: "center", inline: "center", behavior: "instant" });
		const r = el.getBoundingClientRect();
		const hit = document.elementFromPoint(r.left + r.width / 2, r.top + r.height / 2);
		const label = hit && hit.closest("label");
		const reaches = hit && (el.contains(hit) || hit.contains(el) || label && label.control === el);
		return reaches ? "" : hit ? hit.outerHTML.slice(0, 120) : "nothing";
	})()`)
	if err != nil {
		return err
	}
	if covered != "" {
		return fmt.Errorf("%s cannot be clicked: in its place lies %s", selector, covered)
	}
	if err := t.Perform(selector, mouse()); err != nil {
		return fmt.Errorf("clicking %s: %w", selector, err)
	}
	return Until(t, settled)
}

// Type replaces what a field holds and leaves it, as a person does with the Tab key.
func Type(t Tab, selector, text string) error {
	if err := Click(t, selector); err != nil {
		return err
	}
	for _, k := range []string{controlKey + "a", text, tabKey} {
		if err := t.Perform("", keys(k)); err != nil {
			return fmt.Errorf("typing into %s: %w", selector, err)
		}
	}
	return nil
}

// quote writes a text as a JavaScript string.
func quote(text string) string {
	data, err := json.Marshal(text)
	if err != nil {
		panic(err) // a string always marshals
	}
	return string(data)
}

// Missing says in one sentence which Debian packages the engines lack, or nothing.
func Missing() error {
	var gone []string
	for _, need := range []struct {
		found bool
		name  string
	}{
		{firefoxPath() != "", "firefox-esr"},
		{installed("WebKitWebDriver") && miniBrowser() != "", "webkit2gtk-driver"},
		{installed("Xvfb"), "xvfb"},
		{installed("pdftotext"), "poppler-utils"},
	} {
		if !need.found {
			gone = append(gone, need.name)
		}
	}
	if gone == nil {
		return nil
	}
	return fmt.Errorf("the tests in other engines need Debian packages: apt-get install %s", strings.Join(gone, " "))
}

func installed(name string) bool {
	_, err := exec.LookPath(name)
	return err == nil
}
