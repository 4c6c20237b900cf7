import { stringify } from "yaml";
import { DELIVERY_NUMBERS, deliveryFileSchema, deliveryOf, jobBowlerOf } from "#contract/deliveryFile";
import type { BowlerMeasured, DeliveryNumber } from "#engine/learning/delivery/measureBowler";
import type { OverShots } from "#engine/learning/delivery/shots";
import { programVersion } from "#server/version";
import { DELIVERY, DELIVERY_WORDS, SPEED_CLASS_MEANS, SPEED_CLASS_WORDS } from "#words/en/delivery";
import { SHOT_DEFAULTS } from "#words/en/shotReport";
import type { Options } from "./options.ts";
import { readChecked } from "./readJob.ts";
import { paragraph, textColumns } from "./textTable.ts";
import type { ExitCode, World } from "./world.ts";

const WIDTH = 100;

/** `gritwright delivery FILE`: a bowler's numbers from filmed shots, each with its error. */
export async function delivery(file: string, options: Options, world: World): Promise<ExitCode> {
  const asked = await readChecked(file, deliveryFileSchema);
  const result = deliveryOf(asked);
  const bowler = jobBowlerOf(result);
  const document = {
    gritwright: 1,
    kind: "delivery",
    engineVersion: programVersion(),
    ...result.measured,
    bowler,
    defaults: result.defaults,
  };
  world.print(options.json ? `${JSON.stringify(document, null, 2)}\n` : textOf(result, bowler));
  return 0;
}

function textOf({ seen, measured, defaults }: ReturnType<typeof deliveryOf>, bowler: ReturnType<typeof jobBowlerOf>): string {
  const others = measured.classesPossible.filter((one) => one !== measured.speedClass).map((one) => SPEED_CLASS_WORDS[one]);
  const { spinRatio } = measured;
  const sections = [
    [DELIVERY.heading(seen.bowler.name, seen.shots.length)],
    numbers(measured),
    [
      `  ${DELIVERY.spin(spinRatio.value, spinRatio.low, spinRatio.high)}: ${DELIVERY.isClass(SPEED_CLASS_WORDS[measured.speedClass])}`,
      ...(others.length === 0 ? [] : [`  ${DELIVERY.couldBe(others)}`]),
      ...paragraph(SPEED_CLASS_MEANS[measured.speedClass], "  ", WIDTH),
    ],
    [
      `${DELIVERY.jobBowler}:`,
      ...stringify({ bowler })
        .trimEnd()
        .split("\n")
        .map((line) => `  ${line}`),
    ],
    [
      ...paragraph(DELIVERY.ends, "", WIDTH),
      ...(seen.pattern === null ? [DELIVERY.laneUnknown] : []),
      ...(defaults.length === 0
        ? []
        : paragraph(`${SHOT_DEFAULTS}: ${defaults.filter((path) => !isMeasured(path, measured)).join(", ")}`, "", WIDTH)),
    ],
  ];
  return `${sections.map((lines) => lines.join("\n")).join("\n\n")}\n`;
}

function numbers(measured: BowlerMeasured): string[] {
  const rows = DELIVERY_NUMBERS.flatMap((key): (readonly [string, string])[] => {
    const { name, figure } = DELIVERY_WORDS[key];
    const spread = spreadText(measured[key], figure);
    return [[name, numberText(measured[key], figure)], ...(spread === null ? [] : [["", spread] as const])];
  });
  const { pap } = measured;
  if (pap !== null) {
    rows.push([DELIVERY.pap, numberText(pap.overIn, DELIVERY.over)], ["", numberText(pap.upIn, DELIVERY.upOrDown)]);
  }
  return textColumns([0, 1].map((column) => ({ cells: rows.map((row) => `${column === 0 ? "  " : ""}${row[column]}`), align: "left" })));
}

function numberText(number: OverShots | DeliveryNumber, figure: (value: number) => string): string {
  const { value, low, high } = number.mean;
  if ("from" in number && number.from === "taken") return DELIVERY.taken(figure(value));
  return DELIVERY.measured(figure(value), figure(low), figure(high), number.shots);
}

function spreadText({ spread }: DeliveryNumber, figure: (value: number) => string): string | null {
  if (spread === null) return null;
  return spread === 0 ? DELIVERY.spreadHidden : DELIVERY.spread(figure(spread));
}

/** A usual value that a measured one has taken the place of need not be told of. */
function isMeasured(path: string, measured: BowlerMeasured): boolean {
  return DELIVERY_NUMBERS.some((key) => path === `bowler.${key}` && measured[key].from === "measured");
}
