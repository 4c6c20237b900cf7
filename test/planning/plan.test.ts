import { describe, expect, it } from "vitest";
import { ASSUMPTIONS, assume } from "#engine/assumptions";
import { type CoverId, coversOf } from "#engine/ball/ball";
import { contactOf, filmMet } from "#engine/contact/friction";
import { filmOfPattern } from "#engine/lane/film";
import type { FilmPoint } from "#engine/lane/lane";
import { wearLaw } from "#engine/lane/wear";
import { assumedIn, groundOf } from "#engine/planning/ground";
import type { FinishPlan } from "#engine/planning/plan";
import { chanceAt, filmFound, mapOf } from "#engine/planning/session";
import { SITUATIONS, type StyleId } from "#engine/planning/situations";
import { playableLines } from "#engine/planning/softLines";
import { WORLDS } from "#engine/planning/worldCounts";
import { effectiveRaUm, parseFinish } from "#engine/surface/finish";
import { coverIn, ensemble } from "#engine/worlds/ensemble";
import { customerLines } from "#words/customerLines";
import { CUSTOMER } from "#words/en/customer";
import { asked, planned, sketched } from "./questions.ts";

const points = (plan: FinishPlan) => plan.candidates.map((candidate) => candidate.chance?.value ?? 0);
const bestOf = (plan: FinishPlan) => points(plan).reduce((best, chance, i, all) => (chance > all[best] ? i : best), 0);
const LADDER = ["500", "1000", "2000", "3000", "4000", "4000 + polish"].map((text) => parseFinish(text));
const onLadder = { candidates: LADDER, outsideRangeReason: "the whole ladder is compared" };

describe("the trade's situations (common practice, no source): over the first worlds the best in the trade's interval is within two strikes of the best", () => {
  const numbered = SITUATIONS.filter(({ playedShots }) => playedShots === 0);
  it.each(numbered.map((situation) => [`${situation.style}, ${situation.cover}, ${situation.pattern}`, situation] as const))(
    "%s",
    (_name, { style, cover, pattern, from, to }) => {
      const plan = sketched(asked(style, cover, pattern), WORLDS.first);
      const best = Math.max(...points(plan));
      const inside = plan.candidates.filter(
        ({ effectiveRaUm: ra }) => ra <= effectiveRaUm(parseFinish(from)) + 1e-9 && ra >= effectiveRaUm(parseFinish(to)) - 1e-9,
      );
      expect(Math.max(...inside.map((candidate) => candidate.chance?.value ?? 0))).toBeGreaterThan(best - 0.02);
    },
  );
});

describe("orderings (common practice): the best finish never moves the wrong way by more than makes a difference", () => {
  const AS_GOOD = 0.02;
  /** The second case wants at least as smooth a finish as the first. */
  function neverDuller(first: FinishPlan, second: FinishPlan) {
    const [was, is] = [bestOf(first), bestOf(second)];
    if (is < was) expect(points(second)[is] - points(second)[was]).toBeLessThan(AS_GOOD);
  }
  const reactive: readonly CoverId[] = ["solid", "hybrid", "pearl"];
  const styles: readonly StyleId[] = ["speedDominant", "matched", "revDominant"];

  it.each(reactive.flatMap((cover) => styles.map((style) => [style, cover] as const)))(
    "from heavy to light oil: %s, %s",
    (style, cover) => {
      const [heavy, medium, light] = ["heavy-44", "medium-41", "light-38"].map((pattern) =>
        sketched(asked(style, cover, pattern, onLadder)),
      );
      neverDuller(heavy, medium);
      neverDuller(medium, light);
    },
  );

  it.each(reactive.flatMap((cover) => ["heavy-44", "medium-41", "light-38"].map((pattern) => [pattern, cover] as const)))(
    "from speed- to rev-dominant: %s, %s",
    (pattern, cover) => {
      const [speed, matched, rev] = styles.map((style) => sketched(asked(style, cover, pattern, onLadder)));
      neverDuller(speed, matched);
      neverDuller(matched, rev);
    },
  );
});

