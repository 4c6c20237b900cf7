import { useState } from "react";
import type { Ball } from "#contract/records/ball";
import type { Reading } from "#contract/records/reading";
import type { ReferenceBall } from "#contract/records/stock";
import type { Ticket } from "#contract/records/ticket";
import { SIDE_NAMES } from "#words/en/padWork";
import { COUNTER_FINISHES } from "#words/en/rooms/intake";
import { MEASURE } from "#words/en/rooms/measure";
import { benchBallOf } from "../../benchWork/benchBall.ts";
import { OneOf } from "../../pieces/OneOf.tsx";
import { WordField } from "../../pieces/PlainFields.tsx";
import { answered, newKey, shop } from "../../shop/shopClient.ts";
import { useKept } from "../../shop/useKept.ts";
import { useOutbox } from "../../shop/useOutbox.tsx";
import { useRead } from "../../shop/useShop.ts";
import { SheenAgreement, TesterAgreement } from "./Agreement.tsx";
import {
  afterKeeping,
  emptyReadings,
  type ReadingsDraft,
  type RoughnessUnit,
  readingsToKeep,
  sheenVerdict,
  sidesVerdict,
} from "./entries.ts";
import { SheenSides, TesterSides } from "./Sides.tsx";

interface EnteringProps {
  readonly ball: Ball;
  readonly ticket: Ticket | null;
  readonly unit: RoughnessUnit;
}

const NOT_RECORDED = "";

/** The form on one side, what it says about the ball on the other. What is typed survives a reload. */
export function Entering({ ball, ticket, unit }: EnteringProps) {
  const [draft, setDraft] = useKept<ReadingsDraft>(`gritwright.measure.${ticket?.id ?? ball.id}`, () =>
    emptyReadings(newKey(), usualWhen(ticket), "reference ball"),
  );
  const change = (part: Partial<ReadingsDraft>) => setDraft((old) => ({ ...old, ...part }));
  const references = useRead(["reference-balls"], () =>
    answered(shop["reference-balls"].$get({ query: { order: "newest first", limit: "200" } })),
  );
  const known = references.data?.items ?? [];
  const referenceBallId = draft.referenceBallId ?? known[0]?.id ?? NOT_RECORDED;
  const reference = known.find(({ id }) => id === referenceBallId) ?? null;
  const wanted = draft.wanted ?? usualWanted(draft.when, ticket) ?? "";
  const isByEye = draft.how === "reference ball";
  const { cover, diameterIn } = benchBallOf(ball);
  const lastAbrasive = ticket?.stages.findLast(({ kind }) => kind === "cut")?.abrasive ?? null;
  return (
    <form className="room-columns" onSubmit={(event) => event.preventDefault()} aria-label={MEASURE.title}>
      <section className="plate">
        <div className="field-row">
          <OneOf label={MEASURE.howLabel} value={draft.how} words={MEASURE.ways} onChange={(how) => change({ how })} />
        </div>
        <div className="field-row">
          <WordField
            label={MEASURE.whenLabel}
            value={draft.when}
            words={MEASURE.when}
            onChange={(when) => change({ when: when as Reading["when"] })}
          />
          {isByEye && (
            <WordField
              label={MEASURE.reference}
              value={referenceBallId}
              words={referenceWords(known)}
              onChange={(id) => change({ referenceBallId: id })}
            />
          )}
          <WordField label={MEASURE.wanted} value={wanted} words={wantedWords(wanted)} onChange={(finish) => change({ wanted: finish })} />
        </div>
        <p className="note">{isByEye ? MEASURE.sheenHelp : MEASURE.testerHelp}</p>
        {isByEye ? (
          <SheenSides
            sheen={draft.sheen}
            onChange={(side, comparison) => setDraft((old) => ({ ...old, sheen: { ...old.sheen, [side]: comparison } }))}
          />
        ) : (
          <TesterSides
            typed={draft.typed}
            unit={unit}
            onChange={(side, typed) => setDraft((old) => ({ ...old, typed: { ...old.typed, [side]: typed } }))}
          />
        )}
        <KeepThem draft={draft} setDraft={setDraft} ball={ball} ticket={ticket} unit={unit} reference={reference} />
      </section>
      <section className="plate" aria-live="polite">
        <h2>{MEASURE.verdict}</h2>
        {isByEye ? (
          <SheenAgreement found={sheenVerdict(draft.sheen, draft.when === "after" && wanted !== "" && reference?.finish === wanted)} />
        ) : (
          <TesterAgreement when={draft.when} found={sidesVerdict(draft.typed, { unit, cover, diameterIn, wanted, lastAbrasive })} />
        )}
      </section>
    </form>
  );
}

