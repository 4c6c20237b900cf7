import { ACCESS } from "#words/en/rooms/access";
import type { ShopFault } from "./shopClient.ts";

const WORDS = {
  notForRole: ACCESS.notForRole,
  notSignedIn: ACCESS.notSignedIn,
  wrongSecret: ACCESS.wrongSecret,
  pinOff: ACCESS.pinOff,
  otherPerson: ACCESS.otherPerson,
} as const;

/** A refusal in the page's own language where it is about who may do what; else as the server says it. */
export function faultWords(fault: ShopFault): string {
  if (fault.isKind("waitFirst")) return ACCESS.waitFirst(fault.problem?.retrySeconds ?? 1);
  for (const [kind, words] of Object.entries(WORDS)) if (fault.isKind(kind as keyof typeof WORDS)) return words;
  return fault.message;
}