describe("the plan follows the physics", () => {
  it("depends on film and film ratio only through their quotient: halving both changes nothing", () => {
    const usual = sketched(asked("matched", "hybrid", "medium-41"));
    const halved = sketched(
      asked("matched", "hybrid", "medium-41", {
        assumptions: { "film.scale": 0.5, "friction.filmRatio": assume()["friction.filmRatio"] / 2 },
      }),
    );
    usual.candidates.forEach((candidate, i) => {
      expect(halved.candidates[i].line).toEqual(candidate.line);
      expect(halved.candidates[i].chance?.value).toBeCloseTo(candidate.chance?.value ?? Number.NaN, 2);
      expect(halved.candidates[i].boardAtPins).toBeCloseTo(candidate.boardAtPins ?? Number.NaN, 1);
    });
  });

  it("is mirrored with the hand: a left-hander on the mirrored lane gets the same plan", () => {
    const right: FilmPoint[] = [1, 8, 12, 20, 28, 34, 39].flatMap((board, i) =>
      [8, 25, 40].map((ft) => ({ board, ft, um: [0.4, 0.8, 3, 4, 3.5, 1.6, 0.9][i] * (1 - ft / 60) })),
    );
    const left = right.map((point) => ({ ...point, board: 40 - point.board }));
    const lane = (measured: readonly FilmPoint[]) => ({
      pattern: { kind: "filmPoints", name: "measured", lengthFt: 41, points: measured } as const,
      playedShots: 20,
    });
    const base = asked("matched", "hybrid", "medium-41");
    const rightHanded = planned({ ...base, lane: lane(right) }, 3);
    const leftHanded = planned({ ...base, bowler: { ...base.bowler, hand: "left" }, lane: lane(left) }, 3);
    expect(leftHanded.pick?.finish).toBe(rightHanded.pick?.finish);
    leftHanded.candidates.forEach((candidate, i) => {
      const other = rightHanded.candidates[i];
      expect(candidate.line).toEqual(other.line);
      expect(candidate.boardAtPins).toBeCloseTo(other.boardAtPins ?? Number.NaN, 9);
      expect(candidate.chance?.value).toBeCloseTo(other.chance?.value ?? Number.NaN, 9);
    });
    const unmirrored = sketched({ ...base, bowler: { ...base.bowler, hand: "left" }, lane: lane(right) });
    expect(unmirrored.candidates).not.toEqual(sketched({ ...base, lane: lane(right) }).candidates);
  });

  it("moves with a planted change of dry friction: more grip wants a smoother finish", () => {
    const { value } = ASSUMPTIONS["friction.dry.solid"];
    const ask = (factor: number) =>
      sketched(asked("speedDominant", "solid", "medium-41", { ...onLadder, assumptions: { "friction.dry.solid": factor * value } }));
    const [weak, strong] = [ask(0.7), ask(1.3)];
    expect(bestOf(strong)).toBeGreaterThan(bestOf(weak));
  });

  it("gives each candidate its own line, and on an unchanged line a duller finish hits higher", () => {
    const plan = planned(asked("matched", "hybrid", "medium-41", { line: { laydownBoard: 19, launchAngleDeg: 1.8 } }), 0);
    const changes = plan.candidates.map((candidate) => candidate.onTodaysLine?.boardChange ?? Number.NaN);
    for (let i = 1; i < changes.length; i++) expect(changes[i]).toBeLessThan(changes[i - 1]);
    expect(changes[plan.candidates.findIndex((candidate) => candidate.finish === "2000")]).toBe(0);
    expect(new Set(plan.candidates.map((candidate) => candidate.line?.launchAngleDeg)).size).toBeGreaterThan(3);
  });
});

