/** Keeps a text in this browser. A browser that keeps nothing (private window, full) is left alone: the page works without. */
export function remember(key: string, text: string): void {
  try {
    localStorage.setItem(key, text);
  } catch (error) {
    if (!(error instanceof DOMException)) throw error;
  }
}

/** A kept text, or null. */
export function recall(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch (error) {
    if (!(error instanceof DOMException)) throw error;
    return null;
  }
}
