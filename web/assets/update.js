// The folder form installs itself for use without a network. A new version is
// fetched beside the one in use and waits until somebody says yes.
import * as bar from "./bar.js";

/** install does that; what is done once the page has started waits for started. */
export async function install(started) {
  const tag = document.querySelector("script[data-service]");
  if (!tag || !("serviceWorker" in navigator)) return;
  const { serviceWorker } = navigator;
  let agreed = false;
  serviceWorker.addEventListener("message", ({ data, source }) => {
    const use = () => {
      agreed = true;
      source.postMessage("use");
    };
    if (data === "offer")
      bar.ask("version", "A new version is ready.", [
        ["Use it now", use],
        ["Later", () => {}],
      ]);
    else if (agreed) location.reload();
    else
      bar.ask("version", "Another window took the new version into use.", [["Load it here", () => location.reload()]]);
  });
  try {
    await serviceWorker.register(tag.dataset.service, { updateViaCache: "none" });
    const kept = await serviceWorker.ready;
    const newest = () => kept.waiting || kept.active;
    newest().postMessage("ask");
    await started;
    newest().postMessage("started");
  } catch {
    // Served without a secure connection, or switched off: the page works with a
    // network only.
  }
}
