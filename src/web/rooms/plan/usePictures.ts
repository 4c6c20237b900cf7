import { startTransition, useEffect, useState } from "react";
import type { Pictures, PicturesWanted } from "../../client/protocol.ts";
import type { WorkerPool } from "../../client/workerPool.ts";
import type { Answered } from "./usePlan.ts";

export interface Choice {
  readonly title: string;
  readonly shown: readonly string[];
  readonly compared: readonly string[];
}

/** The pictures of an answer, drawn in a worker; the last ones stand until the new ones are there. */
export function usePictures(
  answered: Answered | null,
  choice: Choice,
  pool: WorkerPool,
): { pictures: Pictures | null; failure: string | null } {
  const [state, setState] = useState<{ pictures: Pictures | null; failure: string | null }>({ pictures: null, failure: null });
  const key = [choice.title, ...choice.shown, "|", ...choice.compared].join("\n");

  // `key` stands for the choice, whose lists are new objects at every rendering.
  // biome-ignore lint/correctness/useExhaustiveDependencies: see above
  useEffect(() => {
    if (answered === null) return;
    const control = new AbortController();
    pool
      .call({ kind: "pictures", wanted: wantedOf(answered, choice) }, control.signal)
      .then((pictures) => startTransition(() => setState({ pictures, failure: null })))
      .catch((error: unknown) => {
        if (!control.signal.aborted) setState((old) => ({ ...old, failure: error instanceof Error ? error.message : String(error) }));
      });
    return () => control.abort();
  }, [answered, key, pool]);
  return state;
}

function wantedOf({ question, plan, losses }: Answered, choice: Choice): PicturesWanted {
  return { question, plan, losses, ...choice };
}
