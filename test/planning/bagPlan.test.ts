import { describe, expect, it } from "vitest";
import { assume } from "#engine/assumptions";
import type { CoverId } from "#engine/ball/ball";
import { TYPICAL_BALL } from "#engine/ball/typical";
import type { Bowler } from "#engine/delivery/bowler";
import { TYPICAL_SPREAD } from "#engine/delivery/words";
import { BAG_MESSAGES, BAG_REASONS } from "#engine/planning/bag/bagPlan";
import { bowlerWith, laneAfterPractice, stageLane } from "#engine/planning/bag/films";
import { type RatedState, waysOf } from "#engine/planning/bag/options";
import { atStage, type BagBall, type BagQuestion, ratedStages } from "#engine/planning/bag/question";
import { statesOf } from "#engine/planning/bag/states";
import { surfaceWord } from "#engine/planning/bag/surfaceWord";
import { worthOn } from "#engine/planning/bag/worth";
import { drawnField } from "#engine/planning/oilInPlay/field";
import type { Limits } from "#engine/planning/question";
import type { EventRules } from "#engine/rules/events";
import { parseFinish } from "#engine/surface/finish";
import { type BagProgress, runBag } from "#tasks/bagTask";
import { inlineExecutor } from "#tasks/inlineExecutor";
import { BAG_SENTENCES } from "#words/en/bag";
import { messageText } from "#words/messageText";

const LIMITS: Limits = { laydownBoard: [9, 36], launchAngleDeg: [-1.5, 4.5], breakpointBoard: [4, 39] };
const BOWLERS = {
  matched: [17.5, 320, 45, 14],
  speedDominant: [19.5, 250, 35, 15],
  revDominant: [16.5, 420, 45, 10],
} as const;

function bowler(style: keyof typeof BOWLERS, over: Partial<Bowler> = {}): Bowler {
  const [speedMph, revRateRpm, axisRotationDeg, axisTiltDeg] = BOWLERS[style];
  return { name: "Invented", hand: "right", speedMph, revRateRpm, axisRotationDeg, axisTiltDeg, spread: TYPICAL_SPREAD, ...over };
}

const ballOf = (name: string, cover: CoverId, finish: string, over: Partial<BagBall["ball"]> = {}): BagBall => ({
  ball: { ...TYPICAL_BALL, name, cover, finish: parseFinish(finish), ...over },
  gamesSince: 0,
  finishes: [],
});
const WEAK = { rgIn: 2.53, differentialIn: 0.03 };
/** The trade's balls for a night, from the fresh to the burn. */
const LADDER = [
  ballOf("Solid", "solid", "2000"),
  ballOf("Hybrid", "hybrid", "2000"),
  ballOf("Weak pearl", "pearl", "3000", WEAK),
  ballOf("Polished pearl", "pearl", "4000 + polish", WEAK),
];

function question(over: Partial<BagQuestion> = {}): BagQuestion {
  return {
    seed: 1,
    bowler: bowler("matched"),
    limits: LIMITS,
    balls: LADDER,
    pattern: { kind: "named", id: "heavy-44" },
    session: { games: 4, stagesAGame: 1, practiceShots: 4, shotsAGame: 8.5, others: drawnField(7, 0, 8.5, LIMITS, 5, assume()) },
    work: { numbers: null, polish: true, minutesBefore: 60, minutesInPractice: 0, minutesBetweenGames: 0 },
    rules: { book: "usbc", on: "2026-11-25", event: null },
    assumptions: {},
    ...over,
  };
}

/** Strike chance of every ball as it lies at every stage of the session. */
function table(asked: BagQuestion): readonly (readonly number[])[] {
  const thrown = bowlerWith(asked, null);
  let lane = laneAfterPractice(asked, thrown);
  const films = Array.from({ length: asked.session.games * asked.session.stagesAGame }, () => {
    const { middle, end } = stageLane(asked, lane, thrown);
    lane = end;
    return middle;
  });
  return asked.balls.map((_, ball) => worthOn(asked, statesOf(asked, ball)[0], films).map(({ chance }) => chance));
}

