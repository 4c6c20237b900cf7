import { assume } from "../../assumptions.ts";
import { coverOf, knownCover } from "../../ball/ball.ts";
import { type SpeedClass, speedClass, spinRatio } from "../../delivery/style.ts";
import { filmOfPattern } from "../../lane/film.ts";
import { volumeMl } from "../../lane/filmMap.ts";
import { oilClass } from "../../rules/ruleCase.ts";
import { fadeLaw, raAfter } from "../../surface/fade.ts";
import { effectiveRaUm, finishText } from "../../surface/finish.ts";
import { weightedMean } from "../../worlds/weightedMean.ts";
import { CAUSE_IDS, CAUSES, type CauseId } from "./causes.ts";
import type { Shift } from "./changes.ts";
import type { Complaint, SymptomId } from "./complaint.ts";
import type { Suited } from "./suited.ts";

/** Something known, by what factor it makes a cause likelier (above 1) or less likely, and where the factor comes from. */
export interface Evidence {
  readonly id: EvidenceId;
  readonly factor: number;
  /** `model`: computed for this ball, bowler and oil; `trade`: a rule of the trade, common practice, its factor **chosen**. */
  readonly from: "model" | "trade";
  readonly params: Readonly<Record<string, number | string>>;
}

export const EVIDENCE_IDS = [
  "symptom",
  "notComplainedOf",
  "hit",
  "allChanged",
  "onlyThisOne",
  "suddenly",
  "slowly",
  "always",
  "gamesFade",
  "gamesFadeLittle",
  "oilDue",
  "oilNotDue",
  "trackSmoother",
  "trackAlike",
  "trackOtherWay",
  "crackFound",
  "hollow",
  "plugFound",
  "flatSpot",
  "wornTrack",
  "gripChanged",
  "gripHurts",
  "gripSame",
  "tired",
  "speedMeasured",
  "revsMeasured",
  "otherHouse",
  "laneKnown",
  "laneKnownSame",
  "manyShots",
  "fewShots",
  "lightBall",
  "notLight",
  "freshlyWorked",
  "strongForOil",
  "weakForOil",
  "jobOfBall",
  "noCrackFound",
  "suits",
  "doesNotSuit",
] as const;
export type EvidenceId = (typeof EVIDENCE_IDS)[number];

/** Two symptoms of one cause are not two witnesses: each later one counts by this power. */
const LATER_SYMPTOMS = 0.6;

/** What speaks for and against a cause. */
export function evidenceFor(
  cause: CauseId,
  complaint: Complaint,
  shifts: readonly Shift[] | null,
  suited: Suited | null = null,
): readonly Evidence[] {
  return [
    ...symptomEvidence(cause, complaint, shifts),
    ...hitEvidence(cause, complaint, shifts),
    ...FINDINGS.flatMap((finding) => finding(cause, complaint) ?? []),
    ...(cause === "ball.unsuited" ? [suitedEvidence(suited)] : []),
  ];
}

/** Strikes, 0–1, that another finish must gain before this one is called unsuited; and what less than which is none. Chosen. */
const GAINS = { clearly: 0.05, hardly: 0.02 } as const;

/** Whether another finish would strike more often here; where that cannot be asked the cause is as good as none. */
function suitedEvidence(suited: Suited | null): Evidence {
  if (suited === null) return { id: "suits", factor: 0.05, from: "model", params: {} };
  const params = { finish: finishText(suited.finish), points: 100 * suited.gain };
  if (suited.gain >= GAINS.clearly) return { id: "doesNotSuit", factor: 4, from: "model", params };
  return {
    id: suited.gain >= GAINS.hardly ? "doesNotSuit" : "suits",
    factor: suited.gain >= GAINS.hardly ? 0.8 : 0.08,
    from: "model",
    params,
  };
}

