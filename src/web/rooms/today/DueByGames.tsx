import { Link } from "wouter";
import type { DueByGames as Due } from "#contract/routes/balls";
import { DUE } from "#words/en/rooms/due";
import { Reading } from "../../shop/Reading.tsx";
import { useDueByGames } from "../../shop/useBalls.ts";

/** As many as one calls in a quiet hour. */
const MOST = 8;

/** Whose balls have seen more games than their finish usually keeps: customers to call. */
export function DueByGames({ inShop }: { readonly inShop: ReadonlySet<string> }) {
  return (
    <section className="plate">
      <h2>{DUE.title}</h2>
      <Reading of={useDueByGames()} isEmpty={({ of }) => of === 0} empty={DUE.none}>
        {({ items, of }) => (
          <>
            <ul className="plain-links due-list">
              {notHere(items, inShop)
                .slice(0, MOST)
                .map((bowler) => (
                  <Bowler key={bowler.bowlerId} due={bowler} />
                ))}
            </ul>
            {of > MOST && <p>{DUE.more(of - MOST)}</p>}
            <p className="note">{DUE.why}</p>
          </>
        )}
      </Reading>
    </section>
  );
}

/** A ball that has come since is no reason to call. */
function notHere(items: Due["items"], inShop: ReadonlySet<string>): Due["items"] {
  return items
    .map((bowler) => ({ ...bowler, balls: bowler.balls.filter(({ ball }) => !inShop.has(ball.id)) }))
    .filter(({ balls }) => balls.length > 0);
}

function Bowler({ due: { bowlerId, bowlerName, phone, balls } }: { readonly due: Due["items"][number] }) {
  return (
    <li>
      <Link href={`/bowlers/${bowlerId}`}>{bowlerName}</Link> {phone ?? ""}
      <ul>
        {balls.map(({ ball, games, dueAt }) => (
          <li key={ball.id}>
            <Link href={`/balls/${ball.id}`}>{DUE.ball(ball.name, games, dueAt)}</Link>
          </li>
        ))}
      </ul>
    </li>
  );
}
