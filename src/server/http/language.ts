import type { Context } from "hono";

/** Which language a request is answered in. */
export type LanguageOf = (context: Context) => Promise<string>;

/** The language that the page is written in where nothing else is asked for or there. */
export const FIRST_LANGUAGE = "en";

/** Files of the page in another language lie under their path with the language in front: `de:/index.html`. */
export function inLanguage(language: string, path: string): string {
  return `${language}:${path}`;
}

/** Languages in which there is a page. @param files by their paths */
function languagesOf(files: ReadonlyMap<string, unknown>): ReadonlySet<string> {
  return new Set([FIRST_LANGUAGE, ...[...files.keys()].flatMap((path) => (path.startsWith("/") ? [] : [path.split(":")[0]]))]);
}

/**
 * What the address asks for (`?language=de`), else what the shop has chosen, else the first of the browser's languages that is there, else English.
 *
 * @param chosen the shop's choice; null where there is none yet
 */
export function languageOf(files: ReadonlyMap<string, unknown>, chosen: () => Promise<string | null>): LanguageOf {
  const known = languagesOf(files);
  return async (context) => {
    const asked = context.req.query("language");
    if (asked !== undefined && known.has(asked)) return asked;
    const shops = known.size > 1 ? await chosen() : null;
    if (shops !== null && known.has(shops)) return shops;
    return acceptedLanguages(context.req.header("accept-language") ?? "").find((language) => known.has(language)) ?? FIRST_LANGUAGE;
  };
}

/** Primary languages of an Accept-Language header (RFC 9110, 12.5.4), the most wanted first. */
export function acceptedLanguages(header: string): readonly string[] {
  return header
    .split(",")
    .map((part) => {
      const [range, ...parameters] = part.trim().split(";");
      const quality = Number(
        parameters
          .find((one) => one.trim().startsWith("q="))
          ?.trim()
          .slice(2) ?? 1,
      );
      return { language: range.split("-")[0].toLowerCase(), quality };
    })
    .filter(({ language, quality }) => language !== "" && quality > 0)
    .toSorted((a, b) => b.quality - a.quality)
    .map(({ language }) => language);
}
