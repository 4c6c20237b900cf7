import { useState } from "react";
import type { TICKET } from "#words/en/rooms/ticket";
import { answered, newKey, shop } from "../../shop/shopClient.ts";
import { useWrite } from "../../shop/useShop.ts";

export type Method = keyof typeof TICKET.methods;

/** Takes a payment for a visit. One key and one moment for one payment: pressed twice, or sent again after a fault, it is taken once. */
export function useTakePayment(visitId: string) {
  const [once, setOnce] = useState<{ readonly key: string; readonly at: string } | null>(null);
  const pay = useWrite(
    ({ key, ...payment }: { cents: number; currency: string; method: Method; key: string; at: string }) =>
      answered(shop.payments.$post({ json: { visitId, kind: "payment", ...payment }, header: { "Idempotency-Key": key } })),
    ["visits", "payments"],
  );
  return {
    isPending: pay.isPending,
    error: pay.error,
    take(cents: number, currency: string, method: Method, then: () => void = () => {}): void {
      const now = once ?? { key: newKey(), at: new Date().toISOString() };
      setOnce(now);
      pay.mutate(
        { cents, currency, method, ...now },
        {
          onSuccess: () => {
            setOnce(null);
            then();
          },
          onError: ({ problem }) => problem !== null && setOnce(null),
        },
      );
    },
  };
}
