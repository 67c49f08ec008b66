// The page as one file, and the catalogue that it was made with, without a browser.
import { register } from "node:module";
import { test } from "node:test";
import assert from "node:assert/strict";

// The page is bundled as a text.
const html = "<{{policy}}|{{style}}|{{early}}|{{script}}|{{main}}>";
const loader = `export const load = (url, context, next) => url.endsWith(".html")
  ? { format: "module", shortCircuit: true, source: "export default '${html}'" }
  : next(url, context);`;
register(`data:text/javascript,${encodeURIComponent(loader)}`);
const { builtIn, single, CATALOGUE } = await import("./embed.js");

/** A page with blocks by id, or with a script tag that names a catalogue beside it. */
const page = (blocks, tag) => {
  globalThis.document = { getElementById: (id) => blocks[id] || null, querySelector: () => tag || null };
};
const block = (text) => ({ [CATALOGUE]: { textContent: text } });

test("the catalogue that the page was made with is read from it, or from beside it", async () => {
  page({});
  assert.equal(await builtIn(100), undefined);
  page(block(btoa("{}")));
  assert.equal(await builtIn(100), "{}");
  page({}, { dataset: { catalogue: "catalogue.1.json" } });
  globalThis.fetch = async (address) => new Response(`from ${address}`);
  assert.equal(await builtIn(100), "from catalogue.1.json");
});

test("one that cannot be read is empty; the largest is read, and one that is larger is not", async () => {
  page(block("*"));
  assert.equal(await builtIn(100), "");
  globalThis.fetch = async () => Promise.reject(new Error("no network"));
  page({}, { dataset: { catalogue: "catalogue.1.json" } });
  assert.equal(await builtIn(100), "");
  page(block(btoa("x".repeat(100))));
  assert.equal(await builtIn(100), "x".repeat(100));
  page(block(btoa("x".repeat(1000))));
  assert.equal(await builtIn(100), " ".repeat(101), "the core says what is the matter");
});

test("one file is made of the pieces that run, each allowed by its hash alone", async () => {
  globalThis.FileReader = class {
    async readAsDataURL(blob) {
      this.result = `data:;base64,${Buffer.from(await blob.arrayBuffer()).toString("base64")}`;
      this.onload();
    }
  };
  const pieces = {
    "script:not([type], #early)": "app()",
    "#early": "early()",
    style: "p{}",
    "#worker-text": "V0",
    "#schema-text": "{}",
    "#office-text": "office()",
    "#core-text": "Q0",
  };
  page({});
  document.querySelector = (query) => {
    if (query === "link[rel=icon]") return { href: "data:icon" };
    return query in pieces ? { textContent: pieces[query] } : null;
  };
  const file = await single({ text: "{}", screen: { main: "<p>{{style}}</p>" } });
  const [policy, style, early, script, main] = file.slice(1, -1).split("|");
  for (const text of ["app()", "early()", "office()", "p{}"]) {
    const sum = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text));
    assert.ok(policy.includes(`'sha256-${Buffer.from(sum).toString("base64")}'`), text);
  }
  assert.match(policy, /^default-src 'none'; script-src [^;]*; worker-src blob:; style-src [^;]*; img-src data:; /);
  assert.doesNotMatch(policy, /unsafe-inline|unsafe-eval[^']|\*/);
  assert.deepEqual([style, early], ["<style>p{}</style>", `<script id="early">early()</script>`]);
  const texts = {
    "worker-text": "V0",
    "schema-text": "{}",
    "office-text": "office()",
    "core-text": "Q0",
    [CATALOGUE]: btoa("{}"),
  };
  const blocks = Object.entries(texts).map(([id, text]) => `<script type="text/plain" id="${id}">${text}</script>`);
  assert.equal(script, `${blocks.join("")}<script>app()</script>`);
  assert.equal(main, "<p>{{style}}</p>", "what is put in keeps its own marks");
});