describe("the trade's ladder through a night: solid, hybrid, weak pearl, polished pearl (common practice)", () => {
  it.each([
    ["matched", "heavy-44"],
    ["revDominant", "heavy-44"],
    ["speedDominant", "medium-41"],
  ] as const)("%s on %s: strikes more than the same balls in the opposite order", (style, id) => {
    const chances = table(question({ bowler: bowler(style), pattern: { kind: "named", id } }));
    const ladder = chances.reduce((sum, row, stage) => sum + row[stage], 0);
    const opposite = chances.reduce((sum, row, stage) => sum + row[3 - stage], 0);
    expect(10 * (ladder - opposite)).toBeGreaterThan(0.3);
  });

  it.each(["matched", "revDominant"] as const)("%s on heavy-44: the stronger ball loses more from the fresh to the burn", (style) => {
    const lost = table(question({ bowler: bowler(style) })).map((row) => row[0] - row[3]);
    expect(lost[0]).toBeGreaterThan(lost[3] + 0.02);
  });
});

describe("what may be done to the balls", () => {
  const asked = question({ balls: [{ ...LADDER[0], finishes: null, gamesSince: 12 }, LADDER[1]] });

  it("is the cover's usual finishes, today's first; without bench time only today's", () => {
    const finishes = statesOf(asked, 0).map(({ finish, isToday }) => [finish.number, finish.polished, isToday]);
    expect(finishes[0]).toEqual([2000, false, true]);
    expect(finishes).toContainEqual([1000, false, false]);
    // A fresh 2000 is another surface than one with twelve games on it.
    expect(finishes).toContainEqual([2000, false, false]);
    const [lies] = statesOf(asked, 0);
    expect(lies.as.raMicroinch).not.toBeNull();
    expect(statesOf({ ...asked, work: { ...asked.work, minutesBefore: 0 } }, 0)).toHaveLength(1);
  });

  it("needs the abrasives of every stage of the work, and polish for a polish", () => {
    const only = (numbers: readonly number[], polish: boolean) =>
      statesOf({ ...asked, work: { ...asked.work, numbers, polish } }, 0)
        .slice(1)
        .map(({ finish }) => finish);
    expect(only([1000], true)).toEqual([{ number: 1000, polished: false }]);
    expect(only([500, 1000, 2000, 3000, 4000], false).some(({ polished }) => polished)).toBe(false);
    expect(only([500, 1000, 2000, 3000, 4000], true).some(({ polished }) => polished)).toBe(true);
  });

  it("is nothing where the event forbids abrasives before, and never below what the cover takes", () => {
    const event: EventRules = {
      name: "Invented cup",
      limits: [],
      approved: null,
      withdrawn: [],
      ballsMost: null,
      surface: [{ act: "abrasive", moment: "before", answer: "no" }],
    };
    expect(statesOf({ ...asked, rules: { ...asked.rules, event } }, 0)).toHaveLength(1);
    const dull = { ...asked, balls: [{ ...LADDER[0], finishes: [parseFinish("360"), parseFinish("500")] }] };
    expect(statesOf(dull, 0).map(({ finish }) => finish.number)).toEqual([2000, 500]);
  });

  it("is by hand at the lane only where the rules say yes: USBC rule 18 lets abrasives in before scoring, not between games (published)", () => {
    expect(surfaceWord(asked)).toEqual({ before: "yes", practice: "yes", betweenGames: "no" });
    const rated = [0.3, 0.34, 0.36].map((chance, i): RatedState => {
      const state = { ...statesOf(asked, 0)[0], finish: parseFinish(["500", "2000", "4000"][i]) };
      const own = { ...state, as: { ...state.as, raMicroinch: null, finish: state.finish } };
      return { state: own, worth: ratedStages(asked.session).map(() => ({ line: null, shot: null, chance })), draws: null };
    });
    const touches = (over: Partial<BagQuestion>) => waysOf({ ...asked, ...over }, rated).flatMap(({ touch }) => touch ?? []);
    expect(touches({})).toEqual([]);
    const time = { ...asked.work, minutesInPractice: 20, minutesBetweenGames: 20 };
    expect(new Set(touches({ work: time }).map(({ beforeStage }) => beforeStage))).toEqual(new Set([0]));
    const event: EventRules = {
      name: "Invented cup",
      limits: [],
      approved: null,
      withdrawn: [],
      ballsMost: null,
      surface: [{ act: "abrasive", moment: "betweenGames", answer: "yes" }],
    };
    const between = waysOf({ ...asked, work: time, rules: { ...asked.rules, event } }, rated);
    expect(new Set(between.flatMap(({ touch }) => touch?.beforeStage ?? []))).toEqual(new Set([0, 1, 2, 3]));
    // A 500 pad by hand on a 4000 surface gets part of the way: from that stage on between the two, before it untouched.
    const one = between.find(
      ({ rated: { state }, touch }) => state.finish.number === 4000 && touch?.number === 500 && touch.beforeStage === 2,
    );
    expect(one?.worth[1]).toBeCloseTo(3.6, 9);
    expect(one?.worth[2]).toBeGreaterThan(3);
    expect(one?.worth[2]).toBeLessThan(3.6);
  });
});

