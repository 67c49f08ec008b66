package drive

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"time"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/target"
	"github.com/chromedp/chromedp"
)

// paste puts text into what has the focus in one go.
func paste(text string) chromedp.Action[chromedp.Void] {
	return chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := chromedp.Call(ctx, input.InsertText, input.InsertTextParams{Text: text})
		return err
	})
}

// worker finds the running worker of this tab.
func (t *Tab) worker(ctx context.Context) (target.ID, error) {
	list, err := chromedp.Targets(ctx)
	if err != nil {
		return "", err
	}
	me := chromedp.FromContext(t.ctx).Target.TargetID
	i := slices.IndexFunc(list, func(x *target.Info) bool { return x.Type == "worker" && x.ParentID == me })
	if i < 0 {
		return "", errors.New("the tab has no worker")
	}
	return list[i].TargetID, nil
}

// EndCore tells the page what its worker tells when its core ends.
func (t *Tab) EndCore() error {
	_, err := Eval[bool](t,
		`__drive.worker.dispatchEvent(new MessageEvent("message", { data: { dead: "ended by a test" } }))`)
	return err
}

// KillWorker ends the worker behind the page's back, as a browser short of
// memory does, and waits until it is gone: the page is told nothing.
func (t *Tab) KillWorker() error {
	ctx, cancel := t.limited()
	defer cancel()
	id, err := t.worker(ctx)
	if err != nil {
		return err
	}
	inside, leave := chromedp.NewContext(t.ctx, chromedp.WithTargetID(id))
	defer leave()
	if err := chromedp.Do(inside, chromedp.Evaluate[chromedp.Void](`self.close()`)); err != nil {
		return fmt.Errorf("ending the worker: %w", err)
	}
	for {
		list, err := chromedp.Targets(ctx)
		if err != nil {
			return fmt.Errorf("waiting for the worker's end: %w", err)
		}
		if !slices.ContainsFunc(list, func(x *target.Info) bool { return x.TargetID == id }) {
			return nil
		}
		time.Sleep(10 * time.Millisecond)
	}
}

// WatchWorker adds what the worker asks the network for to Requests from now on.
func (t *Tab) WatchWorker() error {
	ctx, cancel := t.limited()
	defer cancel()
	id, err := t.worker(ctx)
	if err != nil {
		return err
	}
	inside, _ := chromedp.NewContext(t.ctx, chromedp.WithTargetID(id), chromedp.WithListener(t.listen))
	if err := chromedp.Do(inside); err != nil {
		return fmt.Errorf("attaching to the worker: %w", err)
	}
	_, err = chromedp.Call(inside, network.Enable, network.EnableParams{})
	return err
}
