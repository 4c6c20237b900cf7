import type { ErrorDocument } from "#contract/errorDocument";
import { fromEngine, JobFault } from "#contract/problem";
import { RecordsFault } from "#contract/records/fault";
import { EngineFault } from "#engine/fault";
import { withoutPassword } from "#records/database/address";
import { RECORDS_FAULT } from "#words/en/records";
import { problemText } from "#words/problemText";
import type { ExitCode, World } from "./world.ts";

/** Tells what went wrong, as a document on stdout or as text on stderr, and says with which code to end. Never a stack trace. */
export function reportFault(fault: unknown, asJson: boolean, world: World): ExitCode {
  if (fault instanceof RecordsFault) return reportRecords(fault, asJson, world);
  const known = asJobFault(fault);
  const document = known === null ? ourFault(fault) : documentOf(known);
  tellDocument(document, asJson, world);
  return known === null ? 1 : 2;
}

/** A backup that is not sound is a check that failed. */
function reportRecords(fault: RecordsFault, asJson: boolean, world: World): ExitCode {
  const message = RECORDS_FAULT[fault.kind](fault.about);
  const problems = fault.problems.map(({ path, value, allowed }) => ({
    path,
    value: value ?? null,
    allowed,
    message: `${path}: allowed: ${allowed}.`,
  }));
  const document: ErrorDocument = {
    error: { code: "records", problems: [{ path: fault.about, value: null, allowed: "", message }, ...problems] },
  };
  tellDocument(document, asJson, world);
  return fault.kind === "badBackup" ? 3 : 2;
}

/** Whatever was typed may be repeated in it, and an address among that: its password is not. */
function tellDocument(document: ErrorDocument, asJson: boolean, world: World): void {
  if (asJson) world.print(withoutPassword(`${JSON.stringify(document, null, 2)}\n`));
  else world.tell(withoutPassword(faultText(document)));
}

function asJobFault(fault: unknown): JobFault | null {
  if (fault instanceof JobFault) return fault;
  return fault instanceof EngineFault ? new JobFault("invalid", fromEngine(fault.problems)) : null;
}

function documentOf(fault: JobFault): ErrorDocument {
  const problems = fault.problems.map((problem) => ({
    path: problem.path,
    value: problem.value ?? null,
    allowed: problem.allowed,
    message: problemText(problem),
  }));
  return { error: { code: fault.code, problems } };
}

function ourFault(fault: unknown): ErrorDocument {
  const detail = fault instanceof Error ? `${fault.name}: ${fault.message}` : String(fault);
  return { error: { code: "internal", problems: [{ path: "", value: null, allowed: "", message: `Something of ours broke: ${detail}` }] } };
}

function faultText({ error }: ErrorDocument): string {
  const count = error.problems.length;
  const heading = error.code === "invalid" ? `${count === 1 ? "One thing" : `${count} things`} in the file cannot be used:\n` : "";
  const mark = heading === "" ? "gritwright: " : "  ";
  return `${heading}${error.problems.map(({ message }) => `${mark}${message}\n`).join("")}`;
}
