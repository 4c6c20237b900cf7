import { SaxesParser } from "saxes";
import { measuredFault } from "#contract/problem";

const MOST_DEPTH = 20;
const MOST_DATA = 20_000_000;

/** What main.xml says, by the path of each element without its name space: `Record1/Axes/CX/AxisType`. */
export interface X3pXml {
  readonly texts: ReadonlyMap<string, string>;
  /** Contents of the data list, in order; an empty one is a point that was not measured. */
  readonly data: readonly string[];
}

/** Parses under limits. Document types are refused, so that no entity can grow; there is nothing else in XML that reads other files. */
export function readX3pXml(bytes: Uint8Array): X3pXml {
  const texts = new Map<string, string>();
  const data: string[] = [];
  const path: string[] = [];
  let text = "";
  const parser = new SaxesParser();
  parser.on("doctype", () => {
    throw measuredFault("doctype", "a document type", "none");
  });
  parser.on("opentag", ({ name }) => {
    path.push(name.slice(name.indexOf(":") + 1));
    text = "";
    if (path.length > MOST_DEPTH) throw measuredFault("xml", `${path.length} levels`, `at most ${MOST_DEPTH}`);
  });
  parser.on("text", (part) => {
    text += part;
  });
  parser.on("closetag", () => {
    if (path[path.length - 1] === "Datum") data.push(text.trim());
    else if (text.trim() !== "") texts.set(path.slice(1).join("/"), text.trim());
    if (data.length > MOST_DATA) throw measuredFault("tooLarge", data.length, `at most ${MOST_DATA} points`);
    text = "";
    path.pop();
  });
  parser.on("error", (fault) => {
    throw measuredFault("xml", fault.message, "well-formed XML");
  });
  parser.write(textOf(bytes)).close();
  return { texts, data };
}

function textOf(bytes: Uint8Array): string {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    throw measuredFault("xml", "not UTF-8", "text in UTF-8");
  }
}
