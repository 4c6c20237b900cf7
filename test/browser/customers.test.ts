import { gzipSync } from "node:zlib";
import { AxeBuilder } from "@axe-core/playwright";
import { type APIRequestContext, expect, test } from "@playwright/test";
import { PNG } from "../records/pictures.ts";
import { complaints, finished, workedBall } from "./room.ts";

/* One customer: what is kept of them is changed, handed out and erased, and two counters at once lose nothing. */

async function aBowler(request: APIRequestContext, name: string) {
  const made = await request.post("/api/bowlers", { data: { name, phone: "555-0199", hand: "right" } });
  expect(made.status()).toBe(201);
  return made.json();
}

test("contacts are changed in place; a figure that is not allowed is answered beside its field; nothing typed is lost by a reload", async ({
  page,
  request,
}) => {
  const heard = complaints(page);
  const bowler = await aBowler(request, "Invented Customer");
  await page.goto(`/bowlers/${bowler.id}`);
  await page.getByRole("button", { name: "Change: Contacts" }).click();
  await page.getByLabel("E-mail").fill("customer@shop.example");
  await page.reload();
  await expect(page.getByLabel("E-mail")).toHaveValue("customer@shop.example");
  await page.getByRole("button", { name: "Keep", exact: true }).click();
  await expect(page.getByText("customer@shop.example")).toBeVisible();
  await page.getByRole("button", { name: "Change: Spread and PAP" }).click();
  await page.getByLabel("PAP over, in").fill("5");
  await page.getByLabel("PAP up, in").fill("99");
  await page.getByRole("button", { name: "Keep", exact: true }).click();
  await expect(page.locator(".field-problem")).toContainText("13.5");
  await page.getByLabel("PAP up, in").fill("0,5");
  await page.getByRole("button", { name: "Keep", exact: true }).click();
  await expect(page.getByLabel("PAP up, in")).toHaveCount(0);
  const kept = await (await request.get(`/api/bowlers/${bowler.id}`)).json();
  expect([kept.email, kept.phone, kept.pap]).toEqual(["customer@shop.example", "555-0199", { overIn: 5, upIn: 0.5 }]);
  expect(heard.filter((text) => !text.includes("422"))).toEqual([]);
});

test("two counters change one customer: both versions are shown, and the second chooses", async ({ page, request }) => {
  const bowler = await aBowler(request, "Invented Twice");
  await page.goto(`/bowlers/${bowler.id}`);
  await page.getByRole("button", { name: "Change: Contacts" }).click();
  await page.getByLabel("Telephone", { exact: true }).fill("555-0111");
  const other = await request.patch(`/api/bowlers/${bowler.id}`, {
    data: { phone: "555-0122", address: "1 Made-up Street" },
    headers: { "If-Match": '"1"' },
  });
  expect(other.status()).toBe(200);
  await page.getByRole("button", { name: "Keep", exact: true }).click();
  const both = page.getByRole("alert");
  await expect(both).toContainText("555-0111");
  await expect(both).toContainText("555-0122");
  await both.getByRole("button", { name: "Keep what I typed" }).click();
  await expect(page.getByLabel("Telephone", { exact: true })).toHaveCount(0);
  const kept = await (await request.get(`/api/bowlers/${bowler.id}`)).json();
  expect([kept.phone, kept.address]).toEqual(["555-0111", "1 Made-up Street"]);
});

