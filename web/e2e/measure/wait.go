package main

import (
	"fmt"
	"slices"
	"time"

	"boxwright/web/e2e/drive"
)

// waiting notes how long each press waits until its request goes to the core, which may
// be at work on something that nobody waits for.
const waiting = `(() => {
	const waits = window.__waits = [];
	window.__pressed = null;
	const Plain = window.Worker;
	window.Worker = class extends Plain {
		postMessage(message, ...all) {
			const acts = message?.request && JSON.parse(message.request).acts;
			if (window.__pressed !== null && acts?.some((a) => !["rest", "decide", "rehearse", "restore"].includes(a.do))) {
				waits.push(performance.now() - window.__pressed);
				window.__pressed = null;
			}
			super.postMessage(message, ...all);
		}
	};
})()`

// hasty presses one thing after another, each a moment after the first part of the answer
// before: the core is then at work on the rest of it, or makes areas ready.
const hasty = `(async (seed, presses) => {
	const pick = ` + next + `;
	const pause = (ms) => new Promise((done) => setTimeout(done, ms));
	for (let i = 0; i < presses; i++) {
		seed = (seed * 1664525 + 1013904223) % 4294967296;
		const el = pick(Math.floor(seed / 2))[1];
		if (!el) continue;
		const { answered } = __drive;
		window.__pressed = performance.now();
		el.click();
		while (window.__pressed !== null && performance.now() - window.__pressed < 5000) await pause(1);
		const until = performance.now() + 5000;
		while (__drive.answered <= answered && performance.now() < until) await pause(1);
		await pause(20 + (seed % 150));
	}
	return __waits;
})`

// waitTimes prints how long presses wait behind what nobody waits for, begun as soon as
// the page is there.
func waitTimes(b *drive.Browser, address string, presses int) error {
	var all []float64
	const pages = 4
	for i := range pages {
		tab, err := b.Fresh(drive.Desk, waiting)
		if err != nil {
			return err
		}
		if err := tab.Visit(address); err != nil {
			return err
		}
		if err := tab.Until(`__drive.answered > 0`); err != nil {
			return err
		}
		got, err := drive.Eval[[]float64](tab, fmt.Sprintf("%s(%d, %d)", hasty, i+1, presses/pages))
		if err != nil {
			return err
		}
		all = append(all, got...)
		tab.Close()
		time.Sleep(time.Second)
	}
	say("press_wait_presses", float64(len(all)), "presses")
	say("press_wait_ms_p50", at(all, 0.5), "ms")
	say("press_wait_ms_p95", at(all, 0.95), "ms")
	say("press_wait_ms_worst", slices.Max(all), "ms")
	return nil
}
