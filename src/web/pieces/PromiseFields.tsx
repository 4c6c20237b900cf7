import { instantAt, USUAL_OPENINGS, whenOpen } from "#contract/records/promise";
import { PROMISE } from "#words/en/rooms/promise";
import { useSettings } from "../shop/zone.ts";
import { LineField } from "./PlainFields.tsx";

interface PromiseProps {
  /** The moment promised. */
  readonly at: string;
  readonly why: string;
  /** Whether somebody tried to go on without a reason. */
  readonly tried: boolean;
  onChange(change: { readonly at?: string; readonly why?: string }): void;
}

/** Another time than the one that was reckoned or promised, on the shop's clocks, and why. */
export function PromiseFields({ at, why, tried, onChange }: PromiseProps) {
  const settings = useSettings().data;
  const zone = settings?.zone ?? "UTC";
  const isPast = Date.parse(at) < Date.now();
  const isClosed = whenOpen(Date.parse(at), zone, settings?.openings ?? USUAL_OPENINGS) !== Date.parse(at);
  return (
    <div className="promise-fields">
      <LineField
        label={PROMISE.when}
        type="datetime-local"
        value={localIn(zone, at)}
        problem={isPast ? PROMISE.past : isClosed ? PROMISE.shut : undefined}
        onChange={(typed) => {
          const [day, time] = typed.split("T");
          if (day !== "" && time !== undefined) onChange({ at: new Date(instantAt(zone, day, time.slice(0, 5))).toISOString() });
        }}
      />
      <LineField
        label={PROMISE.why}
        value={why}
        problem={tried && why.trim() === "" ? PROMISE.needsWhy : undefined}
        onChange={(typed) => onChange({ why: typed })}
      />
    </div>
  );
}

/** As a field for day and time takes it (HTML, local date and time): 2026-05-31T18:30. */
function localIn(zone: string, instant: string): string {
  const format = new Intl.DateTimeFormat("sv", {
    timeZone: zone,
    year: "numeric",
    month: "2-digit",
    day: "2-digit",
    hour: "2-digit",
    minute: "2-digit",
  });
  // Swedish writes days and times as ISO 8601 does.
  return format.format(new Date(instant)).replace(" ", "T");
}
