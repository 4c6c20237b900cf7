import type { Ball } from "#contract/records/ball";
import { knownFinish } from "#contract/records/benchBall";
import { coverWord } from "#words/coverWord";
import { INTAKE } from "#words/en/rooms/intake";
import { BallSwatch } from "../../pieces/FinishSwatch.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { useRead } from "../../shop/useShop.ts";
import type { Hit } from "./hit.ts";

interface HitsProps {
  readonly id: string;
  readonly hits: readonly Hit[];
  /** Which of them the arrows have reached; −1: none. */
  readonly at: number;
  onChoose(hit: Hit): void;
}

/** What was found, to be tapped or reached by the arrows; Enter takes a single one. */
export function Hits({ id, hits, at, onChoose }: HitsProps) {
  return (
    <div id={`${id}-hits`} className="hits" role="listbox" aria-label={INTAKE.hits}>
      {hits.map((hit, i) => (
        // The field keeps the focus: arrows and Enter are typed there.
        <div
          key={hit.kind === "ball" ? hit.ball.id : hit.bowler.id}
          id={`${id}-${i}`}
          className="hit"
          role="option"
          tabIndex={-1}
          aria-selected={i === at || hits.length === 1}
          onClick={() => onChoose(hit)}
          onKeyDown={({ key }) => key === "Enter" && onChoose(hit)}
        >
          {hit.kind === "ball" ? <BallHit ball={hit.ball} /> : <BowlerHit name={hit.bowler.name} phone={hit.bowler.phone} />}
          {(i === at || hits.length === 1) && <kbd>{INTAKE.enter}</kbd>}
        </div>
      ))}
    </div>
  );
}

function BallHit({ ball }: { readonly ball: Ball }) {
  const finish = knownFinish(ball);
  return (
    <>
      <BallSwatch finish={finish} />
      <span className="hit-words">
        <strong>{ball.name}</strong> <OwnerName id={ball.bowlerId} />
        <small>{[coverWord(ball.cover), finish ?? INTAKE.finishUnknown, ball.serial].filter((part) => part !== null).join(" · ")}</small>
      </span>
    </>
  );
}

function BowlerHit({ name, phone }: { readonly name: string; readonly phone: string | null }) {
  return (
    <span className="hit-words">
      <strong>{name}</strong>
      {phone !== null && <small>{phone}</small>}
    </span>
  );
}

/** Whose ball it is. */
export function OwnerName({ id }: { readonly id: string | null }) {
  const owner = useRead(["bowlers", id ?? ""], () => answered(shop.bowlers[":id"].$get({ param: { id: id ?? "" } })), {
    enabled: id !== null,
  }).data;
  return <span>{id === null ? INTAKE.unclaimed : (owner?.name ?? "…")}</span>;
}
