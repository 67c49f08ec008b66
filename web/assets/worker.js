// The worker runs the Go core and nothing else. It holds no state worth
// keeping: every request carries all that is needed to answer it.
/* global Go, boxwright */
import { decompress } from "fzstd";
import { SHELF } from "./shelf.js";
import { unfold } from "./unfold.js";

// unpacked is the core as the browser compiles it. Unpacking it piece by piece
// while it arrives takes three times as long as all at once.
const unpacked = (packed) => unfold(decompress(packed));

const wasm = { headers: { "content-type": "application/wasm" } };

// In the folder form the unpacked core is kept beside the page, so that the next
// start need not unpack it again. Where that is refused it is unpacked each time.
// Taken by way of the service worker, the browser also keeps what it compiled.
async function shelf() {
  try {
    return await caches.open(SHELF);
  } catch {
    return null;
  }
}

// start runs the core: the one kept, if there is one and it runs, else a new one.
async function start(core) {
  const kept = core.url && (await shelf());
  const bare = core.url && core.url.replace(/[.]zst$/, "");
  const ready = kept && (await kept.match(bare));
  if (ready) {
    try {
      return await run(core.served ? fetch(bare) : ready);
    } catch {
      await kept.delete(bare);
    }
  }
  const whole = unpacked(core.url ? new Uint8Array(await (await fetch(core.url)).arrayBuffer()) : Uint8Array.from(atob(core.text), (c) => c.charCodeAt(0)));
  await run(new Response(whole, wasm));
  if (kept) setTimeout(() => keep(kept, bare, new Response(whole, wasm)), LULL_MS);
}

const LULL_MS = 4000; // until the first answers are surely given

async function keep(shelf, url, core) {
  try {
    for (const old of await shelf.keys()) await shelf.delete(old);
    await shelf.put(url, core);
  } catch {
    // no room: the next start unpacks again
  }
}

async function run(core) {
  const go = new Go();
  const { instance } = await WebAssembly.instantiateStreaming(core, go.importObject);
  go.run(instance).then(() => postMessage({ dead: "the core ended" }), (e) => postMessage({ dead: String(e) }));
  postMessage({ ready: true });
}

onmessage = ({ data }) => {
  if (data.core) {
    start(data.core).catch((e) => postMessage({ dead: String(e) }));
    return;
  }
  postMessage({ id: data.id, reply: boxwright(data.request) });
};
