/** No word of ours is longer, and the comparison takes time by the product of two lengths. */
const MOST_LETTERS = 40;

/** The word of a list that is nearest to a misspelt one, if it is near enough to have been meant; else null. */
export function nearestWord(misspelt: string, words: readonly string[]): string | null {
  if (misspelt.length > MOST_LETTERS) return null;
  const mostEdits = Math.max(1, Math.floor(misspelt.length / 3));
  let best: { word: string; edits: number } | null = null;
  for (const word of words) {
    // So many letters at the least would have to be added or dropped.
    if (word.length > MOST_LETTERS || Math.abs(word.length - misspelt.length) > mostEdits) continue;
    const edits = editDistance(misspelt.toLowerCase(), word.toLowerCase());
    if (edits <= mostEdits && (best === null || edits < best.edits)) best = { word, edits };
  }
  return best === null ? null : best.word;
}

/** How many letters must be added, dropped, changed or swapped with their neighbour to turn one word into the other. */
function editDistance(a: string, b: string): number {
  const rows = [Array.from({ length: b.length + 1 }, (_, column) => column)];
  for (let row = 1; row <= a.length; row++) {
    const current = [row];
    for (let column = 1; column <= b.length; column++) {
      const change = rows[row - 1][column - 1] + (a[row - 1] === b[column - 1] ? 0 : 1);
      current.push(Math.min(change, rows[row - 1][column] + 1, current[column - 1] + 1));
      const isSwapped = row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1];
      if (isSwapped) current[column] = Math.min(current[column], rows[row - 2][column - 2] + 1);
    }
    rows.push(current);
  }
  return rows[a.length][b.length];
}
