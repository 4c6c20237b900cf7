import { useMemo } from "react";
import { assume } from "#engine/assumptions";
import { freshRoughness } from "#engine/surface/benchBall";
import { careOf } from "#engine/surface/care";
import { parseFinish } from "#engine/surface/finish";
import { CARE_CARD, TICKET } from "#words/en/rooms/ticket";
import { benchBallOf } from "../../benchWork/benchBall.ts";
import { signatures } from "../../benchWork/signedStages.ts";
import { useSettings } from "../../shop/zone.ts";
import { useStagesDone } from "../ticket/useTicket.ts";
import type { SheetParts } from "./sheetParts.ts";

/** The page handed to the customer: what was done, how to look after it, when to bring it back. Words and games, no percentages. */
export function CareCard({ ticket, ball, bowler }: SheetParts) {
  const settings = useSettings().data;
  const done = signatures(ticket, useStagesDone(ticket.id).data?.items ?? []).filter((one) => one !== null);
  const finish = ticket.finishAfter ?? ticket.finishBefore;
  const games = useMemo(() => (finish === null ? null : gamesUntilDull(ball, finish)), [ball, finish]);
  return (
    <article className="care">
      <p className="sheet-shop">
        {settings?.shopName} {settings?.data === "invented" && `(${TICKET.invented})`}
      </p>
      <h2>{ball.name}</h2>
      {bowler !== null && <p>{CARE_CARD.for(bowler.name)}</p>}
      <h3>{CARE_CARD.done}</h3>
      <p>
        {finish !== null && CARE_CARD.doneTo(finish)} {done.length > 0 && CARE_CARD.stagesDone(done.length)}
      </p>
      <h3>{CARE_CARD.care}</h3>
      <ul>
        {CARE_CARD.rules.map((rule) => (
          <li key={rule}>{rule}</li>
        ))}
      </ul>
      <h3>{CARE_CARD.back}</h3>
      <p>{games === null ? CARE_CARD.backNever : CARE_CARD.backIn(games)}</p>
      <p className="note">{CARE_CARD.questions}</p>
    </article>
  );
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
