import type { Price } from "#contract/records/money";
import { INTAKE } from "#words/en/rooms/intake";
import { PRICING } from "#words/en/rooms/pricing";
import { PROMISE } from "#words/en/rooms/promise";
import { ShopFault } from "../../shop/shopClient.ts";
import type { usePromise } from "../../shop/usePromise.ts";
import { useShopTimes } from "../../shop/zone.ts";
import { CounterBill, type useBill } from "./BillAndPromise.tsx";
import { Promised, useCounterTime } from "./Promised.tsx";
import { type BallDraft, changedBall, missing, mustStop, type VisitDraft } from "./visitDraft.ts";

interface PanelProps {
  readonly draft: VisitDraft;
  /** Keys of balls that are in the shop by another ticket. */
  readonly here: ReadonlySet<string>;
  readonly prices: readonly Price[];
  readonly bill: ReturnType<typeof useBill>;
  readonly reckoned: ReturnType<typeof usePromise>;
  readonly promisedFor: string;
  readonly tried: boolean;
  readonly isBusy: boolean;
  readonly fault: Error | null;
  onChange(next: (old: VisitDraft) => VisitDraft): void;
  onSend(then: "print" | "plan"): void;
}

/** Price, promise and the two ways on, beside the form; on a phone docked below it. A crack or a hollow sound turns it into a stop. */
export function TakeInPanel(props: PanelProps) {
  const { draft, here, prices, bill, reckoned, promisedFor, tried, isBusy, fault, onChange, onSend } = props;
  const stopped = draft.balls.filter(mustStop);
  const isEmpty = draft.balls.length === 0;
  const lacks = missing(draft, here);
  return (
    <aside className={stopped.length > 0 ? "take-in is-stop" : "take-in"} aria-label={INTAKE.bill}>
      {stopped.length > 0 && <Stop balls={stopped} />}
      <CounterBill bill={bill} prices={prices} tried={tried} onBall={(key, change) => onChange((old) => changedBall(old, key, change))} />
      <Promised draft={draft} at={promisedFor} reckoned={reckoned} tried={tried} onChange={onChange} />
      {tried && lacks !== null && (
        <p role="alert" className="field-problem">
          {
            {
              ball: INTAKE.needsBall,
              name: INTAKE.needsName,
              here: INTAKE.needsSecondWhy,
              why: PRICING.needsWhy,
              amount: PRICING.needsAmount,
              promise: PROMISE.needsWhy,
            }[lacks]
          }
        </p>
      )}
      {fault instanceof ShopFault && (
        <div role="alert" className="failed">
          <p>{INTAKE.failed}</p>
          <p>{fault.fields.map(({ message }) => message).join(" ") || fault.message}</p>
        </div>
      )}
      {!isEmpty && (
        <>
          <div className="take-in-buttons">
            <Dock promisedFor={promisedFor} totalCents={bill.totalCents} />
            <button type="button" className="button primary" disabled={isBusy} onClick={() => onSend("print")}>
              <span className="wide-words">{INTAKE.takeInAndPrint}</span>
              <span className="narrow-words">{INTAKE.takeInShort}</span>
            </button>
          </div>
          <button type="button" className="button wide" disabled={isBusy} onClick={() => onSend("plan")}>
            {INTAKE.takeInAndPlan}
          </button>
          <p className="prints">{INTAKE.prints(draft.balls.length)}</p>
        </>
      )}
    </aside>
  );
}

/** On a phone beside the docked button: by when, and for how much. */
function Dock({ promisedFor, totalCents }: { readonly promisedFor: string; readonly totalCents: number | null }) {
  const shown = useCounterTime();
  const { money } = useShopTimes();
  return (
    <p className="dock-words">
      <strong>{shown(promisedFor)}</strong>
      <span>{totalCents === null ? INTAKE.notPriced : INTAKE.atPickup(money(totalCents))}</span>
    </p>
  );
}

function Stop({ balls }: { readonly balls: readonly BallDraft[] }) {
  const whatOf = ({ found }: BallDraft) =>
    found
      .filter((what) => what === "crack" || what === "hollow sound")
      .map((what) => INTAKE.findings[what])
      .join(", ");
  return (
    <div role="alert" className="counter-stop">
      <h2>{INTAKE.stop}</h2>
      {balls.map((ball) => (
        <p key={ball.key}>{INTAKE.stopWhy(ball.name.trim() === "" ? INTAKE.newBall : ball.name, whatOf(ball))}</p>
      ))}
      <p>{INTAKE.stopHow}</p>
    </div>
  );
}
