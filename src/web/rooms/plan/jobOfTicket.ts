import type { Ball } from "#contract/records/ball";
import type { Bowler } from "#contract/records/bowler";
import { HOOK_WORDS, SPEED_WORDS } from "#engine/delivery/words";
import { knownFinish } from "../../benchWork/benchBall.ts";
import { EXAMPLE_JOB } from "./exampleJob.ts";
import type { JobDraft, Json } from "./jobDraft.ts";

/**
 * The job of planning a ball for its bowler. What nobody has written down is left out, so that the plan takes the usual for it and says so; the lane is
 * the one that the plan opens with, since a ticket knows of none.
 */
export function jobOfTicket(ball: Ball, bowler: Bowler | null): JobDraft {
  const finish = knownFinish(ball);
  return {
    gritwright: 1,
    seed: 1,
    bowler: bowlerOfJob(bowler),
    ball: known({
      name: ball.name,
      cover: ball.cover,
      job: ball.job,
      finish,
      ...ball.core,
      pinToPapIn: ball.layout?.pinToPapIn,
      drillingAngleDeg: ball.layout?.drillingAngleDeg,
    }),
    lane: EXAMPLE_JOB.lane,
  };
}

/** The bowler of a job: what is written down of one, and no more. */
export function bowlerOfJob(bowler: Bowler | null): { readonly [key: string]: Json } {
  return known({ name: bowler?.name, hand: bowler?.hand, ...deliveryOf(bowler), spread: known(bowler?.spread ?? {}) });
}

/** What a job cannot know from the shop's records, each named as the form names it. */
export type Unknown = "delivery" | "finish" | "core";

export function unknownOf(ball: Ball, bowler: Bowler | null): readonly Unknown[] {
  const isUnknown: Readonly<Record<Unknown, boolean>> = {
    delivery: Object.keys(known(deliveryOf(bowler))).length === 0,
    finish: knownFinish(ball) === null,
    core: (ball.core?.rgIn ?? null) === null || (ball.core?.differentialIn ?? null) === null,
  };
  return (Object.keys(isUnknown) as Unknown[]).filter((what) => isUnknown[what]);
}

/** The newest delivery: in numbers where any was written down (a word beside them then stands for the numbers that are missing), else in words. */
function deliveryOf(bowler: Bowler | null): Readonly<Record<string, Json | undefined>> {
  const newest = bowler?.deliveries.toSorted((a, b) => a.at.localeCompare(b.at)).at(-1);
  if (newest === undefined) return {};
  const { speed, hook, speedMph, revRateRpm, axisRotationDeg, axisTiltDeg } = newest;
  const numbers = known({ speedMph, revRateRpm, axisRotationDeg, axisTiltDeg });
  if (Object.keys(numbers).length === 0) return known({ speed, hook });
  return { ...(speed === null ? {} : SPEED_WORDS[speed]), ...(hook === null ? {} : HOOK_WORDS[hook]), ...numbers };
}

function known(fields: Readonly<Record<string, Json | undefined>>): { readonly [key: string]: Json } {
  const isKnown = (value: Json | undefined): boolean =>
    value !== undefined && value !== null && !(typeof value === "object" && Object.keys(value).length === 0);
  return Object.fromEntries(Object.entries(fields).flatMap(([key, value]) => (isKnown(value) ? [[key, value as Json]] : [])));
}
