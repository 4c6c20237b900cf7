import { type ReactNode, useState } from "react";
import { Link } from "wouter";
import { billOf } from "#contract/records/bill";
import type { Price } from "#contract/records/money";
import { usualPrices, workIn } from "#contract/records/pricedWork";
import type { Settings } from "#contract/records/settings";
import { INTAKE } from "#words/en/rooms/intake";
import { ChargeChoice } from "../../pieces/ChargeChoice.tsx";
import { chargeName, chosenPricing, FREE, type Priced, withPricing } from "../../shop/pricing.ts";
import { useShopTimes } from "../../shop/zone.ts";
import { useStagesOf } from "./useStagesOf.ts";
import { type BallDraft, mustStop, pricingDraft } from "./visitDraft.ts";

export interface BallPrice {
  readonly ball: BallDraft;
  readonly usual: readonly Price[] | null;
  readonly chosen: ReturnType<typeof chosenPricing>;
  /** What is done, in words; empty where nobody knows yet. */
  readonly work: string;
}

/** What the balls of the form cost, one by one and together. Null in place of the sum where none has a price yet. */
export function useBill(balls: readonly BallDraft[], prices: readonly Price[], settings: Settings | undefined) {
  const stages = useStagesOf(balls);
  const lines = balls.map((ball, i): BallPrice => {
    const work = workIn(stages[i]);
    const usual = usualPrices(work, prices);
    return {
      ball,
      usual,
      chosen: chosenPricing(pricingDraft(ball), prices, usual, settings?.taxMillipercent ?? 0),
      work: work.map((kind) => INTAKE.works[kind]).join(" + "),
    };
  });
  const { charges } = lines.reduce((bill: Priced, { ball, chosen }) => withPricing(bill, { id: ball.key, ballName: ball.name }, chosen), {
    charges: [],
    free: [],
  });
  const { totalCents } = billOf({
    charges: charges.map(({ what, eachCents, taxMillipercent = 0 }) => ({
      what,
      eachCents,
      taxMillipercent,
      quantity: 1,
      ticketId: null,
      prepaid: "no",
    })),
    discountCents: 0,
    taxRounding: settings?.taxRounding ?? "bill",
    taxIncluded: settings?.taxIncluded ?? "no",
  });
  return { lines, totalCents: lines.some(({ chosen }) => chosen !== null) ? totalCents : null };
}

interface BillProps {
  readonly bill: ReturnType<typeof useBill>;
  readonly prices: readonly Price[];
  readonly tried: boolean;
  onBall(key: string, change: Partial<BallDraft>): void;
}

/** What it costs: by the work, a price of the list, or nothing for a reason. */
export function CounterBill({ bill: { lines, totalCents }, prices, tried, onBall }: BillProps) {
  const { money } = useShopTimes();
  const open = lines.filter(({ ball }) => !mustStop(ball));
  if (open.length === 0) return null;
  return (
    <div className="counter-bill">
      {open.map((line) => (
        <PriceLine key={line.ball.key} line={line} prices={prices} tried={tried} onChange={(change) => onBall(line.ball.key, change)} />
      ))}
      {prices.length === 0 && (
        <p className="note">
          <Link href="/shop">{INTAKE.emptyList}</Link>
        </p>
      )}
      <p className="bill-sum">
        <span>
          {INTAKE.duePickup}
          {totalCents !== null && open.some(({ chosen }) => chosen === null) && <small> {INTAKE.duePlus}</small>}
        </span>
        <strong>{totalCents === null ? "–" : money(totalCents)}</strong>
      </p>
    </div>
  );
}

interface PriceLineProps {
  readonly line: BallPrice;
  readonly prices: readonly Price[];
  readonly tried: boolean;
  onChange(change: Partial<BallDraft>): void;
}

/** One ball's price, opened to be changed by a tap. */
function PriceLine({ line, prices, tried, onChange }: PriceLineProps) {
  const { ball, usual } = line;
  const [isOpen, setOpen] = useState(false);
  const draft = pricingDraft(ball);
  const isFree = draft.priceId === FREE;
  const name = ball.name.trim() === "" ? INTAKE.newBall : ball.name;
  return (
    <>
      <LineWords line={line} name={name} isFree={isFree} />
      <div className="bill-acts">
        <LinkButton label={INTAKE.setPriceOf(name)} isOpen={isOpen && !isFree} onTap={() => setOpen(!isOpen)}>
          {INTAKE.setPrice}
        </LinkButton>
        <LinkButton label={INTAKE.noChargeOf(name)} isOpen={isFree} onTap={() => onChange({ priceId: isFree ? "" : FREE })}>
          {INTAKE.noCharge}
        </LinkButton>
      </div>
      {(isOpen || isFree) && <ChargeChoice draft={draft} prices={prices} usual={usual} tried={tried} byHand onChange={onChange} />}
    </>
  );
}

/** What is charged for, of which ball, and how much. */
function LineWords({
  line: { chosen, work },
  name,
  isFree,
}: {
  readonly line: BallPrice;
  readonly name: string;
  readonly isFree: boolean;
}) {
  const { money } = useShopTimes();
  const charged = chosen !== null && "prices" in chosen ? chosen.prices : null;
  const what = charged === null ? work : charged.map((one) => chargeName(one.name)).join(" + ");
  const cents = charged?.reduce((sum, { eachCents }) => sum + eachCents, 0) ?? null;
  return (
    <p className="bill-line">
      <span>
        {what === "" ? name : what}
        {what !== "" && <small>{name}</small>}
      </span>
      <strong>{isFree ? INTAKE.noCharge : cents === null ? INTAKE.notPriced : money(cents)}</strong>
    </p>
  );
}

interface LinkButtonProps {
  readonly label: string;
  readonly isOpen: boolean;
  readonly children: ReactNode;
  onTap(): void;
}

function LinkButton({ label, isOpen, children, onTap }: LinkButtonProps) {
  return (
    <button type="button" className="link-button" aria-label={label} aria-expanded={isOpen} onClick={onTap}>
      {children}
    </button>
  );
}
