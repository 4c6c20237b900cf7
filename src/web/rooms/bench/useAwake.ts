import { useEffect, useState } from "react";

/** Keeps the screen on while the guide is open. @returns false where the browser cannot, or not on such an address */
export function useAwake(): boolean {
  const [isHeld, setHeld] = useState(true);
  useEffect(() => {
    let lock: WakeLockSentinel | null = null;
    const hold = async (): Promise<void> => {
      try {
        lock = (await navigator.wakeLock?.request("screen")) ?? null;
        setHeld(lock !== null);
      } catch (error) {
        if (!(error instanceof DOMException)) throw error;
        setHeld(false);
      }
    };
    // The lock is lost whenever the page is hidden.
    const again = (): void => {
      if (document.visibilityState === "visible") void hold();
    };
    void hold();
    document.addEventListener("visibilitychange", again);
    return () => {
      document.removeEventListener("visibilitychange", again);
      void lock?.release();
    };
  }, []);
  return isHeld;
}
