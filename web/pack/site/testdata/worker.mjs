// Runs the worker's script in Node: hands it the message that names the core,
// answers what it fetches from a list, sends it requests once it is ready, and
// prints as JSON what it asked for, what it said, and what it wrote to the console.
//   node worker.mjs worker.js order.json
import { readFileSync, writeSync } from "node:fs";
import { runInThisContext } from "node:vm";

const [script, file] = process.argv.slice(2);
const order = JSON.parse(readFileSync(file, "utf8"));
const requests = order.requests ?? [];
const replies = order.replies ?? [];
const asked = [];
const said = [];
const errors = [];

globalThis.fetch = async (url, { cache }) => {
  asked.push(`${url} ${cache}`);
  const reply = replies[asked.length - 1];
  if (!reply) throw new TypeError("no network");
  return new Response(Buffer.from(reply.body, "base64"), { status: reply.status, headers: { "content-type": reply.type } });
};
globalThis.console = { ...console, error: (text) => errors.push(text) };
globalThis.onmessage = null;
globalThis.postMessage = (data) => {
  said.push(data);
  const request = requests[said.filter((m) => m.ready || m.id).length - 1];
  if (data.failed || data.dead || (request === undefined && !order.ends)) {
    setTimeout(() => {
      writeSync(1, JSON.stringify({ asked, said, errors }));
      process.exit(0);
    });
  } else if (request !== undefined) setTimeout(() => globalThis.onmessage({ data: { id: said.length, request } }));
};
runInThisContext(readFileSync(script, "utf8"));
globalThis.onmessage({ data: { core: order.core } });
