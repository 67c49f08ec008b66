// Name of the cache where the worker keeps the unpacked core, and from which the
// service worker hands it out.
export const SHELF = "boxwright-core";