describe("messages in place of a pick", () => {
  it("no sensible line: a slow bowler with much hand and a strong ball on light oil hooks too much; the smoothest brings down most, and another ball is the answer", () => {
    const plan = sketched(asked("slowWithMuchHand", "solid", "light-38"));
    expect(plan.metric).toBe("expectedPins");
    expect(plan.pick?.plateau).toContain("4000 + polish");
    expect(plan.candidates.every(({ chance, expectedPins }) => chance === null && expectedPins !== null)).toBe(true);
    const pins = plan.candidates.map(({ expectedPins }) => expectedPins?.value ?? 0);
    expect(pins).toEqual(pins.toSorted((a, b) => a - b));
    expect(Math.max(...pins)).toBeLessThan(10);
    expect(plan.messages.map((message) => message.id)).toEqual(
      expect.arrayContaining(["message.expectedPins", "message.noLine.hooksTooMuch"]),
    );
    expect(customerLines(plan)).toContain(CUSTOMER.weakerBall);
  });

  it("no sensible line the other way: limits that force the ball away from the pocket", () => {
    const plan = sketched(
      asked("speedDominant", "polyester", "heavy-44", {
        limits: { laydownBoard: [9, 12], launchAngleDeg: [2, 4.5], breakpointBoard: [0.6, 39] },
      }),
    );
    expect(plan.messages.map((message) => message.id)).toContain("message.noLine.hooksTooLittle");
  });

  it("the finish does not matter: two finishes that are nearly one", () => {
    const plan = sketched(asked("matched", "hybrid", "medium-41", { candidates: [parseFinish("2000"), parseFinish("2100")] }));
    expect(plan.pick).toBeNull();
    expect(plan.messages.map((message) => message.id)).toEqual(["message.noMatter"]);
  });

  it("a ball outside the equipment rules is computed like any other, and what lies outside is said (USBC: 16 lb, 2.460–2.800 in, 0.060 in; published)", () => {
    const base = asked("matched", "hybrid", "medium-41");
    const plan = sketched({ ...base, ball: { ...base.ball, massLb: 17, rgIn: 2.85, differentialIn: 0.09 } });
    expect(plan.messages.filter(({ id }) => id === "message.outsideRuleBook").map(({ params }) => params.quantity)).toEqual([
      "massLb",
      "rgIn",
      "differentialIn",
    ]);
    expect(plan.candidates.every(({ line }) => line !== null)).toBe(true);
  });

  it("wider limits would find a line: says that it is the limits", () => {
    const plan = sketched(
      asked("matched", "hybrid", "medium-41", { limits: { laydownBoard: [20, 20], launchAngleDeg: [0, 0], breakpointBoard: [4, 39] } }),
    );
    expect(plan.messages.map(({ id }) => id)).toContain("message.noLine.limits");
  });

  it("one candidate has nothing to be compared with; today's finish on the plateau may stay", () => {
    const one = sketched(asked("matched", "hybrid", "medium-41", { candidates: [parseFinish("2000")] }));
    expect(one.pick).toBeNull();
    expect(one.messages.map(({ id }) => id)).toContain("message.onlyOne");
    const [asGood] = sketched(asked("matched", "hybrid", "medium-41"), WORLDS.first).pick?.plateau ?? [];
    const today = sketched(asked("matched", "hybrid", "medium-41", {}, "strike", asGood), WORLDS.first);
    expect(today.pick?.finish).toBe(asGood);
    expect(today.messages.map(({ id }) => id)).toContain("message.todayIsAsGood");
  });

  it("the cover is at its limit: still rising at the dull edge", () => {
    const plan = sketched(asked("speedDominant", "solid", "heavy-44"), WORLDS.first);
    expect(plan.pick?.finish).toBe("500");
    expect(plan.messages.map((message) => message.id)).toContain("message.coverAtLimit.duller");
    expect(plan.pick?.cliff).toBe("smoother");
  });
});

