import type { Candidate, FinishPlan } from "#engine/planning/plan";
import { tiedChance } from "#engine/planning/tiedChance";
import { PLAN_ANSWER } from "#words/en/screens";

/** One column: its name, what it says, a second line where there is one, and its bare figures for a file. */
export interface Column {
  readonly name: string;
  readonly text: (c: Candidate) => string;
  readonly second?: (c: Candidate) => string;
  readonly figures: readonly { readonly key: string; readonly of: (c: Candidate) => number | null }[];
}

const A = PLAN_ANSWER;
const or = <T>(value: T | null, text: (value: T) => string, none: string = A.unknown): string => (value === null ? none : text(value));

/** The table of the plan, in the order in which a technician asks. */
export function tableColumns(plan: FinishPlan): readonly Column[] {
  return [
    {
      name: A.metric[plan.metric],
      text: (c) =>
        or(
          c.expectedPins,
          (i) => A.pinsDown(i.value),
          or(tiedChance(plan, c.finish) ?? c.chance, (i) => A.percent(i.value)),
        ),
      // Before other worlds are computed the range is not known, and a range of nothing would look like certainty.
      second: (c) =>
        tiedChance(plan, c.finish) !== null
          ? A.tied
          : or(
              c.chance ?? c.expectedPins,
              (i) => (i.low < i.high ? (c.chance ? A.percentRange(i.low, i.high) : A.pinsRange(i.low, i.high)) : A.rangeNotKnownYet),
              "",
            ),
      figures: [
        { key: "chance", of: (c) => c.chance?.value ?? null },
        { key: "chanceLow", of: (c) => c.chance?.low ?? null },
        { key: "chanceHigh", of: (c) => c.chance?.high ?? null },
      ],
    },
    {
      name: A.columns.line,
      text: (c) => or(c.line, (l) => A.lineBoard(l.laydownBoard), A.noLine),
      second: (c) => or(c.line, (l) => A.lineAngle(l.launchAngleDeg), ""),
      figures: [
        { key: "laydownBoard", of: (c) => c.line?.laydownBoard ?? null },
        { key: "launchAngleDeg", of: (c) => c.line?.launchAngleDeg ?? null },
      ],
    },
    {
      name: A.columns.hookAndRoll,
      text: (c) => or(c.hookStartFt, A.feet),
      second: (c) => (c.line === null ? "" : or(c.rollStartFt, A.rollsAt, A.neverRolls)),
      figures: [
        { key: "hookStartFt", of: (c) => c.hookStartFt },
        { key: "rollStartFt", of: (c) => c.rollStartFt },
      ],
    },
    { name: A.columns.entry, text: (c) => or(c.entryAngleDeg, A.degrees), figures: [{ key: "entryAngleDeg", of: (c) => c.entryAngleDeg }] },
    {
      name: A.columns.slip,
      text: (c) => or(c.slipAtPinsMps, A.slip),
      second: (c) => or(c.speedAtPinsMph, A.mph, ""),
      figures: [
        { key: "slipAtPinsMps", of: (c) => c.slipAtPinsMps },
        { key: "speedAtPinsMph", of: (c) => c.speedAtPinsMph },
      ],
    },
    {
      name: A.columns.room,
      text: (c) => or(c.missLoss, (m) => A.lossOfBoard(m.board)),
      second: (c) => or(c.missLoss, (m) => A.lossOfDelivery(m.halfDegree, m.mph), ""),
      figures: [
        { key: "missLossBoard", of: (c) => c.missLoss?.board ?? null },
        { key: "missLossHalfDegree", of: (c) => c.missLoss?.halfDegree ?? null },
        { key: "missLossMph", of: (c) => c.missLoss?.mph ?? null },
      ],
    },
    {
      name: A.columns.keeps,
      text: (c) => or(c.keepsGames, (k) => A.games(k.value), A.staysAsItIs),
      second: (c) => or(c.keepsGames, (k) => A.gamesRange(k.low, k.high), ""),
      figures: [
        { key: "keepsGames", of: (c) => c.keepsGames?.value ?? null },
        { key: "keepsGamesLow", of: (c) => c.keepsGames?.low ?? null },
        { key: "keepsGamesHigh", of: (c) => c.keepsGames?.high ?? null },
      ],
    },
    {
      name: A.columns.todaysLine,
      text: (c) => or(c.onTodaysLine, (t) => A.boardsChange(t.boardChange)),
      second: (c) => or(c.onTodaysLine?.chance ?? null, (i) => A.held(i.value), ""),
      figures: [
        { key: "onTodaysLineBoardAtPins", of: (c) => c.onTodaysLine?.boardAtPins ?? null },
        { key: "onTodaysLineBoardChange", of: (c) => c.onTodaysLine?.boardChange ?? null },
        { key: "onTodaysLineEntryAngleDeg", of: (c) => c.onTodaysLine?.entryAngleDeg ?? null },
        { key: "onTodaysLineChance", of: (c) => c.onTodaysLine?.chance?.value ?? null },
      ],
    },
    {
      name: A.columns.move,
      text: (c) => or(c.onTodaysLine?.move ?? null, (m) => A.feetMove(m.feetBoards)),
      second: (c) => or(c.onTodaysLine?.move ?? null, (m) => A.targetMove(m.targetBoards), ""),
      figures: [
        { key: "moveFeetBoards", of: (c) => c.onTodaysLine?.move?.feetBoards ?? null },
        { key: "moveTargetBoards", of: (c) => c.onTodaysLine?.move?.targetBoards ?? null },
        { key: "expectedPins", of: (c) => c.expectedPins?.value ?? null },
      ],
    },
  ];
}

/** The table as CSV (RFC 4180): one row a finish, bare figures, empty where there is none. */
export function tableCsv(plan: FinishPlan): string {
  const figures = tableColumns(plan).flatMap((c) => c.figures);
  const head = ["finish", "effectiveRaUm", ...figures.map((f) => f.key)];
  const rows = plan.candidates.map((c) => [c.finish, String(c.effectiveRaUm), ...figures.map((f) => or(f.of(c), String, ""))]);
  return [head, ...rows].map((row) => `${row.map(csvField).join(",")}\r\n`).join("");
}

function csvField(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
