import { z } from "zod";
import type { Bowler } from "#engine/delivery/bowler";
import { KNOWN_BY_WORD } from "#engine/delivery/words";
import type { Correction, CorrectQuestion } from "#engine/learning/house/correct";
import { ARRIVED, type ShotSeen, type SituationSeen, TURNED, USUAL_EYE } from "#engine/learning/house/notes";
import type { MeanKnown } from "#engine/learning/house/parameters";
import type { Taught } from "#engine/learning/house/plansOf";
import { leaveSeen } from "#engine/pins/carry";
import { groundOf } from "#engine/planning/ground";
import type { HandNumbers, PlanQuestion } from "#engine/planning/question";
import { filmFound, lineNow } from "#engine/planning/session";
import { STRAIGHT } from "#engine/planning/straight";
import { leaveField } from "./carryFile.ts";
import { assumptionsField } from "./job/assumptions.ts";
import { ballField, type JobBall } from "./job/ball.ts";
import { bowlerField } from "./job/bowler.ts";
import { count, mapping, oneOf, quantity, text } from "./job/fields.ts";
import type { JobHouse } from "./job/house.ts";
import { JOB_FILE_VERSION } from "./job/jobFile.ts";
import { laneField } from "./job/lane.ts";
import { limitsField, lineField } from "./job/line.ts";
import { resolveBall } from "./resolve/ball.ts";
import { resolveBowler } from "./resolve/bowler.ts";
import { DefaultsTaken } from "./resolve/defaultsTaken.ts";
import { resolveLane } from "./resolve/lane.ts";
import { resolveLimits } from "./resolve/limits.ts";
import { type Resolved, setOtherwise, USUAL_SEED } from "./resolve/question.ts";

const MOST_SHOTS = 500;
const MOST_BALLS = 24;
const MOST_BOWLERS = 6;
const board = quantity("", { from: -5, to: 45 }, "Board, from the bowler's hand side");
const sd = (unit: string, description: string) => quantity(unit, { above: 0, to: 100 }, description).optional();

const shotField = mapping(
  {
    ball: text("Name of a ball of this file"),
    bowler: text("Name of a bowler of this file; the only one may be left out").optional(),
    line: lineField.describe("The line that was meant; without it the best one, known only roughly").optional(),
    playedShots: count("", { from: 0, to: 500 }, "Shots that the bowler had thrown on this oil before").optional(),
    boards: z
      .array(mapping({ atFt: quantity("ft", { from: 0, to: 60 }, "Distance from the foul line"), board }, "A place"), {
        error: "a list of places",
      })
      .max(20, { error: "at most 20 places" })
      .optional(),
    breakpointBoard: board.optional(),
    breakpointFt: quantity("ft", { from: 0, to: 60 }, "Where the breakpoint lay").optional(),
    boardAtPins: board.optional(),
    speedMph: quantity("mph", { above: 0, to: 40 }, "Speed").optional(),
    speedAt: oneOf(["launch", "pins"], "Where the speed was taken").optional(),
    turned: oneOf(TURNED, "When it turned, against what was to be expected").optional(),
    arrived: oneOf(ARRIVED, "How it came in").optional(),
    leave: leaveField.describe("What was left standing: 10, 2-8-10, X").optional(),
  },
  "A shot that was seen",
);

