/** Text as it stands between tags: what XML 1.0 wants written otherwise, and nothing that it does not take at all. */
export function xmlText(text: string): string {
  const allowed = [...text].filter((sign) => sign >= " " || sign === "\t" || sign === "\n").join("");
  return allowed.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;");
}
