package e2e

import (
	"io"
	"net/http"
	"strconv"
	"strings"
	"sync"

	"boxwright/web/app"
)

// standIn is the worker of a page whose core runs in this test. It says what the
// page's own worker says, and has the host answer, one request after another.
const standIn = `const ask = (to, body) => {
	const call = new XMLHttpRequest();
	call.open("POST", to, false);
	call.send(body);
	if (call.status !== 200) throw new Error("the core ended: " + call.responseText);
	return call.responseText;
};
let core;
onmessage = ({ data }) => {
	if (!data.core) return postMessage({ id: data.id, reply: ask("core/" + core, data.request) });
	core = ask("core", "");
	postMessage({ ready: true });
};`

// natively serves the folder form to one window, and answers for the core of each of its
// workers. All else of the page is as it is shipped. That the core says the same in wasm,
// byte for byte, is held in web/pack/site; what a browser has to do to start it and to run
// it takes most of a test's time, and is gone through by the tests of the shipped form.
type natively struct {
	pages http.Handler
	mu    sync.Mutex
	cores []*app.App
}

func (n *natively) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	which, asked := strings.CutPrefix(r.URL.Path, "/core/")
	switch {
	case r.Header.Get("Sec-Fetch-Dest") == "worker": // who reads its text gets the page's own
		w.Header().Set("Content-Type", "text/javascript")
		w.Header().Set("Cache-Control", "no-store")
		io.WriteString(w, standIn) //nolint:errcheck // who asked sees it
	case r.URL.Path == "/core":
		n.mu.Lock()
		defer n.mu.Unlock()
		n.cores = append(n.cores, app.New())
		io.WriteString(w, strconv.Itoa(len(n.cores)-1)) //nolint:errcheck // who asked sees it
	case asked:
		n.answer(w, r, which)
	default:
		n.pages.ServeHTTP(w, r)
	}
}

// answer asks a core. One at a time: no window waits for another of its own.
func (n *natively) answer(w http.ResponseWriter, r *http.Request, which string) {
	request, err := io.ReadAll(r.Body)
	n.mu.Lock()
	defer n.mu.Unlock()
	i, bad := strconv.Atoi(which)
	if err != nil || bad != nil || i < 0 || i >= len(n.cores) {
		http.Error(w, "no such core", http.StatusNotFound)
		return
	}
	w.Write(n.cores[i].Handle(request)) //nolint:errcheck // who asked sees it
}

// end forgets the cores, since hosts stay until all tests are over.
func (n *natively) end() {
	n.mu.Lock()
	defer n.mu.Unlock()
	n.cores = nil
}
