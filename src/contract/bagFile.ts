import { z } from "zod";
import { assume } from "#engine/assumptions";
import { inMirror, turnsBack } from "#engine/delivery/backup";
import type { BagBall, BagQuestion } from "#engine/planning/bag/question";
import { BOOK_IDS } from "#engine/rules/ruleBooks";
import { PAD_NUMBERS } from "#engine/surface/pads";
import { eventField, eventRulesOf } from "./bench/limitsFile.ts";
import { assumptionsField } from "./job/assumptions.ts";
import { ballField } from "./job/ball.ts";
import { bowlerField } from "./job/bowler.ts";
import { count, mapping, oneOf, quantity } from "./job/fields.ts";
import { finishField } from "./job/finishField.ts";
import { JOB_FILE_VERSION } from "./job/jobFile.ts";
import { laneField } from "./job/lane.ts";
import { limitsField } from "./job/line.ts";
import { resolveBall } from "./resolve/ball.ts";
import { resolveBowler } from "./resolve/bowler.ts";
import { DefaultsTaken } from "./resolve/defaultsTaken.ts";
import { resolveLane } from "./resolve/lane.ts";
import { limitsInMirror, resolveLimits } from "./resolve/limits.ts";
import { type Resolved, setOtherwise, USUAL_SEED } from "./resolve/question.ts";
import { gamesField, lanesField, othersField, resolveOthers } from "./transitionFile.ts";

/** The most that one plan is made for. */
const MOST_BALLS = 8;
const MOST_STAGES = 12;
const MOST_FINISHES = 12;
const minutes = (description: string) => quantity("min", { from: 0, to: 1000 }, description);
const PADS_ALLOWED = `numbers of pads: ${PAD_NUMBERS.join(", ")}`;

const bagBallField = mapping(
  {
    ball: ballField,
    gamesSince: count("games", { from: 0, to: 1000 }, "Games on today's finish").optional(),
    finishes: z
      .array(finishField, { error: "a list of finishes" })
      .max(MOST_FINISHES, { error: `at most ${MOST_FINISHES} finishes` })
      .describe("Finishes that it may be given besides today's; the cover's usual range where left out")
      .optional(),
  },
  "A ball of the bag",
);

const sessionField = mapping(
  {
    games: gamesField,
    stagesAGame: z
      .union([z.literal(1), z.literal(2), z.literal(4)], { error: "1, 2 or 4" })
      .describe("Stages of a game at which the ball may be changed")
      .optional(),
    lanes: lanesField.optional(),
    practiceShots: count("shots", { from: 0, to: 60 }, "Shots of practice on each lane before the first that counts").optional(),
    shotsAGame: quantity("shots", { above: 0, to: 100 }, "Shots of a game, on all lanes together").optional(),
    others: othersField.optional(),
  },
  "What is bowled on one oiling",
).superRefine(({ games, stagesAGame }, context) => {
  if (stagesAGame === undefined || games * stagesAGame <= MOST_STAGES) return;
  context.addIssue({ code: "custom", path: ["stagesAGame"], message: `at most ${MOST_STAGES} stages in all`, input: stagesAGame });
});

const workField = mapping(
  {
    numbers: z
      .array(
        z.int({ error: PADS_ALLOWED }).refine((number) => PAD_NUMBERS.some((pad) => pad === number), { error: PADS_ALLOWED }),
        { error: "a list of numbers" },
      )
      .describe("Abrasives at hand; all where left out")
      .optional(),
    polish: z.boolean({ error: "true or false" }).describe("Whether there is polish").optional(),
    minutesBefore: minutes("Bench time before the session").optional(),
    minutesInPractice: minutes("Time for work by hand during practice").optional(),
    minutesBetweenGames: minutes("Time for work by hand between games").optional(),
  },
  "What there is to work the balls with, and when",
);