function symptomEvidence(cause: CauseId, { symptoms }: Complaint, shifts: readonly Shift[] | null): readonly Evidence[] {
  const told = symptoms
    .map((symptom) => ({ symptom, chance: chanceOfSymptom(symptom, cause, shifts) }))
    .toSorted((a, b) => b.chance.value - a.chance.value);
  const spoken = told.map(
    ({ symptom, chance: { value, from } }, i): Evidence => ({
      id: "symptom",
      factor: (value / USUAL_CHANCE) ** (i === 0 ? 1 : LATER_SYMPTOMS),
      from,
      params: { symptom, ...(shifts === null ? {} : meanShift(shifts)) },
    }),
  );
  return [...spoken, unspoken(cause, symptoms, shifts)];
}

/** Of what would have shown, so much would have been complained of. */
const WOULD_SAY = 0.4;

/** A cause that would have shown in other ways too is less likely where nobody speaks of them. */
function unspoken(cause: CauseId, symptoms: readonly SymptomId[], shifts: readonly Shift[] | null): Evidence {
  const silent = (Object.keys(SEEN_AS) as SymptomId[]).filter((symptom) => !symptoms.includes(symptom) && symptom !== "spareBallHooks");
  const factor = silent.reduce((product, symptom) => product * (1 - WOULD_SAY * chanceOfSymptom(symptom, cause, shifts).value), 1);
  return { id: "notComplainedOf", factor, from: shifts === null ? "trade" : "model", params: {} };
}

/** A good hit lies within so many boards of what was meant. */
const GOOD_BOARDS = 0.6;
/** How often any of the three is seen. */
const USUAL_HIT = 1 / 3;

/** Where it comes in, against where the cause would bring it; what does not move the ball leaves good hits good. */
function hitEvidence(cause: CauseId, { hits }: Complaint, shifts: readonly Shift[] | null): readonly Evidence[] {
  if (hits === "unknown") return [];
  const isSeen = ({ boards }: Shift) =>
    hits === "good" ? Math.abs(boards) < GOOD_BOARDS : hits === "high" ? boards >= GOOD_BOARDS : boards <= -GOOD_BOARDS;
  if (shifts === null) return [trade("hit", (CAUSES[cause].kind === "pins") === (hits === "good") ? 2 : 0.6, { hits })];
  const share = over(shifts, (shift) => (isSeen(shift) ? 1 : 0));
  return [{ id: "hit", factor: (0.1 + 0.8 * share) / USUAL_HIT, from: "model", params: { hits, ...meanShift(shifts) } }];
}

/** How often any symptom is met with some cause or other: what a chance is compared with. */
const USUAL_CHANCE = 0.25;
const LEAST_CHANCE = 0.03;

function meanShift(shifts: readonly Shift[]): Readonly<Record<string, number>> {
  return {
    hookFt: over(shifts, ({ hookFt }) => hookFt),
    boards: over(shifts, ({ boards }) => boards),
    entryDeg: over(shifts, ({ entryDeg }) => entryDeg),
  };
}

/** The mean over the worlds. */
function over(shifts: readonly Shift[], of: (shift: Shift) => number): number {
  return weightedMean(
    shifts.map(of),
    shifts.map(({ weight }) => weight),
  );
}

const rise = (value: number, at: number, width: number): number => 1 / (1 + Math.exp(-(value - at) / width));

/** Whether a shift is what a bowler calls by that name; widths are what an eye from the approach can tell. Null where motion does not speak. */
const SEEN_AS: Readonly<Partial<Record<SymptomId, (shift: Shift) => number>>> = {
  hooksEarlyHitsWeak: ({ hookFt, boards }) => rise(-hookFt, 0.8, 0.5) * (boards > -0.5 ? 1 : 0.4),
  doesNothing: ({ boards, entryDeg }) => Math.max(rise(-boards, 1.2, 0.5), rise(-entryDeg, 0.6, 0.2)),
  skidsPast: ({ hookFt }) => rise(hookFt, 0.8, 0.5),
  leavesCorner: ({ cornerRatio, boards }) => Math.max(rise(cornerRatio, 1.35, 0.2), 0.6 * rise(-boards, 0.6, 0.3)),
  comesInHigh: ({ boards }) => rise(boards, 0.7, 0.4),
  hooksLess: ({ boards }) => rise(-boards, 0.7, 0.4),
  deflects: ({ boards, entryDeg }) => 0.6 * Math.max(rise(-boards, 1, 0.4), rise(-entryDeg, 0.5, 0.2)),
  spareBallHooks: ({ boards }) => rise(boards, 0.5, 0.3),
};

