// The worker runs the Go core and nothing else. It holds no state worth
// keeping: every request carries all that is needed to answer it.
/* global Go, boxwright, fs */

const STEP = 1 << 18; // characters of base64 decoded at a time; four stand for three bytes

// decoded is a stream of the bytes that a base64 text stands for.
function decoded(text) {
  let at = 0;
  return new ReadableStream({
    pull(to) {
      if (at >= text.length) return to.close();
      const part = atob(text.slice(at, (at += STEP)));
      const bytes = new Uint8Array(part.length);
      for (let i = 0; i < part.length; i++) bytes[i] = part.charCodeAt(i);
      to.enqueue(bytes);
    },
  });
}

// plain gives the core as the browser compiles it. It is shipped packed, and a
// host may have unpacked it on the way: the first byte tells which it is.
async function plain(body) {
  const [peek, whole] = body.tee();
  const reader = peek.getReader();
  const { value } = await reader.read();
  reader.cancel();
  const first = value && value[0];
  if (first !== 0x1f && first !== 0) throw new Error(value ? "what arrived is not the program" : "nothing arrived");
  return new Response(first ? whole.pipeThrough(new DecompressionStream("gzip")) : whole, {
    headers: { "content-type": "application/wasm" },
  });
}

// load fetches the core. What the service worker hands out unpacked goes to the
// compiler as it is, since only then the browser keeps what it compiled.
async function load(url, cache) {
  const reply = await fetch(url, { cache });
  if (!reply.ok) throw new Error(`the host answers ${reply.status}`);
  return reply.headers.get("content-type") === "application/wasm" ? reply : plain(reply.body);
}

// start runs the core. One that cannot be had, or is damaged, is fetched again
// past every cache.
async function start({ text, packed, unpacked }) {
  if (text) return run(await plain(decoded(text)));
  const url = unpacked || packed;
  const ways = [() => load(url, "default"), () => load(url, "reload"), () => load(packed, "reload")];
  for (;;) {
    try {
      return await run(await ways.shift()());
    } catch (e) {
      if (!ways.length) throw e;
    }
  }
}

async function run(core) {
  const go = new Go();
  const { instance } = await WebAssembly.instantiateStreaming(core, go.importObject).catch((e) => {
    throw new Error(`the program is damaged: ${e.message}`);
  });
  go.run(instance).then(
    () => postMessage({ dead: "the core ended" }),
    (e) => postMessage({ dead: String(e) }),
  );
  postMessage({ ready: true });
}

// What the core writes is the trace of a panic; it goes to the console in one
// piece.
const text = new TextDecoder();
let written = "";
fs.writeSync = (_, bytes) => {
  if (!written) {
    queueMicrotask(() => {
      console.error(written);
      written = "";
    });
  }
  written += text.decode(bytes, { stream: true });
  return bytes.length;
};

onmessage = ({ data }) => {
  if (data.core) {
    start(data.core).catch((e) => postMessage({ failed: e.message }));
    return;
  }
  if (data.alive) return postMessage(data);
  postMessage({ id: data.id, reply: boxwright(data.request) });
};
