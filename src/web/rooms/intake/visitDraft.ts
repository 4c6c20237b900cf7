import type { Ball } from "#contract/records/ball";
import type { Bowler } from "#contract/records/bowler";
import type { CoverId } from "#engine/ball/ball";
import type { SymptomId } from "#words/en/rooms/intake";
import { lacksReason, type PricingDraft } from "../../shop/pricing.ts";
import { newKey } from "../../shop/shopClient.ts";

export type FindId = "crack" | "hollow sound" | "plug" | "flat spot" | "track wear";
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
}

/** A visit that is being taken in. Its key goes with every write, so that pressing twice keeps nothing twice. */
export interface VisitDraft {
  readonly key: string;
  readonly bowler: { readonly id: string | null; readonly name: string; readonly phone: string } | null;
  readonly balls: readonly BallDraft[];
  /** Null: as it is reckoned. */
  readonly promisedFor: string | null;
  /** Why another time is promised. */
  readonly promiseWhy?: string;
  /** What it was first sent as: sent again after a fault it is the same. Not there before it was sent. */
  readonly sent?: { readonly at: string; readonly promisedFor: string };
  /** Ids of its parts that the shop has already, by the names of the writes. */
  readonly kept?: Readonly<Record<string, string>>;
}

export function emptyVisit(): VisitDraft {
  return { key: newKey(), bowler: null, balls: [], promisedFor: null };
}

export function newBall(): BallDraft {
  return {
    key: newKey(),
    ballId: null,
    name: "",
    serial: "",
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

export function knownBall({ id, name, serial, cover }: Ball): BallDraft {
  return { ...newBall(), ballId: id, name, serial: serial ?? "", cover: cover ?? "" };
}

export function knownBowler({ id, name, phone }: Bowler): NonNullable<VisitDraft["bowler"]> {
  return { id, name, phone: phone ?? "" };
}

/** What is still missing, or null: a ball, a name for whoever and whatever is new, and a reason for what is free. */
export function missing({ bowler, balls, promisedFor, promiseWhy = "" }: VisitDraft): "ball" | "name" | "why" | "promise" | null {
  if (balls.length === 0 || balls.some(({ name }) => name.trim() === "")) return "ball";
  if (bowler !== null && bowler.name.trim() === "") return "name";
  if (balls.some((ball) => lacksReason(pricingDraft(ball)))) return "why";
  return promisedFor !== null && promiseWhy.trim() === "" ? "promise" : null;
}

export function pricingDraft({ priceId, freeWhy = "" }: BallDraft): PricingDraft {
  return { priceId, freeWhy };
}

/** A crack or a hollow sound: nothing is done to such a ball. */
export function mustStop({ found }: BallDraft): boolean {
  return found.includes("crack") || found.includes("hollow sound");
}
