import type { RefObject } from "react";
import { csvText } from "#contract/csv";
import { TABLE } from "#words/en/rooms/pieces";
import { saveText } from "../client/saveFile.ts";

interface FileProps {
  readonly of: RefObject<HTMLTableElement | null>;
  readonly name: string;
  /** Shows the rows that are not in the page yet. */
  readonly showAll?: () => void;
}

/** Saves a table as it stands in the page, in the page's language and units. */
export function TableFile({ of, name, showAll }: FileProps) {
  const save = (): void => {
    showAll?.();
    if (of.current !== null) saveText(csvOf(of.current), `${name.replace(/[^\p{L}\p{N}]+/gu, "-")}.csv`, "text/csv");
  };
  return (
    <div className="as-files no-print">
      <button type="button" aria-label={`${TABLE.asCsv}: ${name}`} onClick={save}>
        {TABLE.asCsv}
      </button>
    </div>
  );
}

function csvOf(table: HTMLTableElement): string {
  const [head, ...rows] = [...table.rows].map((row) => [...row.cells].filter((cell) => !cell.classList.contains("press")).map(wordsIn));
  return csvText(
    head,
    rows.map((row) => row.map(figureOr)),
  );
}

/** What is pressed or drawn in a cell is not part of what it says. */
function wordsIn(cell: Element): string {
  const texts = document.createTreeWalker(cell, NodeFilter.SHOW_ALL, (node) => {
    if (node instanceof Element) return node.matches("button, input, select, svg") ? NodeFilter.FILTER_REJECT : NodeFilter.FILTER_SKIP;
    return node.nodeType === Node.TEXT_NODE ? NodeFilter.FILTER_ACCEPT : NodeFilter.FILTER_REJECT;
  });
  const words: string[] = [];
  while (texts.nextNode() !== null) words.push(texts.currentNode.nodeValue ?? "");
  return words.join(" ").replace(/\s+/g, " ").trim();
}

/** A bare figure stays one that can be reckoned with. */
function figureOr(words: string): string | number {
  const plain = words.replace("−", "-");
  return /^-?\d+(\.\d+)?$/.test(plain) ? Number(plain) : words;
}
