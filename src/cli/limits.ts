import { eventRulesOf, type LimitsFile, limitsFileSchema, measuredBallOf } from "#contract/bench/limitsFile";
import { entryFindings, REFUSED, surfaceRules } from "#engine/rules/events";
import { limitsOf } from "#engine/rules/limits";
import { BOOK_IDS, type BookId } from "#engine/rules/ruleBooks";
import { programVersion } from "#server/version";
import { type LimitsReport, limitsText } from "./limitsText.ts";
import type { Options } from "./options.ts";
import { readChecked } from "./readJob.ts";
import { usageFault } from "./usageFault.ts";
import type { ExitCode, World } from "./world.ts";

/** `gritwright limits FILE`: a ball's measures against a rule book of a day, and an event's rules over it. Ends with 3 where something lies outside. */
export async function limits(file: string, options: Options, world: World): Promise<ExitCode> {
  const asked = await readChecked(file, limitsFileSchema);
  const report = reportOf(asked, bookOf(options, asked), options.on ?? asked.on ?? new Date().toISOString().slice(0, 10));
  const document = { gritwright: 1, kind: "limits", engineVersion: programVersion(), checkTheCurrentRuleBook: true, ...report };
  world.print(options.json ? `${JSON.stringify(document, null, 2)}\n` : limitsText(report));
  const isOutside = report.limits.some(({ verdict }) => verdict === "outside") || report.entry.some((one) => REFUSED.includes(one));
  return isOutside ? 3 : 0;
}

function reportOf(asked: LimitsFile, book: BookId, on: string): LimitsReport {
  const event = eventRulesOf(asked);
  const name = asked.ball.name ?? null;
  return {
    name,
    book,
    on,
    limits: limitsOf(measuredBallOf(asked), book, on, event?.limits ?? []),
    entry: event === null ? [] : entryFindings(event, name, asked.event?.ballsEntered ?? null),
    surface: surfaceRules(book, on, event),
  };
}

function bookOf({ book }: Options, asked: LimitsFile): BookId {
  if (book === null) return asked.book ?? "usbc";
  const known = BOOK_IDS.find((id) => id === book);
  if (known !== undefined) return known;
  throw usageFault(`--book wants one of ${BOOK_IDS.join(", ")}; "${book}" is none.`, BOOK_IDS.join(", "), book);
}
