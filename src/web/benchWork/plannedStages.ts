import type { Ticket, TicketWritten } from "#contract/records/ticket";
import type { SignedEntry } from "#contract/records/ticketWork";
import { NO_FINDINGS } from "#engine/rules/stops";
import type { StageStanding } from "#engine/signed/entries";
import { ABRASIVES } from "#engine/surface/abrasives";
import type { BenchBall } from "#engine/surface/benchBall";
import { parseFinish } from "#engine/surface/finish";
import { type BenchHabits, planStages, type Stage, USUAL_HABITS } from "#engine/surface/stages";
import { ABRASIVE_NAMES, STAGE_NAMES } from "#words/en/bench";
import { BALL_LOG } from "#words/en/rooms/ball";
import { BENCH_WAYS } from "#words/en/rooms/ticket";

type PlannedStages = NonNullable<TicketWritten["stages"]>;

/** The work to a finish, as a ticket keeps it. A ball that must not be worked has none: the ticket's stops say why. */
export function plannedStages(ball: BenchBall, wanted: string, habits: BenchHabits = USUAL_HABITS): PlannedStages {
  return planStages(ball, parseFinish(wanted), NO_FINDINGS, habits).stages.map((stage) => kept(stage, habits));
}

function kept(stage: Stage, habits: BenchHabits): PlannedStages[number] {
  const { kind, abrasive, sides, secondsPerSide } = stage;
  return {
    what: null,
    kind,
    abrasive,
    way: abrasive === null ? null : BENCH_WAYS[habits.by][stage.wet ? "wet" : "dry"],
    secondsPerSide: Math.round(secondsPerSide),
    sides: sides > 0 ? sides : null,
    force: sides > 0 ? stage.force : null,
    sideIds: [...stage.sideIds],
    cautions: [...stage.cautions],
  };
}

/** How a stage is worked, in the language of whoever reads; other words as somebody wrote them. */
export function wayText(way: string): string {
  const words: Readonly<Record<string, string>> = BALL_LOG.stageWays;
  return Object.hasOwn(words, way) ? words[way] : way;
}

/** What a stage is called: by its kind, in the language of whoever reads; work written by hand by what was written. */
export function stageName({ kind, what }: Pick<Ticket["stages"][number], "kind" | "what">): string {
  return kind === null ? (what ?? "") : STAGE_NAMES[kind];
}

/** A stage in one line: sanding, 1000 pad, spinner, wet, 6 sides of 20 s. */
export function abrasiveName(abrasive: Ticket["stages"][number]["abrasive"]): string | null {
  if (abrasive === null) return null;
  return abrasive in ABRASIVES ? ABRASIVE_NAMES[abrasive as keyof typeof ABRASIVES] : abrasive;
}

/** Where another abrasive was used than was planned, which. */
export function usedInstead({ stage, by }: StageStanding<SignedEntry>): string {
  return by === null || by.abrasive === stage.abrasive ? "" : `(${abrasiveName(by.abrasive) ?? "–"})`;
}
