import type { Ball } from "#contract/records/ball";
import type { Bowler } from "#contract/records/bowler";
import type { Ticket } from "#contract/records/ticket";
import type { CoverId } from "#engine/ball/ball";
import type { Arrow } from "#engine/delivery/arrows";
import type { HookWord, SpeedWord } from "#engine/delivery/words";
import type { GamesWord } from "#engine/surface/gamesWords";
import type { INTAKE, SymptomId } from "#words/en/rooms/intake";
import { lacksAmount, lacksReason, type PricingDraft } from "../../shop/pricing.ts";
import { newKey } from "../../shop/shopClient.ts";

export type FindId = keyof typeof INTAKE.findings;
export type WhatChanged = "all balls" | "only this one" | "not known";

/** One ball of the visit as it stands in the form. */
export interface BallDraft {
  /** Tells it from the others while it is being written. */
  readonly key: string;
  /** Null for a ball that the shop has not seen before. */
  readonly ballId: string | null;
  readonly name: string;
  readonly serial: string;
  readonly cover: CoverId | "";
  readonly wanted: string;
  readonly sameAsLast: boolean;
  readonly symptoms: readonly SymptomId[];
  readonly whatChanged: WhatChanged | "";
  readonly found: readonly FindId[];
  readonly words: string;
  /** As `PricingDraft` has it. */
  readonly priceId: string;
  /** Not there in what was written before there was such a reason. */
  readonly freeWhy?: string;
  /** A price that no list has, as it was typed; not there where none was. */
  readonly typed?: string;
  /** Whether a fingernail catches on its scratches; not there where nobody looked. */
  readonly scratches?: "deep" | "none" | "";
  /** Why it gets a second ticket while another is open; not there where nobody was asked. */
  readonly besidesWhy?: string;
  /** Games since the last work: counted, in a word, or said to be not known; not there where nobody was asked. */
  readonly games?: number | GamesWord | "not known" | null;
}

/** What the bowler said of the delivery, as far as somebody tapped it. */
export interface SaidOfDelivery {
  readonly speed?: SpeedWord | "";
  readonly hook?: HookWord | "";
  readonly plays?: Arrow | "";
}

export type PlayedOn = NonNullable<Ticket["playedOn"]>;
export const NOWHERE: PlayedOn = { houseId: null, patternId: null, pattern: null, night: null };

/** A visit that is being taken in. Its key goes with every write, so that pressing twice keeps nothing twice. */
export interface VisitDraft {
  readonly key: string;
  readonly bowler: { readonly id: string | null; readonly name: string; readonly phone: string } | null;
  readonly balls: readonly BallDraft[];
  /** Key of the ball that is being asked about; not there: the last one. */
  readonly current?: string;
  /** Null: as it is reckoned. */
  readonly promisedFor: string | null;
  /** Why another time is promised. */
  readonly promiseWhy?: string;
  readonly told?: SaidOfDelivery;
  /** What the balls are wanted for. */
  readonly playedOn?: PlayedOn;
  /** What it was first sent as: sent again after a fault it is the same. Not there before it was sent. */
  readonly sent?: { readonly at: string; readonly promisedFor: string };
  /** Ids of its parts that the shop has already, by the names of the writes. */
  readonly kept?: Readonly<Record<string, string>>;
}

export function emptyVisit(): VisitDraft {
  return { key: newKey(), bowler: null, balls: [], promisedFor: null };
}

function newBall(serial: string): BallDraft {
  return {
    key: newKey(),
    ballId: null,
    name: "",
    serial,
    cover: "",
    wanted: "",
    sameAsLast: false,
    symptoms: [],
    whatChanged: "",
    found: [],
    words: "",
    priceId: "",
    freeWhy: "",
  };
}

export function knownBowler({ id, name, phone }: Bowler): NonNullable<VisitDraft["bowler"]> {
  return { id, name, phone: phone ?? "" };
}

/** The ball that is being asked about; null before there is one. */
export function currentBall({ balls, current }: VisitDraft): BallDraft | null {
  return balls.find(({ key }) => key === current) ?? balls.at(-1) ?? null;
}

/** A ball of the shop comes along, or is looked at again where it is here already. */
export function withKnownBall(draft: VisitDraft, { id, name, serial, cover }: Ball): VisitDraft {
  const here = draft.balls.find(({ ballId }) => ballId === id);
  if (here !== undefined) return { ...draft, current: here.key };
  return withBall(draft, { ...newBall(serial ?? ""), ballId: id, name, cover: cover ?? "" });
}

/** A ball that the shop has not seen yet. */
export function withNewBall(draft: VisitDraft, serial = ""): VisitDraft {
  return withBall(draft, newBall(serial));
}

function withBall(draft: VisitDraft, ball: BallDraft): VisitDraft {
  return { ...draft, balls: [...draft.balls, ball], current: ball.key };
}

export function withoutBall(draft: VisitDraft, key: string): VisitDraft {
  const { current: _, ...rest } = draft;
  return { ...rest, balls: draft.balls.filter((ball) => ball.key !== key) };
}

/** The form with one ball changed. */
export function changedBall(draft: VisitDraft, key: string, change: Partial<BallDraft>): VisitDraft {
  return { ...draft, balls: draft.balls.map((ball) => (ball.key === key ? { ...ball, ...change } : ball)) };
}

/** Somebody new: what was typed is a name, a telephone number where it is long and all figures, else the number of the ball. */
export function withNewBowler(draft: VisitDraft, typed: string): VisitDraft {
  const words = typed.trim();
  const figures = words.replace(/[\s()+./-]/g, "");
  const isNumber = /\d/.test(words) && (/^\d+$/.test(figures) || !/\s/.test(words));
  const isPhone = isNumber && /^\d{7,}$/.test(figures);
  const bowler = { id: null, name: isNumber ? "" : words, phone: isPhone ? words : "" };
  return withNewBall({ ...draft, bowler }, isNumber && !isPhone ? words : "");
}

/**
 * What is still missing, or null: a ball, a name for whoever and whatever is new, and a reason for what is free or has a ticket already.
 *
 * @param here keys of balls that are in the shop by another ticket
 */
export function missing(
  { bowler, balls, promisedFor, promiseWhy = "" }: VisitDraft,
  here: ReadonlySet<string>,
): "ball" | "name" | "here" | "why" | "amount" | "promise" | null {
  if (balls.length === 0 || balls.some(({ name }) => name.trim() === "")) return "ball";
  if (bowler !== null && bowler.name.trim() === "") return "name";
  if (balls.some(({ key, besidesWhy = "" }) => here.has(key) && besidesWhy.trim() === "")) return "here";
  if (balls.some((ball) => lacksReason(pricingDraft(ball)))) return "why";
  if (balls.some((ball) => lacksAmount(pricingDraft(ball)))) return "amount";
  return promisedFor !== null && promiseWhy.trim() === "" ? "promise" : null;
}

export function pricingDraft({ priceId, freeWhy = "", typed = "" }: BallDraft): PricingDraft {
  return { priceId, freeWhy, typed };
}

/** A crack or a hollow sound: nothing is done to such a ball. */
export function mustStop({ found }: Pick<BallDraft, "found">): boolean {
  return found.includes("crack") || found.includes("hollow sound");
}

/** What the bench is told of its scratches. */
export function scratchesOf({ symptoms, scratches = "" }: BallDraft): {
  readonly symptoms: SymptomId[];
  readonly scratches: "deep" | "none" | null;
} {
  return { symptoms: [...symptoms], scratches: scratches === "" ? null : scratches };
}
