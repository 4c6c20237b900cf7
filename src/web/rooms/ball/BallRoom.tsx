import { type ReactNode, useEffect } from "react";
import type { Ball } from "#contract/records/ball";
import { BALL_LOG } from "#words/en/rooms/ball";
import { INTAKE } from "#words/en/rooms/intake";
import { BALL_JOB_WORDS, COVER_WORDS } from "#words/en/screens";
import { gamesSinceWork, knownFinish } from "../../benchWork/benchBall.ts";
import { Facts } from "../../pieces/Facts.tsx";
import { ownerLink } from "../../pieces/ownerLink.tsx";
import { Reading } from "../../shop/Reading.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { useRead } from "../../shop/useShop.ts";
import { BallFade } from "./BallFade.tsx";
import { BallLog } from "./BallLog.tsx";
import { WriteDown } from "./WriteDown.tsx";

/** Everything that is known of one ball: what it is, what happened to it, how its finish fades and what is due. */
export function BallRoom({ params }: { readonly params: Readonly<Record<string, string>> }) {
  const ball = useRead(["balls", params.id], () => answered(shop.balls[":id"].$get({ param: { id: params.id } })));
  useEffect(() => {
    if (ball.data !== undefined) document.title = ball.data.name;
  }, [ball.data]);
  return (
    <main id="answer" className="room" tabIndex={-1}>
      <Reading of={ball}>
        {(read) => (
          <>
            <div className="room-head">
              <h1>{read.name}</h1>
            </div>
            <div className="room-columns">
              <div>
                <BallFade ball={read} />
                <BallLog ball={read} />
              </div>
              <div>
                <BallFacts ball={read} />
                <WriteDown ball={read} />
              </div>
            </div>
          </>
        )}
      </Reading>
    </main>
  );
}

function BallFacts({ ball }: { readonly ball: Ball }) {
  const owner = useRead(
    ["bowlers", ball.bowlerId ?? ""],
    () => answered(shop.bowlers[":id"].$get({ param: { id: ball.bowlerId ?? "" } })),
    {
      enabled: ball.bowlerId !== null,
    },
  );
  const { core } = ball;
  const rows: readonly (readonly [string, ReactNode])[] = [
    [BALL_LOG.owner, ownerLink(ball.bowlerId === null ? null : (owner.data ?? null), BALL_LOG.nobody)],
    [INTAKE.cover, COVER_WORDS[ball.cover]],
    [INTAKE.serialShort, ball.serial ?? BALL_LOG.unknown],
    [BALL_LOG.job, ball.job === null ? BALL_LOG.unknown : BALL_JOB_WORDS[ball.job]],
    [BALL_LOG.finish, knownFinish(ball) ?? BALL_LOG.unknown],
    [BALL_LOG.sinceWork, String(gamesSinceWork(ball))],
    ...(core?.massLb == null ? [] : [[BALL_LOG.mass, BALL_LOG.lb(core.massLb)] as const]),
    ...(core?.rgIn == null ? [] : [[BALL_LOG.core, BALL_LOG.rg(core.rgIn, core.differentialIn)] as const]),
  ];
  return (
    <section className="plate">
      <Facts rows={rows} />
    </section>
  );
}
