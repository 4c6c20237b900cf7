import type { BallWritten } from "#contract/records/ball";
import type { Bowler as BowlerKept } from "#contract/records/bowler";
import type { BallJob, CoverId } from "#engine/ball/ball";
import { COVERS } from "#engine/ball/covers";
import { TYPICAL_BALL } from "#engine/ball/typical";
import type { Bowler } from "#engine/delivery/bowler";
import { HOOK_WORDS, SPEED_WORDS, TYPICAL_SPREAD } from "#engine/delivery/words";
import { type Finish, finishText } from "#engine/surface/finish";
import { type Dice, dice as diceOf } from "./dice.ts";
import { BOWLER_NAMES, ballName, phoneNumber } from "./invented.ts";
import type { Making } from "./making.ts";
import { DAY, dayOf, MINUTE } from "./shopClock.ts";

/** A bowler and what the engine needs to know of the delivery. */
export interface Customer {
  readonly id: string;
  readonly delivery: Bowler;
  /** Which of the houses is played. */
  readonly home: number;
  readonly balls: readonly CustomerBall[];
}

/** A ball as it is at one time of the two years. */
export interface CustomerBall {
  readonly id: string;
  readonly name: string;
  readonly cover: CoverId;
  readonly job: BallJob;
  readonly gamesPerWeek: number;
  finish: Finish;
  finishedMs: number;
  extractedMs: number;
  /** Up to when its games have been written down. */
  countedMs: number;
}

/** Forty bowlers: what a league bowler carries is a strong ball, a weaker one, and one for spares. One carries five, two have none for spares. */
export async function makeCustomers(making: Making): Promise<Customer[]> {
  const customers: Customer[] = [];
  let balls = 0;
  for (const [index, name] of BOWLER_NAMES.entries()) {
    const customer = await makeCustomer(making, index, name, balls);
    customers.push(customer);
    balls += customer.balls.length;
  }
  return customers;
}

/** @param before how many balls there are already */
async function makeCustomer(making: Making, index: number, name: string, before: number): Promise<Customer> {
  const { things, dice, clock, beginMs, by } = making;
  clock.at(beginMs + index * MINUTE);
  const at = clock.text();
  const speed = dice.weighted([
    ["slow", 3],
    ["medium", 5],
    ["fast", 2],
  ] as const);
  const hook = dice.weighted([
    ["little", 3],
    ["medium", 5],
    ["much", 2],
  ] as const);
  const hand = dice.chance(0.12) ? "left" : "right";
  const isMeasured = dice.chance(0.4);
  const delivery = deliveryOf(name, hand, speed, hook, dice);
  const figures = {
    speedMph: tenth(delivery.speedMph),
    revRateRpm: Math.round(delivery.revRateRpm),
    axisRotationDeg: Math.round(delivery.axisRotationDeg),
    axisTiltDeg: Math.round(delivery.axisTiltDeg),
  };
  const bowler = await things.bowlers.create(
    {
      name,
      phone: phoneNumber(index),
      email: `bowler${index + 1}@shop.example`,
      hand,
      grip: hook === "much" && dice.chance(0.5) ? "two hands" : "thumb",
      pap: isMeasured ? papOf(hand, index) : null,
      deliveries: [isMeasured ? { at, how: "video", ...figures } : { at, how: "word only", speed, hook }],
      notes: "Invented.",
    },
    { by },
  );
  const balls: CustomerBall[] = [];
  for (const [place, ball] of bagOf(dice, index).entries()) balls.push(await makeBall(making, bowler, before + place, ball));
  return { id: bowler.id, delivery, home: index % 2, balls };
}

/** What the words stand for, and the bowler's own difference from it. */
function deliveryOf(
  name: string,
  hand: "left" | "right",
  speed: keyof typeof SPEED_WORDS,
  hook: keyof typeof HOOK_WORDS,
  dice: Dice,
): Bowler {
  const typical = { ...SPEED_WORDS[speed], ...HOOK_WORDS[hook] };
  return {
    name,
    hand,
    speedMph: dice.normal(typical.speedMph, 0.5),
    revRateRpm: dice.normal(typical.revRateRpm, 20),
    axisRotationDeg: dice.normal(typical.axisRotationDeg, 4),
    axisTiltDeg: dice.normal(typical.axisTiltDeg, 2),
    spread: TYPICAL_SPREAD,
  };
}

