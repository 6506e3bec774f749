/** Everything works with the server gone: the service worker (offline-worker.ts) keeps all code in the browser. */

/** Resolves when the whole of the desk is stored, so that it starts without its server; false where that cannot be. */
export async function keepCode(script: string): Promise<boolean> {
  if (!("serviceWorker" in navigator) || !globalThis.isSecureContext) return false;
  try {
    await navigator.serviceWorker.register(script, { updateViaCache: "none" });
    await navigator.serviceWorker.ready;
    return true;
  } catch (problem) {
    console.warn("the desk could not be stored for use without its server", problem);
    return false;
  }
}
