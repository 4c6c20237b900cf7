import type { Ball } from "#contract/records/ball";
import { knownFinish } from "#contract/records/benchBall";
import type { LaneSideWritten } from "#contract/records/laneSide";
import type { Price } from "#contract/records/money";
import type { StockItem } from "#contract/records/stock";
import type { CoverId } from "#engine/ball/ball";
import { type CautionId, cautionsFor } from "#engine/rules/cautions";
import type { AbrasiveId } from "#engine/surface/abrasives";
import { STAGE_NAMES } from "#words/en/bench";
import { stockUse } from "../../benchWork/stockUse.ts";
import { FREE } from "../../shop/pricing.ts";

export interface LaneSideBall {
  /** Null for a ball that was not found. */
  readonly id: string | null;
  readonly name: string;
  readonly serial: string;
  readonly cover: CoverId | null;
  readonly finish: string | null;
  /** Whether a crack or a hollow sound was found: then nothing is done. */
  readonly isStopped: boolean;
}

/** What is being done beside the lane. */
export interface LaneSideDraft {
  readonly key: string;
  readonly ball: LaneSideBall | null;
  readonly number: number | null;
  readonly way: LaneSideWritten["way"];
  readonly whereTo: LaneSideWritten["whereTo"];
  /** As `PricingDraft` has it. */
  readonly priceId: string;
  /** Not there in what was written before there was such a reason. */
  readonly freeWhy?: string;
}

export function emptyLaneSide(key: string): LaneSideDraft {
  return { key, ball: null, number: null, way: "hand, dry", whereTo: "handed back", priceId: "" };
}

export function fromRecords(ball: Ball): LaneSideBall {
  const { id, name, serial, cover, state, found } = ball;
  const isStopped = state === "stopped" || found.some(({ what }) => what === "crack" || what === "hollow sound");
  return { id, name, serial: serial ?? "", cover, finish: knownFinish(ball), isStopped };
}

function padOf(number: number): AbrasiveId {
  return `pad-${number}` as AbrasiveId;
}

/** A hand pad has no spinner, no heat, no polish and no cleaner; dust only where it is dry. */
const BY_HAND: readonly CautionId[] = ["lookFirst", "floor", "wholeSurface", "veryDull", "ruleBook"];

/** Which cautions hold for this work by hand; those of a cover that nobody knows are those of any. */
export function cautionsByHand({ ball, number, way }: LaneSideDraft): readonly CautionId[] {
  const work = { cover: ball?.cover ?? null, number: number ?? 0, polished: false, extracts: false, readingMicroinch: null };
  const hold = cautionsFor(work).filter((id) => BY_HAND.includes(id));
  return way === "hand, dry" ? [...hold, "dust"] : hold;
}

interface Told {
  readonly prices: readonly Price[];
  readonly stock: readonly StockItem[];
  readonly doneAt: string;
}

/** What the shop is told when it is signed. */
export function toTell(draft: LaneSideDraft, ball: LaneSideBall, number: number, { prices, stock, doneAt }: Told): LaneSideWritten {
  const price = prices.find(({ id }) => id === draft.priceId);
  const serial = ball.serial.trim();
  return {
    ballId: ball.id,
    ballName: ball.id === null ? ball.name.trim() : null,
    serial: ball.id !== null || serial === "" ? null : serial,
    finishBefore: ball.finish,
    finish: `${number}`,
    what: STAGE_NAMES.cut,
    abrasive: padOf(number),
    way: draft.way,
    doneAt,
    used: stockUse(stock, padOf(number)),
    freeWhy: draft.priceId === FREE ? (draft.freeWhy ?? "").trim() : null,
    charge:
      price === undefined
        ? null
        : { what: `${price.name}: ${ball.name}`, eachCents: price.eachCents, taxMillipercent: price.taxMillipercent },
    whereTo: draft.whereTo,
  };
}
