import { Link } from "wouter";
import { DUE } from "#words/en/rooms/due";
import { everyPage } from "../../shop/everyPage.ts";
import { Reading } from "../../shop/Reading.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { useRead } from "../../shop/useShop.ts";
import { type DueBowler, dueByGames } from "./dueByGames.ts";

/** As many as one calls in a quiet hour. */
const MOST = 8;

/** Whose balls have seen more games than their finish usually keeps: customers to call. */
export function DueByGames({ inShop }: { readonly inShop: ReadonlySet<string> }) {
  const balls = useRead(["balls", "in use"], () =>
    everyPage((after) => answered(shop.balls.$get({ query: { state: "in use", limit: "200", order: "oldest first", ...after } }))),
  );
  return (
    <section className="plate">
      <h2>{DUE.title}</h2>
      <Reading of={balls}>
        {(all) => {
          const due = dueByGames(all, inShop);
          if (due.length === 0) return <p className="nothing">{DUE.none}</p>;
          return (
            <>
              <ul className="plain-links due-list">
                {due.slice(0, MOST).map((bowler) => (
                  <Bowler key={bowler.bowlerId} due={bowler} />
                ))}
              </ul>
              {due.length > MOST && <p>{DUE.more(due.length - MOST)}</p>}
              <p className="note">{DUE.why}</p>
            </>
          );
        }}
      </Reading>
    </section>
  );
}

function Bowler({ due: { bowlerId, balls } }: { readonly due: DueBowler }) {
  const bowler = useRead(["bowlers", bowlerId], () => answered(shop.bowlers[":id"].$get({ param: { id: bowlerId } }))).data;
  return (
    <li>
      <Link href={`/bowlers/${bowlerId}`}>{bowler?.name ?? "…"}</Link> {bowler?.phone ?? ""}
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
