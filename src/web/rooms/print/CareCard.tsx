import { useMemo } from "react";
import { Link } from "wouter";
import type { SignedEntry } from "#contract/records/ticketWork";
import { careFan } from "#drawing/careFan";
import type { Work } from "#engine/signed/work";
import { finishText } from "#engine/surface/finish";
import { CARE_CARD } from "#words/en/rooms/careCard";
import { SHOP_FRAME } from "#words/en/rooms/frame";
import { PRINT } from "#words/en/rooms/print";
import { TICKET } from "#words/en/rooms/ticket";
import { abrasiveName, stageName } from "../../benchWork/plannedStages.ts";
import { judgedText } from "../../measured/judgedText.ts";
import { FinishSwatch } from "../../pieces/FinishSwatch.tsx";
import { Picture } from "../../pieces/Picture.tsx";
import { everyPage } from "../../shop/everyPage.ts";
import { answered, shop } from "../../shop/shopClient.ts";
import { useRead } from "../../shop/useShop.ts";
import { useSettings, useShopTimes } from "../../shop/zone.ts";
import { agreedBySheen, agreedByTester } from "./agreement.ts";
import { comeBack } from "./comeBack.ts";
import type { SheetParts } from "./sheetParts.ts";
import { type StepDone, stepsDone } from "./stepsDone.ts";
import { useReadOf } from "./useReadOf.ts";

/** The page handed to the customer: what the ball is now, what it does, what was done, when it comes back. Nothing that was not signed, nothing that was not planned. */
export function CareCard(parts: SheetParts) {
  const { ticket, ball, bowler } = parts;
  const settings = useSettings().data;
  const times = useShopTimes();
  const read = useReadOf(parts);
  if (read === null) return <p className="reading">{SHOP_FRAME.reading}</p>;
  const { work } = read;
  if (work.signed.length === 0) return <SignFirst ticketId={ticket.id} />;
  const isDone = work.next === null;
  const finish = isDone && work.finish !== null ? finishText(work.finish) : null;
  const title = finish !== null ? CARE_CARD.isAt(ball.name, finish) : isDone ? CARE_CARD.isDone(ball.name) : CARE_CARD.inWork(ball.name);
  const was = ticket.finishBefore === null || finish === null ? null : CARE_CARD.wasAt(ticket.finishBefore);
  return (
    <article className="care">
      <header className="care-top">
        <span>
          {settings?.shopName} {settings?.data === "invented" && `(${TICKET.invented})`}
        </span>
        <span>{times.day(new Date().toISOString())}</span>
      </header>
      <div className="care-title">
        {finish !== null && <FinishSwatch finish={finish} />}
        <div>
          <h2>{title}</h2>
          <p>{[bowler?.name ?? null, was].filter((part) => part !== null).join(" · ")}</p>
        </div>
      </div>
      {finish !== null && <WhatItDoes {...parts} finish={finish} />}
      <section>
        <h3>{CARE_CARD.did}</h3>
        {!isDone && <p>{CARE_CARD.left(work.stages.filter(({ by }) => by === null).length)}</p>}
        <WhatWeDid work={work} />
        <Proved parts={parts} isDone={isDone} />
      </section>
      {finish !== null && <ComeBackIn {...parts} work={work} />}
      <section>
        <h3>{CARE_CARD.care}</h3>
        <ul className="care-rules">
          {CARE_CARD.rules.map((rule) => (
            <li key={rule}>{rule}</li>
          ))}
        </ul>
      </section>
      <footer className="care-foot">
        <span>{CARE_CARD.events}</span>
        <span>{ball.serial}</span>
      </footer>
    </article>
  );
}

function SignFirst({ ticketId }: { readonly ticketId: string }) {
  return (
    <div className="care-none">
      <h2>{CARE_CARD.signFirst}</h2>
      <p>{CARE_CARD.signFirstWhy}</p>
      <Link href={`/bench/${ticketId}`} className="button no-print">
        {CARE_CARD.toGuide}
      </Link>
    </div>
  );
}

