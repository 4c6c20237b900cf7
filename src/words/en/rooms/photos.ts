/** English text of photos: of a ball's condition, its serial number, a crack. */
export const PHOTOS = {
  title: "Photos",
  none: "No photo yet. Photograph the serial number before it can be sanded away, and every crack.",
  of: "What it shows",
  ofs: { condition: "condition", serial: "serial number", crack: "crack", surface: "surface", other: "something else" },
  add: "Take or choose a photo",
  sending: "Being sent …",
  why: "JPEG, PNG or WebP. Place and camera are taken out before it is kept.",
  shows: (what: string, day: string) => `Photo, ${what}, ${day}`,
  takeOut: "Take out",
  takeOutOf: (what: string, day: string) => `Take out the photo, ${what}, ${day}`,
} as const;
