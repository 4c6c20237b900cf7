import { billOf } from "#contract/records/bill";
import {
  type Payment,
  type Prepaid,
  paidOf,
  paymentKept,
  paymentWritten,
  prepaidKept,
  prepaidWritten,
  tipsOf,
} from "#contract/records/money";
import type { Visit } from "#contract/records/visit";
import type { Problem } from "#engine/fault";
import type { Session } from "../session.ts";
import { closeVisit } from "./closeVisit.ts";
import type { Definition } from "./definition.ts";
import { visits } from "./plainKinds.ts";
import { store } from "./store.ts";

/** More payments of one visit, or entries of one bowler, than there will ever be. */
const ALL = 500;

export const paymentKind: Definition<Payment> = {
  kind: "payments",
  written: paymentWritten,
  kept: paymentKept,
  lookups: { visitId: "visits", refundOf: "payments" },
  async check(payment, before, session) {
    const visit = await store(session, visits).get(payment.visitId);
    const problems = payment.currency === visit.currency ? [] : [{ path: "currency", value: payment.currency, allowed: visit.currency }];
    if (payment.kind === "payment")
      return [
        ...problems,
        ...(payment.refundOf === null ? [] : [{ path: "refundOf", value: payment.refundOf, allowed: "null, for a payment" }]),
        ...(before === null ? await tooMuch(payment, visit, session) : []),
      ];
    return [...problems, ...(await refundProblems(payment, session))];
  },
  alsoWrite: ({ visitId }, _before, session, by) => closeVisit(visitId, paymentKind, session, by),
};

/** A bill is paid once, from however many counters. Where there is no bill yet, money may be left for it. */
async function tooMuch({ visitId, cents }: Payment, visit: Visit, session: Session): Promise<Problem[]> {
  if (visit.charges.length === 0) return [];
  const { items } = await store(session, paymentKind).list({ where: { visitId }, limit: ALL });
  const owed = billOf(visit).totalCents - paidOf(items);
  if (cents <= owed) return [];
  return [{ path: "cents", value: cents, allowed: owed > 0 ? `1 ≤ x ≤ ${owed} cents, what is owed` : "nothing more: the bill is paid" }];
}

/** Money can be given back once. */
async function refundProblems(refund: Payment, session: Session): Promise<Problem[]> {
  if (refund.refundOf === null) return [{ path: "refundOf", value: null, allowed: "the id of the payment that is given back" }];
  const payments = store(session, paymentKind);
  const first = await payments.get(refund.refundOf);
  if (first.kind !== "payment" || first.visitId !== refund.visitId)
    return [{ path: "refundOf", value: refund.refundOf, allowed: "a payment of the same visit" }];
  const { items } = await payments.list({ where: { refundOf: first.id }, limit: ALL });
  const left = paidOf([first, ...items]);
  const tipLeft = tipsOf([first, ...items]);
  return [
    ...(refund.cents <= left
      ? []
      : [{ path: "cents", value: refund.cents, allowed: `1 ≤ x ≤ ${left} cents, what is left of the payment` }]),
    ...(refund.tipCents <= tipLeft
      ? []
      : [{ path: "tipCents", value: refund.tipCents, allowed: `0 ≤ x ≤ ${tipLeft} cents, what is left of the tip` }]),
  ];
}

export const prepaidKind: Definition<Prepaid> = {
  kind: "prepaid",
  written: prepaidWritten,
  kept: prepaidKept,
  lookups: { bowlerId: "bowlers", visitId: "visits" },
  async check({ bowlerId, change }, _before, session) {
    const { items } = await store(session, prepaidKind).list({ where: { bowlerId }, limit: ALL });
    const left = items.reduce((sum, entry) => sum + entry.change, 0);
    return left + change >= 0 ? [] : [{ path: "change", value: change, allowed: `x ≥ ${-left}: so many refreshes are left` }];
  },
};
