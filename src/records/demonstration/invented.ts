/*
 * Names of nobody and nothing. Surnames and ball names are made of plain words that we put together; telephone numbers are of the
 * range 555-0100 to 555-0199, which is kept free for fiction; addresses end in .example (RFC 2606).
 */

export const SHOP_NAME = "The Invented Pro Shop";
export const HOUSE_NAMES = ["Nowhere Lanes", "Elsewhere Bowl"] as const;

export const PEOPLE = [
  { name: "Wren Underlathe", initials: "WU" },
  { name: "Ansel Quillfeather", initials: "AQ" },
  { name: "Tamsin Brackenridge-Moor", initials: "TB" },
] as const;

const FIRST = [
  "Adela",
  "Bertram",
  "Calla",
  "Dov",
  "Edda",
  "Florian",
  "Greta",
  "Hollis",
  "Ines",
  "Jorun",
  "Kester",
  "Leocadia",
  "Milo",
  "Nerys",
  "Osric",
  "Petra",
  "Quill",
  "Rosalind",
  "Soren",
  "Thea",
] as const;
const LAST = [
  "Appleyoke",
  "Bellfinch",
  "Candlewick",
  "Dunnmarrow",
  "Elderbrook",
  "Fennimoss",
  "Gablethorn",
  "Hatherleaf",
  "Inkpenny",
  "Juniperhay",
  "Kettlewhistle",
  "Larkspindle",
  "Mossgrove",
  "Nettlecombe",
  "Oatbarrow",
  "Pebbleworth",
  "Quincefield",
  "Rushlight",
  "Saltmeadow",
  "Thimblerigg",
] as const;

/** Forty names, each used once: every first name twice, with another surname. */
export const BOWLER_NAMES: readonly string[] = [0, 7].flatMap((shift) =>
  FIRST.map((first, i) => `${first} ${LAST[(i * 3 + shift) % LAST.length]}`),
);

const COLOURS = [
  "Amber",
  "Bramble",
  "Copper",
  "Dusky",
  "Ember",
  "Flint",
  "Granite",
  "Hazel",
  "Indigo",
  "Juniper",
  "Lilac",
  "Moss",
] as const;
const ANIMALS = ["Badger", "Curlew", "Dormouse", "Egret", "Ferret", "Grebe", "Heron", "Ibex", "Jackdaw", "Lapwing"] as const;

/** A ball's invented name by its number, 0–119: no two alike. */
export function ballName(index: number): string {
  return `${COLOURS[index % COLOURS.length]} ${ANIMALS[Math.floor(index / COLOURS.length) % ANIMALS.length]}`;
}

/** `555-0100` … `555-0199`. */
export function phoneNumber(index: number): string {
  return `555-01${String(index % 100).padStart(2, "0")}`;
}

export const COMPLAINTS = {
  tooSmooth: [
    "Does nothing at the end of the lane.",
    "Skids past the spot.",
    "Used to hook, now it does not.",
    "Looks shiny in the track.",
  ],
  tooDull: ["Hooks early and hits weak.", "Leaves the corner pin too often.", "Turns before the oil ends."],
  care: ["Due for a refresh.", "Wants it as it was.", "Feels greasy.", "Before the league begins."],
} as const;