/** Chances of a symptom with causes that do not show in the mean shot, or beside what it shows: rules of the trade, common practice. */
const BY_RULE: Readonly<Partial<Record<CauseId, Partial<Record<SymptomId, number>>>>> = {
  "ball.faded": { looksShiny: 0.7 },
  "ball.oilSoaked": { feelsOily: 0.7, neverTheSame: 0.3, looksShiny: 0.2 },
  "ball.dirty": { feelsOily: 0.6, neverTheSame: 0.4 },
  "ball.uneven": { neverTheSame: 0.7, knocks: 0.2, leavesCorner: 0.2 },
  "ball.crack": { knocks: 0.8, neverTheSame: 0.4, deflects: 0.3, hooksLess: 0.2 },
  "ball.tooLight": { deflects: 0.8, leavesCorner: 0.5 },
  "ball.tooSmooth": { looksShiny: 0.3 },
  "ball.spareWorn": { spareBallHooks: 0.8, looksShiny: 0.05 },
  "lane.transition": { neverTheSame: 0.4 },
  "release.lessTurn": { neverTheSame: 0.25 },
  "release.tired": { neverTheSame: 0.45 },
  "release.grip": { neverTheSame: 0.6 },
  "pins.carry": { leavesCorner: 0.7 },
};

function chanceOfSymptom(symptom: SymptomId, cause: CauseId, shifts: readonly Shift[] | null): { value: number; from: Evidence["from"] } {
  const seen = SEEN_AS[symptom];
  const byRule = BY_RULE[cause]?.[symptom] ?? 0;
  const byModel = seen === undefined || shifts === null ? 0 : over(shifts, seen);
  return { value: Math.max(LEAST_CHANCE, byRule, byModel), from: byModel >= byRule && byModel > LEAST_CHANCE ? "model" : "trade" };
}

type Finding = (cause: CauseId, complaint: Complaint) => Evidence | null;

const trade = (id: EvidenceId, factor: number, params: Evidence["params"] = {}): Evidence => ({ id, factor, from: "trade", params });
/** A factor by cause, nothing where the cause is not named. */
const byCause = (
  id: EvidenceId,
  cause: CauseId,
  factors: Partial<Record<CauseId, number>>,
  params: Evidence["params"] = {},
): Evidence | null => {
  const factor = factors[cause];
  return factor === undefined ? null : trade(id, factor, params);
};

/** The first question to every complaint: did all your balls change, or only this one? */
const scope: Finding = (cause, { changed }) => {
  const { kind } = CAUSES[cause];
  if (changed === "all") return trade("allChanged", { lane: 4, release: 4, ball: 0.06, pins: 1 }[kind]);
  if (changed === "one") return trade("onlyThisOne", { lane: 0.12, release: 0.15, ball: 2.5, pins: 0.8 }[kind]);
  return null;
};

