import { useState } from "react";
import type { Ball } from "#contract/records/ball";
import type { Bowler } from "#contract/records/bowler";
import { INTAKE } from "#words/en/rooms/intake";
import { LineField } from "../../pieces/PlainFields.tsx";
import { Reading } from "../../shop/Reading.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { useRead } from "../../shop/useShop.ts";

const LEAST_LETTERS = 2;

interface FindProps {
  onBowler(bowler: Bowler): void;
  onBall(ball: Ball): void;
  /** Nobody known: what was typed is taken as the name. */
  onNew(name: string): void;
}

/** Finds a customer or a ball by serial number, name or telephone. */
export function Find({ onBowler, onBall, onNew }: FindProps) {
  const [words, setWords] = useState("");
  const asked = words.trim();
  const found = useRead(["search", asked], () => answered(shop.search.$get({ query: { words: asked } })), {
    enabled: asked.length >= LEAST_LETTERS,
  });
  const choose = (act: () => void) => () => {
    act();
    setWords("");
  };
  return (
    <section className="plate find">
      <LineField label={INTAKE.find} help={INTAKE.findHelp} type="search" value={words} onChange={setWords} />
      {asked.length >= LEAST_LETTERS && (
        <Reading of={found}>
          {({ bowlers, balls }) => (
            <>
              {bowlers.length + balls.length === 0 && <p className="nothing">{INTAKE.noneFound}</p>}
              <ul className="found">
                {balls.map((ball) => (
                  <li key={ball.id}>
                    <button type="button" onClick={choose(() => onBall(ball))}>
                      <strong>{ball.name}</strong> <span>{ball.serial ?? ""}</span>
                    </button>
                  </li>
                ))}
                {bowlers.map((bowler) => (
                  <li key={bowler.id}>
                    <button type="button" onClick={choose(() => onBowler(bowler))}>
                      <strong>{bowler.name}</strong> <span>{bowler.phone ?? ""}</span>
                    </button>
                  </li>
                ))}
              </ul>
            </>
          )}
        </Reading>
      )}
      <button type="button" className="button" onClick={choose(() => onNew(asked))}>
        {INTAKE.newBowler}
      </button>
    </section>
  );
}
