import { useMemo } from "react";
import type { SignedEntry } from "#contract/records/ticketWork";
import { assume } from "#engine/assumptions";
import type { Work } from "#engine/signed/work";
import { freshRoughness } from "#engine/surface/benchBall";
import { careOf } from "#engine/surface/care";
import { finishText, parseFinish } from "#engine/surface/finish";
import { SHOP_FRAME } from "#words/en/rooms/frame";
import { CARE_CARD, TICKET } from "#words/en/rooms/ticket";
import { benchBallOf } from "../../benchWork/benchBall.ts";
import { workHere } from "../../benchWork/onTheBench.ts";
import { abrasiveName, stageName } from "../../benchWork/plannedStages.ts";
import { useOutbox } from "../../shop/useOutbox.tsx";
import { useSettings } from "../../shop/zone.ts";
import { useStagesDone } from "../ticket/useTicket.ts";
import type { SheetParts } from "./sheetParts.ts";

/** The page handed to the customer: what was done, how to look after it, when to bring it back. Words and games, no percentages. */
export function CareCard({ ticket, ball, bowler }: SheetParts) {
  const settings = useSettings().data;
  const { waiting } = useOutbox();
  const read = useStagesDone(ticket.id).data?.items;
  const work = workHere(ticket, read ?? [], waiting);
  const { finish } = work;
  const text = finish === null ? null : finishText(finish);
  const games = useMemo(() => (text === null ? null : gamesUntilDull(ball, text)), [ball, text]);
  if (read === undefined) return <p className="reading">{SHOP_FRAME.reading}</p>;
  return (
    <article className="care">
      <p className="sheet-shop">
        {settings?.shopName} {settings?.data === "invented" && `(${TICKET.invented})`}
      </p>
      <h2>{ball.name}</h2>
      {bowler !== null && <p>{CARE_CARD.for(bowler.name)}</p>}
      <WorkSoFar ticket={ticket} work={work} />
      <h3>{CARE_CARD.care}</h3>
      <ul>
        {CARE_CARD.rules.map((rule) => (
          <li key={rule}>{rule}</li>
        ))}
      </ul>
      <h3>{CARE_CARD.back}</h3>
      <p>{CARE_CARD.backWhen(games, finish === null ? "unknown" : finish.polished ? "polished" : "sanded")}</p>
      <p className="note">{CARE_CARD.questions}</p>
    </article>
  );
}

/** What was signed, and nothing else; before that, what is to be done. */
function WorkSoFar({ ticket, work }: Pick<SheetParts, "ticket"> & { readonly work: Work<SignedEntry> }) {
  const { signed, surface, next, finish } = work;
  if (signed.length === 0)
    return (
      <>
        <h3>{CARE_CARD.toDo}</h3>
        <p>{ticket.finishAfter === null ? CARE_CARD.notDecided : CARE_CARD.planned(ticket.finishAfter)}</p>
      </>
    );
  const isDone = next === null;
  return (
    <>
      <h3>{isDone ? CARE_CARD.done : CARE_CARD.inWork}</h3>
      <p>
        {isDone && finish !== null && surface.length > 0 && CARE_CARD.doneTo(finishText(finish))}
        {!isDone && CARE_CARD.stillToDo(work.stages.filter(({ by }) => by === null).length)}
      </p>
      <ul className="care-stages">
        {doneOnce(work).map(({ id, kind, label, abrasive, initials }) => (
          <li key={id}>{CARE_CARD.signed(stageName({ kind, what: label }), kind === null ? null : abrasiveName(abrasive), initials)}</li>
        ))}
      </ul>
    </>
  );
}

/** What stands of the work, each thing once: what signs or serves a stage, and whatever else the surface was worked with. */
function doneOnce({ stages, surface, signed }: Work<SignedEntry>): readonly SignedEntry[] {
  const standing = new Set([...stages.map(({ by }) => by), ...surface]);
  return signed.filter((entry) => standing.has(entry));
}

const TO_FIVE = 5;

/** Games until the track has gone a step of the ladder, rounded to five; null where it hardly ever does. */
function gamesUntilDull(ball: SheetParts["ball"], finish: string): number | null {
  const bench = { ...benchBallOf(ball), finish: parseFinish(finish), gamesSince: 0 };
  const { refresh } = careOf({
    cover: bench.cover,
    startUm: freshRoughness(bench, assume()),
    gamesSince: 0,
    gamesSinceExtraction: 0,
    gamesSinceResurfacing: 0,
    abrasiveness: 1,
    readings: [],
  });
  return refresh.value === null ? null : Math.max(TO_FIVE, TO_FIVE * Math.round(refresh.value / TO_FIVE));
}
