import type { Bowler } from "#contract/records/bowler";
import { BOWLER } from "#words/en/rooms/bowler";
import type { EditField } from "../../pieces/EditForm.tsx";
import { EditPlate } from "../../pieces/EditPlate.tsx";
import { textOrNull, typedOf, wordOrNull } from "../../shop/typedValues.ts";
import { type Typed, useEditing } from "../../shop/useEditing.ts";
import { useShopTimes } from "../../shop/zone.ts";
import { BOWLER_TOUCHES, type BowlerChange, changeBowler, readBowler } from "./changeBowler.ts";

const FIELDS: readonly EditField[] = [
  { path: "name", label: BOWLER.name },
  { path: "phone", label: BOWLER.phone, as: "tel" },
  { path: "email", label: BOWLER.email, as: "email" },
  { path: "address", label: BOWLER.address },
  { path: "hand", label: BOWLER.hand, words: { "": BOWLER.unknown, ...BOWLER.hands } },
  { path: "grip", label: BOWLER.grip, words: { "": BOWLER.unknown, ...BOWLER.grips } },
  { path: "guardian.name", label: BOWLER.guardian, help: BOWLER.underAge },
  { path: "guardian.phone", label: BOWLER.guardianPhone, as: "tel" },
  { path: "guardian.consentOn", label: BOWLER.guardianConsent, as: "date" },
  { path: "notes", label: BOWLER.notes, as: "lines" },
];

/** Who the bowler is and how to reach them; for one under age, the guardian and when they agreed. */
export function Contacts({ bowler }: { readonly bowler: Bowler }) {
  const editing = useEditing({
    memory: `gritwright.bowler.contacts.${bowler.id}`,
    thing: bowler,
    typedOf: contactsTyped,
    send: (typed, made, changed) => changeBowler(bowler.id, made, contactsChange(typed, changed)),
    read: readBowler,
    touches: BOWLER_TOUCHES,
  });
  const times = useShopTimes();
  const { name, phone, email, address, hand, grip, guardian, notes } = bowler;
  const known: readonly (readonly [string, string | null])[] = [
    [BOWLER.name, name],
    [BOWLER.phone, phone],
    [BOWLER.email, email],
    [BOWLER.address, address],
    [BOWLER.hand, hand === null ? null : BOWLER.hands[hand]],
    [BOWLER.grip, grip === null ? null : BOWLER.grips[grip]],
    [BOWLER.guardian, guardian === null ? null : [guardian.name, guardian.phone].filter((part) => part !== null).join(", ")],
    [BOWLER.guardianConsent, guardian === null || guardian.consentOn === null ? null : times.date(guardian.consentOn)],
    [BOWLER.notes, textOrNull(notes)],
  ];
  return (
    <EditPlate
      least="counter"
      title={BOWLER.contacts}
      rows={known.flatMap(([label, value]) => (value === null ? [] : [[label, value] as const]))}
      fields={FIELDS}
      editing={editing}
    >
      {guardian !== null && guardian.consentOn === null && <p className="note">{BOWLER.consentMissing}</p>}
    </EditPlate>
  );
}

function contactsTyped({ name, phone, email, address, hand, grip, guardian, notes }: Bowler): Typed {
  return {
    name,
    phone: typedOf(phone),
    email: typedOf(email),
    address: typedOf(address),
    hand: typedOf(hand),
    grip: typedOf(grip),
    "guardian.name": typedOf(guardian?.name),
    "guardian.phone": typedOf(guardian?.phone),
    "guardian.consentOn": typedOf(guardian?.consentOn),
    notes,
  };
}

/** Only what was touched; a guardian goes as a whole. */
function contactsChange(typed: Typed, changed: ReadonlySet<string>): BowlerChange {
  const { name, phone, email, address, hand, grip, notes } = typed;
  const whole = {
    name: name.trim(),
    phone: textOrNull(phone),
    email: textOrNull(email),
    address: textOrNull(address),
    hand: wordOrNull<"right" | "left">(hand),
    grip: wordOrNull<"thumb" | "no thumb" | "two hands">(grip),
    notes,
  };
  const touched = Object.fromEntries(Object.entries(whole).filter(([path]) => changed.has(path))) as BowlerChange;
  const guardian = ["guardian.name", "guardian.phone", "guardian.consentOn"];
  return guardian.some((path) => changed.has(path)) ? { ...touched, guardian: guardianOf(typed) } : touched;
}

function guardianOf(typed: Typed): BowlerChange["guardian"] {
  const [name, phone, consentOn] = [
    typed["guardian.name"].trim(),
    textOrNull(typed["guardian.phone"]),
    textOrNull(typed["guardian.consentOn"]),
  ];
  return name === "" && phone === null && consentOn === null ? null : { name, phone, consentOn };
}
