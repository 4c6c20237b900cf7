export interface PlainColumn {
  /** Cells from top to bottom. */
  readonly cells: readonly string[];
  readonly align: "left" | "right";
}

export interface Column extends PlainColumn {
  readonly heading: readonly [string, string];
}

/** A table in plain text: two lines of headings, then the rows; columns as wide as they need to be. */
export function textTable(columns: readonly Column[], gap = 2): string[] {
  return textColumns(
    columns.map(({ heading, cells, align }) => ({ cells: [...heading, ...cells], align })),
    gap,
  );
}

/** Rows of columns, each as wide as it needs to be. */
export function textColumns(columns: readonly PlainColumn[], gap = 2): string[] {
  const padded = columns.map(({ cells, align }) => {
    const width = Math.max(...cells.map((cell) => cell.length));
    return cells.map((cell) => (align === "left" ? cell.padEnd(width) : cell.padStart(width)));
  });
  const rows = Math.max(...padded.map((cells) => cells.length));
  return Array.from({ length: rows }, (_, row) =>
    padded
      .map((cells) => cells[row])
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