describe("the plan", () => {
  const small = question({
    balls: [LADDER[0], { ...LADDER[3], finishes: [parseFinish("2000")] }, ballOf("Spare", "polyester", "4000 + polish", { job: "spare" })],
    session: { games: 2, stagesAGame: 1, practiceShots: 0, shotsAGame: 8.5, others: drawnField(2, 0, 8.5, LIMITS, 5, assume()) },
  });

  it("names a ball for every stage, leaves the spare ball aside, and says how sure it is", async () => {
    const told: BagProgress[] = [];
    const plan = await runBag(small, { executor: inlineExecutor, onProgress: (progress) => told.push(progress) });
    expect(plan.stages).toHaveLength(2);
    expect(plan.balls.map(({ role }) => role)).toContain("thrown");
    expect(plan.balls[2]).toMatchObject({ name: "Spare", role: "aside", stages: 0, lostWithout: null });
    expect(plan.frames).toBe(20);
    const { value, low, high } = plan.strikes ?? { value: 0, low: 0, high: 0 };
    expect(low).toBeLessThan(value);
    expect(value).toBeLessThan(high);
    // The plan is its stages: ten first balls each.
    expect(value).toBeCloseTo(
      plan.stages.reduce((sum, { chance }) => sum + 10 * chance.value, 0),
      9,
    );
    expect(JSON.stringify(plan)).not.toMatch(/NaN|null,null,null,null,null/);
    for (const message of [...plan.messages, ...plan.stretches.flatMap(({ reasons }) => reasons)])
      expect(messageText(message)).not.toBe("");
    expect(told[told.length - 1].done).toBe(told[told.length - 1].of);
    expect(told.some(({ stage, plan: early }) => stage === "worth" && early !== null)).toBe(true);
  });

  it("is the same again, and for a left-hander with nobody else on the lane the mirrored one", async () => {
    const alone = { ...small, balls: small.balls.slice(0, 1), session: { ...small.session, games: 1, others: [] } };
    const right = await runBag(alone, { executor: inlineExecutor });
    expect(await runBag(alone, { executor: inlineExecutor })).toEqual(right);
    const left = await runBag({ ...alone, bowler: bowler("matched", { hand: "left" }) }, { executor: inlineExecutor });
    expect(left.stages[0].chance.value).toBeCloseTo(right.stages[0].chance.value, 9);
    expect(left.stages[0].line).toEqual(right.stages[0].line);
    expect(right.messages.map(({ id }) => id)).toContain("bag.ownWear");
  });

  it("stops when it is told to, with the reason", async () => {
    const stop = new AbortController();
    const run = runBag(small, { executor: inlineExecutor, signal: stop.signal, onProgress: () => stop.abort(new Error("enough")) });
    await expect(run).rejects.toThrow("enough");
  });

  it("has nothing to say of a bag without a ball that strikes", async () => {
    const plan = await runBag({ ...small, balls: [small.balls[2]] }, { executor: inlineExecutor });
    expect(plan.strikes).toBeNull();
    expect(plan.messages.map(({ id }) => id)).toEqual(["bag.onlyAside"]);
  });
});

describe("rows at the rated stages", () => {
  it("every second stage and the last; straight between", () => {
    const session = question().session;
    expect(ratedStages({ ...session, games: 3, stagesAGame: 4 })).toEqual([0, 2, 4, 6, 8, 10, 11]);
    expect(ratedStages({ ...session, games: 1, stagesAGame: 1 })).toEqual([0]);
    const row = [0, 2, 4, 6, 8, 10, 20];
    expect(Array.from({ length: 12 }, (_, stage) => atStage({ ...session, games: 3, stagesAGame: 4 }, row, stage))).toEqual([
      0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 20,
    ]);
  });
});

it("every reason and message has its sentence", () => {
  expect(Object.keys(BAG_SENTENCES).sort()).toEqual([...BAG_REASONS, ...BAG_MESSAGES].sort());
});
