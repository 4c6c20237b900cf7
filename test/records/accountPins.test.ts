import { afterEach, beforeEach, describe, expect, test } from "vitest";
import type { Accounts } from "#records/accounts/accounts";
import { address, anotherWayIn, GOOD, HOUR, OTHER, shopWithOwner, signedIn } from "./accountsShop.ts";
import type { TestShop } from "./shop.ts";

let shop: TestShop;
let accounts: Accounts;
/** What the shop's clock is moved on by, ms. */
let later = 0;
beforeEach(async () => {
  later = 0;
  shop = await shopWithOwner(() => later);
  accounts = shop.records.accounts;
});
afterEach(() => shop.end());

const begun = () => signedIn(accounts);
const second = (role?: "reader" | "owner" | "counter") => anotherWayIn(shop, role);

describe("a PIN", () => {
  test("changes the person of a session, which ends; the next one lasts no longer", async () => {
    const id = await second();
    await accounts.change(id, { pin: "7302" }, shop.by);
    const { token, session } = await begun();
    later += HOUR;
    const taken = await accounts.changePerson(session, { personId: id, pin: "7302", address });
    if (taken.kind !== "in") throw new Error(taken.kind);
    expect(taken.session).toMatchObject({ personId: id, role: "counter", endsAt: session.endsAt });
    expect(await accounts.recognise(token)).toBeNull();
    expect(await accounts.changePerson(session, { personId: id, pin: "7302", address })).toEqual({ kind: "wrong" });
  });

  test("ends with the way in of whoever's password began it, and with the PIN that opened it", async () => {
    const id = await second("owner");
    await accounts.change(id, { pin: "7302" }, shop.by);
    const takeOver = async () => {
      const { session } = await begun();
      const taken = await accounts.changePerson(session, { personId: id, pin: "7302", address });
      if (taken.kind !== "in") throw new Error(taken.kind);
      return taken.session;
    };
    const taken = await takeOver();
    expect(taken).toMatchObject({ personId: id, begunBy: shop.by });
    await accounts.change(shop.by, { password: OTHER }, shop.by);
    expect(await accounts.isLive(taken.id)).toBe(false);
    await accounts.change(shop.by, { password: GOOD }, shop.by);
    const again = await takeOver();
    const own = await accounts.signIn({ signInName: "perpetua", password: OTHER, address });
    if (own.kind !== "in") throw new Error(own.kind);
    await accounts.change(id, { pin: "4937" }, id);
    expect([await accounts.isLive(again.id), await accounts.isLive(own.session.id)]).toEqual([false, true]);
    await accounts.change(id, { pin: "7302" }, id);
    const last = await takeOver();
    // Whoever began it has left: so has the session, whoever is in it.
    await shop.records.people.change(shop.by, { state: "has left" }, { by: id, expectedVersion: 1 });
    expect([await accounts.isLive(last.id), await accounts.isLive(own.session.id)]).toEqual([false, true]);
    await accounts.close(shop.by, id);
    expect(await accounts.sessions(id)).toHaveLength(1);
  });

  test("that was right forgives none of the wrong ones before: only the password does", async () => {
    const id = await second();
    await accounts.change(id, { pin: "7302" }, shop.by);
    const tried = async (pin: string) => (await accounts.changePerson((await begun()).session, { personId: id, pin, address })).kind;
    const kinds: string[] = [];
    for (const pin of ["0937", "0938", "7302", "0939", "7302", "0940", "0941", "7302"]) kinds.push(await tried(pin));
    expect(kinds).toEqual(["wrong", "wrong", "in", "wrong", "in", "wrong", "wrong", "off"]);
    await accounts.signIn({ signInName: "perpetua", password: OTHER, address });
    expect(await tried("7302")).toBe("in");
  });

  test("opens nothing after five wrong ones, until the person's password was right; nor where there is none", async () => {
    const id = await second();
    const { session } = await begun();
    expect(await accounts.changePerson(session, { personId: id, pin: "", address })).toEqual({ kind: "wrong" });
    await accounts.change(id, { pin: "7302" }, shop.by);
    const tries = await Promise.all(
      Array.from({ length: 7 }, () => accounts.changePerson(session, { personId: id, pin: "0937", address })),
    );
    expect(tries.map(({ kind }) => kind).sort()).toEqual(["off", "off", "wrong", "wrong", "wrong", "wrong", "wrong"]);
    expect(await accounts.changePerson(session, { personId: id, pin: "7302", address })).toEqual({ kind: "off" });
    expect(await accounts.signIn({ signInName: "perpetua", password: "7302", address })).toEqual({ kind: "wrong" });
    expect(await accounts.signIn({ signInName: "perpetua", password: OTHER, address })).toMatchObject({ kind: "in" });
    expect(await accounts.changePerson(session, { personId: id, pin: "7302", address })).toMatchObject({ kind: "in" });
  });
});
