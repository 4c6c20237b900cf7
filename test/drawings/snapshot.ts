import { expect } from "vitest";

/**
 * Holds a picture to the file that was looked at and approved; a new or changed picture is to be looked at again
 * (`npx vitest run test/drawings -u` writes it). The pictures are of given data and rounded to hundredths, so no
 * machine's last bit shows.
 */
export async function expectPicture(svg: string, name: string): Promise<void> {
  const lines = `${svg.replaceAll("><", ">\n<")}\n`;
  await expect(lines).toMatchFileSnapshot(`./approved/${name}.svg`);
}

/** Text content of every text element. */
export function textsOf(svg: string): string[] {
  return [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map((m) => m[1] ?? "");
}

/** Points of a path's data made of M and L. */
export function pointsOf(d: string): [number, number][] {
  return [...d.matchAll(/[ML](-?[\d.]+),(-?[\d.]+)/g)].map((m) => [Number(m[1]), Number(m[2])]);
}

/** Every element of a name with its attributes. */
export function elementsOf(svg: string, name: string): Record<string, string>[] {
  return [...svg.matchAll(new RegExp(`<${name}((?:\\s[\\w:-]+="[^"]*")*)\\s*/?>`, "g"))].map((m) =>
    Object.fromEntries([...(m[1] ?? "").matchAll(/([\w:-]+)="([^"]*)"/g)].map((a) => [a[1], a[2]])),
  );
}
