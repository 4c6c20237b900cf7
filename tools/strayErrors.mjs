import { mkdirSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";

/** Tells Vitest's errors that belong to no test, which its JSON report leaves out: a run fails by them all the same. */
export default class StrayErrors {
  /** @param {readonly unknown[]} _modules @param {readonly { name?: string, message?: string, stack?: string }[]} errors */
  onTestRunEnd(_modules, errors) {
    const file = process.env.STRAY_ERRORS;
    if (file === undefined) return;
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, JSON.stringify(errors.map(({ name, message, stack }) => ({ name, message, stack }))));
  }
}
