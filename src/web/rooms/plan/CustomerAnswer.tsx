import { CUSTOMER } from "#words/en/screens";
import type { Pictures } from "../../client/protocol.ts";
import { Picture, PictureForWidth } from "../../pieces/Picture.tsx";
import type { Answered } from "./usePlan.ts";

/** The answer for the bowler at the counter: feet and words, no chances. */
export function CustomerAnswer({
  answered,
  pictures,
  name,
}: {
  readonly answered: Answered;
  readonly pictures: Pictures | null;
  readonly name: string;
}) {
  const { pick, today } = answered.plan;
  const change = pictures?.change ?? null;
  const sentences =
    pick === null || change === null
      ? []
      : [
          change.hookLaterFt === null ? null : CUSTOMER.hook(change.hookLaterFt),
          change.entrySteeperDeg === null ? null : CUSTOMER.turn(change.entrySteeperDeg),
          CUSTOMER.move(change.laydownInBoards, answered.question.bowler.hand),
          change.firstShotBoards === null ? null : CUSTOMER.firstShot(change.firstShotBoards),
        ].filter((s) => s !== null);
  return (
    <section className="customer" aria-live="polite">
      <h2>{CUSTOMER.title(name)}</h2>
      <p className="customer-pick">
        {pick !== null && <Picture svg={pictures?.swatches[pick.finish] ?? ""} className="swatch verdict-swatch" />}
        <span>{pick === null ? CUSTOMER.noPick : pick.finish === today.finish ? CUSTOMER.same : CUSTOMER.take(pick.finish)}</span>
      </p>
      <ul>
        {sentences.map((s) => (
          <li key={s}>{s}</li>
        ))}
      </ul>
      {pictures !== null && <PictureForWidth svg={pictures.lane} className="lane-chart" />}
      <p className="note">{CUSTOMER.worn}</p>
    </section>
  );
}