const since: Finding = (cause, complaint) => {
  if (complaint.since === "suddenly")
    return byCause("suddenly", cause, {
      "ball.faded": 0.2,
      "ball.oilSoaked": 0.3,
      "ball.crack": 3,
      "ball.dirty": 1.5,
      "ball.spareWorn": 0.4,
      "lane.drier": 2,
      "lane.oilier": 2,
      "release.grip": 1.8,
      "ball.tooStrong": 0.3,
      "ball.tooWeak": 0.3,
      "ball.tooLight": 0.3,
      "ball.unsuited": 0.3,
    });
  if (complaint.since === "slowly")
    return byCause("slowly", cause, {
      "ball.faded": 3,
      "ball.oilSoaked": 3,
      "ball.spareWorn": 3,
      "ball.crack": 0.4,
      "lane.drier": 0.4,
      "lane.oilier": 0.4,
      "ball.tooDull": 0.3,
      "ball.tooSmooth": 0.4,
      "ball.tooStrong": 0.3,
      "ball.tooWeak": 0.3,
      "ball.tooLight": 0.3,
      "ball.unsuited": 0.3,
    });
  if (complaint.since === "always")
    return byCause("always", cause, {
      "ball.tooStrong": 4,
      "ball.tooWeak": 4,
      "ball.tooDull": 1.5,
      "ball.tooSmooth": 1.5,
      "ball.tooLight": 4,
      "ball.unsuited": 4,
      "ball.uneven": 1.5,
      "pins.carry": 1.5,
      "ball.faded": 0.1,
      "ball.oilSoaked": 0.1,
      "ball.dirty": 0.2,
      "ball.crack": 0.2,
      "lane.drier": 0.3,
      "lane.oilier": 0.3,
      "lane.transition": 0.3,
      "release.slower": 0.3,
      "release.faster": 0.3,
      "release.tired": 0.2,
      "release.grip": 0.5,
    });
  return null;
};

/** What the games have done to the surface, by the cover's law of fade: a small change cannot be the cause. */
const fadedByGames: Finding = (cause, { ball, use }) => {
  // What was read goes before what games usually do.
  if (use.trackMicroinch !== null && use.besideMicroinch !== null && cause === "ball.faded") return null;
  if (use.games === null || (cause !== "ball.faded" && cause !== "ball.tooDull" && cause !== "ball.tooSmooth")) return null;
  const fresh = effectiveRaUm(ball.finish);
  const factor = raAfter(fadeLaw(knownCover(ball), assume()), fresh, use.games) / fresh;
  const percent = 100 * (factor - 1);
  const isMuch = Math.abs(Math.log(factor)) > Math.log(1.25);
  if (cause === "ball.faded")
    return {
      id: isMuch ? "gamesFade" : "gamesFadeLittle",
      factor: isMuch ? 2 : 0.15,
      from: "model",
      params: { games: use.games, percent },
    };
  return use.games <= 5 ? trade("freshlyWorked", 2.5, { games: use.games }) : trade("freshlyWorked", 0.4, { games: use.games });
};

/** Oil is drawn out about every 40 to 50 games of a reactive ball (common practice). */
const oil: Finding = (cause, { ball, use }) => {
  if (cause !== "ball.oilSoaked" || use.gamesSinceExtraction === null) return null;
  const cover = knownCover(ball);
  if (cover === null) return null;
  if (!coverOf(cover).reactive) return trade("oilNotDue", 0.05, { games: use.gamesSinceExtraction });
  if (use.gamesSinceExtraction >= 40) return trade("oilDue", 3, { games: use.gamesSinceExtraction });
  return use.gamesSinceExtraction <= 15 ? trade("oilNotDue", 0.15, { games: use.gamesSinceExtraction }) : null;
};

/** After so many games a track has gone where it goes. */
const MANY_GAMES = 60;

const trackAgainstBeside: Finding = (cause, { ball, use }) => {
  const { trackMicroinch: track, besideMicroinch: beside } = use;
  if (track === null || beside === null) return null;
  const ratio = track / beside;
  // A sanded track goes smooth, a polished one rough: the other way round it was not the games.
  const fresh = effectiveRaUm(ball.finish);
  const goesRough = raAfter(fadeLaw(knownCover(ball), assume()), fresh, MANY_GAMES) > fresh;
  if (cause === "ball.faded" && ratio > 1.33 !== goesRough && (ratio > 1.33 || ratio < 0.75))
    return trade("trackOtherWay", 0.3, { track, beside });
  if (ratio < 0.75 || ratio > 1.33) return byCause("trackSmoother", cause, { "ball.faded": 4, "ball.spareWorn": 3 }, { track, beside });
  return byCause("trackAlike", cause, { "ball.faded": 0.25, "ball.spareWorn": 0.4 }, { track, beside });
};

