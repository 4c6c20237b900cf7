import { expect, it } from "vitest";
import { ballKept } from "#contract/records/ball";
import { dueByGames } from "#contract/records/dueByGames";
import { assume } from "#engine/assumptions";
import { careOf, usualRefreshGames } from "#engine/surface/care";
import { effectiveRaUm } from "#engine/surface/finish";

const id = (n: number) => `01890000-0000-7000-8000-00000000000${n}`;
const AT = "2026-01-01T00:00:00.000Z";
const ball = (n: number, bowler: number, games: number, fields: object = {}) =>
  ballKept.parse({
    id: id(n),
    shopId: id(0),
    version: 1,
    createdAt: AT,
    changedAt: AT,
    name: `Invented ${n}`,
    cover: "solid",
    bowlerId: id(bowler),
    surface: [{ at: AT, who: "shop", finish: "1000" }],
    games: [{ at: "2026-02-01T00:00:00.000Z", games }],
    ...fields,
  });

it("the usual number of games lies within the range that the whole ball log gives for the same finish", () => {
  const startUm = effectiveRaUm({ number: 1000, polished: false }, assume());
  const use = {
    cover: "solid",
    startUm,
    gamesSince: 0,
    gamesSinceExtraction: 0,
    gamesSinceResurfacing: 0,
    abrasiveness: 1,
    readings: [],
  } as const;
  const { low, high } = careOf(use).refresh;
  const usual = usualRefreshGames("solid", startUm);
  expect(usual).toBeGreaterThan(low ?? Number.POSITIVE_INFINITY);
  expect(usual).toBeLessThan(high ?? Number.POSITIVE_INFINITY);
  // Published, second-hand: the reaction fades from 7 to 14 games, refresh about every 30.
  expect(usual).toBeGreaterThan(5);
  expect(usual).toBeLessThan(30);
});

it("whose balls are due stand with the most overdue first; fresh, stopped, unknown and brought balls are left out", () => {
  const unknown = { surface: [{ at: AT, who: "coin machine" }] };
  const balls = [
    ball(1, 7, 60),
    ball(2, 8, 90),
    ball(3, 8, 1),
    ball(4, 9, 90, { state: "stopped" }),
    ball(5, 9, 90, unknown),
    ball(6, 9, 90),
  ];
  const due = dueByGames(balls, new Set([id(6)]));
  expect(due.map(({ bowlerId, balls: mine }) => [bowlerId, mine.map((one) => one.ball.id)])).toEqual([
    [id(8), [id(2)]],
    [id(7), [id(1)]],
  ]);
});
