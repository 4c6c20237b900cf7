import type { Extraction } from "#contract/records/settings";
import type { Ticket } from "#contract/records/ticket";
import type { Signed } from "#contract/records/ticketWork";
import type { SideId } from "#engine/surface/padWork/sides";

export type PlannedStage = Ticket["stages"][number];

/** One thing to do at the bench: a stage of one ball. */
export interface Step {
  readonly ticketId: string;
  readonly stage: PlannedStage;
}

/** What this browser knows of a ball at the bench beyond what is written down: the clock of the side that is being worked. */
export interface BallState {
  /** The stage and side that the clock speaks of; for another one it begins anew. */
  readonly of: string;
  /** When the side's clock was started, ms since 1970; null while it stands. */
  readonly runningSince: number | null;
  /** What the clock had run before it was last started, ms. */
  readonly ranMs: number;
  /** When the page last looked at a running clock, ms since 1970: after a power cut it has run until then. */
  readonly lookedMs: number;
  /** Whether the page went while the clock ran, and nobody has said yet whether the spinner ran on. */
  readonly wasCut: boolean;
  readonly startedAt: string | null;
  /** What is used at a stage instead of what was planned; kept by none of the programs before. */
  readonly used?: { readonly stageId: string; readonly abrasive: string } | null;
  /** What oil is drawn out for beyond the shop's setting, min. */
  readonly moreMinutes?: number;
  /** Whether the ball was looked at before its first cut, and how. */
  readonly looked: "not yet" | "scanned" | "on sight";
}

/** The guide in this browser. It hangs on the balls, not on how the guide was opened: a batch, another batch, one ball alone. */
export interface GuideState {
  readonly balls: Readonly<Record<string, BallState>>;
  /** Hazards whose cautions were seen. */
  readonly seen: readonly string[];
  /** When the last of them was, ms since 1970; what was seen on another day is shown again. */
  readonly seenMs?: number;
  /** Cautions that somebody has asked for once more. */
  readonly asked?: readonly string[];
}

export const AT_THE_BEGINNING: GuideState = { balls: {}, seen: [] };

const UNTOUCHED: BallState = { of: "", runningSince: null, ranMs: 0, lookedMs: 0, wasCut: false, startedAt: null, looked: "not yet" };

/** The name of a stage's side, for the clock. */
export function nameOf(stage: PlannedStage, side: SideId | undefined): string {
  return `${stage.id} ${side ?? ""}`;
}

/** The state of a ball for a side: as it was left where it is the same side, else with its clock at the beginning. */
export function stateOf({ balls }: GuideState, ticketId: string, of: string): BallState {
  const state = balls[ticketId] ?? UNTOUCHED;
  return state.of === of ? state : { ...state, of, runningSince: null, ranMs: 0, wasCut: false, startedAt: null, moreMinutes: 0 };
}

/** More balls than are ever at the bench; the oldest are forgotten. */
const MOST_BALLS = 100;

export function withBall(state: GuideState, ticketId: string, ball: BallState): GuideState {
  const { [ticketId]: _, ...others } = state.balls;
  const kept = Object.entries(others).slice(-MOST_BALLS + 1);
  return { ...state, balls: { ...Object.fromEntries(kept), [ticketId]: ball } };
}

/** Half a day: who comes back to the bench tomorrow has hair and sleeves again. */
const SEEN_FOR_MS = 12 * 3_600_000;

/**
 * Cautions that nobody has seen of late.
 *
 * @param read those that the same person has read at these balls on whichever device, as {@link readOf} has them
 */
export function unseenOf(
  { seen, seenMs = 0, asked = [] }: GuideState,
  cautions: readonly string[],
  read: ReadonlySet<string>,
  nowMs: number,
) {
  const isOld = nowMs - seenMs > SEEN_FOR_MS;
  return cautions.filter((id) => asked.includes(id) || !(read.has(id) || (!isOld && seen.includes(id))));
}

/** Cautions that a person has read of late, by what is written down at the bench. Another person reads them too. */
export function readOf(done: readonly Pick<Signed, "cautionsRead" | "personId" | "doneAt">[], personId: string | null, nowMs: number) {
  const late = done.filter((one) => one.personId === personId && nowMs - Date.parse(one.doneAt) <= SEEN_FOR_MS);
  return new Set(late.flatMap(({ cautionsRead }) => cautionsRead));
}

export function withSeen(state: GuideState, ids: readonly string[], nowMs: number = Date.now()): GuideState {
  const isOld = nowMs - (state.seenMs ?? 0) > SEEN_FOR_MS;
  return { ...state, seen: [...(isOld ? [] : state.seen), ...ids], seenMs: nowMs, asked: [] };
}

/** The cautions of a stage are asked for once more. */
export function shownAgain(state: GuideState, ids: readonly string[]): GuideState {
  return { ...state, asked: ids };
}

/** The page was opened: every clock that ran when it went stands at what it had really run, until somebody says whether the spinner ran on. */
export function afterACut(state: GuideState): GuideState {
  const balls = Object.entries(state.balls).map(([id, ball]): [string, BallState] => {
    if (ball.runningSince === null) return [id, ball];
    const ran = Math.max(0, ball.lookedMs - ball.runningSince);
    return [id, { ...ball, ranMs: ball.ranMs + ran, runningSince: null, wasCut: true }];
  });
  return { ...state, balls: Object.fromEntries(balls) };
}

