import type { Ball } from "#contract/records/ball";
import { gamesSinceWork, knownFinish } from "#contract/records/benchBall";
import type { Pattern } from "#contract/records/place";
import { PAD_NUMBERS } from "#engine/surface/pads";
import { coverWord } from "#words/coverWord";
import { BAG_ROOM } from "#words/en/rooms/bag";
import { PATTERN_WORDS } from "#words/en/screens";
import type { FieldProblem } from "../../client/protocol.ts";
import { Choices } from "../../pieces/Choices.tsx";
import { OneOf } from "../../pieces/OneOf.tsx";
import { LineField, WordField } from "../../pieces/PlainFields.tsx";
import { type BagDraft, MOST_BALLS } from "./bagDraft.ts";

interface BagFormProps {
  readonly draft: BagDraft;
  readonly balls: readonly Ball[];
  readonly patterns: readonly Pattern[];
  readonly problems: readonly FieldProblem[];
  onChange(draft: BagDraft): void;
}

/** What the bag is packed for. Bad input is answered beside its field when it is worked out; nothing typed is lost. */
export function BagForm({ draft, balls, patterns, problems, onChange }: BagFormProps) {
  const set = (change: Partial<BagDraft>) => onChange({ ...draft, ...change });
  const problemAt = (path: string) => problems.find((problem) => problem.path === path)?.allowed;
  const line = (key: keyof BagDraft & string, label: string, path: string) => (
    <LineField
      label={label}
      inputMode="decimal"
      value={draft[key] as string}
      problem={problemAt(path)}
      onChange={(value) => set({ [key]: value })}
    />
  );
  const placed = FIELD_PATHS;
  const elsewhere = problems.filter(({ path }) => !placed.includes(path));
  return (
    <>
      <Choices
        label={BAG_ROOM.balls}
        words={Object.fromEntries(balls.map((ball) => [ball.id, ballWords(ball)]))}
        chosen={draft.balls}
        onChange={(chosen) => set({ balls: chosen })}
      />
      {draft.balls.length > MOST_BALLS && <p className="note">{BAG_ROOM.tooMany(MOST_BALLS)}</p>}
      <div className="field-row">
        <WordField label={BAG_ROOM.oil} value={draft.oil} words={oilWords(patterns)} onChange={(oil) => set({ oil })} />
        {line("games", BAG_ROOM.games, "session.games")}
        <WordField
          label={BAG_ROOM.stages}
          value={draft.stagesAGame}
          words={BAG_ROOM.stageWords}
          problem={problemAt("session.stagesAGame")}
          onChange={(stages) => set({ stagesAGame: stages as BagDraft["stagesAGame"] })}
        />
        {line("others", BAG_ROOM.others, "session.others.bowlers")}
        {line("leftHanders", BAG_ROOM.leftHanders, "session.others.leftHanders")}
        {line("practiceShots", BAG_ROOM.practice, "session.practiceShots")}
      </div>
      <details className="add-stop">
        <summary>
          {BAG_ROOM.work}, {BAG_ROOM.rules}
        </summary>
        <div className="field-row">
          {line("minutesBefore", BAG_ROOM.minutesBefore, "work.minutesBefore")}
          {line("minutesInPractice", BAG_ROOM.minutesInPractice, "work.minutesInPractice")}
          {line("minutesBetween", BAG_ROOM.minutesBetween, "work.minutesBetweenGames")}
          <OneOf label={BAG_ROOM.polish} value={draft.polish} words={BAG_ROOM.polishWords} onChange={(polish) => set({ polish })} />
        </div>
        <Choices
          label={BAG_ROOM.pads}
          words={Object.fromEntries(PAD_NUMBERS.map((number) => [String(number), String(number)]))}
          chosen={draft.pads}
          onChange={(pads) => set({ pads })}
        />
        <div className="field-row">
          <WordField
            label={BAG_ROOM.book}
            value={draft.book}
            words={BAG_ROOM.bookWords}
            onChange={(book) => set({ book: book as BagDraft["book"] })}
          />
          <LineField label={BAG_ROOM.on} type="date" value={draft.on} problem={problemAt("rules.on")} onChange={(on) => set({ on })} />
          <WordField
            label={BAG_ROOM.eventBetween}
            value={draft.between}
            words={BAG_ROOM.eventWords}
            onChange={(between) => set({ between: between as BagDraft["between"] })}
          />
          {line("outermost", BAG_ROOM.outermost, "limits.laydownBoard[0]")}
          {line("innermost", BAG_ROOM.innermost, "limits.laydownBoard[1]")}
        </div>
      </details>
      {elsewhere.map(({ path, value, allowed }) => (
        <p key={path} className="failed">
          {path}: {value} – {allowed}
        </p>
      ))}
    </>
  );
}

/** Where a problem is answered beside its field; any other is told below the form. */
const FIELD_PATHS: readonly string[] = [
  "session.games",
  "session.stagesAGame",
  "session.others.bowlers",
  "session.others.leftHanders",
  "session.practiceShots",
  "work.minutesBefore",
  "work.minutesInPractice",
  "work.minutesBetweenGames",
  "rules.on",
  "limits.laydownBoard[0]",
  "limits.laydownBoard[1]",
];

function ballWords(ball: Ball): string {
  const finish = knownFinish(ball) ?? BAG_ROOM.finishNotKnown;
  return BAG_ROOM.ballWords(ball.name, coverWord(ball.cover), finish, gamesSinceWork(ball));
}

function oilWords(patterns: readonly Pattern[]): Readonly<Record<string, string>> {
  return Object.fromEntries([
    ...patterns.map(({ id, name }) => [`kept:${id}`, name] as const),
    ...Object.entries(PATTERN_WORDS).map(([id, name]) => [`named:${id}`, BAG_ROOM.patternNamed(name)] as const),
  ]);
}
