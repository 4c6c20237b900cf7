import { countedSinceWork, gamesWord } from "#contract/records/benchBall";
import { SHOP_FRAME } from "#words/en/rooms/frame";
import { INTAKE, SYMPTOMS } from "#words/en/rooms/intake";
import { PRINT } from "#words/en/rooms/print";
import { TICKET } from "#words/en/rooms/ticket";
import { messageText } from "#words/messageText";
import { judgedText } from "../../measured/judgedText.ts";
import { useSaidAtCounter } from "../../shop/useSaidAtCounter.ts";
import { useShopTimes } from "../../shop/zone.ts";
import { agreedBySheen, agreedByTester } from "./agreement.ts";
import { SheetHead } from "./SheetHead.tsx";
import { StageTable } from "./StageTable.tsx";
import type { SheetParts } from "./sheetParts.ts";
import { useReadOf } from "./useReadOf.ts";

/** The ticket that lies with the ball at the bench: what is wanted, the stages to sign, the cautions. */
export function TicketSheet({ ticket, ball, bowler }: SheetParts) {
  const times = useShopTimes();
  const told = useSaidAtCounter(ticket, ball);
  const symptoms = ticket.symptoms.map((id) => (id in SYMPTOMS ? SYMPTOMS[id as keyof typeof SYMPTOMS] : id));
  const cautions = [...new Set(ticket.stages.flatMap((stage) => stage.cautions))];
  return (
    <article>
      <SheetHead ticket={ticket} ball={ball} bowler={bowler}>
        <p>
          <strong>
            {TICKET.promised} {ticket.promisedFor === null ? TICKET.noPromise : times.onPaper(ticket.promisedFor)}
          </strong>
        </p>
      </SheetHead>
      {ticket.stops
        .filter(({ clearedAt }) => clearedAt === null)
        .map(({ at, why }) => (
          <p key={at} className="stop">
            {TICKET.stops}: {why}
          </p>
        ))}
      <p className="sheet-finish">
        {TICKET.before} {ticket.finishBefore ?? INTAKE.finishUnknown} → {TICKET.after}{" "}
        <strong>{ticket.finishAfter ?? TICKET.notDecided}</strong>
      </p>
      {(symptoms.length > 0 || ticket.complaint !== "") && (
        <p>
          {symptoms.join(" ")} {ticket.complaint}
        </p>
      )}
      {ticket.findings !== "" && (
        <p>
          {INTAKE.found}: {ticket.findings}
        </p>
      )}
      {told.map(([name, text]) => (
        <p key={name}>
          {name}: {text}
        </p>
      ))}
      <p>{deliveryOf(bowler, ball).join(" · ")}</p>
      <WorkSoFar {...{ ticket, ball, bowler }} />
      {cautions.length > 0 && (
        <section>
          <h3>{PRINT.cautions}</h3>
          <ul className="sheet-cautions">
            {cautions.map((id) => (
              <li key={id}>{messageText({ id: `caution.${id}`, params: {} })}</li>
            ))}
          </ul>
        </section>
      )}
    </article>
  );
}

/** Speed and hook of whoever bowls it, and the games since the last work where nothing stands of them: what nobody knows is said to be not known. */
function deliveryOf(bowler: SheetParts["bowler"], ball: SheetParts["ball"]): readonly string[] {
  const last = bowler?.deliveries.at(-1);
  const speed = last?.speedMph != null ? PRINT.mph(last.speedMph) : last?.speed != null ? INTAKE.speeds[last.speed] : PRINT.notKnown;
  const hook = last?.revRateRpm != null ? PRINT.rpm(last.revRateRpm) : last?.hook != null ? INTAKE.hooks[last.hook] : PRINT.notKnown;
  const hasGames = countedSinceWork(ball) > 0 || gamesWord(ball) !== null;
  return [...(hasGames ? [] : [`${INTAKE.gamesSince}: ${PRINT.notKnown}`]), `${INTAKE.speed}: ${speed}`, `${INTAKE.hook}: ${hook}`];
}

/** Whether the work is to be done, is being done or is done, and whether it was measured: a sheet that was printed early says so. */
function WorkSoFar(parts: SheetParts) {
  const read = useReadOf(parts);
  if (read === null) return <p className="reading">{SHOP_FRAME.reading}</p>;
  const { stages, next } = read.work;
  const done = stages.filter(({ by }) => by !== null).length;
  const agreed = agreedByTester("after", read) ?? agreedBySheen("after", read, read.references);
  return (
    <>
      {stages.length > 0 && (
        <p className="sheet-far">
          <strong>{next === null ? PRINT.isDone : done === 0 ? PRINT.toBeDone : PRINT.inWork(done, stages.length)}</strong>{" "}
          {agreed !== null ? PRINT.isMeasured(judgedText(agreed.judged)) : next === null && PRINT.notMeasured}
        </p>
      )}
      <StageTable ticket={parts.ticket} work={read.work} />
    </>
  );
}
