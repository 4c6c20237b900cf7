import { useId, useMemo } from "react";
import { PAGE_PAINT } from "#drawing/paint";
import { textureSwatch } from "#drawing/texture";
import { parseFinish } from "#engine/surface/finish";
import { Picture } from "./Picture.tsx";

const USUAL_SIZE = 30;

/** A finish as it is drawn everywhere: stipple as coarse as the surface. Its name stands beside it. */
export function FinishSwatch({ finish, size = USUAL_SIZE }: { readonly finish: string; readonly size?: number }) {
  const id = useId();
  const svg = useMemo(() => textureSwatch(`swatch-${id}`, parseFinish(finish), size, PAGE_PAINT), [id, finish, size]);
  return <Picture svg={svg} className="swatch" />;
}

/** A ball wearing its finish; an empty ring with a question mark where nobody knows it. */
export function BallSwatch({ finish }: { readonly finish: string | null }) {
  return (
    <span className="ball-swatch" aria-hidden="true">
      {finish === null ? <span className="no-finish">?</span> : <FinishSwatch finish={finish} />}
    </span>
  );
}
