import { useState } from "react";
import { knownFinish } from "#contract/records/benchBall";
import { SHOT_NOTES } from "#words/en/rooms/lanes";
import { FindBall } from "../../shop/FindBall.tsx";
import type { ShotDraft } from "./shotDraft.ts";

interface WhoseShotProps {
  readonly ball: ShotDraft["ball"];
  onChange(ball: ShotDraft["ball"], finish: string): void;
}

/** The ball that is thrown, and with it its bowler and finish; it stays for the next shots. */
export function WhoseShot({ ball, onChange }: WhoseShotProps) {
  const [isChoosing, setChoosing] = useState(false);
  if (isChoosing)
    return (
      <div className="find">
        <FindBall
          line={(found) => (
            <button
              type="button"
              onClick={() => {
                onChange({ id: found.id, name: found.name, bowlerId: found.bowlerId }, knownFinish(found) ?? "");
                setChoosing(false);
              }}
            >
              <strong>{found.name}</strong> <span className="serial">{found.serial ?? ""}</span>
            </button>
          )}
        />
        <button
          type="button"
          className="button"
          onClick={() => {
            onChange(null, "");
            setChoosing(false);
          }}
        >
          {SHOT_NOTES.noBall}
        </button>
      </div>
    );
  return (
    <p className="whose-shot">
      <span>
        {SHOT_NOTES.ball}: <strong>{ball?.name ?? SHOT_NOTES.anyBall}</strong>
      </span>
      <button type="button" className="button" onClick={() => setChoosing(true)}>
        {ball === null ? SHOT_NOTES.chooseBall : SHOT_NOTES.otherBall}
      </button>
    </p>
  );
}
