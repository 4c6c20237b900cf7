import { useState } from "react";
import type { Bowler } from "#contract/records/bowler";
import { MEASURING } from "#words/en/rooms/measuring";
import { PATTERN_WORDS } from "#words/en/screens";
import { useComputed } from "../../client/poolHere.ts";
import type { FieldProblem } from "../../client/protocol.ts";
import { type EditField, EditFields } from "../../pieces/EditForm.tsx";
import { Fold } from "../../pieces/Fold.tsx";
import { WordField } from "../../pieces/PlainFields.tsx";
import { useKept } from "../../shop/useKept.ts";
import { useSpeed } from "../../shop/zone.ts";
import { MeasuringAnswer } from "./MeasuringAnswer.tsx";
import { MeasuringHow } from "./MeasuringHow.tsx";
import { MeasuringShot } from "./MeasuringShot.tsx";
import { deliveryFileOf, EMPTY_MEASURING, EMPTY_SHOT, isTyped, type MeasuringDraft, type ShotTyped } from "./measuringDraft.ts";

/** A delivery measured from filmed shots: what was seen is typed, what it says stands below it as one types. */
export function Measuring({ bowler }: { readonly bowler: Bowler }) {
  return (
    <Fold title={MEASURING.title} summary={MEASURING.summary} startsOpen="never" level={3}>
      <Open bowler={bowler} />
    </Fold>
  );
}

function Open({ bowler }: { readonly bowler: Bowler }) {
  const unit = useSpeed();
  const [draft, setDraft] = useKept<MeasuringDraft>(`gritwright.measuring.${bowler.id}`, () => EMPTY_MEASURING);
  const [wasKept, setWasKept] = useState(false);
  const file = deliveryFileOf(draft, bowler, unit);
  const answer = useComputed(file === null ? null : { kind: "measureDelivery", file }, ["measureDelivery", file]);
  const told = file === null ? undefined : answer.data;
  const problems = told?.kind === "problems" ? told.problems : [];
  const change = (part: Partial<MeasuringDraft>) => {
    setWasKept(false);
    setDraft({ ...draft, ...part });
  };
  const setShot = (at: number, shot: ShotTyped) => change({ shots: draft.shots.with(at, shot) });
  return (
    <div className="measuring">
      <MeasuringHow />
      {bowler.hand === null && <p className="note">{MEASURING.handTaken}</p>}
      <CameraAndLane draft={draft} problems={problems} onChange={change} />
      {draft.shots.map((shot, i) => (
        <MeasuringShot
          // biome-ignore lint/suspicious/noArrayIndexKey: a shot is known by its place alone
          key={i}
          number={i + 1}
          shot={shot}
          problems={problemsOf(problems, `shots[${i}]`)}
          onChange={(next) => setShot(i, next)}
          onRemove={draft.shots.length === 1 ? null : () => change({ shots: draft.shots.toSpliced(i, 1) })}
        />
      ))}
      <button
        type="button"
        className="button"
        onClick={() => change({ shots: [...draft.shots, likeLast(draft.shots[draft.shots.length - 1])] })}
      >
        {MEASURING.addShot}
      </button>
      {answer.error !== null && <p className="failed">{MEASURING.failed(answer.error.message)}</p>}
      {problems
        .filter(({ path }) => !path.startsWith("shots[") && !path.startsWith("camera."))
        .map(({ path, value, allowed }) => (
          <p key={path} className="failed">
            {path}: {value} – {allowed}
          </p>
        ))}
      <MeasuringAnswer
        bowler={bowler}
        told={told}
        isAsked={file !== null}
        shots={draft.shots.filter(isTyped).length}
        wasKept={wasKept}
        onKept={() => {
          setDraft({ ...draft, shots: [EMPTY_SHOT] });
          setWasKept(true);
        }}
      />
    </div>
  );
}

/** A bowler is filmed one shot after the other in one way. */
function likeLast({ speedBy, timeIn, turnsIn }: ShotTyped): ShotTyped {
  return { ...EMPTY_SHOT, speedBy, timeIn, turnsIn };
}

/** Problems at or below a place, by what is left of their paths. */
function problemsOf(problems: readonly FieldProblem[], place: string): readonly FieldProblem[] {
  return problems.flatMap((problem) =>
    problem.path === place || problem.path.startsWith(`${place}.`)
      ? [{ ...problem, path: problem.path.slice(place.length).replace(/^\./, "") }]
      : [],
  );
}

const CAMERA_FIELDS: readonly EditField[] = [
  { path: "framesPerSecond", label: MEASURING.framesPerSecond, as: "number" },
  { path: "downDeg", label: MEASURING.downDeg, as: "number", help: MEASURING.downHelp },
  { path: "frameWithin", label: MEASURING.frameWithin, as: "number" },
  { path: "markWithin", label: MEASURING.markWithin, as: "number" },
  { path: "launchAngleDeg", label: MEASURING.launchAngleDeg, as: "number" },
];

interface CameraProps {
  readonly draft: MeasuringDraft;
  readonly problems: readonly FieldProblem[];
  onChange(part: Partial<MeasuringDraft>): void;
}

function CameraAndLane({ draft: { camera, oil }, problems, onChange }: CameraProps) {
  const beside = problemsOf(problems, "camera").map((problem) => ({ ...problem, message: problem.allowed }));
  return (
    <details className="add-stop" open={beside.length > 0 || undefined}>
      <summary>
        {MEASURING.camera}: {MEASURING.cameraSummary(camera.framesPerSecond ?? "", camera.downDeg ?? "")}
      </summary>
      <EditFields
        fields={CAMERA_FIELDS}
        typed={camera}
        problems={beside}
        onSet={(path, value) => onChange({ camera: { ...camera, [path]: value } })}
      />
      <WordField
        label={MEASURING.oil}
        value={oil}
        words={{ "": MEASURING.oilUnknown, ...PATTERN_WORDS }}
        onChange={(next) => onChange({ oil: next })}
      />
    </details>
  );
}
