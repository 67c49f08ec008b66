// Keeps the state of the page in this browser, at every change.

const KEY = "boxwright.state.1";
const CATALOGUE = "boxwright.catalogue.1";
const COSTS = "boxwright.costs.1"; // the seller's cost sheet, sealed

function read(key) {
  try {
    return localStorage.getItem(key);
  } catch {
    return null; // storage may be switched off; the page works without
  }
}

function write(key, text) {
  try {
    if (text === null) localStorage.removeItem(key);
    else localStorage.setItem(key, text);
    return true;
  } catch {
    return false;
  }
}

// load gives what was kept, or an empty state when there is none that reads.
export function load() {
  try {
    const state = JSON.parse(read(KEY) || "{}");
    return state && typeof state === "object" ? state : {};
  } catch {
    return {};
  }
}

export const save = (state) => write(KEY, JSON.stringify(state));
export const loadCatalogue = () => read(CATALOGUE);
export const saveCatalogue = (text) => write(CATALOGUE, text);
export const loadCosts = () => read(COSTS) || "";
export const saveCosts = (sealed) => write(COSTS, sealed || null);
