import type { Fields } from "../things/definition.ts";

/** Version 3 of prices, settings and visits: taxes in thousandths of a percent. Versions 1 and 2 had them in thousandths of the price, `taxPermille`. */
export function inMillipercent(body: Fields): Fields {
  return Object.fromEntries(
    Object.entries(body).map(([field, value]) => {
      if (field === "taxPermille") return ["taxMillipercent", typeof value === "number" ? value * 100 : value];
      return [field, field === "charges" && Array.isArray(value) ? value.map(ofLine) : value];
    }),
  );
}

function ofLine(line: unknown): unknown {
  return typeof line === "object" && line !== null && !Array.isArray(line) ? inMillipercent(line as Fields) : line;
}
