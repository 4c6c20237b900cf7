import { recall, remember } from "../client/memory.ts";
import { reportConnection } from "./connection.ts";
import { faultWords } from "./faultWords.ts";
import { actingPerson, PERSON_HEADER } from "./person.ts";
import { refusalOf, ShopFault } from "./shopClient.ts";

/** A write that must not be lost: it is kept in this browser until the shop has it. */
export interface Waiting {
  /** Idempotency key: sent again, it is done once. */
  readonly key: string;
  readonly method: "POST" | "PATCH";
  readonly path: `/api/${string}`;
  readonly body: unknown;
  /** The version that a change was made on; null for what is new. */
  readonly version: number | null;
  /** In words, for whoever looks at what waits. */
  readonly what: string;
  readonly person: string | null;
  /** Why the shop refused it; null while it only waits. */
  readonly refused: string | null;
  /** The thing as the shop has it, where somebody else changed it meanwhile: both versions stay. */
  readonly current: unknown;
}

type Added = Pick<Waiting, "key" | "path" | "body" | "what"> & Partial<Pick<Waiting, "method" | "version">>;

/** What became of one write: the shop has it or refused it; it does not answer; nobody is signed in; somebody else than who wrote it is. */
type Sent = "taken" | "away" | "signedOut" | "otherPerson";

/** Where it lies in this browser; every tab of it writes there. */
export const OUTBOX_MEMORY = "gritwright.outbox";
const AGAIN_MS = 4000;

/**
 * What waits to be sent, in order. It goes out at once where the server answers, else again every few seconds; a refusal stays in view until somebody
 * has dealt with it. Nothing is thrown away unasked. Other tabs have the same one: what they have added since is read before anything is changed.
 */
export class Outbox {
  #waiting: readonly Waiting[] = kept();
  /** Whether this browser keeps it; else it is gone with the page. */
  #isKept = true;
  #isSending = false;
  /** The write that is on its way. */
  #sending: { readonly key: string; readonly sent: Promise<Sent> } | null = null;
  /** Ids that the shop has given to what this page has sent, by their keys. */
  readonly #given = new Map<string, string>();
  #timer: ReturnType<typeof setTimeout> | null = null;
  readonly #listeners = new Set<() => void>();
  readonly #answered: (write: Waiting) => void;

