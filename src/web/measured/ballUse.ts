import type { Ball } from "#contract/records/ball";
import { benchBallOf, lastWork } from "#contract/records/benchBall";
import type { Reading } from "#contract/records/reading";
import type { Ticket } from "#contract/records/ticket";
import { assume } from "#engine/assumptions";
import { type MeasuredBall, NOTHING_MEASURED } from "#engine/rules/measuredBall";
import { numberOf } from "#engine/surface/abrasives";
import { freshRoughness } from "#engine/surface/benchBall";
import type { Use } from "#engine/surface/care";
import { effectiveRaOfReadingUm } from "#engine/surface/finish";
import { RESURFACED_FROM } from "#engine/surface/pads";
import { OFF_TRACK, TRACK } from "#engine/surface/readings/places";
import { MICROINCH, MICROMETRE } from "#engine/units";

/** A ball's use as its records tell it; where nobody wrote down when something was done, it is counted from the first game. */
export interface BallUse {
  readonly use: Use;
  /** When oil was last drawn out here, and when the ball was last sanded from the ground up; null where the records do not say. */
  readonly extractedAt: string | null;
  readonly resurfacedAt: string | null;
}

export function ballUse(ball: Ball, tickets: readonly Ticket[], readings: readonly Reading[]): BallUse {
  const bench = benchBallOf(ball);
  const a = assume();
  const extractedAt = lastDone(tickets, ({ kind }) => kind === "extract");
  const resurfacedAt = lastDone(
    tickets,
    ({ kind, abrasive }) => kind === "cut" && (numberOf(abrasive) ?? Number.POSITIVE_INFINITY) <= RESURFACED_FROM,
  );
  return {
    extractedAt,
    resurfacedAt,
    use: {
      cover: bench.cover,
      startUm: freshRoughness(bench, a),
      gamesSince: bench.gamesSince,
      gamesSinceExtraction: gamesAfter(ball, extractedAt ?? ""),
      gamesSinceResurfacing: gamesAfter(ball, resurfacedAt ?? ""),
      abrasiveness: 1,
      readings: sinceWork(ball, readings)
        .filter(({ place }) => place === TRACK || place === OFF_TRACK)
        .flatMap(({ at, raUm, place }) =>
          raUm === null
            ? []
            : [
                {
                  games: gamesBetween(ball, at),
                  raUm: effective(raUm),
                  where: place === TRACK ? ("track" as const) : ("offTrack" as const),
                },
              ],
        ),
    },
  };
}

/** A tester's reading as the laws take it, µm effective. */
function effective(um: number): number {
  return effectiveRaOfReadingUm((um * MICROMETRE) / MICROINCH, assume());
}

/** When work of that kind was last finished. */
function lastDone(tickets: readonly Ticket[], isIt: (stage: Ticket["stages"][number]) => boolean): string | null {
  const times = tickets.flatMap(({ readyAt, stages }) => (readyAt !== null && stages.some(isIt) ? [readyAt] : []));
  return times.toSorted().at(-1) ?? null;
}

/** Readings of the surface that is on the ball now. What was read after the work belongs to it, though it was read before the ticket was ready. */
function sinceWork(ball: Ball, readings: readonly Reading[]): readonly Reading[] {
  const work = lastWork(ball);
  if (work === null) return readings;
  return readings.filter(({ at, when, ticketId }) => at > work.at || (when === "after" && ticketId !== null && ticketId === work.ticketId));
}

function gamesAfter({ games }: Ball, since: string): number {
  return games.filter(({ at }) => at > since).reduce((sum, entry) => sum + entry.games, 0);
}

/** Games between the last work and a moment. */
function gamesBetween(ball: Ball, until: string): number {
  const since = lastWork(ball)?.at ?? "";
  return ball.games.filter(({ at }) => at > since && at <= until).reduce((sum, entry) => sum + entry.games, 0);
}

/** What was measured on the ball as it is now: the newest of each, every roughness reading of today's surface. RG and differential are the maker's, as written down. */
export function measuredBall(ball: Ball, readings: readonly Reading[]): MeasuredBall {
  const newestFirst = readings.toSorted((a, b) => b.at.localeCompare(a.at));
  const newest = (of: (reading: Reading) => number | null) => newestFirst.map(of).find((value) => value !== null) ?? null;
  const { core } = ball;
  return {
    ...NOTHING_MEASURED,
    massLb: newest(({ massLb }) => massLb) ?? core?.massLb ?? null,
    diametersIn: diametersOf(newestFirst),
    rgIn: core?.rgIn ?? null,
    differentialIn: core?.differentialIn ?? null,
    intermediateIn: core?.intermediateDifferentialIn ?? null,
    hardnessD: newest(({ hardnessShoreD }) => hardnessShoreD),
    raMicroinch: sinceWork(ball, readings).flatMap(({ raUm }) => (raUm === null ? [] : [(raUm * MICROMETRE) / MICROINCH])),
  };
}

/** Diameters of the day on which the ball was last measured. */
function diametersOf(newestFirst: readonly Reading[]): readonly number[] {
  const measured = newestFirst.filter(({ diameterIn }) => diameterIn !== null);
  const day = measured[0]?.at.slice(0, 10);
  return measured.flatMap(({ at, diameterIn }) => (at.slice(0, 10) === day && diameterIn !== null ? [diameterIn] : []));
}