const finds: Finding = (cause, { use }) => {
  if (use.crack) return byCause("crackFound", cause, { "ball.crack": 60 });
  if (use.hollowSound) return byCause("hollow", cause, { "ball.crack": 40 });
  return null;
};
/** A lamp finds most of them. */
const lookedAt: Finding = (cause, { use }) => (use.noCrack && !use.crack ? byCause("noCrackFound", cause, { "ball.crack": 0.08 }) : null);
const plug: Finding = (cause, { use }) => (use.plug ? byCause("plugFound", cause, { "ball.uneven": 5, "ball.crack": 1.5 }) : null);
const flatSpot: Finding = (cause, { use }) => (use.flatSpot ? byCause("flatSpot", cause, { "ball.uneven": 10 }) : null);
const wornTrack: Finding = (cause, { use }) =>
  use.wornTrack ? byCause("wornTrack", cause, { "ball.faded": 2, "ball.uneven": 1.5, "ball.spareWorn": 3 }) : null;

const grip: Finding = (cause, { release }) => {
  if (release.grip === "changed") return byCause("gripChanged", cause, { "release.grip": 8, "release.lessTurn": 1.5 });
  if (release.grip === "hurts") return byCause("gripHurts", cause, { "release.grip": 8, "release.tired": 1.5, "release.slower": 1.3 });
  return release.grip === "same" ? byCause("gripSame", cause, { "release.grip": 0.2 }) : null;
};
const tired: Finding = (cause, { release }) => {
  if (release.tired === null) return null;
  return byCause("tired", cause, release.tired ? { "release.tired": 6, "release.slower": 1.5 } : { "release.tired": 0.2 });
};

/** What is measured explains by itself: the lane need not have changed too. */
const LANE_LESS: Partial<Record<CauseId, number>> = { "lane.drier": 0.6, "lane.oilier": 0.6, "lane.transition": 0.8 };

/** Faster or slower by half a mile an hour is a change; less is the bowler's own scatter. */
const measuredSpeed: Finding = (cause, { release }) => {
  const change = release.speedChangeMph;
  if (change === null) return null;
  const params = { mph: change };
  if (change <= -0.5)
    return byCause("speedMeasured", cause, { "release.slower": 12, "release.tired": 4, "release.faster": 0.02, ...LANE_LESS }, params);
  if (change >= 0.5)
    return byCause("speedMeasured", cause, { "release.faster": 12, "release.slower": 0.02, "release.tired": 0.1, ...LANE_LESS }, params);
  return byCause("speedMeasured", cause, { "release.faster": 0.15, "release.slower": 0.15, "release.tired": 0.5 }, params);
};
const measuredRevs: Finding = (cause, { release }) => {
  const change = release.revChangeRpm;
  if (change === null) return null;
  const factors: Partial<Record<CauseId, number>> =
    change <= -20
      ? { "release.lessTurn": 6, "release.grip": 3, "release.tired": 2.5 }
      : { "release.lessTurn": 0.3, "release.grip": 0.4, "release.tired": 0.5 };
  return byCause("revsMeasured", cause, factors, { rpm: change });
};

const otherHouse: Finding = (cause, { lane }) =>
  lane.otherHouse === true
    ? byCause("otherHouse", cause, { "lane.drier": 3, "lane.oilier": 3, "ball.tooStrong": 1.5, "ball.tooWeak": 1.5 })
    : null;
