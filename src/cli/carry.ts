import { type CarryFile, carryFileSchema, lookedUp, scatterOf, seenLeaves } from "#contract/carryFile";
import { carryChart } from "#drawing/carryChart";
import { assume } from "#engine/assumptions";
import { carryOf, chanceOver, leaveSeen, strikeMap } from "#engine/pins/carry";
import { CARRY as TABLE } from "#engine/pins/carryData";
import { explain, hitsAbout, leaveMeaning } from "#engine/pins/explain";
import { leaveText } from "#engine/pins/leave";
import { programVersion } from "#server/version";
import { type CarryReport, carryText } from "./carryText.ts";
import type { Options } from "./options.ts";
import { readChecked } from "./readJob.ts";
import type { ExitCode, World } from "./world.ts";
import { writePicture } from "./writePicture.ts";

/** `gritwright carry FILE`: what the pins do at a hit, and which hits explain what was left. */
export async function carry(file: string, options: Options, world: World): Promise<ExitCode> {
  const asked = await readChecked(file, carryFileSchema);
  const report = reportOf(asked);
  if (options.svg !== null) {
    const hits = report.hits.flatMap(({ hit, scatter }) => (scatter === null ? [hit] : hitsAbout(hit, scatter)));
    await writePicture(options.svg, carryChart({ carry: strikeMap(assume()), hand: report.hand, hits }), world);
  }
  world.print(options.json ? `${JSON.stringify(documentOf(report), null, 2)}\n` : carryText(report));
  return 0;
}

function reportOf(asked: CarryFile): CarryReport {
  const seen = seenLeaves(asked);
  return {
    hand: asked.hand ?? "right",
    hits: (asked.hits ?? []).map(lookedUp).map(({ hit, scatter }) => {
      const hits = scatter === null ? [hit] : hitsAbout(hit, scatter);
      return { hit, scatter, chance: chanceOver(hits), carry: carryOf(hits) };
    }),
    seen,
    explanation: seen.length === 0 ? null : explain(seen, strikeMap(assume()), scatterOf(asked.scatter)),
  };
}

/** Leaves as the bowler sees them, and where the table came from. */
function documentOf({ hand, hits, seen, explanation }: CarryReport) {
  const written = (leave: number) => leaveText(leaveSeen(leave, hand));
  return {
    gritwright: 1,
    kind: "carry",
    engineVersion: programVersion(),
    table: TABLE.provenance,
    hand,
    hits: hits.map(({ carry: { leaves, ...rest }, ...hit }) => ({
      ...hit,
      ...rest,
      leaves: leaves.map(({ leave, share }) => ({ leave: written(leave), share })),
    })),
    seen: seen.map(({ leave, count }) => ({ leave: written(leave), count, meaning: leaveMeaning(leave, strikeMap(assume())) })),
    explanation,
  };
}
