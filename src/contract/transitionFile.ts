import { z } from "zod";
import { assume } from "#engine/assumptions";
import { drawnField } from "#engine/planning/oilInPlay/field";
import type { Player } from "#engine/planning/oilInPlay/player";
import type { PlayQuestion } from "#engine/planning/oilInPlay/session";
import { USUAL_LIMITS } from "#engine/planning/question";
import { deriveSeed } from "#engine/random";
import { assumptionsField } from "./job/assumptions.ts";
import { ballField } from "./job/ball.ts";
import { bowlerField } from "./job/bowler.ts";
import { count, mapping, quantity } from "./job/fields.ts";
import { JOB_FILE_VERSION } from "./job/jobFile.ts";
import { laneField } from "./job/lane.ts";
import { limitsField, lineField } from "./job/line.ts";
import { resolveBall } from "./resolve/ball.ts";
import { resolveBowler } from "./resolve/bowler.ts";
import { DefaultsTaken } from "./resolve/defaultsTaken.ts";
import { resolveLane } from "./resolve/lane.ts";
import { resolveLimits } from "./resolve/limits.ts";
import { type Resolved, setOtherwise, USUAL_SEED } from "./resolve/question.ts";

const MOST_PLAYERS = 12;
const MOST_GAMES = 12;

export const othersField = mapping(
  {
    bowlers: count("", { from: 0, to: MOST_PLAYERS }, "How many others bowl on the same lanes; they are drawn"),
    leftHanders: count("", { from: 0, to: MOST_PLAYERS }, "How many of them bowl left-handed").optional(),
  },
  "Others of whom nothing is known",
).superRefine(({ bowlers, leftHanders = 0 }, context) => {
  if (leftHanders <= bowlers) return;
  context.addIssue({ code: "custom", path: ["leftHanders"], message: `0 ≤ x ≤ ${bowlers}, the others`, input: leftHanders });
});

export const gamesField = count("games", { from: 1, to: MOST_GAMES }, "How many games are bowled on the oil");
export const lanesField = count("lanes", { from: 1, to: 2 }, "Lanes that they alternate on: two on a pair");

/** What `transition` reads: a lane, and who plays on it. */
export const transitionFileSchema = mapping(
  {
    gritwright: z.literal(JOB_FILE_VERSION, { error: String(JOB_FILE_VERSION) }).describe("Version of the file"),
    seed: count("", { from: 0, to: 4294967295 }, "Seed of everything that is drawn at random").optional(),
    lane: laneField,
    games: gamesField,
    lanes: lanesField.optional(),
    players: z
      .array(
        mapping(
          {
            bowler: bowlerField.optional(),
            ball: ballField,
            line: lineField.optional(),
            limits: limitsField.optional(),
            shotsAGame: quantity("shots", { above: 0, to: 100 }, "Shots of a game, on all lanes together").optional(),
          },
          "One who is known",
        ),
        { error: "a list of players" },
      )
      .max(MOST_PLAYERS, { error: `at most ${MOST_PLAYERS} players` })
      .optional(),
    others: othersField.optional(),
    assumptions: assumptionsField.optional(),
  },
  "A lane in play",
).superRefine(({ players = [], others }, context) => {
  const all = players.length + (others?.bowlers ?? 0);
  if (all > 0 && all <= MOST_PLAYERS) return;
  context.addIssue({ code: "custom", path: ["players"], message: `1 to ${MOST_PLAYERS} players, known or others`, input: all });
});

export type TransitionFile = z.output<typeof transitionFileSchema>;

/** The lane in play that a file describes. @throws {JobFault} if the lane is not oiled, or its sheet contradicts itself */
export function resolveTransition(file: TransitionFile): Resolved<PlayQuestion> {
  const defaults = new DefaultsTaken();
  const assumptions = setOtherwise(file);
  const seed = defaults.or("seed", file.seed, USUAL_SEED);
  const lanes = defaults.or("lanes", file.lanes, 2);
  const usualShots = assume(assumptions)["play.shotsAGame"];
  const players = (file.players ?? []).map((player, i): Player => {
    const taken = defaults.within(`players[${i}]`);
    return {
      bowler: resolveBowler(player.bowler, taken),
      ball: resolveBall(player.ball, taken),
      limits: resolveLimits(player.limits, taken),
      line: player.line ?? null,
      shotsAGame: taken.or("shotsAGame", player.shotsAGame, usualShots) / lanes,
    };
  });
  const question = {
    seed,
    pattern: resolveLane({ playedShots: 0, ...file.lane }, defaults).pattern,
    players: [...players, ...resolveOthers(file.others, lanes, seed, assumptions)],
    games: file.games,
    assumptions,
  };
  return { question, defaults: defaults.paths };
}

/** The others of a file, drawn; none where it names none. @param lanes over which everybody's shots are spread */
export function resolveOthers(
  others: z.output<typeof othersField> | undefined,
  lanes: number,
  seed: number,
  assumptions: PlayQuestion["assumptions"],
): readonly Player[] {
  if (others === undefined) return [];
  const assumed = assume(assumptions);
  const shotsAGame = assumed["play.shotsAGame"] / lanes;
  return drawnField(others.bowlers, others.leftHanders ?? 0, shotsAGame, USUAL_LIMITS, deriveSeed(seed, 11), assumed);
}
