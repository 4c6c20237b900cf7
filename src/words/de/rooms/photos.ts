import type * as en from "../../en/rooms/photos.ts";
import type { Translated } from "../../translated.ts";

export const PHOTOS = {
  title: "Fotos",
  none: "Noch kein Foto. Fotografieren Sie die Seriennummer, bevor sie abgeschliffen werden kann, und jeden Riss.",
  of: "Was es zeigt",
  ofs: { condition: "Zustand", serial: "Seriennummer", crack: "Riss", surface: "Oberfläche", other: "etwas anderes" },
  add: "Foto aufnehmen oder wählen",
  sending: "Wird gesendet …",
  why: "JPEG, PNG oder WebP. Ort und Kamera werden herausgenommen, bevor es aufbewahrt wird.",
  shows: (what, day) => `Foto, ${what}, ${day}`,
  takeOut: "Herausnehmen",
  takeOutOf: (what, day) => `Das Foto herausnehmen, ${what}, ${day}`,
} as const satisfies Translated<typeof en.PHOTOS>;
