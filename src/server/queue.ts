import { OPEN_STATES } from "#contract/records/ticketStates";
import type { Queue } from "#contract/routes/work";
import type { Records } from "#records/records";
import { everything } from "./everything.ts";

/** Tickets that somebody has something to do about: the soonest promise first, those without one last, then in the order in which they came. */
export async function queueOf({ tickets, balls, bowlers }: Records): Promise<Queue> {
  const open = await everything((after) => tickets.list({ after, limit: 500, where: { state: OPEN_STATES } }));
  const names = new Names(balls, bowlers);
  const items: Queue["items"] = [];
  for (const ticket of open) {
    items.push({
      ticket,
      ballName: await names.ball(ticket.ballId),
      bowlerName: ticket.bowlerId === null ? null : await names.bowler(ticket.bowlerId),
    });
  }
  const turn = ({ ticket }: Queue["items"][number]): string => `${ticket.promisedFor ?? "9999"} ${ticket.receivedAt}`;
  return { items: items.sort((a, b) => (turn(a) < turn(b) ? -1 : turn(a) > turn(b) ? 1 : 0)) };
}

/** Names, each looked up once. */
class Names {
  readonly #balls: Records["balls"];
  readonly #bowlers: Records["bowlers"];
  readonly #known = new Map<string, string>();

  constructor(balls: Records["balls"], bowlers: Records["bowlers"]) {
    this.#balls = balls;
    this.#bowlers = bowlers;
  }

  ball(id: string): Promise<string> {
    return this.#name(id, () => this.#balls.get(id));
  }

  bowler(id: string): Promise<string> {
    return this.#name(id, () => this.#bowlers.get(id));
  }

  async #name(id: string, get: () => Promise<{ readonly name: string }>): Promise<string> {
    const name = this.#known.get(id) ?? (await get()).name;
    this.#known.set(id, name);
    return name;
  }
}
