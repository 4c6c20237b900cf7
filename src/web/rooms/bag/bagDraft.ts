import type { Ball } from "#contract/records/ball";
import { gamesSinceWork } from "#contract/records/benchBall";
import type { Bowler } from "#contract/records/bowler";
import type { Pattern } from "#contract/records/place";
import { PATTERN_IDS } from "#engine/lane/patterns";
import { PAD_NUMBERS } from "#engine/surface/pads";
import type { Json } from "../../jobFile/jobDraft.ts";
import { bowlerOfJob, jobOfTicket } from "../../jobFile/jobOfTicket.ts";

/** The form as it was typed. */
export interface BagDraft {
  readonly balls: readonly string[];
  /** `named:…` for a pattern of the program, `kept:…` for one of the shop's. */
  readonly oil: string;
  readonly games: string;
  readonly stagesAGame: "1" | "2" | "4";
  readonly others: string;
  readonly leftHanders: string;
  readonly practiceShots: string;
  readonly minutesBefore: string;
  readonly minutesInPractice: string;
  readonly minutesBetween: string;
  readonly polish: "yes" | "no";
  readonly pads: readonly string[];
  readonly book: "usbc" | "world-bowling";
  readonly on: string;
  readonly between: "book" | "yes" | "no";
  readonly outermost: string;
  readonly innermost: string;
}

/** The engine takes so many. */
export const MOST_BALLS = 8;

/** @param today `2026-05-31` */
export function newDraft(balls: readonly Ball[], today: string): BagDraft {
  return {
    balls: balls.slice(0, MOST_BALLS).map(({ id }) => id),
    oil: `named:${PATTERN_IDS[1]}`,
    games: "3",
    stagesAGame: "2",
    others: "7",
    leftHanders: "1",
    practiceShots: "4",
    minutesBefore: "60",
    minutesInPractice: "0",
    minutesBetween: "0",
    polish: "yes",
    pads: PAD_NUMBERS.map(String),
    book: "usbc",
    on: today,
    between: "book",
    outermost: "9",
    innermost: "36",
  };
}

/** A number as it was typed; what is no number stays as it is, for the file's own checks to answer. */
function typed(text: string): Json {
  const number = Number(text.trim().replace(",", "."));
  return text.trim() !== "" && Number.isFinite(number) ? number : text;
}

/** The bag file that the form stands for. What nobody knows of a ball is left out: the answer says what stands for it. */
export function bagFileOf(draft: BagDraft, bowler: Bowler, balls: readonly Ball[], patterns: readonly Pattern[]): Json {
  const chosen = balls.filter(({ id }) => draft.balls.includes(id)).slice(0, MOST_BALLS);
  const names = uniqueNames(chosen);
  return {
    gritwright: 1,
    bowler: bowlerOfJob(bowler),
    limits: { laydownBoard: [typed(draft.outermost), typed(draft.innermost)] },
    balls: chosen.map((ball, i) => {
      const job = jobOfTicket(ball, bowler).ball as { readonly [key: string]: Json };
      return { ball: { ...job, name: names[i] }, gamesSince: gamesSinceWork(ball) };
    }),
    lane: laneOf(draft.oil, patterns),
    session: {
      games: typed(draft.games),
      stagesAGame: Number(draft.stagesAGame),
      practiceShots: typed(draft.practiceShots),
      others: { bowlers: typed(draft.others), leftHanders: typed(draft.leftHanders) },
    },
    work: {
      numbers: draft.pads.map(Number),
      polish: draft.polish === "yes",
      minutesBefore: typed(draft.minutesBefore),
      minutesInPractice: typed(draft.minutesInPractice),
      minutesBetweenGames: typed(draft.minutesBetween),
    },
    rules: { book: draft.book, ...(draft.on === "" ? {} : { on: draft.on }), ...eventOf(draft) },
  };
}

function eventOf({ between }: BagDraft): { readonly [key: string]: Json } {
  if (between === "book") return {};
  return { event: { name: "The event", surface: [{ act: "abrasive", moment: "betweenGames", answer: between }] } };
}

function laneOf(oil: string, patterns: readonly Pattern[]): Json {
  const kept = patterns.find(({ id }) => oil === `kept:${id}`);
  return kept === undefined ? { pattern: oil.replace(/^named:/, "") } : (kept.oil as Json);
}

/** Two balls of one name are told apart by their serial numbers, or else by a count. */
function uniqueNames(balls: readonly Ball[]): readonly string[] {
  return balls.map(({ name, serial }, i) => {
    const twins = balls.filter((ball) => ball.name === name);
    return twins.length === 1 ? name : `${name} ${serial ?? i + 1}`;
  });
}