test("a delivery is added in figures or words; it says how it is known, and the one before stays", async ({ page, request }) => {
  const bowler = await aBowler(request, "Invented Delivery");
  await page.goto(`/bowlers/${bowler.id}`);
  await page.getByRole("button", { name: /Write a delivery down/ }).click();
  await page.getByRole("button", { name: "Keep this delivery" }).click();
  await expect(page.getByText("Write one figure or choose one word first.")).toBeVisible();
  await page.getByLabel("Launch speed, mph").fill("60");
  await page.getByRole("button", { name: "Keep this delivery" }).click();
  await expect(page.locator(".field-problem").first()).toContainText("40 mph");
  await page.getByLabel("Launch speed, mph").fill("17.5");
  await page.getByRole("button", { name: "Keep this delivery" }).click();
  await expect(page.getByText("measured from a video").first()).toBeVisible();
  await page.getByText("words", { exact: true }).click();
  await page.getByLabel("How fast").selectOption("fast");
  await page.getByRole("button", { name: "Keep this delivery" }).click();
  await expect(page.getByText("in words, not measured").first()).toBeVisible();
  await page.getByText("Earlier deliveries (1)").click();
  await expect(page.getByText(/launch speed 17.5 mph/)).toBeVisible();
});

test("a spread that is not touched stays to the last digit, and a ball is taken in for this customer at once", async ({
  page,
  request,
}) => {
  const bowler = await aBowler(request, "Invented Regular");
  const patched = await request.patch(`/api/bowlers/${bowler.id}`, {
    data: { spread: { speedMph: 0.347, revRateRpm: 11 } },
    headers: { "If-Match": '"1"' },
  });
  expect(patched.status()).toBe(200);
  await page.goto(`/bowlers/${bowler.id}`);
  await page.getByRole("button", { name: "Change: Spread and PAP" }).click();
  await page.getByLabel("Spread of rev rate, rpm").fill("14");
  await page.getByRole("button", { name: "Keep", exact: true }).click();
  await expect(page.getByLabel("Spread of rev rate, rpm")).toHaveCount(0);
  const kept = await (await request.get(`/api/bowlers/${bowler.id}`)).json();
  expect([kept.spread.speedMph, kept.spread.revRateRpm, kept.pap]).toEqual([0.347, 14, null]);
  await page.getByRole("link", { name: "Check in a ball" }).click();
  await expect(page.getByRole("heading", { name: "Invented Regular" })).toBeVisible();
  await page.getByRole("button", { name: "New ball" }).click();
  await page.getByLabel("What the ball is called").fill("Invented Newcomer Ball");
  await page.getByRole("button", { name: "Check in, plan the finish" }).click();
  await page.waitForURL(/\/plan\?ticket=/);
  await page.goto(`/tickets/${new URL(page.url()).searchParams.get("ticket")}`);
  await expect(page.getByRole("link", { name: "Invented Regular" })).toBeVisible();
});

test("refreshes paid ahead are counted; more than there are cannot be used", async ({ page, request }) => {
  const bowler = await aBowler(request, "Invented Saver");
  await page.goto(`/bowlers/${bowler.id}`);
  await expect(page.getByText("None was ever bought ahead.")).toBeVisible();
  await page.getByLabel("How many").fill("3");
  await page.getByRole("button", { name: "Bought ahead" }).dblclick();
  await expect(page.getByText("3 refreshes are left.")).toBeVisible();
  await page.getByLabel("How many").fill("4");
  await page.getByRole("button", { name: "Used", exact: true }).click();
  await expect(page.getByRole("alert")).toContainText("so many refreshes are left");
  await page.getByLabel("How many").fill("1");
  await page.getByRole("button", { name: "Used", exact: true }).click();
  await expect(page.getByText("2 refreshes are left.")).toBeVisible();
  const { items } = await (await request.get(`/api/prepaid?bowlerId=${bowler.id}`)).json();
  expect(items.map(({ change }: { change: number }) => change).toSorted()).toEqual([-1, 3]);
});

