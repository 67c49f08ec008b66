// The folder form installs itself for use without a network. A new version is
// fetched beside the one in use and waits until somebody says yes.
import * as bar from "./bar.js";

export async function install() {
  const tag = document.querySelector("script[data-service]");
  if (!tag || !("serviceWorker" in navigator)) return;
  const { serviceWorker } = navigator;
  const began = serviceWorker.controller;
  let agreed = false;
  const offer = (worker) =>
    bar.ask("version", "A new version is ready.", [
      [
        "Use it now",
        () => {
          agreed = true;
          worker.postMessage("use");
        },
      ],
      ["Later", () => {}],
    ]);
  serviceWorker.addEventListener("controllerchange", () => {
    if (agreed) location.reload();
    else if (began) bar.ask("version", "Another window took the new version into use.", [["Load it here", () => location.reload()]]);
  });
  try {
    const registration = await serviceWorker.register(tag.dataset.service, { updateViaCache: "none" });
    const ready = (worker) => worker && worker.state === "installed" && serviceWorker.controller && offer(worker);
    ready(registration.waiting);
    registration.addEventListener("updatefound", () => {
      const worker = registration.installing;
      worker.addEventListener("statechange", () => ready(worker));
    });
  } catch {
    // Served without a secure connection, or switched off: the page works with a
    // network only.
  }
}