/** What `correct` reads: shots that were seen in one house. */
export const correctFileSchema = mapping(
  {
    gritwright: z.literal(JOB_FILE_VERSION, { error: String(JOB_FILE_VERSION) }).describe("Version of the file"),
    seed: count("", { from: 0, to: 4294967295 }, "Seed of everything that is drawn at random").optional(),
    bowler: bowlerField.optional(),
    bowlers: z
      .array(bowlerField, { error: "a list of bowlers" })
      .min(1, { error: `1 to ${MOST_BOWLERS} bowlers` })
      .max(MOST_BOWLERS, { error: `1 to ${MOST_BOWLERS} bowlers` })
      .describe("In place of bowler, where the shots of several were seen: each with a name of its own")
      .optional(),
    limits: limitsField.optional(),
    known: mapping(
      {
        speedMph: sd("mph", "Of the launch speed"),
        revRateRpm: sd("rpm", "Of the rev rate"),
        axisRotationDeg: sd("deg", "Of the axis rotation"),
      },
      "How well the bowler's mean numbers are known, as standard deviations",
    ).optional(),
    eye: mapping(
      {
        arrowsBoards: sd("boards", "At the arrows"),
        breakpointBoards: sd("boards", "At the breakpoint"),
        breakpointFt: sd("ft", "Of the breakpoint's distance"),
        pinsBoards: sd("boards", "At the pins"),
        speedMph: sd("mph", "Of the speed"),
        turnFt: sd("ft", "Of where the ball turns"),
      },
      "How far an eye may be out, as standard deviations",
    ).optional(),
    lane: laneField,
    balls: z
      .array(ballField, { error: "a list of balls" })
      .min(1, { error: `1 to ${MOST_BALLS} balls` })
      .max(MOST_BALLS, { error: `1 to ${MOST_BALLS} balls` }),
    shots: z
      .array(shotField, { error: "a list of shots" })
      .min(1, { error: `1 to ${MOST_SHOTS} shots` })
      .max(MOST_SHOTS, { error: `1 to ${MOST_SHOTS} shots` }),
    assumptions: assumptionsField.optional(),
  },
  "Shots that were seen in a house",
).superRefine(({ balls, bowler, bowlers, shots }, context) => {
  const wrong = (path: (string | number)[], message: string, input: unknown) => context.addIssue({ code: "custom", path, message, input });
  const names = balls.map((ball, i) => ball.name ?? `Ball ${i + 1}`);
  const hands = bowlers?.map((one, i) => one.name ?? `Bowler ${i + 1}`) ?? [];
  if (bowler !== undefined && bowlers !== undefined) wrong(["bowlers"], "bowler or bowlers, not both", hands.join(", "));
  hands.forEach((name, i) => {
    if (hands.indexOf(name) < i) wrong(["bowlers", i, "name"], "a name that no other bowler has", name);
  });
  shots.forEach((shot, i) => {
    if (!names.includes(shot.ball)) wrong(["shots", i, "ball"], `one of ${names.join(", ")}`, shot.ball);
    if (hands.length > 1 && shot.bowler === undefined) wrong(["shots", i, "bowler"], `one of ${hands.join(", ")}`, null);
    if (shot.bowler === undefined) return;
    const own = bowlers === undefined ? [bowler?.name ?? ""] : hands;
    if (!own.includes(shot.bowler)) wrong(["shots", i, "bowler"], `one of ${own.join(", ")}`, shot.bowler);
  });
});

export type CorrectFile = z.output<typeof correctFileSchema>;
type FileShot = CorrectFile["shots"][number];

/** How well numbers are known that nobody measured for this: chosen. Words are known worse than figures. */
const KNOWN_FIGURES: MeanKnown = { speedMph: 0.5, revRateRpm: 25, axisRotationDeg: 5 };

/** The question, with the name of each situation's ball. */
export interface ResolvedCorrection extends Resolved<CorrectQuestion>, Taught {
  readonly question: CorrectQuestion;
  /** Of each hand. */
  readonly handNames: readonly string[];
}

/** The shots of a file, those thrown alike put together. @throws {JobFault} if the lane is not oiled, or its sheet contradicts itself */
export function resolveCorrection(file: CorrectFile): ResolvedCorrection {
  const defaults = new DefaultsTaken();
  const seed = defaults.or("seed", file.seed, USUAL_SEED);
  const given = file.bowlers ?? [file.bowler];
  const hands = given.map((one, i) => ({
    bowler: resolveBowler(one, i === 0 ? defaults : new DefaultsTaken()),
    known: { ...(isInWords(one) ? KNOWN_BY_WORD : KNOWN_FIGURES), ...defined(one?.known), ...defined(file.known) },
  }));
  const handNames = given.map((one, i) => one?.name ?? `Bowler ${i + 1}`);
  const lane = resolveLane({ playedShots: 0, ...file.lane }, defaults);
  const assumptions = setOtherwise(file);
  const limits = resolveLimits(file.limits, defaults);
  const balls = file.balls.map((ball, i) => ({ name: ball.name ?? `Ball ${i + 1}`, ball }));
  const groups = groupsOf(file.shots);
  const situations = groups.map(({ shots, line, playedShots, ball: name, bowler: whose }): SituationSeen => {
    const hand = whose === null ? 0 : Math.max(0, handNames.indexOf(whose));
    const { bowler } = hands[hand];
    const job = balls.find((ball) => ball.name === name)?.ball as JobBall;
    const ball = resolveBall({ ...job, name }, new DefaultsTaken());
    const question: PlanQuestion = {
      seed,
      bowler,
      ball,
      lane: { ...lane, playedShots },
      line,
      limits,
      candidates: [ball.finish],
      outsideRangeReason: null,
      trial: [],
      readings: [],
      assumptions,
      house: null,
    };
    const ground = groundOf(question);
    const film = filmFound(ground);
    return {
      hand,
      ball,
      film,
      line: line ?? lineNow(ground, film) ?? STRAIGHT,
      isLineKnown: line !== null,
      shots: shots.map((shot) => shotSeen(shot, bowler)),
    };
  });
  return {
    question: {
      seed,
      hands,
      situations,
      eye: { ...USUAL_EYE, ...defined(file.eye) },
      assumptions,
    },
    names: groups.map(({ ball, bowler }) => (hands.length === 1 || bowler === null ? ball : `${bowler}: ${ball}`)),
    handNames,
    lane: { ...lane, playedShots: 0 },
    limits,
    defaults: defaults.paths,
  };
}