test("what was found on a ball stops it until it is taken off the list; taking off can be undone", async ({ page, request }) => {
  const ball = await (await request.post("/api/balls", { data: { name: "Invented Find", cover: "solid", boxFinish: "2000" } })).json();
  await page.goto(`/balls/${ball.id}`);
  await page.getByLabel("Where, and how it looks").fill("beside the thumb");
  await page.getByRole("button", { name: "Write the find down" }).click();
  await expect(page.getByText("Found on it: crack. No spinner, no heat")).toBeVisible();
  await expect(page.getByText("found: crack (beside the thumb)")).toBeVisible();
  await page.getByRole("button", { name: "No longer there: crack" }).click();
  await expect(page.getByText("Found on it: crack. No spinner, no heat")).toHaveCount(0);
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(page.getByText("Found on it: crack. No spinner, no heat")).toBeVisible();
  const kept = await (await request.get(`/api/balls/${ball.id}`)).json();
  expect(kept.found).toMatchObject([{ what: "crack", note: "beside the thumb" }]);
});

test("roughness is drawn and told in the unit that the shop has chosen", async ({ page, request }) => {
  const choose = async (roughnessUnit: string) => {
    const { version } = await (await request.get("/api/settings")).json();
    await request.patch("/api/settings", { data: { roughnessUnit }, headers: { "If-Match": `"${version}"` } });
  };
  const ball = await (await request.post("/api/balls", { data: { name: "Invented Unit", cover: "solid", boxFinish: "1000" } })).json();
  const told: string[] = [];
  for (const unit of ["µm", "µin"]) {
    await choose(unit);
    await page.goto(`/balls/${ball.id}`);
    await expect(page.locator(".fade-chart svg", { hasText: `effective roughness, ${unit}` })).toBeVisible();
    told.push((await page.getByText(/^Track after 0 games: /).textContent()) ?? "");
  }
  const [um, microinch] = told.map((text) => Number(/games: ([\d.]+)/.exec(text)?.[1]));
  // A microinch is 0.0254 µm exactly (an inch is 25.4 mm by agreement of 1959).
  expect(microinch * 0.0254).toBeCloseTo(um, 2);
});

test("personal data are handed out as a file, and erased for good after asking", async ({ page, request }) => {
  const bowler = await aBowler(request, "Invented Leaver");
  await page.goto(`/bowlers/${bowler.id}`);
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save the personal data" }).click();
  expect((await download).suggestedFilename()).toBe("personal-data.zip");
  await page.getByRole("button", { name: "Erase the personal data …" }).click();
  await page.getByRole("button", { name: "Leave everything" }).click();
  await expect(page.getByRole("heading", { name: "Invented Leaver" })).toBeVisible();
  await page.getByRole("button", { name: "Erase the personal data …" }).click();
  await page.getByRole("button", { name: "Erase, for ever" }).click();
  await expect(page.getByText("were erased on")).toBeVisible();
  await expect(
    page.getByText(/^No backup of this server holds this person\.|: gone by |: stays until somebody deletes it/).first(),
  ).toBeVisible();
  expect(await (await request.get(`/api/bowlers/${bowler.id}`)).text()).not.toContain("Leaver");
  const { items } = await (await request.get(`/api/audit?thingId=${bowler.id}`)).json();
  expect(items.map(({ did }: { did: string }) => did)).toEqual(expect.arrayContaining(["export", "erase"]));
});

test("a customer of the invented shop: bag with textures, visits with what was paid, and a way in from ball and ticket", async ({
  page,
  request,
}) => {
  const { items } = await (await request.get("/api/tickets?limit=1&order=oldest first")).json();
  await page.goto(`/tickets/${items[0].id}`);
  const owner = await (await request.get(`/api/bowlers/${items[0].bowlerId}`)).json();
  await page.getByRole("link", { name: owner.name }).click();
  await expect(page.getByRole("heading", { name: owner.name })).toBeVisible();
  await expect(page.locator(".bag-line .swatch svg").first()).toBeVisible();
  await expect(page.locator(".plain-table tbody tr").first()).toContainText("US$");
  await page.locator(".bag-line").first().click();
  await expect(page.getByRole("link", { name: owner.name })).toBeVisible();
});

