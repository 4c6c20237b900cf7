import type { Ball } from "#contract/records/ball";
import { benchBallOf } from "#contract/records/benchBall";
import type { Reading } from "#contract/records/reading";
import type { ReferenceBall } from "#contract/records/stock";
import type { Ticket } from "#contract/records/ticket";
import type { SignedEntry } from "#contract/records/ticketWork";
import type { Work } from "#engine/signed/work";
import type { SideId } from "#engine/surface/padWork/sides";
import { type Judged, judgedBySheen, judgedByTester } from "../../measured/judged.ts";
import { type Asked, type Read, readAt, readingsNow } from "../../measured/readings.ts";
import { targetFinish } from "../../measured/targetFinish.ts";

/** What is known of a ticket's ball and was read on it. */
export interface ReadOf {
  readonly ticket: Ticket;
  readonly ball: Ball;
  /** Those that stand. */
  readonly readings: readonly Reading[];
  readonly work: Work<SignedEntry>;
  readonly again: Asked["again"];
}

export interface Agreed {
  readonly when: "before" | "after";
  readonly how: "tester" | "reference ball";
  readonly judged: Judged;
  of(side: SideId): Read | null;
}

/** How a surface is read; nothing else that is measured goes with the surface. */
const WAYS: readonly Agreed["how"][] = ["tester", "reference ball"];

/** Readings of the surface as it was before the work and as it is now: those that the sides are judged by. */
export function readingsOfNow({ ticket, readings, work, again }: ReadOf): readonly Reading[] {
  const asked = { when: "after", ticketId: ticket.id, from: "", work, again } as const;
  const now = new Set(WAYS.flatMap((how) => readingsNow(readings, { ...asked, how })).map(({ id }) => id));
  return readings.filter(({ id, when, how }) => when !== "after" || !WAYS.some((way) => way === how) || now.has(id));
}

/** Whether sides agree by a tester; null where fewer than two were read. Before the work there is no finish to hold them to. */
export function agreedByTester(when: Agreed["when"], { ticket, ball, readings, work, again }: ReadOf): Agreed | null {
  const now = readingsNow(readings, { when, ticketId: ticket.id, from: "", how: "tester", work, again });
  const of = (side: SideId) => readAt(now, side);
  const { cover, diameterIn } = benchBallOf(ball);
  const lastAbrasive = work.surface.findLast(({ kind }) => kind !== "polish")?.abrasive ?? null;
  const judged = judgedByTester(of, { cover, diameterIn, wanted: targetFinish(when, ticket, work) ?? "", lastAbrasive });
  return judged.kind === "more" ? null : { when, how: "tester", judged, of };
}

/** The same by eye. The finish is spoken of only where every look was beside a reference ball that has it. */
export function agreedBySheen(
  when: Agreed["when"],
  { ticket, readings, work, again }: ReadOf,
  references: readonly ReferenceBall[],
): Agreed | null {
  const now = readingsNow(readings, { when, ticketId: ticket.id, from: "", how: "reference ball", work, again });
  const of = (side: SideId) => readAt(now, side);
  const beside = new Set(readings.filter(({ id }) => now.some((one) => one.id === id)).map(({ referenceBallId }) => referenceBallId));
  const wanted = targetFinish(when, ticket, work);
  const isBeside = [...beside].every((id) => references.find((one) => one.id === id)?.finish === wanted);
  const judged = judgedBySheen(of, isBeside ? wanted : null);
  return judged.kind === "more" ? null : { when, how: "reference ball", judged, of };
}
