import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { USUAL_ERRORS } from "#engine/video/sightings";
import { TRACKER } from "./video/accuracy.ts";
import { inventedShot } from "./video/shots.ts";
import { inventedCamera, sightingsOf } from "./video/sightings.ts";

/* `npx tsx --conditions=source tools/videoExample.ts`: writes the example of a video file, an invented shot by an invented camera. */

export const EXAMPLE_SEED = 70_005;

const { picture, hand, marks, seen } = sightingsOf(
  inventedShot(EXAMPLE_SEED),
  inventedCamera(EXAMPLE_SEED),
  EXAMPLE_SEED,
  TRACKER,
  USUAL_ERRORS,
);
const rounded = (value: number, decimals = 2) => Number(value.toFixed(decimals));
const feet = (metres: number) => rounded(metres / 0.3048, 4);
const pictures = [
  ...[-3, -2, -1].map((i) => ({ tS: rounded(seen[0].t + i / 60, 5), ball: null })),
  ...seen.map(({ t, u, v, radius }) => ({ tS: rounded(t, 5), u: rounded(u), v: rounded(v), radiusPx: rounded(radius) })),
];
const lines = (list: readonly object[]) =>
  list
    .map((one) => `    ${JSON.stringify(one).replaceAll('":', '": ').replaceAll(",", ", ").replace("{", "{ ").replace("}", " }")}`)
    .join(",\n");
const text = `# Invented: a shot that nobody threw, as a camera would have seen it. JSON behind this line, which YAML reads as it is.
{
  "gritwright": 1,
  "image": { "width": ${picture.width}, "height": ${picture.height} },
  "hand": "${hand}",
  "marks": [
${lines(marks.map(({ u, v, at }) => ({ u: rounded(u), v: rounded(v), xFt: feet(at[0]), yFt: feet(at[1]), zFt: feet(at[2]) })))}
  ],
  "pictures": [
${lines(pictures)}
  ]
}
`;
writeFileSync(join(import.meta.dirname, "..", "examples", "video-sightings.yaml"), text);
