import { PASSWORD_LETTERS } from "#contract/records/account";
import { RecordsFault } from "#contract/records/fault";
import type { Problem } from "#engine/fault";
import { isWeakPin } from "./weakPins.ts";

const PIN_DIGITS = { from: 4, to: 8 };
const LETTERS_ALLOWED = `${PASSWORD_LETTERS.from} to ${PASSWORD_LETTERS.to} letters, blanks too`;
const GUESSED_ALLOWED =
  "a password that is not among the first to be guessed: neither the shop's or the person's name, nor one sign repeated, nor a row of keys";
const PIN_ALLOWED = `${PIN_DIGITS.from} to ${PIN_DIGITS.to} digits that are not among the first to be guessed: no date or year, nothing repeated, nothing counted up or down, no way over the keys`;
/** Shorter names say too little to be looked for in a password. */
const LEAST_NAME = 4;

/** Rows that fingers find by themselves, and words that stand on every list of leaked passwords (from memory; no list is copied). */
const ROWS = ["abcdefghijklmnopqrstuvwxyz", "01234567890", "qwertyuiop", "qwertzuiop", "asdfghjkl", "zxcvbnm", "yxcvbnm"];
const WORDS = ["password", "passwort", "letmein", "iloveyou", "welcome", "willkommen", "admin", "gritwright", "bowling", "proshop"];

/** One spelling of what looks the same (NIST SP 800-63B, 5.1.1.2: NFKC before hashing). */
export function normalized(secret: string): string {
  return secret.normalize("NFKC");
}

/** A name as it is compared and kept. */
export function nameKey(name: string): string {
  return name.normalize("NFKC").trim().toLowerCase();
}

/**
 * A password that may be kept, in its one spelling. What stood there is not told back.
 *
 * @param names of the shop, the person and the sign-in, which are the first to be guessed
 * @throws {RecordsFault} `refused`
 */
export function checkedPassword(written: string, names: readonly string[]): string {
  const password = normalized(written);
  const letters = [...password].length;
  if (letters < PASSWORD_LETTERS.from || letters > PASSWORD_LETTERS.to) throw refused("password", LETTERS_ALLOWED);
  if (isGuessed(password, names)) throw refused("password", GUESSED_ALLOWED);
  return password;
}

/** @throws {RecordsFault} `refused` */
export function checkedPin(written: string): string {
  const pin = normalized(written);
  const isPin = /^\d+$/.test(pin) && pin.length >= PIN_DIGITS.from && pin.length <= PIN_DIGITS.to;
  if (!isPin || isWeakPin(pin)) throw refused("pin", PIN_ALLOWED);
  return pin;
}

/** Whether something is not even worth hashing: nothing so long is ever kept. */
export function isTooLong(secret: string): boolean {
  return [...secret].length > PASSWORD_LETTERS.to;
}

/** Where a guessed word makes up most of it, what is left is too little. */
function isGuessed(password: string, names: readonly string[]): boolean {
  const plain = password.toLowerCase();
  if (isOneSign(plain) || isRow(plain)) return true;
  const known = [...WORDS, ...names.map((name) => nameKey(name)).filter((name) => name.length >= LEAST_NAME)];
  return known.some((word) => plain.includes(word) && plain.replaceAll(word, "").length < PASSWORD_LETTERS.from / 2);
}

function isOneSign(text: string): boolean {
  return new Set(text).size === 1;
}

function isRow(text: string): boolean {
  const backwards = [...text].reverse().join("");
  return ROWS.some((row) => (row + row).includes(text) || (row + row).includes(backwards));
}

/** The refusal of one field that must not be quoted. */
export function refused(path: string, allowed: string, value: unknown = "…"): RecordsFault {
  const problems: Problem[] = [{ path, value, allowed }];
  return new RecordsFault("refused", "accounts", { problems });
}
