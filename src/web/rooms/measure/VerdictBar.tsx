import { useState } from "react";
import { useLocation } from "wouter";
import type { Ball } from "#contract/records/ball";
import type { Ticket } from "#contract/records/ticket";
import type { SignedEntry } from "#contract/records/ticketWork";
import type { Work } from "#engine/signed/work";
import { MEASURE, PLACE_LABELS } from "#words/en/rooms/measure";
import { abrasiveName } from "../../benchWork/plannedStages.ts";
import { useSign } from "../../benchWork/useSign.ts";
import { READ_ORDER } from "../../measured/entries.ts";
import { judgedText, worst } from "../../measured/judgedText.ts";
import { LineField } from "../../pieces/PlainFields.tsx";
import { useTicketWrites } from "../../shop/ticketWrites.ts";
import { useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import type { Measuring } from "./useMeasuring.ts";

interface BarProps {
  readonly ball: Ball;
  readonly ticket: Ticket | null;
  readonly work: Work<SignedEntry> | null;
  readonly measuring: Measuring;
}

/** What the sides say, docked where it stays in view: which one is off, and what can be done about it. */
export function VerdictBar({ ball, ticket, work, measuring }: BarProps) {
  const { judged, areWaiting, undo, takeBack } = measuring;
  const [isKeeping, setKeeping] = useState(false);
  const off = ticket !== null && measuring.when === "after" ? worst(judged) : null;
  const kept = ticket?.keptAsIs.at(-1) ?? null;
  const isKept =
    off !== null && kept !== null && judged.off.every(({ side }) => kept.places.includes(side)) && isNewest(kept.at, measuring);
  const stage = work?.stages.findLast(({ stage: { kind }, by }) => kind === "cut" && by !== null)?.stage ?? null;
  const planned = ticket?.stages.find(({ id }) => id === stage?.id) ?? null;
  const seconds = off?.moreSeconds ?? planned?.secondsPerSide ?? null;
  const pad = abrasiveName(planned?.abrasive ?? null) ?? "–";
  const how = off === null || planned === null || seconds === null ? null : MEASURE.redoHow(PLACE_LABELS[off.side], pad, seconds);
  const count = judged.read.length;
  return (
    <section className="verdict-bar" aria-label={MEASURE.verdict}>
      <div className="verdict-said" aria-live="polite">
        <h2>{judgedText(judged)}</h2>
        <p>
          {isKept ? MEASURE.keptAsIs(kept.why) : judged.isSure ? null : MEASURE.readAgain}{" "}
          {!isKept && how !== null && <span className="verdict-how">{how} </span>}
          {count > 0 && (areWaiting ? MEASURE.waits(count, READ_ORDER.length) : MEASURE.saved(count, READ_ORDER.length))}
        </p>
      </div>
      {isKeeping && ticket !== null ? (
        <KeepAsIs ticket={ticket} places={judged.off.map(({ side }) => side)} onDone={() => setKeeping(false)} />
      ) : (
        <div className="verdict-acts">
          {undo.length > 0 && (
            <button type="button" className="button quiet" onClick={() => takeBack(undo)}>
              {MEASURE.undo(PLACE_LABELS[undo[0].place as keyof typeof PLACE_LABELS] ?? undo[0].place)}
            </button>
          )}
          {off !== null && !isKept && (
            <button type="button" className="button" onClick={() => setKeeping(true)}>
              {MEASURE.keepAsIs}
            </button>
          )}
          {off !== null && ticket !== null && planned !== null && seconds !== null && !isKept && (
            <Redo ball={ball} ticket={ticket} stage={planned} side={off.side} seconds={seconds} />
          )}
        </div>
      )}
    </section>
  );
}

/** Whether nothing was read since somebody said that it stays as it is. */
function isNewest(at: string, { undo }: Measuring): boolean {
  return undo.every((one) => one.at <= at);
}

interface RedoProps {
  readonly ball: Ball;
  readonly ticket: Ticket;
  readonly stage: Ticket["stages"][number];
  readonly side: (typeof READ_ORDER)[number];
  readonly seconds: number;
}

/** Puts exactly this side back into the work, and opens the guide there. */
function Redo({ ball, ticket, stage, side, seconds }: RedoProps) {
  const sign = useSign();
  const [, go] = useLocation();
  const redo = () => {
    sign.redo({ ticket, ball, done: [] }, stage, [side], seconds);
    go(`/bench/${ticket.id}?read=${side}`);
  };
  return (
    <button type="button" className="button primary" disabled={sign.initials === null} onClick={redo}>
      {MEASURE.redo}
    </button>
  );
}

interface KeepProps {
  readonly ticket: Ticket;
  readonly places: readonly string[];
  onDone(): void;
}

/** Left as it is, with the reason: who looks at the ball later wants to know. */
function KeepAsIs({ ticket, places, onDone }: KeepProps) {
  const [why, setWhy] = useState("");
  const { change } = useTicketWrites();
  const keep = useWrite(async () => {
    const entry = { at: new Date().toISOString(), places: [...places], why: why.trim() };
    await change(ticket, { keptAsIs: [...ticket.keptAsIs, entry] });
    onDone();
  }, ["tickets"]);
  return (
    <form
      className="verdict-keep"
      onSubmit={(event) => {
        event.preventDefault();
        if (why.trim() !== "") keep.mutate(undefined);
      }}
    >
      <LineField label={MEASURE.keepWhy} value={why} onChange={setWhy} />
      <button type="submit" className="button primary" disabled={why.trim() === "" || keep.isPending}>
        {MEASURE.keepIt}
      </button>
      <button type="button" className="button" onClick={onDone}>
        {MEASURE.cancel}
      </button>
      <WriteFault error={keep.error} />
    </form>
  );
}
