import { Link } from "wouter";
import type { Ball } from "#contract/records/ball";
import { gamesSinceWork, knownFinish } from "#contract/records/benchBall";
import { coverWord } from "#words/coverWord";
import { BOWLER } from "#words/en/rooms/bowler";
import { BALL_JOB_WORDS } from "#words/en/screens";
import { FinishSwatch } from "../../pieces/FinishSwatch.tsx";
import { Reading } from "../../shop/Reading.tsx";
import { useBag } from "../../shop/useBalls.ts";

/** The bowler's balls, each with its finish as a texture; those that are not in use last. */
export function Bag({ bowlerId }: { readonly bowlerId: string }) {
  const balls = useBag(bowlerId);
  return (
    <section className="plate">
      <h2>{BOWLER.bag}</h2>
      <Reading of={balls} isEmpty={(all) => all.length === 0} empty={BOWLER.noBalls}>
        {(all) => (
          <>
            <Link href={`/bags/${bowlerId}`} className="button">
              {BOWLER.planBag}
            </Link>
            <ul className="queue">
              {all
                .toSorted((a, b) => Number(a.state !== "in use") - Number(b.state !== "in use"))
                .map((ball) => (
                  <BagLine key={ball.id} ball={ball} />
                ))}
            </ul>
          </>
        )}
      </Reading>
    </section>
  );
}

function BagLine({ ball }: { readonly ball: Ball }) {
  const finish = knownFinish(ball);
  const games = gamesSinceWork(ball);
  return (
    <li>
      <Link href={`/balls/${ball.id}`} className="bag-line">
        {finish === null ? <span /> : <FinishSwatch finish={finish} />}
        <strong>{ball.name}</strong>
        <span>
          {coverWord(ball.cover)}
          {ball.job === null ? "" : `, ${BALL_JOB_WORDS[ball.job]}`}
        </span>
        <span>
          {finish === null ? BOWLER.finishUnknown : `${finish}, ${BOWLER.sinceWork(games)}`}{" "}
          <em className="queue-state">{BOWLER.states[ball.state]}</em>
        </span>
      </Link>
    </li>
  );
}
