// Packs standard input to standard output with Zstandard at a high level, and
// says on standard error the digest of what a page gets of it. The page unpacks
// it with a small decoder, since no browser does by itself.
import { compress, init } from "@bokuweb/zstd-wasm";
import { decompress } from "fzstd";
import { createHash } from "node:crypto";
import { readFileSync, writeSync } from "node:fs";
import { unfold } from "../../assets/unfold.js";

await init();
const packed = Buffer.from(compress(readFileSync(0), 19));
for (let done = 0; done < packed.length; ) done += writeSync(1, packed, done);
process.stderr.write(createHash("sha256").update(unfold(decompress(packed))).digest("hex"));
