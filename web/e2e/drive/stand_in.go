package drive

import (
	"encoding/json"
	"fmt"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// Core answers the requests of one worker.
type Core interface{ Handle(request []byte) []byte }

// standIn puts a worker that asks the test beneath the counting one, in the place of the
// browser's.
const standIn = `(() => {
	const workers = [];
	class StandIn extends EventTarget {
		onmessage = null;
		number = workers.push(this) - 1;
		postMessage({ id, request, alive }) {
			if (alive) setTimeout(() => this.dispatchEvent(new MessageEvent("message", { data: { alive } })));
			else __ask(JSON.stringify({ worker: this.number, id, request }));
		}
		dispatchEvent(event) {
			this.onmessage?.(event);
			return super.dispatchEvent(event);
		}
		terminate() {
			workers[this.number] = null;
		}
	}
	Object.setPrototypeOf(__drive.Worker, StandIn);
	Object.setPrototypeOf(__drive.Worker.prototype, StandIn.prototype);
	window.__answer = (worker, data) => workers[worker]?.dispatchEvent(new MessageEvent("message", { data }));
})()`

// question is what a page asks one of its workers; without a request it starts it.
type question struct {
	Worker  int    `json:"worker"`
	ID      *int   `json:"id"`
	Request string `json:"request"`
	context runtime.ExecutionContextID
}

// answer is the worker's own, see web/assets/worker.js.
type answer struct {
	ID    *int   `json:"id,omitempty"`
	Reply string `json:"reply,omitempty"`
	Ready bool   `json:"ready,omitempty"`
}

// mostAsked is how many questions of a tab may wait.
const mostAsked = 1000

// StandIn has every worker of the pages that the tab opens from now on answer as a core
// of the test does, and none of the page's own is started.
func (t *Tab) StandIn(fresh func() Core) error {
	if _, err := chromedp.Call(t.ctx, runtime.AddBinding, runtime.AddBindingParams{Name: "__ask"}); err != nil {
		return fmt.Errorf("listening to the page's questions: %w", err)
	}
	t.asked = make(chan question, mostAsked)
	go t.answerAll(fresh)
	_, err := chromedp.Call(t.ctx, page.AddScriptToEvaluateOnNewDocument,
		page.AddScriptToEvaluateOnNewDocumentParams{Source: standIn})
	return err
}

// ask hands on what a page asks.
func (t *Tab) ask(e *runtime.EventBindingCalled) {
	q := question{context: e.ExecutionContextID}
	if err := json.Unmarshal([]byte(e.Payload), &q); err != nil {
		t.faults = append(t.faults, "stand-in: "+err.Error())
		return
	}
	t.asked <- q
}

// answerAll answers one question after another, until the tab is closed.
func (t *Tab) answerAll(fresh func() Core) {
	type worker struct {
		context runtime.ExecutionContextID
		number  int
	}
	cores := map[worker]Core{}
	for {
		select {
		case <-t.ctx.Done():
			return
		case q := <-t.asked:
			of := worker{q.context, q.Worker}
			a := answer{ID: q.ID}
			if q.Request == "" {
				cores[of] = fresh()
				a.Ready = true
			} else {
				a.Reply = string(cores[of].Handle([]byte(q.Request)))
			}
			t.tell(q, a)
		}
	}
}

// tell gives a page its answer. A page that is gone meanwhile needs none.
func (t *Tab) tell(q question, a answer) {
	var arguments []*runtime.CallArgument
	for _, x := range []any{q.Worker, a} {
		text, err := json.Marshal(x)
		if err != nil {
			panic(err) // a number and texts
		}
		arguments = append(arguments, &runtime.CallArgument{Value: text})
	}
	chromedp.Call(t.ctx, runtime.CallFunctionOn, runtime.CallFunctionOnParams{ //nolint:errcheck // see above
		FunctionDeclaration: `(worker, data) => __answer(worker, data)`,
		Arguments:           arguments,
		ExecutionContextID:  q.context,
	})
}
