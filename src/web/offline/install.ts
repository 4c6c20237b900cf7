/** Whether this address lets the page be installed and opened while the server is away; where not, why. */
export function canGoOffline(): boolean {
  return isSecureContext && "serviceWorker" in navigator;
}

/** Lets the browser keep the page. After the page is there: nothing that is looked at waits for it. */
export function keepPage(): void {
  if (!import.meta.env.PROD || !canGoOffline()) return;
  navigator.serviceWorker.register("/sw.js").catch((error: unknown) => console.warn(error));
}
