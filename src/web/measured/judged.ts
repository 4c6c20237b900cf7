import type { SideId } from "#engine/surface/padWork/sides";
import { type Bench, type Comparison, READ_ORDER, type SidesVerdict, verdictOf } from "./entries.ts";
import type { Read } from "./readings.ts";

export type WayOff = "tooDull" | "tooSmooth";

export interface OffSide {
  readonly side: SideId;
  /** By eye a side may also be what the reference ball is, where most are not. */
  readonly way: WayOff | "likeReference";
  /** More work of the last pad that would bring it there, s; null where an eye has looked, which knows no figure. */
  readonly moreSeconds: number | null;
}

/** What the sides that were read say together. */
export interface Judged {
  /** `more`: fewer than two sides; `cannotTell`: none is off, but one reading a side is too few. */
  readonly kind: "more" | "match" | "off" | "cannotTell";
  readonly read: readonly SideId[];
  /** Those to be named, the furthest off first. */
  readonly off: readonly OffSide[];
  /** Which way all the others are off, though they are alike; null where they are as they should be. */
  readonly rest: WayOff | null;
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
  if (found === null) return { kind: "more", read, off: [], rest: null, isSure: true, wanted };
  const { off, rest } = setApart(offSides(found), read.length, offSides(verdictOf(sides, { ...bench, wanted: "" })));
  const isSure = found.verdict.verdict !== "cannotTell";
  return { kind: off.length > 0 ? "off" : isSure ? "match" : "cannotTell", read, off, rest, isSure, wanted };
}

/** Where every side misses the finish, those that also stand apart from the middle one are named, and the rest is spoken of as one. */
function setApart(off: readonly OffSide[], count: number, fromMiddle: readonly OffSide[]): Pick<Judged, "off" | "rest"> {
  if (off.length < count) return { off, rest: null };
  const odd = off.filter(({ side, way }) => fromMiddle.some((one) => one.side === side && one.way === way));
  const others = off.filter((one) => !odd.includes(one));
  const ways = new Set(others.map(({ way }) => way));
  const [way] = ways;
  if (odd.length === 0 || odd.length >= others.length || ways.size > 1 || way === "likeReference") return { off, rest: null };
  return { off: odd, rest: way };
}

function offSides(found: SidesVerdict | null): OffSide[] {
  if (found === null) return [];
  const { verdict, targetUm } = found;
  const away = ({ mean }: { readonly mean: number }) => Math.abs(Math.log(mean / (targetUm ?? verdict.mean)));
  return verdict.sides
    .toSorted((a, b) => away(b) - away(a))
    .flatMap(({ side, stands, moreSeconds }) => (stands === "met" ? [] : [{ side: side as SideId, way: stands, moreSeconds }]));
}

const WAYS = { duller: "tooDull", "the same": "likeReference", smoother: "tooSmooth" } as const;

/** By eye. Sides are named by how they were seen; where more than half look the same way, those that do not. Only a reference ball that has the finish that was to be given says what is wrong. */
export function judgedBySheen(of: (side: SideId) => Read | null, wanted: string | null): Judged {
  const looks = READ_ORDER.flatMap((side): { side: SideId; look: Comparison }[] => {
    const look = of(side)?.comparison ?? null;
    return look === null ? [] : [{ side, look }];
  });
  const read = looks.map(({ side }) => side);
  if (looks.length < LEAST_SIDES) return { kind: "more", read, off: [], rest: null, isSure: true, wanted };
  const most = mostOf(looks.map(({ look }) => look));
  const areAlike = looks.every(({ look }) => look === most);
  // All alike agree with each other, whatever the reference is; but not with a finish that they miss.
  const usual = wanted !== null && (areAlike || looks.some(({ look }) => look === "the same")) ? "the same" : most;
  const off = looks.filter(({ look }) => look !== usual).map(({ side, look }): OffSide => ({ side, way: WAYS[look], moreSeconds: null }));
  const rest = off.length === 0 || usual === "the same" ? null : WAYS[usual];
  return { kind: off.length > 0 ? "off" : "match", read, off, rest, isSure: true, wanted };
}

/** How more than half of them look; what the reference ball is where none do. */
function mostOf(looks: readonly Comparison[]): Comparison {
  return looks.find((look) => 2 * looks.filter((one) => one === look).length > looks.length) ?? "the same";
}
