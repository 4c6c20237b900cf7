import { memo } from "react";
import type { TwoLayouts } from "../client/protocol.ts";

/** A picture drawn by our own code, put into the page as it is so that it follows the page's colours. */
export const Picture = memo(function Picture({ svg, className }: { readonly svg: string; readonly className: string }) {
  // The text comes from drawing/, which escapes every word that a person typed.
  // biome-ignore lint/security/noDangerouslySetInnerHtml: see above
  return <div className={`picture ${className}`} dangerouslySetInnerHTML={{ __html: svg }} />;
});

/** The lying picture where the page is wide enough to read it, the upright one elsewhere; on paper always the lying one. */
export function PictureForWidth({ svg, className }: { readonly svg: TwoLayouts; readonly className: string }) {
  return (
    <>
      <Picture svg={svg.lying} className={`${className} for-wide`} />
      <Picture svg={svg.upright} className={`${className} for-narrow`} />
    </>
  );
}
