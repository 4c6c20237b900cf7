import { useId, useMemo } from "react";
import { PAGE_PAINT } from "#drawing/paint";
import { textureSwatch } from "#drawing/texture";
import { parseFinish } from "#engine/surface/finish";
import { Picture } from "./Picture.tsx";

const SIZE = 30;

/** A finish as it is drawn everywhere: stipple as coarse as the surface. Its name stands beside it. */
export function FinishSwatch({ finish }: { readonly finish: string }) {
  const id = useId();
  const svg = useMemo(() => textureSwatch(`swatch-${id}`, parseFinish(finish), SIZE, PAGE_PAINT), [id, finish]);
  return <Picture svg={svg} className="swatch" />;
}
