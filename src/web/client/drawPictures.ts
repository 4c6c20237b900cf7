import { carryChart } from "#drawing/carryChart";
import { type ChartCourse, laneChart } from "#drawing/laneChart";
import type { Layout } from "#drawing/laneFrame";
import { leavesPicture } from "#drawing/leavesPicture";
import { PAGE_PAINT } from "#drawing/paint";
import { plateauBar } from "#drawing/plateauBar";
import { smallMultiples } from "#drawing/smallMultiples";
import { textureSwatch } from "#drawing/texture";
import type { Course } from "#engine/motion/course";
import { courseOf, filmOf, hitsOf, meaningOf, strikesOf } from "#engine/planning/pictures";
import type { Candidate } from "#engine/planning/plan";
import { finishText, parseFinish } from "#engine/surface/finish";
import { LEAVES_IN_WORDS, leaveMeaningText } from "#words/en/carry";
import { DIFFERENCE, PLAN_ANSWER } from "#words/en/screens";
import type { CustomerChange, Pictures, PicturesWanted, TwoLayouts } from "./protocol.ts";

const both = (draw: (layout: Layout) => string): TwoLayouts => ({ lying: draw("lying"), upright: draw("upright") });

/** Every picture of a plan, as SVG text. */
export function drawPictures(wanted: PicturesWanted): Pictures {
  const { question, plan } = wanted;
  const film = filmOf(question);
  const { hand } = question.bowler;
  const courses = new Map<string, Course>();
  for (const c of plan.candidates) if (c.line !== null) courses.set(c.finish, courseOf(question, parseFinish(c.finish), c.line));
  const today = plan.today.line === null ? null : courseOf(question, question.ball.finish, plan.today.line);
  const charted = chartCourses(wanted, courses, today);
  const steps = wanted.losses.map((l) => ({ finish: parseFinish(l.finish), lossPer100: l.lossPer100 }));
  return {
    lane: both((layout) =>
      laneChart({ film, hand, courses: charted, title: wanted.title }, { layout, paint: PAGE_PAINT, id: `lane-${layout}` }),
    ),
    plateau:
      steps.length === 0
        ? null
        : plateauBar(
            { steps, pick: plan.pick?.finish ?? null, plateau: plan.pick?.plateau ?? [], cliff: plan.pick?.cliff ?? null },
            { layout: "upright", paint: PAGE_PAINT, id: "loss" },
          ),
    pins: pinsPictures(wanted),
    compare: comparison(wanted, courses, today),
    swatches: Object.fromEntries(
      [...new Set([...plan.candidates.map((c) => c.finish), plan.today.finish ?? []].flat())].map((f, i) => [
        f,
        textureSwatch(`swatch-${i}`, parseFinish(f), 30, PAGE_PAINT),
      ]),
    ),
    hand,
    change: customerChange(wanted, courses, today),
  };

  function comparison(asked: PicturesWanted, known: ReadonlyMap<string, Course>, todays: Course | null): TwoLayouts | null {
    const compared = plan.candidates.filter((c) => asked.compared.includes(c.finish) && known.has(c.finish));
    if (compared.length === 0 || todays === null) return null;
    const strips = compared.map((c) => {
      const course = known.get(c.finish) as Course;
      return {
        finish: parseFinish(c.finish),
        course,
        picked: c.finish === plan.pick?.finish,
        differences: differences(c, course, todays, asked),
      };
    });
    return both((layout) =>
      smallMultiples({ film, hand, today: todays, compared: strips }, { layout, paint: PAGE_PAINT, id: `compare-${layout}` }),
    );
  }
}

/** Of the pick, or where there is none of the first finish with a line. */
function pinsPictures({ question, plan }: PicturesWanted): Pictures["pins"] {
  const worked = plan.candidates.filter(({ pins, line }) => pins !== null && line !== null);
  const { pins, line, finish } = worked.find((candidate) => candidate.finish === plan.pick?.finish) ?? worked[0] ?? {};
  if (!pins || !line || finish === undefined) return null;
  const hits = hitsOf(question, parseFinish(finish), line);
  return {
    strikes: carryChart({ carry: strikesOf(question), hand: question.bowler.hand, hits }, PAGE_PAINT, "strikes"),
    leaves: leavesPicture(pins, PAGE_PAINT, "leaves"),
    meanings: pins.leaves.slice(0, LEAVES_IN_WORDS).map(({ leave }) => leaveMeaningText(leave, meaningOf(question, leave))),
  };
}

/** Today's line and the lines that were asked for, from dull to smooth. */
function chartCourses(wanted: PicturesWanted, courses: ReadonlyMap<string, Course>, today: Course | null): ChartCourse[] {
  const { plan, question } = wanted;
  const own = plan.candidates.flatMap((c): ChartCourse[] => {
    const course = courses.get(c.finish);
    if (course === undefined || !wanted.shown.includes(c.finish)) return [];
    const picked = c.finish === plan.pick?.finish;
    const name = picked ? PLAN_ANSWER.pickName(c.finish) : PLAN_ANSWER.otherName(c.finish);
    return [{ name, finish: parseFinish(c.finish), course, emphasis: picked ? "pick" : "other" }];
  });
  if (today === null) return own;
  return [
    { name: PLAN_ANSWER.todayName(finishText(question.ball.finish)), finish: question.ball.finish, course: today, emphasis: "today" },
    ...own,
  ];
}

function differences(candidate: Candidate, course: Course, today: Course, wanted: PicturesWanted): string[] {
  const list: string[] = [];
  if (course.hookStartFt !== null && today.hookStartFt !== null)
    list.push(DIFFERENCE.hook(course.hookStartFt - today.hookStartFt, course.hookStartFt));
  if (course.rollStartFt === null) list.push(DIFFERENCE.noRoll);
  else if (today.rollStartFt !== null) list.push(DIFFERENCE.roll(course.rollStartFt - today.rollStartFt, course.rollStartFt));
  if (course.entryAngleDeg !== null && today.entryAngleDeg !== null)
    list.push(DIFFERENCE.entry(course.entryAngleDeg - today.entryAngleDeg, course.entryAngleDeg));
  const todays = wanted.plan.today.line;
  if (candidate.line !== null && todays !== null)
    list.push(DIFFERENCE.laydown(candidate.line.laydownBoard - todays.laydownBoard, candidate.line.laydownBoard));
  if (candidate.onTodaysLine !== null) list.push(DIFFERENCE.todaysLine(candidate.onTodaysLine.boardChange));
  return list;
}

function customerChange(wanted: PicturesWanted, courses: ReadonlyMap<string, Course>, today: Course | null): CustomerChange | null {
  const picked = wanted.plan.candidates.find((c) => c.finish === wanted.plan.pick?.finish);
  const course = picked === undefined ? undefined : courses.get(picked.finish);
  const todays = wanted.plan.today.line;
  if (picked === undefined || picked.line === null || course === undefined || today === null || todays === null) return null;
  return {
    hookLaterFt: course.hookStartFt === null || today.hookStartFt === null ? null : course.hookStartFt - today.hookStartFt,
    entrySteeperDeg: course.entryAngleDeg === null || today.entryAngleDeg === null ? null : course.entryAngleDeg - today.entryAngleDeg,
    laydownInBoards: picked.line.laydownBoard - todays.laydownBoard,
    firstShotBoards: picked.onTodaysLine?.boardChange ?? null,
  };
}