/** Whether a bowler's numbers are only a word's, or nobody's. */
function isInWords(bowler: CorrectFile["bowler"]): boolean {
  return bowler === undefined || bowler.speed !== undefined || bowler.hook !== undefined || bowler.speedMph === undefined;
}

interface Group {
  readonly bowler: string | null;
  readonly ball: string;
  readonly line: NonNullable<FileShot["line"]> | null;
  readonly playedShots: number;
  readonly shots: FileShot[];
}

/** The bowler's wear of the oil is told apart in steps of ten shots: nearer than that the film hardly differs. */
const SHOTS_TOGETHER = 10;

function groupsOf(shots: readonly FileShot[]): readonly Group[] {
  const groups = new Map<string, Group>();
  for (const shot of shots) {
    const playedShots = SHOTS_TOGETHER * Math.round((shot.playedShots ?? 0) / SHOTS_TOGETHER);
    const line = shot.line ?? null;
    const bowler = shot.bowler ?? null;
    const key = JSON.stringify([bowler, shot.ball, line, playedShots]);
    const group = groups.get(key) ?? { bowler, ball: shot.ball, line, playedShots, shots: [] };
    group.shots.push(shot);
    groups.set(key, group);
  }
  return [...groups.values()];
}

function shotSeen(shot: FileShot, { hand }: Bowler): ShotSeen {
  return {
    boards: shot.boards ?? [],
    breakpointBoard: shot.breakpointBoard ?? null,
    breakpointFt: shot.breakpointFt ?? null,
    boardAtPins: shot.boardAtPins ?? null,
    speedMph: shot.speedMph ?? null,
    speedAt: shot.speedAt ?? "pins",
    turned: shot.turned ?? null,
    arrived: shot.arrived ?? null,
    leave: shot.leave === undefined ? null : leaveSeen(shot.leave, hand),
  };
}

/** Keys that are there but undefined must not cover a usual value. */
function defined<T extends object>(given: T | undefined): { [Key in keyof T]?: NonNullable<T[Key]> } {
  return Object.fromEntries(Object.entries(given ?? {}).filter(([, value]) => value !== undefined)) as {
    [Key in keyof T]?: NonNullable<T[Key]>;
  };
}

/** What a job file takes over, to as many figures as are worth keeping. */
export function jobHouseOf({ house: { shots, ids, draws, inWorlds } }: Correction): JobHouse {
  const rounded = (value: number) => Number(value.toPrecision(5));
  const hand = ([speed, revs, rotation]: HandNumbers): [number, number, number] => [rounded(speed), rounded(revs), rounded(rotation)];
  return {
    shots,
    ids: [...ids],
    draws: draws.map((row) => row.map(rounded)),
    ...(inWorlds === undefined
      ? {}
      : {
          inWorlds: {
            ensemble: inWorlds.ensemble,
            bowlers: inWorlds.bowlers.map(([speed, revs, rotation]) => [speed, revs, rotation]),
            worlds: inWorlds.worlds.map(({ world, weight, lane, deliveries }) => ({
              world,
              weight,
              lane: lane.map(rounded),
              deliveries: deliveries.map(hand),
            })),
          },
        }),
  };
}
