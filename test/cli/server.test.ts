import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { testPostgres } from "../records/postgres.ts";
import { onTheCounter, testShop } from "../records/shop.ts";
import { fileWith, inProcess, scratchFolder } from "./commandLine.ts";

const postgres = await testPostgres();
afterAll(() => postgres?.stop());

describe.runIf(postgres !== null)("the records of a PostgreSQL database from the command line", () => {
  it("an address stands where a folder does; a database without a shop is refused, and stays without one", async () => {
    const address = (await postgres?.newDatabase()) ?? "";
    const [out, table] = [scratchFolder(), fileWith("name\nHedda Plover\n", "bowlers.csv")];
    expect(await inProcess("backup", address, out)).toMatchObject({
      code: 2,
      stderr: expect.stringContaining("holds no records of a shop"),
    });
    expect((await inProcess("shops", address)).stdout).toBe("There is no shop yet.\n");
    expect((await inProcess("shops", address, "--add", "West Side")).code).toBe(0);
    const done = JSON.parse((await inProcess("import", "bowlers", table, address, "--apply", "--json")).stdout);
    expect(done).toMatchObject({ added: 1 });
    expect((await inProcess("export", address, join(out, "tables"))).code).toBe(0);
    expect(readFileSync(join(out, "tables", "bowlers.csv"), "utf8")).toContain("Hedda Plover");
    const { made } = JSON.parse((await inProcess("backup", address, out, "--json")).stdout);
    expect((await inProcess("undo", done.importId, address)).stdout).toBe("1 taken out again.\n");
    const restored = await inProcess("restore", join(out, "backups", made.name), address);
    expect(restored.stdout).toMatch(/^Restored as of .*\nWhat was there before lies in gritwright_before_restore_\d+\n$/);
    expect((await inProcess("undo", done.importId, address)).stdout).toBe("1 taken out again.\n");
  });

  it("what an address wants is said: the encoding, a database that is there, a server with TLS", async () => {
    const [latin, good] = [(await postgres?.newDatabase("LATIN1")) ?? "", (await postgres?.newDatabase()) ?? ""];
    const from = join(scratchFolder(), "shop");
    await (await testShop({ folder: from })).records.close();
    const said = async (to: string) => (await inProcess("move", "--from", from, "--to", to)).stderr;
    expect(await said(latin)).toContain("encoding of the database: allowed: UTF8: create database");
    expect(await said(`${good}_none`)).toMatch(/cannot be reached\.[\s\S]*allowed: a database that is there: create database/);
    expect(await said(`${good}?sslmode=verify-full`)).toMatch(/cannot be reached\.[\s\S]*or a server that speaks TLS/);
    expect(await said(good)).toBe("");
  });

  it("a folder is moved into it and out again", async () => {
    const address = (await postgres?.newDatabase()) ?? "";
    const [folder, back] = [join(scratchFolder(), "shop"), join(scratchFolder(), "back")];
    const shop = await testShop({ folder });
    await onTheCounter(shop);
    await shop.records.close();
    expect((await inProcess("move", "--from", folder, "--to", address)).code).toBe(0);
    const { from, to, counts } = JSON.parse((await inProcess("move", "--from", address, "--to", back, "--json")).stdout);
    expect([from, to, counts.tickets]).toEqual([address, back, 1]);
    expect((await inProcess("export", address, join(back, "out"))).stderr).toContain(`frozen: moved to ${back}`);
    expect((await inProcess("export", back, join(back, "out"))).code).toBe(0);
  });
});