interface KeepProps extends EnteringProps {
  readonly draft: ReadingsDraft;
  setDraft(draft: ReadingsDraft): void;
  readonly reference: ReferenceBall | null;
}

/** Hands the readings to the shop; where its server is away they wait in this browser, and the page says so. */
function KeepThem({ draft, setDraft, ball, ticket, unit, reference }: KeepProps) {
  const { outbox, waiting } = useOutbox();
  const [handedOver, setHandedOver] = useState<readonly string[]>([]);
  const [emptied, setEmptied] = useState<ReadingsDraft | null>(null);
  const belongs = { ballId: ball.id, ticketId: ticket?.id ?? null, referenceBallId: reference?.id ?? null, unit };
  const count = readingsToKeep(draft, { ...belongs, at: "" }).length;
  const isWithShop = handedOver.length > 0 && !waiting.some(({ key }) => handedOver.includes(key));
  const keep = () => {
    const readings = readingsToKeep(draft, { ...belongs, at: new Date().toISOString() });
    for (const { key, side, body } of readings)
      outbox.add({ key, path: "/api/readings", body, what: MEASURE.reading(ball.name, SIDE_NAMES[side]) });
    setHandedOver(readings.map(({ key }) => key));
    setEmptied(null);
    setDraft(afterKeeping(draft, unit, newKey()));
  };
  return (
    <>
      <div className="choices-words">
        <button type="button" className="button primary" data-keep disabled={count === 0} onClick={keep}>
          {MEASURE.keep(count)}
        </button>
        {emptied === null ? (
          <button
            type="button"
            className="button"
            onClick={() => {
              setEmptied(draft);
              setDraft({ ...draft, sheen: {}, typed: {} });
            }}
          >
            {MEASURE.empty}
          </button>
        ) : (
          <button
            type="button"
            className="button"
            onClick={() => {
              setDraft(emptied);
              setEmptied(null);
            }}
          >
            {MEASURE.undo}
          </button>
        )}
      </div>
      <p role="status">{isWithShop && MEASURE.kept(handedOver.length)}</p>
    </>
  );
}

/** Before the work, until the ticket says that it is done. */
function usualWhen(ticket: Ticket | null): Reading["when"] {
  if (ticket === null) return "between";
  return ticket.state === "drying" || ticket.state === "ready" ? "after" : "before";
}

/** What the sides are held against: after the work the finish it was to give; before it nothing is wanted of them yet. */
function usualWanted(when: Reading["when"], ticket: Ticket | null): string | null {
  return when === "after" ? (ticket?.finishAfter ?? null) : null;
}

function referenceWords(known: readonly ReferenceBall[]): Readonly<Record<string, string>> {
  return { ...Object.fromEntries(known.map(({ id, name }) => [id, name])), [NOT_RECORDED]: MEASURE.unrecordedReference };
}

function wantedWords(wanted: string): Readonly<Record<string, string>> {
  return {
    "": MEASURE.wantedUnknown,
    ...Object.fromEntries([...COUNTER_FINISHES, wanted].flatMap((one) => (one === "" ? [] : [[one, one]]))),
  };
}
