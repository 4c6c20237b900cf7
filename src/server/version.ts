import { readFileSync } from "node:fs";

/** The version of the program and its engine, from the package's own manifest. */
export function programVersion(): string {
  const manifest: unknown = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8"));
  if (typeof manifest === "object" && manifest !== null && "version" in manifest && typeof manifest.version === "string")
    return manifest.version;
  throw new TypeError("package.json states no version");
}
