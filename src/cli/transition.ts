import { transitionDocumentOf } from "#contract/transitionDocument";
import { resolveTransition, transitionFileSchema } from "#contract/transitionFile";
import { transitionChart } from "#drawing/transitionChart";
import { transitionMoments } from "#drawing/transitionMoments";
import { programVersion } from "#server/version";
import { inlineExecutor } from "#tasks/inlineExecutor";
import { runTransition } from "#tasks/transitionTask";
import type { Options } from "./options.ts";
import { readChecked } from "./readJob.ts";
import { transitionText } from "./transitionText.ts";
import type { ExitCode, World } from "./world.ts";
import { writePicture } from "./writePicture.ts";

/** `gritwright transition FILE`: what play does to the oil, game by game. */
export async function transition(file: string, options: Options, world: World): Promise<ExitCode> {
  const asked = await readChecked(file, transitionFileSchema);
  const resolved = resolveTransition(options.seed === null ? asked : { ...asked, seed: options.seed });
  const lanes = await runTransition(resolved.question, { executor: inlineExecutor });
  const { hand } = resolved.question.players[0].bowler;
  if (options.svg !== null)
    await writePicture(options.svg, transitionChart({ hand, moments: transitionMoments(resolved.question, lanes) }));
  const document = transitionDocumentOf(resolved, lanes, programVersion());
  world.print(options.json ? `${JSON.stringify(document, null, 2)}\n` : transitionText(document, resolved.question));
  return 0;
}
