import type { Ball } from "#contract/records/ball";
import type { Bowler } from "#contract/records/bowler";
import type { Pattern } from "#contract/records/place";
import type { ShotNote } from "#contract/records/shotNote";
import type { Json } from "../../jobFile/jobDraft.ts";
import { bowlerOfJob, jobOfTicket } from "../../jobFile/jobOfTicket.ts";

/** A board noted from here on is the board at the pins. */
const PINS_FROM_FT = 59.5;
/** As many kinds of ball and finish as one file holds. */
const MOST_BALLS = 24;
/** Of so many bowlers, those with the most notes: with more the clouds hardly settle, and one waits long. */
export const MOST_BOWLERS = 3;

/** A note that tells whose shot it was, with which ball, in which finish. */
export interface UsableNote {
  readonly note: ShotNote;
  readonly bowlerId: string;
  readonly ballId: string;
  readonly finish: string;
}

/** What each note lacks first, or null where it can be used on this oil. */
export type Lack = "pattern" | "bowler" | "ball" | "finish";

/** The notes that can be used on a pattern, and how many lack what. */
export function sorted(notes: readonly ShotNote[], patternId: string) {
  const usable: UsableNote[] = [];
  const lacks: Record<Lack, number> = { pattern: 0, bowler: 0, ball: 0, finish: 0 };
  for (const note of notes) {
    const { bowlerId, ballId, finish } = note;
    if (note.patternId !== patternId) lacks.pattern++;
    else if (bowlerId === null) lacks.bowler++;
    else if (ballId === null) lacks.ball++;
    else if (finish === null) lacks.finish++;
    else usable.push({ note, bowlerId, ballId, finish });
  }
  return { usable, lacks };
}

/** How many usable shots each bowler has, most first. */
export function shotsPerBowler(usable: readonly UsableNote[]): readonly (readonly [bowlerId: string, shots: number])[] {
  const shots = new Map<string, number>();
  for (const { bowlerId } of usable) shots.set(bowlerId, (shots.get(bowlerId) ?? 0) + 1);
  return [...shots].toSorted(([, a], [, b]) => b - a);
}

/** The file that the notes on one oil stand for. Lines were not noted: each is the likeliest, known only roughly. */
export function taughtFileOf(
  notes: readonly UsableNote[],
  bowlers: ReadonlyMap<string, Bowler>,
  balls: ReadonlyMap<string, Ball>,
  { oil }: Pattern,
): Json {
  const there = notes.filter(({ ballId, bowlerId }) => balls.has(ballId) && bowlers.has(bowlerId));
  const kinds = [...new Map(there.map((one) => [kindOf(one), one])).values()].slice(0, MOST_BALLS);
  const names = new Map(kinds.map((one, i) => [kindOf(one), nameOf(one, i, kinds, balls)]));
  const whose = [...bowlers].map(([id, bowler], i, all) => {
    const before = all.slice(0, i).filter(([, other]) => other.name === bowler.name).length;
    return [id, { ...bowlerOfJob(bowler), name: before === 0 ? bowler.name : `${bowler.name} (${before + 1})` }] as const;
  });
  const handNames = new Map(whose.map(([id, { name }]) => [id, name]));
  return {
    gritwright: 1,
    seed: 1,
    bowlers: whose.map(([, bowler]) => bowler),
    lane: oil as Json,
    balls: kinds.map((one) => {
      const { ball } = jobOfTicket(balls.get(one.ballId) as Ball, null);
      return { ...(ball as { readonly [key: string]: Json }), name: names.get(kindOf(one)) ?? "", finish: one.finish };
    }),
    shots: there.flatMap((one) => {
      const name = names.get(kindOf(one));
      const bowler = handNames.get(one.bowlerId);
      return name === undefined || bowler === undefined ? [] : [{ ball: name, bowler, ...seenOf(one.note) }];
    }),
  };
}

function kindOf({ ballId, finish }: UsableNote): string {
  return `${ballId} ${finish}`;
}

/** Two balls of one name in one finish are told apart by their number. */
function nameOf(one: UsableNote, at: number, kinds: readonly UsableNote[], balls: ReadonlyMap<string, Ball>): string {
  const plain = ({ ballId, finish }: UsableNote) => `${balls.get(ballId)?.name}, ${finish}`;
  const before = kinds.slice(0, at).filter((other) => plain(other) === plain(one)).length;
  return before === 0 ? plain(one) : `${plain(one)} (${before + 1})`;
}

function seenOf({ boards, breakpointBoard, breakpointFt, speedMph, speedAt, turned, arrived, leave }: ShotNote) {
  const atPins = boards.find(({ atFt }) => atFt >= PINS_FROM_FT);
  const seen: Record<string, Json | null> = {
    boards: boards.filter(({ atFt }) => atFt < PINS_FROM_FT),
    breakpointBoard,
    breakpointFt,
    boardAtPins: atPins?.board ?? null,
    speedMph,
    speedAt: speedMph === null ? null : speedAt,
    turned,
    arrived,
    leave: leave === null ? null : leave.length === 0 ? "X" : leave.toSorted((a, b) => a - b).join("-"),
  };
  return Object.fromEntries(Object.entries(seen).filter(([, value]) => value !== null)) as { readonly [key: string]: Json };
}
