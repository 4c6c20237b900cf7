import { describe, expect, it } from "vitest";
import type { Ball } from "#contract/records/ball";
import type { Bowler } from "#contract/records/bowler";
import type { Pattern } from "#contract/records/place";
import type { ShotNote } from "#contract/records/shotNote";
import { correctFileSchema, resolveCorrection } from "../../src/contract/correctFile.ts";
import { checkFile } from "../../src/contract/job/checkJob.ts";
import { shotsPerBowler, sorted, taughtFileOf } from "../../src/web/rooms/lanes/taughtFile.ts";

const NOTE = {
  bowlerId: "ann",
  ballId: "one",
  patternId: "oil",
  finish: "2000",
  boards: [
    { atFt: 15, board: 18 },
    { atFt: 60, board: 17.5 },
  ],
  breakpointBoard: 8,
  breakpointFt: 42,
  speedMph: 15,
  speedAt: "pins",
  turned: "late",
  arrived: "flush",
  leave: [10, 2, 8],
} as unknown as ShotNote;
const noted = (changed: Partial<ShotNote>): ShotNote => ({ ...NOTE, ...changed });
const BALL = { name: "Alder", cover: "solid", job: null, core: null, layout: null, surface: [], boxFinish: null } as unknown as Ball;
const ANN = { name: "Ann", hand: "right", deliveries: [], spread: null } as unknown as Bowler;
const OIL = { oil: { pattern: "medium-41" } } as unknown as Pattern;

describe("the file that shot notes stand for", () => {
  it("takes the notes that name all of bowler, ball, finish and this oil, and says what the others lack", () => {
    const notes = [
      noted({}),
      noted({ patternId: "other" }),
      noted({ patternId: null }),
      noted({ bowlerId: null }),
      noted({ ballId: null }),
      noted({ finish: null }),
      noted({ bowlerId: "ben" }),
      noted({ bowlerId: "ben" }),
    ];
    const { usable, lacks } = sorted(notes, "oil");
    expect(lacks).toEqual({ pattern: 2, bowler: 1, ball: 1, finish: 1 });
    expect(shotsPerBowler(usable)).toEqual([
      ["ben", 2],
      ["ann", 1],
    ]);
  });

  it("is a file that can be learned from: the board at 60 ft is the board at the pins, an empty leave a strike", () => {
    const balls = new Map([
      ["one", BALL],
      ["two", BALL],
    ]);
    const { usable } = sorted([noted({}), noted({ ballId: "two", leave: [] }), noted({ finish: "500", leave: null })], "oil");
    const file = checkFile(correctFileSchema, taughtFileOf(usable, new Map([["ann", ANN]]), balls, OIL));
    expect(file.balls.map(({ name, finish }) => [name, finish])).toEqual([
      ["Alder, 2000", { number: 2000, polished: false }],
      ["Alder, 2000 (2)", { number: 2000, polished: false }],
      ["Alder, 500", { number: 500, polished: false }],
    ]);
    expect(file.shots[0]).toMatchObject({ boards: [{ atFt: 15, board: 18 }], boardAtPins: 17.5, turned: "late" });
    const { question } = resolveCorrection(file);
    expect(question.situations.map(({ isLineKnown }) => isLineKnown)).toEqual([false, false, false]);
    expect(question.situations.map(({ shots }) => shots[0].leave === null)).toEqual([false, false, true]);
  });

  it("puts the shots of several bowlers into one file, each under a name of its own", () => {
    const balls = new Map([["one", BALL]]);
    const { usable } = sorted([noted({}), noted({ bowlerId: "ben" }), noted({ bowlerId: "gone" })], "oil");
    const bowlers = new Map([
      ["ann", ANN],
      ["ben", { ...ANN, id: "ben" }],
    ]);
    const file = checkFile(correctFileSchema, taughtFileOf(usable, bowlers, balls, OIL));
    expect(file.bowlers?.map(({ name }) => name)).toEqual([ANN.name, `${ANN.name} (2)`]);
    expect(file.shots.map(({ bowler }) => bowler)).toEqual([ANN.name, `${ANN.name} (2)`]);
    const { question, handNames } = resolveCorrection(file);
    expect(question.situations.map(({ hand }) => hand)).toEqual([0, 1]);
    expect(handNames).toHaveLength(2);
  });
});
