package drive

import (
	"encoding/json"
	"fmt"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/tracing"
	"github.com/chromedp/chromedp"
)

// Event is one thing the browser did, as its trace tells it. Times are in
// microseconds.
type Event struct {
	Name string  `json:"name"`
	Kind string  `json:"ph"`
	From float64 `json:"ts"`
	Took float64 `json:"dur"`
	Pid  int     `json:"pid"`
	Tid  int     `json:"tid"`
	Args struct {
		Name string `json:"name"`
	} `json:"args"`
}

// Trace has the browser note what it does in these categories until the function
// it gives is called.
func (t *Tab) Trace(categories ...string) (stop func() ([]Event, error), err error) {
	ctx, cancel := t.limited()
	defer cancel()
	t.mu.Lock()
	t.trace, t.traced = nil, make(chan struct{})
	complete := t.traced
	t.mu.Unlock()
	config := &tracing.TraceConfig{IncludedCategories: categories, ExcludedCategories: []string{"*"}}
	if _, err := chromedp.Call(ctx, tracing.Start, tracing.StartParams{TraceConfig: config}); err != nil {
		return nil, fmt.Errorf("starting a trace: %w", err)
	}
	return func() ([]Event, error) {
		ctx, cancel := t.limited()
		defer cancel()
		if _, err := chromedp.Call(ctx, tracing.End, cdp.Empty{}); err != nil {
			return nil, fmt.Errorf("ending the trace: %w", err)
		}
		select {
		case <-complete:
		case <-ctx.Done():
			return nil, fmt.Errorf("the trace was not complete within %s", Patience)
		}
		t.mu.Lock()
		defer t.mu.Unlock()
		events := make([]Event, 0, len(t.trace))
		for _, raw := range t.trace {
			var e Event
			if json.Unmarshal(raw, &e) == nil { // arguments of other forms concern nobody here
				events = append(events, e)
			}
		}
		return events, nil
	}, nil
}
