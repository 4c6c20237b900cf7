import type { Ball } from "#contract/records/ball";
import { INTAKE } from "#words/en/rooms/intake";
import { knownFinish } from "../../benchWork/benchBall.ts";
import { BallSwatch } from "../../pieces/BallSwatch.tsx";
import { everyPage } from "../../shop/everyPage.ts";
import { answered, shop } from "../../shop/shopClient.ts";
import { useQueue } from "../../shop/useQueue.ts";
import { useRead } from "../../shop/useShop.ts";
import { type DueBall, dueByGames } from "../today/dueByGames.ts";

/** As many as find room before anybody looks further. */
const MOST = 6;

interface HereProps {
  onBall(ball: Ball): void;
  onNew(): void;
}

/** Before anybody has come: balls that are due by their games, to be tapped when they are brought, and somebody new. */
export function HereThisWeek({ onBall, onNew }: HereProps) {
  const inShop = new Set((useQueue().data?.items ?? []).map(({ ticket }) => ticket.ballId));
  const balls = useRead(["balls", "in use"], () =>
    everyPage((after) => answered(shop.balls.$get({ query: { state: "in use", limit: "200", order: "oldest first", ...after } }))),
  ).data;
  const due = dueByGames(balls ?? [], inShop).flatMap((bowler) => bowler.balls);
  return (
    <section className="counter-part">
      {due.length > 0 && (
        <>
          <h2>
            {INTAKE.hereThisWeek} <small>{INTAKE.byGames}</small>
          </h2>
          <div className="ball-cards">
            {due.slice(0, MOST).map((one) => (
              <DueCard key={one.ball.id} due={one} onTap={() => onBall(one.ball)} />
            ))}
          </div>
        </>
      )}
      <button type="button" className="button" onClick={onNew}>
        {INTAKE.newBowler}
      </button>
    </section>
  );
}

function DueCard({ due: { ball, games }, onTap }: { readonly due: DueBall; onTap(): void }) {
  const id = ball.bowlerId ?? "";
  const owner = useRead(["bowlers", id], () => answered(shop.bowlers[":id"].$get({ param: { id } })), { enabled: id !== "" }).data;
  return (
    <button type="button" className="ball-card" onClick={onTap}>
      <BallSwatch finish={knownFinish(ball)} />
      <span className="hit-words">
        <strong>{ball.name}</strong>
        <small>{INTAKE.dueLine(owner?.name ?? "…", INTAKE.games(games))}</small>
      </span>
    </button>
  );
}
