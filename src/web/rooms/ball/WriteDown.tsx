import { useState } from "react";
import type { Ball } from "#contract/records/ball";
import { BALL_LOG } from "#words/en/rooms/ball";
import { LineField } from "../../pieces/PlainFields.tsx";
import { emptied } from "../../shop/emptied.ts";
import { answered, madeOn, shop } from "../../shop/shopClient.ts";
import { useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import type { BallChange } from "./useBallRecords.ts";

const MOST_GAMES = 10_000;

/** What is written into a ball's log by hand: games bowled, and what others did to its surface. */
export function WriteDown({ ball }: { readonly ball: Ball }) {
  const [typed, setTyped] = useState("");
  const write = useWrite(
    (json: BallChange) => answered(shop.balls[":id"].$patch({ param: { id: ball.id }, json, header: madeOn(ball) })),
    ["balls"],
  );
  const games = Number(typed);
  const isGames = Number.isInteger(games) && games > 0 && games <= MOST_GAMES;
  const now = () => new Date().toISOString();
  const worked = (who: "owner" | "coin machine") =>
    write.mutate({ surface: [...ball.surface, { at: now(), who, finish: null, way: null, ticketId: null, note: "" }] });
  return (
    <section className="plate">
      <h2>{BALL_LOG.writeDown}</h2>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          if (isGames) write.mutate({ games: [...ball.games, { at: now(), games }] }, { onSuccess: () => setTyped(emptied(typed, "")) });
        }}
      >
        <LineField
          label={BALL_LOG.addGames}
          inputMode="numeric"
          value={typed}
          problem={typed !== "" && !isGames ? BALL_LOG.gamesAllowed : undefined}
          onChange={setTyped}
        />
        <button type="submit" className="button wide" disabled={!isGames || write.isPending}>
          {BALL_LOG.keepGames}
        </button>
      </form>
      <div className="choices-words">
        <button type="button" className="button" disabled={write.isPending} onClick={() => worked("owner")}>
          {BALL_LOG.scuffed}
        </button>
        <button type="button" className="button" disabled={write.isPending} onClick={() => worked("coin machine")}>
          {BALL_LOG.machine}
        </button>
      </div>
      <WriteFault error={write.error} />
    </section>
  );
}