const laneKnown: Finding = (cause, { lane }) => {
  if (lane.known === true) return byCause("laneKnown", cause, { "lane.drier": 5, "lane.oilier": 5, "lane.transition": 2 });
  return lane.known === false ? byCause("laneKnownSame", cause, { "lane.drier": 0.15, "lane.oilier": 0.15 }) : null;
};
const traffic: Finding = (cause, { lane }) => {
  if (cause !== "lane.transition" || lane.playedShots === null) return null;
  if (lane.playedShots >= 40) return trade("manyShots", 3, { shots: lane.playedShots });
  return lane.playedShots < 12 ? trade("fewShots", 0.08, { shots: lane.playedShots }) : null;
};

/** A light ball is turned aside by the pins (computed with the pins: 12 to 16 lb are 13 strikes in a hundred). */
const weight: Finding = (cause, { ball }) => {
  if (cause !== "ball.tooLight") return null;
  return ball.massLb <= 12.5 ? trade("lightBall", 6, { lb: ball.massLb }) : trade("notLight", 0.05, { lb: ball.massLb });
};

const STRENGTH: Readonly<Record<string, number>> = { polyester: -2, urethane: 0, pearl: 0, hybrid: 1, solid: 2 };
const OIL: Readonly<Record<string, number>> = { light: 0, medium: 1, heavy: 2 };
const HAND: Readonly<Record<SpeedClass, number>> = { speedDominant: 1, matched: 0, revDominant: -1 };

/** The trade's table in one line: a strong cover wants oil or speed, a weak one little of either. */
const coverForOil: Finding = (cause, { ball, bowler, lane }) => {
  if (
    (cause !== "ball.tooStrong" && cause !== "ball.tooWeak") ||
    ball.job !== "strike" ||
    knownCover(ball) === null ||
    lane.pattern === null
  )
    return null;
  const style = speedClass(spinRatio(bowler.speedMph, bowler.revRateRpm, ball.diameterIn));
  const wanted = OIL[oilClass(volumeMl(filmOfPattern(lane.pattern)))] + HAND[style];
  const excess = STRENGTH[ball.cover] - wanted;
  const params = { cover: ball.cover, excess };
  if (excess >= 1) return trade("strongForOil", cause === "ball.tooStrong" ? 2.5 : 0.2, params);
  if (excess <= -1) return trade("weakForOil", cause === "ball.tooWeak" ? 2.5 : 0.2, params);
  return trade(cause === "ball.tooStrong" ? "weakForOil" : "strongForOil", 0.5, params);
};

/** A cause of the spare ball is none of a strike ball's, and the other way round. */
const job: Finding = (cause, { ball }) => {
  const isSpare = ball.job === "spare" || ball.job === "house";
  if (cause === "ball.spareWorn") return isSpare ? trade("jobOfBall", 3) : trade("jobOfBall", 0.001);
  if (isSpare && (cause === "ball.tooWeak" || cause === "ball.tooSmooth" || cause === "ball.oilSoaked")) return trade("jobOfBall", 0.1);
  return null;
};

const FINDINGS: readonly Finding[] = [
  scope,
  since,
  fadedByGames,
  oil,
  trackAgainstBeside,
  finds,
  lookedAt,
  plug,
  flatSpot,
  wornTrack,
  grip,
  tired,
  measuredSpeed,
  measuredRevs,
  otherHouse,
  laneKnown,
  traffic,
  weight,
  coverForOil,
  job,
];

/** Probability of each cause: weight times every factor, made to sum to one. */
export function probabilities(evidence: ReadonlyMap<CauseId, readonly Evidence[]>): ReadonlyMap<CauseId, number> {
  const odds = CAUSE_IDS.map((id) => (evidence.get(id) ?? []).reduce<number>((product, { factor }) => product * factor, CAUSES[id].weight));
  const sum = odds.reduce((total, one) => total + one, 0);
  return new Map(CAUSE_IDS.map((id, i) => [id, odds[i] / sum]));
}
