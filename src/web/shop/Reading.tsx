import type { UseQueryResult } from "@tanstack/react-query";
import type { ReactNode } from "react";
import { Button } from "react-aria-components";
import { SHOP_FRAME } from "#words/en/rooms/frame";
import { faultWords } from "./faultWords.ts";
import type { ShopFault } from "./shopClient.ts";

interface ReadingProps<T> {
  readonly of: UseQueryResult<T, ShopFault>;
  /** Said where there is nothing. */
  readonly empty?: string;
  readonly isEmpty?: (read: T) => boolean;
  readonly children: (read: T) => ReactNode;
}

/** What a room reads, in every state it can be in: being read, failed, empty, there. What was read before stays in view while it is read again. */
export function Reading<T>({ of, empty = SHOP_FRAME.nothingHere, isEmpty, children }: ReadingProps<T>) {
  if (of.data !== undefined) {
    if (isEmpty?.(of.data) === true) return <p className="nothing">{empty}</p>;
    return <>{children(of.data)}</>;
  }
  if (of.error?.isKind("notForRole") === true) return <p className="nothing">{faultWords(of.error)}</p>;
  if (of.error !== null)
    return (
      <div role="alert" className="failed">
        <p>{of.error.problem === null ? SHOP_FRAME.away : SHOP_FRAME.failedToRead(faultWords(of.error))}</p>
        <Button onPress={() => of.refetch()}>{SHOP_FRAME.tryAgain}</Button>
      </div>
    );
  return (
    <p className="reading" aria-live="polite">
      {SHOP_FRAME.reading}
    </p>
  );
}
