// Puts the page together as one file with a catalogue of one's own built in: the
// same pieces that are running now, in the same way as web/pack does it, so that
// the policy allows nothing but them.
import page from "./index.html";

export const CATALOGUE = "catalogue-text"; // id of the block that holds it

const base64 = (blob) =>
  new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(reader.result.split(",")[1]);
    reader.onerror = () => reject(reader.error);
    reader.readAsDataURL(blob);
  });

async function digest(text) {
  const sum = new Uint8Array(await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text)));
  return `'sha256-${btoa(String.fromCharCode(...sum))}'`;
}

// pieces are read from the page in the single file, and fetched where the page
// itself comes from in the folder form.
async function pieces() {
  const tag = document.querySelector("script[data-worker]");
  if (!tag) {
    const text = (query) => document.querySelector(query).textContent;
    return {
      app: text("script:not([type], #early)"),
      early: text("#early"),
      style: text("style"),
      worker: text("#worker-text"),
      schema: text("#schema-text"),
      office: text("#office-text"),
      core: text("#core-text"),
      icon: document.querySelector("link[rel=icon]").href,
    };
  }
  const get = async (address) => {
    const reply = await fetch(address);
    if (!reply.ok) throw new Error(`${address}: ${reply.status}`);
    return reply;
  };
  const first = document.getElementById("early");
  const link = (rel) => document.querySelector(`link[rel=${rel}]`).href;
  const packed = async (address) => base64(await (await get(address)).blob());
  return {
    app: await (await get(tag.src)).text(),
    early: await (await get(first.src)).text(),
    style: await (await get(link("stylesheet"))).text(),
    worker: await packed(tag.dataset.worker),
    schema: await (await get(tag.dataset.schema)).text(),
    office: await (await get(tag.dataset.office)).text(),
    core: await packed(tag.dataset.core),
    icon: `data:image/svg+xml;base64,${await packed(link("icon"))}`,
  };
}

/**
 * single is the page as one file.
 * @param {import("./protocol.js").Step} step the catalogue's text, and the first screen drawn with it
 */
export async function single({ text: catalogue = "", screen }) {
  const p = await pieces();
  const block = (id, text) => `<script type="text/plain" id="${id}">${text}</script>`;
  const marks = {
    ...screen,
    policy: `default-src 'none'; script-src ${await digest(p.early)} ${await digest(p.app)} ${await digest(p.office)} 'wasm-unsafe-eval'; worker-src blob:; style-src ${await digest(p.style)}; img-src data:; base-uri 'none'; form-action 'none'`,
    style: `<style>${p.style}</style>`,
    icon: p.icon,
    manifest: "",
    early: `<script id="early">${p.early}</script>`,
    script:
      block("worker-text", p.worker) +
      block("schema-text", p.schema) +
      block("office-text", p.office) +
      block("core-text", p.core) +
      block(CATALOGUE, await base64(new Blob([catalogue]))) +
      `<script>${p.app}</script>`,
  };
  return page.replace(/\{\{(\w+)\}\}/g, (_, name) => marks[name]);
}

// builtIn is the catalogue that this page was made with, if it has one.
export async function builtIn(most) {
  const tag = document.querySelector("script[data-catalogue]");
  const block = document.getElementById(CATALOGUE);
  if (!tag && !block) return undefined;
  try {
    // Of one that is too large the core says what is the matter.
    if (block && block.textContent.length > (most * 4) / 3 + 4) return " ".repeat(most + 1);
    const bytes = block
      ? Uint8Array.from(atob(block.textContent), (c) => c.charCodeAt(0))
      : new Uint8Array(await (await fetch(tag.dataset.catalogue)).arrayBuffer());
    return new TextDecoder().decode(bytes);
  } catch {
    return ""; // not one that can be read: the core says so
  }
}
