/** A physical term of the model, and how to leave it out: an edit of the source that must fit exactly once. */
export interface Term {
  readonly name: string;
  readonly page: string;
  readonly file: string;
  readonly edits: readonly (readonly [find: string, instead: string])[];
}

export const TERMS: readonly Term[] = [
  {
    name: "friction on the ball's travel (full)",
    page: "full-motion",
    file: "motion/full.ts",
    edits: [["sx += weight * dx;", "dvx = 0;\n      dvy = 0;\n      sx += weight * dx;"]],
  },
  {
    name: "friction's torque on the spin (full)",
    page: "full-motion",
    file: "motion/full.ts",
    edits: [
      ["dlx = mass * radius * dvy - drag * wx;", "dlx = -drag * wx;"],
      ["dly = -mass * radius * dvx - drag * wy;", "dly = -drag * wy;"],
    ],
  },
  {
    name: "rolling resistance (full)",
    page: "full-motion",
    file: "motion/full.ts",
    edits: [["const drag = resist / Math.sqrt(wx * wx + wy * wy + 1e-6);", "const drag = 0 * resist;"]],
  },
  {
    name: "three different moments of inertia (full)",
    page: "full-motion",
    file: "motion/full.ts",
    edits: [
      ["const j3 = 1 / body.moments[2];", "const j3 = j1;"],
      ["const j2 = 1 / body.moments[1];", "const j2 = j1;"],
    ],
  },
  {
    name: "turning of the core (full)",
    page: "full-motion",
    file: "motion/full.ts",
    edits: [["dqw = -0.5 * (wx * i + wy * j + wz * k);", "dqw = 0;"]],
  },
  {
    name: "shorter steps where the slip dies (full)",
    page: "full-motion",
    file: "motion/full.ts",
    edits: [
      ["const STEP_PER_DECAY = 1.5;", "const STEP_PER_DECAY = 1500;"],
      ["const STEP_LIMIT = 2.6;", "const STEP_LIMIT = 2600;"],
    ],
  },
  {
    name: "slip's faster decay by rotation, k = 1 + 1/κ (averaged)",
    page: "averaged-motion",
    file: "motion/averaged.ts",
    edits: [["const k = 1 + 1 / ball.inertiaRatio;", "const k = 1;"]],
  },
  {
    name: "rolling resistance in the skid (averaged)",
    page: "averaged-motion",
    file: "motion/averaged.ts",
    edits: [["const resist = (rollingResistance * gravity) / ball.inertiaRatio;", "const resist = 0;"]],
  },
  {
    name: "rolling resistance in the roll (averaged)",
    page: "averaged-motion",
    file: "motion/averaged.ts",
    edits: [["const slowing = (rollingResistance * gravity) / (1 + ball.inertiaRatio);", "const slowing = 0;"]],
  },
  {
    name: "what is left of the slip when the ball snaps to roll (averaged)",
    page: "averaged-motion",
    file: "motion/averaged.ts",
    edits: [
      ["vx -= ux / k;", ""],
      ["vy -= uy / k;", ""],
    ],
  },
  {
    name: "the core's effective moment of inertia",
    page: "averaged-motion",
    file: "ball/body.ts",
    edits: [["return momentum / energy;", "return momentum > 0 ? i1 : energy;"]],
  },
  {
    name: "axis tilt",
    page: "units-and-axes",
    file: "delivery/release.ts",
    edits: [["const tilt = bowler.axisTiltDeg * DEGREE;", "const tilt = 0 * DEGREE;"]],
  },
  {
    name: "axis rotation",
    page: "units-and-axes",
    file: "delivery/release.ts",
    edits: [["const rotation = bowler.axisRotationDeg * DEGREE;", "const rotation = 0 * DEGREE;"]],
  },
  {
    name: "growth of the momentum that drives the flare",
    page: "flare",
    file: "motion/flare.ts",
    edits: [["const grown = history.momentum[n] / Math.hypot(l1, l2, l3);", "const grown = 1;"]],
  },
  {
    name: "tumbling that makes the flare",
    page: "flare",
    file: "motion/flare.ts",
    edits: [["return [l[1] * w3 - l[2] * w2, l[2] * w1 - l[0] * w3, l[0] * w2 - l[1] * w1];", "return [0 * w1, 0 * w2, 0 * w3];"]],
  },
  {
    name: "film of oil",
    page: "friction",
    file: "contact/friction.ts",
    edits: [["return (1 - exponential) / (1 + ratio) + exponential * 2 ** -ratio;", "return 1 + 0 * ratio * exponential;"]],
  },
  {
    name: "roughness of the ball",
    page: "friction",
    file: "contact/friction.ts",
    edits: [
      [
        'const composite = Math.hypot(ballRaUm, a["friction.laneRoughness"]);',
        'const composite = Math.hypot(0 * ballRaUm + 0.45, a["friction.laneRoughness"]);',
      ],
    ],
  },
  {
    name: "roughness of the lane",
    page: "friction",
    file: "contact/friction.ts",
    edits: [['const composite = Math.hypot(ballRaUm, a["friction.laneRoughness"]);', "const composite = ballRaUm;"]],
  },
  {
    name: "friction left in oil",
    page: "friction",
    file: "contact/friction.ts",
    edits: [["return share * contact.dry + (1 - share) * contact.oil;", "return share * contact.dry;"]],
  },
  {
    name: "the cover's own reach through the film",
    page: "friction",
    file: "contact/friction.ts",
    edits: [["a[filmReach] * ", ""]],
  },
  {
    name: "oil carried by the ball",
    page: "friction",
    file: "contact/friction.ts",
    edits: [["met[to] = here + share * carried[column];", "met[to] = here + 0 * share * carried[column];"]],
  },
  {
    name: "oil taken by the ball",
    page: "wear",
    file: "lane/wear.ts",
    edits: [["const peak = law.removal * (law.footprint / width);", "const peak = 0 * law.removal * (law.footprint / width);"]],
  },
  { name: "oil laid down again", page: "wear", file: "lane/wear.ts", edits: [["if (laid > 0)", "if (laid < 0)"]] },
  {
    name: "a rougher ball takes more oil",
    page: "wear",
    file: "lane/wear.ts",
    edits: [["(0.6 + (0.8 * ballRaUm) / (ballRaUm + 0.4))", "(0.6 + 0 * ballRaUm)"]],
  },
  {
    name: "scatter of the shots widens their track",
    page: "wear",
    file: "lane/wear.ts",
    edits: [["const width = Math.sqrt(law.footprint * law.footprint + scatter[row] * scatter[row]);", "const width = law.footprint;"]],
  },
  {
    name: "pattern runs out along the lane",
    page: "film",
    file: "lane/patterns.ts",
    edits: [["return across * taper(ft, pattern.lengthFt) * end;", "return across * end;"]],
  },
  {
    name: "speed, slip and weight at the pins",
    page: "carry",
    file: "pins/carry.ts",
    edits: [["sum += slope * (Math.min(", "sum += 0 * slope * (Math.min("]],
  },
  {
    name: "a hit from the other side is the mirrored hit",
    page: "carry",
    file: "pins/carry.ts",
    edits: [["const side = entryDeg < 0 ? -1 : 1;", "const side = 1;"]],
  },
  {
    name: "how well pins carry is not known",
    page: "carry",
    file: "pins/carry.ts",
    edits: [["all + level * table.level[cell] + shape * table.shape[cell]", "all + 0 * level + 0 * shape"]],
  },
  {
    name: "speed and slip of the line in the plan's chance",
    page: "carry",
    file: "planning/thrown.ts",
    edits: [["const room = chance * (1 - chance);", "const room = 0 * chance;"]],
  },
  { name: "hardness of the cover", page: "bench-work", file: "surface/cut.ts", edits: [["(REFERENCE_HARDNESS_D / hardnessD)", "1"]] },
  {
    name: "what the last stage left to take off",
    page: "bench-work",
    file: "surface/stages.ts",
    edits: [["left = valleyDepthUm(effectiveRaUm({ number, polished: false }, a), a);", "left = 0;"]],
  },
  {
    name: "hand work gets less far",
    page: "bench-work",
    file: "surface/history.ts",
    edits: [['work.by === "hand" ? "work.handReach" : "work.spinnerReach"', '"work.spinnerReach"']],
  },
  {
    name: "worn pads cut finer",
    page: "bench-work",
    file: "surface/history.ts",
    edits: [["Math.min(1, usesBefore / abrasive.usesBeforeWorn)", "0 * usesBefore"]],
  },
  {
    name: "the lanes' own level of roughness",
    page: "fade",
    file: "surface/fade.ts",
    edits: [
      [
        "return law.levelUm + (startUm - law.levelUm) * Math.exp(-games / (law.games * slower));",
        "return startUm * Math.exp(-games / (law.games * slower));",
      ],
    ],
  },
  {
    name: "slower fade beside the track",
    page: "fade",
    file: "surface/fade.ts",
    edits: [['const slower = where === "track" ? 1 : law.offTrack;', 'const slower = where === "track" ? 1 : 1;']],
  },
  {
    name: "oil at the front of a house's lanes against the back",
    page: "house-correction",
    file: "contact/friction.ts",
    edits: [
      ["const aRow = f ** ((-2 * CELL_Y) / TILT_OVER);", "f = 1;\n  const aRow = 1;"],
      ["new Float64Array(ROWS).fill(1 / f);", "new Float64Array(ROWS).fill(1);"],
    ],
  },
  {
    name: "friction of a house's dry boards",
    page: "house-correction",
    file: "contact/friction.ts",
    edits: [['a["house.dry"] * a[dryFriction]', "a[dryFriction]"]],
  },
  {
    name: "a left-hander plays the other side of the oil",
    page: "oil-in-play",
    file: "planning/oilInPlay/session.ts",
    edits: [
      ["const seen = handed(film, hand);", 'const seen = handed(film, hand === "left" ? "right" : hand);'],
      ["film = handed(worn.film, hand);", "film = worn.film;"],
    ],
  },
  {
    name: "everybody finds the line anew",
    page: "oil-in-play",
    file: "planning/oilInPlay/session.ts",
    edits: [["const found = player.line ?? lineNow(ground, seen);", "const found = player.line ?? before?.line ?? lineNow(ground, seen);"]],
  },
  {
    name: "what a change of ball costs",
    page: "bag-plan",
    file: "planning/bag/optimum.ts",
    edits: [
      [
        "return (stays ? own : best[leader] - changeCost) + worth[ball][stage];",
        "return (stays ? own : best[leader]) + worth[ball][stage];",
      ],
    ],
  },
  {
    name: "a ball in the bag has faded by its games",
    page: "bag-plan",
    file: "planning/bag/states.ts",
    edits: [["raMicroinch: readingOfEffectiveRa(faded, assumed)", "raMicroinch: 0 * faded === 0 ? null : null"]],
  },
  {
    name: "the ball slows on its way to the display",
    page: "delivery",
    file: "learning/delivery/speed.ts",
    edits: [["return run.reached === 1 ? Math.hypot(run.vx, run.vy) / MPH : null;", "return run.reached === 1 ? speedMph : null;"]],
  },
];
