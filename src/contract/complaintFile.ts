import { z } from "zod";
import { inMirror, turnsBack } from "#engine/delivery/backup";
import { type Complaint, HITS, SINCE, SYMPTOM_IDS, WHEN } from "#engine/learning/diagnosis/complaint";
import { BOOK_IDS } from "#engine/rules/ruleBooks";
import { ballField } from "./job/ball.ts";
import { bowlerField } from "./job/bowler.ts";
import { count, mapping, oneOf, quantity } from "./job/fields.ts";
import { JOB_FILE_VERSION } from "./job/jobFile.ts";
import { laneField } from "./job/lane.ts";
import { resolveBall } from "./resolve/ball.ts";
import { resolveBowler } from "./resolve/bowler.ts";
import { DefaultsTaken } from "./resolve/defaultsTaken.ts";
import { resolveLane } from "./resolve/lane.ts";
import type { Resolved } from "./resolve/question.ts";

const yes = (description: string) => z.boolean({ error: "true or false" }).describe(description).optional();
const games = (description: string) => count("games", { from: 0, to: 10_000 }, description).optional();
const reading = (description: string) => quantity("µin", { above: 0, to: 1000 }, description).optional();

/** What `diagnose` reads: a complaint, and what is known about it. */
export const complaintFileSchema = mapping(
  {
    gritwright: z.literal(JOB_FILE_VERSION, { error: String(JOB_FILE_VERSION) }).describe("Version of the file"),
    symptoms: z
      .array(oneOf(SYMPTOM_IDS, "What is complained of"), { error: "a list of symptoms" })
      .min(1, { error: "at least one symptom" })
      .max(SYMPTOM_IDS.length, { error: `at most ${SYMPTOM_IDS.length} symptoms` }),
    changed: oneOf(["all", "one", "unknown"], "Did all balls change, or only this one?").optional(),
    since: oneOf(SINCE, "How it came").optional(),
    hits: oneOf(HITS, "How it comes in at the pocket, where somebody has watched").optional(),
    when: oneOf(WHEN, "When the ball is at hand: while scores count, in practice, afterwards").optional(),
    book: oneOf(BOOK_IDS, "Whose rules are played by").optional(),
    ball: ballField.optional(),
    use: mapping(
      {
        games: games("Games on today's finish"),
        gamesSinceExtraction: games("Games since oil was last drawn out"),
        trackMicroinch: reading("A reading in the track"),
        besideMicroinch: reading("A reading beside it"),
        crack: yes("A crack was found"),
        noCrack: yes("Looked for under a lamp: there is none"),
        hollowSound: yes("It sounds hollow"),
        plug: yes("It has a plug"),
        flatSpot: yes("It has a flat spot"),
        wornTrack: yes("The track is worn"),
        claimOpen: yes("A warranty question may be open"),
      },
      "What was done with the ball and found on it",
    ).optional(),
    bowler: bowlerField.optional(),
    release: mapping(
      {
        speedChangeMph: quantity("mph", { from: -15, to: 15 }, "Speed measured now, less what it was").optional(),
        revChangeRpm: quantity("rpm", { from: -400, to: 400 }, "Rev rate measured now, less what it was").optional(),
        grip: oneOf(["changed", "hurts", "same"], "The grip").optional(),
        tired: yes("Whether the bowler is tired"),
      },
      "The release now against before",
    ).optional(),
    lane: laneField.optional(),
    otherHouse: yes("Whether it is another house than usual"),
    laneChanged: yes("Whether machine, oil or boards are known to have changed; false: known not to have"),
  },
  "A complaint",
);

export type ComplaintFile = z.output<typeof complaintFileSchema>;

/** The complaint of a file; what it leaves out is not known. @throws {JobFault} if the lane is not oiled, or its sheet contradicts itself */
export function resolveComplaint(file: ComplaintFile): Resolved<Complaint> {
  const defaults = new DefaultsTaken();
  const { use, release } = file;
  const bowler = resolveBowler(file.bowler, defaults);
  const pattern = file.lane === undefined ? null : resolveLane(file.lane, defaults).pattern;
  return {
    question: {
      symptoms: [...new Set(file.symptoms)],
      changed: file.changed ?? "unknown",
      since: file.since ?? "unknown",
      hits: file.hits ?? "unknown",
      when: file.when ?? "unknown",
      book: file.book ?? null,
      ball: resolveBall(file.ball ?? {}, defaults),
      use: {
        games: use?.games ?? null,
        gamesSinceExtraction: use?.gamesSinceExtraction ?? null,
        trackMicroinch: use?.trackMicroinch ?? null,
        besideMicroinch: use?.besideMicroinch ?? null,
        crack: use?.crack ?? false,
        noCrack: use?.noCrack ?? false,
        hollowSound: use?.hollowSound ?? false,
        plug: use?.plug ?? false,
        flatSpot: use?.flatSpot ?? false,
        wornTrack: use?.wornTrack ?? false,
        claimOpen: use?.claimOpen ?? false,
      },
      bowler: turnsBack(bowler) ? inMirror(bowler) : bowler,
      release: {
        speedChangeMph: release?.speedChangeMph ?? null,
        revChangeRpm: release?.revChangeRpm ?? null,
        grip: release?.grip ?? null,
        tired: release?.tired ?? null,
      },
      lane: { pattern, playedShots: file.lane?.playedShots ?? null, otherHouse: file.otherHouse ?? null, known: file.laneChanged ?? null },
    },
    defaults: defaults.paths,
  };
}
