import { type ReactNode, useState } from "react";
import type { Ball } from "#contract/records/ball";
import { FIND_BALL } from "#words/en/rooms/frame";
import { LineField } from "../pieces/PlainFields.tsx";
import { Reading } from "./Reading.tsx";
import { answered, shop } from "./shopClient.ts";
import { useRead } from "./useShop.ts";

const LEAST_LETTERS = 2;

interface FindBallProps {
  /** What a ball that was found leads to. */
  readonly line: (ball: Ball) => ReactNode;
}

/** Finds a ball by its serial number, its name, or its owner's name or telephone. */
export function FindBall({ line }: FindBallProps) {
  const [words, setWords] = useState("");
  const asked = words.trim();
  const found = useRead(["search", asked], () => answered(shop.search.$get({ query: { words: asked } })), {
    enabled: asked.length >= LEAST_LETTERS,
  });
  return (
    <>
      <LineField label={FIND_BALL.find} help={FIND_BALL.help} type="search" value={words} onChange={setWords} />
      {asked.length >= LEAST_LETTERS && (
        <Reading of={found}>
          {({ balls, bowlers }) => (
            <>
              {balls.length + bowlers.length === 0 && <p className="nothing">{FIND_BALL.none}</p>}
              <BallLines balls={balls} line={line} />
              {bowlers.map(({ id, name }) => (
                <BallsOf key={id} bowlerId={id} name={name} line={line} />
              ))}
            </>
          )}
        </Reading>
      )}
    </>
  );
}

function BallsOf({ bowlerId, name, line }: FindBallProps & { readonly bowlerId: string; readonly name: string }) {
  const balls = useRead(["balls", "of", bowlerId], () => answered(shop.balls.$get({ query: { bowlerId, limit: "50" } })));
  return (
    <>
      <h3>{name}</h3>
      <Reading of={balls} isEmpty={({ items }) => items.length === 0}>
        {({ items }) => <BallLines balls={items} line={line} />}
      </Reading>
    </>
  );
}

function BallLines({ balls, line }: FindBallProps & { readonly balls: readonly Ball[] }) {
  return (
    <ul className="found">
      {balls.map((ball) => (
        <li key={ball.id}>{line(ball)}</li>
      ))}
    </ul>
  );
}