test("a ball's log: a photo is kept, seen in the log and on its ticket; what is no picture is refused", async ({ page, request }) => {
  const { items } = await (await request.get("/api/tickets?limit=1&order=oldest first")).json();
  await page.goto(`/tickets/${items[0].id}`);
  await page.getByRole("button", { name: "Photos (0)" }).click();
  await page.getByLabel("What it shows").selectOption("serial");
  const file = { name: "note.png", mimeType: "image/png", buffer: Buffer.from("no picture at all") };
  await page.getByLabel("Take or choose a photo").setInputFiles(file);
  await expect(page.getByText("These bytes are not a JPEG, PNG or WebP picture.")).toBeVisible();
  await page.getByLabel("Take or choose a photo").setInputFiles({ ...file, name: "serial.png", buffer: PNG });
  const photo = page.getByRole("img", { name: /^Photo, serial number/ });
  await expect(photo).toBeVisible();
  expect(await photo.evaluate((img: HTMLImageElement) => img.decode().then(() => img.naturalWidth))).toBe(1);
  await page.goto(`/balls/${items[0].ballId}`);
  await expect(page.getByRole("link", { name: "photo: serial number" })).toBeVisible();
  await page.getByRole("button", { name: /^Take out the photo/ }).click();
  await expect(page.getByRole("link", { name: "photo: serial number" })).toHaveCount(0);
});

test("a ball's log says what is due since when, what ends it, and what was not checked; more than two hundred entries are all there", async ({
  page,
  request,
}) => {
  const ball = await (
    await request.post("/api/balls", {
      data: { name: "Invented Workhorse", cover: "solid", core: { massLb: 15, rgIn: 2.5, differentialIn: 0.05 }, boxFinish: "2000" },
    })
  ).json();
  const at = (i: number) => new Date(Date.UTC(2026, 0, 1) + i * 3_600_000).toISOString();
  for (let i = 0; i < 230; i++)
    await request.post("/api/readings", {
      data: { ballId: ball.id, at: at(i), when: "between", place: "track", how: "tester", raUm: 0.5 + i / 1000 },
    });
  await page.goto(`/balls/${ball.id}`);
  await page.getByRole("button", { name: "Show all 230" }).click();
  await expect(page.locator(".ball-log li")).toHaveCount(230);
  await expect(page.getByText("Within the limits measured.")).toBeVisible();
  await expect(page.getByText(/Not checked: .*hardness/)).toBeVisible();
  await expect(page.getByText(/oil extraction: not in these records/)).toBeVisible();
  await expect(page.getByText(/the serial number would be sanded away/)).toBeVisible();
  expect(await page.locator("#answer").textContent()).not.toMatch(/legal/i);
  await page.getByRole("button", { name: "Change: About this ball" }).click();
  await page.getByLabel("Pin to PAP, in").fill("4,5");
  await page.getByLabel("Warranty until").fill("2028-01-31");
  await page.getByLabel("Weight, lb").fill("17");
  await page.getByRole("button", { name: "Keep", exact: true }).click();
  await expect(page.getByText("Outside: mass.")).toBeVisible();
  const kept = await (await request.get(`/api/balls/${ball.id}`)).json();
  expect([kept.layout.pinToPapIn, kept.warranty.until, kept.core.rgIn]).toEqual([4.5, "2028-01-31", 2.5]);
});

test("the ball in space is drawn, and turned by button and by arrow keys; its words turn with it", async ({ page, request }) => {
  const id = await workedBall(request);
  await page.goto(`/balls/${id}`);
  const picture = page.locator(".ball-space svg");
  await expect(page.locator(".ball-log li", { hasText: /: signed [A-Z]+/ }).first()).toBeVisible();
  // What was read last in the track stands beside what was read off it.
  const { items } = await (await request.get(`/api/readings?ballId=${id}&limit=200`)).json();
  const places = ["track", "off track"].filter((place) => items.some((one: { place: string }) => one.place === place));
  expect(places.length).toBeGreaterThan(0);
  for (const place of places) await expect(page.getByRole("row", { name: new RegExp(`^${place} `) })).toBeVisible();
  await expect(page.getByText(/^Grains: the pad work signed/)).toBeVisible();
  const grip = page.locator(".ball-word", { hasText: "grip" });
  const before = await grip.boundingBox();
  const drawn = await picture.innerHTML();
  await page.getByRole("button", { name: "Turn right" }).click();
  await expect.poll(async () => (await grip.boundingBox())?.x).not.toBe(before?.x);
  const turned = await grip.boundingBox();
  await page.keyboard.press("ArrowDown");
  await expect.poll(async () => (await grip.boundingBox())?.y).not.toBe(turned?.y);
  expect(await picture.innerHTML()).not.toBe(drawn);
  await page.getByRole("button", { name: "Look at the side opposite the grip" }).click();
  await expect(page.locator(".ball-word", { hasText: "opposite" })).toBeVisible();
  await expect(grip).toHaveCount(0);
});

