import { mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "@playwright/test";
import Sqlite from "better-sqlite3";
import { ownServer } from "./shopServer.ts";

/* What cannot be read stops nothing, is said, and can be put right. */

test("a ball that cannot be read hides neither the queue nor the other balls; Today says so, Shop shows it and puts it right", async ({
  browser,
}) => {
  test.setTimeout(120_000);
  const data = mkdtempSync(join(tmpdir(), "gritwright-unreadable-"));
  const server = await ownServer(data, 0);
  const [shop] = readdirSync(data, { recursive: true, encoding: "utf8" }).filter((name) => name.endsWith("records.sqlite"));
  const raw = new Sqlite(join(data, shop));
  const { id, body } = raw
    .prepare(
      "select balls.id, balls.body from balls join tickets on tickets.ballId = balls.id where tickets.state not in ('collected', 'cancelled') limit 1",
    )
    .get() as { id: string; body: string };
  const { name } = JSON.parse(body);
  raw.prepare("update balls set body = ? where id = ?").run(JSON.stringify({ ...JSON.parse(body), cover: "cork" }), id);

  const context = await browser.newContext({ baseURL: server.address });
  const page = await context.newPage();
  await page.goto("/");
  await expect(page.getByText("?", { exact: true }).first()).toBeVisible();
  await expect(page.locator("#answer")).not.toContainText("could not be read");
  await page.reload();
  await expect(page.getByText("1 entry of the records cannot be read")).toBeVisible();
  await page.getByRole("link", { name: "The room Shop says why" }).click();
  await page.getByText("What cannot be read").click();
  await page.getByRole("button", { name: "Look through everything" }).click();
  await expect(page.getByText('cover is "cork". Allowed: one of polyester, urethane, solid, hybrid, pearl.')).toBeVisible();
  await page.getByRole("button", { name: "See what lies there" }).click();
  const document = page.getByLabel("As it lies in the records (JSON)");
  await document.fill((await document.inputValue()).replace('"cork"', '"rubber"'));
  await page.getByRole("button", { name: "Put this in its place" }).click();
  await expect(page.getByRole("alert")).toContainText("one of polyester");
  await document.fill((await document.inputValue()).replace('"rubber"', '"pearl"'));
  await page.getByRole("button", { name: "Put this in its place" }).click();
  await expect(page.getByText("Everything that is kept can be read.")).toBeVisible();
  await page.goto(`/balls/${id}`);
  await expect(page.locator("#answer h1")).toContainText(name);
  await page.goto("/");
  await expect(page.getByText("cannot be read")).toHaveCount(0);
  raw.close();
  await context.close();
  await server.stop();
  rmSync(data, { recursive: true, force: true });
});

test("Today says that the last backup failed, and how many photos are lost; an owner is led to why", async ({ page }) => {
  await page.route("**/api/health", async (route) => {
    const answer = await route.fetch();
    await route.fulfill({ response: answer, json: { ...(await answer.json()), lastBackup: "failed", lostFiles: 2 } });
  });
  await page.goto("/");
  const said = page.locator("p.failed");
  await expect(said.filter({ hasText: "The last backup failed." })).toBeVisible();
  await expect(said.filter({ hasText: "2 photos and files of the records are lost" })).toBeVisible();
  await said.filter({ hasText: "failed" }).getByRole("link", { name: "The room Shop says why" }).click();
  await expect(page).toHaveURL(/\/shop$/);
});
