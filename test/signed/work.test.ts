import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { NO_FINDINGS } from "#engine/rules/stops";
import type { PlannedStage, WorkEntry } from "#engine/signed/entries";
import { workOf } from "#engine/signed/work";
import type { BenchBall } from "#engine/surface/benchBall";
import { parseFinish } from "#engine/surface/finish";
import { planStages } from "#engine/surface/stages";

const BALL: BenchBall = {
  cover: "solid",
  hardnessD: null,
  diameterIn: 8.55,
  finish: parseFinish("3000"),
  history: [],
  gamesSince: 20,
  raMicroinch: null,
  compared: null,
  trackWear: "none",
  plug: "none",
  oil: "clean",
};

/** The stages that the program itself plans to a finish, with ids of a revision. */
function plan(wanted: string, revision: number, ball: Partial<BenchBall> = {}): PlannedStage[] {
  return planStages({ ...BALL, ...ball }, parseFinish(wanted), NO_FINDINGS).stages.map(({ kind, abrasive, sideIds }, i) => ({
    id: `${revision}-${i}`,
    kind,
    abrasive,
    sideIds,
    label: abrasive === null ? kind : `${kind} ${abrasive}`,
  }));
}

let clock = 0;
function signs(stage: PlannedStage, more: Partial<WorkEntry> = {}): WorkEntry {
  clock += 1;
  const { id: stageId, kind, abrasive, label } = stage;
  const at = new Date(Date.UTC(2026, 4, 31) + 1000 * clock).toISOString();
  return {
    id: `e${clock}`,
    stageId,
    kind,
    abrasive,
    signs: true,
    sidesDone: stage.sideIds,
    sidesAgain: [],
    againSeconds: null,
    began: null,
    takesBack: null,
    at,
    label,
    ...more,
  };
}
const takesBack = (entry: WorkEntry): WorkEntry =>
  signs({ id: "", kind: null, abrasive: null, sideIds: [], label: "" }, { stageId: null, signs: false, takesBack: entry.id });

const cuts = (stages: readonly PlannedStage[]) => stages.filter(({ kind }) => kind === "cut");
const states = (stages: readonly PlannedStage[], entries: readonly WorkEntry[]) => workOf(stages, entries).stages.map(({ state }) => state);

