import { describe, expect, it } from "vitest";
import { ballKept } from "#contract/records/ball";
import { BALL_FIELDS } from "#contract/records/ballFields";
import { bowlerWritten } from "#contract/records/bowler";
import { CONTACT_FIELDS, THROW_FIELDS } from "#contract/records/bowlerFields";
import { readingKept } from "#contract/records/reading";
import { ticketKept } from "#contract/records/ticket";
import { BALL_LOG } from "#words/en/rooms/ball";
import { BOWLER } from "#words/en/rooms/bowler";
import { BALL_JOB_WORDS, COVER_WORDS } from "#words/en/screens";
import { ballUse, measuredBall } from "../../src/web/measured/ballUse.ts";
import { describedForm } from "../../src/web/pieces/describedForm.ts";

const KEPT = {
  version: 1,
  shopId: "01890000-0000-7000-8000-000000000000",
  createdAt: "2026-01-01T00:00:00.000Z",
  changedAt: "2026-01-01T00:00:00.000Z",
};
const id = (n: number) => `01890000-0000-7000-8000-00000000000${n}`;
const day = (n: number) => `2026-03-${String(n).padStart(2, "0")}T12:00:00.000Z`;

const ball = ballKept.parse({
  ...KEPT,
  id: id(1),
  name: "Invented ball",
  cover: "solid",
  core: { massLb: 15, rgIn: 2.5, differentialIn: 0.05 },
  surface: [
    { at: day(1), who: "maker", finish: "2000" },
    { at: day(10), who: "shop", finish: "2000", ticketId: id(2) },
  ],
  games: [
    { at: day(2), games: 10 },
    { at: day(12), games: 6 },
    { at: day(20), games: 4 },
  ],
});
const ticket = (n: number, readyAt: string | null, stages: object[]) =>
  ticketKept.parse({
    ...KEPT,
    id: id(n),
    visitId: id(9),
    ballId: ball.id,
    receivedAt: day(9),
    state: readyAt === null ? "in work" : "ready",
    been: [],
    readyAt,
    collectedAt: null,
    stages,
  });
const reading = (at: string, fields: object) =>
  readingKept.parse({ ...KEPT, id: id(5), ballId: ball.id, at, when: "between", place: "track", how: "tester", ...fields });

describe("a ball's use as its records tell it", () => {
  const extraction = ticket(2, day(10), [{ what: "Draw the oil out", kind: "extract" }]);
  const unfinished = ticket(3, null, [{ what: "Sand", kind: "cut", abrasive: "pad-360" }]);

  it("counts oil from the last extraction that was finished, and what nobody wrote down from the first game", () => {
    const { use, extractedAt, resurfacedAt } = ballUse(ball, [extraction, unfinished], []);
    expect([extractedAt, resurfacedAt]).toEqual([day(10), null]);
    expect([use.gamesSince, use.gamesSinceExtraction, use.gamesSinceResurfacing]).toEqual([10, 10, 20]);
  });

  it("takes sanding with 500 and below as resurfacing, and finer work not", () => {
    const cut = (n: number, abrasive: string) => ticket(n, day(n + 10), [{ what: "Sand", kind: "cut", abrasive }]);
    expect(ballUse(ball, [cut(3, "pad-500"), cut(4, "pad-1000")], []).resurfacedAt).toBe(day(13));
  });

  it("puts readings of the track at the games they were taken after, and leaves those of the finish before out", () => {
    const readings = [
      reading(day(9), { raUm: 0.3 }),
      reading(day(10).replace("12:", "11:"), { raUm: 0.7, when: "after", ticketId: id(2) }),
      reading(day(15), { raUm: 0.5 }),
      reading(day(15), { raUm: 0.6, place: "grip" }),
    ];
    expect(ballUse(ball, [], readings).use.readings.map(({ games }) => games)).toEqual([0, 6]);
    // A microinch is 0.0254 µm.
    expect(measuredBall(ball, readings).raMicroinch.map((value) => Number(value.toFixed(2)))).toEqual([27.56, 19.69, 23.62]);
  });

  it("takes the newest mass measured, else the one written down; diameters of one day only", () => {
    const readings = [
      reading(day(11), { how: "scale", massLb: 15.2 }),
      reading(day(12), { how: "scale", massLb: 15.1 }),
      reading(day(11), { how: "calliper", diameterIn: 8.56 }),
      reading(day(12), { how: "calliper", diameterIn: 8.55 }),
      reading(day(12), { how: "calliper", diameterIn: 8.552 }),
    ];
    expect(measuredBall(ball, []).massLb).toBe(15);
    expect(measuredBall(ball, readings)).toMatchObject({ massLb: 15.1, diametersIn: [8.55, 8.552], rgIn: 2.5, hardnessD: null });
  });
});

const MPH = {
  unit: "mph",
  text: String,
  typed: (mph: number | null) => (mph === null ? "" : String(mph)),
  mph: (figure: number) => figure,
};
const KMH = {
  ...MPH,
  unit: "km/h",
  typed: (mph: number | null) => (mph === null ? "" : (mph * 1.609344).toFixed(2)),
  mph: (kmh: number) => kmh / 1.609344,
};

describe("a form over described fields", () => {
  const words = { ...BALL_LOG, choices: { cover: COVER_WORDS, job: BALL_JOB_WORDS, state: BALL_LOG.states } };

  it("writes what was touched and nothing else; a group goes as a whole", () => {
    const form = describedForm(BALL_FIELDS, words, MPH);
    const typed = { ...form.typedOf(ball), "core.massLb": "14,5", notes: "Invented." };
    expect(form.changeOf(ball, typed, new Set(["core.massLb", "notes"]))).toEqual({
      core: { massLb: 14.5, diameterIn: null, rgIn: 2.5, differentialIn: 0.05, intermediateDifferentialIn: null },
      notes: "Invented.",
    });
  });

  it("a group of which nothing is left is none, and one begun without what it needs goes out for the shop to refuse", () => {
    const { changeOf } = describedForm(CONTACT_FIELDS, BOWLER, MPH);
    const minor = { guardian: { name: "Ana Plover", phone: null, consentOn: null } };
    expect(changeOf(minor, { "guardian.name": " " }, new Set(["guardian.name"]))).toEqual({ guardian: null });
    const begun = changeOf({ guardian: null }, { "guardian.phone": "555-0111" }, new Set(["guardian.phone"]));
    expect(begun).toEqual({ guardian: { name: "", phone: "555-0111", consentOn: null } });
    expect(bowlerWritten.safeParse({ name: "Ben", ...begun }).success).toBe(false);
  });

  it("a speed is shown and typed in the shop's unit, and one that was not touched stays to the last digit", () => {
    const { typedOf, changeOf, fields } = describedForm(THROW_FIELDS, BOWLER, KMH);
    const bowler = { spread: { speedMph: 0.3333, revRateRpm: 20 }, pap: null };
    const typed: Readonly<Record<string, string>> = { ...typedOf(bowler), "spread.revRateRpm": "25" };
    expect(typed["spread.speedMph"]).toBe("0.54");
    expect(fields[0].label).toContain("km/h");
    expect(changeOf(bowler, typed, new Set(["spread.revRateRpm"]))).toMatchObject({ spread: { speedMph: 0.3333, revRateRpm: 25 } });
    const changed = changeOf(bowler, { ...typed, "spread.speedMph": "1.609344" }, new Set(["spread.speedMph"]));
    expect(changed).toMatchObject({ spread: { speedMph: 1, revRateRpm: 20 } });
  });
});
