import { recall, remember } from "../client/memory.ts";
import { actingPerson, PERSON_HEADER } from "./person.ts";
import { refusalOf, ShopFault } from "./shopClient.ts";

/** A write that must not be lost: it is kept in this browser until the shop has it. */
export interface Waiting {
  /** Idempotency key: sent again, it is done once. */
  readonly key: string;
  readonly path: `/api/${string}`;
  readonly body: unknown;
  /** In words, for whoever looks at what waits. */
  readonly what: string;
  readonly person: string | null;
  /** Why the shop refused it; null while it only waits. */
  readonly refused: string | null;
}

const MEMORY = "gritwright.outbox";
const AGAIN_MS = 4000;

/**
 * What waits to be sent, in order. It goes out at once where the server answers, else again every few seconds; a refusal stays in view until somebody
 * has dealt with it. Nothing is thrown away unasked.
 */
export class Outbox {
  #waiting: readonly Waiting[] = kept();
  #isSending = false;
  #timer: ReturnType<typeof setTimeout> | null = null;
  readonly #listeners = new Set<() => void>();
  readonly #sent: (path: string) => void;

  /** @param sent told of every write that the shop has taken */
  constructor(sent: (path: string) => void) {
    this.#sent = sent;
    if (this.#waiting.length > 0) void this.flush();
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  readonly snapshot = (): readonly Waiting[] => this.#waiting;

  add(write: Pick<Waiting, "key" | "path" | "body" | "what">): void {
    this.#set([...this.#waiting, { ...write, person: actingPerson(), refused: null }]);
    void this.flush();
  }

  /** Takes a refused write out; whoever presses this has written it down elsewhere. */
  drop(key: string): void {
    this.#set(this.#waiting.filter((write) => write.key !== key));
  }

  async flush(): Promise<void> {
    if (this.#isSending) return;
    this.#isSending = true;
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
    try {
      for (let next = this.#next(); next !== undefined; next = this.#next()) if (!(await this.#send(next))) break;
    } finally {
      this.#isSending = false;
    }
    if (this.#next() !== undefined) this.#timer = setTimeout(() => void this.flush(), AGAIN_MS);
  }

  #next(): Waiting | undefined {
    return this.#waiting.find(({ refused }) => refused === null);
  }

  /** @returns whether the shop answered */
  async #send(write: Waiting): Promise<boolean> {
    try {
      const headers: Record<string, string> = { "Content-Type": "application/json", "Idempotency-Key": write.key };
      if (write.person !== null) headers[PERSON_HEADER] = write.person;
      const response = await fetch(write.path, { method: "POST", headers, body: JSON.stringify(write.body) });
      const refusal = response.ok ? null : await refusalOf(response);
      // A server that is busy or closing will take it later.
      if (refusal !== null && (refusal.problem === null || refusal.problem.status >= 500)) return false;
      this.#set(
        refusal === null
          ? this.#waiting.filter(({ key }) => key !== write.key)
          : this.#waiting.map((one) => (one.key === write.key ? { ...one, refused: refusal.message } : one)),
      );
      if (refusal === null) this.#sent(write.path);
      return true;
    } catch (error) {
      if (error instanceof TypeError || error instanceof ShopFault) return false;
      throw error;
    }
  }

  #set(waiting: readonly Waiting[]): void {
    this.#waiting = waiting;
    remember(MEMORY, JSON.stringify(waiting));
    for (const listener of this.#listeners) listener();
  }
}

function kept(): readonly Waiting[] {
  const text = recall(MEMORY);
  if (text === null) return [];
  try {
    const read: unknown = JSON.parse(text);
    return Array.isArray(read) ? (read as Waiting[]) : [];
  } catch {
    return [];
  }
}