describe("a ball's work", () => {
  it("with nothing signed has nothing done, and begins at its first stage", () => {
    const stages = plan("1000", 1);
    const work = workOf(stages, []);
    expect([work.next?.stage, work.finish, work.surface]).toEqual([stages[0], null, []]);
  });

  it("signed to the end is done; its finish is the last cut, polished where a polish lies over it", () => {
    const stages = plan("1000 + polish", 1);
    const work = workOf(
      stages,
      stages.map((stage) => signs(stage)),
    );
    expect([work.next, work.finish]).toEqual([null, { number: 1000, polished: true }]);
  });

  it("after another wish does not take the old cut for the new one, but goes on from it", () => {
    const [first, second] = [plan("1000", 1), plan("2000", 2)];
    const entries = [signs(first[0]), ...cuts(first).map((stage) => signs(stage))];
    const work = workOf(second, entries);
    expect(work.finish).toEqual({ number: 1000, polished: false });
    expect(work.next?.stage).toMatchObject({ kind: "cut", abrasive: "pad-2000" });
    const cleaned = work.stages.find(({ stage }) => stage.kind === "clean");
    expect([cleaned?.state, cleaned?.by]).toEqual(["served", entries[0]]);
  });

  it("after a duller wish begins its cuts anew: what is finer than the wish serves nothing", () => {
    const [first, second] = [plan("3000", 1), plan("1000", 2)];
    const entries = [signs(first[0]), ...cuts(first).map((stage) => signs(stage))];
    expect(workOf(second, entries).next?.stage).toEqual(cuts(second)[0]);
  });

  it("is not cut again under a polish that is wished for afterwards, but checked again", () => {
    const [first, second] = [plan("1000", 1), plan("1000 + polish", 2)];
    const work = workOf(
      second,
      first.map((stage) => signs(stage)),
    );
    expect(work.next?.stage.kind).toBe("polish");
    expect(work.stages.at(-1)).toMatchObject({ stage: { kind: "check" }, state: "open" });
  });

  it("knows sides that are done without a signature, and the rest of them", () => {
    const stages = plan("1000", 1);
    const cut = cuts(stages)[0];
    const entries = [signs(stages[0]), signs(cut, { signs: false, sidesDone: ["grip", "left"] })];
    expect(workOf(stages, entries).next).toMatchObject({ state: "begun", sidesLeft: ["opposite", "right", "fingers", "thumb"] });
    expect(workOf(stages, entries).surface).toEqual([]);
  });

  it("whose signature is taken back is to be done again, and its finish is what it was", () => {
    const stages = plan("1000", 1);
    const all = stages.map((stage) => signs(stage));
    const last = all.findLast(({ kind }) => kind === "cut") as WorkEntry;
    const work = workOf(stages, [...all, takesBack(last)]);
    expect(work.next?.stage.id).toBe(last.stageId);
    expect(work.surface).not.toContain(last);
  });

  it("one side that is off is put back alone, with its seconds; signed again it is done, and what was checked is checked again", () => {
    const stages = plan("1000", 1);
    const all = stages.map((stage) => signs(stage));
    const cut = cuts(stages).at(-1) as PlannedStage;
    const again = signs(cut, { signs: false, sidesDone: [], sidesAgain: ["opposite"], againSeconds: 5 });
    const open = workOf(stages, [...all, again]);
    expect(open.next).toMatchObject({ stage: cut, state: "begun", sidesLeft: ["opposite"], againSeconds: 5, again: ["opposite"] });
    expect(open.stages.at(-1)).toMatchObject({ stage: { kind: "check" }, state: "open" });
    expect(open.finish).toEqual({ number: 1000, polished: false });
    const worked = [...all, again, signs(cut, { signs: false, sidesDone: ["opposite"] })];
    expect(workOf(stages, worked).next).toMatchObject({ stage: cut, sidesLeft: [] });
    const done = [...worked, signs(cut), signs(stages.at(-1) as PlannedStage)];
    expect(workOf(stages, done).next).toBeNull();
    // Pressed by mistake, it is taken back like anything else.
    expect(workOf(stages, [...all, again, takesBack(again)]).next).toBeNull();
  });

  it("of before there were ids is known by what a stage was called and what was used, in order", () => {
    const stages = plan("1000", 1);
    const old = stages.slice(0, 2).map((stage) => signs(stage, { stageId: null }));
    expect(states(stages, old).slice(0, 3)).toEqual(["signed", "signed", "open"]);
    // The same word for another cut: "Sand" was the name of every cut.
    const other = signs(stages[1], { stageId: null, abrasive: "pad-360" });
    expect(states(stages, [old[0], other])[1]).toBe("open");
  });

  it("signed with another abrasive is not signed: the stage is open with all its sides, and the finish is what was really used", () => {
    const stages = plan("1000", 1);
    const cut = cuts(stages).at(-1) as PlannedStage;
    const before = stages.filter(({ id, kind }) => id !== cut.id && kind !== "check").map((stage) => signs(stage));
    const sides = cut.sideIds.map((side) => signs(cut, { signs: false, sidesDone: [side], abrasive: "pad-800" }));
    const other = signs(cut, { abrasive: "pad-800" });
    const work = workOf(stages, [...before, ...sides, other]);
    expect(work.finish).toEqual({ number: 800, polished: false });
    expect(work.next).toMatchObject({ stage: cut, state: "open", sidesLeft: cut.sideIds, again: [], instead: other });
    const done = workOf(stages, [...before, ...sides, other, signs(cut)]);
    expect([done.next?.stage.kind, done.stages.find(({ stage }) => stage === cut)?.instead, done.finish?.number]).toEqual([
      "check",
      null,
      1000,
    ]);
  });

  it("signed with an abrasive of the same grain, or on a finer way, serves; a coarser one opens the finer cuts before it again", () => {
    // P1000 is P1000, on paper or on foam (ISO 6344); a step of more than twice the grain leaves scratches standing (common practice).
    const stages = plan("2000", 1, { gamesSince: 70 });
    expect(cuts(stages).map(({ abrasive }) => abrasive)).toEqual(["pad-500", "pad-1000", "pad-2000"]);
    const [first, second, third] = cuts(stages);
    const whole = (...used: [PlannedStage, string][]) => {
      const entries = [signs(stages[0]), ...used.map(([stage, abrasive]) => signs(stage, { abrasive }))];
      return workOf(stages, entries)
        .stages.filter(({ stage }) => stage.kind === "cut")
        .map(({ state }) => state);
    };
    expect(whole([first, "pad-500"], [second, "paper-P1000"], [third, "pad-2000"])).toEqual(["signed", "signed", "signed"]);
    expect(whole([first, "pad-500"], [second, "pad-800"], [second, "pad-1500"], [second, "pad-2000"])).toEqual([
      "signed",
      "served",
      "served",
    ]);
    expect(whole([first, "pad-500"], [second, "pad-1500"])).toEqual(["signed", "open", "open"]);
    expect(whole([first, "pad-500"], [second, "pad-360"])).toEqual(["open", "open", "open"]);
  });

  it("of a side that was worked once more with another pad has that side open still", () => {
    const stages = plan("1000", 1);
    const cut = cuts(stages).at(-1) as PlannedStage;
    const all = stages.map((stage) => signs(stage));
    const again = signs(cut, { signs: false, sidesDone: [], sidesAgain: ["opposite"], againSeconds: 5 });
    const other = signs(cut, { sidesDone: ["opposite"], abrasive: "pad-2000" });
    const { next } = workOf(stages, [...all, again, other]);
    expect(next).toMatchObject({ stage: cut, sidesLeft: ["opposite"], again: ["opposite"], instead: other });
  });

  it("signed late for a plan of before opens finer cuts that were signed before it, and what was polished or checked", () => {
    const [first, second] = [plan("500", 1), plan("2000 + polish", 2, { gamesSince: 70 })];
    const all = second.map((stage) => signs(stage));
    const late = signs(cuts(first)[0]);
    const { stages, next, finish } = workOf(second, [...all, late]);
    const open = stages.filter(({ by }) => by === null).map(({ stage: { kind, abrasive } }) => abrasive ?? kind);
    expect([open, next?.stage.abrasive, finish?.number]).toEqual([["pad-1000", "pad-2000", "cutting-polish", "check"], "pad-1000", 500]);
    // Done before the others, and only told late, it changes nothing.
    expect(workOf(second, [...all, { ...late, at: "2026-01-01T00:00:00.000Z" }]).next).toBeNull();
  });

  it("knows who last began a side that is not done yet, which is no work", () => {
    const stages = plan("1000", 1);
    const cut = cuts(stages)[0];
    const begins = (side: "grip" | "left", device: string) => signs(cut, { signs: false, sidesDone: [], began: { side, device } });
    const [mine, theirs] = [begins("grip", "counter"), begins("grip", "bench")];
    const entries = [signs(stages[0]), mine];
    expect(workOf(stages, entries)).toMatchObject({ sides: [], next: { state: "open", running: mine } });
    expect(workOf(stages, [...entries, theirs]).next?.running).toBe(theirs);
    expect(workOf(stages, [...entries, signs(cut, { signs: false, sidesDone: ["grip"] })]).next?.running).toBeNull();
    // Done, and put back into the work, nobody works it yet.
    const redone = [
      ...entries,
      signs(cut, { signs: false, sidesDone: ["grip"] }),
      signs(cut, { signs: false, sidesDone: [], sidesAgain: ["grip"] }),
    ];
    expect(workOf(stages, redone).next).toMatchObject({ sidesLeft: cut.sideIds, running: null });
  });

  it("a finer way serves a cut that it steps over; a larger step does not", () => {
    const stage = (number: number, i: number): PlannedStage => ({
      id: `x${i}`,
      kind: "cut",
      abrasive: `pad-${number}`,
      sideIds: [],
      label: "",
    });
    const planned = [500, 1000, 2000].map(stage);
    const done = (...numbers: number[]) => numbers.map((number, i) => signs({ ...stage(number, i), id: `old${i}` }));
    expect(states(planned, done(500, 800, 1500, 2000))).toEqual(["served", "served", "served"]);
    expect(states(planned, done(500, 2000))).toEqual(["open", "open", "open"]);
    expect(states(planned, done(500, 1000, 500))).toEqual(["served", "open", "open"]);
    expect(states(planned, done(500, 1000, 2000, 3000))).toEqual(["open", "open", "open"]);
    expect(states(planned, [...done(500, 1000), ...done(2000).map((entry) => ({ ...entry, abrasive: "own pad" }))])).toEqual([
      "open",
      "open",
      "open",
    ]);
  });
});

