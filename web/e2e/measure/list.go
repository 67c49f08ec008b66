package main

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	"boxwright/web/e2e/drive"
)

// listLines is how many lines the purchaser's list has that is timed, listRuns times over.
const (
	listLines = 1000
	listRuns  = 2
)

// talk notes each request to the core, and how long its reply takes.
const talk = `(() => {
	const list = window.__talk = [];
	const Plain = window.Worker;
	window.Worker = class extends Plain {
		constructor(...all) {
			super(...all);
			this.addEventListener("message", ({ data }) => {
				const last = list.at(-1);
				if (data.reply && last && !last.took) last.took = performance.now() - last.at;
			});
		}
		postMessage(message, ...all) {
			if (message?.request) {
				const acts = JSON.parse(message.request).acts.map((a) => a.do + " " + (a.id || "")).join();
				list.push({ at: performance.now(), acts, bytes: message.request.length });
			}
			super.postMessage(message, ...all);
		}
	};
})()`

// answeredList reports whether the answers to the list stand on the page; what comes later,
// such as dates, does not count.
const answeredList = `() => !!document.querySelector("#requirements table.answers")`

// said is a request and how long its reply took.
type said struct {
	At, Took, Bytes float64
	Acts            string
}

// listTimes prints how long a list of a thousand lines takes from the press to its answers, and
// how long the answers take after one line was corrected.
func listTimes(b *drive.Browser, root, address string, runs int) error {
	file, err := os.ReadFile(filepath.Join(root, "pricing/bid/testdata/lines.tsv"))
	if err != nil {
		return err
	}
	var all []string
	for _, l := range strings.Split(string(file), "\n") {
		if cells := strings.Split(l, "\t"); len(cells) == 3 && !strings.HasPrefix(l, "#") {
			all = append(all, cells[1])
		}
	}
	var text strings.Builder
	for i := range listLines {
		fmt.Fprintf(&text, "%d. Item %d: %s\n", i+1, i+1, all[i%len(all)])
	}
	pasted, err := json.Marshal(text.String())
	if err != nil {
		return err
	}
	for range runs {
		if err := listTime(b, address, string(pasted)); err != nil {
			return err
		}
	}
	return nil
}

func listTime(b *drive.Browser, address, pasted string) error {
	tab, err := b.Fresh(drive.Desk, talk, since)
	if err != nil {
		return err
	}
	defer tab.Close()
	if err := tab.Visit(address); err != nil {
		return err
	}
	if err := tab.Until(`__drive.answered > 0`); err != nil {
		return err
	}
	steps := []string{`document.querySelector("#area-needs").click()`,
		`document.querySelector("#fold-requirements summary").click()`}
	for _, s := range steps {
		if _, err := drive.Eval[bool](tab, s+", true"); err != nil {
			return err
		}
		if err := tab.Settle(); err != nil {
			return err
		}
	}
	time.Sleep(3 * time.Second) // what the page does while nobody waits is done
	timed := func(name, act, seen string) error {
		took, err := drive.Eval[float64](tab, fmt.Sprintf(`(__talk.length = 0, __since(() => { %s }, %s))`, act, seen))
		if err != nil {
			return err
		}
		say(name, took, "ms")
		list, err := drive.Eval[[]said](tab, `__talk`)
		if err != nil {
			return err
		}
		worked := 0.0
		for _, x := range list {
			worked += x.Took
			if os.Getenv("TELL") != "" {
				fmt.Printf("   %7.1f %7.1f ms %8.0f bytes %s\n", x.At-list[0].At, x.Took, x.Bytes, x.Acts)
			}
		}
		say(name+"_core", worked, "ms")
		say(name+"_requests", float64(len(list)), "requests")
		return nil
	}
	if err := timed("list_first_answer_ms", `document.querySelector("#f-list").value = `+pasted+`;
		document.querySelector("#read-list").click()`, answeredList); err != nil {
		return err
	}
	if err := tab.Settle(); err != nil {
		return err
	}
	time.Sleep(time.Second)
	return timed("list_corrected_ms", `const f = document.getElementById("f-req.3.verdict");
		f.value = f.value === "meets" ? "clarify" : "meets"; window.__was = f.closest("tr").innerText;
		f.dispatchEvent(new Event("change", { bubbles: true }))`,
		`() => (document.getElementById("f-req.3.verdict")?.closest("tr").innerText ?? window.__was) !== window.__was`)
}
