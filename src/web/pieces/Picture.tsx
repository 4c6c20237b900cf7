import { memo, useEffect, useRef, useState } from "react";
import { flushSync } from "react-dom";
import type { TwoLayouts } from "../client/protocol.ts";

/** A picture drawn by our own code, put into the page as it is so that it follows the page's colours. */
export const Picture = memo(function Picture({ svg, className }: { readonly svg: string; readonly className: string }) {
  // The text comes from drawing/, which escapes every word that a person typed.
  // biome-ignore lint/security/noDangerouslySetInnerHtml: see above
  return <div className={`picture ${className}`} dangerouslySetInnerHTML={{ __html: svg }} />;
});

/** A chart that lies needs about this much to be read, px. */
const LYING_FROM = 640;

/** The lying picture where its place is wide enough to read it, the upright one elsewhere; on paper always the lying one. */
export function PictureForWidth({ svg, className }: { readonly svg: TwoLayouts; readonly className: string }) {
  const place = useRef<HTMLDivElement>(null);
  const [layout, setLayout] = useState<keyof TwoLayouts | null>(null);
  useEffect(() => {
    const element = place.current;
    if (element === null) return;
    const fit = (): void => setLayout(element.clientWidth >= LYING_FROM ? "lying" : "upright");
    const toPaper = (): void => flushSync(() => setLayout("lying"));
    const observer = new ResizeObserver(fit);
    observer.observe(element);
    addEventListener("beforeprint", toPaper);
    addEventListener("afterprint", fit);
    return () => {
      observer.disconnect();
      removeEventListener("beforeprint", toPaper);
      removeEventListener("afterprint", fit);
    };
  }, []);
  return (
    <div ref={place} className={layout === "upright" ? "is-upright" : undefined}>
      {layout !== null && <Picture svg={svg[layout]} className={className} />}
    </div>
  );
}
