import type { Begun } from "#records/accounts/accounts";
import { openRecords } from "#records/openRecords";
import { type TestShop, testShop } from "./shop.ts";

export const GOOD = "seven herons on a jetty";
export const OTHER = "grey grit under the lamp";
export const HOUR = 3_600_000;
export const address = "192.0.2.7";

/** A shop whose one person is its owner, as "Ansel" with the password GOOD. @param later what its clock is moved on by, ms */
export async function shopWithOwner(later: () => number): Promise<TestShop> {
  const first = await testShop();
  const start = first.parts.now();
  const parts = { ...first.parts, now: () => start + later() };
  await first.records.close();
  const records = await openRecords(parts);
  await records.accounts.open(first.by, { signInName: "Ansel", role: "owner", password: GOOD }, first.by);
  const end = async (): Promise<void> => {
    await records.close();
    await first.end();
  };
  return { ...first, parts, records, end };
}

/** A session of the owner. */
export async function signedIn(accounts: TestShop["records"]["accounts"]): Promise<Begun> {
  const outcome = await accounts.signIn({ signInName: "ansel", password: GOOD, address });
  if (outcome.kind !== "in") throw new Error(outcome.kind);
  return outcome;
}

/** Somebody else, as "perpetua" with the password OTHER. Gives the person's id. */
export async function anotherWayIn({ records, by }: TestShop, role: "reader" | "owner" | "counter" = "counter"): Promise<string> {
  const { id } = await records.people.create({ name: "Perpetua Lintwhistle", initials: "PL" }, { by });
  await records.accounts.open(id, { signInName: "perpetua", role, password: OTHER }, by);
  return id;
}
