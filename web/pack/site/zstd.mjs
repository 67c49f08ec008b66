// Packs standard input to standard output with Zstandard at a high level. The
// page unpacks it again with a small decoder, since no browser does by itself.
import { compress, init } from "@bokuweb/zstd-wasm";
import { readFileSync, writeSync } from "node:fs";

await init();
const packed = Buffer.from(compress(readFileSync(0), 19));
for (let done = 0; done < packed.length; ) done += writeSync(1, packed, done);
