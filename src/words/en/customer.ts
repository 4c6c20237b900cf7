const SMALL = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

const inWords = (count: number): string => SMALL[count] ?? String(count);

/** A distance along the lane as one says it across the counter. */
function distance(feet: number): string {
  const whole = Math.round(feet);
  if (whole <= 1) return "about a foot";
  return whole === 3 ? "about a yard" : `about ${inWords(whole)} feet`;
}

function someBoards(count: number): string {
  const whole = Math.round(count);
  if (whole < 1) return "half a board";
  return whole === 1 ? "about a board" : `about ${inWords(whole)} boards`;
}

/** English text for the customer: feet and words. */
export const CUSTOMER = {
  leaveIt: "The surface is right for this lane as it is; we would only clean it and even it out.",
  finish: (pick: string) => `We would put the ball at ${pick}.`,
  refinish: (today: string, pick: string) => `The ball is finished at ${today} today; we would put it at ${pick}.`,
  itWill: (parts: readonly string[]) => `It will turn ${parts.join(" and ")}.`,
  hook: (feet: number, direction: "later" | "earlier") => `${distance(feet)} ${direction}`,
  entry: (size: "little" | "much", direction: "sharper" | "smoother") =>
    size === "little" ? `a little ${direction}` : `clearly ${direction}`,
  onYourLine: (boards: number, side: "higher" | "lighter") =>
    `On the line you play now it would hit ${someBoards(boards)} ${side}, so move before the first game.`,
  noMatter: "On this lane you would not see a difference between finishes; keep the one you have.",
  hooksTooMuch: "This ball turns too much for this lane, whatever we do to the surface. A weaker ball is the better answer tonight.",
  hooksTooLittle:
    "This ball does not turn enough on this lane, whatever we do to the surface. A stronger ball is the better answer tonight.",
  notTheSurface:
    "What this ball needs here comes from the hand, not from its surface: steadier shots, and more turn. Keep the surface you have.",
  slidesThrough: "There is oil all the way to the pins tonight: no surface will make this ball hook. Play it straight.",
  strongerBall: "It could use more ball than this one: a stronger cover would suit this lane better.",
  weakerBall: "It could use less ball than this one: a weaker cover would suit this lane better.",
} as const;
