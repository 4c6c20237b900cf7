import { memoryUsage } from "node:process";
import { API } from "#contract/routes/api";
import type { Records } from "#records/records";
import type { Executor } from "#tasks/executor";
import { personAtThisMachine } from "./actor.ts";
import { apiHandlers } from "./apiHandlers.ts";
import { app } from "./app.ts";
import { keepBackups } from "./backupSchedule.ts";
import type { Config } from "./config/configSchema.ts";
import { eventStreams } from "./http/events.ts";
import { languageOf } from "./http/language.ts";
import { withoutWords } from "./http/requestLog.ts";
import { listen } from "./listen.ts";
import type { Log } from "./log.ts";
import { lookThroughOnce } from "./lookThrough.ts";
import { meter, type Present } from "./metrics.ts";
import type { PageFile } from "./pageFiles.ts";
import { planBook } from "./plans/planBook.ts";
import { planQueue } from "./plans/planQueue.ts";
import { queueBook } from "./queue.ts";
import { certificateFor, reachedOf } from "./reached.ts";

export interface ServerParts {
  readonly config: Pick<Config, "port" | "limits" | "address" | "cert" | "key" | "names">;
  readonly records: Records;
  readonly executor: Executor;
  readonly files: ReadonlyMap<string, PageFile>;
  readonly log: Log;
  /** Now, ms since 1970. */
  readonly now: () => number;
  /** A clock that only goes forward, ms. */
  readonly nowMs: () => number;
  readonly newId: () => string;
  readonly version: string;
}

export interface RunningServer {
  readonly address: string;
  /** Takes no more requests, stops plans, ends event streams, and lets writes under way end. The records stay open: whoever opened them closes them. */
  stop(): Promise<void>;
}

/** @throws {NotSafe} where nothing would keep others out; the system's error when no port could be had */
export async function startServer(parts: ServerParts): Promise<RunningServer> {
  const { config, records, log } = parts;
  const certificate = await certificateFor(config, records);
  const { server, close } = assemble(parts);
  const { port, address, names } = config;
  const listening = await listen(server, { port, address, name: names.at(0) ?? null, certificate });
  log("info", { event: "started", version: parts.version });
  const stopBackups = keepBackups(records, log);
  const stopLooking = lookThroughOnce(records, log);
  let stopping: Promise<void> | null = null;
  const stop = async (): Promise<void> => {
    log("info", { event: "stopping" });
    await Promise.all([stopBackups(), stopLooking(), close(), listening.close(1000 * config.limits.stopSeconds)]);
    log("info", { event: "stopped" });
  };
  return {
    address: listening.address,
    stop: () => {
      stopping ??= stop();
      return stopping;
    },
  };
}

/** The server without a port: what tests ask, and what `startServer` listens with. */
export function assemble({
  config,
  records,
  executor,
  files,
  log,
  now,
  nowMs,
  newId,
  version,
}: Omit<ServerParts, "config"> & { readonly config: Pick<Config, "limits" | "address" | "cert" | "key" | "names"> }) {
  const { limits } = config;
  const streams = eventStreams(limits.listeners, limits.listenersPerPerson, (error) =>
    log("error", { event: "broken", ...withoutWords(error) }),
  );
  const waiting = planQueue(executor, limits);
  const queue = queueBook(records, nowMs);
  const plans = planBook({ plans: waiting, newId, now, version });
  const counted = meter();
  const stopLooking = records.accounts.watchEnds(streams.lookAgain);
  let isClosing = false;
  const present = (): Omit<Present, "backup"> => {
    const { rss, heapUsed } = memoryUsage();
    return { streams: streams.count(), plans: waiting.counts(), residentBytes: rss, heapBytes: heapUsed };
  };
  const handlers = apiHandlers({ records, plans, queue, version, meter: counted, present, isClosing: () => isClosing });
  const language = languageOf(files, async () => (await records.settings.get()).language);
  const server = app({
    files,
    languageOf: language,
    table: API,
    handlers,
    limits,
    streams,
    personHere: personAtThisMachine(records),
    accounts: records.accounts,
    reached: reachedOf(config),
    meter: counted,
    now,
    log,
    nowMs,
  });
  return {
    server,
    async close(): Promise<void> {
      isClosing = true;
      stopLooking();
      streams.close();
      queue.close();
      await waiting.close();
    },
  };
}
