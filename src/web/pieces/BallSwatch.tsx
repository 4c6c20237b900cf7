import { FinishSwatch } from "./FinishSwatch.tsx";

/** A ball wearing its finish; an empty ring with a question mark where nobody knows it. */
export function BallSwatch({ finish }: { readonly finish: string | null }) {
  return (
    <span className="ball-swatch" aria-hidden="true">
      {finish === null ? <span className="no-finish">?</span> : <FinishSwatch finish={finish} />}
    </span>
  );
}
