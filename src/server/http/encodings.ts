/** Ways of squeezing an answer that are offered, the smaller first. */
export const ENCODINGS = ["br", "gzip"] as const;
export type Encoding = (typeof ENCODINGS)[number];

/**
 * The best encoding that an Accept-Encoding header allows (RFC 9110, 12.5.3); null for the plain answer. Of those that are wanted equally the smaller one is
 * taken; a header that is not there asks for none.
 */
export function encodingFor(header: string | undefined, offered: readonly Encoding[] = ENCODINGS): Encoding | null {
  const wanted = new Map(
    (header ?? "").split(",").map((part) => {
      const [name, ...parameters] = part.split(";").map((piece) => piece.trim().toLowerCase());
      const quality = parameters.find((one) => one.startsWith("q="))?.slice(2);
      return [name, quality === undefined ? 1 : Number(quality)] as const;
    }),
  );
  const wish = (encoding: string): number => wanted.get(encoding) ?? wanted.get("*") ?? 0;
  const best = offered.filter((encoding) => wish(encoding) > 0).toSorted((a, b) => wish(b) - wish(a))[0];
  const plain = wanted.get("identity") ?? 0;
  return best !== undefined && wish(best) >= plain ? best : null;
}
