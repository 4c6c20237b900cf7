/** Whether this address lets the page be installed and opened while the server is away; where not, why. */
export function canGoOffline(): boolean {
  return isSecureContext && "serviceWorker" in navigator;
}

/** Throws away what was read from the shop and lies in this browser. */
export async function forgetRead(): Promise<void> {
  if (!canGoOffline()) return;
  // The worker knows one message, this one. It has no module in common with the page: it must be one file.
  (await navigator.serviceWorker.getRegistration())?.active?.postMessage(null);
}

/** Lets the browser keep the page. After the page is there: nothing that is looked at waits for it. */
export function keepPage(): void {
  if (!import.meta.env.PROD || !canGoOffline()) return;
  navigator.serviceWorker.register("/sw.js").catch((error: unknown) => console.warn(error));
}