/** By the plan that was taken for exactly this finish; without one nothing is said. */
function WhatItDoes({ ticket: { predicted }, finish }: SheetParts & { readonly finish: string }) {
  const svg = useMemo(
    () => (predicted === null ? "" : careFan({ ...predicted, nowName: CARE_CARD.nowMoved(predicted.moveInBoards, predicted.hand) })),
    [predicted],
  );
  if (predicted === null || predicted.to !== finish) return null;
  const { hookLaterFt, moveInBoards, hand, sharperDeg } = predicted;
  return (
    <section>
      <h3>{CARE_CARD.does}</h3>
      <p className="care-does">
        {hookLaterFt !== null && CARE_CARD.hooks(hookLaterFt)} {CARE_CARD.move(moveInBoards, hand, sharperDeg)}
      </p>
      <Picture svg={svg} className="care-fan" />
      <p className="note">{CARE_CARD.fromPlan}</p>
    </section>
  );
}

/** What stands of the work, with who signed it. */
function WhatWeDid({ work }: { readonly work: Work<SignedEntry> }) {
  return (
    <ul className="care-stages">
      {stepsDone(work).map((step) => (
        <li key={step.entry.id}>
          <span>{stepText(step)}</span> <span>{step.entry.initials}</span>
        </li>
      ))}
    </ul>
  );
}

function stepText({ entry: { kind, label, abrasive, way, sidesDone }, sides: left, isOpen }: StepDone): string {
  if (kind === null) return label === "" ? stageName({ kind, what: label }) : label;
  const tool = abrasiveName(abrasive);
  const step = CARE_CARD.step(kind, tool);
  const water = way === null ? null : way.endsWith("wet") ? CARE_CARD.way.wet : CARE_CARD.way.dry;
  const whole = kind === "check" || sidesDone.length === 0 ? null : CARE_CARD.sides(sidesDone.length);
  const sides = isOpen ? CARE_CARD.sidesOpen(left.length, sidesDone.length) : whole;
  const said = [step, tool === null ? null : water, sides].filter((part) => part !== null).join(", ");
  return `${said.slice(0, 1).toUpperCase()}${said.slice(1)}`;
}

/** What measuring says of the sides after the work; that nobody measured, once the work is done. */
function Proved({ parts, isDone }: { readonly parts: SheetParts; readonly isDone: boolean }) {
  const read = useReadOf(parts);
  if (read === null) return null;
  const agreed = agreedByTester("after", read) ?? agreedBySheen("after", read, read.references);
  if (agreed === null) return isDone ? <p>{PRINT.notMeasured}</p> : null;
  const said = judgedText(agreed.judged);
  return <p>{agreed.how === "tester" ? CARE_CARD.measured(said) : CARE_CARD.seen(said)}</p>;
}

function ComeBackIn({ ticket, ball, work }: SheetParts & { readonly work: Work<SignedEntry> }) {
  const times = useShopTimes();
  const tickets = useRead(["tickets", "all of ball", ticket.ballId], () =>
    everyPage((after) => answered(shop.tickets.$get({ query: { ballId: ticket.ballId, limit: "200", ...after } }))),
  ).data;
  if (tickets === undefined || work.finish === null) return null;
  const due = comeBack(ball, tickets, work, work.finish, Date.now());
  const worn = work.finish.polished ? "polished" : "sanded";
  if (due === null)
    return (
      <section>
        <h3>{CARE_CARD.backWhen}</h3>
        <p>{CARE_CARD.signs[worn]}</p>
      </section>
    );
  return (
    <section>
      <h3>{CARE_CARD.back}</h3>
      <div className="care-back">
        <p className="care-games">{CARE_CARD.games(due.games)}</p>
        <p>
          {CARE_CARD.whenFor(due.at === null ? null : times.longDay(due.at), CARE_CARD.whatFor[due.why])} {CARE_CARD.sooner[worn]}
        </p>
      </div>
    </section>
  );
}
