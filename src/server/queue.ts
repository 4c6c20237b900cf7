import type { ThingKind } from "#contract/records/auditEntry";
import { OPEN_STATES } from "#contract/records/ticketStates";
import type { Queue } from "#contract/routes/work";
import type { Records } from "#records/records";
import { everything } from "./everything.ts";
import { nameOf } from "./nameOf.ts";

/** The queue for everybody who asks: made once after a change, however many counters ask for it. */
export interface QueueBook {
  /** The queue as it stands; what was written through this server before is in it. */
  now(): Promise<Queue>;
  /** Tells after every change of something that is shown in the queue. Returns how to stop. */
  watch(tell: () => void): () => void;
  close(): void;
}

/** Kinds of things whose change can be seen in the queue. */
const SHOWN: ReadonlySet<ThingKind> = new Set(["tickets", "visits", "balls", "bowlers"]);
/** A program beside this server may write as well and tell nobody, so a queue is not given out longer than this, ms. */
const LONGEST_MS = 1000;

/** @param nowMs a clock that only goes forward, ms */
export function queueBook(records: Records, nowMs: () => number): QueueBook {
  const tellers = new Set<() => void>();
  let made: { readonly queue: Promise<Queue>; readonly at: number } | null = null;
  const stop = records.watch(({ kind }) => {
    if (!SHOWN.has(kind)) return;
    made = null;
    for (const tell of tellers) tell();
  });
  return {
    now() {
      if (made === null || nowMs() - made.at > LONGEST_MS) {
        const making = { queue: queueOf(records), at: nowMs() };
        making.queue.catch(() => {
          // The next who asks tries again.
          if (made === making) made = null;
        });
        made = making;
      }
      return made.queue;
    },
    watch(tell) {
      tellers.add(tell);
      return () => tellers.delete(tell);
    },
    close: stop,
  };
}

/** Tickets that somebody has something to do about: the soonest promise first, those without one last, then in the order in which they came. */
async function queueOf({ tickets, balls, bowlers }: Records): Promise<Queue> {
  const open = await everything((after) => tickets.list({ after, limit: 500, where: { state: OPEN_STATES } }));
  const ballNames = new Names(balls);
  const bowlerNames = new Names(bowlers);
  const items: Queue["items"] = [];
  for (const ticket of open) {
    items.push({
      ticket,
      ballName: await ballNames.of(ticket.ballId),
      bowlerName: ticket.bowlerId === null ? null : await bowlerNames.of(ticket.bowlerId),
    });
  }
  const turn = ({ ticket }: Queue["items"][number]): string => `${ticket.promisedFor ?? "9999"} ${ticket.receivedAt}`;
  return { items: items.sort((a, b) => (turn(a) < turn(b) ? -1 : turn(a) > turn(b) ? 1 : 0)) };
}

/** Names, each looked up once. */
class Names {
  readonly #things: Records["balls"] | Records["bowlers"];
  readonly #known = new Map<string, string>();

  constructor(things: Records["balls"] | Records["bowlers"]) {
    this.#things = things;
  }

  async of(id: string): Promise<string> {
    const name = this.#known.get(id) ?? (await nameOf(this.#things, id));
    this.#known.set(id, name);
    return name;
  }
}
