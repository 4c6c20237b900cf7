import { PAGE_PAINT } from "#drawing/paint";
import { textureSwatch } from "#drawing/texture";
import { PAD_NUMBERS } from "#engine/surface/pads";
import { coverWord } from "#words/coverWord";
import { LANE_SIDE } from "#words/en/rooms/laneSide";
import { TICKET } from "#words/en/rooms/ticket";
import { messageText } from "#words/messageText";
import { ChargeChoice } from "../../pieces/ChargeChoice.tsx";
import { OneOf } from "../../pieces/OneOf.tsx";
import { Picture } from "../../pieces/Picture.tsx";
import { lacksReason, usePricesToday } from "../../shop/pricing.ts";
import { useOutbox } from "../../shop/useOutbox.tsx";
import { useActing } from "../../shop/usePeople.ts";
import { useStock } from "../../shop/useStock.ts";
import { cautionsByHand, type LaneSideBall, type LaneSideDraft, toTell } from "./laneSideDraft.ts";

interface ThatNumberProps {
  readonly draft: LaneSideDraft;
  readonly ball: LaneSideBall;
  onChange(draft: LaneSideDraft): void;
  onLeave(): void;
  /** Told in words what was signed. */
  onSigned(words: string): void;
}

/** The ball in hand: which number, how, what holds before one starts, and the signature. */
export function ThatNumber(props: ThatNumberProps) {
  const { draft, ball, onChange, onLeave } = props;
  return (
    <>
      <section className="plate ball-work-head">
        <h2>{ball.name}</h2>
        <span className="serial">{ball.serial}</span>
        <span>
          {coverWord(ball.cover)}, {LANE_SIDE.nowOn(ball.finish)}
        </span>
        <button type="button" className="button" onClick={onLeave}>
          {LANE_SIDE.other}
        </button>
      </section>
      {ball.isStopped ? (
        <p role="alert" className="stop">
          {LANE_SIDE.stopped}
        </p>
      ) : (
        <>
          <section className="plate">
            <fieldset className="choices">
              <legend>{LANE_SIDE.number}</legend>
              <div className="pad-numbers">
                {PAD_NUMBERS.map((number) => (
                  <PadNumber
                    key={number}
                    number={number}
                    isChosen={draft.number === number}
                    onChoose={() => onChange({ ...draft, number })}
                  />
                ))}
              </div>
            </fieldset>
          </section>
          {draft.number !== null && <Finish {...props} number={draft.number} />}
        </>
      )}
    </>
  );
}

function PadNumber({ number, isChosen, onChoose }: { readonly number: number; readonly isChosen: boolean; onChoose(): void }) {
  return (
    <label className="choice pad-number">
      <input type="radio" name="pad-number" checked={isChosen} onChange={onChoose} />
      <span aria-hidden="true">
        <Picture svg={textureSwatch(`pad-${number}`, { number, polished: false }, 30, PAGE_PAINT)} className="" />
      </span>
      <strong>{number}</strong>
    </label>
  );
}

function Finish({ draft, ball, number, onChange, onSigned }: ThatNumberProps & { readonly number: number }) {
  const { outbox } = useOutbox();
  const person = useActing();
  const stock = useStock();
  const prices = usePricesToday() ?? [];
  const pricing = { priceId: draft.priceId, freeWhy: draft.freeWhy ?? "" };
  const sign = () => {
    const body = toTell(draft, ball, number, { prices, stock, doneAt: new Date().toISOString() });
    const words = LANE_SIDE.signed(ball.name, body.finish, draft.way);
    outbox.add({ key: draft.key, path: "/api/lane-side", what: words, body });
    onSigned(words);
  };
  return (
    <section className="plate">
      <div className="lane-side-how">
        <OneOf label={LANE_SIDE.how} value={draft.way} words={LANE_SIDE.ways} onChange={(way) => onChange({ ...draft, way })} />
        <OneOf
          label={LANE_SIDE.afterwards}
          value={draft.whereTo}
          words={LANE_SIDE.ends}
          onChange={(whereTo) => onChange({ ...draft, whereTo })}
        />
        <ChargeChoice draft={pricing} prices={prices} usual={null} tried={true} onChange={(change) => onChange({ ...draft, ...change })} />
      </div>
      <h3>{LANE_SIDE.before}</h3>
      <ul className="lane-side-cautions">
        {cautionsByHand(draft).map((id) => (
          <li key={id}>{messageText({ id: `caution.${id}`, params: {} })}</li>
        ))}
      </ul>
      <p>
        {LANE_SIDE.allSides} {LANE_SIDE.cannotUndo}
      </p>
      <button type="button" className="button primary wide" disabled={person === null || lacksReason(pricing)} onClick={sign}>
        {LANE_SIDE.done(person?.initials ?? TICKET.initials)}
      </button>
    </section>
  );
}
