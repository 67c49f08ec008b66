package drive

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/target"
	"github.com/chromedp/chromedp"
)

// Beside opens another tab in the profile of this one, as a person does who
// opens the page twice. The scripts run in every document before the page's own.
func (t *Tab) Beside(screen Screen, scripts ...string) (*Tab, error) {
	ctx, cancel := t.limited()
	defer cancel()
	mine := chromedp.FromContext(t.ctx)
	made, err := chromedp.Call(ctx, target.CreateTarget,
		target.CreateTargetParams{URL: "about:blank", BrowserContextID: mine.BrowserContextID})
	if err != nil {
		return nil, fmt.Errorf("opening a second tab: %w", err)
	}
	o := &Tab{}
	o.ctx, o.cancel = chromedp.NewContext(t.ctx, chromedp.WithTargetID(made.TargetID), chromedp.WithListener(o.listen))
	err = begin(o.ctx, screen)
	for _, s := range append([]string{counting}, scripts...) {
		if err == nil {
			_, err = chromedp.Call(o.ctx, page.AddScriptToEvaluateOnNewDocument,
				page.AddScriptToEvaluateOnNewDocumentParams{Source: s})
		}
	}
	return o, err
}

// Kill ends the tab as a browser short of memory does: the page is told nothing.
func (t *Tab) Kill() error {
	ctx, cancel := context.WithTimeout(t.ctx, 3*time.Second)
	defer cancel()
	_, err := chromedp.Call(ctx, page.Crash, cdp.Empty{})
	if err == nil || t.ctx.Err() != nil || errors.Is(err, context.DeadlineExceeded) {
		return nil // what crashed does not answer
	}
	if strings.Contains(err.Error(), "crashed") {
		return nil
	}
	return fmt.Errorf("killing the tab: %w", err)
}

// Installable tells what stands in the way of installing the page, by the
// browser's own names.
func (t *Tab) Installable() ([]string, error) {
	ctx, cancel := t.limited()
	defer cancel()
	r, err := chromedp.Call(ctx, page.GetInstallabilityErrors, cdp.Empty{})
	if err != nil {
		return nil, fmt.Errorf("asking whether the page can be installed: %w", err)
	}
	var out []string
	for _, e := range r.InstallabilityErrors {
		out = append(out, e.ErrorID)
	}
	return out, nil
}
