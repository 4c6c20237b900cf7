import { USUAL_OPENINGS } from "#contract/records/promise";
import type { Openings, Settings } from "#contract/records/settings";
import { PROMISE } from "#words/en/rooms/promise";
import type { EditField } from "../../pieces/EditForm.tsx";
import { EditPlate } from "../../pieces/EditPlate.tsx";
import { answered, madeOn, shop } from "../../shop/shopClient.ts";
import { type Typed, useEditing } from "../../shop/useEditing.ts";

type Weekday = keyof Openings;
const WEEKDAYS = Object.keys(PROMISE.weekdays) as Weekday[];

const FIELDS: readonly EditField[] = WEEKDAYS.map((day) => ({
  path: `openings.${day}`,
  label: PROMISE.weekdays[day],
  help: PROMISE.openAllowed,
}));

/** When the shop is open: promises are made for these times. */
export function OpeningHours({ settings }: { readonly settings: Settings }) {
  const editing = useEditing({
    memory: "gritwright.shop.openings",
    thing: settings,
    typedOf,
    send: (typed, made) => answered(shop.settings.$patch({ json: { openings: openingsOf(typed) }, header: madeOn(made) })),
    read: async (current) => (await import("#contract/records/settings")).settingsKept.safeParse(current).data ?? null,
    touches: ["settings"],
  });
  const typed = typedOf(settings);
  return (
    <EditPlate
      least="owner"
      title={PROMISE.openings}
      rows={WEEKDAYS.map((day) => [PROMISE.weekdays[day], typed[`openings.${day}`] || PROMISE.closed])}
      fields={FIELDS}
      editing={editing}
    >
      {settings.openings === null && <p className="note">{PROMISE.openingsUsual}</p>}
    </EditPlate>
  );
}

function typedOf({ openings }: Settings): Typed {
  const hours = openings ?? USUAL_OPENINGS;
  return Object.fromEntries(
    WEEKDAYS.map((day) => {
      const open = hours[day];
      return [`openings.${day}`, open === null ? "" : PROMISE.open(open.from, open.until)];
    }),
  );
}

/** `10–19`, `9:30-18:00`; what is neither goes to the shop as it is, to be refused with what is allowed. */
function openingsOf(typed: Typed): Openings {
  return Object.fromEntries(WEEKDAYS.map((day) => [day, openingOf(typed[`openings.${day}`] ?? "")])) as unknown as Openings;
}

function openingOf(typed: string): unknown {
  if (typed.trim() === "") return null;
  const written = /^\s*(\d{1,2})(?:[:.](\d{2}))?\s*[-–]\s*(\d{1,2})(?:[:.](\d{2}))?\s*$/.exec(typed);
  if (written === null) return typed;
  const [, fromHour, fromMinute = "00", untilHour, untilMinute = "00"] = written;
  return { from: `${fromHour.padStart(2, "0")}:${fromMinute}`, until: `${untilHour.padStart(2, "0")}:${untilMinute}` };
}
