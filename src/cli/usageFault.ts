import { type JobFault, wholeFileFault } from "#contract/problem";

/** A fault of the command line itself. */
export function usageFault(detail: string, allowed: string, value: unknown = null): JobFault {
  return wholeFileFault("usage", "usage", allowed, { detail }, value);
}