/** The bowler who carries five balls, and those who have none for spares, by their place among the bowlers. */
const FIVE_BALLS = 0;
const WITHOUT_SPARE: readonly number[] = [1, 2];

type BagBall = Pick<CustomerBall, "cover" | "job" | "gamesPerWeek" | "finish">;

function bagOf(dice: Dice, index: number): BagBall[] {
  const ball = (cover: CoverId, job: BallJob, games: readonly [number, number]): BagBall => ({
    cover,
    job,
    gamesPerWeek: dice.between(...games),
    finish: dice.pick(COVERS[cover].usual),
  });
  const strikes = [
    ball(dice.pick(["solid", "hybrid"]), "strike", [1.5, 4]),
    ball(
      dice.weighted([
        ["pearl", 3],
        ["hybrid", 2],
        ["urethane", 1],
      ]),
      dice.chance(0.7) ? "strike" : "control",
      [0.7, 2],
    ),
  ];
  if (WITHOUT_SPARE.includes(index)) return strikes;
  const more = index === FIVE_BALLS ? [ball("solid", "strike", [0.7, 1.5]), ball("urethane", "control", [0.7, 1.2])] : [];
  return [...strikes, ...more, ball("polyester", "spare", [1, 4])];
}

/** Found with tape by whoever measured the delivery, in quarters of an inch as a flexible rule is read. */
function papOf(hand: "left" | "right", index: number): { readonly overIn: number; readonly upIn: number } {
  const dice = diceOf(PAPS + index);
  const overIn = dice.whole(17, 22) / 4;
  return { overIn: hand === "left" ? -overIn : overIn, upIn: dice.whole(-1, 3) / 4 };
}

/** Seeds of what a bowler and a ball have of their own, apart from the story's. */
const [PAPS, LAYOUTS] = [7000, 8000];

/** As strike balls are drilled for a known PAP; a spare ball wants none of it. */
function layoutOf(job: BallJob, index: number): BallWritten["layout"] {
  if (job === "spare") return null;
  const dice = diceOf(LAYOUTS + index);
  return { pinToPapIn: dice.whole(14, 21) / 4, drillingAngleDeg: 5 * dice.whole(5, 15), valAngleDeg: 5 * dice.whole(5, 12) };
}

async function makeBall({ things, dice, beginMs, by }: Making, bowler: BowlerKept, index: number, ball: BagBall): Promise<CustomerBall> {
  const boughtMs = beginMs - dice.whole(20, 700) * DAY;
  const finish = finishText(ball.finish);
  const kept = await things.balls.create(
    {
      name: ballName(index),
      serial: `INV${String(100_000 + index * 37)}`,
      bowlerId: bowler.id,
      layout: bowler.pap === null ? null : layoutOf(ball.job, index),
      cover: ball.cover,
      job: ball.job,
      core: {
        massLb: dice.weighted([
          [15, 5],
          [14, 3],
          [16, 1],
        ]),
        diameterIn: TYPICAL_BALL.diameterIn,
        rgIn: tenth(10 * dice.between(2.46, 2.6)) / 10,
        differentialIn: differentialOf(ball.cover, dice),
      },
      boxFinish: finish,
      surface: [{ at: new Date(beginMs).toISOString(), who: "maker", finish, note: "As it came. Invented." }],
      purchasedOn: dayOf(boughtMs),
      drilledOn: dayOf(boughtMs + 2 * DAY),
      notes: "Invented.",
    },
    { by },
  );
  const since = beginMs - dice.whole(0, 60) * DAY;
  return { ...ball, id: kept.id, name: kept.name, finishedMs: since, extractedMs: since, countedMs: beginMs };
}

/** Of the cores that such a cover is usually sold over. */
function differentialOf(cover: CoverId, dice: Dice): number {
  const [least, most] = COVERS[cover].differentialIn;
  return least === most ? least : Math.round(1000 * dice.between(least, most)) / 1000;
}

function tenth(value: number): number {
  return Math.round(10 * value) / 10;
}
