import { useEffect } from "react";
import type { Ball } from "#contract/records/ball";
import { SHOP_FRAME } from "#words/en/rooms/frame";
import { Photos } from "../../shop/Photos.tsx";
import { Reading } from "../../shop/Reading.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { For } from "../../shop/useSession.tsx";
import { useRead } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { BallFacts } from "./BallFacts.tsx";
import { BallFade } from "./BallFade.tsx";
import { BallLimits } from "./BallLimits.tsx";
import { BallLog } from "./BallLog.tsx";
import { ChangeHands } from "./ChangeHands.tsx";
import { Finds } from "./Finds.tsx";
import { TurnedBall } from "./space/TurnedBall.tsx";
import { useBallRecords } from "./useBallRecords.ts";
import { WriteDown } from "./WriteDown.tsx";

/** Everything that is known of one ball: what it is, what happened to it, how its finish fades, what is due, what is within the limits measured. */
export function BallRoom({ params }: { readonly params: Readonly<Record<string, string>> }) {
  const ball = useRead(["balls", params.id], () => answered(shop.balls[":id"].$get({ param: { id: params.id } })));
  useEffect(() => {
    if (ball.data !== undefined) document.title = ball.data.name;
  }, [ball.data]);
  return (
    <main id="answer" className="room ball" tabIndex={-1}>
      <Reading of={ball}>{(read) => <WholeBall key={read.id} ball={read} />}</Reading>
    </main>
  );
}

function WholeBall({ ball }: { readonly ball: Ball }) {
  return (
    <>
      <div className="room-head">
        <h1>{ball.name}</h1>
      </div>
      <div className="room-columns">
        <div>
          <FromRecords ball={ball} />
        </div>
        <div>
          <For least="counter">
            <WriteDown ball={ball} />
          </For>
          <Finds ball={ball} />
          <BallFacts ball={ball} />
          <For least="counter">
            <ChangeHands ball={ball} />
          </For>
          <Photos of={{ ballId: ball.id }} belongs={{ ballId: ball.id }} />
        </div>
      </div>
    </>
  );
}

/** What takes everything that is kept of the ball to say. */
function FromRecords({ ball }: { readonly ball: Ball }) {
  const { records, error, again } = useBallRecords(ball.id);
  if (records !== null)
    return (
      <>
        <BallFade ball={ball} records={records} />
        <TurnedBall ball={ball} records={records} />
        <BallLimits ball={ball} records={records} />
        <BallLog ball={ball} records={records} />
      </>
    );
  if (error === null)
    return (
      <p className="reading" aria-live="polite">
        {SHOP_FRAME.reading}
      </p>
    );
  return (
    <div className="plate">
      <WriteFault error={error} />
      <button type="button" className="button" onClick={again}>
        {SHOP_FRAME.tryAgain}
      </button>
    </div>
  );
}
