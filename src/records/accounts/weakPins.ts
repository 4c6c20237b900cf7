/** Ways over a keypad, and numbers that stand for something; from memory, no list is copied. */
const GUESSED = new Set(
  (
    "2580 0852 1470 0741 3690 0963 1590 0951 3570 0753 7410 9630 1379 9731 7139 3179 1397 7931 1793 2468 8642 1357 7531 2684 2486 4268 " +
    "5683 1004 5150 0007 0420 4200 0911 9110 1100 0110 0112 1120 4711 0815 3141 2718 1618 1414 " +
    "147258 258369 159753 357159 147369 741852 852963 963852 753951 951753 124578 235689 142536 145236 314159 271828 112358 " +
    "14725836 25836914 15975346 31415926"
  ).split(" "),
);
const LEAST_YEAR = 1900;
const MOST_YEAR = 2099;

/** Whether a PIN is among the first that somebody would try: on the list, a date, a repeat, a run. */
export function isWeakPin(pin: string): boolean {
  return GUESSED.has(pin) || isRepeated(pin) || isRun(pin) || isDate(pin) || isMirrored(pin) || isOfRuns(pin) || isWay(pin);
}

/** `1111`, `1212`, `123123`, and pairs such as `1122`. */
function isRepeated(pin: string): boolean {
  const length = pin.length;
  for (let part = 1; part <= length / 2; part += 1)
    if (length % part === 0 && pin === pin.slice(0, part).repeat(length / part)) return true;
  return length % 2 === 0 && [...pin].every((digit, i) => digit === pin[i - (i % 2)]);
}

/** `1234`, `9876`, `2468`: the same step from digit to digit, past 9 and 0 too. */
function isRun(pin: string): boolean {
  const steps = [...pin].slice(1).map((digit, i) => (Number(digit) - Number(pin[i]) + 10) % 10);
  return new Set(steps).size === 1;
}

/** `1331`, `123321`. */
function isMirrored(pin: string): boolean {
  return pin === [...pin].reverse().join("");
}

/** Runs one behind the other: `123654`, `789456`, `43211234`, and a run of pairs, `246810`. */
function isOfRuns(pin: string): boolean {
  const half = Math.ceil(pin.length / 2);
  const halves = [pin.slice(0, half), pin.slice(half)];
  const pairs = pin.match(/../g) ?? [];
  const steps = pairs.slice(1).map((pair, i) => Number(pair) - Number(pairs[i]));
  const isCounted = pin.length > 4 && pairs.length * 2 === pin.length && new Set(steps).size === 1;
  // `246810` and its like: numbers that are counted, written without a space.
  const isWritten = [1, 2, 3, 4, 5].some((step) =>
    [1, 2, 3, 4, 5, 6, 7, 8, 9, 10].some((start) => counted(start, step, pin.length) === pin),
  );
  return (halves.every((part) => part.length > 2) && halves.every(isRun)) || isCounted || isWritten;
}

function counted(start: number, step: number, length: number): string {
  let text = "";
  for (let number = start; text.length < length; number += step) text += number;
  return text;
}

/** A keypad, as telephones have it. */
const KEYS: Readonly<Record<string, readonly [number, number]>> = Object.fromEntries(
  [..."123456789*0#"].map((key, i) => [key, [i % 3, Math.floor(i / 3)] as const]),
);

/** From each key to one beside it: `1478`. */
function isWay(pin: string): boolean {
  return [...pin].slice(1).every((key, i) => {
    const [[x, y], [fromX, fromY]] = [KEYS[key], KEYS[pin[i]]];
    return Math.abs(x - fromX) + Math.abs(y - fromY) <= 1;
  });
}

/** A year, a day with its month, or both in any order that is written somewhere. */
function isDate(pin: string): boolean {
  const year = (text: string) => Number(text) >= LEAST_YEAR && Number(text) <= MOST_YEAR;
  const day = (text: string) => isDayAndMonth(text.slice(0, 2), text.slice(2)) || isDayAndMonth(text.slice(2), text.slice(0, 2));
  if (pin.length === 4) return year(pin) || day(pin);
  if (pin.length === 6) return day(pin.slice(0, 4)) || day(pin.slice(2));
  return pin.length === 8 && ((day(pin.slice(0, 4)) && year(pin.slice(4))) || (year(pin.slice(0, 4)) && day(pin.slice(4))));
}

function isDayAndMonth(day: string, month: string): boolean {
  return Number(day) >= 1 && Number(day) <= 31 && Number(month) >= 1 && Number(month) <= 12;
}
