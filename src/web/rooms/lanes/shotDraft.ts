import { type ShotNoteWritten, shotNoteWritten } from "#contract/records/shotNote";
import { figureOrNull, textOrNull, wordOrNull } from "../../shop/typedValues.ts";

export const ARROWS_FT = 15;
export const PINS_FT = 60;

/** A shot as it is being noted. Figures stand as they were typed. */
export interface ShotDraft {
  readonly key: string;
  readonly ball: { readonly id: string; readonly name: string; readonly bowlerId: string | null } | null;
  readonly finish: string;
  readonly game: string;
  readonly turned: string;
  readonly arrived: string;
  readonly pins: readonly number[];
  readonly arrows: string;
  readonly breakpointBoard: string;
  readonly breakpointFt: string;
  readonly atPins: string;
  readonly speed: string;
  readonly speedAt: string;
  readonly note: string;
}

const UNSEEN = {
  turned: "",
  arrived: "",
  pins: [],
  arrows: "",
  breakpointBoard: "",
  breakpointFt: "",
  atPins: "",
  speed: "",
  note: "",
} as const;

export function emptyShot(key: string): ShotDraft {
  return { ...UNSEEN, key, ball: null, finish: "", game: "", speedAt: "launch" };
}

/** The next shot: of the same ball, finish and game. */
export function nextShot(draft: ShotDraft, key: string): ShotDraft {
  return { ...draft, ...UNSEEN, key };
}

/** What is left standing: the pins that are tapped, none after a strike, nothing where nobody saw. */
export type Left = "strike" | "unseen" | readonly number[];

export interface NotedWhere {
  readonly houseId: string;
  readonly laneId: string;
  readonly patternId: string | null;
  readonly at: string;
  /** Figures of the shop's unit as mph. */
  readonly mph: (figure: number) => number;
}

export function noteOf(draft: ShotDraft, left: Left, { mph, ...where }: NotedWhere): ShotNoteWritten {
  const speed = figureOrNull(draft.speed);
  const board = (typed: string, atFt: number) => {
    const figure = figureOrNull(typed);
    return figure === null ? [] : [{ atFt, board: figure }];
  };
  return {
    ...where,
    ballId: draft.ball?.id ?? null,
    bowlerId: draft.ball?.bowlerId ?? null,
    finish: textOrNull(draft.finish),
    game: figureOrNull(draft.game),
    turned: wordOrNull(draft.turned),
    arrived: wordOrNull(draft.arrived),
    boards: [...board(draft.arrows, ARROWS_FT), ...board(draft.atPins, PINS_FT)],
    breakpointBoard: figureOrNull(draft.breakpointBoard),
    breakpointFt: figureOrNull(draft.breakpointFt),
    speedMph: typeof speed === "number" ? mph(speed) : speed,
    speedAt: speed === null ? null : wordOrNull(draft.speedAt),
    leave: left === "unseen" ? null : left === "strike" ? [] : [...left].sort((a, b) => a - b),
    note: draft.note,
  };
}

/** Fields of the form by the place that the schema names. */
const FIELD_OF: Readonly<Record<string, keyof ShotDraft>> = {
  game: "game",
  breakpointBoard: "breakpointBoard",
  breakpointFt: "breakpointFt",
  speedMph: "speed",
  note: "note",
};

/** What is wrong with what was typed, by field of the form. */
export function problemsOf(note: ShotNoteWritten): Readonly<Partial<Record<keyof ShotDraft, string>>> {
  const read = shotNoteWritten.safeParse(note);
  if (read.success) return {};
  return Object.fromEntries(
    read.error.issues.map(({ path, message }) => {
      if (path[0] !== "boards") return [FIELD_OF[String(path[0])] ?? "note", message];
      return [note.boards?.[Number(path[1])]?.atFt === PINS_FT ? "atPins" : "arrows", message];
    }),
  );
}
