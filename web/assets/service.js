// Runs beside the page in the folder form: answers from the files of one
// version, all fetched together, so that the page opens without a network and
// never mixes two versions.
/* global FILES, VERSION */
import { SHELF } from "./shelf.js";

const NAME = `boxwright ${VERSION}`;

addEventListener("install", (e) => {
  e.waitUntil(caches.open(NAME).then((c) => c.addAll(FILES.map((f) => new Request(f, { cache: "no-cache" })))));
});

addEventListener("activate", (e) => {
  e.waitUntil(caches.keys().then((names) => Promise.all(names.filter((n) => n.startsWith("boxwright ") && n !== NAME).map((n) => caches.delete(n)))));
});

addEventListener("message", (e) => {
  if (e.data === "use") skipWaiting();
});

addEventListener("fetch", (e) => {
  const { request } = e;
  if (request.method !== "GET" || !request.url.startsWith(registration.scope)) return;
  if (request.url.endsWith(".wasm")) {
    e.respondWith(
      caches
        .open(SHELF)
        .then((c) => c.match(request))
        .then((there) => there || Response.error()),
    );
    return;
  }
  const asked = request.mode === "navigate" ? registration.scope : request;
  e.respondWith(
    caches
      .open(NAME)
      .then((c) => c.match(asked, { ignoreSearch: true }))
      .then((there) => there || fetch(request)),
  );
});
