/** Under which this browser keeps who was last signed in. */
export const SESSION_MEMORY = "gritwright.door";
const NEWS = "gritwright-door";

/** Tells the frame that who is signed in may have changed: an answer said so, or a stream was closed. */
export function announceSession(): void {
  dispatchEvent(new Event(NEWS));
}

/** @returns stops hearing */
export function onSession(hear: () => void): () => void {
  // Another tab of this browser has another person, and the same cookie.
  const hearTab = ({ key }: StorageEvent): void => {
    if (key === SESSION_MEMORY) hear();
  };
  addEventListener(NEWS, hear);
  addEventListener("storage", hearTab);
  return () => {
    removeEventListener(NEWS, hear);
    removeEventListener("storage", hearTab);
  };
}
