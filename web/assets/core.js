// Talks to the worker: one request at a time, restarted when it dies, with the
// unanswered request sent again. A request that kills it twice is given up.

// How long a worker may take to start, and then for an answer, before it counts as
// dead. Its first answer takes longer: functions are compiled when first called,
// and beginning anew on a slow device would take as long again.
const START_MS = 60000;
const FIRST_ANSWER_MS = 60000;
const ANSWER_MS = 20000;
const SOON_MS = 5000;
const ALIVE_MS = 3000; // of a worker that has nothing else to do

// source says where worker and core come from: addresses in the folder form,
// texts inside the page in the single file.
function source() {
  const tag = document.querySelector("script[data-worker]");
  if (tag) {
    const address = (name) => new URL(name, document.baseURI).href;
    const packed = address(tag.dataset.core);
    // The service worker hands the core out unpacked, under this name.
    const unpacked = navigator.serviceWorker?.controller && packed.replace(/bin$/, "wasm");
    return { worker: () => address(tag.dataset.worker), core: { packed, unpacked } };
  }
  const text = (id) => document.getElementById(id).textContent;
  const script = Uint8Array.from(atob(text("worker-text")), (c) => c.charCodeAt(0));
  const url = URL.createObjectURL(new Blob([script], { type: "text/javascript" }));
  return { worker: () => url, core: { text: text("core-text") } };
}

export class Core {
  // onTrouble is told, in words, when the core had to be restarted or given up.
  // A restarted core is first asked what preface gives, so that it holds the
  // catalogues that the one before it held.
  constructor(onTrouble, preface) {
    this.onTrouble = onTrouble;
    this.preface = preface;
    this.from = source();
    this.lastId = 0;
    // Resolved when a core is ready for the first time, or will not be soon.
    this.started = new Promise((resolve) => {
      this.begun = resolve;
      setTimeout(resolve, SOON_MS);
    });
    this.launch(window.early?.worker);
  }

  // launch starts a worker, or takes over one that is on its way already.
  launch(early) {
    const again = !!this.worker;
    this.answered = false; // by this worker
    this.isReady = false;
    this.worker = early || new Worker(this.from.worker());
    this.ready = new Promise((resolve) => {
      this.worker.onmessage = ({ data }) => {
        if (data.ready) {
          for (const first of again ? this.preface() : [])
            this.worker.postMessage({ id: 0, request: JSON.stringify(first) });
          this.isReady = true;
          resolve();
          this.begun();
        } else if (data.alive) clearTimeout(this.checking);
        else if (data.failed) this.giveUp(`${data.failed}; reload the page to try again`);
        else if (data.dead) this.died(data.dead);
        else if (this.pending && data.id === this.pending.id) this.take(data.reply);
      };
    });
    this.worker.onerror = (e) => this.died(e.message || "the worker failed to start");
    if (!early) this.worker.postMessage({ core: this.from.core });
    else for (const e of window.early.heard) e.type === "message" ? this.worker.onmessage(e) : this.worker.onerror(e);
  }

  // check asks a worker that has nothing to do whether it is still there, and replaces it where
  // it is not: a browser short of memory ends one behind the page's back.
  check() {
    if (this.pending || !this.isReady) return;
    const { worker } = this;
    clearTimeout(this.checking);
    this.checking = setTimeout(() => worker === this.worker && this.died("the worker is gone"), ALIVE_MS);
    worker.postMessage({ alive: true });
  }

  // ask sends one request object and gives the reply object. One that is risky is
  // tried once, for as long as any other may take that is not the first.
  ask(request, risky) {
    return new Promise((resolve, reject) => {
      this.pending = { id: ++this.lastId, text: JSON.stringify(request), resolve, reject, tries: 0, risky };
      this.send();
    });
  }

  async send() {
    const { pending } = this;
    pending.tries++;
    pending.timer = setTimeout(() => this.died("the core did not start in time"), START_MS);
    await this.ready;
    if (this.pending !== pending) return;
    clearTimeout(pending.timer);
    const patience = this.answered || pending.risky ? ANSWER_MS : FIRST_ANSWER_MS;
    pending.timer = setTimeout(() => this.died("no answer in time"), patience);
    this.worker.postMessage({ id: pending.id, request: pending.text });
  }

  take(reply) {
    const { pending } = this;
    this.pending = null;
    this.deaths = 0;
    this.answered = true;
    clearTimeout(pending.timer);
    pending.resolve(JSON.parse(reply));
  }

  died(why) {
    this.begun();
    this.worker.terminate();
    const { pending } = this;
    if (pending) clearTimeout(pending.timer);
    if (pending && (pending.tries >= 2 || (pending.risky && this.isReady))) {
      this.pending = null;
      pending.reject(new Error(why));
    }
    this.deaths = (this.deaths || 0) + 1;
    if (this.deaths > 5) {
      this.giveUp(why);
      return;
    }
    this.launch();
    if (this.pending) this.send();
  }

  giveUp(why) {
    this.begun();
    const { pending } = this;
    this.pending = null;
    this.onTrouble(`The checks cannot run in this browser (${why}). What you entered is kept.`);
    if (!pending) return;
    clearTimeout(pending.timer);
    pending.reject(new Error(why));
  }
}