describe("whatever is planned, signed, taken back and planned anew", () => {
  const WISHES = ["500", "1000", "2000", "3000", "1000 + polish", "4000 + polish"];
  const act = fc.oneof(
    { weight: 5, arbitrary: fc.constant({ do: "sign" } as const) },
    {
      weight: 1,
      arbitrary: fc.record({ do: fc.constant("other pad" as const), pad: fc.constantFrom("pad-360", "pad-1000", "pad-1500", "pad-3000") }),
    },
    { weight: 1, arbitrary: fc.record({ do: fc.constant("late" as const), which: fc.nat(20) }) },
    { weight: 2, arbitrary: fc.record({ do: fc.constant("plan" as const), wish: fc.constantFrom(...WISHES) }) },
    { weight: 2, arbitrary: fc.record({ do: fc.constant("side" as const), side: fc.constantFrom("grip", "thumb", "left") }) },
    { weight: 1, arbitrary: fc.record({ do: fc.constant("again" as const), which: fc.nat(20) }) },
    { weight: 1, arbitrary: fc.record({ do: fc.constant("take back" as const), which: fc.nat(20) }) },
  );

  it("no cut counts that nobody signed, the finish is the last signed cut, and order of arrival changes nothing", () => {
    fc.assert(
      fc.property(fc.array(act, { maxLength: 40 }), fc.infiniteStream(fc.nat()), (acts, shuffle) => {
        let stages = plan("2000", 0);
        let revision = 0;
        const plans = [stages];
        const entries: WorkEntry[] = [];
        for (const one of acts) {
          const { next } = workOf(stages, entries);
          if (one.do === "plan") {
            stages = plan(one.wish, ++revision);
            plans.push(stages);
          } else if (one.do === "other pad" && next?.stage.kind === "cut") entries.push(signs(next.stage, { abrasive: one.pad }));
          else if (one.do === "late") {
            const known = plans.flat();
            entries.push(signs(known[one.which % known.length]));
          } else if (one.do === "sign" && next !== null) entries.push(signs(next.stage));
          else if (one.do === "side" && next !== null) entries.push(signs(next.stage, { signs: false, sidesDone: [one.side as "grip"] }));
          else if (one.do === "again") {
            const sided = stages.filter(({ sideIds }) => sideIds.length > 0);
            const stage = sided[one.which % sided.length];
            entries.push(signs(stage, { signs: false, sidesDone: [], sidesAgain: ["opposite"], againSeconds: 5 }));
            if (entries.every(({ takesBack: id }) => id === null)) expect(workOf(stages, entries).next).not.toBeNull();
          } else if (one.do === "take back" && entries.length > 0) entries.push(takesBack(entries[one.which % entries.length]));
          const work = workOf(stages, entries);
          const gone = new Set(entries.map(({ takesBack: id }) => id));
          const standing = entries.filter(({ id, signs: isSigned }) => isSigned && !gone.has(id));
          expect(work.signed).toEqual(standing);
          for (const { state, by } of work.stages) expect(by === null).toBe(state === "open" || state === "begun");
          for (const { by } of work.stages) if (by !== null) expect(standing).toContain(by);
          const lastCut = standing.findLast(({ kind }) => kind === "cut" || kind === "open" || kind === "plug");
          expect(work.finish?.number ?? null).toBe(lastCut === undefined ? null : Number(lastCut.abrasive?.replace(/\D/g, "")));
          // Where all is done, the ball has the finish that was wished for last.
          if (work.next === null && stages.length > 0) {
            const wished = cuts(stages).at(-1)?.abrasive;
            expect(lastCut?.abrasive).toBe(wished);
            expect(work.finish?.polished).toBe(stages.some(({ kind }) => kind === "polish"));
          }
          const mixed = [...entries].sort(() => (shuffle.next().value % 2 === 0 ? 1 : -1));
          expect(workOf(stages, mixed)).toEqual(work);
        }
      }),
      { seed: 7, numRuns: 400 },
    );
  });
});
