import { type Document, isScalar, LineCounter, parseDocument, visit, type YAMLError } from "yaml";
import { MOST_LEVELS, tooDeep } from "#contract/modest";
import { JobFault, type JobProblem, wholeFileFault } from "#contract/problem";

/** A job file is a page of text; a megabyte leaves room for measured films. */
export const MOST_BYTES = 1_000_000;
const MOST_ALIASES = 100;
/** Twice what the levels need, for brackets that stand in a name. */
const MOST_OPEN_BRACKETS = 64;
const MOST_INDENT = 200;
/** After the first few, syntax errors are echoes of one another. */
const MOST_SYNTAX_PROBLEMS = 10;

/**
 * Reads the text of a job file, YAML or JSON (which is YAML too), into plain values. What they mean is not looked at here.
 *
 * @param bytes the file as it is, UTF-8
 * @throws {JobFault} `unreadable` if it is empty, too large or not UTF-8; `syntax` with every place that is not YAML, with duplicate keys, or
 *   if aliases or nesting would make more of it than was written
 */
export function readJobText(bytes: Uint8Array): unknown {
  if (bytes.length > MOST_BYTES) throw tooLarge(bytes.length);
  const text = decode(bytes);
  if (text.trim() === "") throw wholeFileFault("unreadable", "empty", "a job file in YAML or JSON");
  refuseDeepText(text);
  const lines = new LineCounter();
  // The parser's own search for duplicate keys and its quoting of errors take time by the square of the text.
  const document = parseDocument(text, { version: "1.2", schema: "core", uniqueKeys: false, prettyErrors: false, lineCounter: lines });
  const faults = [
    ...[...document.errors, ...document.warnings].map((fault) => syntaxProblem(fault, lines)),
    ...duplicateKeys(document, lines),
  ].slice(0, MOST_SYNTAX_PROBLEMS);
  if (faults.length > 0) throw new JobFault("syntax", faults);
  const data = toValues(document);
  refuseDeepNesting(data);
  if (data === null || data === undefined) throw wholeFileFault("unreadable", "empty", "a job file in YAML or JSON");
  return data;
}

/** The fault of a file that is larger than it may be. @param bytes its size */
export function tooLarge(bytes: number, mostBytes = MOST_BYTES): JobFault {
  return wholeFileFault("unreadable", "tooLarge", `at most ${mostBytes} bytes`, { bytes, mostBytes }, bytes);
}

function decode(bytes: Uint8Array): string {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    throw wholeFileFault("unreadable", "notUtf8", "text in UTF-8");
  }
}

/**
 * The parser calls itself for each level, and a long line of dashes makes it ask for more memory than there is, so depth is looked at before it
 * sees the text: open brackets, indents, and dashes in a row, none of which a job file has many of.
 */
function refuseDeepText(text: string): void {
  let open = 0;
  for (const letter of text) {
    if (letter === "[" || letter === "{") open++;
    else if (letter === "]" || letter === "}") open = Math.max(0, open - 1);
    if (open > MOST_OPEN_BRACKETS) throw tooDeep();
  }
  const deepLine = new RegExp(`^(?:[ \\t]{${MOST_INDENT + 1}}|[ \\t]*(?:[-?:][ \\t]+){${MOST_LEVELS + 1}})`, "m");
  if (deepLine.test(text)) throw tooDeep();
}

function toValues(document: Document.Parsed): unknown {
  try {
    return document.toJS({ maxAliasCount: MOST_ALIASES });
  } catch (fault) {
    if (fault instanceof ReferenceError) throw wholeFileFault("syntax", "tooManyAliases", `at most ${MOST_ALIASES} aliases`);
    if (fault instanceof RangeError) throw tooDeep();
    throw fault;
  }
}

/** Refuses what is nested deeper than any job file; an alias to its own parent would be nested without end. */
function refuseDeepNesting(data: unknown): void {
  let level: unknown[] = [data];
  for (let depth = 0; level.length > 0; depth++) {
    if (depth > MOST_LEVELS) throw tooDeep();
    level = level.flatMap((value) => (typeof value === "object" && value !== null ? Object.values(value) : []));
  }
}

function syntaxProblem(fault: YAMLError, lines: LineCounter): JobProblem {
  const { line, col } = lines.linePos(fault.pos[0]);
  return {
    path: "",
    value: null,
    allowed: "YAML 1.2 or JSON, one document",
    reason: { id: "syntax", params: { line, column: col, detail: fault.message } },
  };
}

function duplicateKeys(document: Document.Parsed, lines: LineCounter): JobProblem[] {
  const problems: JobProblem[] = [];
  visit(document, {
    Map(_, map) {
      const seen = new Set<unknown>();
      for (const { key } of map.items) {
        if (!isScalar(key)) continue;
        if (seen.has(key.value)) problems.push(duplicateKey(String(key.value), lines.linePos(key.range?.[0] ?? 0).line));
        seen.add(key.value);
      }
    },
  });
  return problems;
}

function duplicateKey(key: string, line: number): JobProblem {
  return { path: "", value: key, allowed: "each key once", reason: { id: "duplicateKey", params: { key, line } } };
}
