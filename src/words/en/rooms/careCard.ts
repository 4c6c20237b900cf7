import type { Hand } from "#engine/delivery/bowler";
import type { StageKind } from "#engine/surface/stages";

const whole = (figure: number): number => Math.round(Math.abs(figure));
const feet = (count: number): string => (count === 1 ? "a foot" : `${count} feet`);
const boards = (count: number): string => (count === 1 ? "1 board" : `${count} boards`);
/** Changes that nobody would notice: half a foot, three quarters of a board, some of a degree. */
const SEEN = { feet: 0.5, boards: 0.75, degrees: 0.15, clearly: 0.6 };

/** What a stage of some kind left behind, on a card. */
const DID: Readonly<Record<StageKind, (tool: string | null) => string>> = {
  clean: () => "Cleaned",
  open: (tool) => (tool === null ? "Opened the surface" : `Opened with ${tool}`),
  extract: () => "Pulled the oil out",
  dryOff: () => "Dried and cooled",
  plug: () => "Sanded the plug flush",
  cut: (tool) => tool ?? "Sanded",
  polish: (tool) => tool ?? "Polished",
  check: () => "Checked all six sides",
};

/** English text of the page handed to the customer: words and feet, no percentages, and never more than was signed. */
export const CARE_CARD = {
  signFirst: "Sign the work first.",
  signFirstWhy: "A care card says what was done, and nothing of this ticket is signed yet.",
  toGuide: "To the work guide",
  isAt: (ball: string, finish: string) => `${ball} is at ${finish}`,
  inWork: (ball: string) => `${ball} is in work`,
  isDone: (ball: string) => `${ball} is done`,
  wasAt: (finish: string) => `was at ${finish}`,
  left: (steps: number) => (steps === 1 ? "One step is still to be done." : `${steps} steps are still to be done.`),

  does: "What it does now",
  hooks: (laterFt: number) =>
    Math.abs(laterFt) < SEEN.feet
      ? "Hooks where it did on your line."
      : `Hooks about ${feet(whole(laterFt))} ${laterFt > 0 ? "later" : "earlier"}.`,
  move: (inBoards: number, hand: Hand, sharperDeg: number | null) => {
    if (Math.abs(inBoards) < SEEN.boards) return "Stand where you stood.";
    const side = inBoards > 0 === (hand === "right") ? "left" : "right";
    const turn = sharperDeg === null || Math.abs(sharperDeg) < SEEN.degrees ? "" : sharperDeg > 0 ? "sharper" : "smoother";
    const much = Math.abs(sharperDeg ?? 0) < SEEN.clearly ? "a little " : "";
    return `Move ${boards(whole(inBoards))} ${side}${turn === "" ? "." : `: into the pocket ${much}${turn}.`}`;
  },
  nowMoved: (inBoards: number, hand: Hand) =>
    Math.abs(inBoards) < SEEN.boards ? "now" : `now, ${whole(inBoards)} ${inBoards > 0 === (hand === "right") ? "left" : "right"}`,
  was: "was",
  oilEnds: "oil ends",
  fanTitle: "Before and now",
  fanDescription: (wasFt: number | null, nowFt: number | null) =>
    `The ball's way down the lane before and now${wasFt === null || nowFt === null ? "" : `: it started to hook at ${Math.round(wasFt)} feet, now at ${Math.round(nowFt)}`}.`,
  fromPlan: "By the plan for your delivery and this oil; your lanes may differ.",

  did: "What we did",
  step: (kind: StageKind, tool: string | null) => DID[kind](tool),
  way: { wet: "wet", dry: "dry" },
  sides: (count: number) => (count === 6 ? "all six sides" : count === 1 ? "one side" : `${count} sides`),
  sidesOpen: (done: number, of: number) => `${done} of ${of} sides, not signed anew`,
  measured: (verdict: string) => `Measured: ${verdict}`,
  seen: (verdict: string) => `By eye: ${verdict}`,

  back: "Come back in",
  games: (count: number) => `${count} games`,
  around: (date: string) => `around ${date}`,
  whatFor: { refresh: "for a fresh finish", extraction: "to pull the oil" },
  whenFor: (date: string | null, what: string) =>
    date === null ? `${what.slice(0, 1).toUpperCase()}${what.slice(1)}.` : `around ${date}, ${what}.`,
  backWhen: "Come back when",
  signs: {
    sanded: "It skids longer than it does now, or the track shines.",
    polished: "It hooks earlier than it does now, or the track looks dull.",
  },
  /** A sanded surface wears smooth in the track, a polished one wears dull (common practice). */
  sooner: {
    sanded: "Sooner if it skids longer or the track shines.",
    polished: "Sooner if it hooks earlier or the track looks dull.",
  },

  care: "Keep it alive",
  rules: ["Wipe the oil off after every shot.", "Clean it warm, the same night.", "Never leave it in a hot or freezing car."],
  events: "Check event rules before you touch the surface.",
} as const;