describe("a ball whose cover nobody knows", () => {
  const known = asked("matched", "hybrid", "medium-41");
  const unknown = { ...known, ball: { ...known.ball, unknown: ["cover" as const] } };

  it("hooks in each world as a ball of one of the covers that it may be, and in the worlds together as all of them", () => {
    const { worlds } = ensemble();
    expect(new Set(worlds.map((world) => coverIn(world, unknown.ball)))).toEqual(new Set(["urethane", "solid", "hybrid", "pearl"]));
    const film = filmOfPattern({ kind: "named", id: "medium-41" });
    for (const world of worlds.slice(0, 20)) {
      const cover = coverIn(world, unknown.ball);
      const [as, is] = [assumedIn(world, unknown), assumedIn(world, { ...known, ball: { ...known.ball, cover } })];
      // What decides the motion and the wear of the oil: friction on the lane, and the oil that the ball carries.
      expect(contactOf("hybrid", 0.5, as)).toEqual(contactOf(cover, 0.5, is));
      expect(filmMet(film, "hybrid", as)).toEqual(filmMet(film, cover, is));
      expect(wearLaw("hybrid", 0.5, as)).toEqual(wearLaw(cover, 0.5, is));
    }
  });

  it("polyester is among them only for a spare or house ball (common practice)", () => {
    expect(coversOf({ ...unknown.ball, job: "spare" })).toContain("polyester");
    expect(coversOf(unknown.ball)).not.toContain("polyester");
    expect(coversOf(known.ball)).toEqual(["hybrid"]);
  });

  it("gets a plan that is less sure, and that says so; no rule of one cover speaks to it", () => {
    const [sure, wide] = [planned(known), planned(unknown)];
    const width = (plan: FinishPlan) =>
      plan.candidates.reduce((sum, { chance }) => sum + (chance === null ? 0 : chance.high - chance.low), 0);
    expect(width(wide)).toBeGreaterThan(width(sure));
    expect(wide.messages.map(({ id }) => id)).toContain("message.coverUnknown");
    expect(wide.rules.map(({ rule }) => rule)).not.toContain("hybridRange");
    expect(wide.cautions.map(({ id }) => id)).toContain(wide.pick?.finish === "1000" ? "caution.wetPaper" : "caution.lookFirst");
  });

  it("today's finish that nobody knows is said to be assumed, and is not called as good as any", () => {
    const { messages, reasons, candidates, today } = planned({ ...known, ball: { ...known.ball, unknown: ["finish"] } });
    // Nothing is said against a finish that nobody knows to be there.
    expect(reasons.map(({ id }) => id).filter((id) => /today|hookLater|hookEarlier/i.test(id))).toEqual([]);
    expect(today).toEqual({ finish: null, line: null });
    expect(candidates.map(({ onTodaysLine }) => onTodaysLine)).toEqual(candidates.map(() => null));
    expect(messages).toContainEqual({ id: "message.finishUnknown", params: { finish: "2000", shots: 0 } });
    expect(messages.map(({ id }) => id)).not.toContain("message.todayIsAsGood");
  });
});

describe("the line played today", () => {
  const base = asked("matched", "hybrid", "medium-41");
  /** Board at the arrows, 14 ft down (USBC), of a ball that goes as it was sent. A board is 41.5/39 in. */
  const atArrows = ({ laydownBoard, launchAngleDeg }: { readonly laydownBoard: number; readonly launchAngleDeg: number }) =>
    laydownBoard - (Math.tan((launchAngleDeg * Math.PI) / 180) * 14 * 12) / (41.5 / 39);

  it("goes over the arrow that the bowler plays, on every fifth board (published), give or take two", () => {
    for (const [arrow, board] of [
      ["2nd", 10],
      ["3rd", 15],
    ] as const) {
      const { today } = sketched({ ...base, bowler: { ...base.bowler, plays: arrow } });
      expect(today.line).not.toBeNull();
      if (today.line !== null) expect(Math.abs(atArrows(today.line) - board)).toBeLessThanOrEqual(2.1);
    }
  });

  it("is the one that was named, whatever the arrow; and the best of all where nobody said any", () => {
    const line = { laydownBoard: 19, launchAngleDeg: 1.9 };
    expect(sketched({ ...base, line, bowler: { ...base.bowler, plays: "2nd" } }).today.line).toEqual(line);
    const best = sketched(base);
    expect(best.today.line).toEqual(best.candidates.find(({ finish }) => finish === best.today.finish)?.line);
  });

  it("asks each finish for the least move that is as good as its best line: half a strike in a hundred", () => {
    const question = { ...base, bowler: { ...base.bowler, plays: "2nd" as const } };
    const plan = sketched(question);
    const ground = groundOf(question);
    for (const { finish, line, onTodaysLine } of plan.candidates) {
      const map = mapOf(ground, parseFinish(finish), filmFound(ground), "strikeChance");
      const best = Math.max(...playableLines(map, question.limits).map((at) => map.chance[at]));
      expect(line).not.toBeNull();
      if (line === null || plan.today.line === null) continue;
      expect(chanceAt(map, line)).toBeGreaterThanOrEqual(best - 0.005);
      expect(onTodaysLine?.move?.feetBoards).toBeCloseTo(line.laydownBoard - plan.today.line.laydownBoard, 9);
      expect(onTodaysLine?.move?.targetBoards).toBeCloseTo(atArrows(line) - atArrows(plan.today.line), 1);
    }
  });
});

