import { useQueries } from "@tanstack/react-query";
import { useEffect, useState } from "react";
import { Link, Redirect, useSearchParams } from "wouter";
import type { Ticket } from "#contract/records/ticket";
import type { SignedEntry } from "#contract/records/ticketWork";
import type { Work } from "#engine/signed/work";
import { BENCH } from "#words/en/rooms/bench";
import { SHOP_FRAME } from "#words/en/rooms/frame";
import { type OnTheBench, workHere } from "../../benchWork/onTheBench.ts";
import { answered, shop } from "../../shop/shopClient.ts";
import { useKept } from "../../shop/useKept.ts";
import { useOutbox } from "../../shop/useOutbox.tsx";
import { AllDone } from "./AllDone.tsx";
import { AT_THE_BEGINNING, afterACut, shownAgain, stepsOf, unseenOf } from "./guide.ts";
import { StepScreen } from "./StepScreen.tsx";
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

const AGAIN_MS = 200;
/** The same for every way in which the guide is opened: what is kept hangs on the balls. */
const MEMORY = "gritwright.bench";

function Guide({ onBench }: { readonly onBench: readonly OnTheBench[] }) {
  const [kept, setKept] = useKept(MEMORY, () => AT_THE_BEGINNING);
  const [now, setNow] = useState(() => Date.now());
  // A clock that ran when the page went stands until somebody has said whether the spinner ran on.
  useEffect(() => setKept(afterACut), [setKept]);
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), AGAIN_MS);
    return () => clearInterval(timer);
  }, []);
  const { waiting } = useOutbox();
  // Measuring sent one side back: once it is worked it is read again there.
  const readAgain = useSearchParams()[0].get("read");
  const works = new Map(onBench.map(({ ticket, done }) => [ticket.id, workHere(ticket, done, waiting)]));
  const tickets = onBench.map(({ ticket }) => ticket);
  const total = tickets.reduce((sum, { stages }) => sum + stages.length, 0);
  const steps = stepsOf(tickets, (ticketId) => openStages(tickets, ticketId, works.get(ticketId)));
  const [step] = steps;
  if (total === 0) return <p className="bench-big">{BENCH.nothingToDo}</p>;
  if (readAgain !== null && onBench.length === 1 && (step === undefined || step.stage.kind === "check")) {
    const [{ ticket, ball }] = onBench;
    return <Redirect to={`/measure?ball=${ball.id}&ticket=${ticket.id}&side=${readAgain}`} replace />;
  }
  if (step === undefined) return <AllDone onBench={onBench} />;
  const here = onBench.find(({ ticket }) => ticket.id === step.ticketId);
  const standing = works.get(step.ticketId)?.stages.find(({ stage }) => stage.id === step.stage.id);
  if (here === undefined || standing === undefined) return null;
  const work = works.get(step.ticketId) as Work<SignedEntry>;
  const stage = { ...step.stage, secondsPerSide: standing.againSeconds ?? step.stage.secondsPerSide };
  // What a step before it asked for counts here too: it may have been signed on another device.
  const at = here.ticket.stages.findIndex(({ id }) => id === stage.id);
  const cautions = [...new Set(here.ticket.stages.slice(0, at + 1).flatMap((one) => one.cautions))];
  return (
    <>
      <StepPlace
        here={here}
        work={work}
        at={total - steps.length + 1}
        of={total}
        onShowCautions={() => setKept((old) => shownAgain(old, cautions))}
      />
      <StepScreen
        key={`${step.ticketId} ${step.stage.id}`}
        here={here}
        stage={stage}
        sidesLeft={standing.sidesLeft}
        again={standing.again}
        work={work}
        unseen={unseenOf(kept, cautions, now)}
        state={kept}
        nowMs={now}
        onChange={setKept}
      />
    </>
  );
}

interface PlaceProps {
  readonly here: OnTheBench;
  readonly work: Work<SignedEntry>;
  readonly at: number;
  readonly of: number;
  onShowCautions(): void;
}

/** Which ball and which step, how far this ball is, and the way to the cautions once more. */
function StepPlace({ here: { ticket, ball }, work, at, of, onShowCautions }: PlaceProps) {
  return (
    <>
      <p className="bench-place">
        <strong>{ball.name}</strong> {ball.serial !== null && `· ${ball.serial}`} · {BENCH.step(at, of)}{" "}
        <button type="button" className="bench-triangle" aria-label={BENCH.showCautions} onClick={onShowCautions}>
          △
        </button>
      </p>
      <div className="bench-bar" aria-hidden="true">
        {work.stages.map(({ stage, by, sidesLeft }, i) => {
          const sides = Math.max(1, stage.sideIds.length);
          const share = by !== null ? 1 : stage.sideIds.length === 0 ? 0 : 1 - sidesLeft.length / sides;
          const weight = Math.max(60, sides * (ticket.stages[i].secondsPerSide ?? 0));
          return (
            <span key={stage.id} style={{ flexGrow: weight }}>
              <i style={{ width: `${100 * share}%` }} />
            </span>
          );
        })}
      </div>
    </>
  );
}

function openStages(
  tickets: readonly Ticket[],
  ticketId: string,
  work: Work<SignedEntry> | undefined,
): readonly Ticket["stages"][number][] {
  const open = new Set(work?.stages.flatMap(({ stage, by }) => (by === null ? [stage.id] : [])));
  return (tickets.find(({ id }) => id === ticketId)?.stages ?? []).filter(({ id }) => open.has(id));
}
