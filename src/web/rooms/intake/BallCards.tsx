import type { Ball } from "#contract/records/ball";
import { knownFinish } from "#contract/records/benchBall";
import { INTAKE } from "#words/en/rooms/intake";
import { BallSwatch } from "../../pieces/FinishSwatch.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { useRead } from "../../shop/useShop.ts";
import { type BallDraft, currentBall, type VisitDraft, withKnownBall, withNewBall, withoutBall } from "./visitDraft.ts";

interface CardsProps {
  readonly draft: VisitDraft;
  onChange(next: (old: VisitDraft) => VisitDraft): void;
}

/** The bowler's balls as cards: those that came along are marked, and one of them is being asked about. */
export function BallCards({ draft, onChange }: CardsProps) {
  const id = draft.bowler?.id ?? "";
  const owned =
    useRead(["balls", "of", id], () => answered(shop.balls.$get({ query: { bowlerId: id, limit: "200" } })), { enabled: id !== "" }).data
      ?.items ?? [];
  const current = currentBall(draft);
  const others = owned.filter((ball) => !draft.balls.some(({ ballId }) => ballId === ball.id));
  return (
    <section className="counter-part">
      <h2>
        {INTAKE.balls} <small>{INTAKE.tapToAdd}</small>
      </h2>
      <div className="ball-cards">
        {draft.balls.map((ball) => (
          <Here
            key={ball.key}
            ball={ball}
            isCurrent={ball.key === current?.key}
            onLookAt={() => onChange((old) => ({ ...old, current: ball.key }))}
            onLeaveOut={() => onChange((old) => withoutBall(old, ball.key))}
          />
        ))}
        {others.map((ball) => (
          <button key={ball.id} type="button" className="ball-card" onClick={() => onChange((old) => withKnownBall(old, ball))}>
            <OfRecords ball={ball} />
          </button>
        ))}
        <button type="button" className="ball-card" onClick={() => onChange((old) => withNewBall(old))}>
          <span className="ball-swatch" aria-hidden="true">
            +
          </span>
          <span className="hit-words">
            <strong>{INTAKE.newBall}</strong>
            <small>{INTAKE.nameOnly}</small>
          </span>
        </button>
      </div>
    </section>
  );
}

interface HereProps {
  readonly ball: BallDraft;
  readonly isCurrent: boolean;
  onLookAt(): void;
  onLeaveOut(): void;
}

/** A ball that came along. */
function Here({ ball, isCurrent, onLookAt, onLeaveOut }: HereProps) {
  const id = ball.ballId ?? "";
  const kept = useRead(["balls", id], () => answered(shop.balls[":id"].$get({ param: { id } })), { enabled: id !== "" }).data;
  const name = ball.name.trim() === "" ? INTAKE.newBall : ball.name;
  return (
    <div className={isCurrent ? "ball-card here current" : "ball-card here"}>
      <button type="button" aria-pressed={isCurrent} onClick={onLookAt}>
        {kept === undefined ? <Words name={name} finish={null} line={INTAKE.finishUnknown} /> : <OfRecords ball={kept} />}
      </button>
      <button type="button" className="leave-out" aria-label={INTAKE.leaveOut(name)} onClick={onLeaveOut}>
        ×
      </button>
    </div>
  );
}

function OfRecords({ ball }: { readonly ball: Ball }) {
  const finish = knownFinish(ball);
  const line = [ball.serial, finish ?? INTAKE.finishUnknown].filter((part) => part !== null).join(" · ");
  return <Words name={ball.name} finish={finish} line={line} />;
}

function Words({ name, finish, line }: { readonly name: string; readonly finish: string | null; readonly line: string }) {
  return (
    <>
      <BallSwatch finish={finish} />
      <span className="hit-words">
        <strong>{name}</strong>
        <small>{line}</small>
      </span>
    </>
  );
}
