import { createHash, createHmac, timingSafeEqual } from "node:crypto";
import type { AccountRow } from "../database/tables.ts";

/** A device that nobody used for a year is a new one. */
export const DEVICE_LASTS_MS = 365 * 24 * 3_600_000;

type Signing = Pick<AccountRow, "personId" | "passwordHash">;

/**
 * What a browser keeps to be known again: whose it was, since when, and a signature (HMAC with SHA-256, RFC 2104). It opens nothing: it only keeps
 * others' vain tries from counting against this one. The key is the hash of the password, which every server of the shop has and nobody else, and
 * which a new password replaces.
 */
export function deviceMark(account: Signing, at: number): string {
  const said = `${account.personId}.${at}`;
  return `${said}.${signed(account, said)}`;
}

/** A name for the device, for counting; null where the mark is not this person's, is older than a year, or is none. */
export function knownDevice(account: Signing, mark: string | null, at: number): string | null {
  if (mark === null || mark.length > 200) return null;
  const [personId, since, signature = ""] = mark.split(".");
  if (personId !== account.personId || !/^\d{1,15}$/.test(since) || at - Number(since) > DEVICE_LASTS_MS) return null;
  const [given, right] = [Buffer.from(signature), Buffer.from(signed(account, `${personId}.${since}`))];
  if (given.length !== right.length || !timingSafeEqual(given, right)) return null;
  return createHash("sha256").update(mark).digest("hex");
}

function signed({ passwordHash }: Signing, said: string): string {
  return createHmac("sha256", passwordHash).update(`device ${said}`).digest("base64url");
}
