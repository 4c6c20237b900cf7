import type { SideId } from "#engine/surface/padWork/sides";
import { type Bench, type Comparison, READ_ORDER, type SidesVerdict, verdictOf } from "./entries.ts";
import type { Read } from "./readings.ts";

export interface OffSide {
  readonly side: SideId;
  readonly way: "tooDull" | "tooSmooth";
  /** More work of the last pad that would bring it there, s; null where an eye has looked, which knows no figure. */
  readonly moreSeconds: number | null;
}

/** What the sides that were read say together. */
export interface Judged {
  /** `more`: fewer than two sides; `cannotTell`: none is off, but one reading a side is too few. */
  readonly kind: "more" | "match" | "off" | "cannotTell";
  readonly read: readonly SideId[];
  /** The furthest off first. */
  readonly off: readonly OffSide[];
  readonly isSure: boolean;
  /** What they are held against; null: each other. */
  readonly wanted: string | null;
}

const LEAST_SIDES = 2;

export function judgedByTester(of: (side: SideId) => Read | null, bench: Bench): Judged {
  const sides = READ_ORDER.flatMap((side) => {
    const um = of(side)?.um ?? [];
    return um.length === 0 ? [] : [{ side, um }];
  });
  const read = sides.map(({ side }) => side);
  const wanted = bench.wanted === "" ? null : bench.wanted;
  const found = verdictOf(sides, bench);
  if (found === null) return { kind: "more", read, off: [], isSure: true, wanted };
  const off = offSides(found);
  const isSure = found.verdict.verdict !== "cannotTell";
  return { kind: off.length > 0 ? "off" : isSure ? "match" : "cannotTell", read, off, isSure, wanted };
}

function offSides({ verdict, targetUm }: SidesVerdict): OffSide[] {
  const away = ({ mean }: { readonly mean: number }) => Math.abs(Math.log(mean / (targetUm ?? verdict.mean)));
  return verdict.sides
    .toSorted((a, b) => away(b) - away(a))
    .flatMap(({ side, stands, moreSeconds }) => (stands === "met" ? [] : [{ side: side as SideId, way: stands, moreSeconds }]));
}

const WAYS = { duller: "tooDull", smoother: "tooSmooth" } as const;

/** By eye. Where the reference ball has the finish that was to be given they are held against it, else against the look that most of them have. */
export function judgedBySheen(of: (side: SideId) => Read | null, wanted: string | null): Judged {
  const looks = READ_ORDER.flatMap((side): { side: SideId; look: Comparison }[] => {
    const look = of(side)?.comparison ?? null;
    return look === null ? [] : [{ side, look }];
  });
  const read = looks.map(({ side }) => side);
  if (looks.length < LEAST_SIDES) return { kind: "more", read, off: [], isSure: true, wanted };
  const usual = wanted === null ? commonest(looks.map(({ look }) => look)) : "the same";
  const rank = (look: Comparison) => ["smoother", "the same", "duller"].indexOf(look);
  const off = looks
    .filter(({ look }) => look !== usual)
    .map(({ side, look }): OffSide => {
      const way = look === "the same" ? (rank(look) > rank(usual) ? "tooDull" : "tooSmooth") : WAYS[look];
      return { side, way, moreSeconds: null };
    });
  return { kind: off.length > 0 ? "off" : "match", read, off, isSure: true, wanted };
}

function commonest(looks: readonly Comparison[]): Comparison {
  const count = (look: Comparison) => looks.filter((one) => one === look).length;
  return looks.reduce((most, look) => (count(look) > count(most) ? look : most));
}