describe("the ball's job changes what is aimed at", () => {
  it("a spare ball: least hook, no chance of a strike", () => {
    const plan = planned(asked("matched", "polyester", "medium-41", {}, "spare", "1000"), 4);
    expect(plan.candidates.every((candidate) => candidate.chance === null)).toBe(true);
    expect(effectiveRaUm(parseFinish(plan.pick?.finish ?? "500"))).toBeLessThan(effectiveRaUm(parseFinish("1000")));
    expect(plan.messages.map((message) => message.id)).toContain("message.leastHook");
  });

  it("a spare ball whose finishes are much the same is told so in boards of hook, never in strikes", () => {
    const plan = planned(
      asked("matched", "polyester", "medium-41", { candidates: ["1000", "1500"].map((text) => parseFinish(text)) }, "spare", "1000"),
      0,
    );
    const said = plan.messages.find(({ id }) => id.startsWith("message.noMatter"));
    expect(said?.id).toBe("message.noMatterOfHook");
    expect(said?.params.boards).toBeLessThanOrEqual(0.5);
  });

  it("a control ball is judged on one line held through the session, never above what re-aiming gives", () => {
    const strike = planned(asked("matched", "solid", "medium-41"), 0);
    const control = planned(asked("matched", "solid", "medium-41", {}, "control"), 0);
    for (const [i, candidate] of control.candidates.entries()) {
      expect(candidate.chance?.value ?? 0).toBeLessThan((strike.candidates[i].chance?.value ?? 0) + 0.02);
    }
    expect(control.messages.map((message) => message.id)).toContain("message.leastChange");
  });
});

describe("candidates", () => {
  it("below 500 on reactive resin is refused, whatever the reason", () => {
    expect(() =>
      sketched(asked("matched", "solid", "medium-41", { candidates: [parseFinish("360")], outsideRangeReason: "asked for" })),
    ).toThrow(/500 or more/);
  });

  it("outside the usual range needs a stated reason", () => {
    const smooth = [parseFinish("1000"), parseFinish("2000")];
    expect(() => sketched(asked("matched", "urethane", "medium-41", { candidates: smooth }))).toThrow(/usual on urethane/);
    expect(
      sketched(asked("matched", "urethane", "medium-41", { candidates: smooth, outsideRangeReason: "the owner wants it" })).candidates,
    ).toHaveLength(2);
  });

  it("polish alone is no finish, nor a number off the ladder's ends", () => {
    for (const text of ["polish", "+ polish", "200", "9000", "2000 + wax", ""]) expect(() => parseFinish(text), text).toThrow(/allowed/);
    expect(parseFinish(" 1000+Polish ")).toEqual({ number: 1000, polished: true });
    expect(parseFinish(2000)).toEqual({ number: 2000, polished: false });
  });
});

describe("what comes out", () => {
  const plan = planned(asked("matched", "hybrid", "medium-41"));

  it("is finite everywhere, chances within 0 and 1, intervals around their value", () => {
    const numbers: number[] = [];
    JSON.stringify(plan, (_key, value) => {
      if (typeof value === "number") numbers.push(value);
      return value;
    });
    expect(numbers.length).toBeGreaterThan(100);
    expect(numbers.every(Number.isFinite)).toBe(true);
    for (const { chance } of plan.candidates) {
      expect(chance?.low).toBeGreaterThanOrEqual(0);
      expect(chance?.high).toBeLessThanOrEqual(1);
      expect(chance?.low).toBeLessThanOrEqual(chance?.value ?? Number.NaN);
      expect(chance?.high).toBeGreaterThanOrEqual(chance?.value ?? Number.NaN);
    }
  });

  it("picks from the plateau, and the plateau holds the best", () => {
    expect(plan.pick?.plateau).toContain(plan.pick?.finish);
    expect(plan.pick?.plateau).toContain(plan.candidates[bestOf(plan)].finish);
  });

  it("is the same whatever the seed", () => {
    const [first, other] = [1, 20261130].map((seed) => planned(asked("matched", "hybrid", "medium-41", { seed }), 2));
    expect(other).toEqual(first);
  });
});
