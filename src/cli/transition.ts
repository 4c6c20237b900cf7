import { transitionDocumentOf } from "#contract/transitionDocument";
import { resolveTransition, transitionFileSchema } from "#contract/transitionFile";
import { transitionChart } from "#drawing/transitionChart";
import { transitionMoments } from "#drawing/transitionMoments";
import { programVersion } from "#server/version";
import { rangesOfTransition, runTransition } from "#tasks/transitionTask";
import type { Options } from "./options.ts";
import { readChecked } from "./readJob.ts";
import { transitionText } from "./transitionText.ts";
import { withExecutor } from "./withExecutor.ts";
import type { ExitCode, World } from "./world.ts";
import { writePicture } from "./writePicture.ts";

/** `gritwright transition FILE`: what play does to the oil, game by game. */
export async function transition(file: string, options: Options, world: World): Promise<ExitCode> {
  const asked = await readChecked(file, transitionFileSchema);
  const resolved = resolveTransition(options.seed === null ? asked : { ...asked, seed: options.seed });
  const { question } = resolved;
  const { lanes, ranges } = await withExecutor(options.workers ?? world.workers, async (executor) => {
    const played = await runTransition(question, { executor });
    return { lanes: played, ranges: await rangesOfTransition(question, played, { executor }) };
  });
  const { hand } = question.players[0].bowler;
  if (options.svg !== null) await writePicture(options.svg, transitionChart({ hand, moments: transitionMoments(question, lanes) }), world);
  const document = transitionDocumentOf(resolved, lanes, ranges, programVersion());
  world.print(options.json ? `${JSON.stringify(document, null, 2)}\n` : transitionText(document, question));
  return 0;
}
