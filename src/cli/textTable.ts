export interface Column {
  readonly heading: readonly [string, string];
  /** Cells from top to bottom. */
  readonly cells: readonly string[];
  readonly align: "left" | "right";
}

/** A table in plain text: two lines of headings, then the rows; columns as wide as they need to be. */
export function textTable(columns: readonly Column[], gap = 2): string[] {
  const rows = columns[0].cells.length;
  const lines = columns.map(({ heading, cells, align }) => {
    const all = [...heading, ...cells];
    const width = Math.max(...all.map((cell) => cell.length));
    return all.map((cell) => (align === "left" ? cell.padEnd(width) : cell.padStart(width)));
  });
  return Array.from({ length: rows + 2 }, (_, row) =>
    lines
      .map((column) => column[row])
      .join(" ".repeat(gap))
      .trimEnd(),
  );
}

/** Breaks a paragraph into lines of at most `width`, the first behind `lead`, the others under its text. */
export function paragraph(text: string, lead: string, width: number): string[] {
  const lines: string[] = [];
  let line = lead;
  for (const word of text.split(" ")) {
    const isFirst = line.length === lead.length && line.trimEnd() === lead.trimEnd();
    const longer = isFirst ? `${line}${word}` : `${line} ${word}`;
    if (longer.length <= width || isFirst) {
      line = longer;
      continue;
    }
    lines.push(line);
    line = `${" ".repeat(lead.length)}${word}`;
  }
  return [...lines, line];
}