test("where less motion is asked for the ball is flat, from the same work", async ({ page, request }) => {
  await page.emulateMedia({ reducedMotion: "reduce" });
  await page.goto(`/balls/${await workedBall(request)}`);
  await expect(page.getByRole("img", { name: /Pad work over the ball/ })).toBeVisible();
  await expect(page.locator(".ball-space")).toHaveCount(0);
});

test("the first load of a room that computes nothing is under 250 kB gzip: no workers", async ({ browser }) => {
  // A service worker would fetch the rest for later.
  const context = await browser.newContext({ serviceWorkers: "block" });
  const page = await context.newPage();
  const files: Promise<readonly [string, number]>[] = [];
  page.on("response", (one) => {
    if (one.url().includes("/assets/")) files.push(one.body().then((body) => [one.url(), gzipSync(body).length]));
  });
  await page.goto("/");
  await expect(page.getByRole("heading", { name: "Today" })).toBeVisible();
  await page.waitForLoadState("load");
  const read = new Map(await Promise.all(files));
  const bytes = [...read.values()].reduce((sum, size) => sum + size, 0);
  test.info().annotations.push({ type: "first load", description: `${read.size} files, ${bytes} bytes gzip` });
  expect(read.size).toBeGreaterThan(5);
  expect(bytes).toBeLessThan(250_000);
  await context.close();
});

