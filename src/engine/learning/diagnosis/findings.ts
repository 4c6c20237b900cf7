import { assume } from "../../assumptions.ts";
import { coverOf, knownCover } from "../../ball/ball.ts";
import { type SpeedClass, speedClass, spinRatio } from "../../delivery/style.ts";
import { filmOfPattern } from "../../lane/film.ts";
import { volumeMl } from "../../lane/filmMap.ts";
import { oilClass } from "../../rules/ruleCase.ts";
import { fadeLaw, raAfter } from "../../surface/fade.ts";
import { effectiveRaUm } from "../../surface/finish.ts";
import { CAUSES, type CauseId } from "./causes.ts";
import type { Complaint } from "./complaint.ts";
import { byCause, type Evidence, trade } from "./evidence.ts";

/** What is known besides the symptoms, each as it speaks for or against a cause; null where it says nothing. */
type Finding = (cause: CauseId, complaint: Complaint) => Evidence | null;

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

export const FINDINGS: readonly Finding[] = [
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