/** The spinner ran on, or it did not: the side has had all the time since, or only what the page saw. */
export function answered(state: BallState, ranOn: boolean, nowMs: number): BallState {
  return { ...state, wasCut: false, ranMs: state.ranMs + (ranOn ? Math.max(0, nowMs - state.lookedMs) : 0) };
}

/** Order in which kinds of stages come, whatever the ball. */
const KIND_ORDER = ["clean", "open", "extract", "dryOff", "plug", "cut", "polish", "check"];

/**
 * The steps of one ball or a batch. In a batch what is coarser comes first and the same abrasive is used on all balls that want it before the next one is
 * taken up; the stages of each ball stay in their order.
 *
 * @param open the stages of each ticket that are still to be done, in order
 */
export function stepsOf(tickets: readonly Pick<Ticket, "id">[], open: (ticketId: string) => readonly PlannedStage[]): readonly Step[] {
  const left = tickets.map(({ id }) => ({ id, stages: [...open(id)] }));
  const steps: Step[] = [];
  for (;;) {
    const waiting = left.flatMap((ball) => (ball.stages.length === 0 ? [] : [{ ball, stage: ball.stages[0], key: keyOf(ball.stages[0]) }]));
    if (waiting.length === 0) return steps;
    const first = waiting.reduce((best, one) => (comesBefore(one.key, best.key) ? one : best)).key;
    for (const { ball, stage, key } of waiting) {
      if (key.name !== first.name) continue;
      steps.push({ ticketId: ball.id, stage });
      ball.stages.shift();
    }
  }
}

interface StageKey {
  readonly name: string;
  readonly kind: number;
  readonly number: number;
}

function keyOf(stage: PlannedStage): StageKey {
  const place = stage.kind === null ? KIND_ORDER.length : KIND_ORDER.indexOf(stage.kind);
  return { name: groupOf(stage), kind: place, number: Number(/\d+/.exec(stage.abrasive ?? "")?.[0] ?? 0) };
}

/** What tells a stage from others: balls whose stages have the same are worked one after the other. */
export function groupOf({ kind, abrasive, what }: Pick<PlannedStage, "kind" | "abrasive" | "what">): string {
  return `${kind ?? what} ${abrasive ?? ""}`;
}

function comesBefore(a: StageKey, b: StageKey): boolean {
  return a.kind !== b.kind ? a.kind < b.kind : a.number < b.number;
}

/** What the clock of a side has run, s; never more than a side has. */
export function secondsRun(state: BallState, stage: PlannedStage, nowMs: number): number {
  const ran = state.ranMs + (state.runningSince === null ? 0 : Math.max(0, nowMs - state.runningSince));
  return Math.min(stage.secondsPerSide ?? 0, ran / 1000);
}

/** Seconds that a side still wants, 0 when its time is over. */
export function secondsLeft(state: BallState, stage: PlannedStage, nowMs: number): number {
  return Math.max(0, (stage.secondsPerSide ?? 0) - secondsRun(state, stage, nowMs));
}

/** A stage with the time that its clock goes by: the shop's own minutes where oil is drawn out or a ball rests, and what was added; else the plan's. */
export function withMinutes(stage: PlannedStage, setting: Extraction | null, { moreMinutes = 0 }: BallState): PlannedStage {
  const minutes = stage.kind === "extract" ? setting?.minutes : stage.kind === "dryOff" ? setting?.restMinutes : undefined;
  return minutes === undefined ? stage : { ...stage, secondsPerSide: 60 * (minutes + moreMinutes) };
}

/** How much is added at a press, min. */
const MORE_MINUTES = 5;

/** Oil still beads: it is drawn out longer, and the clock runs on. */
export function longer(state: BallState, nowMs: number): BallState {
  const more = { ...state, moreMinutes: (state.moreMinutes ?? 0) + MORE_MINUTES };
  return more.runningSince === null ? started(more, nowMs) : more;
}

/** Whether a stage is worked side by side, by the clock. */
export function isTimed(stage: PlannedStage): boolean {
  return (stage.secondsPerSide ?? 0) > 0 && stage.sideIds.length > 0;
}

export function started(state: BallState, nowMs: number): BallState {
  return { ...state, runningSince: nowMs, lookedMs: nowMs, startedAt: state.startedAt ?? new Date(nowMs).toISOString() };
}

/** How often a running clock is written down, ms. */
export const LOOK_MS = 1000;

/** The page has looked at the running clock. */
export function looked(state: BallState, nowMs: number): BallState {
  return state.runningSince === null ? state : { ...state, lookedMs: nowMs };
}

export function held(state: BallState, nowMs: number): BallState {
  if (state.runningSince === null) return state;
  return { ...state, ranMs: state.ranMs + Math.max(0, nowMs - state.runningSince), runningSince: null };
}

/** Somebody looks at something else: the clock of a ball stands. */
export function paused(state: GuideState, ticketId: string, nowMs: number): GuideState {
  const ball = state.balls[ticketId];
  return ball === undefined ? state : withBall(state, ticketId, held(ball, nowMs));
}

/** What a scanner or a person gives for a ball: the address on its label, or the end of its serial number (three letters at least). */
export function isThisBall(given: string, ticketId: string, serial: string | null): boolean {
  const said = given.trim();
  if (said.endsWith(`/tickets/${ticketId}`)) return true;
  return said.length >= LEAST_LETTERS && serial !== null && serial.toLowerCase().endsWith(said.toLowerCase());
}

const LEAST_LETTERS = 3;
