import { useEffect, useState } from "react";
import { LANE_SIDE } from "#words/en/rooms/laneSide";
import { LineField } from "../../pieces/PlainFields.tsx";
import { FindBall } from "../../shop/FindBall.tsx";
import { newKey } from "../../shop/shopClient.ts";
import { useKept } from "../../shop/useKept.ts";
import { useOutbox } from "../../shop/useOutbox.tsx";
import { emptyLaneSide, fromRecords, type LaneSideBall } from "./laneSideDraft.ts";
import { ThatNumber } from "./ThatNumber.tsx";

const MEMORY = "gritwright.laneSide";

/** What was signed last, so that it can be said where it is. */
interface Signed {
  readonly key: string;
  readonly words: string;
}

/** Express work on a phone beside the lane: this ball, that number, by hand, dry, done. */
export function LaneSideRoom() {
  const [draft, setDraft] = useKept(MEMORY, () => emptyLaneSide(newKey()));
  const [signed, setSigned] = useState<Signed | null>(null);
  useEffect(() => {
    document.title = LANE_SIDE.title;
  }, []);
  const take = (ball: LaneSideBall) => {
    setSigned(null);
    setDraft({ ...draft, ball });
  };
  return (
    <main id="answer" className="room lane-side" tabIndex={-1}>
      <h1>{LANE_SIDE.title}</h1>
      {signed !== null && <SignedLine signed={signed} />}
      {draft.ball === null ? (
        <WhichBall onBall={take} />
      ) : (
        <ThatNumber
          draft={draft}
          ball={draft.ball}
          onChange={setDraft}
          onLeave={() => setDraft(emptyLaneSide(newKey()))}
          onSigned={(words) => {
            setSigned({ key: draft.key, words });
            setDraft({ ...emptyLaneSide(newKey()), number: draft.number, way: draft.way });
          }}
        />
      )}
    </main>
  );
}

/** Whether what was signed is with the shop by now. */
function SignedLine({ signed }: { readonly signed: Signed }) {
  const { waiting } = useOutbox();
  const waits = waiting.find(({ key }) => key === signed.key);
  const state = waits === undefined ? LANE_SIDE.isKept : waits.refused === null ? LANE_SIDE.isWaiting : LANE_SIDE.isRefused;
  return (
    <p role="status" className="plate lane-side-signed">
      <strong>{signed.words}</strong> {state}
    </p>
  );
}

function WhichBall({ onBall }: { onBall(ball: LaneSideBall): void }) {
  const [name, setName] = useState("");
  const [serial, setSerial] = useState("");
  return (
    <>
      <section className="plate find">
        <h2>{LANE_SIDE.which}</h2>
        <FindBall
          line={(ball) => (
            <button type="button" onClick={() => onBall(fromRecords(ball))}>
              <strong>{ball.name}</strong> <span className="serial">{ball.serial ?? ""}</span>
            </button>
          )}
        />
      </section>
      <details className="plate">
        <summary>{LANE_SIDE.notFound}</summary>
        <form
          onSubmit={(event) => {
            event.preventDefault();
            if (name.trim() !== "") onBall({ id: null, name, serial, cover: null, finish: null, isStopped: false });
          }}
        >
          <LineField label={LANE_SIDE.name} value={name} onChange={setName} />
          <LineField label={LANE_SIDE.serial} value={serial} onChange={setSerial} />
          <button type="submit" className="button wide" disabled={name.trim() === ""}>
            {LANE_SIDE.takeIt}
          </button>
        </form>
      </details>
    </>
  );
}
