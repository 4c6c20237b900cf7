/**
 * What may be logged of an event. There is no room for texts of people: no address with its parameters, no search words, no bodies, no names.
 */
export interface LogEvent {
  readonly event: "started" | "request" | "broken" | "stopping" | "stopped" | "plan" | "backup" | "unreadable";
  readonly [field: string]: string | number | boolean | null;
}

export type Log = (level: "info" | "error", event: LogEvent) => void;

/**
 * Writes one line of JSON an event.
 *
 * @param what `off` nothing, `errors` only what broke, `requests` everything
 * @param write takes a whole line
 * @param now ISO time of the event
 */
export function jsonLog(what: "off" | "errors" | "requests", write: (line: string) => void, now: () => string): Log {
  return (level, event) => {
    if (what === "off" || (what === "errors" && level !== "error")) return;
    write(`${JSON.stringify({ time: now(), level, ...event })}\n`);
  };
}
