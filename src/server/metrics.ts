import type { PlanState } from "./plans/planQueue.ts";

/** One request that has been answered. */
interface Answered {
  readonly method: string;
  /** Its pattern, never the address. */
  readonly route: string;
  readonly status: number;
  readonly seconds: number;
}

/** Counts what the server answers, from its start on. */
export interface Meter {
  count(answered: Answered): void;
  /** Everything as OpenMetrics text (OpenMetrics 1.0, "Text format"). */
  text(now: Present): string;
}

/** What stands at this moment. */
export interface Present {
  readonly streams: number;
  readonly plans: Readonly<Record<Extract<PlanState, "waiting" | "running">, number>>;
  readonly residentBytes: number;
  readonly heapBytes: number;
  /** When the newest good one was made, ms since 1970, and whether the last that was to be made failed. */
  readonly backup: { readonly lastMadeAt: number | null; readonly hasFailed: boolean };
}

/** Methods that are counted by name: a method is the asker's word, and must not fill the memory. */
const METHODS = new Set(["GET", "HEAD", "POST", "PATCH", "DELETE", "PUT", "OPTIONS"]);
/** Upper ends of the classes of durations, s. */
const CLASSES = [0.01, 0.03, 0.1, 0.3, 1, 3, 10] as const;

interface Durations {
  readonly within: number[];
  seconds: number;
  count: number;
}

export function meter(): Meter {
  const requests = new Map<string, number>();
  const durations = new Map<string, Durations>();
  return {
    count({ method, route, status, seconds }) {
      const way = labels({ method: METHODS.has(method) ? method : "other", route });
      const answer = `${way},${labels({ status: String(status) })}`;
      requests.set(answer, (requests.get(answer) ?? 0) + 1);
      const of = durations.get(way) ?? { within: CLASSES.map(() => 0), seconds: 0, count: 0 };
      for (const [i, most] of CLASSES.entries()) if (seconds <= most) of.within[i] += 1;
      of.seconds += seconds;
      of.count += 1;
      durations.set(way, of);
    },
    text: (now) => [...requestLines(requests), ...durationLines(durations), ...presentLines(now), "# EOF", ""].join("\n"),
  };
}

function requestLines(requests: ReadonlyMap<string, number>): string[] {
  const name = "gritwright_requests";
  return [...family(name, "counter", "Requests answered since the start."), ...[...requests].map(([of, n]) => `${name}_total{${of}} ${n}`)];
}

function durationLines(durations: ReadonlyMap<string, Durations>): string[] {
  const name = "gritwright_request_duration_seconds";
  const lines = [...durations].flatMap(([way, { within, seconds, count }]) => [
    ...CLASSES.map((most, i) => `${name}_bucket{${way},le="${most}"} ${within[i]}`),
    `${name}_bucket{${way},le="+Inf"} ${count}`,
    `${name}_sum{${way}} ${seconds}`,
    `${name}_count{${way}} ${count}`,
  ]);
  return [...family(name, "histogram", "How long the answers took.", "seconds"), ...lines];
}

function presentLines({ streams, plans, residentBytes, heapBytes, backup }: Present): string[] {
  return [
    ...family("gritwright_event_streams", "gauge", "Pages that listen."),
    `gritwright_event_streams ${streams}`,
    ...family("gritwright_plans", "gauge", "Plans that wait or are computed."),
    ...Object.entries(plans).map(([state, n]) => `gritwright_plans{${labels({ state })}} ${n}`),
    ...family("gritwright_memory_bytes", "gauge", "Memory of the process.", "bytes"),
    `gritwright_memory_bytes{kind="resident"} ${residentBytes}`,
    `gritwright_memory_bytes{kind="heap"} ${heapBytes}`,
    ...family("gritwright_backup_failed", "gauge", "1 where the last backup that was to be made failed."),
    `gritwright_backup_failed ${backup.hasFailed ? 1 : 0}`,
    ...family("gritwright_backup_last_made_seconds", "gauge", "When the newest good backup was made, since 1970.", "seconds"),
    ...(backup.lastMadeAt === null ? [] : [`gritwright_backup_last_made_seconds ${backup.lastMadeAt / 1000}`]),
  ];
}

function family(name: string, type: "counter" | "histogram" | "gauge", help: string, unit?: string): string[] {
  return [`# TYPE ${name} ${type}`, ...(unit === undefined ? [] : [`# UNIT ${name} ${unit}`]), `# HELP ${name} ${help}`];
}

function labels(named: Readonly<Record<string, string>>): string {
  return Object.entries(named)
    .map(([name, value]) => `${name}="${value.replaceAll("\\", "\\\\").replaceAll('"', '\\"').replaceAll("\n", "\\n")}"`)
    .join(",");
}