  /** @param told of every write that the shop has taken or refused */
  constructor(told: (write: Waiting) => void) {
    this.#answered = told;
    if (this.#waiting.length > 0) void this.flush();
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  readonly snapshot = (): readonly Waiting[] => this.#waiting;

  readonly isKept = (): boolean => this.#isKept;

  /** Another tab has changed what waits: what is gone has been taken there. */
  hear(): void {
    const before = this.#waiting;
    this.#waiting = kept();
    const still = new Set(this.#waiting.map(({ key }) => key));
    for (const write of before) if (write.refused === null && !still.has(write.key)) this.#answered(write);
    // The other tab sends what it has put in, but it may be closed.
    if (this.#next(new Set()) !== undefined) this.#again();
    this.#tell();
  }

  add({ method = "POST", version = null, ...write }: Added): void {
    const one: Waiting = { ...write, method, version, person: actingPerson(), refused: null, current: null };
    this.#change((waiting) => [...waiting, one]);
    void this.flush();
  }

  /** Takes a refused write out; whoever presses this has written it down elsewhere, or leaves what the shop has. */
  drop(key: string): void {
    this.#change((waiting) => waiting.filter((write) => write.key !== key));
  }

  /**
   * Takes out what waits: it is never sent. What is on its way is waited for.
   *
   * @returns the id that the shop has given it, where it was sent; null where it was not
   */
  async takeOut(key: string): Promise<string | null> {
    if (this.#sending?.key === key) await this.#sending.sent;
    if (this.#waiting.some((write) => write.key === key)) {
      this.drop(key);
      return null;
    }
    // What this page did not send is known by its id already.
    return this.#given.get(key) ?? key;
  }

  /** Sends a change again, over what somebody else made of the thing meanwhile. */
  sendOver(key: string): void {
    this.#change((waiting) =>
      waiting.map((write) =>
        write.key === key ? { ...write, version: versionOf(write.current) ?? write.version, refused: null, current: null } : write,
      ),
    );
    void this.flush();
  }

  async flush(): Promise<void> {
    if (this.#isSending) return;
    this.#isSending = true;
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
    const othersKeys = new Set<string>();
    let outcome: Sent = "taken";
    try {
      for (let next = this.#next(othersKeys); next !== undefined; next = this.#next(othersKeys)) {
        this.#sending = { key: next.key, sent: this.#send(next) };
        outcome = await this.#sending.sent;
        if (outcome === "otherPerson") othersKeys.add(next.key);
        else if (outcome !== "taken") break;
      }
    } finally {
      this.#isSending = false;
      this.#sending = null;
    }
    // Where somebody must sign in first, that sends it.
    if (outcome === "away" && this.#next(othersKeys) !== undefined) this.#again();
  }

  #again(): void {
    this.#timer ??= setTimeout(() => void this.flush(), AGAIN_MS);
  }

  #next(but: ReadonlySet<string>): Waiting | undefined {
    return this.#waiting.find(({ refused, key }) => refused === null && !but.has(key));
  }

  async #send(write: Waiting): Promise<Sent> {
    try {
      const response = await fetch(write.path, { method: write.method, headers: headersOf(write), body: JSON.stringify(write.body) });
      reportConnection({ isOffline: false });
      const refusal = response.ok ? null : await refusalOf(response);
      // A server that is busy or closing will take it later.
      if (refusal !== null && (refusal.problem === null || refusal.problem.status >= 500)) return "away";
      if (refusal?.isKind("notSignedIn") === true) return "signedOut";
      if (refusal?.isKind("otherPerson") === true) return "otherPerson";
      const taken: unknown = refusal === null ? await response.json() : null;
      const now = versionOf(taken);
      if (hasId(taken)) this.#given.set(write.key, taken.id);
      // Told first: what is taken is never, for a moment, neither waiting nor seen as taken.
      this.#answered(refusal === null ? write : { ...write, refused: faultWords(refusal) });
      this.#change((waiting) =>
        refusal === null
          ? waiting.filter(({ key }) => key !== write.key).map((later) => madeAfter(later, write, now))
          : waiting.map((one) =>
              one.key === write.key ? { ...one, refused: faultWords(refusal), current: refusal.problem?.current ?? null } : one,
            ),
      );
      return "taken";
    } catch (error) {
      if (!(error instanceof TypeError || error instanceof ShopFault)) throw error;
      reportConnection({ isOffline: true, readAt: null });
      return "away";
    }
  }

  #change(change: (waiting: readonly Waiting[]) => readonly Waiting[]): void {
    this.#waiting = change(this.#isKept ? kept() : this.#waiting);
    this.#isKept = remember(OUTBOX_MEMORY, JSON.stringify(this.#waiting));
    this.#tell();
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}

function headersOf({ key, person, version }: Waiting): Record<string, string> {
  return {
    "Content-Type": "application/json",
    "Idempotency-Key": key,
    ...(person === null ? {} : { [PERSON_HEADER]: person }),
    ...(version === null ? {} : { "If-Match": `"${version}"` }),
  };
}

/** What waits for the same thing was made on what this write was to come to: a signature that moved the ticket meanwhile has counted one more. */
function madeAfter(later: Waiting, taken: Waiting, now: number | null): Waiting {
  if (now === null || taken.version === null || later.version === null || thingOf(later.path) !== thingOf(taken.path)) return later;
  return { ...later, version: later.version + now - (taken.version + 1) };
}

/** `/api/tickets/<id>` of a ticket and of everything that is asked of it. */
function thingOf(path: string): string {
  return path.split("/").slice(0, 4).join("/");
}

function hasId(taken: unknown): taken is { readonly id: string } {
  return typeof taken === "object" && taken !== null && "id" in taken && typeof taken.id === "string";
}

function versionOf(current: unknown): number | null {
  const version = typeof current === "object" && current !== null && "version" in current ? current.version : null;
  return typeof version === "number" ? version : null;
}

function kept(): readonly Waiting[] {
  const text = recall(OUTBOX_MEMORY);
  if (text === null) return [];
  try {
    const read: unknown = JSON.parse(text);
    // What was kept before changes could wait has neither method nor version.
    return Array.isArray(read) ? read.map((write): Waiting => ({ method: "POST", version: null, current: null, ...write })) : [];
  } catch {
    return [];
  }
}
