// Runs the core as the worker does, in Node: the toolchain's loader and the
// shipped wasm, then every request of a file, one to a line; replies likewise.
//   node ask.mjs loader.js core.wasm requests.txt
import { readFileSync, writeSync } from "node:fs";
import { runInThisContext } from "node:vm";

const [loader, core, requests] = process.argv.slice(2);
runInThisContext(readFileSync(loader, "utf8"));
const go = new globalThis.Go();
const { instance } = await WebAssembly.instantiate(readFileSync(core), go.importObject);
go.run(instance);
const put = (text) => {
  for (let rest = Buffer.from(text); rest.length; ) {
    try {
      rest = rest.subarray(writeSync(1, rest));
    } catch (e) {
      if (e.code !== "EAGAIN") throw e; // the reader is behind: offer it again
    }
  }
};
for (const request of readFileSync(requests, "utf8").split("\n").filter(Boolean)) {
  put(globalThis.boxwright(request) + "\n");
}
process.exit(0);