for (const [paper, width, height] of [
  // A4 is 210 × 297 mm (ISO 216), Letter 8.5 × 11 in (ANSI Y14.1); a point is 1/72 in.
  ["Letter", 612, 792],
  ["A4", (210 / 25.4) * 72, (297 / 25.4) * 72],
] as const) {
  test(`measurement sheet, ticket and plan are each one page of ${paper}, once the shop has chosen it`, async ({ page, request }) => {
    test.setTimeout(120_000);
    const settings = await (await request.get("/api/settings")).json();
    await request.patch("/api/settings", { data: { paperSize: paper }, headers: { "If-Match": `"${settings.version}"` } });
    const { items } = await (await request.get("/api/tickets?limit=1&order=oldest first")).json();
    const { id: ticketId, ballId } = items[0];
    const sides = ["grip", "opposite", "left", "right", "fingers", "thumb"];
    for (const when of ["before", "after"])
      for (const [i, place] of sides.entries())
        for (const raUm of [0.4, 0.41, 0.42].map((um) => (um * (10 + i)) / 10))
          await request.post("/api/readings", {
            data: { ballId, ticketId, at: "2026-05-31T12:00:00.000Z", when, place, how: "tester", raUm },
          });
    for (const path of [`/print/measures/${ticketId}`, `/print/ticket/${ticketId}`, "/plan"]) {
      await page.goto(path);
      if (path === "/plan") await finished(page);
      else await expect(page.locator(".sheet .scan-code svg")).toBeVisible();
      if (path.includes("measures")) {
        // The last side is half as rough again as the first: more than half a step of the ladder.
        await expect(page.getByText(/thumb is duller|thumb are duller|too (dull|smooth)/i).first()).toBeVisible();
        await expect(page.getByRole("img", { name: "The readings on one line" })).toBeVisible();
      }
      const text = (await page.pdf({ preferCSSPageSize: true, printBackground: true })).toString("latin1");
      const boxes = [...text.matchAll(/\/MediaBox\s*\[\s*0\s+0\s+([\d.]+)\s+([\d.]+)/g)].map(([, w, h]) => [Number(w), Number(h)]);
      expect(boxes, path).toHaveLength(1);
      expect(Math.abs(boxes[0][0] - width), path).toBeLessThan(1.5);
      expect(Math.abs(boxes[0][1] - height), path).toBeLessThan(1.5);
    }
  });
}

for (const look of ["paper", "bench"] as const) {
  test(`nothing for axe to find at a ball, look ${look}, and nothing runs out of the page`, async ({ page, request }) => {
    await page.addInitScript((chosen) => localStorage.setItem("gritwright.look", chosen), look);
    await page.goto(`/balls/${await workedBall(request)}`);
    await expect(page.getByText(/^Grains: the pad work signed/)).toBeVisible();
    await page.getByRole("button", { name: "Change: About this ball" }).click();
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(" ")).join(", ")}`)).toEqual([]);
    for (const width of [360, 820, 1440]) {
      await page.setViewportSize({ width, height: 900 });
      expect(await page.evaluate(() => document.documentElement.scrollWidth), `at ${width}`).toBeLessThanOrEqual(width);
    }
  });

  test(`nothing for axe to find at a customer, look ${look}, and nothing runs out of the page`, async ({ page, request }) => {
    await page.addInitScript((chosen) => localStorage.setItem("gritwright.look", chosen), look);
    const { items } = await (await request.get("/api/bowlers?limit=1&order=oldest first")).json();
    const long = await aBowler(request, `Invented ${"Very-long-name".repeat(12)}`);
    for (const id of [items[0].id, long.id]) {
      await page.goto(`/bowlers/${id}`);
      await page.getByRole("button", { name: "Change: Contacts" }).click();
      await page.getByRole("button", { name: "Erase the personal data …" }).click();
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(" ")).join(", ")}`)).toEqual([]);
      for (const width of [360, 820, 1440]) {
        await page.setViewportSize({ width, height: 900 });
        expect(await page.evaluate(() => document.documentElement.scrollWidth), `${id} at ${width}`).toBeLessThanOrEqual(width);
      }
    }
  });
}

test("a ball changes hands: it is another bowler's at once, and whose it was stays written down", async ({ page, request }) => {
  const before = await aBowler(request, "Hazel Formerly");
  const { id: next } = await aBowler(request, "Peregrine Handover");
  const ball = await (await request.post("/api/balls", { data: { name: "Slate Dipper", cover: "solid", bowlerId: before.id } })).json();
  await page.goto(`/balls/${ball.id}`);
  await page.getByRole("button", { name: "It changes hands" }).click();
  await page.getByLabel("To whom").fill("Nobody of that name");
  await expect(page.getByText("No bowler of that name or number.")).toBeVisible();
  await page.getByLabel("To whom").fill("Peregrine Hand");
  await page.getByRole("button", { name: "It is Peregrine Handover's now" }).click();
  await expect(page.getByRole("link", { name: "Peregrine Handover" }).first()).toBeVisible();
  await expect(page.getByText(new RegExp(`${before.name} until `))).toBeVisible();
  const { items: theirs } = await (await request.get(`/api/balls?bowlerId=${next}`)).json();
  expect(theirs.map(({ id }: { id: string }) => id)).toEqual([ball.id]);
  await page.getByRole("button", { name: "It is nobody's now" }).click();
  await expect(page.getByText(/Peregrine Handover until /)).toBeVisible();
  const { bowlerId, owners } = await (await request.get(`/api/balls/${ball.id}`)).json();
  expect(bowlerId).toBeNull();
  expect(owners.map((owner: { bowlerId: string }) => owner.bowlerId).slice(-2)).toEqual([before.id, next]);
});
