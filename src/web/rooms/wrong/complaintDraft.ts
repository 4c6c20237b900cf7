import type { Ball } from "#contract/records/ball";
import { gamesSinceWork } from "#contract/records/benchBall";
import type { Bowler } from "#contract/records/bowler";
import type { Ticket } from "#contract/records/ticket";
import { SYMPTOM_IDS, type SymptomId, type When } from "#engine/learning/diagnosis/complaint";
import type { StepId } from "#engine/learning/diagnosis/nextSteps";
import type { BookId } from "#engine/rules/ruleBooks";
import type { Json } from "../../jobFile/jobDraft.ts";
import { jobOfTicket } from "../../jobFile/jobOfTicket.ts";

/** Stands in the form for an oil that nobody knows. */
export const NOT_KNOWN = "unknown";

type YesNo = "unknown" | "yes" | "no";
export type FindId = "crack" | "hollowSound" | "plug" | "flatSpot" | "wornTrack" | "claimOpen";

/** The form as it was filled in, and the steps that were taken since. */
export interface ComplaintDraft {
  readonly symptoms: readonly SymptomId[];
  readonly changed: "all" | "one" | "unknown";
  readonly since: "suddenly" | "slowly" | "always" | "unknown";
  readonly hits: "good" | "light" | "high" | "unknown";
  readonly when: When;
  readonly finds: readonly FindId[];
  readonly games: string;
  readonly gamesSinceExtraction: string;
  readonly track: string;
  readonly beside: string;
  readonly grip: "unknown" | "same" | "changed" | "hurts";
  readonly tired: YesNo;
  readonly speedChange: string;
  readonly revChange: string;
  readonly oil: string;
  readonly playedShots: string;
  readonly otherHouse: YesNo;
  readonly laneChanged: YesNo;
  readonly steps: readonly { readonly step: StepId; readonly wasSo: boolean }[];
}

/** What the shop's records know of a complaint before anybody is asked. */
export function newComplaint(ball: Ball | null, ticket: Ticket | null, gamesSinceExtraction: number | null): ComplaintDraft {
  const found = (what: Ball["found"][number]["what"]) => ball?.found.some((one) => one.what === what) === true;
  const games = ball?.games ?? [];
  const finds: readonly (readonly [FindId, boolean])[] = [
    ["crack", found("crack")],
    ["hollowSound", found("hollow sound")],
    ["plug", found("plug")],
    ["flatSpot", found("flat spot")],
    ["wornTrack", found("track wear")],
    ["claimOpen", ticket?.state === "warranty hold"],
  ];
  const changed = { "all balls": "all", "only this one": "one", "not known": "unknown" } as const;
  return {
    symptoms: SYMPTOM_IDS.filter((id) => ticket?.symptoms.includes(id)),
    changed: ball === null ? "all" : ticket?.whatChanged ? changed[ticket.whatChanged] : "unknown",
    since: "unknown",
    hits: "unknown",
    when: "unknown",
    finds: finds.flatMap(([id, isThere]) => (isThere ? [id] : [])),
    games: ball === null || games.length === 0 ? "" : String(gamesSinceWork(ball)),
    gamesSinceExtraction: gamesSinceExtraction === null || games.length === 0 ? "" : String(gamesSinceExtraction),
    track: "",
    beside: "",
    grip: "unknown",
    tired: "unknown",
    speedChange: "",
    revChange: "",
    oil: NOT_KNOWN,
    playedShots: "",
    otherHouse: "unknown",
    laneChanged: "unknown",
    steps: [],
  };
}

/** Whether a step found a crack, or none: from then on that is a fact like any other find. Null: nobody has looked. */
export function foundCrack({ steps }: Pick<ComplaintDraft, "steps">): boolean | null {
  return steps.find(({ step }) => step === "lookForCrack")?.wasSo ?? null;
}

/**
 * The complaint file that the form stands for; null as long as nothing hurts.
 *
 * @param ball null where all balls changed
 */
export function complaintFileOf(draft: ComplaintDraft, ball: Ball | null, bowler: Bowler | null, book: BookId | null): Json | null {
  if (draft.symptoms.length === 0) return null;
  const job: { readonly ball?: Json; readonly bowler?: Json } = ball === null ? {} : jobOfTicket(ball, bowler);
  const has = (id: FindId) => draft.finds.includes(id) || (id === "crack" && foundCrack(draft) === true);
  return {
    gritwright: 1,
    symptoms: draft.symptoms,
    changed: draft.changed,
    since: draft.since,
    hits: draft.hits,
    when: draft.when,
    ...(book === null ? {} : { book }),
    ball: job.ball ?? {},
    use: {
      ...typed("games", draft.games),
      ...typed("gamesSinceExtraction", draft.gamesSinceExtraction),
      ...typed("trackMicroinch", draft.track),
      ...typed("besideMicroinch", draft.beside),
      crack: has("crack"),
      noCrack: !has("crack") && foundCrack(draft) === false,
      hollowSound: has("hollowSound"),
      plug: has("plug"),
      flatSpot: has("flatSpot"),
      wornTrack: has("wornTrack"),
      claimOpen: has("claimOpen"),
    },
    bowler: job.bowler ?? {},
    release: {
      ...typed("speedChangeMph", draft.speedChange),
      ...typed("revChangeRpm", draft.revChange),
      ...(draft.grip === "unknown" ? {} : { grip: draft.grip }),
      ...yesNo("tired", draft.tired),
    },
    ...(draft.oil === NOT_KNOWN ? {} : { lane: { pattern: draft.oil, ...typed("playedShots", draft.playedShots) } }),
    ...yesNo("otherHouse", draft.otherHouse),
    ...yesNo("laneChanged", draft.laneChanged),
  };
}

/** A number as it was typed, nothing where nothing was; what is no number goes on as it is, for the file's own checks to answer. */
function typed(key: string, text: string): { readonly [key: string]: Json } {
  if (text.trim() === "") return {};
  const number = Number(text.trim().replace(",", ".").replace("−", "-"));
  return { [key]: Number.isFinite(number) ? number : text };
}

function yesNo(key: string, answer: YesNo): { readonly [key: string]: Json } {
  return answer === "unknown" ? {} : { [key]: answer === "yes" };
}
