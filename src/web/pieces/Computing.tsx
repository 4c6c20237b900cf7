interface ComputingProps {
  readonly status: "idle" | "working" | "done" | "stopped" | "failed";
  /** How far it has got; null before the first piece of it is done. */
  readonly progress: { readonly done: number; readonly of: number; readonly said: string } | null;
  readonly words: { readonly compute: string; readonly computing: string; readonly stop: string; readonly stopped: string };
  /** Said below the button: what to expect, or what went wrong. */
  readonly hint: string | null;
  readonly failure: string | null;
  onCompute(): void;
  onStop(): void;
}

/** A long computation: begun by a button, stopped by one, with how far it has got. */
export function Computing({ status, progress, words, hint, failure, onCompute, onStop }: ComputingProps) {
  return (
    <div className="computing" aria-live="polite">
      {status === "working" ? (
        <>
          <button type="button" className="button" onClick={onStop}>
            {words.stop}
          </button>
          <p className="note">{progress?.said ?? words.computing}</p>
          <progress max={progress?.of ?? 1} value={progress?.done ?? 0} aria-label={words.computing} />
        </>
      ) : (
        <button type="button" className="button primary" onClick={onCompute}>
          {words.compute}
        </button>
      )}
      {status === "idle" && hint !== null && <p className="note">{hint}</p>}
      {status === "stopped" && <p className="note">{words.stopped}</p>}
      {failure !== null && <p className="failed">{failure}</p>}
    </div>
  );
}
