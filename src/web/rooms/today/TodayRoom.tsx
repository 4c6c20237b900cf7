import { useEffect } from "react";
import { Link } from "wouter";
import type { Queue } from "#contract/routes/work";
import { TICKET_STATE_WORDS, TODAY } from "#words/en/rooms/today";
import { Reading } from "../../shop/Reading.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { useHealth } from "../../shop/useHealth.ts";
import { useQueue } from "../../shop/useQueue.ts";
import { For, useMay } from "../../shop/useSession.tsx";
import { useRead } from "../../shop/useShop.ts";
import { useShopTimes } from "../../shop/zone.ts";
import { Batches } from "./Batches.tsx";
import { DueByGames } from "./DueByGames.tsx";

type Waiting = Queue["items"][number];

/** Opens the shop: what waits by promise, what is ready, what runs low, whose balls are due. */
export function TodayRoom() {
  const queue = useQueue();
  useEffect(() => {
    document.title = TODAY.title;
  }, []);
  return (
    <main id="answer" className="room today" tabIndex={-1}>
      <div className="room-head">
        <h1>{TODAY.title}</h1>
        <For least="counter">
          <Link href="/intake" className="button primary">
            {TODAY.takeIn}
          </Link>
        </For>
      </div>
      <RecordsTrouble />
      <div className="room-columns">
        <section className="plate">
          <h2>{TODAY.queue}</h2>
          <Reading of={queue} isEmpty={({ items }) => items.every(isReady)} empty={TODAY.emptyQueue}>
            {({ items }) => <Tickets items={items.filter((item) => !isReady(item))} />}
          </Reading>
        </section>
        <div>
          <Batches items={queue.data?.items ?? []} />
          <section className="plate">
            <h2>{TODAY.ready}</h2>
            <Reading of={queue} isEmpty={({ items }) => !items.some(isReady)} empty={TODAY.noneReady}>
              {({ items }) => <Tickets items={items.filter(isReady)} />}
            </Reading>
          </section>
          <RunsLow />
          <DueByGames inShop={new Set(queue.data?.items.map(({ ticket }) => ticket.ballId))} />
        </div>
      </div>
    </main>
  );
}

function isReady({ ticket }: Waiting): boolean {
  return ticket.state === "ready" || ticket.state === "uncollected";
}

/** One line a ball: the whole line leads to its ticket. */
function Tickets({ items }: { readonly items: readonly Waiting[] }) {
  const times = useShopTimes();
  const now = new Date().toISOString();
  return (
    <ul className="queue">
      {items.map(({ ticket, ballName, bowlerName }) => (
        <li key={ticket.id}>
          <Link href={`/tickets/${ticket.id}`} className="queue-line">
            <strong className="queue-ball">{ballName}</strong>
            <span className="queue-owner">{bowlerName ?? TODAY.unknownOwner}</span>
            <span className="queue-state">{TICKET_STATE_WORDS[ticket.state]}</span>
            <span className="queue-due">
              {ticket.promisedFor === null ? TODAY.noPromise : TODAY.promised(times.at(ticket.promisedFor))}
              {ticket.promisedFor !== null && ticket.promisedFor < now && !isReady({ ticket, ballName, bowlerName }) && (
                <em className="late"> {TODAY.late}</em>
              )}
            </span>
          </Link>
        </li>
      ))}
    </ul>
  );
}

function RunsLow() {
  const stock = useRead(["stock"], () => answered(shop["stock-items"].$get({ query: { limit: "200" } })));
  return (
    <section className="plate">
      <h2>{TODAY.low}</h2>
      <Reading of={stock} isEmpty={({ items }) => !items.some(isLow)} empty={TODAY.nothingLow}>
        {({ items }) => (
          <ul>
            {items.filter(isLow).map(({ id, name, quantity, unit, reorderAt }) => (
              <li key={id}>
                {name}: {TODAY.left(quantity, unit, reorderAt ?? 0)}
              </li>
            ))}
          </ul>
        )}
      </Reading>
    </section>
  );
}

function isLow({ state, quantity, reorderAt }: { state: string; quantity: number; reorderAt: number | null }): boolean {
  return state === "in use" && reorderAt !== null && quantity <= reorderAt;
}

/** What is wrong with the records: that the last backup is none, that some of them cannot be read. An owner is led to why, everybody else to an owner. */
export function RecordsTrouble() {
  const { data } = useHealth();
  if (data === undefined) return null;
  return (
    <>
      {data.lastBackup === "failed" && <Trouble what={TODAY.backupFailed} />}
      {data.lostFiles > 0 && <Trouble what={TODAY.lostFiles(data.lostFiles)} />}
      {data.unreadable > 0 && <Trouble what={TODAY.unreadable(data.unreadable)} />}
    </>
  );
}

function Trouble({ what }: { readonly what: string }) {
  const may = useMay();
  return (
    <p className="failed" role="status">
      {what} {may("owner") ? <Link href="/shop">{TODAY.shopSaysWhy}</Link> : TODAY.tellOwner}
    </p>
  );
}
