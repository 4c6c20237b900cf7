import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { EXAMPLES, fileWith, inProcess } from "./commandLine.ts";

describe("gritwright delivery", () => {
  it("tells each number with its ends, what was not measured, and a bowler that a job file takes", async () => {
    const { code, stdout } = await inProcess("delivery", join(EXAMPLES, "delivery.yaml"));
    expect(code).toBe(0);
    expect(stdout).toMatch(/Launch speed {2,}17\.\d mph {2}\(\d+\.\d mph to \d+\.\d mph, mean of 3\)/);
    // The marks of the example were computed from 45° and 14°, PAP 5 over ½ up, and rounded to hundredths.
    expect(stdout).toMatch(/Axis rotation {2,}45\.\d°/);
    expect(stdout).toMatch(/4\.9\d in over/);
    const { stdout: json } = await inProcess("delivery", join(EXAMPLES, "delivery.yaml"), "--json");
    const { bowler, defaults } = JSON.parse(json);
    const job = fileWith(
      JSON.stringify({ gritwright: 1, bowler, ball: { cover: "hybrid", finish: 2000 }, lane: { pattern: "medium-41" } }),
    );
    expect((await inProcess("shot", job)).code).toBe(0);
    expect(defaults).toContain("camera.frameWithin");
  });

  it.each([
    ["shots: [{ timed: { fromFt: 0, toFt: 60, frames: 150, seconds: 2.4 } }]", /frames or seconds, one of the two/],
    ["shots: [{ timed: { fromFt: 60, toFt: 0, frames: 150 } }]", /more than fromFt, 60/],
    ["shots: [{ turns: { turns: 1, frames: 10 } }, { timed: { fromFt: 0, toFt: 60, frames: 5 } }]", /shots\[1\]\.timed.*3 to 40 mph/],
    ["shots: [{ marks: [{ frame: 0, right: 0.1, up: 0 }, { frame: 3, right: 0.3, up: 0.2 }] }]", /three pictures, or two with a rev rate/],
  ])("refuses %s by its field", async (shots, says) => {
    const { code, stderr } = await inProcess("delivery", fileWith(`gritwright: 1\n${shots}\n`));
    expect(code).toBe(2);
    expect(stderr).toMatch(says);
  });
});
