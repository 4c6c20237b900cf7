import { useQueries } from "@tanstack/react-query";
import { useEffect } from "react";
import { Link } from "wouter";
import { BENCH } from "#words/en/rooms/bench";
import { SHOP_FRAME } from "#words/en/rooms/frame";
import type { OnTheBench } from "../../benchWork/onTheBench.ts";
import { answered, shop } from "../../shop/shopClient.ts";
import { useOutbox } from "../../shop/useOutbox.tsx";
import { Guide } from "./Guide.tsx";
import { useAwake } from "./useAwake.ts";

/** A colleague may stop the work, or change it, at any moment, ms. */
const LOOK_AGAIN_MS = 5000;

/** The work guide: one ball, or a batch by stage, one step at a time. Ids of tickets stand in the address, with commas between. */
export function BenchRoom({ params }: { readonly params: Readonly<Record<string, string>> }) {
  const ids = params.ids.split(",");
  const onBench = useQueries({
    queries: ids.map((id) => ({
      queryKey: ["tickets", id, "bench"],
      queryFn: () => readForBench(id),
      refetchInterval: LOOK_AGAIN_MS,
      networkMode: "always" as const,
    })),
  });
  const isAwake = useAwake();
  const { waiting } = useOutbox();
  useEffect(() => {
    document.title = BENCH.title;
  }, []);
  const read = onBench.flatMap(({ data }) => (data === undefined ? [] : [data]));
  const failed = onBench.find(({ error, data }) => error !== null && data === undefined);
  return (
    <main id="answer" className="bench-room" tabIndex={-1}>
      <div className="bench-top">
        <Link href={`/tickets/${ids[0]}`} className="button">
          {BENCH.leave}
        </Link>
        {waiting.length > 0 && <p role="status">{BENCH.waits(waiting.length)}</p>}
        {!isAwake && <p className="note">{BENCH.noWake}</p>}
      </div>
      {failed !== undefined && <p role="alert">{SHOP_FRAME.failedToRead(failed.error?.message ?? "")}</p>}
      {read.length === ids.length ? <Guide onBench={read} /> : failed === undefined && <p>{SHOP_FRAME.reading}</p>}
    </main>
  );
}

async function readForBench(id: string): Promise<OnTheBench> {
  const ticket = await answered(shop.tickets[":id"].$get({ param: { id } }));
  const [ball, done] = await Promise.all([
    answered(shop.balls[":id"].$get({ param: { id: ticket.ballId } })),
    answered(shop["stages-done"].$get({ query: { ticketId: id, limit: "200" } })),
  ]);
  return { ticket, ball, done: done.items };
}
