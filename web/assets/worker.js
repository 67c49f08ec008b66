// The worker runs the Go core and nothing else. It holds no state worth
// keeping: every request carries all that is needed to answer it.
/* global Go, boxwright */
import { Decompress } from "fzstd";

// unpacked lets the browser compile the core while it is still arriving.
function unpacked(packed) {
  let decoder;
  return packed.pipeThrough(
    new TransformStream({
      start: (out) => (decoder = new Decompress((part) => out.enqueue(part))),
      transform: (part) => decoder.push(part),
      flush: () => decoder.push(new Uint8Array(0), true),
    }),
  );
}

async function coreResponse(core) {
  const packed = core.url
    ? (await fetch(core.url)).body
    : new Blob([Uint8Array.from(atob(core.text), (c) => c.charCodeAt(0))]).stream();
  return new Response(unpacked(packed), { headers: { "content-type": "application/wasm" } });
}

async function start(core) {
  const go = new Go();
  const { instance } = await WebAssembly.instantiateStreaming(coreResponse(core), go.importObject);
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
