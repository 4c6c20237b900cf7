import { useState } from "react";
import type { ShopFault } from "./shopClient.ts";
import { useKept } from "./useKept.ts";
import { useWrite } from "./useShop.ts";

/** The fields of a form as they are typed, by their paths: `guardian.name`. */
export type Typed = Readonly<Record<string, string>>;

interface Versioned {
  readonly version: number;
}

interface Draft {
  /** The version that was in view when it was begun. */
  readonly version: number;
  /** As it stood then: what was not touched is not written. */
  readonly before: Typed;
  readonly typed: Typed;
}

interface EditingParts<T extends Versioned> {
  /** Under which the draft is kept in this browser. */
  readonly memory: string;
  readonly thing: T;
  typedOf(thing: T): Typed;
  /** Writes what was typed over the version that is named. */
  send(typed: Typed, made: Versioned, changed: ReadonlySet<string>): Promise<T>;
  /** The thing as the server has it now; null where it cannot be read. Its schema is loaded when somebody was quicker, and not with the room. */
  read(current: unknown): Promise<T | null>;
  readonly touches: readonly string[];
  /** Called when the form has been kept or left. */
  onClose?(): void;
}

/** A form over a thing: closed, or open with what was typed. */
export interface Editing {
  readonly typed: Typed | null;
  /** What somebody else made of it meanwhile. */
  readonly theirs: Typed | null;
  readonly error: ShopFault | null;
  readonly isBusy: boolean;
  begin(): void;
  set(path: string, value: string): void;
  leave(): void;
  keep(): void;
  /** Writes what was typed over what somebody else wrote. */
  keepMine(): void;
}

/** Editing in place: what was typed outlives a reload, and a conflict loses neither version. */
export function useEditing<T extends Versioned>({ memory, thing, typedOf, send, read, touches, onClose }: EditingParts<T>): Editing {
  const [draft, setDraft] = useKept<Draft | null>(memory, () => null);
  const [theirs, setTheirs] = useState<T | null>(null);
  const write = useWrite(({ typed, version, before }: Draft) => send(typed, { version }, changedIn(before, typed)), touches);
  const begun: Draft = { version: thing.version, before: typedOf(thing), typed: typedOf(thing) };
  const close = () => {
    setDraft(null);
    setTheirs(null);
    write.reset();
    onClose?.();
  };
  const keep = (made: Draft) =>
    write.mutate(made, {
      onSuccess: close,
      onError: async (error) => setTheirs(error.isKind("changedMeanwhile") ? await read(error.problem?.current) : null),
    });
  return {
    typed: draft?.typed ?? null,
    theirs: theirs === null ? null : typedOf(theirs),
    error: write.error,
    isBusy: write.isPending,
    begin: () => setDraft(begun),
    set: (path, value) => setDraft((old) => ({ ...(old ?? begun), typed: { ...(old ?? begun).typed, [path]: value } })),
    leave: close,
    // Where nothing was touched there is nothing to write.
    keep: () => (draft === null || changedIn(draft.before, draft.typed).size === 0 ? close() : keep(draft)),
    keepMine: () => {
      if (draft !== null && theirs !== null) keep({ ...draft, version: theirs.version });
    },
  };
}

function changedIn(before: Typed, typed: Typed): ReadonlySet<string> {
  return new Set(Object.keys(typed).filter((path) => typed[path] !== before[path]));
}
