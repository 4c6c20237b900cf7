/** Keeps a text in this browser, and says whether it did. A browser that keeps nothing (private window, full) is left alone: the page works without. */
export function remember(key: string, text: string): boolean {
  try {
    localStorage.setItem(key, text);
    return true;
  } catch (error) {
    if (!(error instanceof DOMException)) throw error;
    return false;
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
