import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { EXAMPLES, fileWith, inProcess, scratchFolder } from "./commandLine.ts";

describe("gritwright transition", () => {
  it("tells the oil game by game and everybody's lines, and draws a strip each", async () => {
    const svg = join(scratchFolder(), "transition.svg");
    const { code, stdout } = await inProcess("transition", join(EXAMPLES, "transition.yaml"), "--svg", svg);
    expect(code).toBe(0);
    expect(stdout).toMatch(/after game 3 +\d+\.\d/);
    expect(stdout).toMatch(/Ada Fieldgate\n +as laid +board \d+/);
    for (const line of stdout.split("\n")) expect(line.length, line).toBeLessThanOrEqual(120);
    expect(readFileSync(svg, "utf8").match(/class="gw-strip"/g)).toHaveLength(4);
  });

  it("gives data whose oil adds up, another for another seed", async () => {
    const file = join(EXAMPLES, "transition.yaml");
    const { games } = JSON.parse((await inProcess("transition", file, "--json")).stdout);
    expect(games).toHaveLength(4);
    for (const game of games) expect(game.volumeMl + game.takenMl).toBeCloseTo(games[0].volumeMl, 6);
    const other = JSON.parse((await inProcess("transition", file, "--json", "--seed", "2")).stdout);
    expect(other.games[3].volumeMl).not.toBeCloseTo(games[3].volumeMl, 3);
  });

  it.each([
    ["lane: { pattern: medium-41 }\ngames: 3", /players.*1 to 12 players/],
    ["lane: { pattern: medium-41 }\ngames: 0\nothers: { bowlers: 2 }", /games.*a whole number, 1 ≤ x ≤ 12/],
    ["lane: { pattern: medium-41 }\ngames: 1\nothers: { bowlers: 2, leftHanders: 3 }", /others\.leftHanders.*0 ≤ x ≤ 2/],
    ["lane: { friction: { constant: 0.1 } }\ngames: 1\nothers: { bowlers: 2 }", /lane\.friction/],
  ])("refuses %s by its field", async (text, says) => {
    const { code, stderr } = await inProcess("transition", fileWith(`gritwright: 1\n${text}\n`));
    expect(code).toBe(2);
    expect(stderr).toMatch(says);
  });
});
