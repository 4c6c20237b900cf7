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
import { listen } from "./listen.ts";
import type { Log } from "./log.ts";
import type { PageFile } from "./pageFiles.ts";
import { planBook } from "./plans/planBook.ts";
import { planQueue } from "./plans/planQueue.ts";
import { queueBook } from "./queue.ts";

export interface ServerParts {
  readonly config: Pick<Config, "port" | "limits">;
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

/** @throws the system's error when no port could be had */
export async function startServer(parts: ServerParts): Promise<RunningServer> {
  const { config, records, log } = parts;
  const { server, close } = assemble(parts);
  const listening = await listen(server, config.port);
  log("info", { event: "started", version: parts.version });
  const stopBackups = keepBackups(records, log);
  let stopping: Promise<void> | null = null;
  const stop = async (): Promise<void> => {
    log("info", { event: "stopping" });
    await Promise.all([stopBackups(), close(), listening.close(1000 * config.limits.stopSeconds)]);
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
}: Omit<ServerParts, "config"> & { readonly config: Pick<Config, "limits"> }) {
  const { limits } = config;
  const streams = eventStreams(limits.listeners);
  const waiting = planQueue(executor, limits);
  const queue = queueBook(records, nowMs);
  const plans = planBook({ plans: waiting, newId, now, version });
  let isClosing = false;
  const handlers = apiHandlers({ records, plans, queue, version, isClosing: () => isClosing });
  const language = languageOf(files, async () => (await records.settings.get()).language);
  const server = app({
    files,
    languageOf: language,
    table: API,
    handlers,
    limits,
    streams,
    whoActs: personAtThisMachine(records),
    log,
    nowMs,
  });
  return {
    server,
    async close(): Promise<void> {
      isClosing = true;
      streams.close();
      queue.close();
      await waiting.close();
    },
  };
}
