import { useEffect, useRef } from "react";
import { Link } from "wouter";
import type { Ticket } from "#contract/records/ticket";
import type { Queue } from "#contract/routes/work";
import { TODAY } from "#words/en/rooms/today";
import { groupOf } from "../../benchWork/guide.ts";
import { workHere } from "../../benchWork/onTheBench.ts";
import { abrasiveName, stageName } from "../../benchWork/plannedStages.ts";
import { answered, shop } from "../../shop/shopClient.ts";
import { useOutbox } from "../../shop/useOutbox.tsx";
import { For } from "../../shop/useSession.tsx";
import { useRead } from "../../shop/useShop.ts";

/** Looked at in so many tickets at most: nobody works more in a day. */
const MOST = 60;
const AT_LEAST = 2;

interface Batch {
  readonly words: string;
  readonly ids: readonly string[];
}

/** Balls that wait for the same stage, so that one pad is taken up for all of them: each batch opens the work guide. */
export function Batches({ items }: { readonly items: Queue["items"] }) {
  const tickets = items
    .map(({ ticket }) => ticket)
    .filter(canBeWorked)
    .slice(0, MOST);
  const done = useSignedOnQueue(tickets.map(({ id }) => id).join());
  const { waiting } = useOutbox();
  const batches = batchesOf(tickets, (ticket) => {
    if (done === undefined) return null;
    const own = done.filter(({ ticketId }) => ticketId === ticket.id);
    return workHere(ticket, own, waiting).next?.stage.id ?? null;
  });
  if (batches.length === 0) return null;
  return (
    <section className="plate" aria-label={TODAY.batches}>
      <h2>{TODAY.batches}</h2>
      <p className="note">{TODAY.batchesWhy}</p>
      <ul className="batches">
        {batches.map(({ words, ids }) => (
          <li key={words}>
            <For least="technician">
              <Link href={`/bench/${ids.join(",")}`} className="button">
                {TODAY.batch(words, ids.length)}
              </Link>
            </For>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What has been signed on the queue's tickets; read again where there are others. */
function useSignedOnQueue(ids: string) {
  const { data, refetch } = useRead(["stages-done", "of queue"], () => answered(shop.queue["stages-done"].$get()), { enabled: ids !== "" });
  const asked = useRef(ids);
  useEffect(() => {
    if (asked.current !== "" && asked.current !== ids) void refetch({ cancelRefetch: false });
    asked.current = ids;
  }, [ids, refetch]);
  return data?.items;
}

function canBeWorked({ state, stages, stops }: Ticket): boolean {
  const isOnBench = state === "received" || state === "in work" || state === "rework";
  return isOnBench && stages.length > 0 && stops.every(({ clearedAt }) => clearedAt !== null);
}

/** Tickets by the stage that is next on them, where two or more share it; the largest batch first. @param nextOf its id, null where none is or it is being read */
function batchesOf(tickets: readonly Ticket[], nextOf: (ticket: Ticket) => string | null): readonly Batch[] {
  const batches = new Map<string, { words: string; ids: string[] }>();
  for (const ticket of tickets) {
    const { id, stages } = ticket;
    const nextId = nextOf(ticket);
    const next = stages.find((stage) => stage.id === nextId);
    if (next === undefined) continue;
    const name = groupOf(next);
    const batch = batches.get(name) ?? {
      words: [stageName(next), abrasiveName(next.abrasive)].filter((part) => part !== null).join(", "),
      ids: [],
    };
    batch.ids.push(id);
    batches.set(name, batch);
  }
  return [...batches.values()].filter(({ ids }) => ids.length >= AT_LEAST).toSorted((a, b) => b.ids.length - a.ids.length);
}
