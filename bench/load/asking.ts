import { Agent, request } from "node:http";

export interface Reply {
  readonly status: number;
  /** The answer's JSON; null where there is none. */
  readonly body: unknown;
}

/** How long each kind of request took, ms, and what went wrong. */
export interface Log {
  readonly took: Map<string, number[]>;
  readonly errors: string[];
}

export function newLog(): Log {
  return { took: new Map(), errors: [] };
}

export interface Asking {
  /**
   * Asks one thing and notes how long the whole answer took; an answer of 400 or more, or none, is noted as an error.
   *
   * @param kind under which it is counted
   */
  ask(kind: string, method: string, path: string, body?: unknown, headers?: Readonly<Record<string, string>>): Promise<Reply>;
  close(): void;
}

/** Connections are kept open, one a counter, as browsers keep them. */
export function asking(address: string, log: Log): Asking {
  const agent = new Agent({ keepAlive: true });
  return {
    async ask(kind, method, path, body, headers = {}) {
      const start = performance.now();
      try {
        const reply = await exchanged(agent, new URL(path, address), method, body, headers);
        noted(log, kind, performance.now() - start);
        if (reply.status >= 400) log.errors.push(`${method} ${path}: ${reply.status} ${JSON.stringify(reply.body)}`);
        return reply;
      } catch (error) {
        log.errors.push(`${method} ${path}: ${String(error)}`);
        return { status: 0, body: null };
      }
    },
    close: () => agent.destroy(),
  };
}

function noted({ took }: Log, kind: string, ms: number): void {
  const times = took.get(kind) ?? [];
  times.push(ms);
  took.set(kind, times);
}

function exchanged(agent: Agent, url: URL, method: string, body: unknown, headers: Readonly<Record<string, string>>): Promise<Reply> {
  const text = body === undefined ? "" : JSON.stringify(body);
  const sent = {
    ...headers,
    ...(body === undefined ? {} : { "content-type": "application/json", "content-length": Buffer.byteLength(text) }),
  };
  return new Promise((resolve, reject) => {
    const going = request(url, { agent, method, headers: sent }, (response) => {
      const pieces: Buffer[] = [];
      response.on("data", (piece: Buffer) => pieces.push(piece));
      response.on("error", reject);
      response.on("end", () => {
        const read = Buffer.concat(pieces).toString();
        resolve({ status: response.statusCode ?? 0, body: read === "" ? null : JSON.parse(read) });
      });
    });
    going.on("error", reject);
    going.end(text);
  });
}
