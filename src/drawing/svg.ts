/** SVG as text. Attributes that are undefined are left out; numbers are rounded so that a picture is the same on every machine. */
export type Attributes = Readonly<Record<string, string | number | undefined>>;

const ESCAPES: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;" };

/** Text made safe for element content and attribute values. */
export function escapeText(text: string): string {
  return text.replace(/[&<>"']/g, (c) => ESCAPES[c] ?? c);
}

/** A coordinate with at most two decimals and no negative zero. */
export function round(value: number): number {
  return Math.round(value * 100) / 100 + 0;
}

/** An element around finished SVG text. */
export function el(name: string, attributes: Attributes, ...children: readonly string[]): string {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${typeof value === "number" ? round(value) : escapeText(String(value))}"`)
    .join("");
  return children.length === 0 ? `<${name}${written}/>` : `<${name}${written}>${children.join("")}</${name}>`;
}

/** A text element; its content is escaped. */
export function textEl(content: string, attributes: Attributes): string {
  return el("text", attributes, escapeText(content));
}

export type Point = readonly [number, number];

/** Path data of a polyline, one decimal: finer than a screen shows, a third of the bytes. */
export function pathOf(points: readonly Point[]): string {
  return points.map(([x, y], i) => `${i === 0 ? "M" : "L"}${Math.round(x * 10) / 10 + 0},${Math.round(y * 10) / 10 + 0}`).join("");
}

/** The whole picture, with its name and description for those who do not see it. */
export function picture(
  box: { readonly width: number; readonly height: number },
  words: { readonly id: string; readonly title: string; readonly description: string },
  ...children: readonly string[]
): string {
  return el(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      viewBox: `0 0 ${round(box.width)} ${round(box.height)}`,
      width: box.width,
      height: box.height,
      role: "img",
      "aria-labelledby": `${words.id}-title ${words.id}-desc`,
    },
    el("title", { id: `${words.id}-title` }, escapeText(words.title)),
    el("desc", { id: `${words.id}-desc` }, escapeText(words.description)),
    ...children,
  );
}
