import type { OwnLimit } from "./limits.ts";
import type { BookId } from "./ruleBooks.ts";

export const MOMENTS = ["before", "practice", "scoring", "betweenGames", "betweenSquads"] as const;
export type Moment = (typeof MOMENTS)[number];

export const SURFACE_ACTS = ["abrasive", "liquid", "isopropyl", "dryTowel"] as const;
export type SurfaceAct = (typeof SURFACE_ACTS)[number];

/** `listed`: only cleaners of the governing body's list; `consent`: with an official's; `ask`: no rule was read, the organiser decides. */
export const SURFACE_ANSWERS = ["yes", "no", "listed", "consent", "ask"] as const;
export type SurfaceAnswer = (typeof SURFACE_ANSWERS)[number];

/** What a book says on one act at some moments, over some time. The later record of two that speak wins. */
export interface SurfaceRecord {
  readonly book: BookId;
  readonly act: SurfaceAct;
  readonly moments: readonly Moment[];
  readonly from: string | null;
  readonly until: string | null;
  readonly answer: SurfaceAnswer;
  readonly mark: "published" | "memory";
  readonly source: string;
}

const RULE = "USBC playing rule 18, altering the surface in competition";
const ONCE_SCORED = ["scoring", "betweenGames"] as const;
const USBC = { book: "usbc", from: null, until: null, mark: "published", source: RULE } as const;

export const SURFACE_RECORDS: readonly SurfaceRecord[] = [
  { ...USBC, act: "abrasive", moments: ["before", "practice"], answer: "yes" },
  { ...USBC, act: "abrasive", moments: ONCE_SCORED, answer: "no" },
  { ...USBC, act: "liquid", moments: ["before", "practice"], answer: "yes", mark: "memory" },
  { ...USBC, act: "liquid", moments: ONCE_SCORED, until: "2019-07-31", answer: "listed" },
  { ...USBC, act: "liquid", moments: ONCE_SCORED, from: "2019-08-01", answer: "consent" },
  { ...USBC, act: "isopropyl", moments: ["before", "practice"], answer: "yes", mark: "memory" },
  { ...USBC, act: "isopropyl", moments: ONCE_SCORED, until: "2019-07-31", answer: "listed" },
  { ...USBC, act: "isopropyl", moments: ONCE_SCORED, from: "2019-08-01", answer: "consent" },
  {
    ...USBC,
    act: "isopropyl",
    moments: ONCE_SCORED,
    from: "2020-08-01",
    until: "2021-07-31",
    answer: "yes",
    mark: "memory",
    source: `${RULE}: allowed in 2020–21; first and last day taken as the season's`,
  },
  { ...USBC, act: "dryTowel", moments: ["before", "practice", ...ONCE_SCORED], answer: "yes" },
];

/** An event's own rules, as the shop enters them; they go before the book's. */
export interface EventRules {
  readonly name: string;
  readonly limits: readonly OwnLimit[];
  /** Balls that may be used; null where there is no such list. */
  readonly approved: readonly string[] | null;
  readonly withdrawn: readonly string[];
  /** How many balls one bowler may enter; null where nobody said. */
  readonly ballsMost: number | null;
  readonly surface: readonly { readonly act: SurfaceAct; readonly moment: Moment; readonly answer: SurfaceAnswer }[];
}

/** One act at one moment. */
export interface SurfaceRule {
  readonly act: SurfaceAct;
  readonly moment: Moment;
  readonly answer: SurfaceAnswer;
  readonly source: string;
  readonly mark: SurfaceRecord["mark"] | "event" | null;
}

/** What may be done to a surface when: the event's word, else the book's on that day, else "ask". */
export function surfaceRules(book: BookId, on: string, event: EventRules | null): SurfaceRule[] {
  return MOMENTS.flatMap((moment) =>
    SURFACE_ACTS.map((act): SurfaceRule => {
      const own = event?.surface.find((rule) => rule.act === act && rule.moment === moment);
      if (event !== null && own !== undefined) return { act, moment, answer: own.answer, source: event.name, mark: "event" };
      const records = SURFACE_RECORDS.filter((record) => record.book === book && record.act === act && record.moments.includes(moment));
      const record = records.findLast(({ from, until }) => (from ?? "") <= on && (until === null || on <= until));
      if (record === undefined) return { act, moment, answer: "ask", source: "", mark: null };
      return { act, moment, answer: record.answer, source: record.source, mark: record.mark };
    }),
  );
}

/** What an event's lists say of a ball and an entry. */
export type Entry = "onList" | "notOnList" | "withdrawn" | "noList" | "noName" | "tooManyBalls" | "ballsWithin" | "ballsNotCounted";

/** What keeps a ball or an entry out. */
export const REFUSED: readonly Entry[] = ["withdrawn", "notOnList", "tooManyBalls"];

/** @param ballName as the lists would have it; case and outer blanks do not matter */
export function entryFindings(event: EventRules, ballName: string | null, ballsEntered: number | null): Entry[] {
  const name = ballName?.trim().toLowerCase() ?? null;
  const on = (list: readonly string[]) => list.some((one) => one.trim().toLowerCase() === name);
  const lists: Entry[] =
    name === null
      ? ["noName"]
      : [
          ...(on(event.withdrawn) ? (["withdrawn"] as const) : []),
          event.approved === null ? "noList" : on(event.approved) ? "onList" : "notOnList",
        ];
  if (event.ballsMost === null) return lists;
  if (ballsEntered === null) return [...lists, "ballsNotCounted"];
  return [...lists, ballsEntered > event.ballsMost ? "tooManyBalls" : "ballsWithin"];
}
