import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const here = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));

/** The file that holds the compiled kernel. */
export const KERNEL_BYTES = here("src/tasks/kernel/kernelBytes.ts");

/** Compiles kernel/shots.ts. @throws Error with what the compiler says */
export async function compiledKernel(): Promise<Uint8Array> {
  const { default: asc } = await import("assemblyscript/asc");
  const source = readFileSync(here("kernel/shots.ts"), "utf8");
  let bytes: Uint8Array | null = null;
  const { error, stderr } = await asc.main(
    ["shots.ts", "-o", "shots.wasm", "-O3", "--noAssert", "--enable", "simd", "--runtime", "stub", "--initialMemory", "2"],
    {
      readFile: (name: string) => (name === "shots.ts" ? source : null),
      writeFile: (_name: string, contents: Uint8Array | string) => {
        if (typeof contents !== "string") bytes = contents;
      },
      listFiles: () => [],
    },
  );
  if (error !== null || bytes === null) throw new Error(`The kernel does not compile: ${stderr.toString()}`);
  return bytes;
}

/** The module that carries it. */
export function kernelModule(bytes: Uint8Array): string {
  const lines =
    Buffer.from(bytes)
      .toString("base64")
      .match(/.{1,120}/g) ?? [];
  return `/** kernel/shots.ts, compiled by \`npm run build:kernel\`; a test compiles it anew and compares. */
export const KERNEL_BASE64 = [
${lines.map((line) => `  "${line}",`).join("\n")}
].join("");
`;
}
