import { complaintFileSchema, resolveComplaint } from "#contract/complaintFile";
import { type Diagnosis, diagnose as find, type RankedCause } from "#engine/learning/diagnosis/diagnose";
import type { Evidence } from "#engine/learning/diagnosis/evidence";
import { programVersion } from "#server/version";
import { answerText, CAUSE_WORDS, customerText, DIAGNOSIS, evidenceText, STEP_WORDS, SYMPTOM_WORDS } from "#words/en/diagnosis";
import { messageText } from "#words/messageText";
import type { Options } from "./options.ts";
import { readChecked } from "./readJob.ts";
import { paragraph } from "./textTable.ts";
import type { ExitCode, World } from "./world.ts";

const WIDTH = 100;
/** Less likely causes than this are not told in the report; all of them are in the data. */
const TOLD_FROM = 0.03;
const MOST_EVIDENCE = 4;
const MOST_STEPS = 3;

/** `gritwright diagnose FILE`: what may be wrong, the evidence, and what to do next to find out. */
export async function diagnose(file: string, options: Options, world: World): Promise<ExitCode> {
  const { question, defaults } = resolveComplaint(await readChecked(file, complaintFileSchema));
  const diagnosis = find(question);
  const document = { gritwright: 1, kind: "diagnosis", engineVersion: programVersion(), ...diagnosis, defaults };
  const heading = question.symptoms.map((symptom) => SYMPTOM_WORDS[symptom]).join(" ");
  world.print(options.json ? `${JSON.stringify(document, null, 2)}\n` : textOf(diagnosis, `${question.ball.name}: ${heading}`));
  return 0;
}

function textOf(diagnosis: Diagnosis, heading: string): string {
  const { causes, steps, answerTo, messages } = diagnosis;
  const told = causes.filter(({ probability }, i) => i === 0 || probability >= TOLD_FROM);
  const sections = [
    [...paragraph(heading, "", WIDTH), ...messages.flatMap((message) => paragraph(messageText(message), "", WIDTH))],
    [`${DIAGNOSIS.causes}:`, ...told.flatMap(causeLines)],
    ...(answerTo === null ? [] : [[`${DIAGNOSIS.answer}: ${answerText(causes.find(({ cause }) => cause === answerTo) ?? causes[0])}`]]),
    ...(steps.length === 0
      ? []
      : [
          [
            `${DIAGNOSIS.steps}:`,
            ...steps
              .slice(0, MOST_STEPS)
              .flatMap(({ step, minutes, nats }) => paragraph(DIAGNOSIS.step(STEP_WORDS[step], minutes, nats), "  ", WIDTH)),
          ],
        ]),
    [`${DIAGNOSIS.customer}:`, ...paragraph(customerText(diagnosis), "  ", WIDTH)],
    paragraph(DIAGNOSIS.chosen, "", WIDTH),
  ];
  return `${sections.map((lines) => lines.join("\n")).join("\n\n")}\n`;
}

function causeLines({ cause, probability, for: speaksFor, against }: RankedCause): string[] {
  const side = (name: string, evidence: readonly Evidence[]) =>
    evidence.length === 0
      ? []
      : paragraph(`${name}: ${evidence.slice(0, MOST_EVIDENCE).map(evidenceText).join("; ")}`, "              ", WIDTH);
  return [
    `  ${DIAGNOSIS.cause(CAUSE_WORDS[cause], 100 * probability)}`,
    ...side(DIAGNOSIS.speaksFor, speaksFor),
    ...side(DIAGNOSIS.against, against),
  ];
}