/** What `bag` reads. */
export const bagFileSchema = mapping(
  {
    gritwright: z.literal(JOB_FILE_VERSION, { error: String(JOB_FILE_VERSION) }).describe("Version of the file"),
    seed: count("", { from: 0, to: 4294967295 }, "Seed of everything that is drawn at random").optional(),
    bowler: bowlerField.optional(),
    limits: limitsField.optional(),
    balls: z
      .array(bagBallField, { error: "a list of balls" })
      .min(1, { error: `1 to ${MOST_BALLS} balls` })
      .max(MOST_BALLS, { error: `1 to ${MOST_BALLS} balls` }),
    lane: laneField,
    session: sessionField,
    work: workField.optional(),
    rules: mapping(
      {
        book: oneOf(BOOK_IDS, "The rule book").optional(),
        on: z.iso.date({ error: "a date, 2026-05-31" }).describe("Day of play").optional(),
        event: eventField.optional(),
      },
      "Whose word counts on when a surface may be touched",
    ).optional(),
    assumptions: assumptionsField.optional(),
  },
  "A bag, and what it is packed for",
).superRefine(({ balls }, context) => {
  const names = balls.map(({ ball }) => ball.name);
  names.forEach((name, i) => {
    if (name === undefined || names.indexOf(name) === i) return;
    context.addIssue({
      code: "custom",
      path: ["balls", i, "ball", "name"],
      message: "a name that no other ball of the bag has",
      input: name,
    });
  });
});

export type BagFile = z.output<typeof bagFileSchema>;

const USUAL = { lanes: 2, practiceShots: 4, minutesBefore: 120 };

/**
 * The bag plan that a file asks for.
 *
 * @param today day of play where the file names none
 * @throws {JobFault} if the lane is not oiled, or its sheet contradicts itself
 */
export function resolveBag(file: BagFile, today: string): Resolved<BagQuestion> {
  const defaults = new DefaultsTaken();
  const assumptions = setOtherwise(file);
  const seed = defaults.or("seed", file.seed, USUAL_SEED);
  const { session, work, rules } = file;
  const lanes = defaults.or("session.lanes", session.lanes, USUAL.lanes);
  const shots = defaults.or("session.shotsAGame", session.shotsAGame, assume(assumptions)["play.shotsAGame"]);
  const bowler = resolveBowler(file.bowler, defaults);
  const isBackup = turnsBack(bowler);
  const question: BagQuestion = {
    seed,
    bowler: isBackup ? inMirror(bowler) : bowler,
    limits: resolveLimits(isBackup && file.limits !== undefined ? limitsInMirror(file.limits) : file.limits, defaults),
    balls: file.balls.map(({ ball, gamesSince, finishes }, i): BagBall => {
      const taken = defaults.within(`balls[${i}]`);
      const own = resolveBall(ball, taken);
      return {
        ball: ball.name === undefined ? { ...own, name: `Ball ${i + 1}` } : own,
        gamesSince: taken.or("gamesSince", gamesSince, 0),
        finishes: finishes ?? null,
      };
    }),
    pattern: resolveLane({ playedShots: 0, ...file.lane }, defaults).pattern,
    session: {
      games: session.games,
      stagesAGame: defaults.or("session.stagesAGame", session.stagesAGame, mostStages(session.games)),
      practiceShots: defaults.or("session.practiceShots", session.practiceShots, USUAL.practiceShots),
      shotsAGame: shots / lanes,
      others: resolveOthers(session.others, lanes, seed, assumptions),
    },
    work: {
      numbers: work?.numbers ?? null,
      polish: work?.polish ?? true,
      minutesBefore: defaults.or("work.minutesBefore", work?.minutesBefore, USUAL.minutesBefore),
      minutesInPractice: work?.minutesInPractice ?? 0,
      minutesBetweenGames: work?.minutesBetweenGames ?? 0,
    },
    rules: {
      book: defaults.or("rules.book", rules?.book, "usbc"),
      on: defaults.or("rules.on", rules?.on, today),
      event: eventRulesOf(rules ?? {}),
    },
    assumptions,
  };
  return { question, defaults: defaults.paths };
}

/** As fine as the stages may be: quarters of a game where that makes no more than twelve. */
function mostStages(games: number): 1 | 2 | 4 {
  return games * 4 <= MOST_STAGES ? 4 : games * 2 <= MOST_STAGES ? 2 : 1;
}
