import type { Ticket } from "#contract/records/ticket";

export type PlannedStage = Ticket["stages"][number];

/** One thing to do at the bench: a stage of one ball. */
export interface Step {
  readonly ticketId: string;
  /** Place among the ticket's stages. */
  readonly stage: number;
}

/** Where the guide stands. It is kept with every press, so that a reload goes on at the same second. */
export interface GuideState {
  /** The step that the rest speaks of; another step begins anew. */
  readonly of: string;
  readonly side: number;
  /** When the side's clock was started, ms since 1970; null while it stands. */
  readonly runningSince: number | null;
  /** What the clock had run before it was last started, ms. */
  readonly ranMs: number;
  /** Seconds worked on the sides that are finished, in order. */
  readonly sideSeconds: readonly number[];
  readonly startedAt: string | null;
  /** Tickets whose ball was looked at before its first cut. */
  readonly scanned: readonly string[];
  /** Tickets whose ball could not be scanned and was taken on sight. */
  readonly onSight: readonly string[];
  /** Steps whose cautions were seen. */
  readonly seen: readonly string[];
}

export const AT_THE_BEGINNING: GuideState = {
  of: "",
  side: 0,
  runningSince: null,
  ranMs: 0,
  sideSeconds: [],
  startedAt: null,
  scanned: [],
  onSight: [],
  seen: [],
};

export function nameOf({ ticketId, stage }: Step): string {
  return `${ticketId} ${stage}`;
}

/** The state for a step: as it was left where it is the same step, else at its beginning. */
export function stateFor(state: GuideState, step: Step): GuideState {
  if (state.of === nameOf(step)) return state;
  return { ...state, of: nameOf(step), side: 0, runningSince: null, ranMs: 0, sideSeconds: [], startedAt: null };
}

/** Order in which kinds of stages come, whatever the ball. */
const KIND_ORDER = ["clean", "open", "extract", "dryOff", "plug", "cut", "polish", "check"];

/**
 * The steps of one ball or a batch. In a batch what is coarser comes first and the same abrasive is used on all balls that want it before the next one is
 * taken up; the stages of each ball stay in their order.
 *
 * @param done how many stages of each ticket are signed already
 */
export function stepsOf(tickets: readonly Ticket[], done: (ticketId: string) => number): readonly Step[] {
  const heads = new Map(tickets.map(({ id }) => [id, done(id)]));
  const steps: Step[] = [];
  for (;;) {
    const waiting = tickets.flatMap((ticket) => {
      const stage = heads.get(ticket.id) ?? 0;
      return stage < ticket.stages.length ? [{ ticket, stage, key: keyOf(ticket.stages[stage]) }] : [];
    });
    if (waiting.length === 0) return steps;
    const first = waiting.reduce((best, one) => (comesBefore(one.key, best.key) ? one : best)).key;
    for (const { ticket, stage, key } of waiting) {
      if (key.name !== first.name) continue;
      steps.push({ ticketId: ticket.id, stage });
      heads.set(ticket.id, stage + 1);
    }
  }
}

interface StageKey {
  readonly name: string;
  readonly kind: number;
  readonly number: number;
}

function keyOf({ kind, abrasive, what }: PlannedStage): StageKey {
  const place = kind === null ? KIND_ORDER.length : KIND_ORDER.indexOf(kind);
  return { name: stageName({ kind, abrasive, what }), kind: place, number: Number(/\d+/.exec(abrasive ?? "")?.[0] ?? 0) };
}

/** What tells a stage from others: balls whose stages have the same name are worked one after the other. */
export function stageName({ kind, abrasive, what }: Pick<PlannedStage, "kind" | "abrasive" | "what">): string {
  return `${kind ?? what} ${abrasive ?? ""}`;
}

function comesBefore(a: StageKey, b: StageKey): boolean {
  return a.kind !== b.kind ? a.kind < b.kind : a.number < b.number;
}

/** Seconds that a side still wants, 0 when its time is over. */
export function secondsLeft(state: GuideState, stage: PlannedStage, nowMs: number): number {
  const ran = state.ranMs + (state.runningSince === null ? 0 : Math.max(0, nowMs - state.runningSince));
  return Math.max(0, (stage.secondsPerSide ?? 0) - ran / 1000);
}

/** Whether a stage is worked side by side, by the clock. */
export function isTimed(stage: PlannedStage): boolean {
  return (stage.secondsPerSide ?? 0) > 0 && (stage.sides ?? 0) > 0;
}

export function started(state: GuideState, nowMs: number): GuideState {
  return { ...state, runningSince: nowMs, startedAt: state.startedAt ?? new Date(nowMs).toISOString() };
}

export function held(state: GuideState, nowMs: number): GuideState {
  if (state.runningSince === null) return state;
  return { ...state, ranMs: state.ranMs + Math.max(0, nowMs - state.runningSince), runningSince: null };
}

/** The side's time is over: its seconds are written down and the clock stands. */
export function sideFinished(state: GuideState, stage: PlannedStage): GuideState {
  return { ...state, side: state.side + 1, runningSince: null, ranMs: 0, sideSeconds: [...state.sideSeconds, stage.secondsPerSide ?? 0] };
}

/** Back to the side before: it is worked again, and its seconds with it. */
export function sideAgain(state: GuideState): GuideState {
  if (state.side === 0) return { ...state, runningSince: null, ranMs: 0 };
  return { ...state, side: state.side - 1, runningSince: null, ranMs: 0, sideSeconds: state.sideSeconds.slice(0, -1) };
}

/** The step is signed: the next one is this ball's next stage, or another ball's. */
export function signedOff(state: GuideState): GuideState {
  return { ...state, of: "" };
}

/** What a scanner or a person gives for a ball: the address on its label, or the end of its serial number (three letters at least). */
export function isThisBall(given: string, ticketId: string, serial: string | null): boolean {
  const said = given.trim();
  if (said.endsWith(`/tickets/${ticketId}`)) return true;
  return said.length >= LEAST_LETTERS && serial !== null && serial.toLowerCase().endsWith(said.toLowerCase());
}

const LEAST_LETTERS = 3;
