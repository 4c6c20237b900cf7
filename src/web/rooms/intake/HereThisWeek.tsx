import type { Ball } from "#contract/records/ball";
import { knownFinish } from "#contract/records/benchBall";
import type { DueBall } from "#contract/records/dueByGames";
import { INTAKE } from "#words/en/rooms/intake";
import { BallSwatch } from "../../pieces/FinishSwatch.tsx";
import { useDueByGames } from "../../shop/useBalls.ts";

/** As many as find room before anybody looks further. */
const MOST = 6;

interface HereProps {
  onBall(ball: Ball): void;
  onNew(): void;
}

/** Before anybody has come: balls that are due by their games, to be tapped when they are brought, and somebody new. */
export function HereThisWeek({ onBall, onNew }: HereProps) {
  const due = (useDueByGames().data?.items ?? []).flatMap(({ bowlerName, balls }) => balls.map((one) => ({ ...one, bowlerName })));
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

interface DueCardProps {
  readonly due: DueBall & { readonly bowlerName: string };
  onTap(): void;
}

function DueCard({ due: { ball, games, bowlerName }, onTap }: DueCardProps) {
  return (
    <button type="button" className="ball-card" onClick={onTap}>
      <BallSwatch finish={knownFinish(ball)} />
      <span className="hit-words">
        <strong>{ball.name}</strong>
        <small>{INTAKE.dueLine(bowlerName, INTAKE.games(games))}</small>
      </span>
    </button>
  );
}
