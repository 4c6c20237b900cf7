import type { Ball } from "#contract/records/ball";
import { knownFinish } from "#contract/records/benchBall";
import type { Bowler } from "#contract/records/bowler";
import type { House, Pattern } from "#contract/records/place";
import { HOOK_WORDS, SPEED_WORDS } from "#engine/delivery/words";
import { EXAMPLE_JOB } from "./exampleJob.ts";
import type { JobDraft, Json } from "./jobDraft.ts";

/**
 * The job of planning a ball for its bowler. What nobody has written down is left out, so that the plan takes the usual for it and says so.
 *
 * @param where the ball is wanted: without a pattern whose oil is known the lane is the one that the plan opens with; what a house has taught counts
 */
export function jobOfTicket(ball: Ball, bowler: Bowler | null, { pattern, house }: Wanted = { pattern: null, house: null }): JobDraft {
  const taught = house?.taught ?? null;
  return {
    gritwright: 1,
    seed: 1,
    bowler: bowlerOfJob(bowler),
    ball: known({
      name: ball.name,
      cover: ball.cover,
      job: ball.job,
      finish: knownFinish(ball),
      ...ball.core,
      pinToPapIn: ball.layout?.pinToPapIn,
      drillingAngleDeg: ball.layout?.drillingAngleDeg,
    }),
    lane: pattern === null ? EXAMPLE_JOB.lane : (pattern.oil as Json),
    ...(taught === null ? {} : { house: taught.house as unknown as Json }),
  };
}

/** Where a ball is wanted, as far as it was told and is kept. */
export interface Wanted {
  readonly pattern: Pattern | null;
  readonly house: House | null;
}

/** The bowler of a job: what is written down of one, and no more. */
export function bowlerOfJob(bowler: Bowler | null): { readonly [key: string]: Json } {
  return known({ name: bowler?.name, hand: bowler?.hand, ...deliveryOf(bowler), spread: known(bowler?.spread ?? {}) });
}

/** What a job cannot know from the shop's records, each named as the form names it. */
export type Unknown = "delivery" | "cover" | "finish" | "core";

export function unknownOf(ball: Ball, bowler: Bowler | null): readonly Unknown[] {
  const isUnknown: Readonly<Record<Unknown, boolean>> = {
    delivery: Object.keys(known({ ...deliveryOf(bowler), plays: undefined })).length === 0,
    cover: ball.cover === null,
    finish: knownFinish(ball) === null,
    core: (ball.core?.rgIn ?? null) === null || (ball.core?.differentialIn ?? null) === null,
  };
  return (Object.keys(isUnknown) as Unknown[]).filter((what) => isUnknown[what]);
}

type Delivery = Bowler["deliveries"][number];

/**
 * What is known of a delivery, each part from the newest that says something of it: in numbers where any was written down there (a word beside them then
 * stands for the numbers that are missing), else in words.
 */
function deliveryOf(bowler: Bowler | null): Readonly<Record<string, Json | undefined>> {
  const newest = bowler?.deliveries.toSorted((a, b) => b.at.localeCompare(a.at)) ?? [];
  const speed = newest.find((one) => one.speedMph !== null || one.speed !== null);
  const hook = newest.find((one) => hookNumbers(one) !== null || one.hook !== null);
  const plays = newest.find((one) => one.plays !== null)?.plays;
  const numbers = { ...(speed === undefined ? {} : known({ speedMph: speed.speedMph })), ...(hook === undefined ? {} : hookNumbers(hook)) };
  if (Object.keys(numbers).length === 0) return known({ speed: speed?.speed, hook: hook?.hook, plays });
  const words = { ...wordNumbers(SPEED_WORDS, speed?.speed), ...wordNumbers(HOOK_WORDS, hook?.hook) };
  return known({ ...words, ...numbers, plays });
}

function hookNumbers({ revRateRpm, axisRotationDeg, axisTiltDeg }: Delivery): Readonly<Record<string, Json>> | null {
  const numbers = known({ revRateRpm, axisRotationDeg, axisTiltDeg });
  return Object.keys(numbers).length === 0 ? null : numbers;
}

function wordNumbers<Word extends string>(
  meanings: Readonly<Record<Word, Readonly<Record<string, number>>>>,
  word: Word | null | undefined,
) {
  return word === null || word === undefined ? {} : meanings[word];
}

function known(fields: Readonly<Record<string, Json | undefined>>): { readonly [key: string]: Json } {
  const isKnown = (value: Json | undefined): boolean =>
    value !== undefined && value !== null && !(typeof value === "object" && Object.keys(value).length === 0);
  return Object.fromEntries(Object.entries(fields).flatMap(([key, value]) => (isKnown(value) ? [[key, value as Json]] : [])));
}
